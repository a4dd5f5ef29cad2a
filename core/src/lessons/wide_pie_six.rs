//! Wide, pie and six jaws: the same grip spread, and what the jaws weigh.

use super::{Goal, Lesson, Want};

pub(super) const LESSON: Lesson = Lesson {
    key: "wide-pie-six",
    title: "Wide, pie and six jaws",
    says: &[
        "The same pressure does less harm when it is spread. Wide jaws hold more of the circle, pie jaws nearly all of it. With six jaws the ring bends over shorter spans between them.",
        "But jaws weigh, and at speed their weight pulls an outside grip open. Heavy jaws can lose more than they gain.",
    ],
    task: "Leave pressure and speed alone. Choose jaws with which the bore comes out round enough and the ring still holds. More than one choice does.",
    json: include_str!("wide-pie-six.json"),
    change: &["jaws.kind", "jaws.width", "jaws.angle", "jaws.saw_cut", "jaws.material", "chuck.jaws"],
    goals: &[
        Goal { finding: "shape.roundness", name: "Roundness, released", want: Want::Kept },
        Goal { finding: "hold.factor", name: "Hold factor", want: Want::Kept },
    ],
    watch: &[("jaw.mass", "One top jaw weighs"), ("grip.speed", "Total grip at speed")],
    solution: &[("jaws.kind", "pie"), ("jaws.material", "aluminium-6061")],
    told: &[
        "At the same pressure the roundness went from {was shape.roundness} to {is shape.roundness}.",
        "One top jaw weighed {was jaw.mass} and weighs {is jaw.mass} now; all of them throw {is spin.force} outward at this speed, before it was {was spin.force}. Of {is grip.rest} at rest, {is grip.speed} is left. Aluminium jaws are light: try the same ones in steel.",
        "Other jaws, further down the page, sets choices like these side by side.",
    ],
    caution: "Pie jaws must be bored to the part: at another size they bear on a strip or on their edges. A chuck with six jaws has a plate of its own: take grip, speed and jaw weight from that.",
};
