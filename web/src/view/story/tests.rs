//! Every worked example told from end to end, and the jobs that leave something out.

use std::collections::BTreeSet;

use holdround_core::evaluate;
use holdround_core::examples::EXAMPLES;
use holdround_core::findings::Findings;
use holdround_core::quantity::{Kind, UnitSystem};
use holdround_core::setup::{Entries, Setup, Side};
use roxmltree::Document;

use super::Film;
use super::chapter::Chapter;
use super::moment::Moment;
use crate::units::Units;
use crate::view::Stage;

/// Parts of a step at which a film is looked at.
const LOOKS: u32 = 8;

fn units() -> Units {
    Units::of(UnitSystem::Metric)
}

fn worked(entries: &Entries) -> (Setup, Findings) {
    let setup = Setup::read(entries).expect("a valid set-up");
    let findings = evaluate(&setup);
    (setup, findings)
}

fn example(id: &str) -> Entries {
    let found = EXAMPLES.iter().find(|example| example.id == id).expect("a worked example");
    crate::document::entries(found.json).expect("a set-up")
}

fn film(entries: &Entries) -> Film {
    let (setup, findings) = worked(entries);
    Film::of(&Stage::of(&setup, &findings, units()))
}

fn chapters(film: &Film) -> Vec<Chapter> {
    film.told.iter().map(|told| told.chapter).collect()
}

fn says(film: &Film, chapter: Chapter) -> &str {
    let told = film.told.iter().find(|told| told.chapter == chapter);
    told.map_or("", |told| &told.says)
}

#[test]
fn a_job_is_told_in_the_order_in_which_it_is_done() {
    use Chapter::{Bore, Clamp, ClampRing, Cut, Mount, Out, PartIn, Release, Relief, RingIn, RingOut, Spin};
    let whole = [Mount, RingIn, ClampRing, Bore, Relief, RingOut, PartIn, Clamp, Spin, Cut, Release, Out];
    for id in ["pump-wear-ring", "thin-ring", "thin-ring-on-pie-jaws"] {
        assert_eq!(chapters(&film(&example(id))), whole, "{id}");
    }
}

#[test]
fn what_a_job_does_not_have_is_not_told() {
    let told = |typed: &[(&str, &str)]| {
        let mut entries = example("fast-sleeve");
        for (path, text) in typed {
            assert!(entries.set(path, text), "{path} is an entry");
        }
        film(&entries)
    };
    let still = told(&[("run.speed", "0")]);
    assert!(!chapters(&still).contains(&Chapter::Spin), "without speed nothing spins up");
    let turns = (0..still.told.len()).map(|at| still.moment(at as f64 + 0.5)).filter(|moment| moment.part > 0.0);
    assert!(turns.into_iter().all(|moment| moment.turn == 0.0 && moment.speed == 0.0), "and no part turns");
    let two = told(&[
        ("run.pressures", "two"),
        ("run.finish_pressure", "1 MPa"),
        ("cuts.0.stage", "rough"),
        ("cuts.1.stage", "finish"),
    ]);
    let order: Vec<Chapter> = chapters(&two).into_iter().skip_while(|chapter| *chapter != Chapter::Spin).collect();
    assert_eq!(order[..4], [Chapter::Spin, Chapter::Rough, Chapter::Reclamp, Chapter::Cut], "clamped anew to finish");
    assert!(says(&two, Chapter::Reclamp).contains("set 1 MPa"), "{}", says(&two, Chapter::Reclamp));
    let reused = told(&[
        ("part.outside_diameter", "96 mm"),
        ("part.bore_diameter", "30 mm"),
        ("recut.jaws", "bored"),
        ("recut.standing", "96 mm"),
        ("recut.as_before", "yes"),
        ("recut.runout", "0 µm"),
    ]);
    assert_eq!(chapters(&reused)[..2], [Chapter::Reuse, Chapter::PartIn], "jaws that need no cut are not bored");
}

#[test]
fn an_inside_grip_is_told_the_other_way_round() {
    let (outside, inside) = (film(&example("fast-sleeve")), film(&example("thin-ring")));
    for (chapter, out, into) in [
        (Chapter::ClampRing, "close on it", "open against it"),
        (Chapter::Bore, "Bored to 80 mm", "Turned to 174 mm"),
        (Chapter::RingOut, "Jaws open", "Jaws close"),
        (Chapter::Clamp, "close on its outside", "open into its bore"),
        (Chapter::Spin, "Spin takes grip away", "Spin can only add grip"),
        (Chapter::Release, "Jaws open", "Jaws close"),
    ] {
        assert!(says(&outside, chapter).contains(out), "outside, {chapter:?}: {}", says(&outside, chapter));
        assert!(says(&inside, chapter).contains(into), "inside, {chapter:?}: {}", says(&inside, chapter));
    }
}

#[test]
fn sentences_have_the_jobs_own_numbers() {
    let (setup, findings) = worked(&example("pump-wear-ring"));
    let film = Film::of(&Stage::of(&setup, &findings, units()));
    let value = |id: &str| {
        let finding = findings.get(id).expect(id);
        units().show(finding.kind, *finding.value.as_ref().expect(id))
    };
    let placing = findings.scene.placing.as_ref().expect("a planned stroke");
    for (chapter, number) in [
        (Chapter::Mount, format!("tooth {}", placing.tooth)),
        (Chapter::RingIn, value("ring.middle")),
        (Chapter::ClampRing, units().show(Kind::Length, placing.bored_at)),
        (Chapter::Bore, value("boring.speed")),
        (Chapter::PartIn, value("stroke.clearance")),
        (Chapter::Clamp, units().show(Kind::Force, findings.scene.jaw_grip_at_rest)),
        (Chapter::Spin, units().show(Kind::Force, findings.scene.jaw_grip_at_speed)),
        (Chapter::Cut, value("hold.factor")),
        (Chapter::Out, value("shape.roundness")),
    ] {
        assert!(says(&film, chapter).contains(&number), "{number} in {chapter:?}: {}", says(&film, chapter));
    }
}

#[test]
fn cautions_stand_where_something_turns() {
    for entries in EXAMPLES.iter().map(|it| example(it.id)) {
        let film = film(&entries);
        assert!(says(&film, Chapter::Bore).contains("Guard closed"), "{}", says(&film, Chapter::Bore));
        assert!(says(&film, Chapter::Bore).contains("proved in the air"), "{}", says(&film, Chapter::Bore));
        assert!(says(&film, Chapter::Clamp).contains("Check the grip"), "{}", says(&film, Chapter::Clamp));
        assert!(says(&film, Chapter::Spin).contains("stand clear"), "{}", says(&film, Chapter::Spin));
    }
    let mut lost = example("fast-sleeve");
    lost.set("run.speed", "4200 rev/min");
    lost.set("run.pressure", "0.5 MPa");
    let film = film(&lost);
    let spin = says(&film, Chapter::Spin);
    assert!(spin.starts_with("Do not run it like this") && spin.contains("the grip may be lost"), "{spin}");
}

#[test]
fn a_path_that_would_hit_something_stops_the_story() {
    let mut entries = example("pump-wear-ring");
    entries.set("boring.bar_diameter", "90 mm");
    let (setup, findings) = worked(&entries);
    let path = findings.scene.jaw_path.as_ref().expect("a path");
    assert!(!path.collisions.is_empty(), "such a bar hits the jaws");
    let film = Film::of(&Stage::of(&setup, &findings, units()));
    assert!(says(&film, Chapter::Bore).starts_with("Stop."), "{}", says(&film, Chapter::Bore));
}

#[test]
fn every_step_begins_where_the_one_before_it_ended() {
    let near = |one: f64, other: f64| (one - other).abs() < 1e-9;
    for entries in EXAMPLES.iter().map(|it| example(it.id)) {
        let film = film(&entries);
        for step in 1..film.told.len() {
            let (before, after) = (film.moment(step as f64 - 1e-12), film.moment(step as f64));
            let pairs = |moment: &Moment| {
                [
                    moment.mounted,
                    moment.open,
                    moment.ring,
                    moment.on_ring,
                    moment.bored,
                    moment.grip,
                    moment.speed,
                    moment.cut,
                ]
            };
            for (one, other) in pairs(&before).into_iter().zip(pairs(&after)) {
                // A ring that is out and a part that is not there yet change places unseen.
                assert!(near(one, other), "step {step}: {before:?}, then {after:?}");
            }
            assert!(near((before.turn - after.turn).round(), before.turn - after.turn), "whole turns: {before:?}");
        }
    }
}

#[test]
fn what_is_cut_is_round_while_held_and_springs_by_what_the_live_view_shows() {
    let film = film(&example("fast-sleeve"));
    let at =
        |chapter: Chapter| chapters(&film).iter().position(|it| *it == chapter).expect("a step of this job") as f64;
    let share = 0.7;
    let held = film.moment(at(Chapter::Cut));
    assert!((held.lobes(share, true) - share).abs() < 1e-12, "before the cut it is as the jaws and the spin have it");
    let cut = film.moment(at(Chapter::Release));
    assert!(cut.lobes(share, true).abs() < 1e-12, "cut true while held");
    assert!((cut.lobes(share, false) - share).abs() < 1e-12, "what is not cut is as the jaws have it");
    let out = film.moment(film.told.len() as f64);
    assert!((out.lobes(share, true) + share).abs() < 1e-12, "released, it springs to minus its shape at speed");
    assert!(out.lobes(share, false).abs() < 1e-12, "and what was not cut to what it was");
}

#[test]
fn pictures_are_whole_and_every_change_finds_its_element() {
    for entries in EXAMPLES.iter().map(|it| example(it.id)) {
        let (setup, findings) = worked(&entries);
        let stage = Stage::of(&setup, &findings, units());
        let film = Film::of(&stage);
        let views = film.views(&stage).map(maud::Markup::into_string);
        let documents: Vec<Document<'_>> =
            views.iter().map(|view| Document::parse(view).expect("a view reads back as XML")).collect();
        let nodes = || documents.iter().flat_map(|document| document.descendants());
        let ids: Vec<&str> = nodes().filter_map(|node| node.attribute("id")).collect();
        let known: BTreeSet<&str> = ids.iter().copied().collect();
        assert_eq!(known.len(), ids.len(), "{}: no id stands twice", setup.name);
        let planned = findings.scene.placing.is_some();
        for look in 0..=film.told.len() as u32 * LOOKS {
            for change in film.frame(&stage, f64::from(look) / f64::from(LOOKS)) {
                // Only a planned ring and stroke are drawn.
                let drawn = planned || !["ring", "stroke"].iter().any(|it| change.id.contains(it));
                assert!(!drawn || known.contains(change.id.as_str()), "{} is not drawn", change.id);
                let nonsense = ["NaN", "inf", "—"].iter().any(|it| change.value.contains(it));
                assert!(!nonsense || change.name.is_empty(), "{} {}: {}", change.id, change.name, change.value);
            }
        }
    }
}

#[test]
fn forces_and_pressure_grow_with_the_grip_and_go_with_it() {
    let (setup, findings) = worked(&example("fast-sleeve"));
    assert_eq!(setup.grip.side, Side::Outside, "an outside grip");
    let stage = Stage::of(&setup, &findings, units());
    let film = Film::of(&stage);
    let at = |chapter: Chapter| chapters(&film).iter().position(|it| *it == chapter).expect("a step") as f64;
    let drawn = |at: f64, id: &str| {
        let changes = film.frame(&stage, at);
        changes.into_iter().find(|change| change.id == id && change.name == "d").map(|change| change.value)
    };
    for id in ["story-now", "story-band", "story-press-0"] {
        let part_in = drawn(at(Chapter::PartIn), id);
        let held = drawn(at(Chapter::Spin), id);
        let at_speed = drawn(at(Chapter::Cut), id);
        let out = drawn(at(Chapter::Out), id);
        assert_eq!(part_in.as_deref(), Some(""), "{id}: nothing before it is clamped");
        assert_ne!(held, part_in, "{id}: something when clamped");
        assert_ne!(at_speed, held, "{id}: other at speed");
        assert_eq!(out, part_in, "{id}: nothing once released");
    }
}
