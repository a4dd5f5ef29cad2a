//! What the browser keeps of lessons: the one that is open, and those that are done.

use super::address::{self, Asked};
use super::desk::Desk;
use super::keep::{kept, put, storage};
use super::lessons::named;

/// Where the open lesson is kept, as in an address.
const OPEN: &str = "holdround.lesson.1";
/// Where it is kept which lessons are done.
const DONE: &str = "holdround.lessons.1";

/// What to open: the lesson that was open, unless something else is asked for.
pub(super) fn go_on(asked: Asked) -> Asked {
    if asked == Asked::Nothing { kept(OPEN).map_or(asked, |lesson| of(&lesson)) } else { asked }
}

/// The lesson that was kept; nothing, if it is none.
fn of(lesson: &str) -> Asked {
    match Asked::read(&address::of_lesson(lesson)) {
        Asked::Lesson(key, made) if named(&key).is_some() => Asked::Lesson(key, made),
        _ => Asked::Nothing,
    }
}

/// Keeps which lesson is open, and what was made of it.
pub(super) fn keep_open(desk: &Desk) {
    match desk.lesson_link() {
        Some(lesson) => put(OPEN, &lesson),
        None => drop(storage().map(|storage| storage.remove_item(OPEN))),
    }
}

/// The lessons that are done; what is not known is passed over.
pub(super) fn done() -> Vec<&'static str> {
    known(&kept(DONE).unwrap_or_default())
}

fn known(text: &str) -> Vec<&'static str> {
    text.split_whitespace().take(100).filter_map(named).map(|lesson| lesson.key).collect()
}

/// Keeps which lessons are done, besides those that another window has kept meanwhile.
pub(super) fn keep_done(keys: &[&'static str]) {
    let mut all = done();
    all.retain(|key| !keys.contains(key));
    all.extend(keys);
    put(DONE, &all.join(" "));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_lesson_that_was_open_goes_on_and_junk_in_its_place_is_nothing() {
        assert_eq!(of("taper"), Asked::Lesson("taper".into(), None), "a lesson at its start");
        for junk in ["", "nothing", "taper&2-junk", "&"] {
            assert_eq!(of(junk), Asked::Nothing, "{junk:?} opens nothing");
        }
    }

    #[test]
    fn lessons_done_survive_junk_beside_them() {
        assert_eq!(known("taper speed"), ["taper", "speed"], "those that are known");
        for junk in ["", "\0", "{\"done\":8}", "thin", "setup 2-00000000"] {
            assert!(known(junk).is_empty(), "{junk:?} is no lesson");
        }
        assert_eq!(known("x taper\n\u{fffd} speed"), ["taper", "speed"], "what else there is is passed over");
    }
}
