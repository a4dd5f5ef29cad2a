//! How many elements go where: through walls, towards corners and towards the jaws' edges.

use super::sizing::Sizes;
use super::strips::Strip;
use super::surface::{Band, Side};
use crate::sorting::sort;
use alloc::vec::Vec;

/// Most elements along one line between two corners.
const MOST_IN_LINE: usize = 400;

/// Elements at a jaw's edge or a shoulder are this much shorter than through the wall.
const SHARP: f64 = 12.0;

/// The same across the wall, where every element goes the whole length of the part.
const SHARP_ACROSS: f64 = 8.0;

/// Growth of elements away from an end, per length travelled.
const GROWTH: f64 = 1.0;

/// A hole is small below this share of the radius of the part around it: above it growth at speed settles without
/// more elements.
const SMALL: f64 = 0.48;

/// Longest element at a small hole, as a share of its radius; away from it they grow no faster than that.
const ROUND_HOLE: f64 = 0.2;

/// Longest element along the part at the mouth of a hole, as a share of its radius.
const MOUTH: f64 = 0.5;

/// Longest element under a jaw, as a share of the radius: high orders do not reach deeper.
const PRESSED: f64 = 0.04;

/// Element length through the thinner way of a strip, m: a thin wall bends in a straight line
/// and needs two elements, a thick one four (checked against the annulus tables).
fn through(strip: &Strip, density: f64) -> f64 {
    let thin = strip.wall().min(strip.length());
    let pieces = libm::ceil((1.0 + 6.0 * thin / strip.radius()).min(4.0) - 1e-9).max(2.0);
    thin / pieces / density
}

/// Wanted lengths along a line of a strip: the bending wave of a wall is sqrt(radius x wall).
fn sizes(strip: &Strip, extent: f64, density: f64) -> Sizes {
    let through = through(strip, density);
    let thin = strip.wall().min(strip.length());
    let wave = 0.7 * crate::sqrt(strip.radius() * thin) / density;
    let longest = if extent <= thin * 1.001 { through } else { wave.max(through) };
    Sizes { ends: [through; 2], longest, growth: [GROWTH; 2] }
}

/// For every strip: ends of elements along it as shares of its length.
pub(super) fn axial_shares(strips: &[Strip], edges: &[f64], planes: &[f64], density: f64) -> Vec<Vec<f64>> {
    let last = strips.len() - 1;
    strips
        .iter()
        .enumerate()
        .map(|(k, strip)| {
            let place = |sharp: bool| move |z: &f64| ((z - strip.z[0]) / strip.length(), sharp);
            let mut cuts: Vec<(f64, bool)> = edges.iter().map(place(true)).collect();
            cuts.extend(planes.iter().map(place(false)));
            cuts.retain(|cut| cut.0 > 1e-6 && cut.0 < 1.0 - 1e-6);
            cuts.extend([(0.0, k > 0), (1.0, k < last)]);
            // Of two cuts in one place the sharp one stays.
            sort(&mut cuts, |a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)));
            cuts.dedup_by(|b, a| b.0 - a.0 < 1e-6);
            axial(strip, &cuts, density)
        })
        .collect()
}

fn axial(strip: &Strip, cuts: &[(f64, bool)], density: f64) -> Vec<f64> {
    let sizes = sizes(strip, strip.length(), density);
    let mut shares = alloc::vec![0.0];
    for zone in cuts.windows(2) {
        let (from, part) = (zone[0].0, zone[1].0 - zone[0].0);
        let mut graded = sizes;
        for (end, cut) in graded.ends.iter_mut().zip(zone) {
            if cut.1 {
                *end /= SHARP;
            }
            if let Some(hole) = mouth(strip, cut.0) {
                *end = end.min(MOUTH * hole / density);
            }
        }
        let inside = graded.divide(part * strip.length(), MOST_IN_LINE);
        shares.extend(inside.iter().skip(1).map(|s| from + s * part));
    }
    shares
}

/// Radius of the hole that ends with a strip at this share of its length, m.
fn mouth(strip: &Strip, share: f64) -> Option<f64> {
    let [front, back] = strip.walls().0;
    let radius = if share == 0.0 { front } else { back };
    (radius > 0.0 && (share == 0.0 || share == 1.0)).then_some(radius)
}

/// For every strip, for every pair of neighbouring lines: ends of elements as shares. Strips
/// that touch share the same cuts.
pub(super) fn radial_shares(strips: &[Strip], band: &Band, density: f64) -> Vec<Vec<Vec<f64>>> {
    let mut shares: Vec<Vec<Vec<f64>>> = (0..strips.len()).map(|k| radial(strips, k, band, density)).collect();
    // One sweep each way brings every chain of touching strips to its finest member.
    for k in 1..strips.len() {
        agree(strips, &mut shares, k);
    }
    for k in (1..strips.len()).rev() {
        agree(strips, &mut shares, k);
    }
    shares
}

fn radial(strips: &[Strip], k: usize, band: &Band, density: f64) -> Vec<Vec<f64>> {
    let strip = &strips[k];
    let sizes = sizes(strip, strip.wall(), density);
    // Lines between the walls start at a neighbour's corner; a wall is one itself where a
    // neighbour stands out beyond it.
    let last = strip.lines.len() - 1;
    let before = k.checked_sub(1).and_then(|b| strips.get(b)).map(|b| b.lines_at(1));
    let after = strips.get(k + 1).map(|a| a.lines_at(0));
    let (first, end) = (strip.lines_at(0), strip.lines_at(1));
    let beyond = |test: fn((usize, usize), (usize, usize)) -> bool| {
        before.is_some_and(|b| test(b, first)) || after.is_some_and(|a| test(a, end))
    };
    let sharp = |line: usize| match line {
        0 => beyond(|other, mine| other.0 < mine.0),
        _ if line == last => beyond(|other, mine| other.1 > mine.1),
        _ => true,
    };
    let touched = band.z[0] < strip.z[1] && band.z[1] > strip.z[0];
    let pressed = touched.then_some(if band.side == Side::Bore { 0 } else { last });
    strip
        .lines
        .windows(2)
        .enumerate()
        .map(|(line, pair)| {
            let width = (pair[1][0] + pair[1][1] - pair[0][0] - pair[0][1]) / 2.0;
            let mut graded = sizes;
            if pair[0] == [0.0; 2] {
                graded.ends[0] = sizes.longest;
            }
            let ends = graded.ends.iter_mut().zip(&mut graded.growth);
            for (((end, growth), at), radii) in ends.zip([line, line + 1]).zip(pair) {
                if sharp(at) {
                    *end /= SHARP_ACROSS;
                }
                // Around a small hole displacement changes within its radius.
                let radius = radii[0].max(radii[1]);
                if radius > 0.0 && radius < SMALL * strip.radius() {
                    *end = end.min(ROUND_HOLE * radius / density);
                    *growth = ROUND_HOLE;
                }
                if Some(at) == pressed {
                    *end = end.min(PRESSED * radius / density);
                }
            }
            graded.divide(width, MOST_IN_LINE)
        })
        .collect()
}

/// Gives the lines that strips `k - 1` and `k` share the finer cuts of the two.
fn agree(strips: &[Strip], shares: &mut [Vec<Vec<f64>>], k: usize) {
    let (before, after) = shares.split_at_mut(k);
    let (Some(left), Some(right)) = (before.last_mut(), after.first_mut()) else {
        return;
    };
    let (low_left, low_right) = (strips[k - 1].first[1], strips[k].first[0]);
    let low = low_left.max(low_right);
    let high = (low_left + left.len()).min(low_right + right.len());
    for at in low..high {
        let (a, b) = (&mut left[at - low_left], &mut right[at - low_right]);
        if finer(b, a) {
            a.clone_from(b);
        } else {
            b.clone_from(a);
        }
    }
}

/// More elements, or as many with a shorter shortest one: the same choice from either side.
fn finer(b: &[f64], a: &[f64]) -> bool {
    let shortest = |s: &[f64]| s.windows(2).map(|w| w[1] - w[0]).fold(1.0, f64::min);
    a.len() < b.len() || (a.len() == b.len() && shortest(b) < shortest(a))
}
