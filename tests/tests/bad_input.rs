//! Bad input by the ways a user's input comes: text in a field, a JSON document, a link.

#![allow(clippy::unwrap_used, reason = "what must be accepted or refused and is not must fail")]

use holdround_core::evaluate;
use holdround_core::examples::EXAMPLES;
use holdround_core::findings::Mark;
use holdround_core::setup::{Entries, Fault, Form, INPUTS, Input, Setup};
use holdround_tests::job::enter;
use holdround_tests::job::{Job, listed};

fn inputs() -> impl Iterator<Item = &'static Input> {
    INPUTS.iter().flat_map(|group| group.inputs.iter().copied())
}

/// Jobs among which every input matters in one at least.
fn grounds() -> Vec<Entries> {
    let choices = [
        ("plate", "turning", "ordinary", "ring"),
        ("chart", "facing", "wide", "ring"),
        ("gauge", "boring", "pie", "ring"),
        ("plate", "grooving", "ordinary", "ring"),
        ("plate", "drilling", "ordinary", "ring"),
        ("plate", "power", "ordinary", "steps"),
    ];
    let ground = |(grip_from, cut, jaws, shape)| {
        let mut entries = Entries::default();
        let set = [
            ("chuck.grip_from", grip_from),
            ("cuts.0.kind", cut),
            ("jaws.kind", jaws),
            ("jaws.mass_from", "weighed"),
            ("part.shape", shape),
            ("steps.0.outside", "160 mm"),
            ("steps.0.bore", "140 mm"),
            ("steps.0.length", "30 mm"),
            ("surfaces.0.side", "bore"),
            ("stroke.plan", "yes"),
            ("run.pressures", "two"),
            ("stroke.serration", "typed"),
            ("rings.0.outside", "100 mm"),
            ("recut.jaws", "bored"),
            ("readings.0.shows", "gap"),
            ("indicator.use", "twice"),
            ("indicator.stations", "7"),
            ("dial.0.reading", "1"),
            ("spun.0.speed", "0 rev/min"),
            ("spun.0.grip", "40 kN"),
            ("spun.1.speed", "900 rev/min"),
            ("spun.1.grip", "39 kN"),
            ("gauge.0.pressure", "1 MPa"),
            ("gauge.0.grip", "20 kN"),
            ("gauge.1.pressure", "2 MPa"),
            ("gauge.1.grip", "40 kN"),
        ];
        enter(&mut entries, &set);
        assert!(Setup::read(&entries).is_ok(), "{grip_from}, {cut}, {jaws}, {shape} is a job");
        entries
    };
    let mut grounds: Vec<Entries> = choices.into_iter().map(ground).collect();
    let mut centred = Entries::default();
    enter(&mut centred, &[("part.bore_diameter", "0 mm"), ("grip.tail", "centre"), ("readings.0.shows", "tip")]);
    assert!(Setup::read(&centred).is_ok(), "a solid part takes a centre");
    grounds.push(centred);
    grounds
}

/// Evaluates entries if they are valid, and looks for numbers that are none.
fn judged(entries: &Entries) -> Result<(), Vec<Fault>> {
    let findings = evaluate(&Setup::read(entries)?);
    for finding in &findings.findings {
        let numbers = finding
            .value
            .iter()
            .copied()
            .chain(finding.band.iter().flat_map(|&(least, most)| [least, most]))
            .chain(finding.limit.iter().map(|limit| limit.value))
            .chain(finding.steps.iter().flat_map(|step| step.given.iter().map(|term| term.value)))
            .chain(finding.steps.iter().map(|step| step.result.value));
        for number in numbers {
            assert!(number.is_finite(), "{} holds {number}", finding.id);
        }
    }
    let scene = &findings.scene;
    let drawn = [scene.contact_half_angle, scene.contact_pressure, scene.swing_radius, scene.shape_share_at_speed];
    assert!(drawn.iter().all(|number| number.is_finite()), "the scene holds {drawn:?}");
    Ok(())
}

fn complain_properly(faults: &[Fault]) {
    assert!(!faults.is_empty(), "a refusal has a fault");
    for fault in faults {
        assert!(!fault.allowed.is_empty() && !fault.remedy.is_empty(), "{fault} says what is allowed and what to do");
        assert!(!fault.name.is_empty(), "{fault} has a name");
        let line = fault.to_string();
        assert!(line.len() < 500, "a fault is one readable line: {line}");
        assert!(!line.chars().any(char::is_control), "and holds no control characters: {line:?}");
    }
}

#[test]
fn whatever_stands_in_a_field_is_taken_or_refused_at_that_field() {
    let long = "9".repeat(100_000);
    let junk = [
        "",
        " ",
        "abc",
        "0",
        "-1",
        "-0",
        "NaN",
        "nan",
        "inf",
        "-Infinity",
        "1e308",
        "1e-308",
        "9e999 mm",
        "1,234.5",
        "1 2 3",
        "1/0",
        "12 furlongs",
        "0x10",
        "٣",
        "½",
        "1e",
        "e5",
        "+",
        "-",
        ".",
        ",",
        "/",
        "1//2",
        "2 1/4/5",
        &long,
        "3\u{0}4",
        "\u{7}\u{1b}[31m5",
        "5\r\n6",
        "\u{202e}5 mm",
        "\u{200f}5",
        "\u{feff}5",
        "<script>alert(1)</script>",
        "'; DROP TABLE jobs; --",
        "5 mm\u{0}",
        "🦀",
        "\u{2212}",
    ];
    let grounds = grounds();
    for input in inputs() {
        let path = input.at(0);
        assert!(grounds.iter().any(|entries| entries.matters(input, 0)), "{path} matters somewhere");
        // The first such job stands for its like: each valid text is evaluated from scratch.
        for entries in grounds.iter().filter(|entries| entries.matters(input, 0)).take(1) {
            for text in junk {
                let mut entries = entries.clone();
                enter(&mut entries, &[(&path, text)]);
                let Err(faults) = judged(&entries) else { continue };
                complain_properly(&faults);
                // An entry that can be read by itself may still disagree with another, which is then named.
                let alone = matches!(input.form, Form::Text(_)) || readable(input, text);
                assert!(
                    alone || faults.iter().any(|fault| fault.path == path),
                    "{path} set to {:?}: {}",
                    text.chars().take(40).collect::<String>(),
                    listed(&faults)
                );
            }
        }
    }
}

/// Whether `text` is one number within the input's range, or one of its choices.
fn readable(input: &Input, text: &str) -> bool {
    use holdround_core::quantity::Measure;
    match input.form {
        Form::Quantity { kind, least, most, .. } => {
            Measure::parse(kind, text).is_ok_and(|measure| (least..=most).contains(&measure.si))
        }
        Form::Choice(choices) => choices.iter().any(|choice| choice.key == text.trim()),
        Form::Material(_) | Form::Text(_) => false,
    }
}

#[test]
fn junk_in_a_number_is_never_taken_for_one() {
    for text in ["abc", "NaN", "inf", "1,234.5", "3\u{0}4", "\u{202e}5 mm", "12 furlongs", "1/0", "1e308", ""] {
        for path in ["part.outside_diameter", "run.speed", "grip.friction", "cuts.0.feed"] {
            let mut entries = Entries::default();
            entries.set(path, text);
            let faults = Setup::read(&entries).unwrap_err();
            assert!(faults.iter().any(|fault| fault.path == path), "{path} set to {text:?}: {}", listed(&faults));
        }
    }
}

/// The paths of the faults of a job.
fn faulty(entries: &[(&str, &str)]) -> Vec<String> {
    let mut job = Entries::default();
    enter(&mut job, entries);
    let faults = judged(&job).unwrap_err();
    complain_properly(&faults);
    faults.into_iter().map(|fault| fault.path).collect()
}

#[test]
fn entries_that_contradict_each_other_are_refused_at_one_of_them() {
    let cases: [(&[(&str, &str)], &str); 10] = [
        (&[("part.bore_diameter", "170 mm")], "part.bore_diameter"),
        (&[("part.bore_diameter", "160 mm")], "part.bore_diameter"),
        (&[("jaws.width", "300 mm")], "jaws.width"),
        (&[("jaws.kind", "wide"), ("jaws.angle", "121°")], "jaws.angle"),
        (
            &[
                ("jaws.kind", "pie"),
                ("jaws.saw_cut", "50 mm"),
                ("part.outside_diameter", "20 mm"),
                ("part.bore_diameter", "10 mm"),
            ],
            "jaws.saw_cut",
        ),
        (&[("grip.length", "40 mm")], "grip.length"),
        (&[("cuts.0.diameter", "161 mm")], "cuts.0.diameter"),
        (&[("cuts.0.diameter", "100 mm")], "cuts.0.diameter"),
        (&[("cuts.0.distance", "11 mm")], "cuts.0.distance"),
        (&[("grip.side", "inside"), ("part.bore_diameter", "0")], "part.bore_diameter"),
    ];
    for (entries, path) in cases {
        let faults = faulty(entries);
        assert!(faults.iter().any(|fault| fault == path), "{entries:?} is refused at {faults:?}");
    }
}

#[test]
fn every_fault_is_told_at_once() {
    let faults = faulty(&[("part.length", "-3 mm"), ("chuck.jaws", "7"), ("run.speed", "fast"), ("cuts.0.feed", "")]);
    assert_eq!(faults.len(), 4, "{faults:?}");
}

#[test]
fn speed_and_pressure_over_the_plate_are_findings_beyond_their_limit() {
    for (path, text, finding) in
        [("run.speed", "4300 rev/min", "speed.set"), ("run.pressure", "4.1 MPa", "pressure.set")]
    {
        let job = Job { entries: [(path.to_string(), text.to_string())].into(), ..Job::default() };
        let findings = job.findings().unwrap();
        let found = findings.get(finding).unwrap();
        assert_eq!((found.mark(), found.entry), (Mark::Beyond, Some(path)), "{found:?}");
        assert!(
            findings.cautions.iter().any(|caution| caution.entry == Some(path)),
            "and a caution stands at it: {:?}",
            findings.cautions
        );
    }
}

#[test]
fn documents_that_are_no_set_up_are_refused_in_words() {
    let deep = "[".repeat(10_000);
    let nested = format!("{}1{}", r#"{"part":"#.repeat(10_000), "}".repeat(10_000));
    let documents = [
        String::new(),
        "null".into(),
        "\u{feff}{}".into(),
        r#"{"schema": 1"#.into(),
        r#"{"schema": 1} trailing"#.into(),
        r#"{"schema": 0}"#.into(),
        r#"{"schema": 2}"#.into(),
        r#"{"schema": 1.5}"#.into(),
        r#"{"schema": -1}"#.into(),
        r#"{"schema": 1e400}"#.into(),
        r#"{"schema": 1, "part": {"length": 1e400}}"#.into(),
        r#"{"schema": 1, "part": {"length": true}}"#.into(),
        r#"{"schema": 1, "part": {"length": {"mm": 3}}}"#.into(),
        r#"{"schema": 1, "part.length": 3}"#.into(),
        r#"{"schema": 1, "cuts.0": {"feed": 3}}"#.into(),
        r#"{"schema": 1, "cuts": {"0": {"feed": 3}}}"#.into(),
        r#"{"schema": 1, "cuts": [[{"feed": 3}]]}"#.into(),
        r#"{"schema": 1, "part": ["30 mm"]}"#.into(),
        r#"{"schema": 1, "colour": "red"}"#.into(),
        r#"{"schema": 1, "part": {"\u0000": "x"}}"#.into(),
        r#"{"schema": 1, "cuts": [{}, {}, {}, {}, {}, {}, {}, {}, {"feed": 0.2}]}"#.into(),
        format!(r#"{{"schema": 1, "part": {{"{}": 1}}}}"#, "x".repeat(50_000)),
        format!(r#"{{"schema": 1, "part": {deep}"#),
        deep,
        nested,
        "x".repeat(1 << 20),
    ];
    for document in documents {
        let shown: String = document.chars().take(60).collect();
        match Entries::from_json(&document) {
            Ok(entries) => panic!("{shown} is taken as {entries:?}"),
            Err(faults) => complain_properly(&faults),
        }
    }
}

#[test]
fn of_an_entry_written_twice_one_holds_and_the_document_is_read() {
    // RFC 8259, section 4, leaves the meaning of repeated names open; most readers take the last.
    let entries = Entries::from_json(r#"{"schema": 1, "part": {"length": "30 mm", "length": "40 mm"}}"#).unwrap();
    assert_eq!(entries.get("part.length"), Some("40 mm"), "the last");
}

#[test]
fn many_faults_of_a_document_are_all_told() {
    let faults = Entries::from_json(r#"{"schema": 1, "a": {"b": 1}, "part": {"c": 2, "length": true}}"#).unwrap_err();
    let paths: Vec<_> = faults.iter().map(|fault| fault.path.as_str()).collect();
    assert_eq!(paths, ["a.b", "part.c", "part.length"], "every fault, in order");
}

#[test]
fn a_link_with_any_character_changed_or_lost_never_panics_and_never_lies() {
    for example in EXAMPLES {
        let entries = Entries::from_json(example.json).unwrap();
        let link = entries.to_link();
        for at in 0..link.len() {
            let mut changed: Vec<u8> = link.bytes().collect();
            changed[at] = if changed[at] == b'A' { b'B' } else { b'A' };
            let changed = String::from_utf8(changed).unwrap();
            // A changed letter may still unfold to a set-up, which is then read like any other.
            if let Ok(entries) = Entries::from_link(&changed) {
                let _ = judged(&entries).map_err(|faults| complain_properly(&faults));
            }
            assert!(Entries::from_link(&link[..at]).is_err(), "{}: cut at {at}", example.id);
        }
    }
}

#[test]
fn junk_links_are_refused() {
    let megabyte = format!("1-{}", "A".repeat(1 << 20));
    for link in ["", "#", "1-", "1-A", "2-AAAA", "%31-", "1-====", "<script>", "1-\u{202e}", &megabyte] {
        let error = Entries::from_link(link).unwrap_err().to_string();
        assert!(error.len() > 10 && error.len() < 200, "a reason in words: {error}");
    }
}

#[test]
fn an_inside_grip_without_a_bore_is_told_at_the_bore_and_no_range_without_meaning() {
    for (outside, bore) in [("60 mm", "0 mm"), ("20 mm", "0 mm"), ("60 mm", "140 mm"), ("160 mm", "3 mm")] {
        let mut entries = Entries::default();
        for (path, text) in [("grip.side", "inside"), ("part.outside_diameter", outside), ("part.bore_diameter", bore)]
        {
            entries.set(path, text);
        }
        let faults = Setup::read(&entries).unwrap_err();
        assert!(faults.iter().any(|fault| fault.path == "part.bore_diameter"), "{outside}, {bore}: {faults:?}");
        let endless = |fault: &&Fault| fault.allowed.contains("100000 mm");
        assert_eq!(faults.iter().find(endless), None, "{outside}, {bore}: up to a hundred metres");
    }
}
