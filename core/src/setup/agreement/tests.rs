//! Entries that are good each by itself and not together: where that is told, and what would be allowed.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::setup::{Entries, Setup};

type Changes = &'static [(&'static str, &'static str)];

const STEPS: Changes = &[
    ("part.shape", "steps"),
    ("steps.0.length", "30 mm"),
    ("steps.0.outside", "100 mm"),
    ("steps.0.bore", "60 mm"),
    ("steps.1.length", "20 mm"),
    ("steps.1.outside", "100 mm"),
    ("steps.1.bore", "60 mm"),
    ("grip.length", "20 mm"),
    ("cuts.0.diameter", "90 mm"),
];
const GAUGE: Changes = &[
    ("chuck.grip_from", "gauge"),
    ("gauge.0.pressure", "1 MPa"),
    ("gauge.0.grip", "20 kN"),
    ("gauge.1.pressure", "2 MPa"),
    ("gauge.1.grip", "41 kN"),
];

/// Path and what is allowed of every fault.
fn faults(base: Changes, changes: Changes) -> Vec<(String, String)> {
    let entries = Entries::typed(base.iter().chain(changes));
    let faults = Setup::read(&entries).err().unwrap_or_default();
    assert!(faults.iter().all(|fault| fault.remedy.to_string().ends_with('.')), "each says what to do: {faults:?}");
    faults.into_iter().map(|fault| (fault.path, fault.allowed.to_string())).collect()
}

fn told(base: Changes, cases: &[(Changes, &str, &str)]) {
    assert_eq!(faults(base, &[]), [], "without changes all is well");
    for (changes, path, allowed) in cases {
        let wanted = [((*path).into(), (*allowed).into())];
        assert_eq!(faults(base, changes), wanted, "{changes:?}");
    }
}

#[test]
fn a_grip_that_cannot_be_is_told_at_the_grip() {
    told(
        &[],
        &[
            (&[("grip.lower_deviation", "0.1 mm")], "grip.lower_deviation", "at most 0 mm"),
            (&[("grip.tail", "centre")], "grip.tail", "no tail support"),
            (
                &[
                    ("jaws.length", "11 mm"),
                    ("jaws.width", "2 mm"),
                    ("grip.side", "inside"),
                    ("part.bore_diameter", "4.9 mm"),
                ],
                "part.bore_diameter",
                "a bore of at least 5 mm for an inside grip",
            ),
        ],
    );
    // A grip longer than the part is told once: where the tool may be then is not told from it.
    told(&[], &[(&[("grip.length", "40 mm"), ("jaws.height", "80 mm")], "grip.length", "at most 30 mm")]);
}

#[test]
fn jaws_that_cannot_be_are_told_at_the_size_that_is_wrong() {
    told(
        &[],
        &[
            (&[("jaws.length", "5 mm")], "jaws.length", "more than 10 mm"),
            (&[("jaws.height", "10 mm")], "grip.length", "less than 10 mm"),
            (&[("jaws.width", "300 mm")], "jaws.width", "less than 160 mm"),
            (&[("grip.side", "inside"), ("jaws.length", "200 mm")], "jaws.length", "at most 80 mm"),
            (&[("jaws.kind", "wide"), ("jaws.angle", "179 deg")], "jaws.angle", "2.86° to 177.62°"),
        ],
    );
}

#[test]
fn a_chuck_that_contradicts_itself_is_told() {
    told(
        &[],
        &[
            (
                &[("run.pressures", "two"), ("run.pressure", "1 MPa"), ("run.finish_pressure", "2 MPa")],
                "run.finish_pressure",
                "at most 1 MPa",
            ),
            (
                &[("chuck.spin_share_least", "0.9"), ("chuck.spin_share_most", "0.5")],
                "chuck.spin_share_least",
                "at most 0.5",
            ),
            (&[("cylinder.rod", "200 mm"), ("cylinder.bore", "120 mm")], "cylinder.rod", "at most 114 mm"),
        ],
    );
    told(
        GAUGE,
        &[
            (&[("gauge.1.pressure", "1.04 MPa")], "gauge.1.pressure", "readings at two pressures at least 5 % apart"),
            (
                &[
                    ("spun.0.speed", "1000 rpm"),
                    ("spun.0.grip", "40 kN"),
                    ("spun.1.speed", "1190 rpm"),
                    ("spun.1.grip", "39 kN"),
                ],
                "spun.1.speed",
                "readings at two speeds at least 20 % apart",
            ),
        ],
    );
}

#[test]
fn a_cut_beside_the_part_and_a_material_without_figures_are_told() {
    told(
        &[],
        &[
            (&[("part.material", "ptfe")], "part.cutting_resistance", "a figure of your own"),
            (
                &[("part.material", "ptfe"), ("part.cutting_resistance", "300 MPa")],
                "part.chip_exponent",
                "a figure of your own",
            ),
            (&[("cuts.0.diameter", "400 mm")], "cuts.0.diameter", "at most 160 mm"),
            (&[("cuts.0.diameter", "10 mm")], "cuts.0.diameter", "more than 0 and at least 140 mm"),
            (&[("cuts.0.kind", "drilling"), ("cuts.0.drill", "170 mm")], "cuts.0.drill", "at most 160 mm"),
            (&[("cuts.0.distance", "40 mm")], "cuts.0.distance", "-20 mm to 10 mm"),
        ],
    );
}

#[test]
fn steps_that_make_no_part_are_told_at_the_step() {
    told(
        STEPS,
        &[
            (
                &[("steps.1.length", "0.1 mm"), ("steps.1.outside", "300 mm"), ("steps.1.bore", "70 mm")],
                "steps.1.length",
                "at least 1/2000 of the diameter",
            ),
            (&[("steps.1.bore", "120 mm")], "steps.1.bore", "a wall of at least 0.333 mm, 1/150 of the outside radius"),
            (&[("steps.1.outside", "50 mm"), ("steps.1.bore", "20 mm")], "steps.1.bore", "metal shared with step 1"),
            (&[("grip.start", "60 mm")], "grip.start", "at most 49.95 mm"),
            (
                &[("steps.1.outside", "120 mm"), ("grip.length", "40 mm")],
                "grip.length",
                "a length over which the gripped diameter stays 100 mm",
            ),
            (
                &[
                    ("steps.0.outside", "110 mm"),
                    ("grip.start", "30 mm"),
                    ("grip.length", "15 mm"),
                    ("cuts.0.distance", "2 mm"),
                    ("jaws.step", "5 mm"),
                ],
                "jaws.step",
                "at most 0 mm",
            ),
            (&[("surfaces.0.to", "70 mm")], "surfaces.0.to", "at most 50 mm"),
            (&[("surfaces.0.from", "20 mm"), ("surfaces.0.to", "10 mm")], "surfaces.0.from", "at most 10 mm"),
        ],
    );
    // A plain ring has no steps: the same is told at its own sizes.
    let ring: Changes =
        &[("part.length", "1 mm"), ("part.outside_diameter", "2000 mm"), ("part.bore_diameter", "1900 mm")];
    assert_eq!(faults(&[], ring), [("part.length".into(), "at least 1/2000 of the diameter".into())], "a sheet");
}
