//! Jaws that come back, as findings.

use alloc::vec::Vec;

use super::boring_ring;
use super::placing::{Line, refuse, tell_length};
use crate::boring_ring::Ring;
use crate::findings::{Finding, Procedure, Scene, Sense, Step, term};
use crate::grip::Side;
use crate::quantity::Kind;
use crate::recut::{Old, Outlook, needed_stock, recuts_left, ring_change, stock_per_side, teeth_to_middle};
use crate::setup::{Plan, Recut, Setup};
use crate::stroke::{Placed, outward};
use crate::text::Text;

/// Told only where a recut wastes metal.
pub(super) const WASTED: &str = "recut.wasted";
/// Told, without a value, only while it must be answered before anything can be said of the jaws.
pub const QUESTION: &str = "recut.as_before";
const SKETCH: &str = "geometry of the jaw on its ring";
/// Least metal to a counterbore where tooth and ring are not worked out, m. Common practice, no source.
const LEAST_WALL: f64 = 3e-3;

/// Tells what the jaws that came back still need; `placed` is how they stand, where tooth and ring are worked out.
pub(super) fn tell(
    setup: &Setup,
    back: &Recut,
    placed: Option<&Placed>,
    bar: Option<f64>,
    found: &mut Vec<Finding>,
    scene: &mut Scene,
) {
    scene.procedures.push(touching_off(setup.grip.side));
    let Some(standing) = back.standing else {
        let why = "Touch the jaws off on their ring, and enter the diameter.";
        refuse(found, "recut.stock", "Stock per side", Kind::Length, why, "recut.standing");
        return;
    };
    let planned = setup.placing.plan.as_ref().zip(placed);
    let job = Job { setup, back, standing, target: 2.0 * setup.bored_radius(), bar };
    let reuse = setup.reuses_jaws();
    let stock = job.stock(reuse, planned, found);
    job.as_they_are(reuse, found);
    job.life(stock, planned, found);
    tell_length(
        found,
        &Line {
            id: "recut.skim",
            name: "Skim off the front face, the tips of the jaws, along the axis",
            entry: "boring.skim",
            says: "As typed with the boring path, which bores deeper by as much",
            formula: "skim",
            given: &[],
            symbol: "skim",
            source: "0.010 in is the customary skim: common practice, no source",
        },
        setup.boring.skim.value,
        None,
        "",
        &[],
    );
    seat_skim(setup, back, found);
}

/// What comes off the face on which the part sits, at the back of the bore.
fn seat_skim(setup: &Setup, back: &Recut, found: &mut Vec<Finding>) {
    let (front, new) = (setup.boring.skim.value, setup.grip.length.value);
    let old = back.depth.unwrap_or(new);
    let skim = front + new - old;
    const NAME: &str = "Skim off the back face, the seat of the part, along the axis";
    if skim < 0.0 {
        let why = "The old bore is deeper than the new one will be: the seat would not be cut, and the part not sit square. Bore as deep as before, or take more off the front.";
        refuse(found, "recut.seat_skim", NAME, Kind::Length, why, "recut.depth");
        return;
    }
    let says = if skim == 0.0 {
        "The old seat stays as it is: see that it is sound and runs true, or take a little off the front, and the bore goes deeper by as much."
    } else if skim > setup.boring.depth_of_cut.value {
        "The program takes it in one pass along the seat: bore less deep, or take it off in steps."
    } else {
        ""
    };
    tell_length(
        found,
        &Line {
            id: "recut.seat_skim",
            name: NAME,
            entry: "recut.depth",
            says: "What comes off the front, and how much deeper than before the bore is from there. The program's last cut takes it, along the seat",
            formula: "front + depth_new − depth_old",
            given: &["front", "depth_new", "depth_old"],
            symbol: "seat",
            source: "0.010 in is the customary skim: common practice, no source",
        },
        skim,
        Some((Sense::AtMost, setup.boring.depth_of_cut.value, "the depth of one cut")).filter(|_| skim > 0.0),
        says,
        &[front, new, old],
    );
}

struct Job<'a> {
    setup: &'a Setup,
    back: &'a Recut,
    standing: f64,
    target: f64,
    /// Diameter of the boring bar, m, where known.
    bar: Option<f64>,
}

impl Job<'_> {
    fn side(&self) -> Side {
        self.setup.grip.side
    }

    /// Stock per side against what cleaning up needs. Gives the stock.
    fn stock(&self, reuse: Option<bool>, planned: Option<(&Plan, &Placed)>, found: &mut Vec<Finding>) -> f64 {
        let stock = stock_per_side(self.side(), self.standing, self.target);
        let taper = self.setup.jaws.taper.value;
        let needed = needed_stock(&self.back.old, taper);
        tell_length(
            found,
            &Line {
                id: "recut.needed",
                name: "Stock per side that cleans up",
                entry: "recut.runout",
                says: "Half the run-out, what the taper changes, and the damage: the most that stands in the way on any jaw",
                formula: "TIR/2 + |t_new − t_old| + damage",
                given: &["TIR", "t_new", "t_old", "damage"],
                symbol: "needed",
                source: "a face off centre by e runs out by 2 e",
            },
            needed,
            None,
            "",
            &[self.back.old.runout, taper, self.back.old.taper, self.back.old.damage],
        );
        let outlook = Outlook::of(stock, needed, self.back.stock);
        let says = match outlook {
            _ if reuse == Some(true) => "Nothing need be cut.",
            _ if reuse.is_none() => "Whether anything need be cut depends on how they are mounted.",
            Outlook::TooLarge if self.side() == Side::Outside => {
                "The jaws already stand larger than wanted: nothing can be bored."
            }
            Outlook::TooLarge => "The jaws already stand smaller than wanted: nothing can be turned.",
            Outlook::TooLittle => "Part of the old face would stay.",
            Outlook::Enough => "It cleans up.",
            Outlook::Wasteful => "It cleans up, but cuts away more than one recut should.",
        };
        let outside = self.side() == Side::Outside;
        let cut = reuse == Some(false);
        tell_length(
            found,
            &Line {
                id: "recut.stock",
                name: "Stock per side",
                entry: "recut.standing",
                says: "Half of what is between the diameter wanted and the one the jaws stand at on the ring",
                formula: if outside { "(D_wanted − D_standing) / 2" } else { "(D_standing − D_wanted) / 2" },
                given: &["D_wanted", "D_standing"],
                symbol: "stock",
                source: "half of a difference of diameters",
            },
            stock,
            cut.then_some((Sense::AtLeast, needed, "what cleans up")),
            says,
            &[self.target, self.standing],
        );
        tell_length(
            found,
            &Line {
                id: "recut.stock_diameter",
                name: "The same stock, on diameter",
                entry: "recut.standing",
                says: "Twice the stock per side",
                formula: "2 × stock",
                given: &["stock"],
                symbol: "on diameter",
                source: "definition",
            },
            2.0 * stock,
            None,
            "",
            &[stock],
        );
        if outlook == Outlook::Wasteful && cut {
            self.wasted(stock, needed, found);
        }
        if outlook != Outlook::Enough && cut {
            self.other_ring(stock, needed, planned, found);
        }
        stock
    }

    /// What is cut away beyond what one recut should.
    fn wasted(&self, stock: f64, needed: f64, found: &mut Vec<Finding>) {
        tell_length(
            found,
            &Line {
                id: WASTED,
                name: "Metal wasted, per side",
                entry: "recut.standing",
                says: "Stock less what cleans up and what one recut may take",
                formula: "stock − needed − usual",
                given: &["stock", "needed", "usual"],
                symbol: "wasted",
                source: "arithmetic; what one recut may take is your own entry",
            },
            stock - needed - self.back.stock,
            None,
            "Take another ring or tooth, or bore these jaws for a larger part.",
            &[stock, needed, self.back.stock],
        );
    }

    /// The ring that would leave what it should, and where the jaws would then stand.
    fn other_ring(&self, stock: f64, needed: f64, planned: Option<(&Plan, &Placed)>, found: &mut Vec<Finding>) {
        let wanted = needed + 0.5 * self.back.stock;
        let change = |wanted: f64| ring_change(self.side(), stock, wanted);
        let (one, other) = (change(needed), change(needed + self.back.stock));
        tell_length(
            found,
            &Line {
                id: "recut.ring_change",
                name: "Ring to take instead: larger on diameter by",
                entry: "ring.used",
                says: "Leaves what cleans up and half of what one recut may take; the range leaves none or all of that",
                formula: if self.side() == Side::Outside { "2 (stock − wanted)" } else { "2 (wanted − stock)" },
                given: &["stock", "wanted"],
                symbol: "ΔD",
                source: SKETCH,
            },
            change(wanted),
            None,
            "Smaller if negative. The ring holds the top jaws: another tooth on the same ring changes no stock.",
            &[stock, wanted],
        );
        if let Some(finding) = found.last_mut() {
            finding.band = Some((one.min(other), one.max(other)));
        }
        let Some((plan, placed)) = planned else { return };
        let position = placed.bored_at + 0.5 * change(wanted);
        let teeth = teeth_to_middle(position, plan.master.stroke, plan.master.serration.pitch);
        let name = "On that ring, move the jaws outward by teeth";
        found.push(Finding::new("recut.teeth", name, Kind::Plain, f64::from(teeth)).entry("stroke.tooth").caution("Inward if negative.").step(Step {
            says: "The other ring moves the master jaws by half its change; teeth bring them back nearest to mid-stroke",
            formula: "(s + ΔD/2 − S/2) / p, rounded",
            given: [
                term("s", placed.bored_at, Kind::Length),
                term("ΔD", change(wanted), Kind::Length),
                term("S", plan.master.stroke, Kind::Length),
                term("p", plan.master.serration.pitch, Kind::Length),
            ]
            .into(),
            result: term("teeth", f64::from(teeth), Kind::Plain),
            source: SKETCH,
        }));
        self.own_ring(stock, needed, plan, placed, found);
    }

    /// The first of the user's own rings that leaves a stock within the range and serves on some tooth, the standing
    /// diameter being that on the ring in use.
    fn own_ring(&self, stock: f64, needed: f64, plan: &Plan, placed: &Placed, found: &mut Vec<Finding>) {
        let job = boring_ring::Job::of(self.setup, plan, placed, self.bar);
        let Some(used) = job.used() else { return };
        let side = self.side();
        let larger = |ring: &Ring| (ring.bearing_diameter(side) - used.ring.bearing_diameter(side)) / 2.0;
        let leaves = |ring: &Ring| stock - outward(side) * larger(ring);
        let pitch = plan.master.serration.pitch;
        let teeth = |ring: &Ring| teeth_to_middle(placed.bored_at + larger(ring), plan.master.stroke, pitch);
        let serves = |ring: &Ring| {
            let position = placed.bored_at + larger(ring) - f64::from(teeth(ring)) * pitch;
            job.against(ring, position).is_empty()
        };
        let fits = plan.rings.iter().position(|own| {
            Outlook::of(leaves(&own.ring), needed, self.back.stock) == Outlook::Enough && serves(&own.ring)
        });
        const NAME: &str = "One of your own rings that leaves the right stock, by number";
        found.push(match fits.and_then(|at| Some((at, plan.rings.get(at)?))) {
            Some((at, own)) => {
                let left = leaves(&own.ring);
                Finding::new("recut.own_ring", NAME, Kind::Plain, (at + 1) as f64).step(Step {
                    says: "Stock per side that it leaves",
                    formula: "stock on the ring in use ∓ half the difference of the rings",
                    given: [
                        term("stock", stock, Kind::Length),
                        term("teeth to move outward", f64::from(teeth(&own.ring)), Kind::Plain),
                    ]
                    .into(),
                    result: term("stock", left, Kind::Length),
                    source: SKETCH,
                })
            }
            None => Finding::refused(
                "recut.own_ring",
                NAME,
                Kind::Plain,
                "None of them leaves a stock that cleans up and wastes nothing, fits where it bears, clears cut and bar, and on some tooth leaves the jaws in the middle third.",
            ),
        });
    }

    /// Whether they can be used without any cut.
    fn as_they_are(&self, reuse: Option<bool>, found: &mut Vec<Finding>) {
        let back = self.back;
        let off = libm::fabs(self.standing - self.target);
        let Old { runout, measured, damage, .. } = back.old;
        let says: Text = match reuse {
            None => {
                let why = "On size. Same chuck, same teeth, same order as when they were bored? Then nothing need be cut; else recut them.";
                refuse(found, QUESTION, "Mounted as before", Kind::Plain, why, "recut.as_before");
                "On size.".into()
            }
            Some(true) if measured => {
                "Use the jaws as they are: mounted as before, on size, sound, and running true.".into()
            }
            Some(true) => "Use the jaws as they are, mounted as before and on size, once their run-out is measured and no more than the part allows.".into(),
            Some(false) => {
                let reasons = [
                    (back.as_before == Some(false), "not known to be mounted as before"),
                    (off > back.tolerance, "off size"),
                    (damage > 0.0, "damaged"),
                    (measured && runout > self.setup.part.runout_limit.value, "running out by more than the part allows"),
                ];
                let reasons = reasons.into_iter().filter_map(|(holds, why)| holds.then_some(why.into()));
                Text::of("The jaws must be recut: {}.").with(Text::row(reasons, ", "))
            }
        };
        let name = "Old jaws off the diameter wanted by";
        found.push(
            Finding::new("recut.off_size", name, Kind::Departure, off).entry("recut.as_before").caution(says).step(
                Step {
                    says: "On diameter, against what you accept",
                    formula: "|D_standing − D_wanted| ≤ accepted",
                    given: [term("accepted", back.tolerance, Kind::Departure)].into(),
                    result: term("|D_standing − D_wanted|", off, Kind::Departure),
                    source: "same chuck, same teeth, same order: common practice, no source",
                },
            ),
        );
    }

    /// Recuts left after this one.
    fn life(&self, stock: f64, planned: Option<(&Plan, &Placed)>, found: &mut Vec<Finding>) {
        const NAME: &str = "Recuts left after this one";
        if stock < 0.0 {
            let why = "On this ring nothing can be cut.";
            refuse(found, "recut.left", NAME, Kind::Plain, why, "recut.standing");
            return;
        }
        let measured = self.back.metal.map(|metal| metal - stock);
        let from_tooth = || planned.map(|(plan, placed)| plan.blank.metal_behind(placed.step));
        let Some(metal) = measured.or_else(from_tooth) else {
            let why = "Measure the metal from the old face to the screw counterbores, or have the tooth worked out.";
            refuse(found, "recut.left", NAME, Kind::Plain, why, "recut.metal");
            return;
        };
        let wall = planned.map_or(LEAST_WALL, |(plan, _)| plan.least_wall);
        let left = recuts_left(metal, wall, self.back.stock);
        let finding = Finding::new("recut.left", NAME, Kind::Plain, f64::from(left)).entry("recut.stock").step(Step {
            says: "Metal left to the next counterbore after this cut, down to the least that must stay, in cuts of the usual stock",
            formula: "(metal − least) / stock, rounded down",
            given: [
                term("metal", metal, Kind::Length),
                term("least", wall, Kind::Length),
                term("stock", self.back.stock, Kind::Length),
            ]
            .into(),
            result: term("recuts", f64::from(left), Kind::Plain),
            source: "arithmetic; least metal: common practice, no source",
        });
        found.push(if metal < wall {
            finding.caution("This cut already leaves less metal than the least wanted.")
        } else {
            finding
        });
    }
}

/// How the standing diameter is found.
fn touching_off(side: Side) -> Procedure {
    let approach = match side {
        Side::Outside => {
            "Bring the nose of the boring tool inside the jaws, a little behind their front, at the middle of the face of jaw 1, clear of it."
        }
        Side::Inside => {
            "Bring the nose of the turning tool outside the jaws, a little behind their front, at the middle of the face of jaw 1, clear of it."
        }
    };
    let diameter = match side {
        Side::Outside => {
            "Read the X position. On a machine that shows diameters, the jaw stands at that diameter plus twice the thickness of the strip."
        }
        Side::Inside => {
            "Read the X position. On a machine that shows diameters, the jaw stands at that diameter less twice the thickness of the strip."
        }
    };
    // Half the run-out lies between the mean of the faces and the one with the least stock: see `recut::needed_stock`.
    let which = "Turn the spindle by hand to each jaw and touch off again. Enter the diameter midway between smallest and largest as the one the jaws stand at, and half of what lies between smallest and largest as the run-out.";
    Procedure {
        id: "recut.touch_off",
        title: "Finding the diameter the jaws stand at",
        steps: [
            "Clean jaws, serrations, master jaws and ring. Screw the jaws down on the tooth told, in their order, with the torque of the chuck's manual.",
            "Lay the ring in, clamp at the pressure for boring, and see that every jaw bears on it.",
            "Make sure that the tool's offset is right, by a test cut or a setting gauge. Set the spindle to neutral or hold it as local rules ask, so that it can only be turned by hand.",
            approach,
            "Lay a strip of known thickness between nose and face. Jog toward the face in the smallest steps until the strip just drags.",
            diameter,
            which,
        ]
        .into(),
    }
}
