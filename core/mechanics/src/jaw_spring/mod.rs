//! The jaw as a spring: how its face moves along its height under the grip.
//!
//! ```
//! use holdround_mechanics::jaw_spring::{ColumnError, JawColumn, MasterJaw, Section};
//!
//! // 20 mm of full depth, then 25 mm bored away to 35 mm.
//! let sections = [(0.02, 0.05), (0.025, 0.035)].map(|(length, depth)| Section { length, width: 0.04, depth });
//! let column = JawColumn::new(&sections, 71e9, 0.33, MasterJaw::default())?;
//! assert!((column.height() - 0.045).abs() < 1e-12);
//!
//! // A force at the tip moves the tip more than one at the step does, and as much as theirs together.
//! let heights = [0.02, 0.045];
//! let matrix = column.matrix(&heights);
//! assert_eq!(matrix[3], column.give(0.045, 0.045));
//! assert!(matrix[3] > matrix[1] && (matrix[1] - matrix[2]).abs() < 1e-18);
//!
//! // Bored under the force of a ring at the step, the tip springs back further and stands proud once the ring is out.
//! let relief = column.bored_relief(0.02, 5000.0, &heights);
//! assert!(relief[0] > 1e-6 && relief[1] == 0.0);
//!
//! let nothing = Section { length: 0.0, width: 0.04, depth: 0.05 };
//! assert_eq!(
//!     JawColumn::new(&[nothing], 71e9, 0.33, MasterJaw::default()).err(),
//!     Some(ColumnError::Section { section: 0 })
//! );
//! # Ok::<(), ColumnError>(())
//! ```

mod column;

pub use column::{ColumnError, JawColumn, MasterJaw, RADIAL_STIFFNESS, Section, TILT_DEPTH, TILT_STIFFNESS};
