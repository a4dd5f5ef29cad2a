//! Where bluing would rub off: the picture of the contact in thirds along the face.

use super::grip::Grip;
use crate::contact::Contact;

/// Share of the face, and of each third of it, where bluing rubs off.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Bluing {
    /// Of the whole face.
    pub face: f64,
    /// Of the third next to the seat.
    pub base: f64,
    /// Of the middle third.
    pub middle: f64,
    /// Of the third next to the front.
    pub tip: f64,
    /// Where it marks the face.
    pub marked: Marked,
}

/// Where bluing marks the face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
pub enum Marked {
    /// At the base only.
    Base,
    /// At both ends.
    Even,
    /// At the tip only.
    Tip,
}

impl Bluing {
    /// Of jaws pressed on a part.
    #[must_use]
    pub fn of(grip: &Grip<'_>, contact: &Contact) -> Self {
        let angles = grip.face.arc().angles();
        let points = grip.heights.len();
        let [from, to] = grip.bears;
        let rubbed = grip.rubbed(contact);
        // For each third: what is rubbed off, and all there is.
        let mut areas = [[0.0; 2]; 3];
        for (point, height) in grip.heights.iter().enumerate() {
            let third = ((3.0 * (height - from) / (to - from)) as usize).min(2);
            let length = reach(grip.heights, point);
            for (angle, rubbed) in rubbed.iter().skip(point).step_by(points).enumerate() {
                let area = length * reach(angles, angle);
                let [off, all] = &mut areas[third];
                *off += if *rubbed { area } else { 0.0 };
                *all += area;
            }
        }
        let share = |[off, all]: [f64; 2]| if all > 0.0 { off / all } else { 0.0 };
        let face = areas.iter().fold([0.0; 2], |sum, area| [sum[0] + area[0], sum[1] + area[1]]);
        let [base, middle, tip] = areas.map(share);
        Self { face: share(face), base, middle, tip, marked: grip.marked(contact) }
    }
}

impl Marked {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Base => "Bluing rubs off at the base; the tip hardly bears or stands open. Too little taper.",
            Self::Even => "Bluing rubs off at both ends of the face.",
            Self::Tip => "Bluing rubs off at the tip; contact is lost at the base, or nearly. Too much taper.",
        }
    }
}

/// Half the distance between a point's neighbours.
pub(super) fn reach(points: &[f64], at: usize) -> f64 {
    let before = points.get(at.wrapping_sub(1)).unwrap_or(&points[at]);
    let after = points.get(at + 1).unwrap_or(&points[at]);
    (after - before) / 2.0
}
