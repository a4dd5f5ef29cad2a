//! What the drawing of indicator readings shows.

use alloc::vec::Vec;

use super::Wave;
use crate::text::Text;

/// Readings around a surface, the waves in them, and what the engine has of them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Dial {
    /// Radius of the surface, m.
    pub radius: f64,
    /// Angle of each station from the middle of jaw 1, rad, and how far outward it stands about the mean, m; none where
    /// it was not read.
    pub stations: Vec<(f64, Option<f64>)>,
    /// Order, cosine and sine, m, of each wave fitted; empty if none can be.
    pub fitted: Vec<(usize, f64, f64)>,
    /// What the engine has for the surface; none where it gives no shape.
    pub predicted: Option<Wave>,
    /// What this number of stations cannot tell, in words.
    pub cannot: Vec<Text>,
}

impl Dial {
    /// The fitted curve at an angle from jaw 1, about the mean, m.
    ///
    /// ```
    /// use holdround_core::findings::Dial;
    /// let dial = Dial { fitted: vec![(1, 3e-6, 0.0), (3, 0.0, 2e-6)], ..Dial::default() };
    /// assert!((dial.at(0.0) - 3e-6).abs() < 1e-18);
    /// ```
    #[must_use]
    pub fn at(&self, angle: f64) -> f64 {
        let wave = |(order, cos, sin): &(usize, f64, f64)| {
            let (s, c) = libm::sincos(*order as f64 * angle);
            cos * c + sin * s
        };
        self.fitted.iter().map(wave).sum()
    }
}
