//! What is said of each step: its name, and one sentence or two with the job's own numbers.

use holdround_core::findings::{Finding, Findings, Mark, Weight};
use holdround_core::quantity::{Kind, decimal};
use holdround_core::setup::{CutKind, Setup, Side, SurfaceSide};

use super::chapter::Chapter;
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

    /// Ring or plug.
    fn ring(&self) -> &'static str {
        let plan = self.setup.placing.plan.as_ref();
        let plug = self.found("ring.diameter").is_some_and(|found| found.name.starts_with("Plug"));
        match plan {
            Some(_) if plug => "Plug",
            Some(_) => "Ring",
            None => "Ring or plug",
        }
    }

    /// The name of a step.
    pub(super) fn name(&self, chapter: Chapter) -> String {
        match chapter {
            Chapter::Mount => "Blank jaws on their teeth".into(),
            Chapter::Reuse => "Jaws as they came back".into(),
            Chapter::RingIn => format!("{} in", self.ring()),
            Chapter::ClampRing => format!("Clamp on the {}", self.ring().to_ascii_lowercase()),
            Chapter::Bore if self.outside() => "Bore the jaws".into(),
            Chapter::Bore => "Turn the jaws".into(),
            Chapter::Relief => "Relieve the corner".into(),
            Chapter::RingOut => format!("{} out", self.ring()),
            Chapter::PartIn => "Part in".into(),
            Chapter::Clamp => "Clamp the part".into(),
            Chapter::Spin => "Spin up".into(),
            Chapter::Rough => "Rough".into(),
            Chapter::Reclamp => "Clamp anew to finish".into(),
            Chapter::Cut if self.setup.finish_pressure.is_some() => "Finish".into(),
            Chapter::Cut => "Cut".into(),
            Chapter::Release => "Release".into(),
            Chapter::Out => "As it comes out".into(),
        }
    }

    /// What is done in a step.
    pub(super) fn says(&self, chapter: Chapter) -> String {
        match chapter {
            Chapter::Mount => self.mount(),
            Chapter::Reuse => format!(
                "These jaws need no cut. Clean serrations, the same teeth and order as before. Run-out in the jaws at most {}.",
                self.units.show(Kind::Departure, self.setup.part.runout_limit.value)
            ),
            Chapter::RingIn => self.ring_in(),
            Chapter::ClampRing => self.clamp_ring(),
            Chapter::Bore => self.bore(),
            Chapter::Relief => format!(
                "A groove {} wide and {} deep in the corner, then the seat: the part must bear on face and seat, not in the corner.",
                self.length(self.setup.boring.relief_width.value),
                self.length(self.setup.boring.relief_depth.value)
            ),
            Chapter::RingOut => format!(
                "Spindle stopped. Jaws {}, {} out. Break the edges and take every chip away.",
                if self.outside() { "open" } else { "close" },
                self.ring().to_ascii_lowercase()
            ),
            Chapter::PartIn => self.part_in(),
            Chapter::Clamp => self.clamp(),
            Chapter::Spin => format!("{}{}", self.held_back(), self.spin()),
            Chapter::Rough => format!(
                "Roughed at {}. Lobes stay drawn as they are at the pressure for finishing.",
                self.units.show(Kind::Pressure, self.setup.pressure.value)
            ),
            Chapter::Reclamp => format!(
                "Spindle stopped. Unclamp, set {}, clamp anew: the released shape follows this pressure, the last one.",
                self.units.show(Kind::Pressure, self.last_pressure())
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
        let tooth = self
            .value("stroke.tooth")
            .map_or_else(|| "all on the same tooth".to_owned(), |tooth| format!("all on tooth {tooth}"));
        format!("Clean serrations. Each blank on its own master jaw, {tooth}; screws to torque.")
    }

    fn ring_in(&self) -> String {
        let plan = self.setup.placing.plan.as_ref();
        let height = self.value("ring.middle").unwrap_or_else(|| self.length(self.setup.jaws.ring_height.value));
        let refused = |id: &str| self.findings.get(id).and_then(|finding| finding.value.as_ref().err());
        let Some(plan) = plan else {
            return format!(
                "It stops the jaws in mid-stroke, its middle {height} above the serrations. Its size is not worked out: plan the stroke to know it."
            );
        };
        if let Some(own) = plan.ring_used.and_then(|at| plan.rings.get(at)) {
            let size = self.length(own.ring.bearing_diameter(self.setup.grip.side));
            return format!("Ring “{}”, {size}, its middle {height} above the serrations.", own.name);
        }
        match (self.value("ring.diameter"), self.value("ring.groove.outside")) {
            (Some(size), _) => {
                format!("{} to gauge {size}, for mid-stroke; its middle {height} above the serrations.", self.ring())
            }
            (None, Some(groove)) => format!("A ring made to fit the groove, {groove} outside, cut in the jaw faces."),
            _ => {
                let why = refused("ring.diameter").or_else(|| refused("ring.groove.outside"));
                format!("Stop: no such ring will do. {}", why.map_or("", String::as_str))
            }
        }
    }

    fn clamp_ring(&self) -> String {
        let pressure = self.setup.jaws.boring_pressure.unwrap_or(self.setup.pressure).value;
        let way = if self.outside() { "close on it" } else { "open against it" };
        let place = self.findings.scene.placing.as_ref().map_or_else(String::new, |placing| {
            format!(" and stand at {} of {} stroke", self.length(placing.bored_at), self.length(placing.stroke))
        });
        format!(
            "Jaws {way} at {}{place}. Every jaw must bear: so they are bored as they will grip.",
            self.units.show(Kind::Pressure, pressure)
        )
    }

    fn bore(&self) -> String {
        let scene = &self.findings.scene;
        let Some(path) = &scene.jaw_path else {
            let why = self.findings.get("program.passes").and_then(|finding| finding.value.as_ref().err());
            return format!("No path is drawn. {}", why.map_or("None can be planned.", String::as_str));
        };
        if !path.collisions.is_empty() {
            let hit = self.findings.get("program.collisions").and_then(|finding| finding.caution.as_ref());
            return format!("Stop. {}", hit.map_or("The path would hit something.", String::as_str));
        }
        let speed = self.value("boring.speed").map_or_else(String::new, |speed| format!(" at {speed}"));
        let passes =
            self.value("program.passes").map_or_else(String::new, |passes| format!(", {passes} roughing passes"));
        format!(
            "Guard closed; program proved in the air first. {} to {}, {} deep{speed}{passes}.",
            if self.outside() { "Bored" } else { "Turned" },
            self.length(2.0 * self.setup.bored_radius()),
            self.length(self.setup.grip.length.value)
        )
    }

    fn part_in(&self) -> String {
        let seat = if self.setup.grip.seated {
            "Part square against the jaw step"
        } else {
            "Part off the jaw step, square to the axis: nothing but friction stops it"
        };
        let clearance = self
            .value("stroke.clearance")
            .map_or_else(String::new, |clearance| format!(" Clearance to load it: {clearance} per side."));
        format!("{seat}.{clearance}")
    }

    fn clamp(&self) -> String {
        let way = if self.outside() { "close on its outside" } else { "open into its bore" };
        let pressure = self.units.show(Kind::Pressure, self.setup.pressure.value);
        let [grip, _] = self.grip_of(self.setup.finish_pressure.is_some());
        let grip = grip.map_or_else(String::new, |grip| format!(", {} each jaw", self.force(grip)));
        let shape = if self.magnification.is_some() { " It gives way between them." } else { "" };
        format!("Jaws {way} at {pressure}{grip}.{shape} Check the grip with a gauge.")
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
    fn held_back(&self) -> &'static str {
        let stop = self.findings.cautions.iter().any(|caution| caution.weight == Weight::Stop);
        let beyond = self.findings.findings.iter().any(|finding| finding.mark() == Mark::Beyond);
        if stop || beyond { "Do not run it like this: see the verdict. " } else { "" }
    }

    fn spin(&self) -> String {
        let speed = self.units.show(Kind::RotationalSpeed, self.setup.speed.value);
        let guard = "Guard closed; stand clear of the plane of the jaws.";
        match self.grip_of(self.setup.finish_pressure.is_some()) {
            [Some(_), Some(left)] if left <= 0.0 => {
                format!("Stop. At {speed} the grip may be lost. {guard}")
            }
            [Some(rest), Some(left)] => {
                let way = if self.outside() { "Spin takes grip away" } else { "Spin can only add grip" };
                format!(
                    "{guard} {way}: each jaw {} at rest, at least {} at {speed}.",
                    self.force(rest),
                    self.force(left)
                )
            }
            _ => format!("{guard} Up to {speed} in steps."),
        }
    }

    fn surfaces(&self) -> Option<&'static str> {
        match self.turned {
            [true, true] => Some("outside and bore"),
            [true, false] => Some("outside"),
            [false, true] => Some("bore"),
            [false, false] => None,
        }
    }

    fn cut(&self) -> String {
        let hold = self.findings.get("hold.factor").filter(|hold| hold.value.is_ok());
        let hold = hold.map_or_else(
            || "No hold factor is known.".to_owned(),
            |hold| {
                let stop = if hold.mark() == Mark::Beyond { "Stop: hold factor" } else { "Hold factor" };
                let limit = hold
                    .limit
                    .as_ref()
                    .map_or_else(String::new, |limit| format!(", {}", steps::limit(hold, limit, self.units)));
                format!("{stop} {}{limit}.", steps::value(hold, self.units))
            },
        );
        let shape = match self.surfaces() {
            Some(surfaces) => {
                let verb = if self.turned == [true, true] { "are" } else { "is" };
                format!(" The {surfaces} {verb} cut round while the jaws squeeze the part.")
            }
            None => " No round surface is cut in this clamping.".into(),
        };
        hold + &shape
    }

    fn release(&self) -> String {
        let way = if self.outside() { "open" } else { "close" };
        let springs = match self.surfaces() {
            Some(surfaces) => {
                let verb = if self.turned == [true, true] { "spring" } else { "springs" };
                format!("what squeezed the part is gone, and the {surfaces} {verb} by as much")
            }
            None => "the part springs back to what it was".into(),
        };
        format!("Spindle stopped. Jaws {way}: {springs}.")
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
        if self.surfaces().is_none() {
            return "No round surface was cut in this clamping: the part is as round as it came.".into();
        }
        let headline = self.findings.get("shape.roundness");
        if let Some(Err(why)) = headline.map(|finding| &finding.value) {
            return format!("No roundness is given. {why}");
        }
        let Some(round) = self.roundness() else {
            return "None of the surfaces that matter was cut round in this clamping.".into();
        };
        let limit = round.limit.as_ref().map_or_else(String::new, |limit| {
            format!(
                ", allowed {}: {}",
                steps::limit(round, limit, self.units),
                match round.mark() {
                    Mark::Beyond => "over",
                    Mark::Close => "near the limit",
                    _ => "good",
                }
            )
        });
        let drawn = self.magnification.map_or_else(String::new, |factor| {
            format!(" Lobes drawn × {} beside the true circle, dashed.", decimal(factor, 3))
        });
        let other = headline.filter(|worst| worst.value != round.value).map_or_else(String::new, |worst| {
            let surface = self.findings.scene.trace.as_ref().map_or("other surface", |trace| &trace.surface);
            format!(" The {surface} would be {} if it were cut here too.", steps::value(worst, self.units))
        });
        format!("Roundness {}{limit}.{drawn}{other} Measure the first part.", steps::value(round, self.units))
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
            CutKind::Turning(..) => "turning",
            CutKind::Facing(_) => "facing",
            CutKind::Boring(..) => "boring",
            CutKind::Grooving { .. } => "grooving",
            CutKind::Drilling { .. } => "drilling",
            CutKind::Power { .. } => "cutting",
        })
    }
}
