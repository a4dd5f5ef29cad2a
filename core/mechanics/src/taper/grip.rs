//! Bored and tapered jaws on the part, the taper that cancels their opening, and the one that evens the pressure.

use alloc::vec::Vec;
use core::fmt;

use super::bluing::{Marked, reach};
use super::pressings::Pressings;
use super::root::rising;
use crate::contact::{Contact, ContactError, Face, Gap};
use crate::jaw_spring::JawColumn;
use crate::text::Text;

/// An end of the face that bears less than this share of what the other does keeps its blue. Our own value.
const BARE: f64 = 0.1;
/// How near a taper is sought, m.
const FINE: f64 = 1e-7;
/// How far within the tapers that bear at both ends one is kept, as a share of what lies between them: neither bluing
/// nor feelers tell it nearer. Our own value.
const WITHIN: f64 = 0.25;
/// The steps in which a force for bluing is sought, and the least, as shares of the grip's. Our own values.
const SOFTER: f64 = 0.85;
const SOFTEST: f64 = 0.1;

/// Why no taper can be told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TaperError {
    /// The contact has no answer.
    Contact(ContactError),
    /// No taper makes the jaws bear evenly.
    NoTaper,
    /// A reading (from 0) cannot be reached with any tilt: its gap is smaller than the bored size alone leaves.
    Reading(usize),
    /// A reading (from 0) is rubbed blank at one end, over the whole face.
    Whole(usize),
    /// A reading contradicts those before it.
    Contradiction(usize),
    /// Up to this reading they ask for a chuck stiffer than rigid.
    Rigid(usize),
    /// Up to this reading they ask for a chuck more than thirty times softer than thought.
    Loose(usize),
    /// This reading bears at the tip only though the jaws were cut straight: less metal there is no taper.
    Straight(usize),
    /// Ring and part lean the jaws nearly alike: no reading tells how stiff the chuck is.
    Blind,
}

impl From<ContactError> for TaperError {
    fn from(error: ContactError) -> Self {
        Self::Contact(error)
    }
}

impl From<&TaperError> for Text {
    fn from(error: &TaperError) -> Self {
        let (reading, says) = match error {
            TaperError::Contact(error) => return error.into(),
            TaperError::NoTaper => (None, "No taper makes these jaws bear evenly."),
            TaperError::Reading(at) => {
                (Some(at), "shows less gap than the bored diameter alone must leave. Check that diameter.")
            }
            TaperError::Whole(at) => (
                Some(at),
                "is rubbed blank as far as the face bears, which is the bore without groove and chamfer: then it bears at both ends. Check the length.",
            ),
            TaperError::Contradiction(at) => (
                Some(at),
                "contradicts those before it: no stiffness of the chuck explains them all. Check that jaws, screws and seat were the same, and read again.",
            ),
            TaperError::Rigid(at) => (
                Some(at),
                "would need a chuck stiffer than rigid: something else than tilt closes the tip. Check the taper as cut, and the ring's height.",
            ),
            TaperError::Loose(at) => (
                Some(at),
                "would need a chuck thirty times softer than thought: look for chips under a jaw, loose screws or a worn guideway.",
            ),
            TaperError::Straight(at) => (
                Some(at),
                "shows contact at the tip only on jaws that were cut straight, and less metal at the tip is no taper to bore. See whether the lathe itself turns a taper; put the boring ring lower, bore at less pressure, or grip at less.",
            ),
            TaperError::Blind => (
                None,
                "Ring and part lean the jaws nearly alike, so that bearing does not tell how stiff the chuck is; the next cut does not need it.",
            ),
        };
        match reading {
            Some(at) => Self::of("Reading {} {}").with(at + 1).with(says),
            None => Self::Words(says),
        }
    }
}

impl fmt::Display for TaperError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for TaperError {}

/// The taper to bore, m per side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// What to bore. Negative only where the ring leans the jaws so much more than the part will that straight ones
    /// would not bear at both ends.
    pub taper: f64,
    /// What would cancel the jaws' own opening: the same, unless one end would then not bear or it is negative.
    pub lean: f64,
    /// The tapers between which bluing shows at both ends.
    pub unseen: [f64; 2],
}

/// An end of the face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// At the seat.
    Base,
    /// At the front.
    Tip,
}

/// Bored jaws closing on a part at rest.
#[derive(Clone, Copy, Debug)]
pub struct Grip<'a> {
    /// One jaw's face on the part.
    pub face: &'a Face<'a>,
    /// The jaw along its height.
    pub column: &'a JawColumn,
    /// Heights of the face's points above the serrations, m, from base to tip.
    pub heights: &'a [f64],
    /// Height of the face's base above the serrations, m.
    pub base: f64,
    /// Depth of the bore, over which a taper is counted, m.
    pub length: f64,
    /// Heights above the serrations between which the face bears, m.
    pub bears: [f64; 2],
    /// Radius the jaws are bored to at the tip, less that of the part, m.
    pub larger: f64,
    /// Force of one jaw on the part, N.
    pub force: f64,
    /// Force of one jaw on the boring ring, N, while it was bored.
    pub ring_force: f64,
    /// Height of the ring above the serrations, m.
    pub ring_height: f64,
    /// Tilt stiffness of the master jaw in `column`, N m/rad.
    pub tilt: f64,
    /// Depth below the serrations about which it tilts, m.
    pub tilt_depth: f64,
    /// What was pressed so far.
    pub pressings: &'a Pressings,
}

impl Grip<'_> {
    /// Height of the middle of what bears.
    pub(super) fn middle(&self) -> f64 {
        f64::midpoint(self.bears[0], self.bears[1])
    }

    fn gap(&self, taper: f64) -> Gap {
        let bored = self.column.bored_relief(self.ring_height, self.ring_force, self.heights);
        let relief: Vec<f64> = self
            .heights
            .iter()
            .zip(&bored)
            .map(|(height, bored)| bored + taper * (1.0 - ((height - self.base) / self.length).clamp(0.0, 1.0)))
            .collect();
        // Where the taper opens toward the tip, the gap is counted from the base.
        Gap { larger: self.larger, relief }
    }

    /// The jaws with `taper` (m, per side) pressed on the part.
    ///
    /// # Errors
    /// [`TaperError::Contact`].
    pub fn press(&self, taper: f64) -> Result<Contact, TaperError> {
        Ok(self.pressings.press(taper, |like| self.face.press_from(self.force, &self.gap(taper), like))?)
    }

    /// Height above the serrations at which the force of a jaw acts, m.
    #[must_use]
    pub fn centre(&self, contact: &Contact) -> f64 {
        let along = self.face.force_along(contact);
        let moment: f64 = along.iter().zip(self.heights).map(|(force, height)| force * height).sum();
        moment / along.iter().sum::<f64>()
    }

    /// What a feeler meets in the middle of the jaw at its tip, m.
    #[must_use]
    pub fn tip_gap(&self, contact: &Contact) -> f64 {
        self.face.gap_along(contact).last().copied().unwrap_or(0.0)
    }

    /// How far the jaws open at the tip against the base when the part takes the ring's place, m per side:
    /// `F (c(tip) - c(base)) - F_b (c(tip, ring) - c(base, ring))`, `c` of the grip being its mean over the face.
    ///
    /// It is the lean of jaw and master jaw under an evenly loaded face; the part's own give is no part of it.
    #[must_use]
    pub fn lean(&self) -> f64 {
        let tip = self.base + self.length;
        let between = |height: f64| self.column.give(tip, height) - self.column.give(self.base, height);
        // Gauss's three points are exact for the column's cubic within the face.
        let [from, to] = self.bears;
        let out = (to - from) / 2.0 * crate::sqrt(0.6);
        let middle = self.middle();
        let mean = (5.0 * between(middle - out) + 8.0 * between(middle) + 5.0 * between(middle + out)) / 18.0;
        self.force * mean - self.ring_force * between(self.ring_height)
    }

    /// The taper to bore: what cancels the jaws' own opening, so that their face stands along the axis again under the
    /// grip. Where the part gives so unevenly that one end would bear hardly or not at all, it stops where both do,
    /// or at straight: a taper is there for what the jaws give. Where straight jaws bear at both ends, it is not less.
    ///
    /// # Errors
    /// [`TaperError::NoTaper`] or [`TaperError::Contact`].
    pub fn aim(&self) -> Result<Aim, TaperError> {
        let lean = self.lean();
        let [from, to] = self.unseen(lean)?;
        let within = WITHIN * (to - from);
        let kept = lean.max(from + within).min(to - within);
        let straight = kept < 0.0 && (lean >= 0.0 || to >= 0.0);
        Ok(Aim { taper: if straight { 0.0 } else { kept }, lean, unseen: [from, to] })
    }

    /// The taper, m per side, with which the jaws press as hard on the outer half of the face as on the inner one.
    /// It differs from [`Self::aim`] by the part's own give, which is not alike along the face.
    ///
    /// # Errors
    /// [`TaperError::NoTaper`] or [`TaperError::Contact`].
    pub fn even_taper(&self) -> Result<f64, TaperError> {
        let middle = self.middle();
        let [from, to] = self.bears;
        let found = rising(self.lean(), 5e-6, FINE, &mut |taper| {
            let contact = self.press(taper)?;
            let off = self.centre(&contact) - middle;
            // Nearer than a thousandth of the face is even.
            Ok(if libm::fabs(off) < 1e-3 * (to - from) { 0.0 } else { off })
        })?;
        found.ok_or(TaperError::NoTaper)
    }

    /// Force on the last row of the face at the base and at the tip, N.
    fn ends(&self, contact: &Contact) -> [f64; 2] {
        let along = self.face.force_along(contact);
        [along.first(), along.last()].map(|end| end.copied().unwrap_or(0.0))
    }

    /// The tapers, m per side, between which bluing shows at both ends, sought from `near`.
    fn unseen(&self, near: f64) -> Result<[f64; 2], TaperError> {
        let end = |start: f64, base: f64, tip: f64| {
            let found = rising(start, 5e-6, FINE, &mut |taper| {
                let contact = self.press(taper)?;
                let [at_base, at_tip] = self.ends(&contact);
                Ok(tip * at_tip - base * at_base)
            })?;
            found.ok_or(TaperError::NoTaper)
        };
        Ok([end(near - 1e-5, BARE, 1.0)?, end(near + 1e-5, 1.0, BARE)?])
    }

    /// The greatest force, N, no more than that of the grip, at which bluing shows jaws at both ends with `right` taper
    /// and at one end only where it is `off` by so much (m per side): the less they are pressed, the less they give.
    /// Sought in steps, `SOFTER` apart; none within `SOFTEST` of the grip's.
    ///
    /// # Errors
    /// [`TaperError::Contact`].
    pub fn blued(&self, right: f64, off: f64) -> Result<Option<f64>, TaperError> {
        let mut force = self.force;
        let looks = [(right - off, Marked::Base), (right + off, Marked::Tip), (right, Marked::Even)];
        while force > SOFTEST * self.force {
            let grip = Self { force, ..*self };
            let mut shown = true;
            for (taper, wanted) in looks {
                shown = shown && grip.marked(&grip.press(taper)?) == wanted;
            }
            if shown {
                return Ok(Some(force));
            }
            force *= SOFTER;
        }
        Ok(None)
    }

    /// Where bluing marks the face.
    pub(super) fn marked(&self, contact: &Contact) -> Marked {
        let [base, tip] = self.ends(contact);
        if tip < BARE * base {
            Marked::Base
        } else if base < BARE * tip {
            Marked::Tip
        } else {
            Marked::Even
        }
    }

    /// Where bluing rubs off, for each point as in [`Contact::pressure`]: where the face is pressed, unless that height
    /// bears less than a tenth of what the end that bears more does, for its length.
    #[must_use]
    pub fn rubbed(&self, contact: &Contact) -> Vec<bool> {
        let along = self.along(contact);
        let most = along.first().copied().unwrap_or(0.0).max(along.last().copied().unwrap_or(0.0));
        let borne = along.iter().cycle().map(|bears| *bears >= BARE * most);
        contact.pressure.iter().zip(borne).map(|(pressure, borne)| *pressure > 0.0 && borne).collect()
    }

    /// What the face bears at each height, N/m.
    fn along(&self, contact: &Contact) -> Vec<f64> {
        let along = self.face.force_along(contact).into_iter().enumerate();
        along.map(|(at, force)| force / reach(self.heights, at)).collect()
    }

    /// How far from one end the face is rubbed blank, m: to where it bears [`BARE`] of what it does at that end.
    pub(super) fn band(&self, contact: &Contact, from: End) -> f64 {
        let along = self.along(contact);
        let mut rows: Vec<(f64, f64)> = self.heights.iter().copied().zip(along).collect();
        if from == End::Tip {
            rows.reverse();
        }
        let Some(&(end, most)) = rows.first() else { return 0.0 };
        let bare = rows.windows(2).find_map(|pair| {
            let [(near, bears), (far, bare)] = [pair[0], pair[1]].map(|(height, force)| (height, force - BARE * most));
            (bare < 0.0).then(|| near + (far - near) * bears / (bears - bare))
        });
        libm::fabs(bare.or(rows.last().map(|row| row.0)).unwrap_or(end) - end)
    }

    /// The taper with which the face is rubbed blank over `length` m `from` one end, sought from `near`, where it just
    /// is not so over all of it; none where it is never so short.
    pub(super) fn taper_for_band(&self, from: End, length: f64, near: f64) -> Result<Option<f64>, TaperError> {
        let sign = if from == End::Base { 1.0 } else { -1.0 };
        // Beyond the end of what shows at one end only, the blank band is as long as the face.
        rising(near - sign * 1e-5, 5e-6, FINE, &mut |taper| {
            let contact = self.press(taper)?;
            let off = sign * (self.band(&contact, from) - length);
            Ok(if libm::fabs(off) < 1e-5 { 0.0 } else { off })
        })
    }

    /// The taper with which a feeler of `gap` m just goes in at the tip; none where the gap is never so small.
    pub(super) fn taper_for_gap(&self, gap: f64, near: f64) -> Result<Option<f64>, TaperError> {
        rising(near - gap, 5e-6, FINE, &mut |taper| {
            let contact = self.press(taper)?;
            let off = gap - self.tip_gap(&contact);
            Ok(if libm::fabs(off) < 1e-7 { 0.0 } else { off })
        })
    }

    /// How much the lean of a unit tilt flexibility (1 rad/(N m)) opens the tip against the base, N m^2: moment of
    /// the part's force less that of the ring's, times the length of the face.
    pub(super) fn lever(&self, centre: f64) -> f64 {
        let arm = |height: f64| height + self.tilt_depth;
        self.length * (self.force * arm(centre) - self.ring_force * arm(self.ring_height))
    }
}
