//! The solid against quadrature and counted cells that share nothing with the closed forms.

use super::*;
use core::f64::consts::FRAC_PI_2;

/// Integral by the double exponential rule (H. Takahasi and M. Mori, 1974), which keeps its
/// accuracy where the integrand leaves an end like a square root.
fn integral(f: &dyn Fn(f64) -> f64, from: f64, to: f64) -> f64 {
    let (middle, half, step) = (0.5 * (from + to), 0.5 * (to - from), 0.04);
    let sum: f64 = (-90..=90)
        .map(|k| {
            let t = step * f64::from(k);
            let inside = FRAC_PI_2 * libm::sinh(t);
            let weight = FRAC_PI_2 * libm::cosh(t) / (libm::cosh(inside) * libm::cosh(inside));
            weight * f(middle + half * libm::tanh(inside))
        })
        .sum();
    half * step * sum
}

fn piecewise(f: &dyn Fn(f64) -> f64, mut breaks: alloc::vec::Vec<f64>) -> f64 {
    breaks.sort_by(f64::total_cmp);
    breaks.windows(2).filter(|w| w[1] > w[0]).map(|w| integral(f, w[0], w[1])).sum()
}

/// Area and first moment of a jaw's outline between two radii, by quadrature in the other
/// coordinates than the closed forms use: blocks around the axis, sectors across it.
fn outline_between(jaw: &Jaw, end: (f64, f64), from: f64, to: f64) -> (f64, f64) {
    match jaw.shape {
        Shape::Ordinary { width } => {
            let half = 0.5 * width;
            let arc = |r: f64| {
                let side = libm::asin((half / r).min(1.0)).min(libm::acos((end.0 / r).min(1.0)));
                let start = libm::acos((end.1 / r).min(1.0));
                (start.min(side), side)
            };
            let breaks = || {
                [from, to, half, end.0, end.1, libm::hypot(end.0, half), libm::hypot(end.1, half)]
                    .map(|r| r.clamp(from, to))
                    .to_vec()
            };
            let area = |r: f64| 2.0 * r * (arc(r).1 - arc(r).0);
            let moment = |r: f64| 2.0 * r * r * (libm::sin(arc(r).1) - libm::sin(arc(r).0));
            (piecewise(&area, breaks()), piecewise(&moment, breaks()))
        }
        Shape::Wide { .. } | Shape::Pie { .. } => {
            let (angle, cut) = match jaw.shape {
                Shape::Wide { included_angle } => (0.5 * included_angle, 0.0),
                Shape::Pie { saw_cut } => (PI / f64::from(jaw.count), 0.5 * saw_cut),
                Shape::Ordinary { .. } => unreachable!("handled above"),
            };
            let (sine, cosine) = libm::sincos(angle);
            let (from, to) = (from.clamp(end.0, end.1), to.clamp(end.0, end.1));
            let height = |x: f64| {
                let low = libm::sqrt((from - x).max(0.0) * (from + x));
                let high = libm::sqrt((to - x).max(0.0) * (to + x)).min((x * sine - cut) / cosine);
                (high - low).max(0.0)
            };
            // Where the side meets a circle: x sin - y cos = cut on the circle.
            let meets = |r: f64| cut * sine + cosine * libm::sqrt((r - cut).max(0.0) * (r + cut));
            let breaks = || [0.0, cut / sine, from, to, meets(from), meets(to)].map(|x| x.clamp(0.0, to)).to_vec();
            let area = |x: f64| 2.0 * height(x);
            let moment = |x: f64| 2.0 * x * height(x);
            (piecewise(&area, breaks()), piecewise(&moment, breaks()))
        }
    }
}

#[test]
fn volume_and_centroid_match_an_independent_quadrature() {
    for jaw in samples() {
        let solid = bored(jaw);
        let end = match jaw.side {
            Side::Outside => (jaw.grip_radius - jaw.step, jaw.grip_radius - jaw.step + jaw.length),
            Side::Inside => (jaw.grip_radius + jaw.step - jaw.length, jaw.grip_radius + jaw.step),
        };
        let far = 1.5 * end.1;
        let (area, moment) = outline_between(&jaw, end, 0.0, far);
        let (cut_area, cut_moment) = match jaw.side {
            Side::Outside => outline_between(&jaw, end, 0.0, jaw.grip_radius),
            Side::Inside => outline_between(&jaw, end, jaw.grip_radius, far),
        };
        // Blank less what is bored away, the other way round than the engine reckons it.
        let (height, depth) = (jaw.height, jaw.bored_depth);
        let volume = area * height - cut_area * depth;
        let radius = (moment * height - cut_moment * depth) / volume;
        let rise = (area * height * height / 2.0 - cut_area * depth * (height - depth / 2.0)) / volume;
        for (what, value, expected) in [
            ("volume", solid.volume(), volume),
            ("centroid radius", solid.centroid_radius(), radius),
            ("centroid height", solid.centroid_height(), rise),
        ] {
            // 1e-10: the quadrature itself holds about 1e-12.
            assert!((value / expected - 1.0).abs() < 1e-10, "{jaw:?} {what}: {value} against {expected}");
        }
    }
}

/// Whether a point is metal, straight from the words that define each jaw.
fn is_metal(jaw: &Jaw, x: f64, y: f64, z: f64) -> bool {
    let r = libm::hypot(x, y);
    let (inner, outer) = match jaw.side {
        Side::Outside => (jaw.grip_radius - jaw.step, jaw.grip_radius - jaw.step + jaw.length),
        Side::Inside => (jaw.grip_radius + jaw.step - jaw.length, jaw.grip_radius + jaw.step),
    };
    let in_outline = match jaw.shape {
        Shape::Ordinary { width } => y.abs() <= 0.5 * width && (inner..=outer).contains(&x),
        Shape::Wide { included_angle } => {
            (inner..=outer).contains(&r) && libm::atan2(y.abs(), x) <= 0.5 * included_angle
        }
        Shape::Pie { saw_cut } => {
            let pitch = PI / f64::from(jaw.count);
            let from_boundary = x * libm::sin(pitch) - y.abs() * libm::cos(pitch);
            (inner..=outer).contains(&r) && from_boundary >= 0.5 * saw_cut
        }
    };
    let bored_away = z > jaw.height - jaw.bored_depth
        && match jaw.side {
            Side::Outside => r < jaw.grip_radius,
            Side::Inside => r > jaw.grip_radius,
        };
    in_outline && !bored_away
}

#[test]
fn volume_centroid_and_swing_match_counted_cells() {
    for jaw in samples() {
        let solid = bored(jaw);
        let (reach, layers) = (1.05 * solid.swing_radius(), 10);
        let (cells, dz) = (160, jaw.height / f64::from(layers));
        let d = reach / f64::from(cells);
        let (mut count, mut sum_x, mut sum_z, mut swing) = (0.0, 0.0, 0.0, 0.0_f64);
        for k in 0..layers {
            for i in 0..cells {
                for j in 0..cells {
                    let (x, y, z) = (d * (f64::from(i) + 0.5), d * (f64::from(j) + 0.5), dz * (f64::from(k) + 0.5));
                    if is_metal(&jaw, x, y, z) {
                        count += 1.0;
                        sum_x += x;
                        sum_z += z;
                        swing = swing.max(libm::hypot(x, y));
                    }
                }
            }
        }
        // Half the jaw was counted. Cells of 0.8 mm on a half-width of 10 mm: one cell in twenty-five.
        let volume = 2.0 * count * d * d * dz;
        assert!((volume / solid.volume() - 1.0).abs() < 0.05, "{jaw:?}: volume {volume}");
        assert!((sum_x / count / solid.centroid_radius() - 1.0).abs() < 0.02, "{jaw:?}: centroid radius");
        assert!((sum_z / count / solid.centroid_height() - 1.0).abs() < 0.02, "{jaw:?}: centroid height");
        let short = solid.swing_radius() - swing;
        assert!((0.0..2.0 * d).contains(&short), "{jaw:?}: farthest cell {swing}");
    }
}
