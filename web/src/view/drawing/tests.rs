//! Both views over many set-ups and scenes, read back as XML.

use std::collections::BTreeSet;

use holdround_core::findings::{Findings, PressureMap, Scene, Shift, Wave};
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::{Entries, JawShape, Setup, Side, declared};
use roxmltree::{Document, Node};

use super::lettering::{LETTER_HEIGHT, width};
use super::shape::GREATEST_DRAWN;
use super::sheet::TOP;
use super::{Along, Half, JawOutline, Outline, Shape, Sheet};
use crate::units::Units;
use crate::view::{Stage, face, section};

/// A stream of numbers that look random and are the same each time (Knuth's MMIX constants).
struct Numbers(u64);

impl Numbers {
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    /// Evenly spread over the decades.
    fn size(&mut self, least: f64, most: f64) -> f64 {
        libm::exp(self.between(libm::log(least), libm::log(most)))
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[((self.share() * all.len() as f64) as usize).min(all.len() - 1)]
    }
}

fn random_setup(numbers: &mut Numbers) -> Option<Setup> {
    let mut entries = Entries::default();
    let mut set = |path: &str, text: String| assert!(entries.set(path, &text), "{path} is an input");
    let outside = numbers.size(1.5, 2000.0);
    let inside_grip = numbers.share() < 0.4;
    let bore = if !inside_grip && numbers.share() < 0.3 { 0.0 } else { outside * numbers.between(0.05, 0.995) };
    let gripped = if inside_grip { bore } else { outside };
    let (length, height) = (numbers.size(1.0, 2000.0), numbers.size(5.0, 200.0));
    let grip = numbers.between(0.05, 0.85) * length.min(height);
    set("grip.side", if inside_grip { "inside" } else { "outside" }.into());
    set("grip.seat", numbers.one_of(&["seated", "free"]).into());
    set("grip.length", format!("{grip} mm"));
    set("part.outside_diameter", format!("{outside} mm"));
    set("part.bore_diameter", format!("{bore} mm"));
    set("part.length", format!("{length} mm"));
    if numbers.share() < 0.5 {
        set("part.shape", "steps".into());
        let steps = numbers.one_of(&[1, 2, 3, 12]);
        let ahead = (length - grip * 1.05).max(0.0) / f64::from(steps - 1).max(1.0);
        for step in 0..steps {
            let first = step == 0;
            let larger = if first { 1.0 } else { numbers.between(0.9, 1.4) };
            let bore = if inside_grip && first { bore } else { bore * numbers.one_of(&[0.0, 0.5, 1.0]) };
            let long = if first && steps > 1 {
                grip * 1.05
            } else if first {
                length
            } else {
                ahead
            };
            set(&format!("steps.{step}.length"), format!("{long} mm"));
            set(&format!("steps.{step}.outside"), format!("{} mm", outside * larger));
            set(&format!("steps.{step}.bore"), format!("{bore} mm"));
            if !first && numbers.share() < 0.3 {
                set(&format!("steps.{step}.outside_end"), format!("{} mm", outside * numbers.between(1.0, 1.3)));
            }
        }
    }
    set("chuck.jaws", numbers.one_of(&["2", "3", "4", "5", "6"]).into());
    set("chuck.body_diameter", format!("{} mm", numbers.size(50.0, 2000.0)));
    set("jaws.kind", numbers.one_of(&["ordinary", "wide", "pie"]).into());
    set("jaws.width", format!("{} mm", (gripped * numbers.between(0.05, 0.45)).max(2.0)));
    set("jaws.angle", format!("{}°", numbers.between(5.0, 59.0)));
    set("jaws.saw_cut", format!("{} mm", (gripped * numbers.between(0.001, 0.05)).max(0.1)));
    set("jaws.height", format!("{height} mm"));
    let jaw_length = if inside_grip { (gripped * 0.5).max(5.0) } else { numbers.size(5.0, 500.0) };
    set("jaws.length", format!("{jaw_length} mm"));
    set("jaws.step", format!("{} mm", numbers.between(0.0, 0.5) * jaw_length.min(gripped / 2.0)));
    for cut in 0..numbers.one_of(&[1, 2, 4, 5, 8]) {
        let kind = numbers.one_of(&["turning", "facing", "boring", "grooving", "drilling", "power"]);
        set(&format!("cuts.{cut}.kind"), kind.into());
        set(&format!("cuts.{cut}.diameter"), format!("{} mm", numbers.between(bore, outside)));
        set(&format!("cuts.{cut}.distance"), format!("{} mm", numbers.between(-grip, length - grip)));
    }
    if numbers.share() < 0.2 {
        set("run.speed", "0".into());
    }
    Setup::read(&entries).ok()
}

fn random_wave(numbers: &mut Numbers, jaws: u32) -> Wave {
    let amplitude = numbers.one_of(&[0.0, 1e-12, 1e-7, 1e-5, 1e-3, 1.0]) * numbers.between(-1.0, 1.0);
    Wave {
        mean: amplitude * numbers.share(),
        harmonics: (1..6).map(|k| (k * jaws, amplitude / f64::from(k))).collect(),
    }
}

fn random_shifts(numbers: &mut Numbers, setup: &Setup) -> Vec<Shift> {
    let most = numbers.one_of(&[0.0, 1e-6, 1e-3]);
    let mut shift = |at: u32| Shift {
        z: setup.part.length() * f64::from(at) / 20.0,
        at_jaw: most * numbers.between(-1.0, 1.0),
        between_jaws: most * numbers.between(-1.0, 1.0),
    };
    (0..=20).map(&mut shift).collect()
}

fn random_pressure(numbers: &mut Numbers, setup: &Setup) -> PressureMap {
    let (start, length) = (setup.grip.start.value, setup.grip.length.value);
    let (angles, heights) = (numbers.one_of(&[0_u32, 1, 6]), numbers.one_of(&[0_u32, 1, 5]));
    PressureMap {
        angles: (0..angles).map(|at| f64::from(at) * 0.05).collect(),
        heights: (0..heights).map(|at| start + length * f64::from(at) / 4.0).collect(),
        pressure: (0..angles * heights).map(|_| numbers.size(1e3, 1e9) * numbers.one_of(&[0.0, 1.0])).collect(),
    }
}

fn random_scene(numbers: &mut Numbers, setup: &Setup) -> Scene {
    let side = setup.grip.side;
    let radius = setup.gripped_radius();
    let (step, length) = (setup.jaws.step.value, setup.jaws.length.value);
    let inner = match side {
        Side::Outside => radius - step,
        Side::Inside => radius + step - length,
    };
    let outer = inner + length;
    let jaws = setup.chuck.jaws;
    let grip = numbers.size(1.0, 1e6);
    Scene {
        contact_half_angle: numbers.between(0.01, core::f64::consts::PI / f64::from(setup.chuck.jaws)),
        jaw_inner_radius: inner.max(0.0),
        jaw_outer_radius: outer,
        swing_radius: outer * numbers.between(1.0, 1.2),
        jaw_grip_at_rest: grip,
        jaw_grip_at_speed: grip * numbers.between(-0.5, 2.0),
        contact_pressure: numbers.size(1e3, 1e9),
        pressure: random_pressure(numbers, setup),
        clamped_outside: random_wave(numbers, jaws),
        clamped_bore: random_wave(numbers, jaws),
        outside_along: random_shifts(numbers, setup),
        bore_along: random_shifts(numbers, setup),
        shape_share_at_speed: numbers.between(0.0, 2.0),
        trace: None,
        ..Scene::default()
    }
}

/// Scenes that no engine should hand over, and that must still not break the drawing.
fn broken_scenes() -> Vec<Scene> {
    // Ten times what the largest chuck grips: the sheet has no room for more figures.
    let force = |value: f64| if value > 1e7 { 1e7 } else { value };
    let with = |value: f64| Scene {
        contact_half_angle: value,
        jaw_inner_radius: value,
        jaw_outer_radius: value,
        swing_radius: value,
        jaw_grip_at_rest: force(value),
        jaw_grip_at_speed: force(value),
        contact_pressure: value,
        pressure: PressureMap::default(),
        clamped_outside: Wave { mean: value, harmonics: vec![(3, value)] },
        clamped_bore: Wave { mean: value, harmonics: vec![(3, value)] },
        outside_along: vec![Shift { z: value, at_jaw: value, between_jaws: -value }; 3],
        bore_along: vec![Shift { z: value, at_jaw: value, between_jaws: -value }; 3],
        shape_share_at_speed: value,
        trace: None,
        ..Scene::default()
    };
    [0.0, -1.0, f64::NAN, f64::INFINITY, 1e11, 1e-308].map(with).into()
}

fn findings(scene: Scene) -> Findings {
    Findings { job: String::new(), findings: vec![], cautions: vec![], assumed: vec![], scene }
}

/// Both views by name.
type Views = [(&'static str, String); 2];

/// Calls `check` for both views of many stages, each with the words that tell which one it was.
fn for_all(check: &dyn Fn(&Stage<'_>, &Views, &str)) {
    const WANTED: usize = 200;
    let mut numbers = Numbers(20);
    let mut drawn = 0;
    for round in 0..40 * WANTED {
        let Some(setup) = random_setup(&mut numbers) else { continue };
        let scene = match broken_scenes().get(round % 40) {
            Some(broken) => broken.clone(),
            None => random_scene(&mut numbers, &setup),
        };
        let findings = findings(scene);
        let (radius, length) = (setup.part.largest_outside() / 2.0, setup.part.length());
        let mesh = [[radius, 0.0, radius, length], [0.0, length, radius, length]];
        let stage = Stage {
            setup: &setup,
            findings: &findings,
            units: Units::of(numbers.one_of(&[UnitSystem::Metric, UnitSystem::Inch])),
            clamped: numbers.share() < 0.7,
            spinning: numbers.share() < 0.5,
            mesh: (numbers.share() < 0.3).then_some(&mesh),
        };
        let views = [("face", face::draw(&stage).into_string()), ("section", section::draw(&stage).into_string())];
        check(&stage, &views, &format!("round {round}"));
        drawn += 1;
        if drawn == WANTED {
            return;
        }
    }
    panic!("only {drawn} of {WANTED} random set-ups were valid");
}

fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).and_then(|text| text.parse().ok()).unwrap_or(0.0)
}

fn view_box(document: &Document<'_>) -> [f64; 4] {
    let numbers: Vec<f64> =
        document.root_element().attribute("viewBox").unwrap().split(' ').map(|n| n.parse().unwrap()).collect();
    [numbers[0], numbers[1], numbers[0] + numbers[2], numbers[1] + numbers[3]]
}

fn turned_to_the_right(node: Node<'_, '_>) -> bool {
    node.ancestors().any(|above| above.attribute("transform") == Some("rotate(-90)"))
}

/// A box as left, top, right, bottom; where it stands on the sheet if it was turned a quarter.
fn placed(node: Node<'_, '_>, [left, top, right, bottom]: [f64; 4]) -> [f64; 4] {
    if turned_to_the_right(node) { [top, -right, bottom, -left] } else { [left, top, right, bottom] }
}

fn lettering_box(node: Node<'_, '_>) -> [f64; 4] {
    let room = width(node.text().unwrap_or_default());
    let (x, y) = (number(node, "x"), number(node, "y"));
    let left = match node.attribute("text-anchor") {
        Some("end") => x - room,
        Some("middle") => x - room / 2.0,
        _ => x,
    };
    placed(node, [left, y - 0.75 * LETTER_HEIGHT, left + room, y + 0.22 * LETTER_HEIGHT])
}

fn hit_box(node: Node<'_, '_>) -> [f64; 4] {
    let (x, y) = (number(node, "x"), number(node, "y"));
    placed(node, [x, y, x + number(node, "width"), y + number(node, "height")])
}

fn meet(one: [f64; 4], other: [f64; 4]) -> bool {
    one[0] < other[2] && other[0] < one[2] && one[1] < other[3] && other[1] < one[3]
}

fn within(inner: [f64; 4], outer: [f64; 4]) -> bool {
    inner[0] >= outer[0] && inner[1] >= outer[1] && inner[2] <= outer[2] && inner[3] <= outer[3]
}

#[test]
fn both_views_are_xml_with_numbers_only_and_no_inline_style() {
    for_all(&|_, views, which| {
        let mut ids = BTreeSet::new();
        for (name, markup) in views {
            let document = Document::parse(markup).unwrap_or_else(|error| panic!("{name}, {which}: {error}"));
            for node in document.descendants().filter(Node::is_element) {
                assert!(node.attribute("style").is_none(), "{name}, {which}: the page's policy refuses inline style");
                if let Some(id) = node.attribute("id") {
                    assert!(ids.insert(id.to_string()), "{name}, {which}: two elements are called {id}");
                }
                for attribute in node.attributes() {
                    let value = attribute.value();
                    let bad = value.contains("NaN") || value.contains("inf") && attribute.name() != "class";
                    assert!(!bad, "{name}, {which}: {}={value}", attribute.name());
                }
                let words = node.text().unwrap_or_default();
                assert!(!words.contains("NaN"), "{name}, {which}: {words}");
            }
        }
    });
}

#[test]
fn both_views_say_in_words_what_they_show() {
    for_all(&|stage, views, which| {
        for (name, markup) in views {
            let document = Document::parse(markup).unwrap();
            let image = document.descendants().find(|node| node.attribute("role") == Some("img")).unwrap();
            for id in image.attribute("aria-labelledby").unwrap().split(' ') {
                let words = document.descendants().find(|node| node.attribute("id") == Some(id)).unwrap();
                assert!(words.text().unwrap().len() > 20, "{name}, {which}: {id} says too little");
            }
            let inside = image.descendants().any(|node| node.attribute("role") == Some("button"));
            assert!(!inside, "{name}, {which}: what is in an image cannot be reached");
            let classes: Vec<_> = document.root_element().attribute("class").unwrap().split(' ').collect();
            assert_eq!(classes.contains(&"clamped"), stage.clamped, "{name}, {which}: the jaws move by this class");
            assert_eq!(classes.contains(&"released"), !stage.clamped, "{name}, {which}: the jaws move by this class");
        }
    });
}

#[test]
fn dimensions_are_buttons_for_entries_that_exist() {
    for_all(&|stage, views, which| {
        let document = Document::parse(&views[1].1).unwrap();
        let buttons: Vec<_> = document.descendants().filter(|n| n.attribute("role") == Some("button")).collect();
        let mut entries = BTreeSet::new();
        for button in &buttons {
            let entry = button.attribute("data-entry").unwrap();
            assert!(declared(entry).is_some(), "{which}: {entry} is no input");
            assert!(entries.insert(entry), "{which}: {entry} stands twice");
            assert_eq!(button.attribute("tabindex"), Some("0"), "{which}: {entry} is reached by keyboard");
            let spoken = button.attribute("aria-label").unwrap();
            let shown: String =
                button.descendants().filter(|node| node.is_text()).filter_map(|node| node.text()).collect();
            assert!(spoken.ends_with(", change"), "{which}: {entry} says what it does");
            assert!(spoken.contains(shown.trim()), "{which}: {spoken:?} begins with what is read, {shown:?}");
        }
        let ring = ["part.outside_diameter", "part.bore_diameter", "part.length", "grip.length", "jaws.height"];
        let steps = ["grip.length", "jaws.height", "steps.0.length"];
        let stepped = stage.setup.part.stepped;
        let few = stage.setup.part.profile.steps().len() <= 3;
        let wanted = if stepped { &steps[..if few { 3 } else { 2 }] } else { &ring[..] };
        assert!(wanted.iter().all(|entry| entries.contains(entry)), "{which}: {entries:?}");
        let tools = entries.iter().filter(|entry| entry.starts_with("cuts.")).count();
        assert_eq!(tools, stage.setup.cuts.len(), "{which}: one for each tool as well");
        assert!(stepped || buttons.len() == ring.len() + tools, "{which}: nothing else: {entries:?}");
    });
}

#[test]
fn handles_name_sizes_that_exist_and_keep_apart() {
    for_all(&|stage, views, which| {
        let document = Document::parse(&views[1].1).unwrap();
        let handles: Vec<_> = document.descendants().filter(|node| node.has_attribute("data-drag")).collect();
        assert!(!handles.is_empty(), "{which}: there is something to drag");
        let mut boxes: Vec<[f64; 4]> = Vec::new();
        for handle in &handles {
            let entry = handle.attribute("data-drag").unwrap();
            assert!(declared(entry).is_some(), "{which}: {entry} is no input");
            assert_eq!(entry.starts_with("steps."), stage.setup.part.stepped, "{which}: {entry} is not in use");
            assert!(number(*handle, "data-scale") > 0.0, "{which}: {entry} follows the pointer");
            assert!(number(*handle, "data-value") > 0.0, "{which}: {entry} has a size");
            let grasp = handle.descendants().find(|node| node.attribute("class") == Some("grasp")).unwrap();
            let room = hit_box(grasp);
            assert!(!boxes.iter().any(|other| meet(shrunk(*other), room)), "{which}: {entry} lies on another");
            boxes.push(room);
        }
    });
}

/// Coordinates are written to two decimals: boxes side by side may overlap by that.
fn shrunk([left, top, right, bottom]: [f64; 4]) -> [f64; 4] {
    const ROUNDING: f64 = 0.02;
    [left + ROUNDING, top + ROUNDING, right - ROUNDING, bottom - ROUNDING]
}

#[test]
fn jaws_and_part_in_the_face_open_their_inputs() {
    for_all(&|stage, views, which| {
        let document = Document::parse(&views[0].1).unwrap();
        let buttons: Vec<_> = document.descendants().filter(|node| node.has_attribute("data-entry")).collect();
        let entries: Vec<_> = buttons.iter().filter_map(|node| node.attribute("data-entry")).collect();
        assert_eq!(entries.len(), 2, "{which}: {entries:?}");
        assert_eq!(entries[0], "jaws.kind", "{which}: the jaws");
        assert_eq!(entries[1].starts_with("steps."), stage.setup.part.stepped, "{which}: the part, {}", entries[1]);
        assert!(entries.iter().all(|entry| declared(entry).is_some()), "{which}: {entries:?}");
        let named =
            buttons.iter().all(|button| button.attribute("aria-label").is_some_and(|l| l.ends_with(", change")));
        assert!(named, "{which}: each says what it does");
    });
}

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
    let stage = Stage { setup: &setup, findings: &findings, units, clamped: true, spinning: false, mesh: None };
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
fn fingers_hit_one_dimension_at_a_time() {
    // 44 view units: 28 CSS pixels where a view is drawn smallest, above the 24 of WCAG 2.2, success criterion 2.5.8.
    const FINGER: f64 = 44.0;
    for_all(&|_, views, which| {
        let document = Document::parse(&views[1].1).unwrap();
        let hits: Vec<_> =
            document.descendants().filter(|node| node.attribute("class") == Some("hit")).map(hit_box).collect();
        for (at, hit) in hits.iter().enumerate() {
            let (wide, high) = (hit[2] - hit[0], hit[3] - hit[1]);
            assert!(wide > FINGER - 0.1 && high > FINGER - 0.1, "{which}: {wide} by {high} is too small to hit");
            assert!(within(*hit, view_box(&document)), "{which}: {hit:?} leaves the sheet");
            let other = hits[..at].iter().find(|other| meet(**other, *hit));
            assert!(other.is_none(), "{which}: {hit:?} lies on {other:?}");
        }
    });
}

#[test]
fn lettering_stays_on_the_sheet_and_apart() {
    for_all(&|_, views, which| {
        for (name, markup) in views {
            let document = Document::parse(markup).unwrap();
            let texts: Vec<_> = document
                .descendants()
                .filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "text")))
                .map(|node| (node.text().unwrap_or_default(), lettering_box(node)))
                .collect();
            assert!(texts.len() >= 3, "{name}, {which}: there is lettering");
            for (at, (words, room)) in texts.iter().enumerate() {
                assert!(within(*room, view_box(&document)), "{name}, {which}: {words:?} leaves the sheet: {room:?}");
                let other = texts[..at].iter().find(|(_, other)| meet(*other, *room));
                assert!(other.is_none(), "{name}, {which}: {words:?} lies on {other:?}");
            }
        }
    });
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
        let stage = Stage {
            setup: &setup,
            findings: &findings,
            units: Units::of(UnitSystem::Metric),
            clamped: true,
            spinning: false,
            mesh: None,
        };
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
