//! Response of a ring or solid disc to one harmonic of radial stress.

use core::fmt;

use crate::text::Text;
use libm::{exp, expm1, log1p};

/// A ring, or a solid disc where `inner` is zero, in plane stress.
///
/// Valid for `0 <= inner < outer`, a wall of at least 1/10000 of the outside
/// radius, a positive modulus and a Poisson's ratio from 0 to below 0.5.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Annulus {
    /// Bore radius, m; zero for a solid disc.
    pub inner: f64,
    /// Outside radius, m.
    pub outer: f64,
    /// Young's modulus, Pa.
    pub modulus: f64,
    /// Poisson's ratio.
    pub poisson: f64,
}

/// The surface a load presses on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// The outside diameter.
    Outside,
    /// The bore.
    Bore,
}

/// What one harmonic does at one surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeState {
    /// Amplitude of the radial displacement, times cos(m theta), m.
    pub radial: f64,
    /// Amplitude of the tangential displacement, times sin(m theta), m.
    pub tangential: f64,
    /// Amplitude of the hoop stress, times cos(m theta), Pa.
    pub hoop: f64,
}

/// What one harmonic does at both surfaces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Response {
    /// At the outside diameter.
    pub outside: EdgeState,
    /// At the bore; `None` for a solid disc.
    pub bore: Option<EdgeState>,
}

/// Why a ring or its load was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RingError {
    /// The radii do not make a ring with a wall of at least 1/10000 of its radius.
    Radii,
    /// The modulus is not positive, or Poisson's ratio is not from 0 to below 0.5.
    Material,
    /// A harmonic of order 1 pushes the whole part aside: nothing balances it.
    Unbalanced,
    /// A solid disc has no bore to press on.
    NoBore,
    /// The number of jaws is not from 2 to 6.
    Jaws,
    /// The half-angle of a jaw's arc is negative or overlaps its neighbour's.
    Arc,
    /// The force is negative, or the loaded length is not positive.
    Load,
    /// The speed or the density is negative.
    Spin,
    /// A value is not finite, or the result would not be.
    NotFinite,
}

impl From<&RingError> for Text {
    fn from(error: &RingError) -> Self {
        Self::Words(match error {
            RingError::Radii => "the radii do not make a ring with a real wall",
            RingError::Material => "the modulus or Poisson's ratio is out of range",
            RingError::Unbalanced => "a once-round load is not balanced",
            RingError::NoBore => "a solid disc has no bore to press on",
            RingError::Jaws => "the number of jaws must be 2 to 6",
            RingError::Arc => "the jaw arc is negative or overlaps the next jaw",
            RingError::Load => "the force or the loaded length is out of range",
            RingError::Spin => "the speed or the density is negative",
            RingError::NotFinite => "a value is not finite",
        })
    }
}

impl fmt::Display for RingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for RingError {}

const THINNEST_WALL: f64 = 1e-4;

/// How one harmonic at one edge is felt through the wall.
///
/// With the stress function `r g(ln r) cos(m theta)` the four Michell terms are
/// `cosh` and `sinh` of `(m-1)s` and `(m+1)s` about the middle of the wall in `s
/// = ln r`; free shear makes `g' = 0` at both edges, and even and odd parts part.
/// Each figure is what the wall adds to a half-plane, so all vanish when thick.
#[derive(Clone, Copy)]
pub(crate) struct Wall {
    /// Displacement of the loaded edge, beyond the half-plane's 1.
    pub(crate) near_excess: f64,
    /// Displacement of the other edge.
    pub(crate) far: f64,
    /// Hoop stress of the loaded edge, beyond the half-plane's 1.
    pub(crate) hoop_near_excess: f64,
    /// Hoop stress of the other edge.
    pub(crate) hoop_far: f64,
}

impl Annulus {
    /// Response to a radial stress `amplitude * cos(order * theta)` on `edge`, the
    /// other surface free; tension is positive, so a pressure has a negative amplitude.
    ///
    /// Order 0 is Lame's solution, orders from 2 Michell's (Timoshenko & Goodier,
    /// *Theory of Elasticity*, the general solution in polar coordinates).
    ///
    /// ```
    /// use holdround_mechanics::ring::{Annulus, Edge};
    /// let ring = Annulus { inner: 0.040, outer: 0.050, modulus: 207e9, poisson: 0.3 };
    /// let lame = ring.response(0, Edge::Outside, -10e6).unwrap();
    /// assert!((lame.outside.radial + 10.2791e-6).abs() < 1e-10);
    /// ```
    ///
    /// # Errors
    /// [`RingError::Unbalanced`] for order 1, [`RingError::NoBore`] for a load on the
    /// bore of a solid disc, or the ring's own fault.
    pub fn response(&self, order: u32, edge: Edge, amplitude: f64) -> Result<Response, RingError> {
        self.check()?;
        if edge == Edge::Bore && self.is_solid() {
            return Err(RingError::NoBore);
        }
        let response = match order {
            0 => self.uniform(edge, amplitude),
            1 => return Err(RingError::Unbalanced),
            _ => self.harmonic(f64::from(order), edge, amplitude),
        };
        let finite = |s: &EdgeState| (s.radial + s.tangential + s.hoop).is_finite();
        if finite(&response.outside) && response.bore.iter().all(finite) {
            Ok(response)
        } else {
            Err(RingError::NotFinite)
        }
    }

    pub(crate) fn check(&self) -> Result<(), RingError> {
        let Self { inner, outer, modulus, poisson } = *self;
        if ![inner, outer, modulus, poisson].iter().all(|v| v.is_finite()) {
            return Err(RingError::NotFinite);
        }
        if inner < 0.0 || outer <= 0.0 || outer - inner < THINNEST_WALL * outer {
            return Err(RingError::Radii);
        }
        if modulus <= 0.0 || !(0.0..0.5).contains(&poisson) {
            return Err(RingError::Material);
        }
        Ok(())
    }

    pub(crate) fn is_solid(&self) -> bool {
        self.inner == 0.0
    }

    pub(crate) fn radius(&self, edge: Edge) -> f64 {
        match edge {
            Edge::Outside => self.outer,
            Edge::Bore => self.inner,
        }
    }

    /// Lame: `stress` on one edge, the other free.
    pub(crate) fn uniform(&self, edge: Edge, stress: f64) -> Response {
        let (a2, b2) = (self.inner * self.inner, self.outer * self.outer);
        let wall = (self.outer - self.inner) * (self.outer + self.inner);
        let (radial_b, radial_a, hoop_b, hoop_a) = match edge {
            Edge::Outside => (stress, 0.0, stress * (b2 + a2) / wall, stress * 2.0 * b2 / wall),
            Edge::Bore => (0.0, stress, -stress * 2.0 * a2 / wall, -stress * (b2 + a2) / wall),
        };
        let at = |r: f64, hoop: f64, radial: f64| EdgeState {
            radial: r * (hoop - self.poisson * radial) / self.modulus,
            tangential: 0.0,
            hoop,
        };
        Response {
            outside: at(self.outer, hoop_b, radial_b),
            bore: (!self.is_solid()).then(|| at(self.inner, hoop_a, radial_a)),
        }
    }

    fn harmonic(&self, m: f64, edge: Edge, stress: f64) -> Response {
        let Self { inner: a, outer: b, modulus, poisson } = *self;
        let wall = self.wall(m);
        let (near, hoop_near) = (1.0 + wall.near_excess, 1.0 + wall.hoop_near_excess);
        let m21 = m * m - 1.0;
        // g at both edges: g = -r * radial stress / (m^2 - 1).
        let (g_b, g_a) = match edge {
            Edge::Outside => (-b * stress / m21, 0.0),
            Edge::Bore => (0.0, -a * stress / m21),
        };
        let eu_b = (1.0 - poisson) * g_b - 2.0 * m * (near * g_b - wall.far * g_a);
        let eu_a = (1.0 - poisson) * g_a - 2.0 * m * (wall.far * g_b - near * g_a);
        let curve_b = -m21 * (hoop_near * g_b - wall.hoop_far * g_a);
        let curve_a = -m21 * (hoop_near * g_a - wall.hoop_far * g_b);
        let at = |r: f64, g: f64, curve: f64, eu: f64| EdgeState {
            radial: eu / modulus,
            tangential: (curve + poisson * m21 * g - eu) / (m * modulus),
            hoop: curve / r,
        };
        Response { outside: at(b, g_b, curve_b, eu_b), bore: (!self.is_solid()).then(|| at(a, g_a, curve_a, eu_a)) }
    }

    /// The wall's influence at order `m >= 2`, every term of one sign: no digits are
    /// lost in a thin wall, and `exp(-m x)` is factored out so none overflow in a thick one.
    pub(crate) fn wall(&self, m: f64) -> Wall {
        if self.is_solid() {
            return Wall { near_excess: 0.0, far: 0.0, hoop_near_excess: 0.0, hoop_far: 0.0 };
        }
        let x = log1p((self.outer - self.inner) / self.inner);
        let w = exp(-m * x);
        let sinh_mx = -0.5 * expm1(-2.0 * m * x);
        let cosh_mx = 0.5 * (1.0 + w * w);
        let (up, down) = (exp(-(m - 1.0) * x), exp(-(m + 1.0) * x));
        let m_cosh_x = 0.5 * m * (up + down);
        let m_sinh_x = -0.5 * m * up * expm1(-2.0 * x);
        let odd = if m * x < 1.0 { w * bending(m, x) } else { sinh_mx - m_sinh_x };
        let product = (sinh_mx + m_sinh_x) * odd;
        Wall {
            near_excess: (sinh_mx * w * w + (m_cosh_x / m + m_sinh_x) * m_sinh_x) / product,
            far: (m_cosh_x / m * sinh_mx + cosh_mx * m_sinh_x) / product,
            hoop_near_excess: 2.0 * m_sinh_x * m_sinh_x / product,
            hoop_far: 2.0 * sinh_mx * m_sinh_x / product,
        }
    }
}

/// `sinh(m x) - m sinh(x)` for `m x < 1` by its series: terms in
/// `m^2k - 1 = (m^2 - 1)(1 + m^2 + ... + m^(2k-2))`, all positive.
fn bending(m: f64, x: f64) -> f64 {
    let (m2, x2) = (m * m, x * x);
    let (mut power, mut geometric, mut total) = (m * (m2 - 1.0) * x, 0.0, 0.0);
    for k in 1..=10 {
        let n = 2.0 * f64::from(k);
        power *= x2 / (n * (n + 1.0));
        geometric = geometric * m2 + 1.0;
        total += power * geometric;
    }
    total
}

#[cfg(test)]
mod tests;
