//! The serrations of jaws and master jaws.

/// Serrations: their pitch and the angle of their flanks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Serration {
    /// From groove to groove, m.
    pub pitch: f64,
    /// Included angle of a groove, rad.
    pub angle: f64,
}

const RIGHT_ANGLE: f64 = core::f64::consts::FRAC_PI_2;
const SIXTY_DEGREES: f64 = core::f64::consts::FRAC_PI_3;

/// The customary serrations, by key: 1/16 in and 3/32 in by 90°, 1.5 mm and 3 mm by 60°. That power chucks have
/// serrations of 60° and 90° is in ISO 3442-3; these pitches are from memory.
pub static SERRATIONS: &[(&str, Serration)] = &[
    ("sixteenth", Serration { pitch: 0.0254 / 16.0, angle: RIGHT_ANGLE }),
    ("three-thirty-seconds", Serration { pitch: 0.0254 * 3.0 / 32.0, angle: RIGHT_ANGLE }),
    ("one-and-a-half", Serration { pitch: 1.5e-3, angle: SIXTY_DEGREES }),
    ("three", Serration { pitch: 3e-3, angle: SIXTY_DEGREES }),
];

impl Serration {
    /// Height of the sharp V, m: `p / (2 tan(angle / 2))`. Real teeth are a little lower, being blunt.
    ///
    /// ```
    /// use holdround_core::stroke::Serration;
    /// let right = Serration { pitch: 3e-3, angle: core::f64::consts::FRAC_PI_2 };
    /// assert!((right.height() - 1.5e-3).abs() < 1e-15, "flanks of 45° rise by half the pitch");
    /// ```
    #[must_use]
    pub fn height(&self) -> f64 {
        0.5 * self.pitch / libm::tan(0.5 * self.angle)
    }
}
