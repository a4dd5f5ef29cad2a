//! The parts list: every input that matters, by group, in shop order.

use holdround_core::setup::{Group, INPUTS, Input, LISTS, List};
use holdround_core::text::Text;
use maud::{Markup, html};

use super::{field, indicator, making};
use crate::language::{fill, fill_plain, said, say};
use crate::page::desk::Desk;

/// The whole list, before there are fields in it.
pub(crate) fn places() -> Markup {
    let making = |group: &&Group| making::GROUPS.contains(&group.key);
    html! {
        @for group in INPUTS.iter().filter(|group| !making(group)) { (place(group, false)) }
        details.group.making id="making" {
            summary { h2 { (say("Making the jaws")) } (settled("making")) }
            @for key in making::GROUPS {
                @for group in INPUTS.iter().filter(|group| group.key == key) { (place(group, true)) }
            }
        }
    }
}

/// Where it is told what is settled in a group.
fn settled(group: &str) -> Markup {
    html! { span.settled id={ "settled-" (group) } {} }
}

fn place(group: &Group, making: bool) -> Markup {
    html! {
        details.group id={ "group-" (group.key) } open[!making] hidden {
            summary { h2 { (say(group.name)) } @if making { (settled(group.key)) } }
            @if making && making::above(group.key) { (made(group)) }
            form id={ "fields-" (group.key) } {}
            @if making && !making::above(group.key) { (made(group)) }
        }
    }
}

/// Where it stands what came of a group.
fn made(group: &Group) -> Markup {
    html! { form.made id={ "made-" (group.key) } {} }
}

/// Whether a group is needed.
pub(crate) fn matters(desk: &Desk, group: &Group) -> bool {
    // The first item of a list stands for it even while the list is empty.
    group.inputs.iter().any(|input| desk.entries.matters(input, 0))
}

/// The fields of a group.
pub(crate) fn show(desk: &Desk, group: &Group) -> Markup {
    html! {
        @for rows in by_list(group.inputs) {
            @match rows.first().and_then(|input| list_of(input)) {
                Some(list) if list.name == "dial" => @if desk.entries.matters(rows[0], 0) { (indicator::list(desk, rows)) },
                Some(list) => (items(desk, list, rows)),
                None => div.rows {
                    @for input in rows.iter().filter(|input| desk.entries.matters(input, 0)) {
                        (field::show(desk, input, input.path))
                    }
                },
            }
        }
    }
}

/// Runs of inputs of the same list, or of none.
fn by_list<'a>(inputs: &'a [&'static Input]) -> impl Iterator<Item = &'a [&'static Input]> {
    inputs.chunk_by(|a, b| list_of(a).map(|list| list.name) == list_of(b).map(|list| list.name))
}

fn list_of(input: &Input) -> Option<&'static List> {
    let (name, _) = input.in_list()?;
    LISTS.iter().find(|list| list.name == name)
}

/// What one item of a list is called: as a heading, within other words, and where one is added.
fn noun(list: &str) -> [&'static str; 3] {
    match list {
        "cuts" => ["Cut {}", "cut {}", "Add a cut"],
        "steps" => ["Step {}", "step {}", "Add a step"],
        "surfaces" => ["Surface {}", "surface {}", "Add a surface"],
        "rings" => ["Ring {}", "ring {}", "Add a ring"],
        "spun" => ["Reading at speed {}", "reading at speed {}", "Add a reading at speed"],
        _ => ["Reading {}", "reading {}", "Add a reading"],
    }
}

/// The name of an entry where it stands away from its list: with the item it is of.
pub(crate) fn named(name: &Text, path: &str) -> String {
    let (name, mut parts) = (said(name), path.split('.'));
    match (parts.next(), parts.next().and_then(|at| at.parse::<usize>().ok())) {
        (Some(list), Some(at)) => format!("{name}, {}", fill_plain(noun(list)[1], &[&(at + 1)])),
        _ => name,
    }
}

/// Whether the items of the list are short enough to stand in rows of a table.
fn in_table(list: &List) -> bool {
    matches!(list.name, "steps" | "surfaces")
}

fn items(desk: &Desk, list: &List, inputs: &[&'static Input]) -> Markup {
    let count = desk.shown_items(list.name);
    let matters = |index: usize| inputs.iter().copied().filter(move |input| desk.entries.matters(input, index));
    html! {
        @if matters(0).next().is_some() {
            @if in_table(list) { (field::about_all(desk, list.name, inputs)) }
            @for index in 0..count {
                fieldset {
                    legend { (fill(noun(list.name)[0], &[&(index + 1)])) }
                    @if in_table(list) {
                        div class={ "cells " (list.name) } {
                            @for input in matters(index) { (field::cell(desk, input, &input.at(index))) }
                        }
                    } @else {
                        div.rows { @for input in matters(index) { (field::show(desk, input, &input.at(index))) } }
                    }
                    div.changes {
                        @if list.name == "steps" { (changes(list, index, count)) }
                        @if count > list.least { (button("remove", list, index, say("Remove"), true)) }
                    }
                }
            }
            @if count < list.most {
                button type="button" id={ "add-" (list.name) } data-act="add" data-list=(list.name) {
                    (say(noun(list.name)[2]))
                }
            }
        }
    }
}

/// What can be done to a step besides removing it.
fn changes(list: &List, index: usize, count: usize) -> Markup {
    html! {
        (button("add-after", list, index, say("Add after"), count < list.most))
        (button("split", list, index, say("Split in two"), count < list.most))
        (button("up", list, index, say("Move up"), index > 0))
        (button("down", list, index, say("Move down"), index + 1 < count))
    }
}

fn button(act: &str, list: &List, index: usize, words: &str, can: bool) -> Markup {
    html! {
        button type="button" id={ (act) "-" (list.name) "-" (index) } data-act=(act) data-list=(list.name) data-index=(index)
            aria-disabled=[(!can).then_some("true")]
        {
            (words) span.heard { ": " (fill(noun(list.name)[1], &[&(index + 1)])) }
        }
    }
}

/// Every field shown of a group, as declaration and path, in order.
pub(crate) fn fields(desk: &Desk, group: &Group) -> Vec<(&'static Input, String)> {
    let mut fields = Vec::new();
    for input in group.inputs.iter().copied() {
        let count = list_of(input).map_or(1, |list| desk.shown_items(list.name));
        for index in (0..count).filter(|index| desk.entries.matters(input, *index)) {
            fields.push((input, input.at(index)));
        }
    }
    fields
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_stands_in_a_list_is_named_with_its_item() {
        assert_eq!(named(&"To".into(), "surfaces.1.to"), "To, surface 2", "of two surfaces it is told which");
        assert_eq!(named(&"Job".into(), "job.name"), "Job", "what there is once goes without");
    }
}
