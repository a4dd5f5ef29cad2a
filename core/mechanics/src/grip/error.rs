use crate::quantity::decimal;
use core::fmt;

use crate::text::Text;

/// The input a refusal is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Input {
    /// Actuating pressure.
    Pressure,
    /// Cylinder bore.
    Bore,
    /// Cylinder rod diameter.
    Rod,
    /// Efficiency of the actuation.
    Efficiency,
    /// Condition of the chuck (grease and wear).
    Condition,
    /// Draw force.
    DrawForce,
    /// Greatest draw force on the plate.
    PlateDrawForce,
    /// Grip.
    Grip,
    /// Greatest grip on the plate.
    PlateGrip,
    /// Jaw height.
    JawHeight,
    /// Jaw height for which the plate is given.
    PlateJawHeight,
    /// How far beyond the readings a prediction may go.
    Margin,
    /// Confidence of an interval.
    Confidence,
    /// Mass of a turning lump.
    Mass,
    /// Radius of a turning lump.
    Radius,
    /// Share of the centrifugal force that reaches the part.
    Share,
    /// Stiffness of part or chuck mechanism.
    Stiffness,
    /// Spindle speed.
    Speed,
    /// Grip fraction that must remain.
    Fraction,
    /// Factor of safety.
    SafetyFactor,
}

impl Input {
    const fn words(self) -> &'static str {
        match self {
            Self::Pressure => "pressure",
            Self::Bore => "bore",
            Self::Rod => "rod",
            Self::Efficiency => "efficiency",
            Self::Condition => "condition",
            Self::DrawForce => "draw force",
            Self::PlateDrawForce => "plate draw force",
            Self::Grip => "grip",
            Self::PlateGrip => "plate grip",
            Self::JawHeight => "jaw height",
            Self::PlateJawHeight => "plate jaw height",
            Self::Margin => "margin",
            Self::Confidence => "confidence",
            Self::Mass => "mass",
            Self::Radius => "radius",
            Self::Share => "share",
            Self::Stiffness => "stiffness",
            Self::Speed => "speed",
            Self::Fraction => "fraction",
            Self::SafetyFactor => "safety factor",
        }
    }
}

/// Why no grip is given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum GripError {
    /// The value lies outside what the input can be; both bounds are in the input's SI unit.
    OutOfRange {
        /// The input.
        input: Input,
        /// What was given.
        value: f64,
        /// Least possible value.
        least: f64,
        /// Greatest possible value.
        greatest: f64,
    },
    /// The rod is as thick as the bore or thicker.
    RodFillsBore {
        /// Rod diameter, m.
        rod: f64,
        /// Bore diameter, m.
        bore: f64,
    },
    /// A line needs two readings.
    TooFewReadings {
        /// How many were given.
        given: usize,
    },
    /// All readings were taken at one pressure.
    OnePressureOnly,
    /// All readings were taken at one speed.
    OneSpeedOnly,
    /// The readings do not rise with pressure.
    GripDoesNotRise {
        /// Fitted slope, N/Pa.
        slope: f64,
    },
    /// The pressure lies too far outside the readings.
    OutsideReadings {
        /// The pressure asked for, Pa.
        pressure: f64,
        /// Least pressure allowed, Pa.
        least: f64,
        /// Greatest pressure allowed, Pa.
        greatest: f64,
    },
    /// The fitted line gives no grip at this pressure.
    NoGrip {
        /// The pressure asked for, Pa.
        pressure: f64,
    },
    /// The grip at rest does not even hold the cut at standstill.
    RestGripTooSmall {
        /// Grip needed at standstill, N.
        needed: f64,
        /// Grip at rest, N.
        rest_grip: f64,
    },
}

impl From<&GripError> for Text {
    fn from(error: &GripError) -> Self {
        let told = |value: &f64| Self::number(decimal(*value, 6));
        match error {
            GripError::OutOfRange { input, value, least, greatest } => {
                Self::of("{} is {}; it must lie between {} and {}")
                    .with(input.words())
                    .with(told(value))
                    .with(told(least))
                    .with(told(greatest))
            }
            GripError::RodFillsBore { rod, bore } => {
                Self::of("rod {} m does not fit bore {} m").with(told(rod)).with(told(bore))
            }
            GripError::TooFewReadings { given } => Self::of("{} readings given; two are needed").with(*given),
            GripError::OnePressureOnly => Self::of("readings at one pressure only"),
            GripError::OneSpeedOnly => Self::of("readings at one speed only"),
            GripError::GripDoesNotRise { slope } => {
                Self::of("grip does not rise with pressure ({} N/Pa)").with(told(slope))
            }
            GripError::OutsideReadings { pressure, least, greatest } => {
                Self::of("{} Pa is outside the readings ({} to {} Pa)")
                    .with(told(pressure))
                    .with(told(least))
                    .with(told(greatest))
            }
            GripError::NoGrip { pressure } => Self::of("the readings give no grip at {} Pa").with(told(pressure)),
            GripError::RestGripTooSmall { needed, rest_grip } => {
                Self::of("grip at rest {} N is less than the {} N needed at standstill")
                    .with(told(rest_grip))
                    .with(told(needed))
            }
        }
    }
}

impl fmt::Display for GripError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for GripError {}

/// Bounds, in SI units, wide of anything a lathe has, within which products and quotients of a few
/// inputs stay finite.
const SMALLEST: f64 = 1e-15;
const LARGEST: f64 = 1e15;

/// The value if it is finite and above zero.
pub(super) fn positive(input: Input, value: f64) -> Result<f64, GripError> {
    between(input, value, SMALLEST, LARGEST)
}

/// The value if it is finite and not below zero.
pub(super) fn not_negative(input: Input, value: f64) -> Result<f64, GripError> {
    between(input, value, 0.0, LARGEST)
}

/// The value if it is above zero and at most one.
pub(super) fn fraction(input: Input, value: f64) -> Result<f64, GripError> {
    between(input, value, SMALLEST, 1.0)
}

pub(super) fn between(input: Input, value: f64, least: f64, greatest: f64) -> Result<f64, GripError> {
    if (least..=greatest).contains(&value) {
        Ok(value)
    } else {
        Err(GripError::OutOfRange { input, value, least, greatest })
    }
}
