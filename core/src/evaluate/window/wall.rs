//! Shape work for another wall, on the mesh that was fine enough for the wall as drawn.

use alloc::vec::Vec;

use crate::contact::Face;
use crate::evaluate::elastic::Shapes;
use crate::jaw::BoredJaw;
use crate::part::{PartModel, Response};
use crate::setup::Setup;

/// The part with another wall in its jaws.
#[derive(Debug)]
pub(in crate::evaluate) enum Wall {
    /// Harmonics are still to be solved.
    Under { shapes: Shapes, model: PartModel, orders: Vec<usize>, responses: Vec<Response> },
    /// All is solved.
    Done(Shapes, Face<'static>),
    /// There is no such part.
    Refused,
}

impl Wall {
    /// `earlier` is taken if it is of the same shapes.
    pub(in crate::evaluate) fn begin(setup: &Setup, jaw: &BoredJaw, density: f64, earlier: Option<Self>) -> Self {
        let shapes = Shapes::of(setup, jaw);
        if let Some(Self::Done(its, face)) = earlier
            && its == shapes
        {
            return Self::Done(its, face);
        }
        let Ok(model) = shapes.model(density) else { return Self::Refused };
        let mut orders: Vec<usize> = model.orders().collect();
        orders.reverse();
        Self::Under { shapes, model, orders, responses: Vec::new() }
    }

    /// Solves a harmonic, or what follows the last one.
    pub(in crate::evaluate) fn slice(self) -> Self {
        let Self::Under { shapes, model, mut orders, mut responses } = self else { return self };
        if let Some(order) = orders.pop() {
            let Ok(response) = model.respond(order) else { return Self::Refused };
            responses.push(response);
            return Self::Under { shapes, model, orders, responses };
        }
        let spring = model.gather(responses);
        let face = shapes.rigid(&spring).and_then(|rigid| shapes.elastic(&rigid, 1.0));
        face.map_or(Self::Refused, |face| Self::Done(shapes, face))
    }
}
