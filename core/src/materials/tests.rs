use super::*;
use alloc::collections::BTreeSet;

fn figures(material: &Material) -> impl Iterator<Item = Figure> {
    [material.density, material.youngs_modulus, material.poissons_ratio]
        .into_iter()
        .chain(material.yield_strength)
        .chain(material.cutting.into_iter().flat_map(|c| [c.specific_force, c.exponent]))
}

fn get(id: &str) -> &'static Material {
    find(id).unwrap_or_else(|| panic!("{id} is in the table"))
}

#[test]
fn there_are_enough_materials_and_their_keys_are_unique_kebab_case() {
    let keys: BTreeSet<_> = all().map(|m| m.id).collect();
    assert_eq!(keys.len(), all().count(), "no key occurs twice");
    assert!(keys.len() >= 30, "at least 30 materials, {} found", keys.len());
    for material in all() {
        let kebab = material.id.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
        assert!(kebab, "{} is in kebab case", material.id);
        assert!(!material.name.is_empty() && !material.designation.is_empty(), "{} is named", material.id);
        assert!(material.part || material.jaw, "{} is of some use", material.id);
    }
}

/// Bounds by family wide enough for any standard alloy of it, narrow enough to catch a slip of a
/// decimal or of a unit.
#[test]
fn every_figure_is_physically_plausible() {
    for material in all() {
        let (density, modulus) = match material.family {
            Family::Steel | Family::StainlessSteel | Family::ToolSteel => (7600.0..8100.0, 185e9..220e9),
            Family::GreyIron => (6900.0..7400.0, 60e9..145e9),
            Family::DuctileIron => (7000.0..7300.0, 160e9..180e9),
            Family::Aluminium => (2600.0..2850.0, 65e9..75e9),
            Family::Brass | Family::Bronze | Family::Copper => (7400.0..9000.0, 90e9..130e9),
            Family::Titanium => (4400.0..4600.0, 100e9..125e9),
            Family::Nickel => (8100.0..9000.0, 170e9..220e9),
            Family::Magnesium => (1700.0..1900.0, 40e9..47e9),
            Family::Plastic => (1000.0..2300.0, 0.3e9..5e9),
        };
        let id = material.id;
        assert!(density.contains(&material.density.value), "{id}: density {}", material.density.value);
        assert!(modulus.contains(&material.youngs_modulus.value), "{id}: modulus");
        assert!((0.25..0.47).contains(&material.poissons_ratio.value), "{id}: Poisson's ratio");
        if let Some(strength) = material.yield_strength {
            assert!((10e6..1500e6).contains(&strength.value), "{id}: yield strength");
            let strain = strength.value / material.youngs_modulus.value;
            assert!((0.0005..0.04).contains(&strain), "{id}: yield strain {strain}");
        } else {
            assert_eq!(material.family, Family::GreyIron, "{id}: only grey iron lacks a yield strength");
        }
        if let Some(c) = material.cutting {
            assert!((200e6..4000e6).contains(&c.specific_force.value), "{id}: kc1.1");
            assert!((0.10..0.35).contains(&c.exponent.value), "{id}: mc");
        }
    }
}

#[test]
fn every_source_resolves_and_is_used_or_kept_for_friction() {
    for (index, source) in Source::ALL.into_iter().enumerate() {
        assert!(source.reference().citation.len() > 10, "{source:?} has a citation");
        assert!(!Source::ALL[..index].contains(&source), "{source:?} is listed once");
        let of_material = all().flat_map(figures).any(|f| f.source == source);
        let of_friction = matches!(source, Source::GripFrictionTable | Source::Vdi3106Recalled);
        assert!(of_material || of_friction, "{source:?} is cited by some figure");
    }
    for used in all().flat_map(figures) {
        assert!(Source::ALL.contains(&used.source), "{:?} is listed", used.source);
    }
}

#[test]
fn soft_jaw_materials_of_the_trade_are_offered() {
    for id in [
        "structural-steel-a36",
        "carbon-steel-1045",
        "case-hardening-steel-16mncr5",
        "aluminium-6061",
        "aluminium-6082",
        "grey-iron-gjl-250",
        "brass-c36000",
        "acetal-pom",
        "polyamide-66",
    ] {
        assert!(get(id).jaw, "{id} is offered for jaws");
    }
}

/// Hibbeler, Mechanics of Materials, average properties: A36, 304, 6061-T6, Ti-6Al-4V.
/// Budynas and Nisbett, table A-20: 1018 and 1045 cold drawn.
#[test]
fn entries_match_the_textbook_tables_read() {
    let a36 = get("structural-steel-a36");
    assert_eq!(
        (a36.density.value, a36.youngs_modulus.value, a36.poissons_ratio.value, a36.yield_strength.map(|f| f.value)),
        (7850.0, 200e9, 0.32, Some(250e6)),
        "A36"
    );
    let aluminium = get("aluminium-6061");
    assert_eq!(
        (aluminium.density.value, aluminium.youngs_modulus.value, aluminium.yield_strength.map(|f| f.value)),
        (2710.0, 68.9e9, Some(255e6)),
        "6061-T6"
    );
    assert_eq!(get("stainless-steel-304").yield_strength.map(|f| f.value), Some(207e6), "304");
    assert_eq!(get("titanium-6al-4v").density.value, 4430.0, "Ti-6Al-4V");
    assert_eq!(get("low-carbon-steel-1018").yield_strength.map(|f| f.value), Some(370e6), "1018 cold drawn");
    assert_eq!(get("carbon-steel-1045").yield_strength.map(|f| f.value), Some(530e6), "1045 cold drawn");
}

/// Specific cutting force in kN/mm2 against feed at an entering angle of 45 degrees, read in a
/// public works standard for reckoning grip force; rows of St 42, St 50-2, St 70-2, 16MnCr5,
/// 42CrMo4, GE 240, EN-GJL-150 and EN-GJL-250. The table is rounded to 0.05, so 4 % is its own
/// coarseness at the low end.
#[test]
fn compared_kienzle_figures_reproduce_the_table_read() {
    let feeds = [0.16, 0.25, 0.40, 0.63, 1.0, 1.6];
    let rows = [
        ("structural-steel-s235", [2.60, 2.40, 2.20, 2.05, 1.90, 1.80]),
        ("structural-steel-e295", [3.50, 3.10, 2.75, 2.45, 2.15, 1.95]),
        ("structural-steel-e360", [4.35, 3.80, 3.30, 2.90, 2.50, 2.20]),
        ("case-hardening-steel-16mncr5", [3.75, 3.30, 2.95, 2.60, 2.30, 2.05]),
        ("alloy-steel-42crmo4", [4.35, 3.90, 3.45, 3.10, 2.75, 2.45]),
        ("cast-steel-ge240", [2.30, 2.10, 1.95, 1.80, 1.70, 1.60]),
        ("grey-iron-gjl-150", [1.50, 1.35, 1.20, 1.10, 1.00, 0.90]),
        ("grey-iron-gjl-250", [2.05, 1.80, 1.60, 1.45, 1.30, 1.15]),
    ];
    for (id, table) in rows {
        let Some(c) = get(id).cutting else { panic!("{id} has cutting figures") };
        assert_eq!(c.specific_force.source, Source::KienzleCompared, "{id}: cited as compared");
        for (feed, read) in feeds.into_iter().zip(table) {
            let thickness_mm = feed * core::f64::consts::FRAC_1_SQRT_2;
            let kc = c.specific_force.value * libm::pow(thickness_mm, -c.exponent.value);
            let error = kc / (read * 1e9) - 1.0;
            assert!(error.abs() < 0.04, "{id} at feed {feed}: {kc:.3e} against {read}, {error:.3}");
        }
    }
}
