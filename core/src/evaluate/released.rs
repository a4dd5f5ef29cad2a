//! The released profile of one surface, and what its reference circles say of it.

use alloc::string::ToString;
use alloc::vec::Vec;

use crate::contact::Lobing;
use crate::findings::{Trace, TraceCircle, Wave};
use crate::roundness::{Assessment, Profile};

/// Points around the part at which a shape is sampled.
const STATIONS: usize = 360;

/// Turned true while clamped, a surface springs to minus its clamped shape when released.
pub(super) fn assess(clamped: &Lobing) -> Option<Assessment> {
    let pitch = core::f64::consts::TAU / STATIONS as f64;
    let released: Vec<f64> = (0..STATIONS).map(|k| clamped.mean() - clamped.at(k as f64 * pitch)).collect();
    Some(Profile::equally_spaced(&released).ok()?.assess())
}

/// What a diagram of the released `surface` draws.
pub(super) fn trace(surface: &str, radius: f64, clamped: &Lobing, assessed: &Assessment) -> Trace {
    let orders = clamped.amplitudes.iter().enumerate().skip(1);
    let harmonics = orders.map(|(k, amplitude)| ((k * clamped.jaws) as u32, -amplitude)).collect();
    let circles = [
        ("least squares", assessed.least_squares),
        ("minimum zone", assessed.minimum_zone),
        ("minimum circumscribed", assessed.minimum_circumscribed),
        ("maximum inscribed", assessed.maximum_inscribed),
    ];
    Trace {
        surface: surface.to_string(),
        radius,
        released: Wave { mean: 0.0, harmonics },
        circles: circles.map(|(name, circle)| TraceCircle {
            name,
            x: circle.x,
            y: circle.y,
            radius: circle.radius,
            roundness: circle.roundness(),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_trace_fills_the_minimum_zone_and_touches_the_other_two_circles() {
        // Clamped 10 cos 3t + 4 cos 6t um; released is its opposite, 21.125 um from peak to valley (by hand, as
        // for the clamped shape). Concentric by symmetry, so all four circles are 21.125 um apart or wide.
        let clamped = Lobing { jaws: 3, amplitudes: alloc::vec![-7e-6, 10e-6, 4e-6] };
        let trace = trace("bore", 0.05, &clamped, &assess(&clamped).unwrap());
        assert!((trace.released.at(0.0) + 14e-6).abs() < 1e-18, "an inward lobe where the jaw had pushed outward");
        for circle in trace.circles {
            let error = (circle.roundness / 21.125e-6 - 1.0).abs();
            // Sampled at whole degrees, the peak is missed by at most 1 - cos(6 x 0.5 deg) of the wave.
            assert!(error < 2e-3, "{}: {} m", circle.name, circle.roundness);
            assert!(libm::hypot(circle.x, circle.y) < 1e-9, "{} stays on the axis", circle.name);
        }
        let [least_squares, zone, outer, inner] = trace.circles;
        assert!(least_squares.radius.abs() < 1e-12, "the mean of the profile");
        assert!((outer.radius - zone.radius - zone.roundness / 2.0).abs() < 1e-9, "outer circle of the zone");
        assert!((zone.radius - inner.radius - zone.roundness / 2.0).abs() < 1e-9, "inner circle of the zone");
    }
}
