//! Jobs drawn at random from the declarations of the inputs.

use holdround_core::materials;
use holdround_core::quantity::{Kind, Measure, UNITS, Unit};
use holdround_core::setup::{Entries, Form, INPUTS, Input, MaterialUse};

/// How far from its default an input is drawn.
#[derive(Clone, Copy, Debug)]
pub enum Spread {
    /// By a factor of two at most: about half of such jobs are valid.
    Near,
    /// Over the whole range declared.
    Far,
}

/// Numbers from 0 to 1 that [`job`] draws from.
pub const DRAWS: usize = 240;

/// Places in the draws that stand for no input by itself.
const READINGS: usize = DRAWS - 6;

/// The job that `draws` picks: each input in turn takes one of them.
///
/// What depends on another input is drawn as a share of it, or hardly any job would be valid.
#[must_use]
pub fn job(draws: &[f64], spread: Spread) -> Entries {
    let mut entries = Entries::default();
    let inputs = INPUTS.iter().flat_map(|group| group.inputs.iter().copied()).filter(|input| is_drawn(input.path));
    for (input, &draw) in inputs.zip(draws) {
        let inside = entries.get("grip.side") == Some("inside");
        let text = match (input.form, share_of(input.path, inside)) {
            (Form::Quantity { optional: true, .. }, _) if draw < 0.7 => continue,
            (Form::Quantity { kind, .. }, Some((of, least, most))) => {
                written(kind, si(&entries, of) * (least + draw * (most - least)))
            }
            (Form::Quantity { kind, least, most, .. }, None) => {
                written(kind, drawn(input, kind, (least, most), draw, spread))
            }
            // Else too few parts were hollow.
            (Form::Choice(_), _) if input.path == "grip.tail" && draw < 0.8 => "none".to_string(),
            (Form::Choice(choices), _) => pick(choices, draw).key.to_string(),
            (Form::Material(wanted), _) => material(wanted, draw).to_string(),
            (Form::Text(_), _) => continue,
        };
        entries.set(&input.at(0), &text);
        // A centre needs a solid end, which hardly any part drawn has.
        if input.path == "grip.tail" && text == "centre" && !inside {
            entries.set("part.bore_diameter", "0 mm");
        }
    }
    for (at, reading) in draws[READINGS..].chunks(2).enumerate() {
        let pressure = 1.0 + at as f64 + 0.5 * reading[0];
        entries.set(&format!("gauge.{at}.pressure"), &format!("{pressure} MPa"));
        entries.set(&format!("gauge.{at}.grip"), &format!("{} kN", 15.0 * pressure + 5.0 * reading[1]));
    }
    entries
}

/// Readings of a gauge are drawn together, and steps make a part together or hardly ever. Teeth and rings are counted
/// in whole numbers.
fn is_drawn(path: &str) -> bool {
    !["part.shape", "stroke.tooth", "ring.used", "indicator.stations"].contains(&path)
        && !["gauge", "spun", "dial", "steps", "surfaces", "rings", "readings"]
            .iter()
            .any(|list| path.starts_with(list))
}

/// The input that `path` is drawn as a share of, and the ends of that share.
fn share_of(path: &str, inside: bool) -> Option<(&'static str, f64, f64)> {
    Some(match path {
        "part.bore_diameter" => ("part.outside_diameter", 0.3, 0.97),
        "grip.length" => ("part.length", 0.25, 1.0),
        "cuts.*.diameter" => ("part.outside_diameter", 0.97, 1.0),
        "cuts.*.distance" => ("part.length", -0.2, 0.0),
        "jaws.length" => ("part.outside_diameter", 0.15, 0.5),
        "jaws.height" => ("grip.length", 1.05, 4.0),
        "jaws.bored_diameter" if inside => ("part.bore_diameter", 0.999, 1.001),
        "jaws.bored_diameter" => ("part.outside_diameter", 0.999, 1.001),
        "grip.upper_deviation" => ("part.outside_diameter", 0.0, 3e-4),
        "grip.lower_deviation" => ("part.outside_diameter", -3e-4, 0.0),
        "blank.near_screw" => ("jaws.length", 0.2, 0.6),
        "blank.far_screw" => ("jaws.length", 0.5, 0.9),
        "recut.standing" if inside => ("part.bore_diameter", 0.99, 1.01),
        "recut.standing" => ("part.outside_diameter", 0.99, 1.01),
        "cylinder.rod" => ("cylinder.bore", 0.0, 0.9),
        _ => return None,
    })
}

fn si(entries: &Entries, path: &str) -> f64 {
    let kind = Kind::Length;
    entries.get(path).and_then(|text| Measure::parse(kind, text).ok()).map_or(0.0, |measure| measure.si)
}

fn drawn(input: &Input, kind: Kind, (least, most): (f64, f64), draw: f64, spread: Spread) -> f64 {
    let default = Measure::parse(kind, input.default).map_or(0.0, |measure| measure.si);
    let (low, high) = match spread {
        Spread::Near if default > 0.0 => ((default / 2.0).max(least), (default * 2.0).min(most)),
        Spread::Near => (least, most / 2.0),
        Spread::Far => (least, most),
    };
    if low > 0.0 { low * libm::pow(high / low, draw) } else { low + draw * (high - low) }
}

fn written(kind: Kind, si: f64) -> String {
    let unit = kind.bare_unit();
    format!("{} {}", unit.from_si(si), unit.symbol)
}

fn pick<T>(from: &[T], draw: f64) -> &T {
    &from[((draw * from.len() as f64) as usize).min(from.len() - 1)]
}

fn material(wanted: MaterialUse, draw: f64) -> &'static str {
    let offered: Vec<_> = materials::all()
        .filter(|material| match wanted {
            MaterialUse::Part => material.part,
            MaterialUse::Jaw => material.jaw,
        })
        .collect();
    pick(&offered, draw).id
}

/// The same job with every quantity written in the last unit of its kind instead, such as inch for millimetre.
#[must_use]
pub fn in_other_units(entries: &Entries) -> Entries {
    let mut other = entries.clone();
    for (path, text) in entries.iter() {
        let Some(kind) = holdround_core::setup::declared(path).and_then(Input::kind) else { continue };
        let Ok(measure) = Measure::parse(kind, text) else { continue };
        let unit = other_unit(kind, measure.unit);
        other.set(path, &format!("{} {}", unit.from_si(measure.si), unit.symbol));
    }
    other
}

fn other_unit(kind: Kind, unit: &'static Unit) -> &'static Unit {
    use holdround_core::quantity::UnitSystem;
    let inch = kind.unit_in(UnitSystem::Inch);
    if inch.symbol == unit.symbol { UNITS.iter().rfind(|unit| unit.kind == kind).unwrap_or(unit) } else { inch }
}
