//! Use the jaws again as they are, or recut them: answered from the record and the set-up on hand.

use super::Record;
use crate::quantity::{Kind, Measure};
use crate::recut::{Outlook, needed_stock, stock_per_side};
use crate::setup::part_inputs::GRIP_LENGTH;
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
    /// Whether nothing need be cut where every jaw goes back as before: what the set-up says once that is answered.
    pub as_they_are: bool,
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
/// assert!(!judged.as_they_are);
/// assert_eq!(judged.outlook, Outlook::TooLarge, "an outside grip bored 0.5 mm too large lacks metal");
/// ```
#[must_use]
pub fn reuse(record: &Record, present: &Entries) -> Option<Reuse> {
    let setup = Setup::read(&record.taken_over(present, Some(true))).ok()?;
    let back = setup.placing.recut.as_ref()?;
    let bored = back.standing?;
    let wanted = 2.0 * setup.bored_radius();
    let stock = stock_per_side(setup.grip.side, bored, wanted);
    let (other_chuck, other_tooth) = (record.other_chuck(present), record.other_tooth(present));
    let other_side = record.setup().is_some_and(|then| differs(&then, present, &["grip.side"]));
    let other = other_chuck || other_tooth || other_side;
    Some(Reuse {
        other_chuck,
        other_tooth,
        other_side,
        as_they_are: !other && setup.reuses_jaws() == Some(true),
        other_pressure: record.other_pressure(setup.pressure.value),
        wanted,
        bored,
        on_size: libm::fabs(bored - wanted) <= back.tolerance,
        stock,
        outlook: Outlook::of(stock, needed_stock(&back.old, setup.jaws.taper.value), back.stock),
    })
}

impl Record {
    /// The set-up `present` with these jaws coming back in it, `as_before` or not where that is answered: their
    /// diameter and taper as last bored, and the depth. Jaws that go back as before grip with the taper they have, and as they were
    /// pressed when it was bored. What was measured on other jaws goes.
    #[must_use]
    pub fn taken_over(&self, present: &Entries, as_before: Option<bool>) -> Entries {
        let mut entries = present.clone();
        entries.set("recut.jaws", "bored");
        for path in ["recut.as_before", "recut.runout", "recut.damage", "recut.metal", "recut.depth"] {
            entries.unset(path);
        }
        if let Some(as_before) = as_before {
            entries.set("recut.as_before", if as_before { "yes" } else { "no" });
        }
        // As deep as the set-up had them that they were bored for.
        if let Some(then) = self.setup() {
            entries.set("recut.depth", then.text_or_default(GRIP_LENGTH.path, &GRIP_LENGTH));
        }
        let Some(boring) = self.last_boring() else { return entries };
        let mut take = |path: &str, name: &str| {
            let text = boring.get(name);
            if !text.is_empty() {
                entries.set(path, text);
            }
        };
        take("recut.standing", "diameter");
        take("recut.taper", "taper");
        if as_before == Some(true) {
            take("jaws.taper", "taper");
            if self.pressed().is_some() {
                take("jaws.boring_pressure", "pressure");
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

    /// The pressure of the last boring, Pa. It is read as it was written; without a number in it nothing is known.
    fn pressed(&self) -> Option<f64> {
        Measure::parse(Kind::Pressure, self.last_boring()?.get("pressure")).ok().map(|pressure| pressure.si)
    }

    fn other_pressure(&self, wanted: f64) -> bool {
        self.pressed().is_some_and(|bored| libm::fabs(bored - wanted) > 1e-3 * wanted)
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
