//! The boring program as text, to be copied or saved; or why there is none.

use holdround_core::jaw_program;
use holdround_core::setup::Setup;
use maud::{Markup, html};

use crate::language::{said, say, spoken};
use crate::units::Units;

/// Where the text stands.
pub(crate) const TEXT: &str = "program-text";
/// Where it is told what became of it.
pub(crate) const TOLD: &str = "program-told";

/// A program of what is not typed any more could be run for what is.
pub(super) fn held_back() -> Markup {
    html! {
        h3 { (say("Program")) }
        p.stop { (say("No program: an entry must be corrected first.")) }
    }
}

/// The text, never without its warning.
pub(super) fn show(setup: &Setup, units: Units) -> Markup {
    html! {
        h3 { (say("Program")) }
        @match jaw_program(setup, units.system, spoken().language()) {
            Ok(text) => {
                p.stop { (say("UNPROVEN. Run it in air first, slowly, with the ring clamped and the guard closed. Stand clear of the plane of the jaws.")) }
                textarea.program id=(TEXT) readonly rows="14" spellcheck="false" aria-label=(say("Program, unproven")) { (text) }
                div.buttons {
                    button type="button" id="copy-program" data-act="copy-program" { (say("Copy")) }
                    button type="button" id="save-program" data-act="save-program" { (say("Save as file")) }
                }
                p id=(TOLD) role="status" {}
            },
            Err(why) => p.stop { (say("No program.")) " " (said(&why)) },
        }
    }
}
