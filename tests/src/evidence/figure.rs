//! Numbers as the page writes them.

/// A number to six digits, with a power of ten where it is very large or small.
pub(super) fn number(value: f64) -> String {
    let size = value.abs();
    if value == 0.0 {
        "0".into()
    } else if (1e-3..1e6).contains(&size) {
        let digits = (5.0 - libm::log10(size).floor()).max(0.0) as usize;
        let text = format!("{value:.digits$}");
        match text.contains('.') {
            true => text.trim_end_matches('0').trim_end_matches('.').into(),
            false => text,
        }
    } else {
        format!("{value:.5e}")
    }
}

/// A share, as per cent to two digits.
pub(super) fn percent(share: f64) -> String {
    let of_hundred = share * 100.0;
    if of_hundred == 0.0 {
        "0 %".into()
    } else if of_hundred.abs() < 1e-3 {
        format!("{of_hundred:.1e} %")
    } else {
        let digits = (1.0 - libm::log10(of_hundred.abs()).floor()).max(0.0) as usize;
        format!("{of_hundred:.digits$} %")
    }
}

#[cfg(test)]
mod tests {
    use super::{number, percent};

    #[test]
    fn numbers_keep_six_digits() {
        assert_eq!(number(1234.5678), "1234.57", "before and after the point");
        assert_eq!(number(-0.25), "-0.25", "no empty digits");
        assert_eq!(number(3.2e-7), "3.20000e-7", "small ones by a power of ten");
        assert_eq!(number(120_000.0), "120000", "whole ones without a point");
    }

    #[test]
    fn shares_keep_two_digits() {
        assert_eq!(percent(0.00312), "0.31 %", "below one");
        assert_eq!(percent(0.25), "25 %", "above ten");
        assert_eq!(percent(-2e-7), "-2.0e-5 %", "very small");
    }
}
