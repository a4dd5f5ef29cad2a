//! The taper to bore into soft jaws, and what readings of bored jaws teach about the chuck.
//!
//! Jaws are bored while the boring ring leans them, and grip while the part leans them. What differs between the two
//! opens the bore at one end; a taper closes it. More metal at the tip than at the base counts as positive, for both
//! grips, per side.
//!
//! The taper to bore cancels the jaws' own opening and no more. A part that gives more at one end of the face is
//! pressed less there even by jaws that stand along the axis. To even that out, the jaws would have to squeeze the
//! part out of true where it is weakest, or stand open at the tip: so it is told beside the taper, and not bored.
//!
//! Tilt of the master jaw leans the whole face, so that a chuck softer or stiffer than thought acts as a change of
//! taper. One pressed face therefore answers for every tilt stiffness, and for whatever else leans the face
//! ([`learn`]). Across a wide face the lean follows the cosine of the angle from the jaw's middle, and a taper does
//! not: there the answer is a little off, and the next reading puts it right.

mod bluing;
mod grip;
mod learn;
mod root;

pub use bluing::{Bluing, Marked};
pub use grip::{Aim, End, Grip, TaperError};
pub use learn::{FEELER, Learned, Reading, Shows, Tilt, learn};

#[cfg(test)]
mod tests;
