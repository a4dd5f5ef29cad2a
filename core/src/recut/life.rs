//! How many recuts are left in a set of jaws.

/// Recuts left while `metal` m stand before the least wall must stay, each taking `stock` m per side.
///
/// ```
/// use holdround_core::recut::recuts_left;
/// assert_eq!(recuts_left(6e-3, 3e-3, 0.5e-3), 6);
/// assert_eq!(recuts_left(2e-3, 3e-3, 0.5e-3), 0);
/// ```
#[must_use]
pub fn recuts_left(metal: f64, least_wall: f64, stock: f64) -> u32 {
    if stock > 0.0 {
        // 6 mm less 3 mm in steps of 0.5 mm is six, whatever rounding says.
        libm::floor((metal - least_wall) / stock + 1e-9).clamp(0.0, 1e6) as u32
    } else {
        0
    }
}
