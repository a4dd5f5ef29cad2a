//! Force and moment on the part.

/// A force and a moment on the part, about the chuck's origin.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Wrench {
    /// Force in N.
    pub force: [f64; 3],
    /// Moment about the origin in N m.
    pub moment: [f64; 3],
}

impl Wrench {
    /// A force in N applied at a point in m.
    #[must_use]
    pub fn of_force_at(force: [f64; 3], point: [f64; 3]) -> Self {
        Self { force, moment: cross(point, force) }
    }

    pub(crate) fn is_finite(&self) -> bool {
        self.force.iter().chain(&self.moment).all(|x| x.is_finite())
    }
}

/// The load of a tool that goes round the part: the wrench when the tool stands
/// at angle `phi` is `steady + cosine cos phi + sine sin phi`, exactly.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RotatingWrench {
    /// The part that does not change with the angle.
    pub steady: Wrench,
    /// What is added in proportion to `cos phi`.
    pub cosine: Wrench,
    /// What is added in proportion to `sin phi`.
    pub sine: Wrench,
}

impl RotatingWrench {
    /// The wrench with the tool at angle `phi` in rad.
    #[must_use]
    pub fn at(&self, phi: f64) -> Wrench {
        let (sin, cos) = (libm::sin(phi), libm::cos(phi));
        let mix = |steady: [f64; 3], cosine: [f64; 3], sine: [f64; 3]| {
            core::array::from_fn(|k| steady[k] + cosine[k] * cos + sine[k] * sin)
        };
        Wrench {
            force: mix(self.steady.force, self.cosine.force, self.sine.force),
            moment: mix(self.steady.moment, self.cosine.moment, self.sine.moment),
        }
    }
}

pub(crate) fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}
