//! Shape of both surfaces of a ring squeezed by equal jaws.

use alloc::vec::Vec;
use core::f64::consts::FRAC_PI_2;

use libm::sin;

use super::annulus::{Annulus, Edge, RingError};
use super::jaw_load::{JawLoad, PressureSeries};
use super::shape::{Harmonic, NearField, Shape};

/// Displacement of both surfaces under the jaws.
#[derive(Clone, Debug, PartialEq)]
pub struct Squeeze {
    /// The outside diameter.
    pub outside: Shape,
    /// The bore; `None` for a solid disc.
    pub bore: Option<Shape>,
}

/// Harmonics left out add less than this share of the peak to valley.
const TAIL: f64 = 1e-6;
/// Nor need they be carried below this share of the mean displacement, which matters
/// where full-circle jaws leave no lobes at all.
const TAIL_OF_MEAN: f64 = 1e-8;
const MOST_HARMONICS: u32 = 2000;

impl Annulus {
    /// Displacement of both surfaces under uniform pressure from equal jaws.
    ///
    /// ```
    /// use holdround_mechanics::ring::{Annulus, Edge, JawLoad};
    /// let ring = Annulus { inner: 0.045, outer: 0.050, modulus: 207e9, poisson: 0.3 };
    /// let load = JawLoad {
    ///     edge: Edge::Outside, jaws: 3, half_angle: 0.2, force_per_jaw: 10e3, length: 0.040,
    /// };
    /// let shape = ring.squeeze(&load).unwrap();
    /// let lobing = shape.bore.unwrap().peak_to_valley();
    /// assert!(lobing > 300e-6 && lobing < 400e-6);
    /// ```
    ///
    /// # Errors
    /// The ring's or the load's fault, or a result that is not finite.
    pub fn squeeze(&self, load: &JawLoad) -> Result<Squeeze, RingError> {
        load.check_on(self)?;
        let radius = self.radius(load.edge);
        let pressure = PressureSeries::new(load, load.pressure(radius)?);
        let push = load.direction();
        let unit = push * radius / self.modulus;
        let shear = push * (1.0 - self.poisson);

        // The half-plane under the same pressure: 2/m + shear/m^2 at every order.
        let per_order = unit * pressure.point / sin(pressure.half_angle);
        let near_field = NearField { square: 2.0 * per_order, cube: shear * per_order };

        let uniform = self.uniform(load.edge, -pressure.mean);
        let (mean_near, mean_far) = match (load.edge, uniform.bore) {
            (_, None) => (uniform.outside.radial, 0.0),
            (Edge::Outside, Some(bore)) => (uniform.outside.radial, bore.radial),
            (Edge::Bore, Some(bore)) => (bore.radial, uniform.outside.radial),
        };

        let mut near = Terms::new(mean_near);
        let mut far = Terms::new(mean_far);
        for k in 1..=MOST_HARMONICS {
            let order = load.jaws * k;
            let m = f64::from(order);
            let wall = self.wall(m);
            let m21 = m * m - 1.0;
            let half_plane = 2.0 / m + shear / (m * m);
            let excess = (2.0 * m * wall.near_excess + 2.0 / m + shear / (m * m)) / m21;
            let through = 2.0 * m * wall.far / m21;
            let (amplitude, envelope) = (unit * pressure.amplitude(m), pressure.envelope(m));
            near.push(order, amplitude * (excess + half_plane), amplitude * excess);
            far.push(order, amplitude * through, amplitude * through);
            // Envelopes fall at least as the cube of the order, so the rest add at
            // most k/2 of the last.
            let rest = 0.5 * f64::from(k) * envelope * unit.abs();
            if near.settled(rest * excess.abs()) && far.settled(rest * through.abs()) {
                break;
            }
        }

        let near = near.into_shape(load, pressure.half_angle, near_field);
        let far = far.into_shape(load, pressure.half_angle, NearField::default());
        if !(near.mean + near.radial(0.0) + far.mean + far.radial(0.0)).is_finite() {
            return Err(RingError::NotFinite);
        }
        Ok(match load.edge {
            Edge::Outside => Squeeze { outside: near, bore: (!self.is_solid()).then_some(far) },
            Edge::Bore => Squeeze { outside: far, bore: Some(near) },
        })
    }
}

struct Terms {
    mean: f64,
    harmonics: Vec<Harmonic>,
    smooth: Vec<f64>,
    largest: f64,
}

impl Terms {
    fn new(mean: f64) -> Self {
        Self { mean, harmonics: Vec::new(), smooth: Vec::new(), largest: 0.0 }
    }

    fn push(&mut self, order: u32, amplitude: f64, smooth: f64) {
        self.harmonics.push(Harmonic { order, amplitude });
        self.smooth.push(smooth);
        self.largest = self.largest.max(amplitude.abs());
    }

    /// A periodic curve spans at least pi/2 of any one of its amplitudes.
    fn settled(&self, rest: f64) -> bool {
        rest <= (TAIL * FRAC_PI_2 * self.largest).max(TAIL_OF_MEAN * self.mean.abs())
    }

    fn into_shape(self, load: &JawLoad, half_angle: f64, near_field: NearField) -> Shape {
        Shape {
            mean: self.mean,
            harmonics: self.harmonics,
            lobes: load.jaws,
            half_angle,
            smooth: self.smooth,
            near_field,
        }
    }
}

#[cfg(test)]
mod tests;
