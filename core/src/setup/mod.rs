//! The set-up: the whole job as plain data, typed once and validated once.
//!
//! [`Entries`] hold what was typed. [`Setup::read`] turns them into typed values or into every [`Fault`]
//! there is. Each input is declared once, in [`INPUTS`], and that declaration drives form, validation,
//! link, JSON Schema and fuzzing.
//!
//! ```
//! use holdround_core::{examples::EXAMPLES, lessons::LESSONS};
//! use holdround_core::quantity::Kind;
//! use holdround_core::setup::{
//!     Assumed, Bears, Boring, Chuck, Choice, Cut, CutKind, Cylinder, DialSet, Document, Entries, Fault, FeedWay, Form,
//!     Grip, GripFrom, Group, INPUTS, Indicator, Input, JawShape, Jaws, LISTS, List, MaterialUse, OwnRing, Part,
//!     PartSurface, Placing, Plan, Ranges, Recut, Setup, Side, SurfaceSide, TaperReading, Toward, Turned, Weighed, When,
//!     declared,
//! };
//!
//! // An input is one declaration: its form, its default, when it matters.
//! let Group { inputs, .. } = &INPUTS[0];
//! assert!(!inputs.is_empty());
//! let input: &Input = declared("cuts.*.feed").unwrap();
//! assert!(input.in_list() == Some(("cuts", "feed")) && !input.is_optional() && input.kind() == Some(Kind::Feed));
//! assert_eq!(input.at(1), "cuts.1.feed");
//! assert!(matches!(input.form, Form::Quantity { kind: Kind::Feed, .. }));
//! let material = declared("part.material").unwrap();
//! assert!(matches!((&material.form, &material.when), (Form::Material(MaterialUse::Part), When::Always)));
//! let Choice { key, .. } = declared("grip.side").unwrap().choices()[0];
//! assert_eq!(key, "outside");
//!
//! // What is typed is kept as text by path; lists grow and shrink.
//! let mut entries = Entries::default();
//! let List { name, .. } = LISTS.iter().find(|list| list.name == "cuts").unwrap();
//! let before = entries.count(name);
//! assert!(entries.add_item(name) && entries.count(name) == before + 1);
//! assert!(entries.matters(input, before));
//! entries.remove_item(name, before);
//! entries.set("part.length", "30 mm");
//! assert!(entries.iter().any(|(path, text)| (path, text) == ("part.length", "30 mm")));
//! entries.unset("part.length");
//! let length = declared("part.length").unwrap();
//! assert_eq!(entries.text_or_default("part.length", length), length.default);
//!
//! // Read, it is typed values or every fault there is.
//! entries.set("part.length", "-1 mm");
//! let faults: Vec<Fault> = Setup::read(&entries).unwrap_err();
//! assert_eq!(faults[0].path, "part.length");
//! assert!(!Document::unreadable("it ends too soon").to_string().is_empty());
//! let setups: Vec<Setup> = EXAMPLES.iter().map(|example| {
//!     Setup::read(&Entries::from_json(example.json).unwrap()).unwrap()
//! }).collect();
//! let setup = setups.iter().find(|setup| setup.grip.side == Side::Outside).unwrap();
//! let Part { surfaces, .. } = &setup.part;
//! let surface: Option<&PartSurface> = surfaces.iter().find(|surface| surface.side == SurfaceSide::Outside);
//! assert!(surface.is_none_or(|surface| surface.to > surface.from));
//! let [outside, bore] = setup.part.diameters_at(0.0, Toward::Far);
//! assert!(outside <= setup.part.largest_outside() && bore >= setup.part.smallest_bore());
//! let Grip { start, length, .. } = &setup.grip;
//! let [from, to] = setup.bearing();
//! assert!(from >= start.value - 1e-9 && to <= start.value + length.value + 1e-9);
//! assert!((setup.bearing_length() - (to - from)).abs() < 1e-12 && setup.bears_between());
//! assert!((setup.overhang() - (setup.part.length() - start.value - length.value)).abs() < 1e-9);
//! assert!((setup.gripped_radius() - setup.bored_radius()).abs() < 1e-3);
//! assert!(setup.no_centre().is_none_or(|why| !why.is_empty()));
//! assert!(setup.while_cutting(true).pressure <= setup.pressure);
//!
//! // Chuck, jaws and cuts.
//! let plate = setups.iter().find_map(|Setup { chuck: Chuck { grip_from, .. }, .. }| match grip_from {
//!     GripFrom::Plate { cylinder, .. } => Some(cylinder),
//!     _ => None,
//! });
//! let Cylinder { bore, rod, .. } = plate.unwrap();
//! assert!(bore > rod);
//! let Jaws { shape, weighed, .. } = &setup.jaws;
//! assert!(weighed.as_ref().is_none_or(|Weighed { mass, .. }| mass.value > 0.0));
//! assert!(matches!(shape, JawShape::Ordinary(_) | JawShape::Wide(_) | JawShape::Pie(_)));
//! assert_eq!(setup.jaw().count, setup.chuck.jaws);
//! let turned = setups.iter().flat_map(|setup| &setup.cuts).find_map(|Cut { kind, .. }| match kind {
//!     CutKind::Turning(turned, FeedWay::Toward) => Some(turned),
//!     _ => None,
//! });
//! let Turned { depth, feed, .. } = turned.unwrap();
//! assert!(depth > feed);
//!
//! // How the jaws are bored, where they stand, what was read; how well all that is known, and what was assumed.
//! let Boring { readings, .. } = &setup.boring;
//! assert!(readings.iter().all(|TaperReading { shows, .. }| !matches!(shows, Bears::Gap(gap) if gap.value < 0.0)));
//! assert!(setup.boring.bare().iter().all(|bare| *bare >= 0.0));
//! let Placing { plan, recut } = &setup.placing;
//! let rings: Vec<&OwnRing> = plan.iter().flat_map(|Plan { rings, .. }| rings).collect();
//! assert!(rings.iter().all(|own| own.ring.outside > own.ring.inside));
//! assert!(recut.as_ref().is_none_or(|Recut { stock, .. }| *stock >= 0.0));
//! let lesson = LESSONS.iter().find(|lesson| lesson.key == "indicator").unwrap();
//! let setup = Setup::read(&Entries::from_json(lesson.json).unwrap()).unwrap();
//! let Indicator { first: DialSet { departures, .. }, .. } = setup.indicator.unwrap();
//! assert!(departures.len() >= 3);
//! let Ranges { friction, .. } = &setup.ranges;
//! assert!(friction.value < 1.0);
//! let assumed: Vec<&Assumed> = setup.assumed.iter().collect();
//! assert!(assumed.iter().all(|one| !one.taken.is_empty()));
//! ```

mod agreement;
mod boring;
pub mod boring_inputs;
mod chuck;
pub mod chuck_inputs;
mod cut;
pub mod cut_inputs;
mod document;
mod entries;
mod fault;
pub mod gauge_inputs;
mod indicator;
pub mod indicator_inputs;
mod input;
mod inputs;
pub mod jaw_inputs;
mod job;
#[cfg(feature = "json")]
mod json;
mod link;
mod part;
pub mod part_inputs;
mod placing;
pub mod profile_inputs;
pub mod range_inputs;
mod ranges;
mod read;
mod read_boring;
mod read_indicator;
mod read_placing;
mod reader;
pub mod recut_inputs;
pub mod ring_inputs;
#[cfg(feature = "json")]
mod schema;
mod start;
pub mod start_inputs;
pub mod stroke_inputs;
pub mod taper_inputs;

pub use crate::grip::Side;
pub use boring::{Bears, Boring, TaperReading};
pub use chuck::{Chuck, Cylinder, GripFrom};
pub use cut::{Cut, CutKind, FeedWay, Turned};
pub use document::{Document, LARGEST_DOCUMENT, SCHEMA_VERSION};
pub use entries::{Entries, bracketed, list_inputs};
pub use fault::Fault;
pub use indicator::{DialSet, Indicator};
pub use input::{Choice, Form, Input, MaterialUse, When};
pub use inputs::{Group, INPUTS, LISTS, List, declared, every_input};
pub use job::{Assumed, AssumedFrom, Grip, JawShape, Jaws, Setup, Weighed};
pub use link::LinkError;
pub(crate) use link::digest;
pub use part::{Part, PartSurface, SurfaceSide, Toward};
pub use placing::{OwnRing, Placing, Plan, Recut};
pub use ranges::Ranges;
#[cfg(feature = "json")]
pub use schema::json_schema;
pub use start::start;
