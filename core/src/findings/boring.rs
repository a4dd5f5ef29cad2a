//! What the drawings of boring show: the path of the tool and the bluing pictures.

use alloc::vec::Vec;

use crate::program::{Collision, Move};
use crate::taper::Bluing;

/// The path that cuts the jaws, and what it leaves.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct JawPath {
    /// The moves, in order. The first is reached along the axis, then across it.
    pub moves: Vec<Move>,
    /// What the finishing pass leaves: radius and z of each corner, m; z 0 at the front after the skim.
    pub shape: Vec<[f64; 2]>,
    /// Diameter at which the jaws stand before, m.
    pub standing: f64,
    /// Metal taken off the front, m.
    pub skim: f64,
    /// Nose radius, m. The tip is the corner of the square around the nose, into the metal and toward the chuck.
    pub nose: f64,
    /// Diameter of the bar, m, and how far it stands out.
    pub bar: [f64; 2],
    /// The first move on which each part of the tool would hit something.
    pub collisions: Vec<Collision>,
}

/// Where bluing would rub off with one taper.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct BluingPicture {
    /// The taper, m per side, more metal at the tip.
    pub taper: f64,
    /// Share of the face and of its thirds that is rubbed off, and where it is marked.
    pub bluing: Bluing,
    /// Whether each point of half a face is rubbed off, on the grid of the scene's pressure map.
    pub rubbed: Vec<bool>,
    /// Gap along the middle of the jaw, m, from base to tip.
    pub gap: Vec<f64>,
}
