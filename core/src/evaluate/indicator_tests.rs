use super::*;
use crate::evaluate;
use crate::setup::Entries;
use alloc::format;

/// The assumed job read at these stations.
fn job(set: &[(&str, &str)]) -> Entries {
    let read = [("indicator.use", "once"), ("indicator.unit", "0.001 mm"), ("indicator.resolution", "0.1 µm")];
    Entries::typed(read.iter().chain(set))
}

fn findings(entries: &Entries) -> crate::findings::Findings {
    evaluate(&Setup::read(entries).unwrap())
}

fn value(entries: &Entries, id: &str) -> f64 {
    findings(entries).get(id).unwrap_or_else(|| panic!("{id} is told")).value.clone().unwrap()
}

/// Writes readings in µm of the engine's own shape times `share`, and of an offset.
fn read_shape(entries: &mut Entries, field: &str, share: f64, offset: f64) {
    let shape = findings(entries).scene.indicator.unwrap().predicted.unwrap();
    for at in 0..12 {
        let angle = core::f64::consts::TAU * f64::from(at) / 12.0;
        let y = 1e6 * share * shape.at(angle) + offset * libm::cos(angle);
        entries.set(&format!("dial.{at}.{field}"), &crate::quantity::fixed(y, 4));
    }
}

#[test]
fn the_engines_own_shape_is_read_as_the_engine_has_it() {
    for state in ["clamped", "released"] {
        let mut entries = job(&[("indicator.state", state)]);
        read_shape(&mut entries, "reading", 1.0, 15.0);
        for wave in ["lobing", "edge"] {
            let measured = value(&entries, &format!("indicator.{wave}"));
            let predicted = value(&entries, &format!("indicator.{wave}.predicted"));
            assert!((measured - predicted).abs() < 1e-9, "{state}, {wave}: {measured} m against {predicted} m");
        }
        assert!((value(&entries, "indicator.offset") - 15e-6).abs() < 1e-9, "{state}: the offset");
        let told = value(&entries, "indicator.condition");
        assert!((told - 0.8).abs() < 2e-3, "{state}: the condition entered explains its own lobes: {told}");
    }
}

#[test]
fn an_adopted_condition_gives_the_lobes_measured() {
    let mut entries = job(&[]);
    read_shape(&mut entries, "reading", 0.7, 0.0);
    let told = value(&entries, "indicator.condition");
    assert!(told < 0.7, "less lobing, less grip: {told}");
    let text = crate::quantity::decimal(told, 3);
    entries.set("chuck.condition", &text);
    entries.set("indicator.adopted", &text);
    let (measured, predicted) = (value(&entries, "indicator.lobing"), value(&entries, "indicator.lobing.predicted"));
    assert!((predicted / measured - 1.0).abs() < 0.01, "{predicted} m beside {measured} m");
    let caution = findings(&entries).get("grip.rest").unwrap().caution.clone().unwrap();
    assert!(caution.contains("from measured readings"), "the grip says where it comes from: {caution}");
    entries.set("chuck.condition", "0.9");
    let caution = findings(&entries).get("grip.rest").unwrap().caution.clone().unwrap();
    assert!(!caution.contains("from measured readings"), "and no longer once it is changed: {caution}");
}

/// A thin part read far from the jaws, in tall jaws: its lobes hang on how these tilt.
fn far_out(set: &[(&str, &str)]) -> Entries {
    let mut entries = job(set);
    for (path, text) in [
        ("part.bore_diameter", "140 mm"),
        ("part.length", "80 mm"),
        ("grip.length", "30 mm"),
        ("jaws.height", "60 mm"),
        ("jaws.boring_pressure", "0 MPa"),
        ("indicator.resolution", "0.01 µm"),
    ] {
        entries.set(path, text);
    }
    entries
}

#[test]
fn a_tilt_stiffness_put_in_comes_back_from_its_lobes() {
    for state in ["clamped", "released"] {
        for tilt in [320e3, 700e3, 1.9e6, 3.4e6] {
            let mut entries = far_out(&[("indicator.state", state)]);
            entries.set("chuck.tilt_stiffness", &crate::quantity::decimal(tilt, 0));
            read_shape(&mut entries, "reading", 1.0, 4.0);
            entries.unset("chuck.tilt_stiffness");
            let found = findings(&entries);
            let told = found.get("indicator.tilt").unwrap();
            let value = told.value.clone().unwrap();
            assert!((value / tilt - 1.0).abs() < 0.01, "{state}: {tilt} N m/rad came back as {value}");
            let (least, most) = told.band.unwrap();
            assert!(least <= value && value <= most, "{state}: {value} in {least} to {most}");
        }
    }
}

#[test]
fn an_adopted_tilt_stiffness_is_listed_until_it_is_changed() {
    let mut entries = far_out(&[]);
    read_shape(&mut entries, "reading", 0.9, 0.0);
    let text = crate::quantity::decimal(value(&entries, "indicator.tilt"), 0);
    entries.set("chuck.tilt_stiffness", &text);
    entries.set("indicator.adopted_tilt", &text);
    let (measured, predicted) = (value(&entries, "indicator.lobing"), value(&entries, "indicator.lobing.predicted"));
    assert!((predicted / measured - 1.0).abs() < 1e-3, "{predicted} m beside {measured} m");
    let listed = |entries: &Entries| {
        let found = findings(entries);
        found.assumed.iter().any(|one| one.entry == "chuck.tilt_stiffness" && one.source.contains("from the indicator"))
    };
    assert!(listed(&entries), "it is among what is assumed, as from the indicator");
    entries.set("chuck.tilt_stiffness", "900000");
    assert!(!listed(&entries), "and no longer once it is changed");
}

#[test]
fn lobes_that_no_tilt_explains_or_that_hardly_hang_on_it_tell_none() {
    let refusal = |entries: &Entries| findings(entries).get("indicator.tilt").unwrap().value.clone().unwrap_err();
    let mut entries = far_out(&[]);
    for share in [0.4, 2.0] {
        read_shape(&mut entries, "reading", share, 0.0);
        let why = refusal(&entries);
        assert!(why.contains("No tilt stiffness between a quarter"), "{share} of the lobes: {why}");
    }
    let mut entries = job(&[]);
    read_shape(&mut entries, "reading", 1.0, 0.0);
    let why = refusal(&entries);
    assert!(why.contains("change by 2 % only"), "a short thick ring: {why}");
    let mut entries = far_out(&[]);
    read_shape(&mut entries, "reading", 1.0, 0.0);
    entries.set("indicator.resolution", "40 µm");
    let why = refusal(&entries);
    assert!(why.contains("they tell nothing"), "readings too coarse to part stiffnesses: {why}");
}

#[test]
fn friction_at_the_jaws_and_radial_give_move_no_lobes() {
    let shape = |path: &str, text: &str| {
        let mut entries = far_out(&[]);
        entries.set(path, text);
        findings(&entries).scene.indicator.unwrap().predicted.unwrap().harmonics
    };
    let as_assumed = shape("grip.friction", "0.10");
    assert_eq!(shape("grip.friction", "0.3"), as_assumed, "contact is without friction");
    for ((_, one), (_, other)) in shape("chuck.radial_stiffness", "54 N/µm").iter().zip(&as_assumed) {
        assert!((one - other).abs() < 1e-10, "{one} m beside {other} m: the jaw gives as a whole");
    }
}

#[test]
fn two_sets_part_the_squeezed_from_the_off_centre() {
    let mut entries =
        job(&[("indicator.use", "twice"), ("run.pressure", "2 MPa"), ("indicator.second_pressure", "1 MPa")]);
    read_shape(&mut entries, "reading", 1.0, 20.0);
    read_shape(&mut entries, "second", 0.5, 20.0);
    let lobing = value(&entries, "indicator.lobing");
    assert!((value(&entries, "indicator.lobing.squeezed") / lobing - 1.0).abs() < 1e-3, "all lobes come with the grip");
    assert!(value(&entries, "indicator.lobing.there") < 1e-3 * lobing, "none is there without");
    assert!((value(&entries, "indicator.offset.there") - 20e-6).abs() < 1e-9, "the offset is there without");
    assert!(value(&entries, "indicator.offset.squeezed") < 1e-9, "and does not come with the grip");
}

#[test]
fn what_cannot_be_told_is_refused_and_said() {
    let mut entries = job(&[("indicator.stations", "6"), ("chuck.jaws", "4")]);
    for at in 0..6 {
        entries.set(&format!("dial.{at}.reading"), "1");
    }
    let found = findings(&entries);
    let why = found.get("indicator.lobing").unwrap().value.clone().unwrap_err();
    assert!(why.contains("4 times round reads like 2 times"), "{why}");
    assert!(found.get("indicator.condition").is_none(), "no lobes, no condition");
    entries.unset("dial.3.reading");
    entries.unset("dial.4.reading");
    let why = findings(&entries).get("indicator.offset").unwrap().value.clone().unwrap_err();
    assert!(why.contains("4 stations are read"), "{why}");
    assert!(findings(&job(&[])).get("indicator.offset").is_none(), "nothing read, nothing told");
}

#[test]
fn gauge_readings_replace_the_plate() {
    let mut entries = Entries::typed(&[
        ("chuck.grip_from", "gauge"),
        ("run.pressure", "2 MPa"),
        ("gauge.0.pressure", "1 MPa"),
        ("gauge.0.grip", "20 kN"),
        ("gauge.1.pressure", "2 MPa"),
        ("gauge.1.grip", "40 kN"),
    ]);
    let found = findings(&entries);
    // By hand: area 0.25 pi (125^2 - 55^2) mm2 = 9896 mm2, times 2 MPa times 0.95 is 18.80 kN, times 75/30 is 47.0 kN.
    let condition = found.get("gauge.condition").unwrap().value.clone().unwrap();
    assert!((condition - 40.0 / 47.0).abs() < 1e-3, "the gauge over the plate: {condition}");
    let force = found.get("spin.force").unwrap().value.clone().unwrap();
    let speed = Setup::read(&entries).unwrap().speed.value;
    // Readings of three tenths of the spin force.
    for (at, share) in [0.0, 0.6, 1.0].into_iter().enumerate() {
        let grip = 40e3 - 0.3 * force * share * share;
        let rpm = share * speed * 30.0 / core::f64::consts::PI;
        entries.set(&format!("spun.{at}.speed"), &crate::quantity::fixed(rpm, 6));
        entries.set(&format!("spun.{at}.grip"), &format!("{} N", crate::quantity::fixed(grip, 4)));
    }
    let found = findings(&entries);
    let share = found.get("gauge.spin_share").unwrap().value.clone().unwrap();
    assert!((share - 0.3).abs() < 1e-4, "the share read: {share}");
    let at_speed = found.get("grip.speed").unwrap().value.clone().unwrap();
    assert!((at_speed - (40e3 - 0.3 * force)).abs() < 2.0, "and it is what grip at speed is told with: {at_speed}");
    entries.set("spun.2.grip", "60 kN");
    entries.set("spun.1.grip", "47.2 kN");
    assert!(findings(&entries).get("grip.speed").unwrap().value.is_err(), "a grip that rises outside is refused");
}
