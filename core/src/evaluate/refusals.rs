//! What cannot be told is refused in words at its own finding, and the rest is told all the same.

use alloc::string::{String, ToString};

use crate::evaluate;
use crate::findings::Findings;
use crate::jaw_program;
use crate::quantity::UnitSystem;
use crate::setup::{Entries, Setup};
use crate::text::ENGLISH;

type Changes = &'static [(&'static str, &'static str)];

const GAUGE: Changes = &[
    ("chuck.grip_from", "gauge"),
    ("gauge.0.pressure", "1 MPa"),
    ("gauge.0.grip", "20 kN"),
    ("gauge.1.pressure", "2 MPa"),
    ("gauge.1.grip", "41 kN"),
    ("gauge.2.pressure", "3 MPa"),
    ("gauge.2.grip", "60 kN"),
];
const DIAL: Changes = &[("indicator.use", "once"), ("indicator.unit", "0.001 mm"), ("indicator.resolution", "0.1 µm")];

fn setup(changes: &[Changes]) -> Setup {
    let entries = Entries::typed(changes.iter().copied().flatten());
    Setup::read(&entries).expect("the entries agree")
}

fn findings(changes: &[Changes]) -> Findings {
    evaluate(&setup(changes))
}

fn refusal(found: &Findings, id: &str) -> String {
    let finding = found.get(id).unwrap_or_else(|| panic!("{id} is told"));
    finding.value.clone().expect_err("it is refused").to_string()
}

fn caution(found: &Findings, id: &str) -> String {
    let told = found.get(id).and_then(|finding| finding.caution.as_ref()).map(ToString::to_string);
    told.unwrap_or_else(|| panic!("{id} has a caution"))
}

/// Twelve readings, µm.
fn dial(more: Changes, read: impl Fn(f64) -> f64) -> Findings {
    let mut entries = Entries::typed(DIAL.iter().chain(more));
    for at in 0..12 {
        let angle = core::f64::consts::TAU * f64::from(at) / 12.0;
        entries.set(&alloc::format!("dial.{at}.reading"), &crate::quantity::fixed(read(angle), 4));
    }
    evaluate(&Setup::read(&entries).expect("the readings can be read"))
}

#[test]
fn gauge_readings_that_tell_nothing_at_this_pressure_are_refused() {
    let cases: [(Changes, &str); 3] = [
        (&[("run.pressure", "6 MPa"), ("cylinder.max_pressure", "7 MPa")], "too far from the gauge readings"),
        (&[("gauge.2.grip", "10 kN"), ("gauge.1.grip", "15 kN"), ("run.pressure", "2 MPa")], "do not rise"),
        (
            &[
                ("gauge.0.grip", "0.1 kN"),
                ("gauge.1.grip", "30 kN"),
                ("gauge.2.grip", "70 kN"),
                ("run.pressure", "0.9 MPa"),
            ],
            "no grip at this pressure",
        ),
    ];
    for (changes, says) in cases {
        let found = findings(&[GAUGE, changes]);
        let why = refusal(&found, "grip.rest");
        assert!(why.contains(says), "{changes:?}: {why}");
        assert!(found.value("jaw.mass").is_some(), "the jaws are told all the same");
        assert!(found.value("hold.factor").is_none(), "no hold is told without a grip");
    }
    let band = findings(&[GAUGE, &[("run.pressure", "2 MPa")]]).get("grip.rest").and_then(|grip| grip.band);
    let (least, most) = band.expect("three readings tell how far to trust the line");
    assert!(least < 40.3e3 && most > 40.4e3 && most - least < 60e3, "{least} to {most}");
}

#[test]
fn lobes_that_no_chuck_condition_explains_are_refused() {
    let lobes = |height: f64| move |angle: f64| height * libm::cos(3.0 * angle);
    let cases: [(Changes, f64, &str); 3] =
        [(&[], -500.0, "Even a new chuck"), (&[], 500.0, "the other way"), (GAUGE, -5.0, "read by a gauge")];
    for (more, height, says) in cases {
        let why = refusal(&dial(more, lobes(height)), "indicator.condition");
        assert!(why.contains(says), "{height} µm: {why}");
    }
}

#[test]
fn what_waves_mean_is_said_with_each() {
    let wild = dial(&[], |angle| {
        40.0 * libm::cos(5.0 * angle + 1.0) + 30.0 * libm::cos(angle) + 20.0 * libm::cos(2.0 * angle)
    });
    assert!(caution(&wild, "indicator.range").contains("scatter"), "what no wave explains is scatter");
    let aside = dial(&[], |angle| 20.0 * libm::sin(3.0 * angle));
    assert!(caution(&aside, "indicator.lobing").contains("do not stand at the jaws"), "a lobe beside the jaws");
    let high = dial(&[], |angle| -200.0 * libm::cos(3.0 * angle));
    assert!(caution(&high, "indicator.lobing").contains("More than worked out"), "more than expected");
}

#[test]
fn no_program_is_written_for_a_tool_that_would_strike_or_a_spindle_that_would_stand() {
    let plain: Changes = &[];
    let two: Changes = &[
        ("run.pressures", "two"),
        ("run.pressure", "2 MPa"),
        ("run.finish_pressure", "1 MPa"),
        ("cuts.0.stage", "rough"),
    ];
    for (changes, system, says) in
        [(plain, UnitSystem::Metric, "Part then clamped at"), (two, UnitSystem::Inch, "clamped anew and finished at")]
    {
        let text = jaw_program(&setup(&[changes]), system, ENGLISH).expect("it can be cut");
        let says: String = says.to_ascii_uppercase();
        assert!(text.to_ascii_uppercase().contains(&says), "{says}: {text}");
    }
    let struck = jaw_program(&setup(&[&[("boring.bar_reach", "15 mm")]]), UnitSystem::Metric, ENGLISH);
    assert!(struck.is_err_and(|why| !why.is_empty()), "a holder that meets the jaws");
}
