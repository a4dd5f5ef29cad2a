//! Plane sections of a jaw across the spindle axis, in closed form.

use core::ops::Sub;

/// Area of a section and its first moment about the spindle axis along the jaw's own axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Section {
    /// `integral dA`, m2.
    pub(super) area: f64,
    /// `integral x dA`, m3.
    pub(super) moment: f64,
}

impl Sub for Section {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self { area: self.area - other.area, moment: self.moment - other.moment }
    }
}

/// Rectangle `inner <= x <= outer`, `|y| <= half_width`.
pub(super) fn block(half_width: f64, inner: f64, outer: f64) -> Section {
    let area = 2.0 * half_width * (outer - inner);
    Section { area, moment: area * 0.5 * (inner + outer) }
}

/// The part of the half strip `x >= inner`, `|y| <= half_width` within a circle about the spindle
/// axis: `x` runs from `inner` to `sqrt(R^2 - y^2)`, integrated over `y`.
pub(super) fn block_within_circle(half_width: f64, inner: f64, radius: f64) -> Section {
    let reach = crate::sqrt((radius - inner).max(0.0) * (radius + inner));
    let y = half_width.min(reach);
    let under_arc = 0.5 * (y * crate::sqrt((radius - y) * (radius + y)) + radius * radius * libm::asin(y / radius));
    Section { area: 2.0 * (under_arc - inner * y), moment: (radius - inner) * (radius + inner) * y - y * y * y / 3.0 }
}

/// Annular sector of the given half-angle between two radii.
pub(super) fn sector(half_angle: f64, inner: f64, outer: f64) -> Section {
    let cubes = outer * outer * outer - inner * inner * inner;
    Section { area: half_angle * (outer - inner) * (outer + inner), moment: 2.0 / 3.0 * libm::sin(half_angle) * cubes }
}

/// Annular sector of half-angle `pitch` whose sides are set back by `half_cut`, so that at radius
/// `r` its half-angle is `pitch - asin(half_cut / r)`; `inner` at least [`pie_apex`].
pub(super) fn pie(pitch: f64, half_cut: f64, inner: f64, outer: f64) -> Section {
    let (sine, cosine) = libm::sincos(pitch);
    let side = |r: f64| crate::sqrt((r - half_cut).max(0.0) * (r + half_cut));
    // Antiderivatives of 2 r phi and of 2 r^2 sin(phi), phi the half-angle at r.
    let area = |r: f64| pitch * r * r - (r * r * cut_angle(half_cut, r) + half_cut * side(r));
    let moment = |r: f64| {
        let s = side(r);
        2.0 / 3.0 * sine * s * s * s - cosine * half_cut * r * r
    };
    Section { area: area(outer) - area(inner), moment: moment(outer) - moment(inner) }
}

/// Radius at which the sides of a pie jaw meet.
pub(super) fn pie_apex(pitch: f64, half_cut: f64) -> f64 {
    half_cut / libm::sin(pitch)
}

/// Angle that half a saw cut takes at a radius.
pub(super) fn cut_angle(half_cut: f64, radius: f64) -> f64 {
    if half_cut == 0.0 { 0.0 } else { libm::asin((half_cut / radius).min(1.0)) }
}
