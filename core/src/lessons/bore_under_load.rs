//! Why jaws are bored under load.

use super::{Goal, Lesson, Want};

pub(super) const LESSON: Lesson = Lesson {
    key: "bore-under-load",
    title: "Why bore under load",
    says: &[
        "A soft jaw gives. Press on it and it leans back, most at its tip, so that the mouth opens: bell-mouth. Jaws bored loose are straight while nothing presses, and lean as soon as they grip.",
        "Bored while they press on a ring, they lean already, and the tool cuts the lean away.",
    ],
    task: "These jaws were bored loose. Set the pressure while bored, and where the ring bears if you like, so that the part is held along the whole jaw. Both fields are in The jaws.",
    json: include_str!("bore-under-load.json"),
    change: &["jaws.boring_pressure", "jaws.ring_height"],
    goals: &[
        Goal { finding: "contact.share", name: "Share of the face that bears", want: Want::AtLeast(0.95) },
        Goal { finding: "contact.gap.tip", name: "Gap at the tip", want: Want::AtMost(1e-6) },
        Goal { finding: "contact.gap.base", name: "Gap at the base", want: Want::AtMost(1e-6) },
    ],
    watch: &[("contact.pressure", "Greatest pressure under a jaw")],
    solution: &[("jaws.boring_pressure", "2.4 MPa")],
    told: &[
        "Bored loose, the tip stood {was contact.gap.tip} off the part and {was contact.share} of the face bore. Bored under load it is {is contact.gap.tip} and {is contact.share}, and the greatest pressure under a jaw went from {was contact.pressure} to {is contact.pressure}.",
        "Press the ring in the direction of the grip, at the height of the part, and with about the clamping pressure. That is common practice, without a source; what was worked out here agrees with it.",
    ],
    caution: "While jaws are bored, nothing but their own pressure holds the ring. Prove the program in the air and at low speed, guard closed, and stand clear of the plane of the jaws.",
};
