//! Answers become a set-up or are told at their question.

use super::*;
use crate::quantity::decimal;
use alloc::format;
use alloc::string::ToString;
use proptest::prelude::*;

fn answers(texts: [&str; 7]) -> [String; 7] {
    texts.map(String::from)
}

#[test]
fn an_answer_that_does_not_serve_is_told_at_its_question() {
    let cases = [
        (["", "", "", "30 mm", "", "", ""], "start.gripped"),
        (["", "wide", "", "30 mm", "", "", ""], "start.gripped"),
        (["", "100 mm", "60 mm", "30 mm", "", "", ""], "start.wall"),
        (["", "100 mm", "0.2 mm", "30 mm", "", "", ""], "start.wall"),
        (["inside", "100 mm", "", "30 mm", "", "", ""], "start.wall"),
        (["inside", "12 mm", "5 mm", "30 mm", "", "", ""], "start.gripped"),
        (["", "100 mm", "10 mm", "", "", "", ""], "start.length"),
        (["", "100 mm", "10 mm", "30 mm", "butter", "", ""], "part.material"),
        (["", "100 mm", "10 mm", "30 mm", "", "9 m", ""], "part.roundness_limit"),
        (["", "300 mm", "10 mm", "30 mm", "", "", ""], "chuck.body_diameter"),
    ];
    for (texts, question) in cases {
        let faults = start(&answers(texts)).unwrap_err();
        assert_eq!(faults.iter().map(|fault| fault.path.as_str()).collect::<Vec<_>>(), [question], "{texts:?}");
        assert!(!faults[0].remedy.is_empty(), "{texts:?}: it is said what to do");
    }
}

#[test]
fn what_was_answered_stands_as_typed_and_the_rest_is_assumed() {
    let entries = start(&answers(["outside", "6 1/2 in", "1/4 in", "2 in", "", "0.001 in", "10 in"])).unwrap();
    let setup = Setup::read(&entries).unwrap();
    for (path, text) in [("part.outside_diameter", "6 1/2 in"), ("part.bore_diameter", "6 in")] {
        assert_eq!(entries.get(path), Some(text), "{path} is what was answered");
    }
    let assumed: Vec<&str> = setup.assumed.iter().map(|assumed| assumed.path.as_str()).collect();
    for path in ["chuck.max_grip", "cylinder.bore", "jaws.width", "run.pressure", "run.speed", "cuts.0.depth"] {
        assert!(entries.get(path).unwrap().starts_with('('), "{path} is in brackets");
        assert!(assumed.contains(&path), "{path} is among the assumptions");
    }
    for path in ["part.outside_diameter", "part.bore_diameter", "part.length", "part.roundness_limit"] {
        assert!(!assumed.contains(&path), "{path} is no assumption");
    }
    assert!(entries.get("jaws.width").unwrap().ends_with("in)"), "assumed in the unit of the answers");
}

#[test]
fn a_part_of_any_material_can_be_set_up() {
    for material in crate::materials::all().filter(|material| material.part) {
        for side in ["outside", "inside"] {
            let entries = start(&answers([side, "100 mm", "8 mm", "30 mm", material.id, "", ""]));
            assert!(entries.is_ok(), "{} gripped {side}: {entries:?}", material.id);
        }
    }
}

#[test]
fn usual_answers_find_a_tooth_for_the_jaws() {
    for body in [0.135, 0.165, 0.21, 0.25, 0.315, 0.6] {
        for (side, twentieth) in ["outside", "inside"].into_iter().flat_map(|side| (5..20).map(move |at| (side, at))) {
            let share = f64::from(twentieth) / 20.0;
            let write = |si: f64| format!("{} mm", decimal(si * 1e3, 1));
            let gripped = share * body;
            // Thin and short or stout and long.
            let (thick, long) = if twentieth % 2 == 0 { (0.03, 0.3) } else { (0.1, 0.9) };
            let wall = write(thick * gripped);
            let texts = [side, &write(gripped), &wall, &write(long * gripped), "", "", &write(body)];
            let mut entries = start(&answers(texts)).unwrap();
            entries.put("stroke.plan", "yes");
            let findings = crate::evaluate(&Setup::read(&entries).unwrap());
            let tooth = findings.get("stroke.tooth").map(|tooth| &tooth.value);
            assert!(tooth.is_some_and(Result::is_ok), "{texts:?}: {tooth:?}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

    #[test]
    fn any_answers_make_a_set_up_or_are_refused_at_a_question(
        inside: bool,
        body in -1.3..0.4f64,
        gripped in -2.2..0.35f64,
        wall in -4.2..0.0f64,
        length in -3.0..0.4f64,
        solid: bool,
        inch: bool,
    ) {
        let write = |power: f64| {
            let si = libm::pow(10.0, power);
            if inch { format!("{} in", decimal(si / 0.0254, 4)) } else { format!("{} mm", decimal(si * 1e3, 3)) }
        };
        let side = if inside { "inside" } else { "outside" };
        let wall = if solid { String::new() } else { write(wall) };
        let texts = [side.to_string(), write(gripped), wall, write(length), String::new(), String::new(), write(body)];
        match start(&texts) {
            Ok(entries) => prop_assert!(Setup::read(&entries).is_ok(), "{texts:?}"),
            Err(faults) => {
                prop_assert!(!faults.is_empty(), "{texts:?}: why it is refused is told");
                for fault in faults {
                    prop_assert!(QUESTIONS.iter().any(|question| question.path == fault.path), "{texts:?}: {fault}");
                    prop_assert!(!fault.allowed.contains("what makes a set-up"), "{texts:?}: {fault}");
                }
            }
        }
    }

    #[test]
    fn answers_of_the_usual_sizes_are_never_refused(
        inside: bool,
        body in 0.13..0.6f64,
        gripped in 0.2..0.95f64,
        wall in 0.02..0.4f64,
        length in 0.05..1.0f64,
    ) {
        let write = |si: f64| format!("{} mm", decimal(si * 1e3, 2));
        let side = if inside { "inside" } else { "outside" };
        let texts = [
            side.to_string(), write(gripped * body), write(wall * gripped * body), write(length * body),
            String::new(), String::new(), write(body),
        ];
        let started = start(&texts);
        prop_assert!(started.is_ok(), "{texts:?}: {started:?}");
    }
}
