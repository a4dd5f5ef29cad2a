//! The set-up: the whole job as plain data, typed once and validated once.
//!
//! [`Entries`] hold what was typed. [`Setup::read`] turns them into typed values or into every [`Fault`]
//! there is. Each input is declared once, in [`INPUTS`], and that declaration drives form, validation,
//! link, JSON Schema and fuzzing.

mod agreement;
mod boring;
pub mod boring_inputs;
pub mod chuck_inputs;
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
pub use document::{Document, LARGEST_DOCUMENT, SCHEMA_VERSION};
pub use entries::{Entries, bracketed};
pub use fault::Fault;
pub use indicator::{DialSet, Indicator};
pub use input::{Choice, Form, Input, MaterialUse, When};
pub use inputs::{Group, INPUTS, LISTS, List, declared, every_input};
pub use job::{
    Assumed, AssumedFrom, Chuck, Cut, CutKind, Cylinder, FeedWay, Grip, GripFrom, JawShape, Jaws, Part, PartSurface,
    Setup, SurfaceSide, Toward, Turned, Weighed,
};
pub use link::LinkError;
pub(crate) use link::digest;
pub use placing::{OwnRing, Placing, Plan, Recut};
pub use ranges::Ranges;
#[cfg(feature = "json")]
pub use schema::json_schema;
pub use start::start;
