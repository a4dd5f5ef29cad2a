//! Reference circles.
