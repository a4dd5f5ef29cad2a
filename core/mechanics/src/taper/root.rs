//! Where a rising function crosses zero.

use super::grip::TaperError;

/// Steps after which a bracket is given up.
const MOST: usize = 40;

/// The crossing of a rising function near `start`, to within `fine`; `step` is how far to look at first. None where it
/// does not cross.
pub(super) fn rising(
    start: f64,
    step: f64,
    fine: f64,
    f: &mut dyn FnMut(f64) -> Result<f64, TaperError>,
) -> Result<Option<f64>, TaperError> {
    let (mut low, mut high) = (start, start);
    let (mut below, mut above) = (f(start)?, 0.0);
    let mut reach = step;
    let up = below <= 0.0;
    if !up {
        above = below;
    }
    // Walk until the sign turns, in growing steps.
    let mut walked = 0;
    loop {
        if walked == MOST / 2 {
            return Ok(None);
        }
        walked += 1;
        if up {
            high = low + reach;
            above = f(high)?;
            if above > 0.0 {
                break;
            }
            (low, below) = (high, above);
        } else {
            low = high - reach;
            below = f(low)?;
            if below <= 0.0 {
                break;
            }
            (high, above) = (low, below);
        }
        reach *= 2.0;
    }
    // Regula falsi, the stale end halved (Illinois).
    let mut last = 0;
    for _ in 0..MOST {
        if high - low <= fine || below == 0.0 {
            break;
        }
        let at = (high - (high - low) * above / (above - below)).max(low).min(high);
        let value = f(at)?;
        if value > 0.0 {
            (high, above) = (at, value);
            if last == 1 {
                below /= 2.0;
            }
            last = 1;
        } else {
            (low, below) = (at, value);
            if last == -1 {
                above /= 2.0;
            }
            last = -1;
        }
    }
    Ok(Some(if below == 0.0 { low } else { low + (high - low) * below / (below - above) }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn crossings_are_found_on_either_side_and_their_absence_is_told() {
        let cubic = |x: f64| Ok((x - 3.0) * (x - 3.0) * (x - 3.0) + (x - 3.0));
        for start in [-50.0, 2.99, 3.0, 80.0] {
            let root = rising(start, 0.1, 1e-9, &mut { cubic }).unwrap().unwrap();
            assert!((root - 3.0).abs() < 1e-8, "from {start}: {root}");
        }
        let mut asked = 0;
        let straight = &mut |x: f64| {
            asked += 1;
            Ok(x - 3.0)
        };
        assert_eq!(rising(2.0, 2.0, 1e-9, straight), Ok(Some(3.0)), "a straight line");
        assert_eq!(asked, 3, "both ends and the crossing, which ends it");
        assert_eq!(rising(0.0, 1.0, 1e-9, &mut |_| Ok(1.0)), Ok(None), "always above");
    }
}
