//! A live centre in the tail end of the part.

use core::f64::consts::FRAC_PI_6;

use holdround_core::setup::Toward;
use maud::{Markup, html};

use super::Section;
use crate::view::drawing::{closed, open, wavy};

/// Half the width of its shank, at most; it is drawn no wider than half the part's end.
const SHANK: f64 = 16.0;
/// How much of the shank is drawn behind the point.
const LENGTH: f64 = 12.0;

impl Section<'_> {
    /// Its 60° point in the part's end, broken off behind.
    pub(super) fn centre(&self) -> Markup {
        let part = &self.stage.setup.part;
        let [outside, _] = part.diameters_at(part.length(), Toward::Chuck);
        let half = (self.both.sheet.radius(outside) / 2.0).min(SHANK);
        let slope = half / libm::tan(FRAC_PI_6);
        let (tip, shank) = (self.along.end - slope / 2.0, self.along.end + slope / 2.0);
        let back = shank + LENGTH;
        let outline = [(back, -half), (shank, -half), (tip, 0.0), (shank, half), (back, half)];
        html! {
            g id="section-centre" {
                path class="blank" d=(closed(&outline)) {}
                path class="outline" d=(open(&outline)) {}
                path class="thin" d=(open(&wavy((back, -half), (back, half)))) {}
            }
        }
    }
}
