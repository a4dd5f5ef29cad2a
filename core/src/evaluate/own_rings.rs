//! The user's own rings: how the jaws would stand on each, and what speaks against it.

use alloc::format;
use alloc::vec::Vec;

use super::boring_ring::{Job, SKETCH};
use super::groove::PLAY;
use super::placing::{Line, length_of};
use crate::boring_ring::{Bearing, Ring, bar_clearance, cut_clearance, groove_for, position_on};
use crate::findings::{Finding, OwnRingFit, Step, term};
use crate::grip::Side;
use crate::quantity::Kind;
use crate::stroke::outward;
use crate::text::Text;

impl Job<'_> {
    /// What speaks against boring on `ring` with the master jaws at `position`; nothing if it serves.
    pub(super) fn against(&self, ring: &Ring, position: f64) -> Vec<&'static str> {
        let (plan, place) = (self.plan, &self.place);
        let stroke = plan.master.stroke;
        let rounding = 1e-9 * stroke;
        let middle = self.middle(plan.bearing, ring);
        let walls = plan.least_wall.max(plan.tool_clearance);
        let grooved = plan.bearing != Bearing::Groove
            || groove_for(place, &plan.blank, self.placed.bored_at, *ring, walls, PLAY).is_some();
        // Where the jaw ends stand on this ring, whatever the tooth.
        let end = plan.bearing.distance(&plan.blank).map_or(self.placed.end, |distance| {
            0.5 * ring.bearing_diameter(place.side) - outward(place.side) * distance
        });
        let passes = match (self.bar, place.side) {
            (Some(bar), Side::Outside) => self.enough(0.5 * bar_clearance(ring, place, middle, end, bar)),
            _ => true,
        };
        let beyond = position < -rounding || position > stroke + rounding;
        let off_middle = libm::fabs(position - stroke / 2.0) > stroke / 6.0 + rounding;
        let wrong = [
            (!grooved, "no strip of the jaw face takes its groove"),
            (beyond, "beyond the stroke: the jaws do not reach it, or cannot take it in"),
            (off_middle && !beyond, "outside the middle third of the stroke"),
            (!self.enough(cut_clearance(ring, place, middle)), "the cut would meet it"),
            (!passes, "the boring bar does not pass"),
        ];
        let kind = plan.bearing.refuses(ring, &plan.blank);
        kind.into_iter().chain(wrong.into_iter().filter_map(|(is, why)| is.then_some(why))).collect()
    }

    /// Where the jaws stand on each of the user's own rings.
    pub(super) fn own_rings(&self, found: &mut Vec<Finding>) -> Vec<OwnRingFit> {
        let mut fits = Vec::new();
        for (at, own) in self.plan.rings.iter().enumerate() {
            let ring = &own.ring;
            // A groove is cut where the jaws stand.
            let position = position_on(self.plan.bearing, ring, &self.place, &self.plan.blank);
            let position = position.unwrap_or(self.placed.bored_at);
            let against = self.against(ring, position);
            let said = (!against.is_empty())
                .then(|| Text::of("Not this one: {}.").with(Text::row(against.iter().map(|why| (*why).into()), "; ")));
            let finding = length_of(
                &Line {
                    id: &format!("rings.{at}.position"),
                    name: "On ring {}, {}: master jaw from fully closed",
                    entry: "",
                    says: "The radius the ring gauges, less that of what bears on it with the jaws fully closed; a groove is cut to suit",
                    formula: "s = D/2 − r(0)",
                    given: &["D"],
                    symbol: "s",
                    source: SKETCH,
                },
                position,
                None,
                "",
                &[ring.bearing_diameter(self.place.side)],
            );
            let name = finding.name.with(at + 1).with(Text::typed(&*own.name));
            found.push(Finding { name, caution: said, ..finding });
            let clearance = cut_clearance(ring, &self.place, self.middle(self.plan.bearing, ring));
            fits.push(OwnRingFit { name: own.name.clone(), position, clearance, against });
        }
        self.best_of_own(&fits, found);
        fits
    }

    fn best_of_own(&self, fits: &[OwnRingFit], found: &mut Vec<Finding>) {
        const NAME: &str = "The best of your own rings, by number";
        if fits.is_empty() {
            return;
        }
        let middle = self.middle_of_stroke();
        let mut best: Option<(usize, f64)> = None;
        for (at, fit) in fits.iter().enumerate().filter(|(_, fit)| fit.against.is_empty()) {
            let off = libm::fabs(fit.position - middle);
            if best.is_none_or(|(_, least)| off < least) {
                best = Some((at, off));
            }
        }
        found.push(match best {
            Some((at, off)) => Finding::new("ring.best_own", NAME, Kind::Plain, (at + 1) as f64).step(Step {
                says: "Of those that fit where they bear, clear cut and bar, and leave the jaws in the middle third, the nearest to mid-stroke",
                formula: "least |s − S/2|",
                given: Vec::new(),
                result: term("|s − S/2|", off, Kind::Length),
                source: "the middle third of the stroke: common practice, no source",
            }),
            None => {
                let why = "None of them fits where it bears, clears cut and bar, and leaves the jaws in the middle third of the stroke.";
                Finding::refused("ring.best_own", NAME, Kind::Plain, why)
            }
        });
    }
}
