//! Squeeze a thin ring: lobes go with the pressure.

use super::{Goal, Lesson, Want};

pub(super) const LESSON: Lesson = Lesson {
    key: "thin-ring",
    title: "Squeeze a thin ring",
    says: &[
        "Three jaws push a thin ring in where they touch, and it bulges out between them. You bore it round while it is held. Let it go and it springs back: the bore comes out with three lobes.",
        "More pressure, more lobes. Too little, and the ring slips. What is good lies between.",
    ],
    task: "Lower the clamping pressure until the bore comes out round enough and the ring still holds.",
    json: include_str!("thin-ring.json"),
    change: &["run.pressure"],
    goals: &[
        Goal { finding: "shape.roundness", name: "Roundness, released", want: Want::Kept },
        Goal { finding: "hold.factor", name: "Hold factor", want: Want::Kept },
    ],
    watch: &[("grip.rest", "Total grip at rest")],
    solution: &[("run.pressure", "0.4 MPa")],
    told: &[
        "With the first pressure, {was pressure.set}, the ring would have come out {was shape.roundness} out of round. At {is pressure.set} it is {is shape.roundness}: lobes go with the grip, and the grip goes with the pressure.",
        "The hold factor went from {was hold.factor} to {is hold.factor}, and {limit hold.factor} is wanted. For that {is pressure.least} is the least. All above it did nothing but squeeze.",
    ],
    caution: "Less pressure leaves less in hand. The grip here is worked out: read a grip gauge before you turn the pressure down, and keep above the least that the chuck's manual allows.",
};
