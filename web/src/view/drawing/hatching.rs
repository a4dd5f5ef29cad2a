//! Hatching of cut surfaces: part and jaw at opposite 45 degree angles and different pitch (ISO 128-3).

use maud::{Markup, html};

/// Cut surfaces thinner than this, in view units, are filled instead of hatched, as ISO 128-3 allows.
pub(in crate::view) const THINNEST_HATCHED: f64 = 4.0;

/// The patterns that `url(#hatch-part)` and `url(#hatch-jaw)` refer to.
pub(in crate::view) fn hatchings() -> Markup {
    html! {
        defs {
            (pattern("hatch-part", 7, 45))
            (pattern("hatch-jaw", 11, -45))
        }
    }
}

fn pattern(id: &str, pitch: u32, angle: i32) -> Markup {
    html! {
        pattern id=(id) width=(pitch) height=(pitch) patternUnits="userSpaceOnUse" patternTransform={ "rotate(" (angle) ")" } {
            path class="hatch" d={ "M0 0L0 " (pitch) } {}
        }
    }
}
