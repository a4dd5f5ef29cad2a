//! What both views show of one stage: the sheet, the part's shape, the jaws and their pressure.

use holdround_core::setup::Side;

use super::jaw::JawOutline;
use super::pressure::PressureBand;
use super::shape::{Shape, State};
use super::sheet::Sheet;
use crate::language::say;
use crate::view::Stage;

/// What both views show.
#[derive(Clone, Debug)]
pub(in crate::view) struct Both<'a> {
    /// Scale and extent.
    pub(in crate::view) sheet: Sheet,
    /// The part's outline from the front.
    pub(in crate::view) shape: Shape<'a>,
    /// A jaw from the front.
    pub(in crate::view) jaw: JawOutline,
    /// How hard the jaws press.
    pub(in crate::view) pressure: PressureBand,
    /// Largest radius of the outside, view units.
    pub(in crate::view) outside: f64,
    /// Which way the part is gripped, in words.
    pub(in crate::view) way: &'static str,
}

impl<'a> Both<'a> {
    /// What both views show of `stage`.
    pub(in crate::view) fn of(stage: &Stage<'a>) -> Self {
        let sheet = Sheet::of(stage);
        let shape = Shape::of(stage, sheet);
        let jaw = JawOutline::of(stage, sheet);
        let way = match stage.setup.grip.side {
            Side::Outside => say("gripped on its outside"),
            Side::Inside => say("gripped in its bore"),
        };
        Self {
            sheet,
            pressure: PressureBand::of(stage, sheet, shape.state == State::AtSpeed, jaw.grip),
            shape,
            jaw,
            outside: sheet.radius(stage.setup.part.largest_outside()),
            way,
        }
    }
}
