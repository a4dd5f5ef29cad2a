//! Lessons: the list of them, and the one that is open, with how its task stands.

use holdround_core::findings::{Findings, Mark};
use holdround_core::lessons::{Change, Check, LESSONS, Lesson, Seen, figures};
use holdround_core::quantity::Measure;
use holdround_core::setup::{Input, declared};
use maud::{Markup, html};

use super::{field, mark};
use crate::language::{fill, fill_plain, said, say};
use crate::page::address;
use crate::page::desk::Desk;
use crate::page::lessons::{Open, strayed};
use crate::units::Units;

/// Every lesson by its link, and whether it is done.
pub(crate) fn list(desk: &Desk, kept: bool) -> Markup {
    html! {
        h2 { (say("Lessons")) }
        p.hint {
            (say("Short tasks on jobs of our own. What is on the sheet now comes back when you leave them.")) " "
            @if kept { (say("What you have done is remembered in this browser alone.")) }
            @else { (say("This browser keeps nothing: what is done is forgotten when the page closes.")) }
        }
        ol {
            @for lesson in LESSONS {
                li {
                    a href=(address::of_lesson(lesson.key)) { (say(lesson.title)) }
                    @if desk.done.contains(&lesson.key) { " " span.done { (mark::drawn(Mark::Within)) " " (say("done")) } }
                }
            }
        }
    }
}

/// The lesson that is open; nothing if none is.
pub(crate) fn show(desk: &Desk) -> Markup {
    let Some(open) = &desk.lesson else { return html! {} };
    let lesson = open.lesson;
    let number = LESSONS.iter().take_while(|other| other.key != lesson.key).count() + 1;
    html! {
        p.which { (fill("Lesson {} of {}", &[&number, &LESSONS.len()])) @if desk.done.contains(&lesson.key) { ", " span.done { (mark::drawn(Mark::Within)) " " (say("done")) } } }
        h2 { (say(lesson.title)) }
        @for says in lesson.says { p { (say(says)) } }
        p.task { strong { (say("Task:")) " " } (say(lesson.task)) }
        p.fields { @for input in fields(desk, lesson) { (go_to(input)) " " } }
        (standing(desk, open))
        p.state { (state(desk, open)) }
        @for change in strayed(open) { (stray(change, desk.units)) }
        @if !strayed(open).is_empty() {
            p { button type="button" id="lesson-back" data-act="lesson-back" { (say("Put that back")) } }
        }
        @if open.rested.as_ref().is_some_and(Check::is_done) && desk.faults.is_empty() { (told(open, desk)) }
        div.actions {
            @if let Some(next) = open.next() {
                button type="button" id="lesson-next" data-act="lesson-next" { (say("Next lesson")) span.heard { ": " (say(next.title)) } }
            }
            button type="button" id="lesson-over" data-act="lesson-over" aria-disabled=[(desk.entries == open.start).then_some("true")] { (say("Start over")) }
            button type="button" id="lesson-show" data-act="lesson-show" { (say("Show me")) }
            button type="button" id="lesson-leave" data-act="lesson-leave" { (say("Leave the lesson")) }
        }
    }
}

/// The line beside those of the verdict that leads to the lesson.
pub(crate) fn line(desk: &Desk) -> Markup {
    html! {
        @if let Some(open) = desk.lesson.as_ref().filter(|_| desk.faults.is_empty()) {
            p.task-line { button type="button" id="lesson-go" data-act="lesson-go" { (fill("Lesson: {}", &[&short(open)])) } }
        }
    }
}

/// What is said of the task when the verdict is read aloud.
pub(crate) fn spoken(desk: &Desk) -> String {
    let told = |open| " ".to_owned() + &fill_plain("Lesson: {}", &[&state(desk, open)]);
    desk.lesson.as_ref().map_or_else(String::new, told)
}

/// The inputs to be changed that are on the sheet.
fn fields(desk: &Desk, lesson: &Lesson) -> impl Iterator<Item = &'static Input> {
    let shown = |input: &&Input| desk.entries.matters(input, 0) && input.path != "indicator.adopted";
    lesson.change.iter().filter_map(|path| declared(path)).filter(shown)
}

fn go_to(input: &Input) -> Markup {
    html! {
        button type="button" id={ "lesson-to-" (input.path) } data-act="goto" data-path=(input.path) { (fill("Go to {}", &[&say(input.name)])) }
    }
}

/// What is wanted and watched: at the start and now.
fn standing(desk: &Desk, open: &Open) -> Markup {
    let units = desk.units;
    let was = open.was.as_ref();
    let is = desk.good.as_ref().map(|(_, findings)| findings);
    html! {
        table.standing-of-task {
            thead { tr { td {} th scope="col" { (say("At the start")) } th scope="col" { (say("Now")) } } }
            tbody {
                @for (at, goal) in open.lesson.goals.iter().enumerate() {
                    @let seen = open.check.as_ref().and_then(|check| check.seen.get(at));
                    tr {
                        th scope="row" { (say(goal.name)) @if let Some(seen) = seen { " " span.limit { (wanted(seen, units)) } } }
                        td { (told_of(was, goal.finding, units)) }
                        td {
                            @if let Some(seen) = seen {
                                (mark::drawn(if seen.met { Mark::Within } else { Mark::Beyond })) " "
                                span.value { (seen.value.as_ref().map_or_else(|_| "—".to_owned(), |value| units.show(seen.kind, *value))) } " "
                                span.word { @if seen.met { (say("met")) } @else { (say("not yet")) } }
                                @if let Err(why) = &seen.value { p.refusal { (said(why)) } }
                            } @else { "—" }
                        }
                    }
                }
                @for (id, name) in open.lesson.watch {
                    tr {
                        th scope="row" { (say(name)) }
                        td { (told_of(was, id, units)) }
                        td { (told_of(is.filter(|_| open.check.is_some()), id, units)) }
                    }
                }
            }
        }
    }
}

/// What is wanted of a goal: at most 30 µm.
fn wanted(seen: &Seen, units: Units) -> String {
    let show = |value| units.show(seen.kind, value);
    match (seen.least, seen.most) {
        (Some(least), Some(most)) => fill_plain("{} to {}", &[&show(least), &show(most)]),
        (Some(least), None) => fill_plain("at least {}", &[&show(least)]),
        (None, Some(most)) => fill_plain("at most {}", &[&show(most)]),
        (None, None) => String::new(),
    }
}

/// A finding, or a dash while there is none.
fn told_of(findings: Option<&Findings>, id: &str, units: Units) -> String {
    let finding = findings.and_then(|findings| findings.get(id));
    let value = finding.and_then(|finding| Some(units.show(finding.kind, *finding.value.as_ref().ok()?)));
    value.unwrap_or_else(|| "—".to_owned())
}

/// How the task stands, in a few words.
fn short(open: &Open) -> String {
    match &open.check {
        None => say("working it out").to_owned(),
        Some(check) if check.is_done() => say("all met, read why").to_owned(),
        Some(check) if check.all_met() => say("met, but by other means").to_owned(),
        Some(check) => fill_plain("{} of {} met", &[&check.met(), &check.seen.len()]),
    }
}

/// The same in a sentence or two.
fn state(desk: &Desk, open: &Open) -> String {
    let Some(check) = &open.check else { return say("Working it out.").to_owned() };
    if !desk.faults.is_empty() {
        return say("Correct what is at fault; what stands here is of the last valid set-up.").to_owned();
    }
    if check.is_done() {
        let shown = open.is_given(&desk.entries) && !desk.done.contains(&open.lesson.key);
        return if shown {
            say("This is one way. Start over and find your own: then the task counts as done.")
        } else {
            say("The task is done.")
        }
        .to_owned();
    }
    if check.all_met() {
        return say("All is met, but not by what the lesson is about.").to_owned();
    }
    let mut words = fill_plain("{} of {} met.", &[&check.met(), &check.seen.len()]);
    let missing = open.lesson.goals.iter().zip(&check.seen).find(|(_, seen)| !seen.met);
    if let Some((goal, seen)) = missing
        && let Ok(value) = &seen.value
    {
        words.push(' ');
        words.push_str(&fill_plain(
            "{}: {}, wanted {}.",
            &[&say(goal.name), &desk.units.show(seen.kind, *value), &wanted(seen, desk.units)],
        ));
    }
    for change in &check.changed {
        words.push(' ');
        words.push_str(&fill_plain("You changed {}.", &[&what(change, desk.units)]));
    }
    words
}

/// A change the lesson is not about.
fn stray(change: &Change, units: Units) -> Markup {
    html! {
        p.stray { (mark::drawn(Mark::Refused)) " " (fill("You changed {}. The lesson is not about that, and the task counts only with it as it was.", &[&what(change, units)])) }
    }
}

/// A change in words: Roundness allowed, 30 µm, to 100 µm.
fn what(change: &Change, units: Units) -> String {
    let Some(input) = declared(&change.path) else { return change.path.clone() };
    let [was, is] = [&change.was, &change.is].map(|text| entered(input, text, units));
    fill_plain("{} from {} to {}", &[&say(input.name), &was, &is])
}

/// An entry as the reader knows it.
fn entered(input: &Input, text: &str, units: Units) -> String {
    let name = match input.kind() {
        Some(kind) => Measure::parse(kind, text).ok().map(|measure| units.show(kind, measure.si)),
        None => field::choice_name(input, text),
    };
    name.unwrap_or_else(|| if text.is_empty() { say("nothing").to_owned() } else { text.to_owned() })
}

/// What happened and why, once all its figures are known, and what to beware of.
fn told(open: &Open, desk: &Desk) -> Markup {
    let figures = open.was.as_ref().zip(desk.good.as_ref());
    let filled = |text| {
        let (was, (_, is)) = figures?;
        figures::fill(say(text), was, is, |kind, value| desk.units.show(kind, value))
    };
    html! {
        div.told {
            h3 { (say("What happened")) }
            @for text in open.lesson.told.iter().filter_map(|text| filled(text)) { p { (text) } }
            p.caution { strong { (say("In the shop:")) " " } (say(open.lesson.caution)) }
        }
    }
}
