//! Run-out in the jaws, roundness, size and straightness after release, as findings.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::elastic::Elasticity;
use super::grip_at_speed::Spinning;
use super::pressed::{OnSize, Pressed};
use super::released;
use crate::contact::{Contact, Face, Lobing};
use crate::findings::{Finding, Scene, Shift, Step, Trace, Wave, term};
use crate::grip::Side;
use crate::part::{Side as SurfaceSide, Surface};
use crate::quantity::Kind;
use crate::ring::Annulus;
use crate::setup::{Setup, Toward};
use crate::text::Text;

/// Harmonics that are enough to draw a shape.
const DRAWN: usize = 24;
/// Share of the wall that the part may be squeezed by before linear theory is left.
const LARGEST_SQUEEZE: f64 = 0.5;
/// Share of the pressure at which a ring buckles that is still taken for stable.
const BUCKLING_SHARE: f64 = 0.3;
const MODEL: &str =
    "harmonic finite elements of the part (Wilson 1965; Zienkiewicz and Taylor) in one-sided contact with elastic jaws";

/// The figures of the title block: the worst of every round surface.
const HEADLINES: [(&str, &str); 2] = [("shape.runout", "Run-out (TIR)"), ("shape.roundness", "Roundness, released")];

/// The gripped section as a plane ring, for what only needs a section.
pub(super) fn section(setup: &Setup) -> Annulus {
    let middle = setup.grip.start.value + setup.grip.length.value / 2.0;
    let [outside, bore] = setup.part.diameters_at(middle, Toward::Far);
    Annulus {
        inner: bore / 2.0,
        outer: outside / 2.0,
        modulus: setup.part.modulus.value,
        poisson: setup.part.material.poissons_ratio.value,
    }
}

/// Tells the headlines as refused, and why.
pub(super) fn refuse(why: impl Into<Text>, found: &mut Vec<Finding>) {
    let why = why.into();
    found.extend(HEADLINES.map(|(id, name)| Finding::refused(id, name, Kind::Departure, why.clone())));
}

/// Run-out, roundness, size and straightness of every surface that matters.
pub(super) fn tell(
    setup: &Setup,
    elastic: &Elasticity,
    pressed: &Pressed,
    spinning: &Spinning,
    found: &mut Vec<Finding>,
    scene: &mut Scene,
) {
    if let Some(why) = refusal(setup, elastic, pressed, spinning) {
        refuse(why, found);
        return;
    }
    draw(elastic, pressed, scene);
    let named = elastic.surfaces.len() - setup.part.surfaces.len();
    let told: Vec<usize> =
        if setup.part.surfaces.is_empty() { (0..named).collect() } else { (named..elastic.surfaces.len()).collect() };
    let mut headlines: [Option<Finding>; 2] = [None, None];
    for at in told {
        let surface = &elastic.surfaces[at];
        let key = if at < named { surface.name.to_string() } else { format!("surfaces.{}", at - named) };
        let at_speed = pressed.sizes.iter().map(|size| elastic.usual.lobing(&size.at_speed, at)).collect();
        let view = View { setup, elastic, pressed, spinning, at, surface, key, at_speed };
        let runout = view.runout();
        let (roundness, trace) = view.roundness(found).unzip();
        if roundness.as_ref().is_some_and(|next| is_worse(next, headlines[1].as_ref())) {
            scene.trace = trace;
        }
        for (headline, finding) in headlines.iter_mut().zip([runout, roundness]) {
            let Some(finding) = finding else { continue };
            if is_worse(&finding, headline.as_ref()) {
                *headline = Some(finding.clone());
            }
            found.push(finding);
        }
        found.extend([view.size(), view.straightness()].into_iter().flatten());
    }
    for (headline, (id, name)) in headlines.into_iter().zip(HEADLINES) {
        found.push(match headline {
            Some(worst) => {
                Finding { id: id.into(), caution: Some(Text::of("{}.").with(worst.name)), name: name.into(), ..worst }
            }
            None => Finding::refused(id, name, Kind::Departure, "No round surface is named."),
        });
    }
    tell_settling(elastic, found);
}

/// What the diagram draws, at rest: the outlines seen from the front, each at its worst station, and lines along the part.
fn draw(elastic: &Elasticity, pressed: &Pressed, scene: &mut Scene) {
    let Some(size) = pressed.sizes.first() else { return };
    for (at, surface) in elastic.surfaces.iter().enumerate().take(2) {
        let stations = elastic.usual.lobing(&size.at_rest, at);
        let places = elastic.usual.part().stations.get(at).map_or(&[][..], |places| &places.at);
        let seen = in_front(surface.side, places, &stations).into_iter();
        let Some(lobing) = seen.max_by(|a, b| a.power().total_cmp(&b.power())) else { continue };
        let along = along(places, &stations);
        match surface.side {
            SurfaceSide::Outside => (scene.clamped_outside, scene.outside_along) = (wave(lobing), along),
            SurfaceSide::Bore => (scene.clamped_bore, scene.bore_along) = (wave(lobing), along),
            SurfaceSide::Face => {}
        }
    }
}

/// The stations seen from the front: those of the largest outside, or of the smallest bore.
fn in_front<'a>(side: SurfaceSide, places: &[[f64; 2]], stations: &'a [Lobing]) -> Vec<&'a Lobing> {
    let outward = if side == SurfaceSide::Bore { -1.0 } else { 1.0 };
    let farthest = places.iter().map(|[r, _]| outward * r).fold(f64::NEG_INFINITY, f64::max);
    let near = |[r, _]: &[f64; 2]| outward * r > farthest - 1e-6 * farthest.abs();
    places.iter().zip(stations).filter(|(place, _)| near(place)).map(|(_, lobing)| lobing).collect()
}

fn along(places: &[[f64; 2]], stations: &[Lobing]) -> Vec<Shift> {
    let shift = |([_, z], lobing): (&[f64; 2], &Lobing)| Shift {
        z: *z,
        at_jaw: lobing.at(0.0),
        between_jaws: lobing.at(core::f64::consts::PI / lobing.jaws.max(1) as f64),
    };
    places.iter().zip(stations).map(shift).collect()
}

fn wave(lobing: &Lobing) -> Wave {
    let orders = lobing.amplitudes.iter().enumerate().skip(1).take(DRAWN);
    let harmonics = orders.map(|(k, amplitude)| ((k * lobing.jaws) as u32, *amplitude)).collect();
    Wave { mean: lobing.mean(), harmonics }
}

/// Why linear elasticity cannot speak for this grip.
fn refusal(setup: &Setup, elastic: &Elasticity, pressed: &Pressed, spinning: &Spinning) -> Option<Text> {
    let section = section(setup);
    let squeezed = pressed.sizes.iter().map(|size| lobes(&elastic.usual, &size.at_rest, 0));
    if squeezed.fold(0.0, f64::max) > LARGEST_SQUEEZE * (section.outer - section.inner) {
        return Some("The jaws would squeeze the part by more than half its wall: it is crushed, or far beyond what this model covers. Lower the pressure.".into());
    }
    let buckles = setup.grip.side == Side::Outside && section.inner > 0.0 && toward_buckling(setup, spinning) > 1.0;
    buckles.then(|| "The wall is so thin that this grip comes near to buckling it. Lower the pressure.".into())
}

/// How near the grip comes to buckling the wall: 1 where it would no longer be taken for stable.
pub(super) fn toward_buckling(setup: &Setup, spinning: &Spinning) -> f64 {
    let ring = section(setup);
    let area = core::f64::consts::TAU * ring.outer * setup.bearing_length();
    spinning.most_at_rest / area / (BUCKLING_SHARE * buckling_pressure(&ring))
}

/// Even outside pressure at which a long thin ring buckles, Pa: `E t³ / (4 (1 − ν²) R³)`
/// (Bresse 1866; Timoshenko and Gere, Theory of Elastic Stability, from memory).
fn buckling_pressure(ring: &Annulus) -> f64 {
    let mean = f64::midpoint(ring.inner, ring.outer);
    let slender = (ring.outer - ring.inner) / mean;
    ring.modulus * slender * slender * slender / (4.0 * (1.0 - ring.poisson * ring.poisson))
}

/// Whether `next` is worse than the worst finding so far.
fn is_worse(next: &Finding, so_far: Option<&Finding>) -> bool {
    so_far.is_none_or(|worst| next.value.as_ref().unwrap_or(&0.0) > worst.value.as_ref().unwrap_or(&0.0))
}

fn tell_settling(elastic: &Elasticity, found: &mut Vec<Finding>) {
    let name = "Change of the shape in the last refinement of the mesh";
    found.push(match elastic.change {
        Some(change) => Finding::new("shape.settled", name, Kind::Plain, change)
            .caution("Share of peak to valley. How far the solution is from the model's own exact answer, not from the real part."),
        None => Finding::refused("shape.settled", name, Kind::Plain, "The part is too large to be solved on a second mesh."),
    });
}

/// Peak to valley of a surface at its worst station.
fn lobes(face: &Face<'static>, contact: &Contact, surface: usize) -> f64 {
    face.worst(contact, surface).map_or(0.0, |(_, lobing)| lobing.peak_to_valley())
}

/// One surface under the jaws.
struct View<'a> {
    setup: &'a Setup,
    elastic: &'a Elasticity,
    pressed: &'a Pressed,
    spinning: &'a Spinning,
    at: usize,
    surface: &'a Surface,
    key: String,
    /// Its stations at speed, for each size of part.
    at_speed: Vec<Vec<Lobing>>,
}

impl View<'_> {
    fn name(&self) -> Text {
        self.surface.name.clone()
    }

    /// Peak to valley at the worst station.
    fn lobes(&self, face: &Face<'static>, contact: &Contact) -> f64 {
        lobes(face, contact, self.at)
    }

    /// The greatest over the sizes of part.
    fn over_sizes(&self, value: impl Fn(&OnSize) -> f64) -> f64 {
        self.pressed.sizes.iter().map(value).fold(0.0, f64::max)
    }

    fn given(&self, grip: f64) -> Vec<crate::findings::Term> {
        [
            term("F₁", grip / f64::from(self.setup.chuck.jaws), Kind::Force),
            term("E", self.setup.part.modulus.value, Kind::Stress),
            term("L", self.setup.grip.length.value, Kind::Length),
        ]
        .into()
    }

    fn runout(&self) -> Option<Finding> {
        if self.surface.side == SurfaceSide::Face {
            return None;
        }
        let runout = self.over_sizes(|size| self.lobes(&self.elastic.usual, &size.at_rest));
        Some(
            Finding::new(
                format!("shape.runout.{}", self.key),
                Text::of("Run-out of the {} in the jaws (TIR)").with(self.name()),
                Kind::Departure,
                runout,
            )
            .at_most(self.setup.part.runout_limit.value, "the run-out you allow")
            .entry("run.pressure")
            .step(Step {
                says: "Highest less lowest point of the clamped surface at its worst place along the axis, as an indicator meets it with the spindle turned by hand",
                formula: "TIR = max u(θ) − min u(θ)",
                given: self.given(self.spinning.most_at_rest),
                result: term("TIR", runout, Kind::Departure),
                source: MODEL,
            }),
        )
    }

    /// Roundness by the four circles of ISO 12181, with band and bounds; returns the minimum zone's, and the trace.
    fn roundness(&self, found: &mut Vec<Finding>) -> Option<(Finding, Trace)> {
        if self.surface.side == SurfaceSide::Face {
            return None;
        }
        let usual = &self.elastic.usual;
        let on_sizes = self.pressed.sizes.iter().filter_map(|size| {
            let (station, lobing) = usual.worst(&size.at_speed, self.at)?;
            Some((size, station, released::circles(&lobing), lobing))
        });
        let (worst, station, circles, lobing) =
            on_sizes.max_by(|a, b| a.2[1].roundness.total_cmp(&b.2[1].roundness))?;
        let radius = usual.part().stations.get(self.at)?.at.get(station)?[0];
        let finding = |key: &str, circle: &'static str, value: f64| {
            Finding::new(
                format!("shape.roundness.{}.{key}", self.key),
                Text::of("Roundness of the {} after release, {}").with(self.name()).with(circle),
                Kind::Departure,
                value,
            )
            .entry("run.pressure")
        };
        let [least_squares, minimum_zone, circumscribed, inscribed] = circles;
        let others = [
            ("least_squares", "least squares", least_squares),
            ("minimum_circumscribed", "minimum circumscribed circle", circumscribed),
            ("maximum_inscribed", "maximum inscribed circle", inscribed),
        ];
        found.extend(others.map(|(key, name, circle)| finding(key, name, circle.roundness)));
        let even = self.lobes(usual, &self.pressed.even);
        found.push(finding("even", "if the jaws pressed evenly", even));
        if worst.rigid.is_some() {
            let rigid = self
                .over_sizes(|size| size.rigid.as_ref().map_or(0.0, |contact| self.lobes(&self.elastic.rigid, contact)));
            found.push(finding("rigid", "if the jaws were rigid", rigid));
        }
        let value = minimum_zone.roundness;
        let told = finding("minimum_zone", "minimum zone", value)
            .at_most(self.setup.part.roundness_limit.value, "the roundness you allow")
            .step(Step {
                says: "Turned true while clamped, the surface springs to minus its clamped shape when released",
                formula: "RONt = peak to valley of −u(θ) from the reference circle",
                given: self.given(self.spinning.at_speed.highest),
                result: term("RONt", value, Kind::Departure),
                source: "reference circles: ISO 12181-1:2011, from memory; shape: harmonic finite elements of the part in one-sided contact with elastic jaws",
            });
        let told = match &worst.softer_stiffer {
            None => told,
            Some(ends) => {
                let mut band = (value, value);
                for (face, contact) in self.elastic.softer_stiffer.iter().zip(ends) {
                    let lobes = self.lobes(face, contact);
                    band = (band.0.min(lobes), band.1.max(lobes));
                }
                told.band(band.0, band.1)
            }
        };
        Some((told, released::trace(self.name(), radius, &lobing, circles)))
    }

    /// Spin growth at each station, m.
    fn growth(&self) -> Vec<f64> {
        let squared = self.setup.speed.value * self.setup.speed.value;
        let spin = self.elastic.usual.part().spin.get(self.at);
        spin.map_or_else(Vec::new, |spin| spin.iter().map(|per_square| per_square * squared).collect())
    }

    /// Change of diameter from the cut to the bench, at the station where it is greatest.
    fn size(&self) -> Option<Finding> {
        if self.surface.side == SurfaceSide::Face {
            return None;
        }
        let growth = self.growth();
        let changes = self.at_speed.iter().flat_map(|stations| {
            stations
                .iter()
                .zip(&growth)
                .map(|(lobing, growth)| (-2.0 * (lobing.mean() + growth), lobing.mean(), *growth))
                .collect::<Vec<_>>()
        });
        let (change, mean, growth) = changes.max_by(|a, b| libm::fabs(a.0).total_cmp(&libm::fabs(b.0)))?;
        let name = if change < 0.0 {
            "Released {} smaller than as cut, on diameter, at most"
        } else {
            "Released {} larger than as cut, on diameter, at most"
        };
        let finding = Finding::new(
            format!("shape.size.{}", self.key),
            Text::of(name).with(self.name()),
            Kind::Departure,
            libm::fabs(change),
        )
        .entry("run.pressure")
        .step(Step {
            says: "Twice what the jaws and the spin had moved the surface on average, where that is most",
            formula: "ΔD = −2 (u_mean + u_spin)",
            given: [term("u_mean", mean, Kind::Departure), term("u_spin", growth, Kind::Departure)].into(),
            result: term("ΔD", change, Kind::Departure),
            source: MODEL,
        });
        Some(match self.setup.part.size_limit {
            Some(limit) => finding.at_most(limit.value, "the size change you allow"),
            None => finding,
        })
    }

    /// How far a line along the surface is from straight after release; of a face, from flat.
    fn straightness(&self) -> Option<Finding> {
        let spring = self.elastic.usual.part();
        let at = &spring.stations.get(self.at)?.at;
        let face = self.surface.side == SurfaceSide::Face;
        let growth = self.growth();
        let pitch = core::f64::consts::PI / f64::from(self.setup.chuck.jaws);
        let off = |stations: &Vec<Lobing>| {
            if face {
                return flatness(stations, &growth);
            }
            let along = |angle: f64| {
                let points: Vec<[f64; 2]> = at
                    .iter()
                    .zip(stations)
                    .zip(&growth)
                    .map(|(([_, z], lobing), growth)| [*z, -(lobing.at(angle) + growth)])
                    .collect();
                off_line(&points)
            };
            along(0.0).max(along(pitch))
        };
        let value = self.at_speed.iter().map(off).fold(0.0, f64::max);
        let name = if face {
            Text::of("Flatness of the {} after release").with(self.name())
        } else {
            Text::of("Straightness of the {} after release").with(self.name())
        };
        Some(Finding::new(format!("shape.straightness.{}", self.key), name, Kind::Departure, value).step(Step {
            says: if face {
                "Highest less lowest point of the released face"
            } else {
                "Line along the surface at a jaw and midway between jaws: peak to valley from its best straight line"
            },
            formula: if face { "max w − min w" } else { "max (u − line) − min (u − line)" },
            given: self.given(self.spinning.at_speed.highest),
            result: term("form", value, Kind::Departure),
            source: MODEL,
        }))
    }
}

/// Highest less lowest axial displacement over all stations of a face.
fn flatness(stations: &[Lobing], growth: &[f64]) -> f64 {
    let (mut high, mut low) = (f64::NEG_INFINITY, f64::INFINITY);
    for (lobing, growth) in stations.iter().zip(growth) {
        let middle = lobing.mean() + growth;
        let swing = lobing.peak_to_valley() / 2.0;
        high = high.max(middle + swing);
        low = low.min(middle - swing);
    }
    if high >= low { high - low } else { 0.0 }
}

/// Peak to valley of points from their line of least squares, each point weighed by the length it stands for.
fn off_line(points: &[[f64; 2]]) -> f64 {
    let place = |k: usize| points[k.min(points.len() - 1)][0];
    let weights: Vec<f64> = (0..points.len()).map(|k| (place(k + 1) - place(k.saturating_sub(1))) / 2.0).collect();
    let mean = |value: &dyn Fn(&[f64; 2]) -> f64| {
        points.iter().zip(&weights).map(|(point, weight)| value(point) * weight).sum::<f64>()
            / weights.iter().sum::<f64>().max(f64::MIN_POSITIVE)
    };
    let (x0, y0) = (mean(&|point| point[0]), mean(&|point| point[1]));
    let spread = mean(&|[x, _]| (x - x0) * (x - x0));
    let slope = if spread > 0.0 { mean(&|[x, y]| (x - x0) * (y - y0)) / spread } else { 0.0 };
    let off = points.iter().map(|[x, y]| y - y0 - slope * (x - x0));
    let high = off.clone().fold(f64::NEG_INFINITY, f64::max);
    let low = off.fold(f64::INFINITY, f64::min);
    if high >= low { high - low } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_line_is_straight_and_a_bow_is_its_height() {
        let line = [[0.0, 1.0], [1.0, 3.0], [2.0, 5.0]];
        assert!(off_line(&line) < 1e-12, "points on a line");
        // A parabola of height 1 over 0 to 2: its line of least squares is level, and it leaves it by 1 in all.
        let bow: Vec<[f64; 2]> = (0..=20).map(|k| f64::from(k) / 10.0).map(|x| [x, x * (2.0 - x)]).collect();
        assert!((off_line(&bow) - 1.0).abs() < 1e-12, "a bow leaves its line by its height");
        assert_eq!(off_line(&[]), 0.0, "nothing is straight");
    }
}
