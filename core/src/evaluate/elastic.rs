//! Shape work: the elastic answer of part and jaws, kept until a shape changes.
//!
//! The part is solved one harmonic after another on finer and finer meshes until its lobes settle, so
//! that a page can do the work in slices. What is kept serves every force, speed and bored size.

use alloc::boxed::Box;
use alloc::vec::Vec;

use crate::contact::{Arc, Contact, ContactError, Face, Gap, JawGive};
use crate::jaw::BoredJaw;
use crate::jaw_spring::{JawColumn, MasterJaw, Section};
use crate::part::{Band, Elastic, PartError, PartModel, PartSpring, Profile, Response, Surface};
use crate::setup::profile_inputs::SURFACE_NAME;
use crate::setup::{Setup, Side, SurfaceSide};
use crate::text::Text;

/// Densities of the part's mesh tried in turn.
pub(super) const DENSITIES: [f64; 5] = [0.6, 1.0, 1.6, 2.5, 4.0];
/// Relative change of the lobes in the last refinement at which refining stops; under rigid jaws, whose pressure has
/// no bound at their edges, half as much again.
pub(super) const SETTLED: f64 = 5e-3;
/// Multiplications of one harmonic at which refining stops all the same: keeps a page responsive.
const MOST_WORK: f64 = 1.2e7;
/// Peak to valley below this share of the largest one around is not judged.
const FAINT: f64 = 0.05;
/// How far off the stiffness of jaw and master jaw may be, either way: our own estimate, no source.
const STIFFNESS_FACTOR: f64 = 2.0;
/// Longest cells along the grip on average, as a share of the radius: a long grip takes more of them.
const CELL: f64 = 0.2;
/// Most cells along the grip.
const MOST_CELLS: usize = 24;
/// Force per jaw with which the lobes of two meshes are compared, N; they are linear in it.
const TRIAL_FORCE: f64 = 1e3;

/// Everything the elastic answer depends on.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Shapes {
    profile: Profile,
    part: Elastic,
    band: Band,
    jaws: usize,
    half_angle: f64,
    surfaces: Vec<Surface>,
    jaw: Elastic,
    /// The jaw below the seat and in front of it.
    sections: [Section; 2],
    /// Where the seat is along the part.
    seat: f64,
    master: [f64; 2],
}

impl Shapes {
    pub(super) fn of(setup: &Setup, jaw: &BoredJaw) -> Self {
        let part = &setup.part;
        let length = setup.grip.length.value;
        let half_angle = jaw.contact_half_angle();
        let width = 2.0 * setup.gripped_radius() * libm::sin(half_angle.min(core::f64::consts::FRAC_PI_2));
        let (blank, step) = (setup.jaws.length.value, setup.jaws.step.value);
        let cells = libm::ceil(setup.bearing_length() / (CELL * setup.gripped_radius())) as usize;
        let cells = cells.clamp(Band::CELLS, MOST_CELLS);
        Self {
            profile: part.profile.clone(),
            part: Elastic {
                youngs: part.modulus.value,
                poisson: part.material.poissons_ratio.value,
                density: part.material.density.value,
            },
            band: Band { side: band_side(setup.grip.side), z: setup.bearing(), cells },
            jaws: setup.chuck.jaws as usize,
            half_angle,
            surfaces: surfaces(setup),
            jaw: body(setup),
            sections: [
                Section { length: setup.jaws.height.value - length, width, depth: blank },
                Section { length, width, depth: blank - step },
            ],
            seat: setup.grip.start.value,
            master: [setup.chuck.radial_stiffness, setup.chuck.tilt_stiffness],
        }
    }

    /// The jaw as a column, its stiffness times `factor`.
    fn column(&self, factor: f64) -> Option<JawColumn> {
        let [radial, tilt] = self.master.map(|stiffness| stiffness * factor);
        let master = MasterJaw { radial, tilt, ..MasterJaw::default() };
        JawColumn::new(&self.sections, self.jaw.youngs * factor, self.jaw.poisson, master).ok()
    }

    pub(super) fn model(&self, density: f64) -> Result<PartModel, PartError> {
        PartModel::new(&self.profile, self.part, self.band, self.jaws, &self.surfaces, density)
    }

    /// Heights above the serrations of points along the part.
    fn heights(&self, points: &[f64]) -> Vec<f64> {
        points.iter().map(|z| self.sections[0].length + z - self.seat).collect()
    }

    /// The face of rigid jaws.
    pub(super) fn rigid(&self, part: &PartSpring) -> Result<Face<'static>, ContactError> {
        let arc = Arc::graded(2.0 * self.half_angle, Arc::CELLS);
        Face::new(part, arc, &JawGive::default()).map(Face::into_owned)
    }

    /// The face of the jaws, their stiffness times `factor`.
    pub(super) fn elastic(&self, rigid: &Face<'static>, factor: f64) -> Result<Face<'static>, ContactError> {
        let heights = self.heights(&rigid.part().points);
        let column = self.column(factor).map_or_else(Vec::new, |column| column.matrix(&heights));
        give(rigid, column, Elastic { youngs: self.jaw.youngs * factor, ..self.jaw })
    }
}

/// One copy of it in the page: it is long.
#[inline(never)]
fn give(rigid: &Face<'static>, column: Vec<f64>, body: Elastic) -> Result<Face<'static>, ContactError> {
    rigid.giving(&JawGive { spot: 0.0, column, body: Some(body) })
}

/// What the top jaws are of.
fn body(setup: &Setup) -> Elastic {
    let material = setup.jaws.material;
    Elastic {
        youngs: material.youngs_modulus.value,
        poisson: material.poissons_ratio.value,
        density: material.density.value,
    }
}

/// Which boundary of the part a grip touches.
fn band_side(side: Side) -> SurfaceSide {
    match side {
        Side::Outside => SurfaceSide::Outside,
        Side::Inside => SurfaceSide::Bore,
    }
}

/// The whole outside and the whole bore, for the drawing, and after them what the user named.
fn surfaces(setup: &Setup) -> Vec<Surface> {
    let part = &setup.part;
    let whole = [0.0, part.length()];
    let outside = Surface { name: "outside".into(), side: SurfaceSide::Outside, z: whole };
    let bore = Surface { name: "bore".into(), side: SurfaceSide::Bore, z: whole };
    let hollow = part.profile.steps().iter().any(|step| step.inner[0] > 0.0 || step.inner[1] > 0.0);
    let named = part.surfaces.iter().map(|surface| Surface {
        name: if surface.name == SURFACE_NAME.default {
            SURFACE_NAME.default.into()
        } else {
            Text::typed(&*surface.name)
        },
        side: surface.side,
        z: [surface.from.value, surface.to.value],
    });
    core::iter::once(outside).chain(hollow.then_some(bore)).chain(named).collect()
}

/// How a shape work stands.
#[derive(Debug)]
pub(super) enum Work {
    /// Harmonics are still to be solved.
    Under(Box<Building>),
    /// All is solved.
    Done(Box<Elasticity>),
    /// It cannot be done, and why.
    Refused(Text),
}

/// A shape work half done.
#[derive(Debug)]
pub(super) struct Building {
    model: PartModel,
    /// Orders still to be solved, the last first.
    orders: Vec<usize>,
    responses: Vec<Response>,
    mesh: usize,
    before: Option<[Vec<f64>; 3]>,
}

/// The elastic answer of part and jaws.
#[derive(Debug)]
pub(super) struct Elasticity {
    /// Jaws as stiff as thought.
    pub(super) usual: Face<'static>,
    /// Jaws half and twice as stiff.
    pub(super) softer_stiffer: [Face<'static>; 2],
    /// Rigid jaws.
    pub(super) rigid: Face<'static>,
    /// The jaw along its height.
    pub(super) column: JawColumn,
    /// Heights of the band's points above the serrations, m.
    pub(super) heights: Vec<f64>,
    /// Names of the surfaces, in the order of their stations.
    pub(super) surfaces: Vec<Surface>,
    /// Density of the mesh it was solved on.
    pub(super) density: f64,
    /// Relative change of the lobes in the last refinement; none if there was none.
    pub(super) change: Option<f64>,
}

/// The jaws on master jaws that tilt otherwise than entered.
pub(super) struct Tilting {
    pub(super) face: Face<'static>,
    pub(super) column: JawColumn,
}

impl Elasticity {
    /// The jaws of `setup` on master jaws that tilt `factor` times as stiffly.
    pub(super) fn tilting(&self, setup: &Setup, factor: f64) -> Result<Tilting, ContactError> {
        let column = self.column.tilting(factor);
        let face = give(&self.rigid, column.matrix(&self.heights), body(setup))?;
        Ok(Tilting { face, column })
    }
}

impl Work {
    /// Begins the work for `shapes`.
    pub(super) fn begin(shapes: &Shapes) -> Self {
        match Building::on(shapes, 0, None) {
            Ok(building) => Self::Under(Box::new(building)),
            Err(error) => Self::Refused(Text::from(&error)),
        }
    }

    /// Does one slice: a harmonic, or what follows the last one of a mesh.
    pub(super) fn slice(self, shapes: &Shapes) -> Self {
        match self {
            Self::Under(building) => building.slice(shapes).unwrap_or_else(Self::Refused),
            done => done,
        }
    }

    /// Share of the present mesh that is solved.
    pub(super) fn share_done(&self) -> f64 {
        match self {
            Self::Under(building) => {
                let solved = building.responses.len() as f64;
                solved / (solved + building.orders.len() as f64 + 1.0)
            }
            _ => 1.0,
        }
    }
}

impl Building {
    fn on(shapes: &Shapes, mesh: usize, before: Option<[Vec<f64>; 3]>) -> Result<Self, PartError> {
        let model = shapes.model(DENSITIES[mesh])?;
        let mut orders: Vec<usize> = model.orders().collect();
        orders.reverse();
        Ok(Self { model, orders, responses: Vec::new(), mesh, before })
    }

    fn slice(mut self, shapes: &Shapes) -> Result<Work, Text> {
        if let Some(order) = self.orders.pop() {
            self.responses.push(self.model.respond(order).map_err(|error| Text::from(&error))?);
            return Ok(Work::Under(Box::new(self)));
        }
        let spring = self.model.gather(self.responses);
        let rigid = shapes.rigid(&spring).map_err(|error| Text::from(&error))?;
        let usual = shapes.elastic(&rigid, 1.0).map_err(|error| Text::from(&error))?;
        let lobes = lobes(shapes, &usual, &rigid).map_err(|error| Text::from(&error))?;
        let changes = self.before.map(|before| [0, 1, 2].map(|k| change(&before[k], &lobes[k])));
        let settled = changes.is_some_and(|[even, usual, rigid]| even.max(usual).max(rigid / 1.5) <= SETTLED);
        if !settled && self.mesh + 1 < DENSITIES.len() {
            let next = Self::on(shapes, self.mesh + 1, Some(lobes));
            if let Ok(next) = next
                && next.model.work() <= MOST_WORK
            {
                return Ok(Work::Under(Box::new(next)));
            }
        }
        let change = changes.map(|[even, usual, _]| even.max(usual));
        let softer_stiffer = [1.0 / STIFFNESS_FACTOR, STIFFNESS_FACTOR].map(|factor| shapes.elastic(&rigid, factor));
        let [softer, stiffer] = softer_stiffer.map(|face| face.map_err(|error| Text::from(&error)));
        Ok(Work::Done(Box::new(Elasticity {
            usual,
            softer_stiffer: [softer?, stiffer?],
            rigid,
            column: shapes.column(1.0).ok_or_else(|| Text::from(&ContactError::Give))?,
            heights: shapes.heights(&spring.points),
            surfaces: shapes.surfaces.clone(),
            density: DENSITIES[self.mesh],
            change,
        })))
    }
}

/// Peak to valley of each surface under even pressure, in the jaws as they are, and in rigid jaws.
fn lobes(shapes: &Shapes, usual: &Face<'static>, rigid: &Face<'static>) -> Result<[Vec<f64>; 3], ContactError> {
    let fitting = Gap::straight(0.0);
    let pressed = [
        (usual, usual.even(TRIAL_FORCE)?),
        (usual, usual.press(TRIAL_FORCE, &fitting)?),
        (rigid, rigid.press(TRIAL_FORCE, &fitting)?),
    ];
    let lobes = |face: &Face<'static>, contact: &Contact, at| face.worst(contact, at).map(|(_, l)| l.peak_to_valley());
    let all = 0..shapes.surfaces.len();
    Ok(pressed.map(|(face, contact)| all.clone().map(|at| lobes(face, &contact, at).unwrap_or(0.0)).collect()))
}

/// Largest relative change among values that are not faint beside the largest.
fn change(before: &[f64], after: &[f64]) -> f64 {
    let largest = after.iter().copied().fold(0.0, f64::max);
    let told = before.iter().zip(after).filter(|(_, now)| **now > FAINT * largest);
    told.map(|(then, now)| (then / now - 1.0).abs()).fold(0.0, f64::max)
}
