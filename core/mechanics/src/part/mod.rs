//! The turned part as a spring: a body of revolution under loads that are not.
//!
//! A [`Profile`] of steps is meshed ([`Mesh`]), its stiffness assembled once for all harmonics
//! ([`PartModel`]), and solved order by order into a [`PartSpring`].
//!
//! ```
//! use holdround_mechanics::part::{
//!     Band, Elastic, Mesh, PartError, PartModel, PartSpring, Profile, Response, Side, Stations, Step, Surface, TooLarge,
//! };
//!
//! // A cup gripped on its rim.
//! let cup = Profile::new(&[Step::cylinder(0.03, 0.1, 0.09), Step::cylinder(0.01, 0.1, 0.0)])?;
//! assert_eq!(cup.steps().len(), 2);
//! let steel = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
//! assert!(steel.is_valid() && !Elastic { poisson: 0.5, ..steel }.is_valid());
//! let band = Band { side: Side::Outside, z: [0.0, 0.02], cells: Band::CELLS };
//! let bore = Surface { name: "bore".into(), side: Side::Bore, z: [0.0, 0.03] };
//! let model = PartModel::new(&cup, steel, band, 3, &[bore.clone()], 0.5)?;
//! let mesh: &Mesh = model.mesh();
//! assert_eq!(model.unknowns(), 3 * mesh.nodes.len());
//! assert!(model.work() > 0.0 && !mesh.lines().is_empty());
//!
//! // One harmonic after another, so that a page can breathe between them; what lies between is found at the end.
//! let solved: Vec<Response> = model.orders().map(|order| model.respond(order)).collect::<Result<_, _>>()?;
//! let spring: PartSpring = model.gather(solved);
//! assert_eq!(spring.goes_on, [false, true], "there is more of the cup behind the jaws");
//! let stations: &Stations = &spring.stations[0];
//! assert_eq!(stations.at.len(), stations.pressed.len());
//!
//! assert_eq!(PartModel::new(&cup, steel, band, 0, &[], 0.5).err(), Some(PartError::Jaws { jaws: 0 }));
//! let fine = PartModel::new(&cup, steel, band, 3, &[bore], 10.0).err();
//! assert!(matches!(fine, Some(PartError::TooLarge(TooLarge { nodes })) if nodes > 6000));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod element;
pub(crate) mod envelope;
mod error;
mod harmonic;
mod load;
mod mesh;
mod numbering;
mod profile;
mod sizing;
mod spring;
mod strips;
mod subdivision;
mod surface;

#[cfg(test)]
mod manufactured;
#[cfg(test)]
mod properties;
#[cfg(test)]
mod reference;

pub use element::Elastic;
pub use error::PartError;
pub use mesh::{Edge, MAX_NODES, Mesh, TooLarge};
pub use profile::{LARGEST_DIAMETER, MAX_STEPS, Profile, ProfileError, Step, THINNEST_WALL};
pub use spring::{MAX_HARMONICS, MAX_ORDER, PartModel, PartSpring, Response, Stations};
pub use surface::{Band, Side, Surface};
