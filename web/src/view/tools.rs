//! Undo, redo, print, units, theme and language.

use holdround_core::quantity::Kind;
use maud::{Markup, html};

use crate::language::{Tongue, say, spoken};
use crate::page::desk::Desk;
use crate::page::preferences::Theme;

/// The row of tools over the parts list.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        div.actions {
            button type="button" id="undo" data-act="undo" aria-disabled=(!desk.history.can_undo()) { (say("Undo")) }
            button type="button" id="redo" data-act="redo" aria-disabled=(!desk.history.can_redo()) { (say("Redo")) }
            button type="button" id="print" data-act="print" { (say("Print")) }
        }
        div.choices {
            (choice("length", say("Length"), &["mm", "in"].map(|unit| (unit, unit)), Kind::Length.unit_in(desk.units.system).symbol))
            (choice("pressure", say("Pressure"), &units(Kind::Pressure), desk.units.pressure.symbol))
            (choice("force", say("Force"), &units(Kind::Force), desk.units.force.symbol))
            (choice("theme", say("Look"), &Theme::ALL.map(|(_, key, name)| (key, say(name))), desk.theme.key()))
            (choice("language", say("Language"), &Tongue::ALL.map(|(_, code, name)| (code, name)), spoken().code()))
        }
    }
}

fn units(kind: Kind) -> Vec<(&'static str, &'static str)> {
    kind.units().map(|unit| (unit.symbol, unit.symbol)).collect()
}

fn choice(key: &str, name: &str, choices: &[(&str, &str)], chosen: &str) -> Markup {
    html! {
        label for={ "prefer-" (key) } {
            span { (name) }
            select id={ "prefer-" (key) } data-prefer=(key) {
                @for (value, shown) in choices { option value=(value) selected[*value == chosen] { (shown) } }
            }
        }
    }
}
