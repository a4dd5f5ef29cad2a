//! A groove cut in the jaw faces for its ring, as findings.

use alloc::vec::Vec;

use super::boring_ring::{Job, SKETCH};
use super::placing::{Line, refuse, tell_length};
use crate::boring_ring::{Groove, groove, groove_for};
use crate::findings::{Finding, Procedure};
use crate::grip::Side;
use crate::quantity::Kind;

/// How much wider than its ring a groove is cut, so that the ring goes in, m. Our own starting value.
pub(super) const PLAY: f64 = 1e-3;

impl Job<'_> {
    /// The groove for a ring of its own.
    pub(super) fn groove(&self, found: &mut Vec<Finding>) -> Option<Groove> {
        const NAME: &str = "Groove to cut in the jaw faces, its outside";
        let wall = self.plan.least_wall.max(self.plan.tool_clearance);
        let (plan, at) = (self.plan, self.placed.bored_at);
        let mut refused =
            |why: &'static str, entry| refuse(found, "ring.groove.outside", NAME, Kind::Length, why, entry);
        let own = self.used();
        if let Some(own) = own
            && groove_for(&self.place, &plan.blank, at, own.ring, wall, PLAY).is_none()
        {
            let why =
                "No strip of the jaw face takes your ring with the least metal left on either side of its groove.";
            refused(why, "ring.used");
            return None;
        }
        let of_own = own.and_then(|own| groove_for(&self.place, &plan.blank, at, own.ring, wall, PLAY));
        let made = of_own.map_or_else(|| groove(&self.place, &plan.blank, at, plan.section, wall, PLAY), Ok);
        let made = match made {
            Ok(made) if made.depth < self.place.height => made,
            Ok(_) => {
                refused("The ring to make is higher than the jaws: make it lower.", "ring.height");
                return None;
            }
            Err(room) => {
                let why = "No strip of the jaw face is wide enough for it, with the least metal left on either side: make the ring thinner.";
                refused(why, "ring.thickness");
                tell_length(
                    found,
                    &Line {
                        id: "ring.groove.room",
                        name: "Widest strip of the jaw face for a groove",
                        entry: "ring.thickness",
                        says: "Between bored face, counterbores and jaw end, less the metal left on either side; needed is the ring to make and its play",
                        formula: "width ≥ t + play",
                        given: &["t + play", "wall"],
                        symbol: "width",
                        source: SKETCH,
                    },
                    room.widest,
                    None,
                    "",
                    &[room.needed, wall],
                );
                return None;
            }
        };
        let thickness = (made.ring.outside - made.ring.inside) / 2.0;
        let sizes = [
            ("ring.groove.inside", "Groove to cut in the jaw faces, its inside", made.inside),
            ("ring.groove.outside", NAME, made.outside),
            ("ring.groove.depth", "Depth of the groove", made.depth),
            ("ring.made.inside", "Ring to make for the groove, its inside", made.ring.inside),
            ("ring.made.outside", "Ring to make for the groove, its outside", made.ring.outside),
        ];
        // A ring there is need not be made.
        let told = if own.is_some() { 3 } else { sizes.len() };
        for (id, name, value) in sizes.into_iter().take(told) {
            tell_length(
                found,
                &Line {
                    id,
                    name,
                    entry: "ring.thickness",
                    says: "In the first strip of whole metal behind the bored face that is wide enough, as wide as the ring and some play; the ring lies on the wall that pushes, flush with the face",
                    formula: "width = t + play",
                    given: &["t", "play", "wall", "s"],
                    symbol: "size",
                    source: "geometry of the jaw on its ring; play: our own starting value",
                },
                value,
                None,
                "",
                &[thickness, PLAY, wall, at],
            );
        }
        Some(made)
    }
}

/// The order in which groove and ring are made.
pub(super) fn steps(side: Side) -> Procedure {
    let stops = match side {
        Side::Outside => {
            "Clamp the jaws lightly on a scrap plug between their gripping ends, of such a size that the master jaws stand where they will be bored."
        }
        Side::Inside => {
            "Clamp the jaws lightly in a scrap ring around their gripping ends, of such a size that the master jaws stand where they will be bored."
        }
    };
    let bears = match side {
        Side::Outside => {
            "Turn the ring so that its outside fits the outer wall of the groove and its inside leaves the play told."
        }
        Side::Inside => {
            "Turn the ring so that its inside fits the inner wall of the groove and its outside leaves the play told."
        }
    };
    Procedure {
        id: "ring.groove",
        title: "Groove and ring, in this order",
        steps: [
            "Screw the jaws down on the tooth told, each on its own master jaw, all on the same tooth.",
            stops,
            "Guard closed. Face the jaws, then cut the groove to the diameters and depth told, at low speed and with light cuts: the jaws interrupt the cut.",
            bears,
            "Lay the ring in the groove with the jaws a little off it, take the scrap piece out, and clamp at the pressure for boring. The ring must lie flush and be held by every jaw.",
            "Prove the boring path in the air, then bore.",
        ]
        .into(),
    }
}
