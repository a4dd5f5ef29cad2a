//! Contact between jaws and part: a frictionless, one-sided contact that decides for itself
//! where it bears.
//!
//! A [`Face`] joins a [`crate::part::PartSpring`] and a jaw ([`JawGive`]); pressing it over a
//! [`Gap`] gives a [`Contact`], whose effect on the part's surfaces is a [`Lobing`] per station.
//!
//! ```
//! use holdround_mechanics::contact::{Arc, Contact, ContactError, Face, Gap, JawGive, Lobing};
//! use holdround_mechanics::part::{Band, Elastic, PartModel, Profile, Side, Step, Surface};
//! let ring = Profile::new(&[Step::cylinder(0.02, 0.15, 0.138)])?;
//! let steel = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
//! let band = Band { side: Side::Outside, z: [0.0, 0.02], cells: Band::CELLS };
//! let bore = Surface { name: "bore".into(), side: Side::Bore, z: [0.0, 0.02] };
//! let part = PartModel::new(&ring, steel, band, 3, &[bore], 0.6)?.spring()?;
//!
//! // Rigid jaws of 60 degrees, then the same on aluminium bodies, kept with its own copy of the part.
//! let rigid = Face::new(&part, Arc::graded(1.047, 6), &JawGive::default())?;
//! let aluminium = Elastic { youngs: 71e9, poisson: 0.33, density: 2780.0 };
//! let soft = rigid.giving(&JawGive { body: Some(aluminium), ..JawGive::default() })?.into_owned();
//! assert_eq!(soft.arc().angles().len(), 7);
//! assert_eq!(soft.part().points, part.points);
//!
//! // Bored larger by a little they bear over most of their arc, because a thin ring flattens between jaws; by much, in
//! // the middle only.
//! let right: Contact = soft.press(3000.0, &Gap::straight(0.3e-3))?;
//! let larger = soft.press_from(3000.0, &Gap::straight(2e-3), Some(&right))?;
//! assert!(soft.contact_share(&larger) < soft.contact_share(&right));
//! assert!(soft.edge_bearing(&larger) < soft.edge_bearing(&right));
//!
//! // What a jaw presses: its force along its own axis, on each band point, and normal to the face.
//! assert!((soft.force(&right) - 3000.0).abs() < 1e-6);
//! assert!((soft.force_along(&right).iter().sum::<f64>() - 3000.0).abs() < 1e-6);
//! let normal: f64 = soft.normal_forces(&right).map(|[_, _, force]| force).sum();
//! assert!((normal - soft.normal_force(&right)).abs() < 1e-6 && normal >= 3000.0);
//! assert!((soft.centre_along(&right) - 0.01).abs() < 1e-5);
//! assert!(soft.greatest_mean_pressure(&right, 1e-3) > soft.greatest_mean_pressure(&right, 10e-3));
//! assert_eq!(soft.gap_along(&larger).len(), part.points.len());
//!
//! // What it does to the bore, station by station and at the worst one.
//! let lobes: Vec<Lobing> = soft.lobing(&right, 0);
//! let (at, worst) = soft.worst(&right, 0).unwrap();
//! assert!((lobes[at].peak_to_valley() / worst.peak_to_valley() - 1.0).abs() < 1e-3);
//! let [low, high] = worst.extremes();
//! assert!(low < worst.mean() && worst.mean() < high && worst.power() > 0.0);
//!
//! assert_eq!(Face::new(&part, Arc::even(2.5, 6), &JawGive::default()).err(), Some(ContactError::Arc));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod active_set;
mod arc;
mod bearing;
mod compliance;
mod face;
mod lines;
mod lobing;
mod short_waves;

pub use arc::Arc;
pub use compliance::JawGive;
pub use face::{Contact, ContactError, Face, Gap, SHORTEST_DENT};
pub use lobing::Lobing;

#[cfg(test)]
mod reference;
