//! What both drawing views are made of: sheet and scale, outlines, lettering, dimensions, arrows.

mod along;
mod arrow;
mod bore;
mod both;
mod dimension;
mod handle;
mod hatching;
mod jaw;
mod lettering;
mod outline;
mod path;
mod pressure;
mod round_number;
mod row;
mod shape;
mod sheet;
#[cfg(test)]
mod tests;
mod tool;

pub(super) use along::Along;
pub(super) use arrow::{block, block_arrow, line_arrow};
pub(super) use bore::{at_front, is_hollow};
pub(super) use both::Both;
pub(super) use dimension::{Callout, Dimension};
pub(super) use handle::{Axis, FINGER, Handle};
pub(super) use hatching::{THINNEST_HATCHED, hatchings};
pub(super) use jaw::{JawOutline, heights};
pub(super) use lettering::{Anchor, LETTER_HEIGHT, figures_width, letters};
pub(super) use outline::{Half, Outline, off_axis};
pub(super) use path::{Point, arc, closed, coordinate, open, polar, wavy};
pub(super) use pressure::PRESSURE_KEY;
pub(super) use round_number::at_least;
pub(crate) use round_number::at_most;
pub(super) use row::{Label, Row};
pub(super) use shape::{Shape, State, around};
pub(super) use sheet::{CUT_OFF, LEFT, REACH, RIGHT, Sheet, TOP, stand_back};
pub(super) use tool::{Tool, corners, direction};
