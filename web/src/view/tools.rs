//! Undo, redo, print, units and theme.

use holdround_core::quantity::Kind;
use maud::{Markup, html};

use crate::page::desk::Desk;
use crate::page::preferences::Theme;

/// The row of tools over the parts list.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        div.actions {
            button type="button" id="undo" data-act="undo" aria-disabled=(!desk.history.can_undo()) { "Undo" }
            button type="button" id="redo" data-act="redo" aria-disabled=(!desk.history.can_redo()) { "Redo" }
            button type="button" id="print" data-act="print" { "Print" }
        }
        div.choices {
            (choice("length", "Length", &["mm", "in"].map(|unit| (unit, unit)), Kind::Length.unit_in(desk.units.system).symbol))
            (choice("pressure", "Pressure", &units(Kind::Pressure), desk.units.pressure.symbol))
            (choice("force", "Force", &units(Kind::Force), desk.units.force.symbol))
            (choice("theme", "Look", &Theme::ALL.map(|(_, key, name)| (key, name)), desk.theme.key()))
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
