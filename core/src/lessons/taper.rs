//! Bell-mouth and taper.

use super::{Goal, Lesson, Want};

pub(super) const LESSON: Lesson = Lesson {
    key: "taper",
    title: "Bell-mouth and taper",
    says: &[
        "Sometimes the ring cannot bear where the part will, or does not stand the clamping pressure. Then some bell-mouth is left.",
        "Cut it away: bore the jaws with a taper, more metal at the tip than at the base, for an outside and an inside grip alike. Mind how it is said: per side, or on diameter, which is twice as much.",
    ],
    task: "Boring pressure and ring stay as they are. Give the jaws a taper with which they bear along their whole height, open neither at the tip nor at the base.",
    json: include_str!("taper.json"),
    change: &["jaws.taper"],
    goals: &[
        Goal { finding: "contact.share", name: "Share of the face that bears", want: Want::AtLeast(0.95) },
        Goal { finding: "contact.gap.tip", name: "Gap at the tip", want: Want::AtMost(1e-6) },
        Goal { finding: "contact.gap.base", name: "Gap at the base", want: Want::AtMost(1e-6) },
    ],
    watch: &[("jaw.taper.diameter", "Taper, on diameter"), ("contact.pressure", "Greatest pressure under a jaw")],
    solution: &[("jaws.taper", "25 µm")],
    told: &[
        "Without taper the tip stood {was contact.gap.tip} off the part and {was contact.share} of the face bore. With {is jaw.taper.diameter} on diameter the gap is {is contact.gap.tip} and the share {is contact.share}.",
        "What cancels the opening of these jaws is {is taper.right} per side. Bluing tells the same on metal: rubbed off at the base alone asks for more taper, at the tip alone for less.",
    ],
    caution: "How far your chuck tilts is assumed here. Blue the jaws or try a feeler at the tip, and enter what it showed under Making the jaws: it corrects the taper.",
};
