//! Grip: the sum of the jaws' radial forces on the part, at rest and at speed.
//!
//! All forces are totals over the jaws, N; pressures in Pa, angular speeds in rad/s.
//!
//! ```
//! use holdround_mechanics::grip::{
//!     Cylinder, Demand, GripError, GripLine, GripRange, Input, Limit, PistonFace, Plate, PlateLimits, Prediction,
//!     Reading, Scatter, Share, Side, SpinCoefficient, SpinLine, SpinReading, SpinningGrip,
//! };
//!
//! // From cylinder and plate, and how much of what the plate allows is used.
//! let cylinder = Cylinder { bore: 0.125, rod: 0.045 };
//! let plate = Plate { greatest_grip: 90e3, greatest_draw_force: 36e3, jaw_height: 0.04 };
//! let draw = cylinder.draw_force(2e6, PistonFace::Rod, 0.9)?;
//! assert!((draw - 0.9 * 2e6 * cylinder.effective_area(PistonFace::Rod)?).abs() < 1e-9);
//! let rest = plate.grip(draw, 1.0)?;
//! let PlateLimits { draw_force, grip } = plate.limits(draw, rest, 0.08)?;
//! assert!(!draw_force.exceeded() && draw_force.used() < 0.6);
//! // Jaws twice as high may be pressed half as hard.
//! assert_eq!(grip, Limit { value: rest, greatest: 45e3 });
//! assert_eq!(grip.greatest, plate.grip_limit(0.08)?);
//!
//! // From a grip gauge, at rest and turning.
//! let readings = [(1e6, 21e3), (2e6, 40e3), (3e6, 62e3)].map(|(pressure, grip)| Reading { pressure, grip });
//! let line = GripLine::fit(&readings)?;
//! let Prediction { grip: read, scatter } = line.predict(2e6, 0.0, 0.95)?;
//! assert!((read - line.intercept() - line.slope() * 2e6).abs() < 1e-6);
//! let Scatter { standard_error, half_width } = scatter.unwrap();
//! assert!(half_width > standard_error && standard_error > line.residual_deviation().unwrap());
//! assert_eq!(line.measured_range(), (1e6, 3e6));
//! let spun = [(0.0, 40e3), (150.0, 34e3), (300.0, 16e3)].map(|(speed, grip)| SpinReading { speed, grip });
//! let spin = SpinLine::fit(&spun, Side::Outside)?;
//! let SpinCoefficient { value, .. } = spin.coefficient(0.95)?;
//! assert!((value - 24e3 / (300.0 * 300.0)).abs() < 1e-3 * value && (spin.at_rest() - 40e3).abs() < 100.0);
//! assert!(spin.residual_deviation().is_some());
//!
//! // At speed: what the jaws' weight takes, and what of it reaches the part.
//! let share = Share::new(Share::of_locked_wedge(50e6, 200e6)?, 1.0)?;
//! assert_eq!((share.low(), share.high()), (0.2, 1.0));
//! let turning = SpinningGrip::new(rest, Side::Outside, 0.27, share)?;
//! let GripRange { lowest, highest } = turning.at(200.0)?;
//! let lost = turning.centrifugal_force(200.0)?;
//! assert!((rest - lowest - lost).abs() < 1e-9 && (rest - highest - 0.2 * lost).abs() < 1e-9);
//! let third = turning.speed_leaving(1.0 / 3.0)?.unwrap();
//! assert!(third < turning.speed_of_lost_grip().unwrap());
//! let demand = Demand { cutting_grip: 10e3, cutting_factor: 1.5, rest_factor: 1.5 };
//! let speed = turning.permissible_speed(&demand, 500.0)?;
//! assert!((turning.needed_rest_grip(&demand, speed)? / rest - 1.0).abs() < 1e-12);
//!
//! let error = plate.grip(draw, 1.2).unwrap_err();
//! assert!(matches!(error, GripError::OutOfRange { input: Input::Condition, .. }), "{error}");
//! # Ok::<(), GripError>(())
//! ```

mod error;
mod gauge;
mod line;
mod rest;
mod speed;
mod spin_line;

pub use error::{GripError, Input};
pub use gauge::{GripLine, Prediction, Reading, Scatter};
pub use rest::{ChartPoint, Cylinder, Limit, PistonFace, Plate, PlateLimits};
pub use speed::{Demand, GripRange, RotatingMass, Share, SpinningGrip, centrifugal_moment};
pub use spin_line::{SpinCoefficient, SpinLine, SpinReading};

/// Which way the jaws push.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The jaws close on an outside, toward the axis (the trade also says OD gripping).
    Outside,
    /// The jaws open into a bore, away from the axis (the trade also says ID gripping).
    Inside,
}
