//! Mid-stroke, teeth and ring.

use super::{Goal, Lesson, Want};

pub(super) const LESSON: Lesson = Lesson {
    key: "mid-stroke",
    title: "Mid-stroke, teeth and ring",
    says: &[
        "Jaws at the end of their stroke have nowhere to go: nothing left to close on the part, or none to open for loading it. So they are bored near the middle. How near is common practice, without a source.",
        "Where they stand while bored depends on two things together: the tooth on which the blank sits, and the ring it closes on.",
    ],
    task: "There are two rings in the drawer. Under Making the jaws choose tooth and ring so that the jaws are bored near the middle of their stroke, with room to load the part and metal left at the screws.",
    json: include_str!("mid-stroke.json"),
    change: &["stroke.tooth", "ring.used"],
    goals: &[
        Goal { finding: "stroke.from_middle", name: "From the middle of the stroke", want: Want::Kept },
        Goal { finding: "stroke.clearance", name: "Clearance for loading, per side", want: Want::Kept },
        Goal { finding: "stroke.wall", name: "Metal to a screw counterbore", want: Want::Kept },
    ],
    watch: &[("stroke.bored", "Bored at, from fully closed"), ("ring.diameter", "Ring for mid-stroke, outside")],
    solution: &[("stroke.tooth", "4"), ("ring.used", "1")],
    told: &[
        "The jaws stood {was stroke.bored} from fully closed, {was stroke.from_middle} from the middle. Now it is {is stroke.bored} and {is stroke.from_middle}, and {limit stroke.from_middle} is allowed.",
        "On this tooth a ring made to suit would be {is ring.diameter} across; on the first one it would have been {was ring.diameter}. One tooth further is one pitch on the radius, so each ring in the drawer has a tooth that suits it.",
    ],
    caution: "Every jaw on the same tooth, every screw engaged and torqued. At the end of the stroke the gauge still shows pressure, and nothing holds the part.",
};
