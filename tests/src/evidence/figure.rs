//! Numbers as the page writes them.

/// A number to six digits, with a power of ten where it is very large or small.
pub(super) fn number(value: f64) -> String {
    let size = value.abs();
    if value == 0.0 {
        "0".into()
    } else if (1e-3..1e6).contains(&size) {
        let digits = (5.0 - libm::log10(size).floor()).max(0.0) as usize;
        in_one(without_empty_digits(&format!("{value:.digits$}")))
    } else {
        let text = format!("{value:.5e}");
        let (digits, power) = text.split_once('e').unwrap_or((&text, "0"));
        in_one(&format!("{}e{power}", without_empty_digits(digits)))
    }
}

fn without_empty_digits(text: &str) -> &str {
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { text }
}

/// With minus signs, after which no line is broken as it is after a hyphen.
fn in_one(text: &str) -> String {
    text.replace('-', "\u{2212}")
}

/// A share, as per cent to two digits.
pub(super) fn percent(share: f64) -> String {
    let of_hundred = share * 100.0;
    let text = if of_hundred == 0.0 {
        "0".into()
    } else if of_hundred.abs() < 1e-3 {
        format!("{of_hundred:.1e}")
    } else {
        let digits = (1.0 - libm::log10(of_hundred.abs()).floor()).max(0.0) as usize;
        format!("{of_hundred:.digits$}")
    };
    in_one(&format!("{text}\u{a0}%"))
}

/// Below this share a difference is one of rounding.
const ROUNDING: f64 = 1e-11;

/// A difference as a share.
pub(super) fn difference(share: f64) -> String {
    if share.abs() < ROUNDING { "rounding".into() } else { percent(share) }
}

/// The middle one of the sizes of some differences, and the greatest, as they are written.
pub(super) fn spread(differences: impl Iterator<Item = f64>) -> [String; 2] {
    let mut sizes: Vec<f64> = differences.map(f64::abs).collect();
    sizes.sort_by(f64::total_cmp);
    let written = |size: Option<&f64>| size.map_or("no figure".into(), |size| difference(*size));
    [written(sizes.get(sizes.len() / 2)), written(sizes.last())]
}

#[cfg(test)]
mod tests {
    use super::{number, percent, spread};

    #[test]
    fn numbers_keep_six_digits() {
        assert_eq!(number(1234.5678), "1234.57", "before and after the point");
        assert_eq!(number(-0.25), "−0.25", "no empty digits");
        assert_eq!(number(3.2e-7), "3.2e−7", "small ones by a power of ten");
        assert_eq!(number(120_000.0), "120000", "whole ones without a point");
    }

    #[test]
    fn shares_keep_two_digits() {
        assert_eq!(percent(0.00312), "0.31\u{a0}%", "below one");
        assert_eq!(percent(0.25), "25\u{a0}%", "above ten");
        assert_eq!(percent(-2e-7), "−2.0e−5\u{a0}%", "very small");
    }

    #[test]
    fn of_differences_the_middle_and_the_greatest_are_told() {
        assert_eq!(spread([0.01, -0.5, 0.02].into_iter()), ["2.0\u{a0}%", "50\u{a0}%"], "by their size");
        assert_eq!(spread(std::iter::empty()), ["no figure"; 2], "of none");
        assert_eq!(spread([3e-16, 1e-4].into_iter()), ["0.010\u{a0}%"; 2], "of two the larger is the middle");
        assert_eq!(spread(std::iter::once(3e-16)), ["rounding"; 2], "what is rounding is called so");
    }
}
