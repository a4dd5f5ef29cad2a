//! Scales step by 1, 2, 5, 10, ..., so that they read well and stay put while a slider moves a little.

use holdround_core::quantity::decade;

/// Relative slack by which a product like 0.3 / 0.1 may miss a round number in binary.
const ROUNDING: f64 = 1e-9;

/// The greatest of 1, 2, 5 times a power of ten that is at most `value`; none unless `value` is positive.
pub(crate) fn at_most(value: f64) -> Option<f64> {
    if !(value.is_finite() && value > 0.0) {
        return None;
    }
    let (_, decade) = decade(value);
    let held = value * (1.0 + ROUNDING);
    let step = [10.0, 5.0, 2.0, 1.0].into_iter().find(|step| step * decade <= held);
    step.map(|step| step * decade).filter(|found| found.is_finite() && *found > 0.0)
}

/// The smallest of 1, 2, 5 times a power of ten that is at least `value`; none unless `value` is positive.
pub(in crate::view) fn at_least(value: f64) -> Option<f64> {
    at_most(1.0 / value).map(|below| 1.0 / below).filter(|found| found.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_step_by_one_two_five() {
        let cases = [(1.0, 1.0), (1.9, 1.0), (2.0, 2.0), (4.99, 2.0), (0.07, 0.05), (730.0, 500.0), (999.0, 500.0)];
        for (value, step) in cases {
            let found = at_most(value).unwrap();
            assert!((found / step - 1.0).abs() < 1e-12, "{value} steps down to {step}, not {found}");
        }
        for (value, step) in [(1.0, 1.0), (1.1, 2.0), (2.1, 5.0), (5.1, 10.0), (0.03, 0.05)] {
            let found = at_least(value).unwrap();
            assert!((found / step - 1.0).abs() < 1e-12, "{value} steps up to {step}, not {found}");
        }
    }

    #[test]
    fn nothing_to_scale_has_no_scale() {
        for value in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(at_most(value), None, "{value}");
            assert_eq!(at_least(value), None, "{value}");
        }
    }
}
