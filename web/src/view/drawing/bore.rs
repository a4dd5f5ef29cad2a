//! Which of a part's bores a drawing speaks of: a floor is a step without one.

use holdround_core::setup::Part;

/// The smallest bore there is, m; 0 only if the part is solid everywhere.
pub(in crate::view) fn narrowest(part: &Part) -> f64 {
    let bores = part.profile.steps().iter().flat_map(|step| step.inner).filter(|bore| *bore > 0.0);
    if is_hollow(part) { bores.fold(f64::INFINITY, f64::min) } else { 0.0 }
}

/// Whether any of it is hollow.
pub(in crate::view) fn is_hollow(part: &Part) -> bool {
    part.profile.steps().iter().any(|step| step.inner[0] > 0.0 || step.inner[1] > 0.0)
}

/// The bore at the front, m; 0 if it is closed there.
pub(in crate::view) fn at_front(part: &Part) -> f64 {
    part.profile.steps().last().map_or(0.0, |step| step.inner[1])
}
