//! The path that bores the jaws and its program, as findings.

use alloc::string::String;
use alloc::vec::Vec;

use super::placing;
use crate::bore::{Ceiling, ceiling, turning_speed};
use crate::findings::{Finding, JawPath, Placing, Scene, Step, term};
use crate::grip::Side;
use crate::jaw::BoredJaw;
use crate::program::{Collision, Cutting, Heading, JawCut, Obstacle, Plan, PlanError, Tool, collisions, swept, text};
use crate::quantity::{Kind, Unit, UnitSystem};
use crate::setup::Setup;
use crate::stroke::HEAD_IN_COUNTERBORE;
use crate::text::{Language, Text};

/// One revolution per minute, rad/s.
const REV_PER_MIN: f64 = core::f64::consts::PI / 30.0;

fn plan(setup: &Setup, jaw: &BoredJaw) -> Result<Plan, PlanError> {
    let boring = &setup.boring;
    let blank = match setup.grip.side {
        Side::Outside => 2.0 * jaw.inner_radius(),
        // The corners of a flat outer end stand farthest out.
        Side::Inside => 2.0 * jaw.swing_radius(),
    };
    // Jaws that came back were measured on the ring.
    let measured = setup.placing.recut.as_ref().and_then(|back| back.standing);
    let cut = JawCut {
        side: setup.grip.side,
        diameter: 2.0 * setup.bored_radius(),
        taper: setup.jaws.taper.value,
        depth: setup.grip.length.value,
        chamfer: boring.chamfer.value,
        relief: [boring.relief_width.value, boring.relief_depth.value],
        standing: boring.standing.map(|standing| standing.value).or(measured).unwrap_or(blank),
        inner: blank,
        skim: boring.skim.value,
        skim_width: boring.skim_width.value,
    };
    let tool = Tool {
        nose: boring.nose_radius.value,
        behind: boring.behind.value,
        bar: boring.bar_diameter.value,
        reach: boring.bar_reach.value,
        holder: boring.holder_width.value,
    };
    let cutting = Cutting {
        depth: boring.depth_of_cut.value,
        allowance: boring.allowance.value,
        rough_feed: boring.rough_feed.value,
        finish_feed: boring.finish_feed.value,
        start: boring.start.value,
    };
    Plan::new(&cut, &tool, &cutting)
}

/// Spindle speed while boring, rad/s, and what rules it.
fn speed(setup: &Setup, plan: &Plan) -> (f64, Ceiling) {
    let boring = &setup.boring;
    let surface = turning_speed(boring.surface_speed * boring.interrupted.value, plan.largest_diameter());
    let (omega, rules) = ceiling(surface, boring.speed_limit.value, setup.chuck.max_speed.value);
    // The program's S word is a whole number, and no limit is overrun by rounding.
    (libm::floor(omega / REV_PER_MIN + 1e-9) * REV_PER_MIN, rules)
}

/// Passes, speed, feed and collisions of the path; the path itself for drawing.
pub(super) fn tell(setup: &Setup, jaw: &BoredJaw, found: &mut Vec<Finding>, scene: &mut Scene) {
    let name = "Roughing passes to bore the jaws";
    let plan = match plan(setup, jaw) {
        Ok(plan) => plan,
        Err(error) => {
            placing::refuse(found, "program.passes", name, Kind::Plain, &error, "boring.standing");
            return;
        }
    };
    let stock = libm::fabs(plan.cut.diameter - plan.cut.standing) / 2.0;
    found.push(
        Finding::new("program.passes", name, Kind::Plain, plan.passes as f64).entry("boring.depth_of_cut").step(Step {
            says: "Stock per side less what is left for finishing, by the depth of cut",
            formula: "n = ⌈(s − a) / a_p⌉",
            given: [
                term("s, per side", stock, Kind::Length),
                term("a", setup.boring.allowance.value, Kind::Length),
                term("a_p", setup.boring.depth_of_cut.value, Kind::Length),
            ]
            .into(),
            result: term("n", plan.passes as f64, Kind::Plain),
            source: "definition",
        }),
    );
    tell_speed(setup, &plan, found);
    let feed = setup.boring.rough_feed.value;
    let half = plan.tool.nose / 2.0;
    let finding = Finding::new("program.feed", "Roughing feed while boring", Kind::Feed, feed)
        .at_most(half, "half the nose radius: common practice, no source")
        .entry("boring.rough_feed")
        .step(Step {
            says: "The edge hits every jaw anew, and chips if it is fed far beyond what its nose bears",
            formula: "f ≤ r / 2",
            given: [term("r", plan.tool.nose, Kind::Length)].into(),
            result: term("f", feed, Kind::Feed),
            source: "common practice, no source",
        });
    found.push(if feed > half { finding.caution("Feed less, or take a larger nose.") } else { finding });
    let obstacles = obstacles(setup, scene.placing.as_ref());
    let hits = collisions(&plan, &obstacles);
    tell_hits(&plan, &hits, obstacles.is_empty(), found);
    scene.jaw_path = Some(JawPath {
        shape: swept(&plan.moves, plan.tool.nose, plan.cut.sign()),
        standing: plan.cut.standing,
        skim: plan.cut.skim,
        nose: plan.tool.nose,
        bar: [plan.tool.bar, plan.tool.reach],
        collisions: hits,
        moves: plan.moves,
    });
}

fn tell_speed(setup: &Setup, plan: &Plan, found: &mut Vec<Finding>) {
    let (omega, rules) = speed(setup, plan);
    let words = match rules {
        Ceiling::Surface => "The surface speed rules.",
        Ceiling::Own => "Your own limit while boring on a ring rules.",
        Ceiling::Plate => "The chuck's plate rules.",
    };
    let boring = &setup.boring;
    let largest = plan.largest_diameter();
    found.push(
        Finding::new("boring.speed", "Spindle speed while boring the jaws", Kind::RotationalSpeed, omega)
            .caution(words)
            .entry("boring.speed_limit")
            .step(Step {
                says: "The surface speed wanted, less for the broken cut, at the largest diameter; capped by your own limit and the plate, and rounded down to whole revolutions as in the program",
                formula: "n = min(k v / (π D), n_own, n_plate)",
                given: [
                    term("v", boring.surface_speed, Kind::SurfaceSpeed),
                    term("k", boring.interrupted.value, Kind::Plain),
                    term("D", largest, Kind::Length),
                    term("n_own", boring.speed_limit.value, Kind::RotationalSpeed),
                    term("n_plate", setup.chuck.max_speed.value, Kind::RotationalSpeed),
                ]
                .into(),
                result: term("n", omega, Kind::RotationalSpeed),
                source: "definition of surface speed; less for a broken cut: common practice, no source",
            }),
    );
}

fn tell_hits(plan: &Plan, hits: &[Collision], jaws_alone: bool, found: &mut Vec<Finding>) {
    let finding = Finding::new(
        "program.collisions",
        "Moves of the boring path that would hit something",
        Kind::Plain,
        hits.len() as f64,
    )
    .entry("boring.bar_diameter");
    found.push(match hits.first() {
        None if jaws_alone => finding.caution(JAWS_ALONE),
        None => finding.caution(ALL_BUT_TURRET),
        Some(hit) => finding.caution(hit_words(plan, hit)).at_most(0.0, "nothing may be hit"),
    });
}

const JAWS_ALONE: &str = "Tool against the jaws alone: ring, screws and turret are not checked. Run it in air.";
const ALL_BUT_TURRET: &str = "Tool against jaws, ring and screws: the turret is not checked. Run it in air.";

fn hit_words(plan: &Plan, hit: &Collision) -> Text {
    let purpose = plan.moves.get(hit.step).map_or("", |step| step.purpose.words());
    Text::of("On move {} ({}) the {} would hit: {}.")
        .with(hit.step + 1)
        .with(purpose)
        .with(hit.part.words())
        .with(hit.obstacle)
}

/// Ring and screws, where the jaws' place on the chuck is known.
fn obstacles(setup: &Setup, placing: Option<&Placing>) -> Vec<Obstacle> {
    let Some(placing) = placing else { return Vec::new() };
    let front = setup.jaws.height.value;
    let [across, deep] = placing.counterbore;
    // The head lies on the counterbore's bottom; what is above it is air, and is bored away with the metal around it.
    let top = (HEAD_IN_COUNTERBORE * across - deep).min(0.0);
    let screw =
        |name, radius: f64| Obstacle { name, radial: [radius - across / 2.0, radius + across / 2.0], z: [-front, top] };
    let [near, far] = placing.screws;
    let ring = placing.ring.map(|ring| Obstacle {
        name: "boring ring or plug",
        radial: ring.radii,
        z: ring.heights.map(|height| height - front),
    });
    let screws = [screw("head of the near screw", near), screw("head of the far screw", far)];
    screws.into_iter().chain(ring).collect()
}

/// The program that bores the jaws of a set-up, as word-address text after ISO 6983-1; in the units `shown` unless it
/// was said in which, and with its comments in `language`.
///
/// # Errors
/// Why there is none: no path can be planned, or the tool would hit something on it.
///
/// ```
/// use holdround_core::{jaw_program, quantity::UnitSystem, setup::{Entries, Setup}, text::ENGLISH};
/// let setup = Setup::read(&Entries::default()).unwrap();
/// let program = jaw_program(&setup, UnitSystem::Inch, ENGLISH).unwrap();
/// assert!(program.contains("UNPROVEN: RUN IN AIR FIRST"));
/// assert!(program.contains("SET ON THE CONTROL: INCHES"));
/// ```
pub fn jaw_program(setup: &Setup, shown: UnitSystem, language: Language) -> Result<String, Text> {
    let jaw = BoredJaw::new(setup.jaw()).map_err(|error| Text::from(&error))?;
    let plan = plan(setup, &jaw).map_err(|error| Text::from(&error))?;
    let (mut unheard, mut scene) = (Vec::new(), Scene::default());
    placing::tell(setup, Some(plan.tool.bar), &mut unheard, &mut scene);
    let obstacles = obstacles(setup, scene.placing.as_ref());
    if let Some(hit) = collisions(&plan, &obstacles).first() {
        return Err(hit_words(&plan, hit));
    }
    let boring = &setup.boring;
    let system = boring.units.unwrap_or(shown);
    let (omega, _) = speed(setup, &plan);
    let heading = Heading {
        inch: system == UnitSystem::Inch,
        backward: boring.backward,
        speed: libm::round(omega / REV_PER_MIN) as u32,
        number: &boring.number,
        name: &boring.name,
        notes: &notes(setup, &plan, obstacles.is_empty(), system),
        language,
    };
    if heading.speed == 0 {
        return Err("The spindle would stand still: raise the surface speed or the speed limit.".into());
    }
    Ok(text(&plan, &heading))
}

/// The pressures at which the part is then run.
fn run_at(setup: &Setup, system: UnitSystem) -> Text {
    let show = |pressure: f64| Text::quantity(pressure, Kind::Pressure.unit_in(system));
    match setup.finish_pressure {
        None => Text::of("Part then clamped at {}").with(show(setup.pressure.value)),
        Some(finish) => Text::of("Part then roughed at {}, clamped anew and finished at {}")
            .with(show(setup.pressure.value))
            .with(show(finish.value)),
    }
}

/// What is assumed and what to heed, for the heading.
fn notes(setup: &Setup, plan: &Plan, jaws_alone: bool, system: UnitSystem) -> Vec<Text> {
    let inch = system == UnitSystem::Inch;
    let length = Kind::Length.unit_in(system);
    // A taper in thousandths of a millimetre would need a letter that no control has.
    let fine = Unit::named(Kind::Departure, length.symbol).unwrap_or(length);
    let show = |size: f64| Text::quantity(size, length);
    let small = |size: f64| Text::quantity(size, fine);
    let cut = &plan.cut;
    let (way, standing) = match cut.side {
        Side::Outside => ("bored, for an outside grip", "jaws stand apart by"),
        Side::Inside => ("turned, for an inside grip", "jaws stand across"),
    };
    let pressure = setup.jaws.boring_pressure.unwrap_or(setup.pressure).value;
    [
        "UNPROVEN: run in air first, slowly, with the ring clamped".into(),
        "Guard closed. Stand clear of the plane of the jaws".into(),
        "The chuck's plate and manual rule over every number here".into(),
        Text::of("Soft jaws {}").with(way),
        Text::of("Set on the control: {}, absolute, X on diameter, feed per revolution").with(if inch {
            "inches"
        } else {
            "millimetres"
        }),
        Text::of("{} decimals: see that the control takes them").with(crate::program::decimals(inch)),
        "Z0 = front of the jaws after the skim, X0 = spindle axis".into(),
        Text::of("Nose radius {} is in the path: switch no nose compensation on").with(show(plan.tool.nose)),
        "Tool point: the sharp tip beyond the nose, into the metal and toward the chuck".into(),
        Text::of("Tool stands before the start at Z{} or farther, clear on X").with(show(setup.boring.start.value)),
        Text::of("Diameter at the front {}, depth {}").with(show(cut.diameter)).with(show(cut.depth)),
        if cut.taper == 0.0 {
            "Straight, no taper".into()
        } else {
            let words = if cut.taper > 0.0 {
                "Taper {} per side = {} on diameter, more metal at the front"
            } else {
                "Taper {} per side = {} on diameter, less metal at the front"
            };
            Text::of(words).with(small(libm::fabs(cut.taper))).with(small(2.0 * libm::fabs(cut.taper)))
        },
        Text::of("Before: {} {}, front {} proud").with(standing).with(show(cut.standing)).with(show(cut.skim)),
        Text::of("Ring {} above the serrations, pressure {}")
            .with(show(setup.jaws.ring_height.value))
            .with(Text::quantity(pressure, Kind::Pressure.unit_in(system))),
        run_at(setup, system),
        if jaws_alone { JAWS_ALONE } else { ALL_BUT_TURRET }.into(),
    ]
    .into()
}
