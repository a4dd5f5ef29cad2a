//! Every lesson: the start does not meet its goals, the solution does, and its words hold no figures of their own.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Check, LESSONS, Lesson, changes, figures};
use crate::findings::{Findings, Weight};
use crate::setup::{Entries, Setup, declared};
use crate::{Effort, Engine, evaluate};

fn start(lesson: &Lesson) -> Entries {
    Entries::from_json(lesson.json).unwrap()
}

fn with(lesson: &Lesson, changes: &[(&str, &str)]) -> Entries {
    let mut entries = start(lesson);
    for (path, text) in changes {
        assert!(entries.set(path, text), "{}: {path} is an input", lesson.key);
    }
    entries
}

fn found(entries: &Entries) -> Findings {
    evaluate(&Setup::read(entries).unwrap())
}

fn check(lesson: &Lesson, changes: &[(&str, &str)]) -> Check {
    let entries = with(lesson, changes);
    Check::of(lesson, &start(lesson), &entries, &found(&entries))
}

fn lesson(key: &str) -> &'static Lesson {
    LESSONS.iter().find(|lesson| lesson.key == key).unwrap()
}

#[test]
fn the_start_of_every_lesson_does_not_meet_its_goals_and_its_solution_does() {
    assert_eq!(LESSONS.len(), 8, "eight lessons");
    for lesson in LESSONS {
        let before = check(lesson, &[]);
        assert!(!before.all_met(), "{}: there is something to do", lesson.key);
        assert!(before.changed.is_empty() && before.strayed.is_empty(), "{}: nothing was changed yet", lesson.key);
        let after = check(lesson, lesson.solution);
        assert!(after.is_done(), "{}: {after:?}", lesson.key);
        assert!(!after.changed.is_empty() && after.strayed.is_empty(), "{}: by what it is about alone", lesson.key);
    }
}

#[test]
fn what_a_lesson_shows_as_its_solution_may_be_run() {
    for lesson in LESSONS {
        let cautions = found(&with(lesson, lesson.solution)).cautions;
        let stop = cautions.into_iter().find(|caution| caution.weight == Weight::Stop);
        assert_eq!(stop, None, "{}: nothing is beyond a limit", lesson.key);
    }
}

#[test]
fn every_lesson_has_other_answers_than_the_one_it_shows_and_wrong_ones_too() {
    let good: &[(&str, &[(&str, &str)])] = &[
        ("thin-ring", &[("run.pressure", "0.37 MPa")]),
        ("wide-pie-six", &[("chuck.jaws", "6"), ("jaws.width", "25 mm")]),
        ("bored-size", &[("jaws.bored_diameter", "119.97 mm")]),
        ("speed", &[("grip.side", "inside"), ("cylinder.side", "full"), ("run.pressure", "0.35 MPa")]),
        ("bore-under-load", &[("jaws.boring_pressure", "1.8 MPa"), ("jaws.ring_height", "50 mm")]),
        ("taper", &[("jaws.taper", "20 µm")]),
        ("mid-stroke", &[("stroke.tooth", "2")]),
        ("indicator", &[("chuck.condition", "0.52"), ("run.pressure", "1.6 MPa"), ("indicator.adopted", "0.52")]),
    ];
    let wrong: &[(&str, &[(&str, &str)])] = &[
        ("thin-ring", &[("run.pressure", "0.3 MPa")]),
        ("wide-pie-six", &[("jaws.kind", "pie")]),
        ("wide-pie-six", &[("jaws.width", "70 mm")]),
        ("bored-size", &[("jaws.bored_diameter", "119.9 mm")]),
        ("speed", &[("run.pressure", "0.9 MPa")]),
        ("speed", &[("grip.side", "inside")]),
        ("bore-under-load", &[("jaws.boring_pressure", "3 MPa"), ("jaws.ring_height", "55 mm")]),
        ("taper", &[("jaws.taper", "-25 µm")]),
        ("taper", &[("jaws.taper", "60 µm")]),
        ("mid-stroke", &[("stroke.tooth", "4")]),
        ("indicator", &[("chuck.condition", "0.5")]),
        ("indicator", &[("run.pressure", "1.5 MPa")]),
    ];
    for (key, changes) in good {
        let check = check(lesson(key), changes);
        assert!(check.is_done(), "{key} {changes:?}: {check:?}");
    }
    for (key, changes) in wrong {
        let check = check(lesson(key), changes);
        assert!(!check.all_met(), "{key} {changes:?} must not do: {check:?}");
    }
}

#[test]
fn a_task_done_by_changing_what_is_allowed_is_noticed_and_not_done() {
    let check = check(lesson("thin-ring"), &[("part.roundness_limit", "0.1 mm")]);
    assert!(check.all_met() && !check.is_done(), "met, but not by the lesson's means: {check:?}");
    let strayed: Vec<_> =
        check.strayed.iter().map(|change| (change.path.as_str(), change.was.as_str(), change.is.as_str())).collect();
    assert_eq!(strayed, [("part.roundness_limit", "30 µm", "0.1 mm")], "it is told what was changed");
}

#[test]
fn the_same_in_another_unit_or_name_is_no_change_and_an_entry_taken_back_is() {
    let begun = start(lesson("thin-ring"));
    let mut other = begun.clone();
    other.set("run.pressure", "12 bar");
    other.set("part.length", "2.4 cm");
    other.set("job.name", "mine");
    other.set("jaws.taper", "0 in");
    assert_eq!(changes(&begun, &other), [], "it means the same");
    other.unset("part.bore_diameter");
    other.set("jaws.bored_diameter", "130.1 mm");
    let paths: Vec<_> = changes(&begun, &other).into_iter().map(|change| change.path).collect();
    assert_eq!(paths, ["part.bore_diameter", "jaws.bored_diameter"], "what was taken back and what is new");
}

#[test]
fn every_figure_in_a_lesson_is_found_by_the_engines_and_none_is_typed() {
    for lesson in LESSONS {
        let [was, is] = [found(&start(lesson)), found(&with(lesson, lesson.solution))];
        for text in lesson.told {
            let filled = figures::fill(text, &was, &is, |_, value| format!("<{value}>"));
            let filled = filled.unwrap_or_else(|| panic!("{}: a figure is missing in {text:?}", lesson.key));
            assert!(!filled.contains(['{', '}']), "{}: {filled}", lesson.key);
        }
        assert!(lesson.told.iter().any(|text| text.contains("{was ") && text.contains("{is ")), "{}", lesson.key);
        let own: String = lesson
            .told
            .iter()
            .flat_map(|text| text.split('{').map(|piece| piece.rsplit('}').next().unwrap_or("")))
            .collect();
        for text in lesson.says.iter().chain([&lesson.title, &lesson.task, &lesson.caution, &own.as_str()]) {
            assert!(!text.contains(|c: char| c.is_ascii_digit()), "{}: a figure was typed into {text:?}", lesson.key);
        }
    }
}

#[test]
fn every_path_and_finding_of_a_lesson_is_there() {
    for lesson in LESSONS {
        for path in lesson.change {
            assert!(declared(path).is_some(), "{}: {path}", lesson.key);
        }
        for (path, _) in lesson.solution {
            assert!(lesson.change.contains(path), "{}: {path} is meant to be changed", lesson.key);
        }
        // While a finger is on a slider, the check follows it too.
        let sliding = Engine::default().evaluate(&Setup::read(&start(lesson)).unwrap(), Effort::Sliding);
        let goals = lesson.goals.iter().map(|goal| goal.finding);
        for id in goals.chain(lesson.watch.iter().map(|(id, _)| *id)) {
            assert!(sliding.value(id).is_some(), "{}: {id} has a value", lesson.key);
        }
    }
}

#[test]
fn a_goal_without_a_figure_is_not_met() {
    let lesson = lesson("mid-stroke");
    let mut entries = start(lesson);
    entries.set("stroke.plan", "no");
    let check = Check::of(lesson, &start(lesson), &entries, &found(&entries));
    assert_eq!(check.met(), 0, "nothing is known of the stroke: {check:?}");
    assert!(check.seen.iter().all(|seen| seen.value.is_err()), "and it is told");
}
