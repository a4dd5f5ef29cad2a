//! The program that cuts soft jaws: path of the tool, what it sweeps, what it would hit, and its text.
//!
//! All of it is planned in the plane of `u` and `z`. `u` grows into the metal: it is the radius where jaws are
//! bored for an outside grip, and minus the radius where their outer ends are turned for an inside grip, so that
//! one plan serves both. `z` is 0 at the front of the jaws after the skim, and negative toward the chuck.

mod collision;
mod error;
mod outline;
mod plan;
mod swept;
mod text;

pub use collision::{Collision, Obstacle, ToolPart, collisions};
pub use error::PlanError;
pub use outline::{JawCut, Tool, least_relief_width};
pub use plan::{Cutting, LIFT, Move, Plan, Purpose, STAND_OFF};
pub use swept::swept;
pub use text::{Heading, decimals, text};

#[cfg(test)]
mod tests;
