use super::error::{Dimension, JawError};
use super::section::{self, Section};
use crate::grip::{RotatingMass, Side};
use core::f64::consts::PI;

/// Outline of a jaw seen along the spindle axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// Block with flat sides and flat ends before boring.
    Ordinary {
        /// Width across the flat sides, m.
        width: f64,
    },
    /// Sector between two circles.
    Wide {
        /// Angle between its sides, rad.
        included_angle: f64,
    },
    /// One piece of a full circle sawn into as many pieces as there are jaws.
    Pie {
        /// Width of the saw cut, m; 0 when the pieces touch.
        saw_cut: f64,
    },
}

/// One of a set of equal jaws, in the position in which it grips.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Jaw {
    /// Outline.
    pub shape: Shape,
    /// Grip side.
    pub side: Side,
    /// Number of jaws, at least 2.
    pub count: u32,
    /// Radial length of the blank, m.
    pub length: f64,
    /// Height above the serrations, m.
    pub height: f64,
    /// How far jaw metal reaches past the gripping face, under the seat, m.
    pub step: f64,
    /// Depth of the bore from the jaw's front face, which is the grip length, m.
    pub bored_depth: f64,
    /// Gripping radius, m.
    pub grip_radius: f64,
}

/// A jaw whose dimensions agree.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoredJaw {
    jaw: Jaw,
    inner: f64,
    outer: f64,
    whole: Section,
    bored: Section,
}

impl BoredJaw {
    /// Checks the dimensions and works out the sections. For an outside grip the blank reaches
    /// from `R - step` to `R - step + length` and metal within `R` is bored away; for an inside
    /// grip it reaches from `R + step - length` to `R + step` and metal beyond `R` is turned away.
    ///
    /// ```
    /// use holdround_mechanics::{grip::Side, jaw::{BoredJaw, Jaw, Shape}};
    /// let jaw = BoredJaw::new(Jaw {
    ///     shape: Shape::Ordinary { width: 0.040 },
    ///     side: Side::Outside,
    ///     count: 3,
    ///     length: 0.070,
    ///     height: 0.050,
    ///     step: 0.010,
    ///     bored_depth: 0.015,
    ///     grip_radius: 0.050,
    /// })?;
    /// assert!((jaw.mass(7850.0)? - 1.05834).abs() < 1e-5);
    /// # Ok::<(), holdround_mechanics::jaw::JawError>(())
    /// ```
    ///
    /// # Errors
    /// [`JawError`], naming the dimension and its limit.
    pub fn new(jaw: Jaw) -> Result<Self, JawError> {
        between(Dimension::Count, f64::from(jaw.count), 2.0, 36.0)?;
        let length = size(Dimension::Length, jaw.length)?;
        let height = size(Dimension::Height, jaw.height)?;
        let depth = size(Dimension::BoredDepth, jaw.bored_depth)?;
        let radius = size(Dimension::GripRadius, jaw.grip_radius)?;
        let step = between(Dimension::Step, jaw.step, 0.0, LARGEST)?;
        if depth >= height {
            return Err(JawError::BoredThrough { depth, limit: height });
        }
        if length <= step {
            return Err(JawError::NothingBehindFace { length, limit: step });
        }
        let (inner, outer) = match jaw.side {
            Side::Outside => (radius - step, radius - step + length),
            Side::Inside => (radius + step - length, radius + step),
        };
        if inner < 0.0 {
            return Err(JawError::CrossesAxis { reach: radius - inner, limit: radius });
        }
        let pitch = PI / f64::from(jaw.count);
        let (inner, whole, within) = sections(jaw.shape, pitch, radius, inner, outer)?;
        let bored = match jaw.side {
            Side::Outside => whole - within,
            Side::Inside => within,
        };
        Ok(Self { jaw, inner, outer, whole, bored })
    }

    /// The dimensions.
    #[must_use]
    pub const fn jaw(&self) -> &Jaw {
        &self.jaw
    }

    /// Half the angle, rad, over which the jaw can touch the gripped circle. A jaw with flat ends
    /// whose step is less than the arc's rise does not clean up across its full width, and the
    /// face ends where the flat begins.
    #[must_use]
    pub fn contact_half_angle(&self) -> f64 {
        let radius = self.jaw.grip_radius;
        match self.jaw.shape {
            Shape::Ordinary { width } => libm::asin(0.5 * width / radius)
                .min(core::f64::consts::FRAC_PI_2 - libm::asin((self.inner / radius).min(1.0))),
            Shape::Wide { included_angle } => 0.5 * included_angle,
            Shape::Pie { saw_cut } => self.pitch() - section::cut_angle(0.5 * saw_cut, radius),
        }
    }

    /// Whether the bored face reaches across the full width of the jaw.
    #[must_use]
    pub fn cleans_up(&self) -> bool {
        match self.jaw.shape {
            Shape::Ordinary { width } => libm::hypot(self.inner, 0.5 * width) <= self.jaw.grip_radius,
            Shape::Wide { .. } | Shape::Pie { .. } => true,
        }
    }

    /// Volume, m3.
    #[must_use]
    pub fn volume(&self) -> f64 {
        self.whole.area * self.seat_height() + self.bored.area * self.jaw.bored_depth
    }

    /// Mass, kg, at a density in kg/m3.
    ///
    /// # Errors
    /// [`JawError::OutOfRange`] when the density is not positive.
    pub fn mass(&self, density: f64) -> Result<f64, JawError> {
        Ok(between(Dimension::Density, density, 1.0, 1e5)? * self.volume())
    }

    /// Distance of the centroid from the spindle axis along the jaw's own axis, m. With it
    /// `m r w^2` is the resultant of the centrifugal forces exactly, whatever the jaw's width.
    #[must_use]
    pub fn centroid_radius(&self) -> f64 {
        let moment = self.whole.moment * self.seat_height() + self.bored.moment * self.jaw.bored_depth;
        moment / self.volume()
    }

    /// Height of the centroid above the serrations, m.
    #[must_use]
    pub fn centroid_height(&self) -> f64 {
        let (seat, depth) = (self.seat_height(), self.jaw.bored_depth);
        let moment = self.whole.area * seat * 0.5 * seat + self.bored.area * depth * (seat + 0.5 * depth);
        moment / self.volume()
    }

    /// The jaw as a lump that turns, at a density in kg/m3.
    ///
    /// # Errors
    /// [`JawError::OutOfRange`] when the density is not positive.
    pub fn rotating_mass(&self, density: f64) -> Result<RotatingMass, JawError> {
        Ok(RotatingMass { mass: self.mass(density)?, radius: self.centroid_radius() })
    }

    /// Radius, m, swung by the farthest corner.
    #[must_use]
    pub fn swing_radius(&self) -> f64 {
        match self.jaw.shape {
            Shape::Ordinary { width } => libm::hypot(self.outer, 0.5 * width),
            Shape::Wide { .. } | Shape::Pie { .. } => self.outer,
        }
    }

    /// Radius of the inner end of the metal on the jaw's axis, m.
    #[must_use]
    pub const fn inner_radius(&self) -> f64 {
        self.inner
    }

    /// Radius of the outer end of the metal on the jaw's axis, m.
    #[must_use]
    pub const fn outer_radius(&self) -> f64 {
        self.outer
    }

    /// How far the jaws can move inward from where they grip before neighbours touch, m: what the
    /// jaws of an inside grip have for closing, and those of an outside grip when nothing is held.
    #[must_use]
    pub fn inward_clearance(&self) -> f64 {
        let pitch = self.pitch();
        let clearance = match self.jaw.shape {
            Shape::Ordinary { width } => self.inner - 0.5 * width / libm::tan(pitch),
            Shape::Wide { included_angle } => self.inner * libm::sin(pitch - 0.5 * included_angle) / libm::sin(pitch),
            Shape::Pie { saw_cut } => section::pie_apex(pitch, 0.5 * saw_cut),
        };
        clearance.max(0.0)
    }

    fn pitch(&self) -> f64 {
        PI / f64::from(self.jaw.count)
    }

    fn seat_height(&self) -> f64 {
        self.jaw.height - self.jaw.bored_depth
    }
}

/// Where the metal begins, the section of the blank, and the part of it within the gripped circle.
fn sections(
    shape: Shape,
    pitch: f64,
    radius: f64,
    inner: f64,
    outer: f64,
) -> Result<(f64, Section, Section), JawError> {
    match shape {
        Shape::Ordinary { width } => {
            let width = size(Dimension::Width, width)?;
            if width >= 2.0 * radius {
                return Err(JawError::WiderThanGrip { width, limit: 2.0 * radius });
            }
            let limit = 2.0 * inner * libm::tan(pitch);
            no_overlap(Dimension::Width, width, limit)?;
            let half = 0.5 * width;
            Ok((inner, section::block(half, inner, outer), section::block_within_circle(half, inner, radius)))
        }
        Shape::Wide { included_angle } => {
            let angle = between(Dimension::IncludedAngle, included_angle, SMALLEST, 2.0 * PI)?;
            no_overlap(Dimension::IncludedAngle, angle, 2.0 * pitch)?;
            let half = 0.5 * angle;
            Ok((inner, section::sector(half, inner, outer), section::sector(half, inner, radius)))
        }
        Shape::Pie { saw_cut } => {
            let cut = between(Dimension::SawCut, saw_cut, 0.0, LARGEST)?;
            let apex = section::pie_apex(pitch, 0.5 * cut);
            if apex >= radius {
                return Err(JawError::CutAway { saw_cut: cut, limit: 2.0 * radius * libm::sin(pitch) });
            }
            let inner = inner.max(apex);
            let piece = |to| section::pie(pitch, 0.5 * cut, inner, to);
            Ok((inner, piece(outer), piece(radius)))
        }
    }
}

fn no_overlap(dimension: Dimension, value: f64, limit: f64) -> Result<(), JawError> {
    // A full 120 degrees typed in degrees may round to just above a third of a turn.
    if value > limit * (1.0 + 1e-12) {
        return Err(JawError::Overlap { dimension, value, limit });
    }
    Ok(())
}

/// Bounds of a jaw's lengths, m, wide of any lathe.
const SMALLEST: f64 = 1e-6;
const LARGEST: f64 = 100.0;

fn size(dimension: Dimension, value: f64) -> Result<f64, JawError> {
    between(dimension, value, SMALLEST, LARGEST)
}

fn between(dimension: Dimension, value: f64, least: f64, greatest: f64) -> Result<f64, JawError> {
    if (least..=greatest).contains(&value) {
        Ok(value)
    } else {
        Err(JawError::OutOfRange { dimension, value, least, greatest })
    }
}

#[cfg(test)]
mod tests;
