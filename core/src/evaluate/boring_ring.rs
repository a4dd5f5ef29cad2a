//! The boring ring or plug, as findings.

use alloc::vec::Vec;

use super::groove;
use super::placing::{Line, length_of, refuse, tell_length};
use crate::boring_ring::{Bearing, Groove, Place, Ring, bar_clearance, below_bore, cut_clearance, gauged_diameter};
use crate::findings::{BearingChoice, Finding, Placing, RingSection, Scene, Sense};
use crate::grip::Side;
use crate::quantity::Kind;
use crate::setup::{OwnRing, Plan, Setup};
use crate::stroke::Placed;
use crate::text::Text;

pub(super) const SKETCH: &str = "geometry of the jaw on its ring";
/// How far the ring's height may be from the one entered with the jaws before that is told, m.
const SAME_HEIGHT: f64 = 1e-3;

/// One job's ring and what it depends on.
pub(super) struct Job<'a> {
    setup: &'a Setup,
    pub(super) plan: &'a Plan,
    pub(super) placed: &'a Placed,
    pub(super) place: Place,
    /// Diameter of the boring bar, m, where known.
    pub(super) bar: Option<f64>,
}

/// Tells ring or plug for the jaws as they stand. `bar` is the diameter of the boring bar, m, where known.
pub(super) fn tell(
    setup: &Setup,
    plan: &Plan,
    placed: &Placed,
    bar: Option<f64>,
    found: &mut Vec<Finding>,
    scene: &mut Scene,
) {
    let job = Job::of(setup, plan, placed, bar);
    let drawn = scene.placing.get_or_insert_with(Placing::default);
    drawn.bearings = job.bearings();
    let chosen = plan.bearing;
    if !chosen.stops(setup.grip.side) {
        let why = match setup.grip.side {
            Side::Outside => {
                "These jaws close: a ring around them would not stop them. They need a plug between them, or a ring in the counterbores or in a groove."
            }
            Side::Inside => {
                "These jaws open: a plug between them would not stop them. They need a ring around them, in the counterbores or in a groove."
            }
        };
        refuse(found, "ring.diameter", "Ring or plug, on diameter", Kind::Length, why, "ring.bearing");
        return;
    }
    let ring = job.diameter(&drawn.bearings, found);
    if let Some(ring) = ring {
        job.clearances(&ring, found);
        drawn.ring = Some(job.section(&ring));
    }
    drawn.own_rings = job.own_rings(found);
    let nothing_clears = !drawn.bearings.iter().any(|way| way.clears);
    if chosen == Bearing::Groove || nothing_clears {
        let made = job.groove(found);
        if let Some(groove) = made {
            drawn.groove = Some(job.groove_section(&groove));
            if chosen == Bearing::Groove {
                drawn.ring = Some(job.section(&groove.ring));
            }
            scene.procedures.push(groove::steps(setup.grip.side));
        }
    }
}

/// The key of a bearing, as in its input.
fn key(bearing: Bearing) -> &'static str {
    match bearing {
        Bearing::Counterbores => "counterbores",
        Bearing::Plug => "plug",
        Bearing::Groove => "groove",
        Bearing::Around => "around",
    }
}

/// The bearing in words.
fn words(bearing: &str) -> &'static str {
    match bearing {
        "counterbores" => "a ring in the counterbores",
        "plug" => "a plug between the jaw ends",
        _ => "a ring around the jaw ends",
    }
}

impl<'a> Job<'a> {
    pub(super) fn of(setup: &'a Setup, plan: &'a Plan, placed: &'a Placed, bar: Option<f64>) -> Self {
        let place = Place {
            side: setup.grip.side,
            end_closed: placed.end - placed.bored_at,
            bored_radius: setup.bored_radius(),
            height: setup.jaws.height.value,
            bored_depth: setup.grip.length.value,
        };
        Self { setup, plan, placed, place, bar }
    }

    pub(super) fn middle_of_stroke(&self) -> f64 {
        self.plan.master.stroke / 2.0
    }

    /// Height of the ring's middle above the serrations, m: it lies on the bottom of counterbore or groove, or where
    /// the jaws' entry has it.
    pub(super) fn middle(&self, bearing: Bearing, ring: &Ring) -> f64 {
        match bearing {
            Bearing::Counterbores => self.place.height - self.plan.blank.counterbore_depth + 0.5 * ring.height,
            Bearing::Groove => self.place.height - 0.5 * ring.height,
            Bearing::Plug | Bearing::Around => self.setup.jaws.ring_height.value,
        }
    }

    /// The one of the user's own rings that is used.
    pub(super) fn used(&self) -> Option<&OwnRing> {
        self.plan.ring_used.and_then(|at| self.plan.rings.get(at))
    }

    /// Whether a clearance is what is wanted, but for rounding.
    pub(super) fn enough(&self, clearance: f64) -> bool {
        clearance >= self.plan.tool_clearance - 1e-9 * self.place.height
    }

    fn section(&self, ring: &Ring) -> RingSection {
        let middle = self.middle(self.plan.bearing, ring);
        RingSection {
            radii: [ring.inside / 2.0, ring.outside / 2.0],
            heights: [middle - ring.height / 2.0, middle + ring.height / 2.0],
        }
    }

    fn groove_section(&self, groove: &Groove) -> RingSection {
        RingSection {
            radii: [groove.inside / 2.0, groove.outside / 2.0],
            heights: [self.place.height - groove.depth, self.place.height],
        }
    }

    /// Every bearing but the groove that stops these jaws, with a ring made for mid-stroke.
    fn bearings(&self) -> Vec<BearingChoice> {
        let side = self.place.side;
        let ways = Bearing::ALL.into_iter().filter(|bearing| bearing.stops(side));
        ways.filter_map(|bearing| {
            let diameter = gauged_diameter(bearing, &self.place, &self.plan.blank, self.middle_of_stroke())?;
            let ring = Ring::to_make(bearing, side, diameter, self.plan.section);
            let clearance = cut_clearance(&ring, &self.place, self.middle(bearing, &ring));
            Some(BearingChoice { bearing: key(bearing), diameter, clearance, clears: self.enough(clearance) })
        })
        .collect()
    }

    /// The diameter for mid-stroke, and the ring the jaws are bored on: the one in use, or one made.
    fn diameter(&self, ways: &[BearingChoice], found: &mut Vec<Finding>) -> Option<Ring> {
        let (bearing, side) = (self.plan.bearing, self.place.side);
        if bearing == Bearing::Groove {
            return None;
        }
        let name = match (bearing, side) {
            (Bearing::Plug, _) => "Plug for mid-stroke, on diameter",
            (_, Side::Outside) => "Boring ring for mid-stroke, its outside",
            (_, Side::Inside) => "Boring ring for mid-stroke, its inside",
        };
        let middle = self.middle_of_stroke();
        let Some(diameter) = gauged_diameter(bearing, &self.place, &self.plan.blank, middle) else {
            let why = "There is no room for it between the jaws.";
            refuse(found, "ring.diameter", name, Kind::Length, why, "ring.bearing");
            return None;
        };
        let mut others = ways.iter().filter(|way| way.clears).map(|way| words(way.bearing).into()).peekable();
        let clears = ways.iter().any(|way| way.bearing == key(bearing) && way.clears);
        let caution = (!clears).then(|| {
            if others.peek().is_none() {
                "It would not clear the cut, nor would any other: cut a groove for a ring of its own.".into()
            } else {
                Text::of("It would not clear the cut; {} would.").with(Text::row(others, " or "))
            }
        });
        let finding = length_of(
            &Line {
                id: "ring.diameter",
                name,
                entry: "ring.bearing",
                says: "Twice the radius, in the middle of the stroke, of what lies against ring or plug: the far wall of the near counterbores, or the gripping ends",
                formula: match (bearing, side) {
                    (Bearing::Counterbores, Side::Outside) => "D = 2 (r_screw + c/2)",
                    (Bearing::Counterbores, Side::Inside) => "D = 2 (r_screw − c/2)",
                    _ => "D = 2 r_end",
                },
                given: &["r_screw", "c", "r_end"],
                symbol: "D",
                source: SKETCH,
            },
            diameter,
            None,
            "",
            &[
                self.placed.screws[0] - self.placed.bored_at + middle,
                self.plan.blank.counterbore,
                self.place.radius(0.0, middle),
            ],
        );
        found.push(Finding { caution, ..finding });
        Some(self.used().map_or_else(|| Ring::to_make(bearing, side, diameter, self.plan.section), |own| own.ring))
    }

    fn clearances(&self, ring: &Ring, found: &mut Vec<Finding>) {
        let middle = self.middle(self.plan.bearing, ring);
        let free = cut_clearance(ring, &self.place, middle);
        let below = free <= below_bore(ring, &self.place, middle);
        let (name, formula) = match (below, self.place.side) {
            (true, _) => ("From the bottom of the bore down to ring or plug", "h_jaw − l_bore − (z + h/2)"),
            (false, Side::Outside) => ("From the bored circle to the ring, per side", "D_inside/2 − R_bored"),
            (false, Side::Inside) => ("From the turned circle to the ring, per side", "R_bored − D_outside/2"),
        };
        let least = self.plan.tool_clearance;
        tell_length(
            found,
            &Line {
                id: "ring.clearance",
                name,
                entry: "ring.bearing",
                says: "Between ring or plug and what is cut, beside it or below it",
                formula,
                given: &["D_inside", "D_outside", "R_bored", "z", "h"],
                symbol: "clearance",
                source: SKETCH,
            },
            free,
            Some((Sense::AtLeast, least, "the clearance wanted for the tool")),
            "",
            &[ring.inside, ring.outside, self.place.bored_radius, middle, ring.height],
        );
        if let (Some(bar), Side::Outside) = (self.bar, self.place.side) {
            tell_length(
                found,
                &Line {
                    id: "ring.bar",
                    name: "The boring bar has to spare, on diameter",
                    entry: "ring.bearing",
                    says: "Where it first goes in: between the jaw ends, and through the ring unless that lies below the bore",
                    formula: "min(2 r_end, D_inside) − d_bar",
                    given: &["r_end", "D_inside", "d_bar"],
                    symbol: "spare",
                    source: SKETCH,
                },
                bar_clearance(ring, &self.place, middle, self.placed.end, bar),
                Some((Sense::AtLeast, 2.0 * least, "the clearance wanted for the tool, on diameter")),
                "",
                &[self.placed.end, ring.inside, bar],
            );
        }
        let differs = libm::fabs(middle - self.setup.jaws.ring_height.value) > SAME_HEIGHT;
        tell_length(
            found,
            &Line {
                id: "ring.middle",
                name: "Middle of the ring above the serrations",
                entry: "jaws.ring_height",
                says: "Lying on the bottom of counterbore or groove; ring or plug at the jaw ends lie where entered",
                formula: "z = h_jaw − depth + h/2",
                given: &["h_jaw", "h"],
                symbol: "z",
                source: SKETCH,
            },
            middle,
            None,
            if differs {
                "The ring's height entered with the jaws is another: how far the jaws lean while bored is worked out from that. Enter this one."
            } else {
                ""
            },
            &[self.place.height, ring.height],
        );
    }
}
