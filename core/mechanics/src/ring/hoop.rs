//! Greatest hoop stress at both surfaces under equal jaws.

use alloc::vec::Vec;
use core::f64::consts::PI;

use super::annulus::{Annulus, Edge, RingError};
use super::extremum::extremes;
use super::jaw_load::{JawLoad, PressureSeries};
use super::shape::cosine_series;

/// Greatest magnitude of the hoop stress around each surface, Pa.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PeakHoop {
    /// On the outside diameter.
    pub outside: f64,
    /// On the bore; `None` for a solid disc.
    pub bore: Option<f64>,
}

/// Harmonics left out add less than this share of the stress.
const TAIL: f64 = 1e-4;
const MOST_HARMONICS: u32 = 2000;

impl Annulus {
    /// Greatest hoop stress, in magnitude, at both surfaces under uniform pressure
    /// from equal jaws. Under a line contact the loaded surface's figure follows the
    /// pressure of [`super::NARROWEST_HALF_ANGLE`] and only says that it yields.
    ///
    /// # Errors
    /// The ring's or the load's fault, or a result that is not finite.
    pub fn peak_hoop(&self, load: &JawLoad) -> Result<PeakHoop, RingError> {
        load.check_on(self)?;
        let radius = self.radius(load.edge);
        let contact = load.pressure(radius)?;
        let pressure = PressureSeries::new(load, contact);

        let uniform = self.uniform(load.edge, -pressure.mean);
        let (hoop_near, hoop_far, across) = match (load.edge, uniform.bore) {
            (_, None) => (uniform.outside.hoop, 0.0, 0.0),
            (Edge::Outside, Some(bore)) => (uniform.outside.hoop, bore.hoop, self.outer / self.inner),
            (Edge::Bore, Some(bore)) => (bore.hoop, uniform.outside.hoop, self.inner / self.outer),
        };

        let (mut near, mut far) = (Vec::new(), Vec::new());
        let (mut most_near, mut most_far) = (contact.max(hoop_near.abs()), hoop_far.abs());
        for k in 1..=MOST_HARMONICS {
            let m = pressure.lobes * f64::from(k);
            let wall = self.wall(m);
            let (amplitude, envelope) = (pressure.amplitude(m), pressure.envelope(m));
            near.push(-amplitude * wall.hoop_near_excess);
            far.push(amplitude * wall.hoop_far * across);
            most_near = most_near.max((amplitude * wall.hoop_near_excess).abs());
            most_far = most_far.max((amplitude * wall.hoop_far * across).abs());
            // Envelopes fall at least as the square of the order.
            let rest = f64::from(k) * envelope;
            if rest * wall.hoop_near_excess <= TAIL * most_near && rest * wall.hoop_far * across <= TAIL * most_far {
                break;
            }
        }

        // The half-plane's share of the loaded surface's hoop stress is the pressure
        // itself, a step at the jaw's edge that the series would only ring about.
        let share = hoop_near + pressure.mean;
        let near_at = |t: f64| share + cosine_series(&near, pressure.lobes * t);
        let far_at = |t: f64| hoop_far + cosine_series(&far, pressure.lobes * t);
        let pitch = PI / pressure.lobes;
        let edge = pressure.half_angle.min(pitch);
        let magnitude = |(low, high): (f64, f64)| high.max(-low);
        let under = magnitude(extremes(|t| near_at(t) - contact, 0.0, edge));
        // Between full-circle jaws there is no free surface.
        let free = if edge < pitch { magnitude(extremes(near_at, edge, pitch)) } else { 0.0 };
        let near = under.max(free);
        let far = magnitude(extremes(far_at, 0.0, edge)).max(magnitude(extremes(far_at, edge, pitch)));
        if !(near + far).is_finite() {
            return Err(RingError::NotFinite);
        }
        Ok(match load.edge {
            Edge::Outside => PeakHoop { outside: near, bore: (!self.is_solid()).then_some(far) },
            Edge::Bore => PeakHoop { outside: far, bore: Some(near) },
        })
    }
}

#[cfg(test)]
mod tests;
