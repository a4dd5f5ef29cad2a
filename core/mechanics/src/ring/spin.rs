//! Growth and stress of a spinning ring or solid disc.

use super::annulus::{Annulus, RingError};

/// What rotation does to a ring with both surfaces free.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spin {
    /// Radial growth of the outside, m.
    pub outside_growth: f64,
    /// Radial growth of the bore, m; `None` for a solid disc.
    pub bore_growth: Option<f64>,
    /// Greatest hoop stress, Pa: at the bore, or at the centre of a solid disc.
    pub peak_hoop: f64,
}

impl Annulus {
    /// Growth and hoop stress at `speed` (rad/s) for a `density` (kg/m^3), in plane
    /// stress: at the bore `(rho w^2 / 4) [(3 + nu) b^2 + (1 - nu) a^2]` (Timoshenko &
    /// Goodier, *Theory of Elasticity*, rotating disks); a solid disc has half that.
    ///
    /// ```
    /// use holdround_mechanics::ring::Annulus;
    /// let ring = Annulus { inner: 0.040, outer: 0.050, modulus: 207e9, poisson: 0.3 };
    /// let spin = ring.spin(314.159_265_4, 7850.0).unwrap();
    /// assert!((spin.peak_hoop - 1.814_884_5e6).abs() < 1.0);
    /// ```
    ///
    /// # Errors
    /// The ring's own fault, a negative speed or density, or a result not finite.
    pub fn spin(&self, speed: f64, density: f64) -> Result<Spin, RingError> {
        self.check()?;
        if speed < 0.0 || density < 0.0 {
            return Err(RingError::Spin);
        }
        let Self { inner: a, outer: b, modulus, poisson: nu } = *self;
        let unit = density * speed * speed / 4.0;
        let hoop_a = unit * ((3.0 + nu) * b * b + (1.0 - nu) * a * a);
        let hoop_b = unit * ((3.0 + nu) * a * a + (1.0 - nu) * b * b);
        if !(hoop_a * b / modulus).is_finite() {
            return Err(RingError::NotFinite);
        }
        let solid = self.is_solid();
        Ok(Spin {
            outside_growth: hoop_b * b / modulus,
            bore_growth: (!solid).then_some(hoop_a * a / modulus),
            peak_hoop: if solid { 0.5 * hoop_a } else { hoop_a },
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thin_ring_reaches_the_free_hoop_stress() {
        // rho v^2 for a free thin hoop: any strength-of-materials text.
        let ring = Annulus { inner: 0.0999, outer: 0.1, modulus: 207e9, poisson: 0.3 };
        let spin = ring.spin(200.0, 7850.0).unwrap();
        let hoop = 7850.0 * 20.0 * 20.0;
        // The wall is 1/1000 of the radius, and the bore is a little off the mean.
        assert!((spin.peak_hoop / hoop - 1.0).abs() < 1e-3, "{spin:?}");
    }

    #[test]
    fn solid_disc_has_half_the_stress_of_a_pinhole() {
        let solid = Annulus { inner: 0.0, outer: 0.1, modulus: 207e9, poisson: 0.3 };
        let pinhole = Annulus { inner: 1e-9, ..solid };
        let (whole, pierced) = (solid.spin(200.0, 7850.0).unwrap(), pinhole.spin(200.0, 7850.0).unwrap());
        assert!((whole.peak_hoop * 2.0 / pierced.peak_hoop - 1.0).abs() < 1e-12, "factor two");
        assert_eq!(whole.bore_growth, None, "no bore to grow");
        assert_eq!(solid.spin(-1.0, 7850.0), Err(RingError::Spin), "negative speed");
        assert_eq!(solid.spin(f64::NAN, 7850.0), Err(RingError::NotFinite), "NaN speed");
    }
}
