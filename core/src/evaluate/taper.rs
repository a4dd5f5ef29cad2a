//! The taper for the jaws, its bluing pictures and what readings teach, as findings.

use alloc::vec::Vec;

use super::elastic::Elasticity;
use super::grip_at_rest::{at_pressure, begins_at, over, pressure_of};
use super::grip_at_speed::Spinning;
use crate::contact::Contact;
use crate::findings::{BluingPicture, Finding, Scene, Step, Term, term};
use crate::jaw_spring::TILT_DEPTH;
use crate::quantity::Kind;
use crate::setup::{Bears, Setup};
use crate::taper::{Aim, Bluing, Grip, Pressings, Reading, Shows, TaperError, learn};
use crate::text::Text;

/// How far off the pictures of too little and too much taper are where it shows, m: a thousandth of an inch per side.
const THOUSANDTH: f64 = 25.4e-6;
/// Less than this per side, m, can hardly be cut: a tenth of a thousandth of an inch, our own value.
const CUTTABLE: f64 = 2.54e-6;
/// How far beyond what just shows they are where a thousandth does not, m. Our own value.
const BEYOND: f64 = 5e-7;
const SOURCE: &str = "Timoshenko's beam on a tilting foot, in one-sided contact of elastic jaws and part";

const MORE: &str = "Off by more than a thousandth of an inch per side: less would show at both ends here. ";

/// The taper to bore, the pictures beside it, what the part's own give and boring at another pressure ask, and the
/// next taper.
pub(super) fn tell(
    setup: &Setup,
    elastic: &Elasticity,
    spinning: &Spinning,
    like: Option<&Contact>,
    found: &mut Vec<Finding>,
    scene: &mut Scene,
) {
    let jaws = f64::from(setup.chuck.jaws);
    let force = spinning.most_at_rest / jaws;
    let boring = setup.jaws.boring_pressure.map_or(1.0, |pressure| over(setup, pressure.value));
    let nominal = setup.gripped_radius();
    let bored = setup.bored_radius();
    let deviation = f64::midpoint(setup.grip.upper_deviation.value, setup.grip.lower_deviation.value);
    let pressings =
        like.map_or_else(Pressings::default, |like| Pressings::from_one(setup.jaws.taper.value, like.clone()));
    let grip = Grip {
        face: &elastic.usual,
        column: &elastic.column,
        heights: &elastic.heights,
        base: setup.jaws.height.value - setup.grip.length.value,
        length: setup.grip.length.value,
        bears: setup.bearing().map(|z| setup.jaws.height.value - setup.grip.length.value + z - setup.grip.start.value),
        larger: bored - nominal - deviation / 2.0,
        force,
        ring_force: force * boring,
        ring_height: setup.jaws.ring_height.value,
        tilt: setup.chuck.tilt_stiffness,
        tilt_depth: TILT_DEPTH,
        pressings: &pressings,
    };
    let aim = grip.aim();
    tell_right(&grip, aim, found);
    if let Ok(aim) = aim {
        let right = aim.taper;
        let blued = grip.blued(right, THOUSANDTH).ok().flatten();
        tell_unseen(aim, blued, found);
        tell_even(&grip, right, found);
        tell_blued(setup, &grip, blued, found);
        // Where no pressure shows a thousandth, they go as far off as it takes.
        let [little, much] = [right - aim.unseen[0], aim.unseen[1] - right]
            .map(|shows| if blued.is_some() { THOUSANDTH } else { THOUSANDTH.max(shows + BEYOND) });
        let grip = Grip { force: blued.unwrap_or(force), ..grip };
        let off = |off: f64| if off > THOUSANDTH { MORE } else { "A thousandth of an inch per side off. " };
        let beside = [
            ("taper.bluing.little", "too little", right - little, off(little)),
            ("taper.bluing.right", "the right", right, ""),
            ("taper.bluing.much", "too much", right + much, off(much)),
            ("taper.bluing.set", "the set", setup.jaws.taper.value, ""),
        ];
        for (id, name, taper, off) in beside {
            picture(&grip, [id, name, off], taper, found, scene);
        }
    }
    tell_pressure(setup, &grip, force * boring, found);
    let next = tell_next(setup, &grip, aim, force, found);
    let right = aim.ok().map(|aim| aim.taper).filter(|_| setup.boring.readings.is_empty());
    let cut = next.or(right).filter(|cut| *cut >= 0.0);
    scene.cut_taper = cut.map(|cut| if cut > CUTTABLE { cut } else { 0.0 });
}

fn tell_right(grip: &Grip<'_>, aim: Result<Aim, TaperError>, found: &mut Vec<Finding>) {
    let name = "Taper that cancels the jaws' opening, per side";
    let Aim { taper: right, lean, unseen: [from, to] } = match aim {
        Ok(aim) => aim,
        Err(error) => {
            let why = Text::from(&error);
            found.push(Finding::refused("taper.right", name, Kind::Departure, why).entry("jaws.taper"));
            return;
        }
    };
    let words = if right < 0.0 {
        "Negative: less metal at the tip than at the base, because the boring ring leans the jaws more than the part will. Do not bore that: put the ring no higher than the middle of the grip, and bore at no more than the pressure of the run."
    } else if right > CUTTABLE {
        "More metal at the tip than at the base, for either grip. It depends on the tilt stiffness of the chuck: bore, look at the bluing, and enter what it shows."
    } else if right > 0.0 {
        "More metal at the tip than at the base, but too little to cut: cut straight. Then look at the bluing, and enter what it shows."
    } else if lean < 0.0 {
        "Cut straight, no taper. The boring ring leans the jaws a little more than the part will, and it does not show."
    } else if to >= 0.0 {
        "Cut straight, no taper. The part gives more at the base than at the tip: more metal at the tip would take the contact off the base."
    } else {
        "Cut straight, no taper. The part gives so much more at the base than at the tip that even straight jaws bear at the tip only: grip at less pressure, or hold it where it is stiffer."
    };
    let told = Finding::new("taper.right", name, Kind::Departure, right).caution(words).entry("jaws.taper").step(Step {
        says: "How much more the tip is leaned back by the grip than by the boring ring, jaw and master jaw alone: with so much more metal at the tip the face stands along the axis again under the grip",
        formula: "t = F (c_tip − c_base) − F_b (c_tip,ring − c_base,ring)",
        given: [term("F", grip.force, Kind::Force), term("F_b", grip.ring_force, Kind::Force)].into(),
        result: term("t", lean, Kind::Departure),
        source: "Timoshenko's beam on a tilting foot, evenly loaded along the face",
    });
    found.push(if right == lean {
        told
    } else if right == 0.0 {
        told.step(Step {
            says: "With this or with what keeps a quarter of the way within the tapers at which both ends bear, the tip would have less metal than the base. A taper is there for what the jaws give: none is cut",
            formula: "min(t, t_to − (t_to − t_from) / 4) ≤ 0",
            given: [term("t_from", from, Kind::Departure), term("t_to", to, Kind::Departure)].into(),
            result: term("t", right, Kind::Departure),
            source: SOURCE,
        })
    } else {
        told.step(Step {
            says: "The part gives so unevenly along the face that one end would hardly bear: kept a quarter of the way within the tapers at which both do",
            formula: "t_from + (t_to − t_from) / 4 ≤ t ≤ t_to − (t_to − t_from) / 4",
            given: [term("t_from", from, Kind::Departure), term("t_to", to, Kind::Departure)].into(),
            result: term("t", right, Kind::Departure),
            source: SOURCE,
        })
    });
    found.push(twice("taper.right.diameter", "Taper that cancels the jaws' opening, on diameter", right));
}

/// What the part's own give would ask for beside it.
fn tell_even(grip: &Grip<'_>, right: f64, found: &mut Vec<Finding>) {
    let Ok(even) = grip.even_taper() else { return };
    let words = if even < right {
        "The part itself gives less at the tip than at the base, so pressure would only be even with less metal at the tip. Not for boring: a taper is there for what the jaws give."
    } else {
        "The part itself gives more at the tip than at the base, so pressure would only be even with more metal at the tip. Not for boring: it would squeeze the part most where it is weakest."
    };
    let name = "Taper with which the pressure would be even, per side";
    found.push(Finding::new("taper.even", name, Kind::Departure, even).caution(words).entry("grip.length").step(Step {
        says: "With the give of the part and of the jaw's face: the taper with which the force acts in the middle of the face",
        formula: "z̄(t) = L / 2",
        given: [term("L", grip.length, Kind::Length)].into(),
        result: term("t", even, Kind::Departure),
        source: SOURCE,
    }));
}

/// How far the taper may be off before bluing shows it at one end only.
fn tell_unseen(aim: Aim, blued: Option<f64>, found: &mut Vec<Finding>) {
    let Aim { taper: right, unseen: [from, to], .. } = aim;
    let off = (right - from).max(to - right);
    let words = if off <= THOUSANDTH {
        "A thousandth of an inch per side shows: too little as contact at the base only, too much as contact lost at the base."
    } else if blued.is_some() {
        "Under this grip jaws and part give by more than a thousandth of an inch per side, so that bluing does not show it, and it does no harm. Blue at less pressure to see it: how much is told here."
    } else {
        "Under this grip jaws and part give by more than a thousandth of an inch per side, so that bluing does not show it, and it does no harm. Nor does less pressure help: the jaws would lean less, and this taper show at the tip alone."
    };
    let name = "Taper off by this, per side, before bluing shows at one end only";
    found.push(Finding::new("taper.unseen", name, Kind::Departure, off).caution(words).entry("run.pressure").step(Step {
        says: "The tapers with which one end bears a tenth of what the other does: as little keeps its blue, which is our own value",
        formula: "max(t − t_from, t_to − t)",
        given: [
            term("t", right, Kind::Departure),
            term("t_from", from, Kind::Departure),
            term("t_to", to, Kind::Departure),
        ]
        .into(),
        result: term("off", off, Kind::Departure),
        source: SOURCE,
    }));
}

/// The pressure to blue under, where a thousandth does not show under that of the run.
fn tell_blued(setup: &Setup, grip: &Grip<'_>, blued: Option<f64>, found: &mut Vec<Finding>) {
    let Some(force) = blued.filter(|force| *force < grip.force) else { return };
    let (id, name) = ("taper.blued", "Pressure to blue under");
    let pressure = pressure_of(setup, force / grip.force);
    if let Err(why) = at_pressure(setup, pressure) {
        found.push(Finding::refused(id, name, Kind::Pressure, why).entry("run.pressure"));
        return;
    }
    let begins = begins_at(setup);
    let (formula, begins) = if begins == 0.0 {
        ("p_blue = p F_blue / F", None)
    } else {
        ("p_blue = p₀ + (p − p₀) F_blue / F", Some(term("p₀", begins, Kind::Pressure)))
    };
    let given = [
        term("p", setup.pressure.value, Kind::Pressure),
        term("F_blue", force, Kind::Force),
        term("F", grip.force, Kind::Force),
    ];
    found.push(
        Finding::new(id, name, Kind::Pressure, pressure.value)
            .caution("For the pictures, and for you: under it a thousandth of an inch per side too little or too much shows at one end only, and the right taper at both. Enter it with the reading.")
            .entry("run.pressure")
            .step(Step {
                says: "The less the jaws are pressed, the less jaws and part give. The grip of the run, less a seventh again and again until a thousandth shows either way, and the pressure that gives it",
                formula,
                given: given.into_iter().chain(begins).collect(),
                result: term("p_blue", pressure.value, Kind::Pressure),
                source: SOURCE,
            }),
    );
}

fn twice(id: &'static str, name: &'static str, per_side: f64) -> Finding {
    Finding::new(id, name, Kind::Departure, 2.0 * per_side).step(Step {
        says: "Twice the taper per side",
        formula: "t_D = 2 t",
        given: [term("t", per_side, Kind::Departure)].into(),
        result: term("t_D", 2.0 * per_side, Kind::Departure),
        source: "definition",
    })
}

/// What bluing would show with one taper.
fn picture(
    grip: &Grip<'_>,
    [id, name, off]: [&'static str; 3],
    taper: f64,
    found: &mut Vec<Finding>,
    scene: &mut Scene,
) {
    let name = Text::of("Share rubbed off with {} taper").with(name);
    let contact = match grip.press(taper) {
        Ok(contact) => contact,
        Err(error) => {
            found.push(Finding::refused(id, name, Kind::Plain, &error));
            return;
        }
    };
    let bluing = Bluing::of(grip, &contact);
    let given: [Term; 4] = [
        term("taper, per side", taper, Kind::Departure),
        term("base third", bluing.base, Kind::Plain),
        term("middle third", bluing.middle, Kind::Plain),
        term("tip third", bluing.tip, Kind::Plain),
    ];
    found.push(Finding::new(id, name, Kind::Plain, bluing.face).caution(Text::of(off).then(bluing.marked.words())).entry("jaws.taper").step(
        Step {
            says: "Area where bluing rubs off over the area of the face, in thirds from the seat to the front: where it is pressed, unless that height bears less than a tenth of what the end that bears more does",
            formula: "A_rubbed / A",
            given: given.into(),
            result: term("A_rubbed / A", bluing.face, Kind::Plain),
            source: SOURCE,
        },
    ));
    scene.bluing.push(BluingPicture {
        taper,
        bluing,
        rubbed: grip.rubbed(&contact),
        gap: grip.face.gap_along(&contact).to_vec(),
    });
}

/// What is left of the jaws' lean because they were bored at another pressure.
fn tell_pressure(setup: &Setup, grip: &Grip<'_>, ring_force: f64, found: &mut Vec<Finding>) {
    if setup.jaws.boring_pressure.is_none_or(|pressure| pressure == setup.pressure) {
        return;
    }
    let as_gripped = Grip { ring_force: grip.force, ..*grip };
    let more = grip.lean() - as_gripped.lean();
    let name = "Lean at the tip because the jaws were bored at another pressure, per side";
    let words = if more > 0.0 {
        "The tip stands open by so much more than if the jaws had been bored at the pressure of the run. Bore at that pressure, or add it to the taper."
    } else {
        "The tip is closed by so much more than if the jaws had been bored at the pressure of the run. Bore at that pressure, or take it from the taper."
    };
    found.push(
        Finding::new("taper.boring_pressure", name, Kind::Departure, more)
            .caution(words)
            .entry("jaws.boring_pressure")
            .step(Step {
                says: "The difference of the two ring forces, times how much more the tip gives than the base under the ring",
                formula: "Δt = (F − F_b) (c_tip,ring − c_base,ring)",
                given: [term("F", grip.force, Kind::Force), term("F_b", ring_force, Kind::Force)].into(),
                result: term("Δt", more, Kind::Departure),
                source: "Timoshenko's beam on a tilting foot",
            }),
    );
}

/// What the readings teach, and the taper to cut next, m per side; none without readings, or if they tell none.
fn tell_next(
    setup: &Setup,
    grip: &Grip<'_>,
    aim: Result<Aim, TaperError>,
    force: f64,
    found: &mut Vec<Finding>,
) -> Option<f64> {
    let readings: Vec<Reading> = setup
        .boring
        .readings
        .iter()
        .map(|reading| Reading {
            taper: reading.taper.value,
            force: reading.pressure.map_or(force, |pressure| force * over(setup, pressure.value)),
            shows: match reading.shows {
                Bears::Gap(gap) => Shows::TipGap(gap.value),
                Bears::Only(end, band) => Shows::Only(end, band.map(|band| band.value)),
                Bears::Even => Shows::Even,
            },
        })
        .collect();
    if readings.is_empty() {
        return None;
    }
    let [tilt, next] = ["Tilt stiffness that the readings tell", "Next taper, per side"];
    let learned = match aim.and_then(|aim| learn(grip, aim, &readings)) {
        Ok(learned) => learned,
        Err(error) => {
            let why = Text::from(&error);
            found.push(Finding::refused("taper.tilt", tilt, Kind::TiltStiffness, why.clone()));
            found.push(Finding::refused("taper.next", next, Kind::Departure, why));
            return None;
        }
    };
    match &learned.tilt {
        Ok(told) => {
            let finding = Finding::new("taper.tilt", tilt, Kind::TiltStiffness, told.stiffness)
                .entry("chuck.tilt_stiffness")
                .caution("Enter it with the chuck once two readings agree.")
                .step(Step {
                    says: "The tilt with which the jaws open as the readings showed",
                    formula: "1 / K_t = 1 / K₀ + e / (L (F (L/2 + h + z₀) − F_b (z_ring + z₀)))",
                    given: [term("K₀", grip.tilt, Kind::TiltStiffness), term("e", learned.opening, Kind::Departure)]
                        .into(),
                    result: term("K_t", told.stiffness, Kind::TiltStiffness),
                    source: SOURCE,
                });
            let [least, most] = told.open;
            found.push(if most.is_finite() { finding.band(least, most) } else { finding });
        }
        Err(why) => {
            found.push(Finding::refused("taper.tilt", tilt, Kind::TiltStiffness, why));
        }
    }
    let words = match learned.tilt {
        _ if learned.kept => "As last read it bears at both ends: leave it as it is.",
        _ if readings.iter().all(|reading| matches!(reading.shows, Shows::Only(_, None))) => {
            "Bluing tells which way, not how far, so this is a careful step. Bore it, read again, and enter that reading as well. A feeler at an open tip, or the length that is rubbed blank, tells how far."
        }
        Ok(_) => "Bore it, read again, and enter that reading as well.",
        Err(_) => {
            "Bore it, read again, and enter that reading as well. No stiffness explains the readings: the lathe's own taper or the tool pushed off may, and this cut makes up for it. It holds for these jaws, this ring and this pressure alone."
        }
    };
    found.push(
        Finding::new("taper.next", next, Kind::Departure, learned.taper)
            .entry("jaws.taper")
            .caution(words)
            .step(Step {
                says: "The right taper, and what the real jaws open more at the tip than was worked out: the taper as cut, less the one with which the jaws as worked out would show the same",
                formula: "t = t₀ + e",
                given: [
                    term("t₀", learned.taper - learned.opening, Kind::Departure),
                    term("e", learned.opening, Kind::Departure),
                ]
                .into(),
                result: term("t", learned.taper, Kind::Departure),
                source: SOURCE,
            }),
    );
    found.push(twice("taper.next.diameter", "Next taper, on diameter", learned.taper));
    Some(learned.taper)
}
