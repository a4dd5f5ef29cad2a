//! The taper to bore into soft jaws, and what readings of bored jaws teach about the chuck.
//!
//! Jaws are bored while the boring ring leans them, and grip while the part leans them. What differs between the two
//! opens the bore at one end; a taper closes it. More metal at the tip than at the base counts as positive, for both
//! grips, per side.
//!
//! The taper to bore cancels the jaws' own opening and no more. A part that gives more at one end of the face is
//! pressed less there even by jaws that stand along the axis. To even that out, the jaws would have to squeeze the
//! part out of true where it is weakest, or stand open at the tip: so it is told beside the taper, and not bored.
//!
//! Tilt of the master jaw leans the whole face, so that a chuck softer or stiffer than thought acts as a change of
//! taper. One pressed face therefore answers for every tilt stiffness, and for whatever else leans the face
//! ([`learn`]). Across a wide face the lean follows the cosine of the angle from the jaw's middle, and a taper does
//! not: there the answer is a little off, and the next reading puts it right.
//!
//! ```
//! use holdround_mechanics::contact::{Arc, Contact, Face, Gap, JawGive};
//! use holdround_mechanics::jaw_spring::{JawColumn, MasterJaw, Section};
//! use holdround_mechanics::part::{Band, Elastic, PartModel, Profile, Side, Step};
//! use holdround_mechanics::taper::{
//!     Aim, Bluing, End, Grip, Learned, Marked, Pressings, Reading, Shows, TaperError, Tilt, learn,
//! };
//!
//! // A sleeve 40 mm long in steel jaws whose face stands 25 mm above the serrations.
//! let steel = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
//! let sleeve = Profile::new(&[Step::cylinder(0.04, 0.1, 0.06)])?;
//! let band = Band { side: Side::Outside, z: [0.0, 0.04], cells: Band::CELLS };
//! let part = PartModel::new(&sleeve, steel, band, 3, &[], 0.6)?.spring()?;
//! let section = |length, depth| Section { length, width: 0.04, depth };
//! let master = MasterJaw::default();
//! let column = JawColumn::new(&[section(0.025, 0.045), section(0.04, 0.035)], 205e9, 0.29, master)?;
//! let heights: Vec<f64> = part.points.iter().map(|z| 0.025 + z).collect();
//! let give = JawGive { spot: 0.0, column: column.matrix(&heights), body: Some(steel) };
//! let face = Face::new(&part, Arc::graded(0.8, 8), &give)?;
//! // Found quicker from a contact that is known to bear alike.
//! let pressings = Pressings::from_one(0.0, face.press(2e4, &Gap::straight(0.0))?);
//! let grip = Grip {
//!     face: &face, column: &column, heights: &heights, base: 0.025, length: 0.04, bears: [0.025, 0.065],
//!     larger: 0.0, force: 2e4, ring_force: 2e4, ring_height: 0.0, tilt: master.tilt, tilt_depth: master.depth,
//!     pressings: &pressings,
//! };
//!
//! // Bored over a low ring and pressed higher up, the jaws open at the tip; the taper cancels that.
//! let aim: Aim = grip.aim()?;
//! assert_eq!(aim.lean, grip.lean());
//! assert!(aim.taper > 0.0 && aim.unseen[0] < aim.taper && aim.taper < aim.unseen[1]);
//! assert!((grip.even_taper()? - aim.taper).abs() < 0.2 * aim.taper, "a sleeve gives nearly alike along it");
//! let tapered: Contact = grip.press(aim.taper)?;
//! assert_eq!(Bluing::of(&grip, &tapered).marked, Marked::Even);
//! let straight = grip.press(0.0)?;
//! assert_eq!(Bluing::of(&grip, &straight).marked.words(), Marked::Base.words());
//! assert_eq!(grip.rubbed(&straight).last(), Some(&false), "the tip keeps its blue");
//! assert!(grip.tip_gap(&straight) > 0.0 && grip.centre(&straight) < grip.centre(&tapered));
//!
//! // A feeler that goes in deeper than thought tells of a softer chuck, and asks for more taper.
//! let shows = Shows::TipGap(grip.tip_gap(&straight) + 10e-6);
//! let Learned { tilt, taper, .. } = learn(&grip, aim, &[Reading { taper: 0.0, force: 2e4, shows }])?;
//! let Tilt { stiffness, .. } = tilt?;
//! assert!(stiffness < master.tilt && taper > aim.taper);
//! let open = Reading { taper: 0.0, force: 2e4, shows: Shows::TipGap(2e-3) };
//! assert_eq!(learn(&grip, aim, &[open]), Err(TaperError::Loose(0)), "two millimetres are no lean");
//!
//! // Rubbed blank at the base only, over half of the face: too little taper. Pressed less, jaws and part give less, and
//! // a thousandth of an inch shows.
//! let shows = Shows::Only(End::Base, Some(0.02));
//! assert!(learn(&grip, aim, &[Reading { taper: 0.0, force: 2e4, shows }])?.taper > 0.0);
//! assert!(grip.blued(aim.taper, 25.4e-6)?.is_some_and(|force| force <= 2e4));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod bluing;
mod grip;
mod learn;
mod pressings;
mod root;

pub use bluing::{Bluing, Marked};
pub use grip::{Aim, End, Grip, TaperError};
pub use learn::{FEELER, Learned, Reading, Shows, Tilt, learn};
pub use pressings::Pressings;

#[cfg(test)]
mod tests;
