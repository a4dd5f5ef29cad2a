//! Readings of a grip gauge against plate data that say the same: every consumer of the grip must give the same.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "what a worked job is known to have must fail loudly if it has not"
)]

use holdround_core::findings::Findings;
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::{Entries, Setup};
use holdround_core::text::ENGLISH;
use holdround_core::{Comparison, Engine, OpeningWork, ROWS, SampleWork, WindowWork, evaluate, jaw_program};
use holdround_tests::job::enter;

/// The same grip by other operations; the worst angle of the hold is refined until it gains less than 1e-6 at a step.
const ALIKE: f64 = 1e-5;

/// A job that asks everything of its grip: two pressures, bored at a third, an indicator read at a fourth.
const JOB: [(&str, &str); 15] = [
    ("run.pressure", "1.6 MPa"),
    ("run.pressures", "two"),
    ("run.finish_pressure", "1.2 MPa"),
    ("run.speed", "900 rev/min"),
    ("jaws.boring_pressure", "1 MPa"),
    ("jaws.bored_diameter", "150.05 mm"),
    ("cuts.0.depth", "1 mm"),
    ("cuts.1.depth", "0.3 mm"),
    ("cuts.1.stage", "finish"),
    ("part.size_limit", "60 µm"),
    ("indicator.use", "once"),
    ("indicator.pressure", "1.4 MPa"),
    ("indicator.unit", "0.001 mm"),
    ("readings.0.taper", "5 µm"),
    ("readings.0.pressure", "1.1 MPa"),
];

fn job(more: &[(&str, String)]) -> Setup {
    let mut entries = Entries::default();
    let readings: Vec<(String, String)> = (0..12)
        .map(|at| {
            (
                format!("dial.{at}.reading"),
                format!("{:.3}", -20.0 * libm::cos(std::f64::consts::TAU * f64::from(at) / 4.0)),
            )
        })
        .collect();
    enter(&mut entries, &JOB);
    readings.iter().for_each(|(path, text)| enter(&mut entries, &[(path, text)]));
    more.iter().for_each(|(path, text)| enter(&mut entries, &[(path, text)]));
    Setup::read(&entries).unwrap_or_else(|faults| panic!("{faults:?}"))
}

/// Plate and cylinder in this condition, known for sure.
fn plate(condition: f64) -> Vec<(&'static str, String)> {
    vec![("chuck.condition", condition.to_string()), ("ranges.condition", "0".into())]
}

/// A gauge that reads `share` of what the plate promises, over every pressure that is looked at.
fn gauge(share: f64) -> Vec<(&'static str, String)> {
    let promised = |pressure: &str| {
        let mut at = plate(1.0);
        at.extend([("run.pressure", format!("{pressure} MPa")), ("run.pressures", "one".into())]);
        at.push(("cuts.1.stage", "rough".into()));
        value(&evaluate(&job(&at)), "grip.rest")
    };
    let [low, high] = ["0.02", "4.2"].map(|pressure| format!("{} N", share * promised(pressure)));
    vec![
        ("chuck.grip_from", "gauge".into()),
        ("gauge.0.pressure", "0.02 MPa".into()),
        ("gauge.0.grip", low),
        ("gauge.1.pressure", "4.2 MPa".into()),
        ("gauge.1.grip", high),
    ]
}

fn value(findings: &Findings, id: &str) -> f64 {
    findings.get(id).unwrap_or_else(|| panic!("{id} is told")).value.clone().unwrap()
}

fn alike(one: f64, other: f64) -> bool {
    (one - other).abs() <= ALIKE * one.abs().max(other.abs()).max(1e-6)
}

/// What a gauge alone tells, and what it leaves to the readings themselves.
const ITS_OWN: [&str; 3] = ["gauge.condition", "pressure.least", "indicator.condition"];

#[test]
fn findings_by_the_gauge_are_those_of_a_plate_that_says_the_same() {
    let [by_gauge, by_plate] = [gauge(0.7), plate(0.7)].map(|grip| evaluate(&job(&grip)));
    assert!(alike(value(&by_gauge, "gauge.condition"), 0.7), "the gauge tells the condition");
    let ids = |findings: &Findings| -> Vec<String> {
        let all = findings.findings.iter().map(|finding| finding.id.clone());
        all.filter(|id| !ITS_OWN.contains(&id.as_str())).collect()
    };
    assert_eq!(ids(&by_gauge), ids(&by_plate), "the same is told");
    for id in ids(&by_plate) {
        let [one, other] = [&by_gauge, &by_plate].map(|findings| findings.get(&id).unwrap());
        match (&one.value, &other.value) {
            (Ok(a), Ok(b)) => assert!(alike(*a, *b), "{id}: {a} by the gauge, {b} by the plate"),
            (a, b) => assert_eq!(a, b, "{id}: refused alike"),
        }
        let ends = |finding: &holdround_core::findings::Finding| {
            let (low, high) = finding.band.unwrap_or_default();
            [low, high, finding.limit.as_ref().map_or(0.0, |limit| limit.value)]
        };
        for (a, b) in ends(one).into_iter().zip(ends(other)) {
            assert!(alike(a, b), "{id}: band and limit {:?} and {:?}", ends(one), ends(other));
        }
    }
    let [one, other] =
        [gauge(0.7), plate(0.7)].map(|grip| jaw_program(&job(&grip), UnitSystem::Metric, ENGLISH).unwrap());
    assert_eq!(one, other, "the program and its heading");
    let worked_out = |findings: &Findings| findings.cautions.iter().any(|one| one.says.contains("not measured"));
    assert!(worked_out(&by_plate) && !worked_out(&by_gauge), "only the plate's grip is called worked out");
}

#[test]
fn window_parts_openings_and_other_jaws_are_those_of_a_plate_that_says_the_same() {
    let [by_gauge, by_plate] = [gauge(0.7), plate(0.7)].map(|grip| job(&grip));
    let speed = by_plate.speed.value;
    let [one, other] = [&by_gauge, &by_plate].map(|setup| Engine::default().window(setup));
    let keys = |window: &holdround_core::Window| -> Vec<String> {
        window.boundaries.iter().map(|boundary| boundary.key.clone()).collect()
    };
    assert_eq!(keys(&one), keys(&other), "the same limits");
    // Past the readings, and a gauge's error on top, the gauge's line is not trusted.
    let most = one.pressures[1].min(other.pressures[1]);
    // Curves are drawn to plotting accuracy.
    let close = |a: f64, b: f64| (a.min(most) - b.min(most)).abs() < 0.01 * 4e6;
    for (a, b) in one.boundaries.iter().zip(&other.boundaries) {
        for at in [0.0, 0.3, 0.6, 0.9].map(|share| share * one.greatest_speed) {
            let [a, b] = [a, b].map(|boundary| boundary.at(at).unwrap());
            assert!(close(a, b), "{} rad/s: {a} Pa by the gauge, {b} Pa by the plate", at);
        }
    }
    let exact = [&by_gauge, &by_plate].map(|setup| {
        let (mut engine, mut work) = (Engine::default(), WindowWork::at_speed(setup, speed));
        while work.step(&mut engine) {}
        work.into_window().span(speed)
    });
    for (a, b) in exact[0].pressures.into_iter().zip(exact[1].pressures) {
        assert!(close(a, b), "at the speed set: {exact:?}");
    }

    let [one, other] = [&by_gauge, &by_plate].map(|setup| {
        let (mut engine, mut work) = (Engine::default(), SampleWork::new(setup));
        while work.step(&mut engine) {}
        work.sampled().unwrap().clone()
    });
    assert!(
        (one.good - other.good).abs() <= 1.0 / f64::from(one.parts),
        "{} and {} of the parts",
        one.good,
        other.good
    );
    for (a, b) in one.outputs.iter().zip(&other.outputs) {
        assert_eq!(a.name, b.name, "the same outputs");
        assert!((a.good - b.good).abs() <= 1.0 / f64::from(one.parts), "{}: {} and {}", a.name, a.good, b.good);
    }

    let [one, other] = [&by_gauge, &by_plate].map(|setup| {
        let mut work = OpeningWork::new(setup, speed);
        while work.step() {}
        let found: Vec<_> = work.found().copied().collect();
        found
    });
    assert_eq!(
        one.iter().map(|opening| opening.says).collect::<Vec<_>>(),
        other.iter().map(|opening| opening.says).collect::<Vec<_>>(),
        "the same openings, in the same order"
    );
    for (a, b) in one.iter().zip(&other) {
        assert!(close(a.gain, b.gain), "{}: {} and {} Pa", a.says, a.gain, b.gain);
    }
}

#[test]
fn other_jaws_are_compared_by_the_gauge() {
    let compared = |more: &[(&str, String)]| {
        let mut entries = Entries::default();
        for (path, text) in [("run.pressure", "1.6 MPa"), ("run.speed", "900 rev/min")] {
            entries.set(path, text);
        }
        for (path, text) in more {
            entries.set(path, text);
        }
        let mut comparison = Comparison::of(&entries);
        while comparison.work() {}
        let told: Vec<(String, Vec<Option<f64>>)> = comparison
            .done()
            .iter()
            .map(|one| (one.choice.differs.to_string(), ROWS.iter().map(|row| one.value(row)).collect()))
            .collect();
        told
    };
    let [one, other] = [compared(&gauge(0.7)), compared(&plate(0.7))];
    for ((differs, a), (of, b)) in one.iter().zip(&other) {
        assert_eq!(differs, of, "the same choices");
        for ((row, a), b) in ROWS.iter().zip(a).zip(b) {
            // A root is found to plotting accuracy.
            let same = match (a, b) {
                (Some(a), Some(b)) => alike(*a, *b) || row.name.contains("window") && (a - b).abs() < 2e4,
                (a, b) => a == b,
            };
            assert!(same, "{differs}, {}: {a:?} and {b:?}", row.name);
        }
    }
}

/// A gauge's line that begins at 0.2 MPa: 20 kN per MPa beyond it, and so 26 kN at 1.5 MPa.
const LATE: [(&str, &str); 5] = [
    ("chuck.grip_from", "gauge"),
    ("gauge.0.pressure", "0.7 MPa"),
    ("gauge.0.grip", "10 kN"),
    ("gauge.1.pressure", "2.2 MPa"),
    ("gauge.1.grip", "40 kN"),
];

#[test]
fn a_line_that_begins_late_is_followed_at_every_other_pressure() {
    let texts =
        |set: &[(&'static str, &str)]| set.iter().map(|(path, text)| (*path, (*text).to_string())).collect::<Vec<_>>();
    let one = |set: &[(&'static str, &str)]| {
        let mut all =
            texts(&[("run.pressures", "one"), ("run.pressure", "1.5 MPa"), ("indicator.pressure", "1.5 MPa")]);
        all.push(("cuts.1.stage", "rough".into()));
        all.extend(texts(set));
        all
    };
    // By the line, jaws bored at 1 MPa were bored under 16 of 26 kN, a reading at 1.1 MPa was taken under 18 kN, and a
    // gauge that is off by 0.065 MPa is off by 1.3 kN; a chart in proportion says so of other pressures.
    let mut by_gauge = one(&LATE);
    by_gauge.push(("ranges.pressure", "0.065 MPa".into()));
    let proportional = |grip: f64| format!("{} MPa", 1.5 * grip / 26.0);
    let mut by_chart = one(&[("chuck.grip_from", "chart"), ("chart.pressure", "1.5 MPa"), ("chart.grip", "26 kN")]);
    by_chart.extend([
        ("chuck.condition", "1".to_string()),
        ("ranges.condition", "0".to_string()),
        ("jaws.boring_pressure", proportional(16.0)),
        ("readings.0.pressure", proportional(18.0)),
        ("ranges.pressure", proportional(1.3)),
    ]);
    let [by_gauge, by_chart] = [by_gauge, by_chart].map(|grip| job(&grip));
    let [one, other] = [&by_gauge, &by_chart].map(evaluate);
    for id in ["grip.rest", "shape.runout", "shape.roundness", "hold.factor", "taper.boring_pressure", "taper.right"] {
        let [a, b] = [&one, &other].map(|findings| value(findings, id));
        assert!(alike(a, b), "{id}: {a} by the gauge, {b} by the chart");
    }
    let [one, other] = [&by_gauge, &by_chart].map(|setup| Engine::default().sampled(setup).unwrap());
    assert!(
        (one.good - other.good).abs() <= 1.0 / f64::from(one.parts),
        "{} and {} of the parts",
        one.good,
        other.good
    );
}

#[test]
fn the_pressure_to_blue_under_is_where_the_line_gives_the_grip_to_blue_under() {
    // A thin ring gripped hard, whose jaws are blued under less. By the line 1.6 MPa are 28 kN.
    let thin = |more: &[(&'static str, &str)]| {
        let mut entries = Entries::default();
        enter(&mut entries, &[("run.pressure", "1.6 MPa"), ("ranges.condition", "0"), ("chuck.condition", "1")]);
        enter(&mut entries, more);
        evaluate(&Setup::read(&entries).unwrap_or_else(|faults| panic!("{faults:?}")))
    };
    let by_gauge = thin(&LATE);
    let by_chart = thin(&[("chuck.grip_from", "chart"), ("chart.pressure", "1.6 MPa"), ("chart.grip", "28 kN")]);
    let [begins, run] = [0.2e6, 1.6e6];
    let share = value(&by_chart, "taper.blued") / run;
    assert!(share < 0.9, "less than the run's: {share}");
    let blued = value(&by_gauge, "taper.blued");
    assert!(alike(blued, begins + share * (run - begins)), "{blued} Pa on a line that begins at {begins}");
    let told = format!("{} MPa", blued / 1e6);
    let off = format!("{} µm", (value(&by_gauge, "taper.right") - 25.4e-6) * 1e6);
    let reading =
        [("readings.0.taper", off.as_str()), ("readings.0.shows", "base"), ("readings.0.pressure", told.as_str())];
    let read = thin(&LATE.into_iter().chain(reading).collect::<Vec<_>>());
    let [next, right] = ["taper.next", "taper.right"].map(|id| value(&read, id));
    assert!((next - right).abs() < 1e-6, "read under it as predicted: {next} for {right}");

    let few = [("gauge.0.pressure", "1.5 MPa"), ("gauge.0.grip", "26 kN")];
    let narrow =
        thin(&LATE.into_iter().filter(|(path, _)| !path.starts_with("gauge.0")).chain(few).collect::<Vec<_>>());
    let refused = narrow.get("taper.blued").unwrap().value.clone().unwrap_err();
    assert!(refused.contains("too far from the gauge readings"), "where the gauge was not read: {refused}");
}
