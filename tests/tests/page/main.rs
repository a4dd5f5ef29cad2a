//! The finished page in a real Chromium, used as a person uses it: the served site, and the single
//! file from the disk for what matters most.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test that cannot go on has failed")]

mod accessibility;
mod api_example;
mod broken;
mod explain;
mod faults;
mod files;
mod frames;
mod hostile;
mod indicator;
mod keeping;
mod keyboard;
mod language;
mod lessons;
mod links;
mod looks;
mod making;
mod motion;
mod own;
mod paper;
mod photo;
mod records;
mod road;
mod section;
mod sheet;
mod sheet_print;
mod sheet_sketches;
mod sliding;
mod start;
mod steps;
mod story;
mod timing;
mod touch;
mod typing;
mod undo;
mod window;
mod words;
mod zoom;
