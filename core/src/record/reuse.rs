//! Use the jaws again as they are, or recut them: answered from the record and the set-up on hand.

use super::Record;
use crate::quantity::{Kind, Measure};
use crate::recut::{Outlook, needed_stock, stock_per_side};
use crate::setup::{Entries, Setup, every_input};

/// What the record says of a set of jaws for the set-up on hand. Lengths in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reuse {
    /// Whether the set-up has a chuck or cylinder of other figures than the one the jaws were bored on.
    pub other_chuck: bool,
    /// Whether the set-up names another tooth than the record.
    pub other_tooth: bool,
    /// Whether they were bored to grip on the other side: inside instead of outside, or the other way.
    pub other_side: bool,
    /// Whether they were bored under a pressure other than the one they are to grip with: a taper is right for one.
    pub other_pressure: bool,
    /// Diameter wanted now.
    pub wanted: f64,
    /// Diameter last bored.
    pub bored: f64,
    /// Whether that is near enough to be used without a cut, if chuck, teeth and order are the same.
    pub on_size: bool,
    /// Stock per side if they were mounted as before.
    pub stock: f64,
    /// How that stock stands to what cleans up.
    pub outlook: Outlook,
}

impl Reuse {
    /// Whether no recut is needed, provided that every jaw goes back on its master jaw of the same chuck.
    #[must_use]
    pub fn as_they_are(&self) -> bool {
        self.on_size && !self.other_chuck && !self.other_tooth && !self.other_side
    }
}

/// Judges the jaws of `record` for the set-up `present`; none if either cannot be read as far as it matters.
///
/// ```
/// use holdround_core::record::{Record, reuse};
/// use holdround_core::{recut::Outlook, setup::{Entries, Setup}};
/// let present = Entries::default();
/// let wanted = 2.0 * Setup::read(&present).unwrap().bored_radius();
/// let mut boring = Record::default();
/// boring.set("diameter", &format!("{} mm", wanted * 1e3 + 0.5), "2027-03-01T12:00:00.000Z");
/// let mut record = Record::default();
/// record.borings.put("b1".into(), boring);
/// let judged = reuse(&record, &present).unwrap();
/// assert!(!judged.as_they_are());
/// assert_eq!(judged.outlook, Outlook::TooLarge, "an outside grip bored 0.5 mm too large lacks metal");
/// ```
#[must_use]
pub fn reuse(record: &Record, present: &Entries) -> Option<Reuse> {
    let setup = Setup::read(&record.taken_over(present)).ok()?;
    let back = setup.placing.recut.as_ref()?;
    let bored = back.standing?;
    let wanted = 2.0 * setup.bored_radius();
    let stock = stock_per_side(setup.grip.side, bored, wanted);
    Some(Reuse {
        other_chuck: record.other_chuck(present),
        other_tooth: record.other_tooth(present),
        other_side: record.setup().is_some_and(|then| differs(&then, present, &["grip.side"])),
        other_pressure: record.other_pressure(setup.pressure.value),
        wanted,
        bored,
        on_size: libm::fabs(bored - wanted) <= back.tolerance,
        stock,
        outlook: Outlook::of(stock, needed_stock(&back.old, setup.jaws.taper.value), back.stock),
    })
}

impl Record {
    /// The set-up `present` with these jaws coming back in it: their diameter and taper as last bored. Whether they
    /// are mounted as before is left for the reader to say.
    #[must_use]
    pub fn taken_over(&self, present: &Entries) -> Entries {
        let mut entries = present.clone();
        entries.set("recut.jaws", "bored");
        if let Some(boring) = self.last_boring() {
            for (path, name) in [("recut.standing", "diameter"), ("recut.taper", "taper")] {
                let text = boring.get(name);
                if !text.is_empty() {
                    entries.set(path, text);
                }
            }
        }
        entries
    }

    /// The set-up the jaws were bored for.
    #[must_use]
    pub fn setup(&self) -> Option<Entries> {
        Entries::from_link(self.get("link")).ok()
    }

    fn other_chuck(&self, present: &Entries) -> bool {
        self.setup().is_some_and(|then| differs(&then, present, &["chuck.", "cylinder."]))
    }

    /// What the boring says is read as it was written; without a number in it nothing is known.
    fn other_pressure(&self, wanted: f64) -> bool {
        let text = self.last_boring().map_or("", |boring| boring.get("pressure"));
        Measure::parse(Kind::Pressure, text).is_ok_and(|bored| libm::fabs(bored.si - wanted) > 1e-3 * wanted)
    }

    fn other_tooth(&self, present: &Entries) -> bool {
        let (then, now) = (self.get("tooth").trim(), present.get("stroke.tooth").unwrap_or("").trim());
        !then.is_empty() && !now.is_empty() && then != now
    }
}

/// Whether what holds at any of the inputs that begin so, typed or assumed, is not the same in both.
fn differs(then: &Entries, now: &Entries, begins: &[&str]) -> bool {
    let mut inputs = every_input().filter(|input| begins.iter().any(|begins| input.path.starts_with(begins)));
    inputs.any(|input| then.text_or_default(input.path, input).trim() != now.text_or_default(input.path, input).trim())
}
