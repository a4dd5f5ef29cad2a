//! The boring ring or plug, as findings.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::placing::{Line, refuse, tell_length};
use crate::boring_ring::{
    Bearing, Groove, Place, Ring, bar_clearance, below_bore, cut_clearance, gauged_diameter, groove, position_on,
};
use crate::findings::{BearingChoice, Finding, OwnRingFit, Placing, Procedure, RingSection, Scene, Sense, Step, term};
use crate::grip::Side;
use crate::quantity::Kind;
use crate::setup::{Plan, Setup};
use crate::stroke::Placed;

const SKETCH: &str = "geometry of the jaw on its ring";
/// How much wider than its ring a groove is cut, so that the ring goes in, m. Our own starting value.
const PLAY: f64 = 1e-3;
/// How far the ring's height may be from the one entered with the jaws before that is told, m.
const SAME_HEIGHT: f64 = 1e-3;

/// One job's ring and what it depends on.
struct Job<'a> {
    setup: &'a Setup,
    plan: &'a Plan,
    placed: &'a Placed,
    place: Place,
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
    let place = Place {
        side: setup.grip.side,
        end_closed: placed.end - placed.bored_at,
        bored_radius: setup.bored_radius(),
        height: setup.jaws.height.value,
        bored_depth: setup.grip.length.value,
    };
    let job = Job { setup, plan, placed, place };
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
        job.clearances(&ring, bar, found);
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
            scene.procedures.push(groove_steps(setup.grip.side));
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

impl Job<'_> {
    fn middle_of_stroke(&self) -> f64 {
        self.plan.master.stroke / 2.0
    }

    /// Height of the ring's middle above the serrations, m: it lies on the bottom of counterbore or groove, or where
    /// the jaws' entry has it.
    fn middle(&self, bearing: Bearing, ring: &Ring) -> f64 {
        match bearing {
            Bearing::Counterbores => self.place.height - self.plan.blank.counterbore_depth + 0.5 * ring.height,
            Bearing::Groove => self.place.height - 0.5 * ring.height,
            Bearing::Plug | Bearing::Around => self.setup.jaws.ring_height.value,
        }
    }

    /// Whether a clearance is what is wanted, but for rounding.
    fn enough(&self, clearance: f64) -> bool {
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
        let others: Vec<_> = ways.iter().filter(|way| way.clears).map(|way| words(way.bearing)).collect();
        let clears = ways.iter().any(|way| way.bearing == key(bearing) && way.clears);
        let caution = match (clears, others.is_empty()) {
            (true, _) => String::new(),
            (false, false) => format!("It would not clear the cut; {} would.", others.join(" or ")),
            (false, true) => {
                "It would not clear the cut, nor would any other: cut a groove for a ring of its own.".to_string()
            }
        };
        tell_length(
            found,
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
            &caution,
            &[
                self.placed.screws[0] - self.placed.bored_at + middle,
                self.plan.blank.counterbore,
                self.place.radius(0.0, middle),
            ],
        );
        let used = self.plan.ring_used.and_then(|at| self.plan.rings.get(at));
        Some(used.map_or_else(|| Ring::to_make(bearing, side, diameter, self.plan.section), |own| own.ring))
    }

    fn clearances(&self, ring: &Ring, bar: Option<f64>, found: &mut Vec<Finding>) {
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
        if let (Some(bar), Side::Outside) = (bar, self.place.side) {
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
                "The ring’s height entered with the jaws is another: how far the jaws lean while bored is worked out from that. Enter this one."
            } else {
                ""
            },
            &[self.place.height, ring.height],
        );
    }

    /// Where the jaws stand on each of the user's own rings.
    fn own_rings(&self, found: &mut Vec<Finding>) -> Vec<OwnRingFit> {
        let (bearing, stroke) = (self.plan.bearing, self.plan.master.stroke);
        let mut fits = Vec::new();
        for (at, own) in self.plan.rings.iter().enumerate() {
            let Some(position) = position_on(bearing, &own.ring, &self.place, &self.plan.blank) else { break };
            let clearance = cut_clearance(&own.ring, &self.place, self.middle(bearing, &own.ring));
            let clears = self.enough(clearance);
            let rounding = 1e-9 * stroke;
            let in_middle_third = libm::fabs(position - stroke / 2.0) <= stroke / 6.0 + rounding;
            tell_length(
                found,
                &Line {
                    id: &format!("rings.{at}.position"),
                    name: &format!("On ring {}, {}: master jaw from fully closed", at + 1, own.name),
                    entry: "",
                    says: "The radius the ring gauges, less that of what bears on it with the jaws fully closed",
                    formula: "s = D/2 − r(0)",
                    given: &["D"],
                    symbol: "s",
                    source: SKETCH,
                },
                position,
                None,
                if position < -rounding || position > stroke + rounding {
                    "Beyond the stroke: the jaws do not reach this ring, or cannot take it in."
                } else if !clears {
                    "The cut would meet this ring."
                } else if !in_middle_third {
                    "Outside the middle third of the stroke."
                } else {
                    ""
                },
                &[own.ring.bearing_diameter(self.place.side)],
            );
            fits.push(OwnRingFit { name: own.name.clone(), position, in_middle_third, clearance, clears });
        }
        self.best_of_own(&fits, found);
        fits
    }

    fn best_of_own(&self, fits: &[OwnRingFit], found: &mut Vec<Finding>) {
        const NAME: &str = "The best of your own rings, by number";
        if fits.is_empty() {
            return;
        }
        let middle = self.middle_of_stroke();
        let mut best: Option<(usize, f64)> = None;
        for (at, fit) in fits.iter().enumerate().filter(|(_, fit)| fit.in_middle_third && fit.clears) {
            let off = libm::fabs(fit.position - middle);
            if best.is_none_or(|(_, least)| off < least) {
                best = Some((at, off));
            }
        }
        found.push(match best {
            Some((at, off)) => Finding::new("ring.best_own", NAME, Kind::Plain, (at + 1) as f64).step(Step {
                says: "Of those that clear the cut and leave the jaws in the middle third, the nearest to mid-stroke",
                formula: "least |s − S/2|",
                given: Vec::new(),
                result: term("|s − S/2|", off, Kind::Length),
                source: "the middle third of the stroke: common practice, no source",
            }),
            None => {
                let why = "None of them clears the cut and leaves the jaws in the middle third of the stroke.";
                Finding::refused("ring.best_own", NAME, Kind::Plain, why)
            }
        });
    }

    /// The groove for a ring of its own.
    fn groove(&self, found: &mut Vec<Finding>) -> Option<Groove> {
        const NAME: &str = "Groove to cut in the jaw faces, its outside";
        let wall = self.plan.least_wall.max(self.plan.tool_clearance);
        let (plan, at) = (self.plan, self.placed.bored_at);
        let mut refused = |why: &str, entry| refuse(found, "ring.groove.outside", NAME, Kind::Length, why, entry);
        let made = match groove(&self.place, &plan.blank, at, plan.section, wall, PLAY) {
            Ok(made) if made.depth < self.place.height => made,
            Ok(_) => {
                refused("The ring to make is higher than the jaws: make it lower.", "ring.height");
                return None;
            }
            Err(room) => {
                let why = "No strip of the jaw face is wide enough for it, with the least metal left on either side: make the ring thinner.";
                refused(why, "ring.thickness");
                tell_length(
                    found,
                    &Line {
                        id: "ring.groove.room",
                        name: "Widest strip of the jaw face for a groove",
                        entry: "ring.thickness",
                        says: "Between bored face, counterbores and jaw end, less the metal left on either side; needed is the ring to make and its play",
                        formula: "width ≥ t + play",
                        given: &["t + play", "wall"],
                        symbol: "width",
                        source: SKETCH,
                    },
                    room.widest,
                    None,
                    "",
                    &[room.needed, wall],
                );
                return None;
            }
        };
        let sizes = [
            ("ring.groove.inside", "Groove to cut in the jaw faces, its inside", made.inside),
            ("ring.groove.outside", NAME, made.outside),
            ("ring.groove.depth", "Depth of the groove", made.depth),
            ("ring.made.inside", "Ring to make for the groove, its inside", made.ring.inside),
            ("ring.made.outside", "Ring to make for the groove, its outside", made.ring.outside),
        ];
        for (id, name, value) in sizes {
            tell_length(
                found,
                &Line {
                    id,
                    name,
                    entry: "ring.thickness",
                    says: "In the first strip of whole metal behind the bored face that is wide enough, as wide as the ring and some play; the ring lies on the wall that pushes, flush with the face",
                    formula: "width = t + play",
                    given: &["t", "play", "wall", "s"],
                    symbol: "size",
                    source: "geometry of the jaw on its ring; play: our own starting value",
                },
                value,
                None,
                "",
                &[plan.section.thickness, PLAY, wall, at],
            );
        }
        Some(made)
    }
}

/// The order in which groove and ring are made.
fn groove_steps(side: Side) -> Procedure {
    let stops = match side {
        Side::Outside => {
            "Clamp the jaws lightly on a scrap plug between their gripping ends, of such a size that the master jaws stand where they will be bored."
        }
        Side::Inside => {
            "Clamp the jaws lightly in a scrap ring around their gripping ends, of such a size that the master jaws stand where they will be bored."
        }
    };
    let bears = match side {
        Side::Outside => {
            "Turn the ring so that its outside fits the outer wall of the groove and its inside leaves the play told."
        }
        Side::Inside => {
            "Turn the ring so that its inside fits the inner wall of the groove and its outside leaves the play told."
        }
    };
    Procedure {
        id: "ring.groove",
        title: "Groove and ring, in this order",
        steps: [
            "Screw the jaws down on the tooth told, each on its own master jaw, all on the same tooth.",
            stops,
            "Face the jaws, then cut the groove to the diameters and depth told, at low speed and with light cuts: the jaws interrupt the cut.",
            bears,
            "Lay the ring in the groove with the jaws a little off it, take the scrap piece out, and clamp at the pressure for boring. The ring must lie flush and be held by every jaw.",
            "Prove the boring path in the air, then bore.",
        ]
        .into(),
    }
}
