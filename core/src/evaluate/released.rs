//! The released profile of one surface, and what its reference circles say of it.

use crate::contact::Lobing;
use crate::findings::{Trace, TraceCircle, Wave};
use crate::text::Text;

/// The four reference circles of the released surface: least squares, minimum zone, minimum circumscribed and
/// maximum inscribed. Turned true while clamped, it springs to minus its clamped shape.
///
/// All four stand on the axis: the shape repeats from jaw to jaw, so a circle off the axis would fit as well turned
/// by a jaw, and the circle midway between the two at least as well, for each is the best of a convex problem.
pub(super) fn circles(clamped: &Lobing) -> [TraceCircle; 4] {
    let [lowest, highest] = clamped.extremes().map(|u| clamped.mean() - u);
    let (low, high) = (lowest.min(highest), lowest.max(highest));
    let circle = |name, radius| TraceCircle { name, x: 0.0, y: 0.0, radius, roundness: high - low };
    [
        circle("least squares", 0.0),
        circle("minimum zone", f64::midpoint(low, high)),
        circle("minimum circumscribed", high),
        circle("maximum inscribed", low),
    ]
}

/// What a diagram of the released `surface` draws.
pub(super) fn trace(surface: Text, radius: f64, clamped: &Lobing, circles: [TraceCircle; 4]) -> Trace {
    let orders = clamped.amplitudes.iter().enumerate().skip(1);
    let harmonics = orders.map(|(k, amplitude)| ((k * clamped.jaws) as u32, -amplitude)).collect();
    Trace { surface, radius, released: Wave { mean: 0.0, harmonics }, circles }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::roundness::{Profile, ReferenceCircle};
    use alloc::vec::Vec;

    #[test]
    fn the_circles_are_those_that_fitting_finds() {
        // Fitted to 3600 stations by `roundness`, which knows of no symmetry. A station misses the peak of the
        // shortest wave by at most 1 - cos(24 x 0.05 deg) of it.
        for jaws in [2, 3, 4, 6] {
            let clamped = Lobing { jaws, amplitudes: alloc::vec![-7e-6, 10e-6, 4e-6, -2e-6, 1e-6] };
            let turn = core::f64::consts::TAU / 3600.0;
            let released: Vec<f64> = (0..3600).map(|k| clamped.mean() - clamped.at(f64::from(k) * turn)).collect();
            let fitted = Profile::equally_spaced(&released).unwrap().assess();
            let found: [ReferenceCircle; 4] =
                [fitted.least_squares, fitted.minimum_zone, fitted.minimum_circumscribed, fitted.maximum_inscribed];
            for (ours, theirs) in circles(&clamped).into_iter().zip(found) {
                let name = ours.name;
                assert!(
                    (ours.roundness - theirs.roundness()).abs() < 3e-9,
                    "{jaws} jaws, {name}: {ours:?}, {theirs:?}"
                );
                assert!((ours.radius - theirs.radius).abs() < 3e-9, "{jaws} jaws, {name}: {ours:?}, {theirs:?}");
                assert!(libm::hypot(theirs.x, theirs.y) < 1e-9, "{jaws} jaws, {name} stays on the axis: {theirs:?}");
            }
        }
    }

    #[test]
    fn the_trace_is_the_opposite_of_the_clamped_shape() {
        // Clamped 10 cos 3t + 4 cos 6t um is 21.125 um from peak to valley (by hand, as for the clamped shape).
        let clamped = Lobing { jaws: 3, amplitudes: alloc::vec![-7e-6, 10e-6, 4e-6] };
        let trace = trace("bore".into(), 0.05, &clamped, circles(&clamped));
        assert!((trace.released.at(0.0) + 14e-6).abs() < 1e-18, "an inward lobe where the jaw had pushed outward");
        for circle in trace.circles {
            assert!((circle.roundness / 21.125e-6 - 1.0).abs() < 1e-6, "{}: {} m", circle.name, circle.roundness);
        }
    }
}
