//! Grip leaves with speed outside, and arrives inside.

use super::{Goal, Lesson, Want};

pub(super) const LESSON: Lesson = Lesson {
    key: "speed",
    title: "Grip leaves with speed, and arrives",
    says: &[
        "Spin throws the jaws outward. On an outside grip that takes grip away: the faster, the less holds the part, while the gauge shows the same pressure as before.",
        "Gripped from inside, the same throw presses the jaws harder into the bore. Grip arrives with speed, and with it more squeeze than there was at rest.",
    ],
    task: "At this speed the drum does not hold, and outside no pressure makes it both hold and stay round. Leave the speed alone: grip from inside, and find a pressure that does both.",
    json: include_str!("speed.json"),
    change: &["grip.side", "run.pressure", "cylinder.side"],
    goals: &[
        Goal { finding: "hold.factor", name: "Hold factor", want: Want::Kept },
        Goal { finding: "shape.roundness", name: "Roundness, released", want: Want::Kept },
    ],
    watch: &[("grip.rest", "Total grip at rest"), ("grip.speed", "Total grip at speed")],
    solution: &[("grip.side", "inside"), ("run.pressure", "0.4 MPa")],
    told: &[
        "Outside, {was grip.rest} at rest had gone down to {was grip.speed} at speed. Inside, {is grip.rest} at rest becomes {is grip.speed} to {most grip.speed}. How much of the throw reaches the part is not known well, so the hold counts on the least of it and the shape on the most.",
        "With {is pressure.set} instead of {was pressure.set} the hold factor is {is hold.factor} instead of {was hold.factor}, and the roundness {is shape.roundness}.",
    ],
    caution: "Never turn faster than the plate allows. Inside, speed stretches the part: look at its hoop stress among the findings, and mind what is thin or cast. Coming down from speed an outside grip presses again as at rest.",
};
