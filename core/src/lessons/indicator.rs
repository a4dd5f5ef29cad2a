//! Read the indicator.

use super::{Goal, Lesson, Want};

pub(super) const LESSON: Lesson = Lesson {
    key: "indicator",
    title: "Read the indicator",
    says: &[
        "An indicator read around a held part tells more than its run-out. High once round: off-centre. Twice: oval. Once a jaw: squeezed by the jaws.",
        "How high those lobes should be at this pressure can be worked out. If the part shows less, the chuck may grip less than was entered: dry, worn, or not what its plate says. This cap was round before it was clamped. The sheet finds nothing wrong, but the chuck's condition was a guess.",
    ],
    task: "Compare the lobes read with the lobes worked out, and set the chuck's condition until they agree. Then look at the hold factor again, and set the clamping pressure.",
    json: include_str!("indicator.json"),
    change: &["chuck.condition", "run.pressure", "indicator.adopted"],
    goals: &[
        Goal {
            finding: "indicator.lobing.predicted",
            name: "Lobes worked out, like those read",
            want: Want::Near("indicator.lobing", 0.1),
        },
        Goal { finding: "hold.factor", name: "Hold factor", want: Want::Kept },
        Goal { finding: "shape.roundness", name: "Roundness, released", want: Want::Kept },
    ],
    watch: &[("indicator.lobing", "Lobes read"), ("indicator.offset", "Off-centre read")],
    solution: &[("chuck.condition", "0.5"), ("run.pressure", "1.5 MPa")],
    told: &[
        "The dial shows lobes of {is indicator.lobing}. With the condition as guessed, {was indicator.lobing.predicted} was worked out; now it is {is indicator.lobing.predicted}.",
        "On the guess {was pressure.least} would have held as you want, and the gauge stood at {was pressure.set}. With the chuck as it is, {is pressure.least} is the least.",
        "The part also sits {is indicator.offset} off-centre, and the dial shows twice that. No pressure cures it: clean, clamp with the part turned by one jaw, and if the high place stays with the chuck, recut the jaws.",
    ],
    caution: "Lobes are also low where jaws bear better than entered. Read a grip gauge before you rely on a condition that was told by lobes.",
};
