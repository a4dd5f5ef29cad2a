//! What is said of each step: its name, and one sentence or two with the job's own numbers.

use holdround_core::findings::{Finding, Findings, Mark, Weight};
use holdround_core::quantity::{Kind, decimal};
use holdround_core::setup::{CutKind, Setup, Side, SurfaceSide};

use super::chapter::Chapter;
use crate::language::{fill_plain, number, said, say};
use crate::units::Units;
use crate::view::steps;

/// A job and how it is written.
pub(super) struct Words<'a> {
    pub(super) setup: &'a Setup,
    pub(super) findings: &'a Findings,
    pub(super) units: Units,
    /// How many times the lobes are drawn larger.
    pub(super) magnification: Option<f64>,
    /// Which round surfaces are cut in this clamping: outside, bore.
    pub(super) turned: [bool; 2],
}

impl Words<'_> {
    fn outside(&self) -> bool {
        self.setup.grip.side == Side::Outside
    }

    fn length(&self, si: f64) -> String {
        self.units.show(Kind::Length, si)
    }

    fn found(&self, id: &str) -> Option<&Finding> {
        self.findings.get(id).filter(|finding| finding.value.is_ok())
    }

    fn value(&self, id: &str) -> Option<String> {
        self.found(id).map(|finding| steps::value(finding, self.units))
    }

    fn force(&self, newton: f64) -> String {
        self.units.show(Kind::Force, newton)
    }

    /// Ring or plug: where a sentence begins, and within one.
    fn ring(&self) -> [&'static str; 2] {
        let plan = self.setup.placing.plan.as_ref();
        let plug = self.found("ring.diameter").is_some_and(|found| found.name.to_string().starts_with("Plug"));
        match plan {
            Some(_) if plug => [say("Plug"), say("plug")],
            Some(_) => [say("Ring"), say("ring")],
            None => [say("Ring or plug"), say("ring or plug")],
        }
    }

    /// The name of a step.
    pub(super) fn name(&self, chapter: Chapter) -> String {
        let [ring, ring_within] = self.ring();
        let name = match chapter {
            Chapter::Mount => say("Blank jaws on their teeth"),
            Chapter::Reuse => say("Jaws as they came back"),
            Chapter::RingIn => return fill_plain("{} in", &[&ring]),
            Chapter::ClampRing => return fill_plain("Clamp on the {}", &[&ring_within]),
            Chapter::Bore if self.outside() => say("Bore the jaws"),
            Chapter::Bore => say("Turn the jaws"),
            Chapter::Relief => say("Relieve the corner"),
            Chapter::RingOut => return fill_plain("{} out", &[&ring]),
            Chapter::PartIn => say("Part in"),
            Chapter::Clamp => say("Clamp the part"),
            Chapter::Spin => say("Spin up"),
            Chapter::Rough => say("Rough"),
            Chapter::Reclamp => say("Clamp anew to finish"),
            Chapter::Cut if self.setup.finish_pressure.is_some() => say("Finish"),
            Chapter::Cut => say("Cut"),
            Chapter::Release => say("Release"),
            Chapter::Out => say("As it comes out"),
        };
        name.to_owned()
    }

    /// What is done in a step.
    pub(super) fn says(&self, chapter: Chapter) -> String {
        match chapter {
            Chapter::Mount => self.mount(),
            Chapter::Reuse => fill_plain(
                "These jaws need no cut. Clean serrations, the same teeth and order as before. Run-out in the jaws at most {}.",
                &[&self.units.show(Kind::Departure, self.setup.part.runout_limit.value)],
            ),
            Chapter::RingIn => self.ring_in(),
            Chapter::ClampRing => self.clamp_ring(),
            Chapter::Bore => self.bore(),
            Chapter::Relief => fill_plain(
                "A groove {} wide and {} deep in the corner, then the seat: the part must bear on face and seat, not in the corner.",
                &[
                    &self.length(self.setup.boring.relief_width.value),
                    &self.length(self.setup.boring.relief_depth.value),
                ],
            ),
            Chapter::RingOut if self.outside() => fill_plain(
                "Spindle stopped. Jaws open, {} out. Break the edges and take every chip away.",
                &[&self.ring()[1]],
            ),
            Chapter::RingOut => fill_plain(
                "Spindle stopped. Jaws close, {} out. Break the edges and take every chip away.",
                &[&self.ring()[1]],
            ),
            Chapter::PartIn => self.part_in(),
            Chapter::Clamp => self.clamp(),
            Chapter::Spin => format!("{}{}", self.held_back(), self.spin()),
            Chapter::Rough => fill_plain(
                "Roughed at {}. Lobes stay drawn as they are at the pressure for finishing.",
                &[&self.units.show(Kind::Pressure, self.setup.pressure.value)],
            ),
            Chapter::Reclamp => fill_plain(
                "Spindle stopped. Unclamp, set {}, clamp anew: the released shape follows this pressure, the last one.",
                &[&self.units.show(Kind::Pressure, self.last_pressure())],
            ),
            Chapter::Cut => self.cut(),
            Chapter::Release => self.release(),
            Chapter::Out => self.out(),
        }
    }

    fn last_pressure(&self) -> f64 {
        self.setup.finish_pressure.unwrap_or(self.setup.pressure).value
    }

    fn mount(&self) -> String {
        match self.value("stroke.tooth") {
            Some(tooth) => fill_plain(
                "Clean serrations. Each blank on its own master jaw, all on tooth {}; screws to torque.",
                &[&tooth],
            ),
            None => say("Clean serrations. Each blank on its own master jaw, all on the same tooth; screws to torque.")
                .to_owned(),
        }
    }

    fn ring_in(&self) -> String {
        let plan = self.setup.placing.plan.as_ref();
        let height = self.value("ring.middle").unwrap_or_else(|| self.length(self.setup.jaws.ring_height.value));
        let refused = |id: &str| self.findings.get(id).and_then(|finding| finding.value.as_ref().err());
        let Some(plan) = plan else {
            return fill_plain(
                "It stops the jaws in mid-stroke, its middle {} above the serrations. Its size is not worked out: plan the stroke to know it.",
                &[&height],
            );
        };
        if let Some(own) = plan.ring_used.and_then(|at| plan.rings.get(at)) {
            let size = self.length(own.ring.bearing_diameter(self.setup.grip.side));
            return fill_plain("Ring “{}”, {}, its middle {} above the serrations.", &[&own.name, &size, &height]);
        }
        match (self.value("ring.diameter"), self.value("ring.groove.outside")) {
            (Some(size), _) => fill_plain(
                "{} to gauge {}, for mid-stroke; its middle {} above the serrations.",
                &[&self.ring()[0], &size, &height],
            ),
            (None, Some(groove)) => {
                fill_plain("A ring made to fit the groove, {} outside, cut in the jaw faces.", &[&groove])
            }
            _ => {
                let why = refused("ring.diameter").or_else(|| refused("ring.groove.outside"));
                fill_plain("Stop: no such ring will do. {}", &[&why.map_or_else(String::new, said)])
            }
        }
    }

    fn clamp_ring(&self) -> String {
        let pressure = self.setup.jaws.boring_pressure.unwrap_or(self.setup.pressure).value;
        let pressure = self.units.show(Kind::Pressure, pressure);
        let clamped = if self.outside() {
            fill_plain("Jaws close on it at {}", &[&pressure])
        } else {
            fill_plain("Jaws open against it at {}", &[&pressure])
        };
        let standing = match &self.findings.scene.placing {
            Some(placing) => fill_plain(
                "{} and stand at {} of {} stroke.",
                &[&clamped, &self.length(placing.bored_at), &self.length(placing.stroke)],
            ),
            None => clamped + ".",
        };
        standing + " " + say("Every jaw must bear: so they are bored as they will grip.")
    }

    fn bore(&self) -> String {
        let scene = &self.findings.scene;
        let Some(path) = &scene.jaw_path else {
            let why = self.findings.get("program.passes").and_then(|finding| finding.value.as_ref().err());
            let why = why.map_or_else(|| say("None can be planned.").to_owned(), said);
            return fill_plain("No path is drawn. {}", &[&why]);
        };
        if !path.collisions.is_empty() {
            let hit = self.findings.get("program.collisions").and_then(|finding| finding.caution.as_ref());
            let hit = hit.map_or_else(|| say("The path would hit something.").to_owned(), said);
            return fill_plain("Stop. {}", &[&hit]);
        }
        let speed = self.value("boring.speed").map_or_else(String::new, |speed| fill_plain(" at {}", &[&speed]));
        let passes = self.value("program.passes");
        let passes = passes.map_or_else(String::new, |passes| fill_plain(", {} roughing passes", &[&passes]));
        let (to, deep) = (self.length(2.0 * self.setup.bored_radius()), self.length(self.setup.grip.length.value));
        let cut = if self.outside() {
            fill_plain("Bored to {}, {} deep{}{}.", &[&to, &deep, &speed, &passes])
        } else {
            fill_plain("Turned to {}, {} deep{}{}.", &[&to, &deep, &speed, &passes])
        };
        format!("{} {cut}", say("Guard closed; program proved in the air first."))
    }

    fn part_in(&self) -> String {
        let seat = if self.setup.grip.seated {
            say("Part square against the jaw step.")
        } else {
            say("Part off the jaw step, square to the axis: nothing but friction stops it.")
        };
        match self.value("stroke.clearance") {
            Some(clearance) => format!("{seat} {}", fill_plain("Clearance to load it: {} per side.", &[&clearance])),
            None => seat.to_owned(),
        }
    }

    fn clamp(&self) -> String {
        let pressure = self.units.show(Kind::Pressure, self.setup.pressure.value);
        let clamped = if self.outside() {
            fill_plain("Jaws close on its outside at {}", &[&pressure])
        } else {
            fill_plain("Jaws open into its bore at {}", &[&pressure])
        };
        let [grip, _] = self.grip_of(self.setup.finish_pressure.is_some());
        let mut says = match grip {
            Some(grip) => fill_plain("{}, {} each jaw.", &[&clamped, &self.force(grip)]),
            None => clamped + ".",
        };
        if self.magnification.is_some() {
            says = says + " " + say("It gives way between them.");
        }
        says + " " + say("Check the grip with a gauge.")
    }

    /// Grip of one jaw at rest and at speed, N: of roughing or of the last clamping.
    pub(super) fn grip_of(&self, roughing: bool) -> [Option<f64>; 2] {
        let scene = &self.findings.scene;
        if roughing {
            let jaws = f64::from(self.setup.chuck.jaws);
            return ["grip.rest", "grip.speed"].map(|id| self.findings.value(id).map(|total| total / jaws));
        }
        [scene.jaw_grip_at_rest, scene.jaw_grip_at_speed].map(|grip| (scene.jaw_grip_at_rest > 0.0).then_some(grip))
    }

    /// Said before a job runs that must not.
    fn held_back(&self) -> String {
        let stop = self.findings.cautions.iter().any(|caution| caution.weight == Weight::Stop);
        let beyond = self.findings.findings.iter().any(|finding| finding.mark() == Mark::Beyond);
        if stop || beyond { say("Do not run it like this: see the verdict.").to_owned() + " " } else { String::new() }
    }

    fn spin(&self) -> String {
        let speed = self.units.show(Kind::RotationalSpeed, self.setup.speed.value);
        let guard = say("Guard closed; stand clear of the plane of the jaws.");
        match self.grip_of(self.setup.finish_pressure.is_some()) {
            [Some(_), Some(left)] if left <= 0.0 => {
                fill_plain("Stop. At {} the grip may be lost. {}", &[&speed, &guard])
            }
            [Some(rest), Some(left)] => {
                let (rest, left) = (self.force(rest), self.force(left));
                let told = if self.outside() {
                    fill_plain("Spin takes grip away: each jaw {} at rest, at least {} at {}.", &[&rest, &left, &speed])
                } else {
                    fill_plain(
                        "Spin can only add grip: each jaw {} at rest, at least {} at {}.",
                        &[&rest, &left, &speed],
                    )
                };
                format!("{guard} {told}")
            }
            _ => format!("{guard} {}", fill_plain("Up to {} in steps.", &[&speed])),
        }
    }

    fn cut(&self) -> String {
        let hold = self.findings.get("hold.factor").filter(|hold| hold.value.is_ok());
        let hold = hold.map_or_else(
            || say("No hold factor is known.").to_owned(),
            |hold| {
                let mut value = steps::value(hold, self.units);
                if let Some(limit) = &hold.limit {
                    value = format!("{value}, {}", steps::limit(hold, limit, self.units));
                }
                if hold.mark() == Mark::Beyond {
                    fill_plain("Stop: hold factor {}.", &[&value])
                } else {
                    fill_plain("Hold factor {}.", &[&value])
                }
            },
        );
        let shape = match self.turned {
            [true, true] => say("The outside and bore are cut round while the jaws squeeze the part."),
            [true, false] => say("The outside is cut round while the jaws squeeze the part."),
            [false, true] => say("The bore is cut round while the jaws squeeze the part."),
            [false, false] => say("No round surface is cut in this clamping."),
        };
        hold + " " + shape
    }

    fn release(&self) -> String {
        let springs = match self.turned {
            [true, true] => say("what squeezed the part is gone, and the outside and bore spring by as much"),
            [true, false] => say("what squeezed the part is gone, and the outside springs by as much"),
            [false, true] => say("what squeezed the part is gone, and the bore springs by as much"),
            [false, false] => say("the part springs back to what it was"),
        };
        if self.outside() {
            fill_plain("Spindle stopped. Jaws open: {}.", &[&springs])
        } else {
            fill_plain("Spindle stopped. Jaws close: {}.", &[&springs])
        }
    }

    /// The least round of the surfaces cut here that matter.
    fn roundness(&self) -> Option<&Finding> {
        let [outside, bore] = self.turned;
        let named = &self.setup.part.surfaces;
        let keys: Vec<String> = if named.is_empty() {
            [("outside", outside), ("bore", bore)]
                .iter()
                .filter(|(_, cut)| *cut)
                .map(|(key, _)| (*key).into())
                .collect()
        } else {
            let cut = |side| if side == SurfaceSide::Outside { outside } else { side == SurfaceSide::Bore && bore };
            let named = named.iter().enumerate().filter(|(_, surface)| cut(surface.side));
            named.map(|(at, _)| format!("surfaces.{at}")).collect()
        };
        let found = keys.iter().filter_map(|key| self.found(&format!("shape.roundness.{key}.minimum_zone")));
        let value = |finding: &Finding| finding.value.as_ref().map_or(0.0, |value| *value);
        found.max_by(|one, other| value(one).total_cmp(&value(other)))
    }

    fn out(&self) -> String {
        if self.turned == [false, false] {
            return say("No round surface was cut in this clamping: the part is as round as it came.").into();
        }
        let headline = self.findings.get("shape.roundness");
        if let Some(Err(why)) = headline.map(|finding| &finding.value) {
            return fill_plain("No roundness is given. {}", &[&said(why)]);
        }
        let Some(round) = self.roundness() else {
            return say("None of the surfaces that matter was cut round in this clamping.").into();
        };
        let value = steps::value(round, self.units);
        let mut says = match &round.limit {
            Some(limit) => {
                let word = match round.mark() {
                    Mark::Beyond => say("over"),
                    Mark::Close => say("near the limit"),
                    _ => say("good"),
                };
                fill_plain("Roundness {}, allowed {}: {}.", &[&value, &steps::limit(round, limit, self.units), &word])
            }
            None => fill_plain("Roundness {}.", &[&value]),
        };
        if let Some(factor) = self.magnification {
            let factor = number(decimal(factor, 3));
            says = says + " " + &fill_plain("Lobes drawn × {} beside the true circle, dashed.", &[&factor]);
        }
        if let Some(worst) = headline.filter(|worst| worst.value != round.value) {
            let trace = self.findings.scene.trace.as_ref();
            let surface = trace.map_or_else(|| say("other surface").to_owned(), |trace| said(&trace.surface));
            let value = steps::value(worst, self.units);
            says = says + " " + &fill_plain("The {} would be {} if it were cut here too.", &[&surface, &value]);
        }
        says + " " + say("Measure the first part.")
    }

    /// The cutting force of a cut, N.
    pub(super) fn cutting_force(&self, cut: usize) -> Option<f64> {
        self.findings.value(&format!("cuts.{cut}.force"))
    }

    /// The cuts taken in a step.
    pub(super) fn cuts(&self, chapter: Chapter) -> Vec<usize> {
        let two = self.setup.finish_pressure.is_some();
        let taken = |finishing: bool| !two || finishing == (chapter == Chapter::Cut);
        let cuts = self.setup.cuts.iter().enumerate();
        if !chapter.cuts_part() {
            return Vec::new();
        }
        cuts.filter(|(_, cut)| taken(cut.finishing)).map(|(at, _)| at).collect()
    }

    /// A cut in words.
    pub(super) fn cut_name(&self, cut: usize) -> &'static str {
        self.setup.cuts.get(cut).map_or("", |cut| match cut.kind {
            CutKind::Turning(..) => say("turning"),
            CutKind::Facing(_) => say("facing"),
            CutKind::Boring(..) => say("boring"),
            CutKind::Grooving { .. } => say("grooving"),
            CutKind::Drilling { .. } => say("drilling"),
            CutKind::Power { .. } => say("cutting"),
        })
    }
}
