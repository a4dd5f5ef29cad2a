//! The blank top jaw and the master jaw it is screwed to.

use super::{Serration, StrokeError};

/// The master jaw, in its chuck.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MasterJaw {
    /// Radial travel, m.
    pub stroke: f64,
    /// Radius of the innermost groove when fully closed, m.
    pub first_groove: f64,
    /// Length of the serrated face from that groove outward, m.
    pub face: f64,
    /// Radius of the chuck body, m.
    pub body: f64,
    /// Its serrations, the same as those of the top jaw.
    pub serration: Serration,
}

/// A blank top jaw. Distances are from the end that grips, as the jaw is mounted, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blank {
    /// Radial length.
    pub length: f64,
    /// To the first groove.
    pub first_groove: f64,
    /// To the middle of the screw nearer the gripping end.
    pub near_screw: f64,
    /// To the middle of the other screw.
    pub far_screw: f64,
    /// Diameter of the counterbores.
    pub counterbore: f64,
    /// Depth of the counterbores from the front of the jaw.
    pub counterbore_depth: f64,
    /// Length of the T-nut, which holds both screws and lies evenly under them.
    pub nut: f64,
}

impl Blank {
    /// The jaw turned round, so that its other end grips; grooves run its whole length.
    ///
    /// ```
    /// # use holdround_core::stroke::Blank;
    /// # let blank = Blank { length: 0.07, first_groove: 0.001, near_screw: 0.03, far_screw: 0.05, counterbore: 0.02,
    /// #     counterbore_depth: 0.03, nut: 0.04 };
    /// let turned = blank.turned(3e-3);
    /// assert_eq!((turned.near_screw, turned.far_screw), (0.07 - 0.05, 0.07 - 0.03));
    /// ```
    #[must_use]
    pub fn turned(&self, pitch: f64) -> Self {
        let left = self.length - self.first_groove;
        Self {
            first_groove: left - pitch * libm::floor(left / pitch),
            near_screw: self.length - self.far_screw,
            far_screw: self.length - self.near_screw,
            ..*self
        }
    }

    /// The jaw with this much more metal at its gripping end.
    #[must_use]
    pub fn extended(&self, by: f64) -> Self {
        Self {
            length: self.length + by,
            first_groove: self.first_groove + by,
            near_screw: self.near_screw + by,
            far_screw: self.far_screw + by,
            ..*self
        }
    }

    /// Distance from the gripping end to the middle of the T-nut, m.
    #[must_use]
    pub fn nut_middle(&self) -> f64 {
        0.5 * (self.near_screw + self.far_screw)
    }

    /// Distance from the gripping end to the wall of the near counterbore that faces away from it, m: what closes
    /// on a boring ring.
    #[must_use]
    pub fn bearing_wall(&self) -> f64 {
        self.near_screw + 0.5 * self.counterbore
    }

    /// Metal, m, between a gripping face so far from the gripping end and the nearest counterbore; negative where the
    /// face cuts into one.
    #[must_use]
    pub fn wall_at(&self, face: f64) -> f64 {
        let to = |screw: f64| libm::fabs(face - screw) - 0.5 * self.counterbore;
        to(self.near_screw).min(to(self.far_screw))
    }

    /// Metal, m, that can be cut away from a gripping face so far from the gripping end before it meets a counterbore,
    /// or else the other end of the jaw.
    #[must_use]
    pub fn metal_behind(&self, face: f64) -> f64 {
        let before = |screw: f64| screw - 0.5 * self.counterbore - face;
        [before(self.near_screw), before(self.far_screw)]
            .into_iter()
            .find(|metal| *metal >= 0.0)
            .unwrap_or(self.length - face)
            .max(0.0)
    }

    pub(super) fn check(&self, master: &MasterJaw) -> Result<(), StrokeError> {
        let lengths = [
            self.length,
            self.counterbore,
            self.counterbore_depth,
            self.nut,
            master.stroke,
            master.face,
            master.body,
            master.serration.pitch,
        ];
        if !lengths.iter().all(|length| length.is_finite() && *length > 0.0) {
            return Err(StrokeError::NotALength);
        }
        let half = 0.5 * self.counterbore;
        // A counterbore that just touches the end is still one, whatever rounding says.
        let rounding = 1e-9 * self.length;
        if self.far_screw <= self.near_screw {
            Err(StrokeError::ScrewsCrossed)
        } else if self.near_screw - half < -rounding || self.far_screw + half > self.length + rounding {
            Err(StrokeError::ScrewOffJaw)
        } else if !(0.0..=self.length).contains(&self.first_groove) {
            Err(StrokeError::GrooveOffJaw)
        } else if self.nut < self.far_screw - self.near_screw {
            Err(StrokeError::NutTooShort)
        } else {
            Ok(())
        }
    }
}
