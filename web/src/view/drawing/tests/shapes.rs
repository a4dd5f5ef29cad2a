//! What is drawn is the part that was entered, as the jaws move it.

use holdround_core::findings::{Scene, Wave};
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::{Entries, JawShape, Setup, Side};
use roxmltree::Document;

use super::boxes::{number, view_box};
use super::for_all;
use super::jobs::findings;
use crate::units::Units;
use crate::view::Stage;
use crate::view::drawing::shape::GREATEST_DRAWN;
use crate::view::drawing::sheet::TOP;
use crate::view::drawing::{Along, Half, JawOutline, Outline, Shape, Sheet};

#[test]
fn the_section_shows_the_profile_that_was_entered() {
    // A cup gripped by its floor: 8 mm floor, then a wall from 54 to 60 mm radius, 40 mm long.
    let mut entries = Entries::default();
    for (path, text) in [
        ("part.shape", "steps"),
        ("steps.0.length", "8 mm"),
        ("steps.0.outside", "120 mm"),
        ("steps.0.bore", "0 mm"),
        ("steps.1.length", "40 mm"),
        ("steps.1.outside", "120 mm"),
        ("steps.1.bore", "108 mm"),
        ("grip.length", "8 mm"),
        ("cuts.0.diameter", "115 mm"),
    ] {
        assert!(entries.set(path, text), "{path} is an input");
    }
    let setup = Setup::read(&entries).unwrap();
    let findings = findings(Scene { jaw_outer_radius: 0.1, ..Scene::default() });
    let units = Units::of(UnitSystem::Metric);
    let stage = Stage::of(&setup, &findings, units);
    let sheet = Sheet::of(&stage);
    let along = Along::of(&stage, sheet);
    let shape = Shape::of(&stage, sheet);
    let found = Outline::of(&stage, sheet, &along, &shape).true_half(Half::Upper);
    let millimetres: Vec<(f64, f64)> = found
        .iter()
        .map(|(x, y)| ((x - along.front) / sheet.scale * 1e3, -y / sheet.scale * 1e3))
        .map(|(x, y)| (x.round(), y.round()))
        .collect();
    let expected =
        [(-8.0, 60.0), (0.0, 60.0), (0.0, 60.0), (40.0, 60.0), (40.0, 54.0), (0.0, 54.0), (0.0, 0.0), (-8.0, 0.0)];
    assert_eq!(millimetres, expected, "around the half section, from the front of the jaws");
}

#[test]
fn lobes_keep_to_their_share_of_the_radius_and_are_reversed_by_release() {
    let around = || (0..90).map(|at| f64::from(at) * core::f64::consts::TAU / 90.0);
    for_all(&|stage, _, which| {
        let sheet = Sheet::of(stage);
        let most = sheet.radius(stage.setup.part.largest_outside()) * GREATEST_DRAWN * (1.0 + 1e-6);
        let at = |clamped, spinning| Shape::of(&Stage { clamped, spinning, units: stage.units, ..*stage }, sheet);
        let (rest, speed, released) = (at(true, false), at(true, true), at(false, false));
        assert_eq!(rest.magnification, speed.magnification, "{which}: the spindle does not change the magnification");
        assert_eq!(rest.magnification, released.magnification, "{which}: release does not change it");
        for angle in around() {
            for shape in [&rest, &speed, &released] {
                let shift = shape.outside_shift(angle).abs().max(shape.bore_shift(angle).abs());
                assert!(shift <= most, "{which}: {shift} is drawn where {most} is room");
            }
            if stage.setup.speed.value > 0.0 {
                let expected = if released.turns_outside { -speed.outside_shift(angle) } else { 0.0 };
                let sprung = released.outside_shift(angle);
                assert!((sprung - expected).abs() <= 1e-9, "{which}: the outside springs to {expected}, not {sprung}");
            }
        }
    });
}

#[test]
fn a_round_scene_is_drawn_with_lobes_of_about_a_tenth() {
    let setup = Setup::read(&Entries::default()).unwrap();
    for amplitude in [1e-6, 3e-6, 17e-6, 40e-6] {
        let wave = Wave { mean: 0.0, harmonics: vec![(3, amplitude)] };
        let findings = findings(Scene { clamped_outside: wave, jaw_outer_radius: 0.1, ..Scene::default() });
        let stage = Stage::of(&setup, &findings, Units::of(UnitSystem::Metric));
        let sheet = Sheet::of(&stage);
        let drawn = Shape::of(&stage, sheet).outside_shift(0.0) / sheet.radius(setup.part.largest_outside());
        // Steps of 1, 2, 5 leave at least 2/5 of the greatest.
        assert!((0.4 * GREATEST_DRAWN..=GREATEST_DRAWN).contains(&drawn), "{amplitude} is drawn as {drawn}");
    }
}

#[test]
fn the_bored_face_lies_on_the_gripped_circle() {
    for_all(&|stage, _, which| {
        let sheet = Sheet::of(stage);
        let jaw = JawOutline::of(stage, sheet);
        let reaches = jaw.inner < jaw.grip && jaw.grip < jaw.outer;
        if !reaches || matches!(stage.setup.jaws.shape, JawShape::Ordinary(_)) && jaw.inner > 0.9 * jaw.grip {
            return;
        }
        let on_circle = jaw.front.iter().filter(|(x, y)| (libm::hypot(*x, *y) - jaw.grip).abs() < 1e-6).count();
        assert!(on_circle >= 2, "{which}: no bored face in {:?}", jaw.front);
        let wrong_side = jaw.front.iter().any(|(x, y)| match stage.setup.grip.side {
            Side::Outside => libm::hypot(*x, *y) < jaw.grip - 1e-6,
            Side::Inside => libm::hypot(*x, *y) > jaw.grip + 1e-6,
        });
        assert!(!wrong_side, "{which}: the jaw stands in the part");
    });
}

#[test]
fn the_section_is_projected_from_the_face() {
    for_all(&|stage, views, which| {
        let [face, section] = [0, 1].map(|at| Document::parse(&views[at].1).unwrap());
        assert_eq!(view_box(&face), view_box(&section), "{which}: one sheet");
        assert_eq!(view_box(&face)[1], TOP, "{which}: one axis");
        let circle = face.descendants().find(|node| node.attribute("class") == Some("true-shape")).unwrap();
        let outside = number(circle, "r");
        let wall = section.descendants().find(|node| node.attribute("class") == Some("true-shape")).unwrap();
        let heights = wall.attribute("d").unwrap().split(['M', 'L', 'Z']).filter_map(|point| point.split(' ').nth(1));
        let highest = heights.filter_map(|y| y.parse::<f64>().ok()).fold(0.0, f64::min);
        assert!((highest + outside).abs() < 0.011, "{which}: {outside} in the face, {highest} in the section");
        assert!(stage.setup.part.largest_outside() > 0.0, "{which}: there is a part");
    });
}
