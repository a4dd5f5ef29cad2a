//! One cut as typed values.

use crate::quantity::{Angle, Length, Power, Ratio};

/// One cut.
#[derive(Clone, Debug)]
pub struct Cut {
    /// What it does.
    pub kind: CutKind,
    /// Whether it is taken at the pressure for finishing, where that is another.
    pub finishing: bool,
    /// Distance of the tool from the front of the jaws.
    pub distance: Length,
}

/// What a cut does, with what its force depends on.
#[derive(Clone, Debug)]
pub enum CutKind {
    /// Turning the outside.
    Turning(Turned, FeedWay),
    /// Facing.
    Facing(Turned),
    /// Boring.
    Boring(Turned, FeedWay),
    /// Grooving or parting.
    Grooving {
        /// Diameter at the tool.
        diameter: Length,
        /// Width of the insert.
        width: Length,
        /// Feed per revolution.
        feed: Length,
        /// Feed force over cutting force.
        feed_share: Ratio,
        /// Worn edge allowance.
        wear: Ratio,
    },
    /// Drilling into the solid.
    Drilling {
        /// Drill diameter.
        drill: Length,
        /// Feed per revolution.
        feed: Length,
        /// Worn edge allowance.
        wear: Ratio,
    },
    /// From the power the spindle gives.
    Power {
        /// Diameter at the tool.
        diameter: Length,
        /// The power of the cut.
        power: Power,
        /// Feed force over cutting force.
        feed_share: Ratio,
        /// Passive force over cutting force.
        passive_share: Ratio,
        /// Which way the feed goes.
        feed_way: FeedWay,
    },
}

/// A cut by a single edge along a surface.
#[derive(Clone, Debug)]
pub struct Turned {
    /// Diameter at the tool.
    pub diameter: Length,
    /// Depth of cut.
    pub depth: Length,
    /// Feed per revolution.
    pub feed: Length,
    /// Cutting edge angle.
    pub approach: Angle,
    /// Feed force over cutting force.
    pub feed_share: Ratio,
    /// Passive force over cutting force.
    pub passive_share: Ratio,
    /// Worn edge allowance.
    pub wear: Ratio,
}

/// Which way a cut feeds along the axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FeedWay {
    /// Toward the chuck.
    Toward,
    /// Away from the chuck.
    Away,
}
