//! The hold against every cut, as findings.

use alloc::format;
use alloc::vec::Vec;

use super::cuts::{load, name_of, tell_forces, why};
use super::grip_at_speed::Spinning;
use crate::contact::{Contact, Face};
use crate::cutting::{Cut as CuttingCut, RotatingWrench};
use crate::findings::{Finding, Step, Term, term};
use crate::grip::Side;
use crate::hold::{Centre, Clamped, ContactPoint, Hold, HoldError, LateralSupport, Mode, Motion, Seat};
use crate::quantity::Kind;
use crate::setup::{Setup, Toward};
use crate::text::Text;

/// Contact points that stand for half a jaw face, along its arc and along its length.
const POINTS: (usize, usize) = (3, 3);
/// Hold factor told where the seat bears the load and friction is hardly asked.
const CARRIED: f64 = 1000.0;
/// How far the spread of the normal forces may have moved, as a share of them, for the motion found with another one
/// to serve.
const SAME_SPREAD: f64 = 0.02;

/// The least hold factor over the cuts.
#[derive(Clone, Copy)]
pub(super) struct LeastHold {
    /// What it would be with the least grip at rest; it follows the grip in proportion.
    pub(super) at_rest: f64,
}

/// The part held at one clamping pressure.
pub(super) struct Held<'a> {
    /// The contact with which slip is judged, where there is one.
    pub(super) slip: Option<(&'a Face<'static>, &'a Contact)>,
    /// The grip, where there is any.
    pub(super) spinning: Option<&'a Spinning>,
}

/// Judges every cut at its own pressure, finishing cuts as held in `finish` where it is another; returns the least hold
/// factor of either.
pub(super) fn hold(
    setup: &Setup,
    rough: &Held<'_>,
    finish: Option<&Held<'_>>,
    found: &mut Vec<Finding>,
) -> [Option<LeastHold>; 2] {
    let stages = [rough, finish.unwrap_or(rough)];
    let held = stages.map(|stage| {
        let clamped = stage.slip.map(|(face, contact)| clamp(setup, &contacts(setup, face, contact)));
        (clamped, stage.slip.map_or(0.0, |(face, contact)| f64::from(setup.chuck.jaws) * face.force(contact)))
    });
    let mut least: [Option<(f64, usize, &'static str)>; 2] = [None, None];
    let mut refused: Option<Text> = None;
    for (at, cut) in setup.cuts.iter().enumerate() {
        let name = Text::of("Cut {}, {}").with(at + 1).with(name_of(&cut.kind));
        let cutting = match load(setup, cut) {
            Ok(cutting) => cutting,
            Err(error) => {
                let why = why(&error);
                found.push(Finding::refused(
                    format!("cuts.{at}.force"),
                    Text::of("{}: cutting force").with(name),
                    Kind::Force,
                    why.clone(),
                ));
                refused = Some(why);
                continue;
            }
        };
        tell_forces(setup, at, &name, cut, &cutting, found);
        let stage = usize::from(cut.finishing);
        let (clamped, pressed) = &held[stage];
        let judged = match clamped {
            None => continue,
            Some(Err(error)) => Err(no_hold(error)),
            Some(Ok(clamped)) => {
                let enough = least[stage].map_or(f64::INFINITY, |(factor, ..)| factor);
                judge(setup, clamped, &cutting, *pressed, enough)
            }
        };
        match judged {
            Ok(judged) => least[stage] = Some(less(least[stage], judged, at)),
            Err(why) => refused = Some(why),
        }
    }
    let name = "Hold factor";
    let [Some(first), Some(second)] = stages.map(|stage| stage.spinning) else {
        found.push(Finding::refused("hold.factor", name, Kind::Plain, "There is no grip to hold with."));
        return [None, None];
    };
    // One cut that cannot be judged leaves the whole job unjudged.
    if let Some(why) = refused {
        found.push(Finding::refused("hold.factor", name, Kind::Plain, why));
        return [None, None];
    }
    let spinning = [first, second];
    let at_speed = |stage: usize| {
        let (judged, cut, mode) = least[stage]?;
        Some((if spinning[stage].at_speed.lowest > 0.0 { judged } else { 0.0 }, cut, mode, held[stage].1))
    };
    let worst = [at_speed(0), at_speed(1)].into_iter().flatten().min_by(|a, b| a.0.total_cmp(&b.0));
    let Some((factor, cut, mode, pressed)) = worst else {
        found.push(Finding::refused("hold.factor", name, Kind::Plain, "No cut loads the part."));
        return [None, None];
    };
    found.push(tell_hold(setup, pressed, factor, cut, mode));
    if let Some(centre) = centre(setup) {
        found.push(tell_centre(&centre));
    }
    [0, 1].map(|stage| {
        let (judged, ..) = least[stage]?;
        let pressed = held[stage].1;
        // What a centre adds does not follow the grip: from a hold that is too little, no grip that is enough is told.
        if setup.grip.thrust.is_some() && judged < setup.grip.required_hold.value {
            return None;
        }
        // Friction follows the normal forces, and those follow the grip.
        Some(LeastHold { at_rest: if pressed > 0.0 { judged * spinning[stage].least_at_rest / pressed } else { 0.0 } })
    })
}

/// How the part moves first, and with which spread of the normal forces this was found.
#[derive(Clone, Debug)]
pub(super) struct Slip {
    contacts: Vec<ContactPoint>,
    /// Thrust of a centre over the friction of the jaws.
    thrust: f64,
    cut: usize,
    angle: f64,
    motion: Motion,
}

/// What limits the hold.
#[derive(Clone, Copy, Debug)]
pub(super) struct Factors {
    /// Load multiplier at which friction gives way, with what seat and centre bear.
    pub(super) slip: f64,
    /// Load multiplier at which a jaw lifts off.
    pub(super) lift: f64,
}

/// The least hold factors over the cuts, with the part pressed like this; none where one of them cannot be judged.
///
/// The factor is a least over motions, so where the normal forces are spread almost as they were in `kept`, the motion
/// found then gives it but for the square of the difference (the envelope theorem): two hundredths cost less than a thousandth.
pub(super) fn least_factors(
    setup: &Setup,
    face: &Face<'static>,
    contact: &Contact,
    kept: &mut Option<Slip>,
) -> Option<Factors> {
    let contacts = contacts(setup, face, contact);
    let clamped = clamp(setup, &contacts).ok()?;
    let pressed = f64::from(setup.chuck.jaws) * face.force(contact);
    let normal: f64 = contacts.iter().map(|contact| contact.normal_force).sum();
    let thrust = setup.grip.thrust.map_or(0.0, |thrust| thrust.value) / (setup.grip.friction.value * normal);
    let loads: Option<Vec<_>> =
        setup.cuts.iter().map(|cut| Some(load(setup, cut).ok()?.load().ok()?.rotating())).collect();
    let loads = loads?;
    let lift = loads.iter().map(|load| lift_off(setup, &clamped, pressed, load)).fold(f64::INFINITY, f64::min);
    if let Some(slip) = kept.as_ref()
        && (slip.thrust - thrust).abs() <= SAME_SPREAD * thrust
        && spread_alike(&slip.contacts, &contacts)
        && let Some(load) = loads.get(slip.cut)
        && let Some(slip) = clamped.trial(&load.at(slip.angle), &clamped.allowed(&slip.motion))
    {
        return Some(Factors { slip, lift });
    }
    let (mut lowest, mut slip) = (f64::INFINITY, None);
    for (cut, load) in loads.iter().enumerate() {
        let jaws = setup.chuck.jaws as usize;
        let Some(worst) = clamped.worst_unless_above(load, jaws, lowest).ok()? else { continue };
        let factor = match worst.hold {
            Hold::NoGrip => 0.0,
            Hold::CarriedBySeat | Hold::NoLoad | Hold::CarriedByJaws => CARRIED,
            Hold::Limit(limit) if limit.factor < lowest => {
                let (contacts, motion) = (contacts.clone(), limit.motion);
                slip = Some(Slip { contacts, thrust, cut, angle: worst.angle, motion });
                limit.factor
            }
            Hold::Limit(limit) => limit.factor,
        };
        lowest = lowest.min(factor);
    }
    *kept = slip;
    Some(Factors { slip: lowest, lift })
}

/// Whether two sets of contacts share their force alike and at the same places.
fn spread_alike(one: &[ContactPoint], other: &[ContactPoint]) -> bool {
    let sum = |contacts: &[ContactPoint]| contacts.iter().map(|contact| contact.normal_force).sum::<f64>();
    let (first, second) = (sum(one), sum(other));
    let moved = |(a, b): (&ContactPoint, &ContactPoint)| {
        let reach = libm::hypot(a.position[0], a.position[1]);
        let away = a.position.iter().zip(b.position).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
        let share = a.normal_force / first;
        (share - b.normal_force / second).abs() + share * away / reach
    };
    one.len() == other.len() && one.iter().zip(other).map(moved).sum::<f64>() < SAME_SPREAD
}

/// The hold against one cut: the factor, how the part would move, and which cut it is.
type Judged = (f64, &'static str);

fn less(least: Option<(f64, usize, &'static str)>, (factor, mode): Judged, at: usize) -> (f64, usize, &'static str) {
    match least {
        Some(so_far) if so_far.0 <= factor => so_far,
        _ => (factor, at, mode),
    }
}

/// The hold factor of one cut at the worst angle of the tool, with `grip` N; exact only below `enough`.
fn judge(setup: &Setup, clamped: &Clamped, cutting: &CuttingCut, grip: f64, enough: f64) -> Result<Judged, Text> {
    let load = cutting.load().map_err(|error| why(&error))?.rotating();
    let worst =
        clamped.worst_unless_above(&load, setup.chuck.jaws as usize, enough).map_err(|error| no_hold(&error))?;
    let judged = match worst.map(|worst| worst.hold) {
        None => (f64::INFINITY, "holds better than against another cut"),
        Some(Hold::NoGrip) => (0.0, "slips, for there is no grip"),
        Some(Hold::CarriedBySeat) => (CARRIED, "comes off its seat"),
        Some(Hold::NoLoad | Hold::CarriedByJaws) => (CARRIED, "lifts off a jaw"),
        Some(Hold::Limit(limit)) => (limit.factor.min(CARRIED), words(limit.mode)),
    };
    let lifting = lift_off(setup, clamped, grip, &load);
    Ok(if lifting < judged.0 { (lifting, "lifts off a jaw") } else { judged })
}

fn no_hold(error: &HoldError) -> Text {
    Text::of("No hold can be given: {}.").with(error)
}

/// Load multiplier at which a force across the axis takes the last grip from one jaw: half the grip over
/// the force, for three or more equal jaws as equal radial springs.
fn lift_off(setup: &Setup, clamped: &Clamped, grip: f64, load: &RotatingWrench) -> f64 {
    // The tool's angle turns the force, and does not change it.
    let across = clamped.across(&load.at(0.0));
    if support(setup) == LateralSupport::Jaws && across > 0.0 { grip / (2.0 * across) } else { f64::INFINITY }
}

/// Three or more jaws that move together bear a force across the axis; two do not bear one square to their line.
fn support(setup: &Setup) -> LateralSupport {
    if setup.chuck.jaws >= 3 { LateralSupport::Jaws } else { LateralSupport::Friction }
}

/// The part in the jaws, held by the contact's own normal forces.
fn clamp(setup: &Setup, contacts: &[ContactPoint]) -> Result<Clamped, HoldError> {
    let clamped = Clamped::new(contacts, setup.grip.friction.value, seat(setup))?.supported(support(setup));
    match centre(setup) {
        Some(centre) => clamped.centred(centre),
        None => Ok(clamped),
    }
}

/// The centre in the tail end, if there is one.
fn centre(setup: &Setup) -> Option<Centre> {
    setup.grip.thrust.map(|thrust| Centre { z: setup.overhang(), thrust: thrust.value })
}

/// The contact gathered into a few points to a jaw, each at the middle of the forces it stands for.
fn contacts(setup: &Setup, face: &Face<'static>, contact: &Contact) -> Vec<ContactPoint> {
    let (radius, length) = (setup.gripped_radius(), setup.bearing_length());
    let front = setup.grip.start.value + setup.grip.length.value;
    let [_, tip] = setup.bearing();
    let half = face.arc().angles().last().copied().unwrap_or(1.0);
    let mut cells = [[0.0; 3]; POINTS.0 * POINTS.1];
    for [angle, z, force] in face.normal_forces(contact) {
        let across = ((angle / half * POINTS.0 as f64) as usize).min(POINTS.0 - 1);
        let along = (((tip - z) / length * POINTS.1 as f64) as usize).min(POINTS.1 - 1);
        let cell = &mut cells[across * POINTS.1 + along];
        // Both halves of the face share the force.
        for (sum, value) in cell.iter_mut().zip([1.0, angle, z - front]) {
            *sum += value * force / 2.0;
        }
    }
    let inward = if setup.grip.side == Side::Outside { -1.0 } else { 1.0 };
    let mut contacts = Vec::new();
    for jaw in 0..setup.chuck.jaws {
        let axis = core::f64::consts::TAU * f64::from(jaw) / f64::from(setup.chuck.jaws);
        for [force, angle, z] in cells.iter().filter(|cell| cell[0] > 0.0) {
            for side in [-1.0, 1.0] {
                let (sin, cos) = libm::sincos(axis + side * angle / force);
                contacts.push(ContactPoint {
                    position: [radius * cos, radius * sin, z / force],
                    normal: [inward * cos, inward * sin, 0.0],
                    normal_force: *force,
                });
            }
        }
    }
    contacts
}

/// The ring on which the part rests: the middle of the metal that part and jaw step share.
pub(super) fn seat(setup: &Setup) -> Option<Seat> {
    let (radius, step) = (setup.gripped_radius(), setup.jaws.step.value);
    let start = setup.grip.start.value;
    let [outside, bore] = setup.part.diameters_at(start, Toward::Far).map(|diameter| diameter / 2.0);
    // Metal nearer the chuck than the grip leaves only a shoulder to rest on.
    let behind = (start > 0.0).then(|| setup.part.diameters_at(start, Toward::Chuck).map(|diameter| diameter / 2.0));
    let (inner, outer) = match setup.grip.side {
        Side::Outside => ((radius - step).max(behind.map_or(bore, |[outside, _]| outside)), radius),
        Side::Inside => (radius, (radius + step).min(behind.map_or(outside, |[_, bore]| bore))),
    };
    (setup.grip.seated && outer > inner)
        .then_some(Seat { radius: f64::midpoint(inner, outer), z: -setup.grip.length.value })
}

fn tell_hold(setup: &Setup, grip: f64, factor: f64, cut: usize, mode: &'static str) -> Finding {
    let mut given: Vec<Term> = [term("μ", setup.grip.friction.value, Kind::Plain), term("F", grip, Kind::Force)].into();
    given.extend(setup.grip.thrust.map(|thrust| term("T", thrust.value, Kind::Force)));
    let says = Text::of("Cut {} decides; beyond this load the part {}.").with(cut + 1).with(mode);
    Finding::new("hold.factor", "Hold factor", Kind::Plain, factor)
        .at_least(setup.grip.required_hold.value, "the hold factor you want")
        .caution(says)
        .entry("run.pressure")
        .step(Step {
            says: "Least load multiplier over all rigid motions of the part, friction against load, at the worst angle of the tool to the jaws. Three or more jaws that move together bear forces across the axis until one lifts off, at half the grip",
            formula: if setup.grip.thrust.is_some() {
                "S = min over v, with W·v = 1, of Σ μ Nᵢ |vᵢ| + T v_z + F_q |v_q|"
            } else {
                "S = min over v, with W·v = 1, of Σ μ Nᵢ |vᵢ|"
            },
            given,
            result: term("S", factor, Kind::Plain),
            source: "limit analysis, upper-bound theorem: Drucker, Prager and Greenberg 1952, from memory; normal forces from the contact of jaws and part at the grip F at speed",
        })
}

/// What a centre bears.
fn tell_centre(centre: &Centre) -> Finding {
    let bears = centre.bears_across();
    Finding::new("hold.centre", "Push across that the tail centre bears", Kind::Force, bears).entry("grip.thrust").step(Step {
        says: "The push at which the far side of the centre hole comes off a 60° point; the part is lifted off the jaw step only against the thrust T, and no torque is counted",
        formula: "F_q = T / (2 tan α)",
        given: [term("T", centre.thrust, Kind::Force), term("α", Centre::HALF_ANGLE, Kind::Angle)].into(),
        result: term("F_q", bears, Kind::Force),
        source: "statics of a cone that bears with 1 + cos around it; 60° by ISO 866 and ISO 2541, from memory",
    })
}

fn words(mode: Mode) -> &'static str {
    match mode {
        Mode::PullOut => "comes out of the jaws",
        Mode::PushIn => "is pushed into the chuck",
        Mode::Spin => "spins in the jaws",
        Mode::Tip => "tips out of the jaws",
        Mode::Slide => "slides across the jaws",
    }
}
