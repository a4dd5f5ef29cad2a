//! Units, typed quantities and materials.

use holdround_core::materials;
use holdround_core::quantity::{Kind, Measure, UNITS};
use serde::Deserialize;

use super::engine::{Told, told};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Named {
    kind: String,
    symbol: String,
}

pub(super) fn unit(given: Named) -> Told {
    let kind = kind_called(&given.kind)?;
    let unit = UNITS.iter().find(|unit| unit.kind == kind && unit.symbol == given.symbol);
    told([("in SI", unit.ok_or(format!("no unit {}", given.symbol))?.factor)])
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Typed {
    kind: String,
    text: String,
}

pub(super) fn typed(given: Typed) -> Told {
    let measure = Measure::parse(kind_called(&given.kind)?, &given.text);
    told([("in SI", measure.map_err(|error| format!("{error:?}"))?.si)])
}

fn kind_called(name: &str) -> Result<Kind, String> {
    let found = UNITS.iter().map(|unit| unit.kind).find(|kind| format!("{kind:?}") == name);
    found.ok_or(format!("no kind {name}"))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct MaterialKey {
    id: String,
}

pub(super) fn material(given: MaterialKey) -> Told {
    let material = materials::find(&given.id).ok_or(format!("no material {}", given.id))?;
    let mut values = told([
        ("density", material.density.value),
        ("youngs_modulus", material.youngs_modulus.value),
        ("poissons_ratio", material.poissons_ratio.value),
    ])?;
    if let Some(figure) = material.yield_strength {
        values.insert("yield_strength".into(), figure.value);
    }
    if let Some(cutting) = material.cutting {
        values.insert("kc11".into(), cutting.specific_force.value);
        values.insert("mc".into(), cutting.exponent.value);
    }
    Ok(values)
}
