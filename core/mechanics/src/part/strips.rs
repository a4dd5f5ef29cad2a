//! Strips of a profile, cut by radial lines that neighbours share, so that a mesh conforms.
//!
//! Where two strips meet, the corners of either are break points of the other. A break runs
//! through its strip as a straight line to the far end, where it joins a break already there if
//! that costs little slope, or makes a new one, which runs on.

use super::profile::Profile;
use alloc::vec::Vec;

/// Steepest slope (radius over length) by which a line may swerve to meet a break.
const SWERVE: f64 = 0.2;

/// A length of the part whose inner and outer lines are straight.
#[derive(Clone, Debug)]
pub(crate) struct Strip {
    /// Start and end along the axis, m.
    pub(crate) z: [f64; 2],
    /// Radii of each line at start and end, m, from the inside out.
    pub(crate) lines: Vec<[f64; 2]>,
    /// Where its first line stands among the breaks of its start and of its end.
    pub(crate) first: [usize; 2],
}

impl Strip {
    /// Wall at mid-length, m.
    pub(crate) fn wall(&self) -> f64 {
        let (inner, outer) = self.walls();
        (outer[0] + outer[1] - inner[0] - inner[1]) / 2.0
    }

    /// Largest outer radius, m.
    pub(crate) fn radius(&self) -> f64 {
        let (_, outer) = self.walls();
        outer[0].max(outer[1])
    }

    /// Inner and outer line: radii at start and end.
    pub(crate) fn walls(&self) -> ([f64; 2], [f64; 2]) {
        let none = [0.0; 2];
        (*self.lines.first().unwrap_or(&none), *self.lines.last().unwrap_or(&none))
    }

    /// Numbers of its first and last line among the breaks of its start (0) or end (1).
    pub(crate) fn lines_at(&self, end: usize) -> (usize, usize) {
        (self.first[end], self.first[end] + self.lines.len() - 1)
    }

    /// Length along the axis, m.
    pub(crate) fn length(&self) -> f64 {
        self.z[1] - self.z[0]
    }
}

/// Cuts a profile into strips whose lines meet end to end.
pub(crate) fn strips(profile: &Profile) -> Vec<Strip> {
    let mut strips = merged(profile);
    let mut breaks = corners(&strips);
    for (k, strip) in strips.iter_mut().enumerate() {
        let from = within(&breaks[k], strip, 0);
        let to = within(&breaks[k + 1], strip, 1);
        let made = carry(&from, &to, strip.length() * SWERVE);
        for line in &made {
            insert(&mut breaks[k + 1], line[1]);
        }
        strip.lines = made;
    }
    for (k, strip) in strips.iter_mut().enumerate().rev() {
        let to = within(&breaks[k + 1], strip, 1);
        for end in to {
            match strip.lines.binary_search_by(|line| line[1].total_cmp(&end)) {
                Ok(_) => {}
                Err(at) => {
                    let (below, above) = (strip.lines[at - 1], strip.lines[at]);
                    let share = (end - below[1]) / (above[1] - below[1]);
                    let start = below[0] + share * (above[0] - below[0]);
                    strip.lines.insert(at, [start, end]);
                    insert(&mut breaks[k], start);
                }
            }
        }
    }
    for (k, strip) in strips.iter_mut().enumerate() {
        for end in 0..2 {
            let start = strip.lines.first().map_or(0.0, |line| line[end]);
            strip.first[end] = breaks[k + end].partition_point(|b| *b < start);
        }
    }
    strips
}

/// Joins steps that continue each other straight on.
fn merged(profile: &Profile) -> Vec<Strip> {
    let mut strips: Vec<Strip> = Vec::new();
    let mut z = 0.0;
    for step in profile.steps() {
        let end = z + step.length;
        let lines = [step.inner, step.outer].map(|d| [d[0] / 2.0, d[1] / 2.0]);
        match strips.last_mut() {
            Some(last) if goes_on(last, &lines, step.length) => {
                last.z[1] = end;
                for (kept, more) in last.lines.iter_mut().zip(lines) {
                    kept[1] = more[1];
                }
            }
            _ => strips.push(Strip { z: [z, end], lines: lines.to_vec(), first: [0, 0] }),
        }
        z = end;
    }
    strips
}

fn goes_on(strip: &Strip, lines: &[[f64; 2]; 2], length: f64) -> bool {
    strip.lines.iter().zip(lines).all(|(a, b)| {
        let slope = (a[1] - a[0]) / strip.length();
        a[1] == b[0] && (b[1] - b[0] - slope * length).abs() <= 1e-9 * b[0]
    })
}

/// Radii of the corners at each plane between strips and at both ends.
fn corners(strips: &[Strip]) -> Vec<Vec<f64>> {
    let mut breaks: Vec<Vec<f64>> = (0..=strips.len()).map(|_| Vec::new()).collect();
    for (k, strip) in strips.iter().enumerate() {
        for line in &strip.lines {
            insert(&mut breaks[k], line[0]);
            insert(&mut breaks[k + 1], line[1]);
        }
    }
    breaks
}

fn insert(breaks: &mut Vec<f64>, radius: f64) {
    if let Err(at) = breaks.binary_search_by(|b| b.total_cmp(&radius)) {
        breaks.insert(at, radius);
    }
}

/// The breaks that lie on a strip's own end.
fn within(breaks: &[f64], strip: &Strip, end: usize) -> Vec<f64> {
    let (inner, outer) = strip.walls();
    breaks.iter().copied().filter(|b| *b >= inner[end] && *b <= outer[end]).collect()
}

/// Runs every break of one end to the other, keeping their order.
fn carry(from: &[f64], to: &[f64], swerve: f64) -> Vec<[f64; 2]> {
    let ends = |list: &[f64]| match list {
        [] => (0.0, 0.0),
        [only] => (*only, *only),
        [first, .., last] => (*first, *last),
    };
    let ((from_in, from_out), (to_in, to_out)) = (ends(from), ends(to));
    let mut lines = alloc::vec![[from_in, to_in]];
    for &start in from.iter().filter(|b| **b > from_in && **b < from_out) {
        let last = lines[lines.len() - 1];
        let share = (start - last[0]) / (from_out - last[0]);
        let straight = last[1] + share * (to_out - last[1]);
        let near = swerve.min((to_out - last[1]) / 4.0);
        let joined = to
            .iter()
            .copied()
            .filter(|b| *b > last[1] && *b < to_out && (b - straight).abs() <= near)
            .min_by(|a, b| (a - straight).abs().total_cmp(&(b - straight).abs()));
        lines.push([start, joined.unwrap_or(straight)]);
    }
    lines.push([from_out, to_out]);
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part::profile::Step;

    fn cut(steps: &[Step]) -> Vec<Strip> {
        strips(&Profile::new(steps).expect("a sound profile"))
    }

    #[test]
    fn lines_of_neighbours_meet_end_to_end() {
        let parts = [
            Step::cylinder(0.01, 0.10, 0.0),
            Step { length: 0.02, outer: [0.10, 0.08], inner: [0.06, 0.05] },
            Step::cylinder(0.005, 0.12, 0.07),
            Step::cylinder(0.03, 0.09, 0.05),
            Step::cylinder(0.004, 0.084, 0.0),
        ];
        let strips = cut(&parts);
        assert_eq!(strips.len(), parts.len(), "nothing here continues straight");
        for pair in strips.windows(2) {
            let (a, b) = (&pair[0], &pair[1]);
            let low = a.walls().0[1].max(b.walls().0[0]);
            let high = a.walls().1[1].min(b.walls().1[0]);
            let left: Vec<f64> = a.lines.iter().map(|l| l[1]).filter(|r| *r >= low && *r <= high).collect();
            let right: Vec<f64> = b.lines.iter().map(|l| l[0]).filter(|r| *r >= low && *r <= high).collect();
            assert_eq!(left, right, "shared radii are the same numbers");
            for line in a.lines.windows(2) {
                assert!(line[0][0] <= line[1][0] && line[0][1] < line[1][1], "lines keep their order: {line:?}");
            }
        }
    }

    #[test]
    fn a_cylinder_split_in_three_is_one_strip() {
        let piece = Step::cylinder(0.01, 0.1, 0.08);
        let strips = cut(&[piece, piece, piece]);
        assert_eq!(strips.len(), 1, "split steps add nothing");
        assert!((strips[0].length() - 0.03).abs() < 1e-15, "lengths add up");
    }
}
