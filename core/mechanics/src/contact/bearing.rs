//! What the pressure on a face amounts to: forces, where it bears, how hard.

use super::face::{Contact, Face};
use super::lines::dot;
use alloc::vec::Vec;

impl Face<'_> {
    /// Force of one jaw along its axis, N.
    pub fn force(&self, contact: &Contact) -> f64 {
        dot(&self.compliance.weight, &contact.pressure)
    }

    /// Sum of one jaw's normal forces around its face, N: what friction acts on.
    pub fn normal_force(&self, contact: &Contact) -> f64 {
        dot(&self.compliance.area, &contact.pressure)
    }

    /// How hard each point of the face presses: its angle from the jaw's middle (rad), its z (m), and
    /// its normal force (N) on both halves of the face together.
    pub fn normal_forces<'c>(&'c self, contact: &'c Contact) -> impl Iterator<Item = [f64; 3]> + 'c {
        let points = &self.part.points;
        let places = self.arc.angles().iter().flat_map(move |angle| points.iter().map(move |z| (*angle, *z)));
        let forces = contact.pressure.iter().zip(&self.compliance.area).map(|(pressure, area)| pressure * area);
        places.zip(forces).map(|((angle, z), force)| [angle, z, force])
    }

    /// Share of the face's area that bears.
    pub fn contact_share(&self, contact: &Contact) -> f64 {
        let bears = contact.pressure.iter().map(|p| if *p > 0.0 { 1.0 } else { 0.0 });
        let pressed: f64 = bears.zip(&self.compliance.area).map(|(on, a)| on * a).sum();
        pressed / self.compliance.area.iter().sum::<f64>()
    }

    /// Mean distance of the normal force from the middle of the face, as a share of its
    /// half-arc: 0.5 when even, 1 when all of it is at the edges, 0 in the middle.
    pub fn edge_bearing(&self, contact: &Contact) -> f64 {
        let points = self.part.points.len();
        let angles = self.arc.angles();
        let half = angles.last().copied().unwrap_or(1.0);
        let moment: f64 = contact
            .pressure
            .iter()
            .zip(&self.compliance.area)
            .enumerate()
            .map(|(k, (p, a))| p * a * angles[k / points])
            .sum();
        moment / half / self.normal_force(contact)
    }

    /// Force along the jaw's axis on each band point, N.
    pub fn force_along(&self, contact: &Contact) -> Vec<f64> {
        let points = self.part.points.len();
        let mut along = alloc::vec![0.0; points];
        for (k, (p, c)) in contact.pressure.iter().zip(&self.compliance.weight).enumerate() {
            along[k % points] += p * c;
        }
        along
    }

    /// Where along the axis the force of a jaw acts on the part, m.
    pub fn centre_along(&self, contact: &Contact) -> f64 {
        let along = self.force_along(contact);
        dot(&along, &self.part.points) / along.iter().sum::<f64>()
    }

    /// Gap left along the middle of the face at each band point, m: what a feeler gauge meets.
    pub fn gap_along<'c>(&self, contact: &'c Contact) -> &'c [f64] {
        contact.clearance.get(..self.part.points.len()).unwrap_or_default()
    }

    /// Greatest mean pressure over any stretch of `length` (m) around the face, along any line
    /// through a band point, Pa. The pressure at a rigid edge itself has no bound and depends on
    /// the grid; its mean over a stated length does not.
    pub fn greatest_mean_pressure(&self, contact: &Contact, length: f64) -> f64 {
        let points = self.part.points.len();
        let angles = self.arc.angles();
        let window = (length / self.part.radius).max(0.0);
        let mut greatest: f64 = 0.0;
        for point in 0..points {
            let line: Vec<f64> = contact.pressure.iter().skip(point).step_by(points).copied().collect();
            greatest = greatest.max(greatest_mean(angles, &line, window));
        }
        greatest
    }
}

/// Greatest mean of a straight-line pressure, even about angle 0, over any window of angles.
fn greatest_mean(angles: &[f64], line: &[f64], window: f64) -> f64 {
    let half = angles.last().copied().unwrap_or(0.0);
    if window <= 0.0 {
        return line.iter().copied().fold(0.0, f64::max);
    }
    let window = window.min(2.0 * half);
    // Integral from 0 to each angle.
    let mut sums = alloc::vec![0.0];
    for (a, p) in angles.windows(2).zip(line.windows(2)) {
        sums.push(sums[sums.len() - 1] + (a[1] - a[0]) * 0.5 * (p[0] + p[1]));
    }
    // Integral from 0 to any angle, odd about 0.
    let integral = |to: f64| {
        let end = to.abs().min(half);
        let k = angles.partition_point(|angle| *angle < end).max(1) - 1;
        let sum = match (&angles[k..], &line[k..]) {
            ([a, b, ..], [p, q, ..]) => {
                let share = (end - a) / (b - a);
                sums[k] + (end - a) * (p + share * (q - p) / 2.0)
            }
            _ => sums[k],
        };
        if to < 0.0 { -sum } else { sum }
    };
    // Windows that start or end at a point, and the one about the middle: between these the mean
    // of straight lines hardly changes.
    let starts = angles.iter().flat_map(|a| [*a, a - window, -a - window]);
    starts
        .chain([-window / 2.0])
        .map(|start| start.max(-half).min(half - window))
        .map(|start| (integral(start + window) - integral(start)) / window)
        .fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mean_over_a_length_is_the_integral_over_it() {
        // Pressure |t| on -1..1: over 0.5 from the edge the mean is 0.75, over all of it 0.5.
        let (angles, line) = ([0.0, 0.3, 1.0], [0.0, 0.3, 1.0]);
        for (window, wanted) in [(0.5, 0.75), (2.0, 0.5), (9.0, 0.5), (0.0, 1.0)] {
            let got = greatest_mean(&angles, &line, window);
            assert!((got - wanted).abs() < 1e-12, "window {window}: {got} for {wanted}");
        }
        // A face half as wide bears half as hard on the whole.
        let got = greatest_mean(&[0.0, 0.2, 0.5], &[0.0, 0.2, 0.5], 9.0);
        assert!((got - 0.25).abs() < 1e-12, "all of a narrow face: {got}");
        // A peak in the middle, 1 - |t|: over 0.5 about the middle the mean is 0.875.
        let got = greatest_mean(&angles, &[1.0, 0.7, 0.0], 0.5);
        assert!((got - 0.875).abs() < 1e-12, "about the middle: {got}");
    }
}
