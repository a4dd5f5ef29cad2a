//! What waves in indicator readings mean, in shop words.

use alloc::format;
use alloc::string::String;

use crate::indicator::{Fit, Sight, Wave};
use crate::quantity::fixed;
use crate::setup::Indicator;
use crate::text::Text;

/// How often a wave goes round, as far as it means something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Goes {
    Once,
    Twice,
    OnceAJaw,
    TwiceAJaw,
}

pub(super) const SCATTERED: &str = "The readings scatter: a rough or dirty surface, a loose holder, or waves that so few stations cannot tell. Read again.";
pub(super) const GAUGED: &str =
    "The grip is read by a gauge. Lobes other than those worked out come from how the jaws bear or tilt: blue them.";
pub(super) const TURNED: &str = "The lobes stand the other way than these jaws press them. Check station 1, clamped or released, and the bored diameter.";

/// Ratio of measured to expected within which they are called alike.
const ALIKE: f64 = 1.3;

impl Goes {
    pub(super) fn of(order: usize, jaws: u32) -> Self {
        let jaws = jaws as usize;
        if order == 1 {
            Self::Once
        } else if order == jaws {
            Self::OnceAJaw
        } else if order == 2 {
            Self::Twice
        } else {
            Self::TwiceAJaw
        }
    }

    pub(super) fn id(self, key: &str) -> String {
        let id = match self {
            Self::Once => "offset",
            Self::Twice => "oval",
            Self::OnceAJaw => "lobing",
            Self::TwiceAJaw => "edge",
        };
        format!("indicator.{id}{key}")
    }

    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Once => "Off-centre, once round: centre from the axis",
            Self::Twice => "Oval, twice round, peak to valley",
            Self::OnceAJaw => "Lobes, once a jaw, peak to valley",
            Self::TwiceAJaw => "Edge bearing, twice a jaw, peak to valley",
        }
    }

    /// What is told of a wave of this height: the offset itself, else from peak to valley.
    pub(super) fn told(self, height: f64) -> f64 {
        if self == Self::Once { height } else { 2.0 * height }
    }
}

/// Why a wave is not told.
pub(super) fn unseen(stations: usize, order: usize, sight: Sight) -> Text {
    match sight {
        Sight::LooksLike(0) => Text::of("With {} stations, {} times round reads like nothing: every station stands at the same height of it. Read {} stations or more.").with(stations).with(order).with(2 * order + 1),
        Sight::LooksLike(seen) => Text::of("With {} stations, {} times round reads like {} times. Read {} stations or more.").with(stations).with(order).with(seen).with(2 * order + 1),
        _ => "The stations stand where this wave passes through nought. Set station 1 at the middle of jaw 1, or read more stations.".into(),
    }
}

/// Cause and remedy of one wave.
pub(super) fn cause(goes: Goes, wave: &Wave, engine: Option<&Wave>, near: usize, fit: &Fit, read: &Indicator) -> Text {
    if !wave.is_seen() {
        return "It does not stand out of its uncertainty: nothing to put right.".into();
    }
    match goes {
        Goes::Once => Text::of(
            "The dial shows twice this. Highest near station {}. Jaws bored off-centre, a jaw on the wrong tooth, or a chip under the part. Clean and clamp again with the part turned by one jaw: if the high place stays with the chuck, recut the jaws; if it goes with the part, the part was out before.",
        ).with(near).then(if is_wide(wave, read) { " So far off, it makes a false oval: centre it and read again." } else { "" }),
        Goes::Twice => Text::of(
            "Highest near station {} and opposite. The blank was oval or sprang after an earlier operation, or the jaws push unlike. Clamp with the part turned by a quarter: if the oval goes with it, rough and release it before finishing."
        ).with(near),
        Goes::OnceAJaw if stands_aside(wave, fit) => "The lobes do not stand at the jaws. They are from an earlier clamping, or station 1 is not where it was entered.".into(),
        Goes::OnceAJaw => Text::of("Squeezed by the jaws. Less pressure for the finishing cut, more wrap or pie jaws, or a plug inside.").then(beside(wave, engine)),
        Goes::TwiceAJaw => Text::of("The jaws bear on both edges (bored smaller than the part) or only in the middle (bored larger). Blue them, and bore them to the size of the part.").then(beside(wave, engine)),
    }
}

/// How a wave stands to the engine's.
fn beside(wave: &Wave, engine: Option<&Wave>) -> &'static str {
    let Some(engine) = engine else { return "" };
    let (measured, expected, unsure) = (wave.height(), engine.height(), wave.uncertainty);
    if measured > ALIKE * expected + unsure {
        " More than worked out: the jaws grip harder, bear on less, or the wall is thinner than entered."
    } else if measured < expected / ALIKE - unsure {
        " Less than worked out: the jaws grip less than entered, or bear better. Check the grip with a gauge before cutting."
    } else {
        " About as much as worked out."
    }
}

/// Whether lobes are highest neither in the middle of a jaw nor midway between, by more than their uncertainty.
fn stands_aside(wave: &Wave, fit: &Fit) -> bool {
    fit.wave(wave.order).is_some()
        && libm::fabs(wave.sin) > wave.uncertainty
        && libm::fabs(wave.sin) > libm::fabs(wave.cos)
}

/// Whether an offset makes a false oval that can be read: `e²/(2 R)` from peak to valley on any radius above 10 mm.
fn is_wide(wave: &Wave, read: &Indicator) -> bool {
    const LEAST_RADIUS: f64 = 0.01;
    wave.height() * wave.height() / (2.0 * LEAST_RADIUS) > read.resolution.value
}

/// What it means that a wave comes with the grip or is there without.
pub(super) fn parted(goes: Goes, key: &str, wave: &Wave) -> &'static str {
    if !wave.is_seen() {
        return "None that stands out of its uncertainty.";
    }
    match (goes, key) {
        (Goes::Once, ".squeezed") => {
            "The jaws push the part aside as they close: dirt in one guideway, a jaw on another tooth, or one that was not bored with the others."
        }
        (Goes::Once, _) => {
            "Bored off-centre, or a chip under the part: it stays when the grip goes. Clean, clamp again, and recut the jaws if it comes back."
        }
        (Goes::Twice, ".squeezed") => "Jaws that do not all push alike.",
        (Goes::OnceAJaw, ".squeezed") => "Squeezed: less pressure, more wrap or pie jaws.",
        (Goes::TwiceAJaw, ".squeezed") => "Pressed in by the jaws' edges or middles: blue them and bore to size.",
        _ => "In the part before it was clamped: no pressure puts it right.",
    }
}

/// What to beware of in taking a tilt stiffness over.
pub(super) const fn tilt(is_gauged: bool, edge_fits: bool) -> &'static str {
    match (is_gauged, edge_fits) {
        (_, false) => "The waves twice a jaw do not fit it: blue the jaws before you take it over.",
        (true, true) => "The grip is read by a gauge, so all of the difference is taken for tilt.",
        (false, true) => {
            "It takes all of the difference for tilt; grip changes lobes too, and no reading of lobes parts the two: take over one of them, or read the grip with a gauge first."
        }
    }
}

/// Why lobes tell no tilt stiffness: it moves them by this share.
pub(super) fn hardly(share: f64) -> Text {
    Text::of(
        "Between a quarter and four times the tilt stiffness entered these lobes change by {} % only: they tell nothing of it. Read at the far end of a part that stands out further.",
    )
    .with(Text::number(fixed(100.0 * share, 1)))
}

/// Why no tilt stiffness explains the lobes.
pub(super) const NO_TILT: &str = "No tilt stiffness between a quarter and four times the one entered gives these lobes. Look at the grip, the wall, and how the jaws bear.";
pub(super) const MANY_TILTS: &str =
    "More than one tilt stiffness gives these lobes. Read at another place along the part.";

/// What to beware of in taking a condition over.
pub(super) fn condition(share: f64) -> &'static str {
    if share > 1.0 {
        "It takes all of the difference for grip, and raises the grip counted on: read a grip gauge before you rely on it. Friction between jaw and part moves no lobes in this model: they tell nothing of it."
    } else {
        "It takes all of the difference for grip; how the jaws tilt and bear changes lobes too. Check it with a grip gauge. Friction between jaw and part moves no lobes in this model: they tell nothing of it."
    }
}

/// Why no condition explains the lobes.
pub(super) const fn beyond(above: bool) -> &'static str {
    if above {
        "Even a new chuck would press lower lobes. Look at how the jaws bear and at the wall entered."
    } else {
        "Any chuck that grips would press higher lobes. Check pressure, station 1, and whether the surface was true."
    }
}
