//! Bored too big, too small: where a jaw bears.

use super::{Goal, Lesson, Want};

pub(super) const LESSON: Lesson = Lesson {
    key: "bored-size",
    title: "Bored too big, too small",
    says: &[
        "Bored larger than the part, a jaw touches an outside in its middle alone. Bored smaller, it touches at its two edges. Either way less of the jaw holds than you see.",
        "Pie jaws show it most: they can hold all the way round, if the size is right. These were bored too big.",
    ],
    task: "Change the diameter the jaws are bored to until they bear nearly all over and the bore comes out round enough. Then go on, too small, and watch the edges dig in.",
    json: include_str!("bored-size.json"),
    change: &["jaws.bored_diameter"],
    goals: &[
        Goal { finding: "shape.roundness", name: "Roundness, released", want: Want::Kept },
        Goal { finding: "contact.share", name: "Share of the face that bears", want: Want::AtLeast(0.9) },
    ],
    watch: &[("contact.bearing", "Bearing: 0 middle, 1 edges"), ("contact.pressure", "Greatest pressure under a jaw")],
    solution: &[("jaws.bored_diameter", "119.98 mm")],
    told: &[
        "Bored {was bore.off_nominal} off the nominal size the jaws made lobes of {was shape.roundness}; at {is bore.off_nominal} it is {is shape.roundness}. The share of the face that bears went from {was contact.share} to {is contact.share}.",
        "Right is a little under the part: squeezed, the part is smaller than on the bench, and the jaws should fit it then. Under Making the jaws, Boring the jaws, the page looks for the roundest size by itself.",
    ],
    caution: "Parts differ. What fits the largest is too big for the smallest: enter the tolerance of the gripped diameter, and both ends are worked out.",
};
