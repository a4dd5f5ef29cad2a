//! What the desk tells a jaw record: the jaws, and a boring of them.

use holdround_core::quantity::{Kind, shown};
use holdround_core::record::{BORING_FIELDS, Fields, Record, put};
use holdround_core::setup::jaw_inputs;
use web_sys::HtmlInputElement;

use super::desk::Desk;
use super::stamp::{new_id, now};
use crate::root;

/// A record of the jaws on the desk, and its id.
pub(super) fn of_desk(desk: &Desk) -> (String, Record) {
    let (now, entries) = (now(), &desk.entries);
    let mut record = Record::default();
    let value = |finding: &str| {
        let (_, findings) = desk.good.as_ref()?;
        let finding = findings.get(finding)?;
        finding.value.as_ref().ok().map(|value| shown(*value, desk.units.unit(finding.kind)))
    };
    let name = entries.get("job.name").unwrap_or("Jaws");
    let material = entries.text_or_default(jaw_inputs::JAW_MATERIAL.path, &jaw_inputs::JAW_MATERIAL);
    record.set("name", name, &now);
    let material = holdround_core::materials::find(material).map_or(material, |material| material.name);
    record.set("material", material, &now);
    record.set("tooth", &value("stroke.tooth").unwrap_or_default(), &now);
    record.set("recuts", &value("recut.left").unwrap_or_default(), &now);
    record.set("link", &entries.to_link(), &now);
    (new_id(), record)
}

/// What would be written of a boring today, as the set-up on the desk has it.
pub(crate) fn boring_of_desk(desk: &Desk) -> Fields {
    let mut boring = Fields::new();
    let entries = &desk.entries;
    let date: String = now().chars().take(10).collect();
    put(&mut boring, "date", &date);
    let gripped = || {
        let (setup, _) = desk.good.as_ref()?;
        Some(shown(2.0 * setup.gripped_radius(), desk.units.unit(Kind::Length)))
    };
    let diameter = entries.get("jaws.bored_diameter").map(str::to_owned).or_else(gripped);
    put(&mut boring, "diameter", &diameter.unwrap_or_default());
    let pressure = entries.text_or_default(jaw_inputs::PRESSURE.path, &jaw_inputs::PRESSURE);
    put(&mut boring, "pressure", entries.get("jaws.boring_pressure").unwrap_or(pressure));
    put(&mut boring, "taper", entries.text_or_default(jaw_inputs::TAPER.path, &jaw_inputs::TAPER));
    boring
}

/// The boring as it stands in the fields of the record `id`.
pub(super) fn typed_boring(id: &str) -> Record {
    let mut boring = Record::default();
    for field in BORING_FIELDS {
        let typed = root::by_id_as::<HtmlInputElement>(&format!("boring-{}-{id}", field.key));
        boring.set(field.key, typed.map(|typed| typed.value()).unwrap_or_default().trim(), &now());
    }
    boring
}
