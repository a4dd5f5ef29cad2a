//! The jaw as a spring: how its face moves along its height under the grip.

mod column;

pub use column::{ColumnError, JawColumn, MasterJaw, RADIAL_STIFFNESS, Section, TILT_DEPTH, TILT_STIFFNESS};
