//! What lies on the desk when the page opens, and what a link puts there later.

use holdround_core::examples::{EXAMPLES, Example};
use holdround_core::setup::Entries;
use holdround_core::text::Text;

use super::address::Asked;
use super::desk::Desk;
use super::keep::Kept;
use super::lessons;
use super::notice::{Notice, tell};
use super::own::SET_UP;
use crate::document;

/// Said once where the browser keeps nothing.
pub(crate) const NOT_KEPT: &str = "This browser keeps nothing for this page: it is full, or this is a private window or a frame. Your set-up is in the address: bookmark it.";

/// The desk at the start: what the address asks for, else what was kept, else the first worked example.
pub(crate) fn desk(asked: Asked, found: Option<Kept>) -> Desk {
    let refused = found.is_none();
    let Kept { setup, mut earlier, preferences, mut notices, .. } = found.unwrap_or_default();
    if refused {
        notices.push(Notice::new(NOT_KEPT));
    }
    let (lesson, asked) = match asked {
        Asked::Lesson(key, made) => (Some((key, made)), None),
        asked => (None, wanted(asked, &mut notices)),
    };
    let replaced = asked.as_ref().and(setup.as_ref()).filter(|kept| asked.as_ref() != Some(kept) && is_work(kept));
    replaced.map(|kept| earlier.add(kept.clone(), String::new()));
    let first = || EXAMPLES.first().and_then(opened).unwrap_or_default();
    let mut desk = Desk::new(asked.or(setup).unwrap_or_else(first));
    if let Some(preferences) = preferences {
        (desk.units, desk.theme, desk.tongue) = preferences.read();
    }
    desk.notices = notices;
    desk.earlier = earlier;
    if let Some((key, made)) = lesson {
        open_lesson(&mut desk, key, made);
    }
    desk
}

fn open_lesson(desk: &mut Desk, key: String, made: Option<Entries>) {
    match lessons::named(&key) {
        Some(lesson) => desk.open_lesson(lesson, made),
        None => tell(&mut desk.notices, Notice::about("There is no lesson of this name.", key)),
    }
}

/// Puts what a new address asks for on the desk; work that lay there is kept.
pub(crate) fn follow(desk: &mut Desk, asked: Asked) {
    if let Asked::Lesson(key, made) = asked {
        return open_lesson(desk, key, made);
    }
    if let Some(entries) = wanted(asked, &mut desk.notices) {
        replace(desk, entries);
    }
}

/// Puts `entries` on the desk; work that lay there is kept.
pub(crate) fn replace(desk: &mut Desk, entries: Entries) {
    desk.leave_lesson();
    if desk.entries != entries {
        if is_work(&desk.entries) {
            desk.earlier.add(desk.entries.clone(), String::new());
        }
        if desk.entries.count("rings") > 0 {
            desk.rings = Some(desk.entries.clone());
        }
        // Rings are the shop's, not the job's.
        desk.rings = desk.rings.take().filter(|_| entries.count("rings") == 0);
        desk.open(entries);
        // It was said of the job that lay there.
        desk.notices.retain(|notice| notice.says != SET_UP);
    }
}

/// The set-up that is asked for; what cannot be opened is told.
fn wanted(asked: Asked, notices: &mut Vec<Notice>) -> Option<Entries> {
    match asked {
        Asked::Nothing | Asked::Lesson(..) => None,
        Asked::Setup(entries) => Some(entries),
        Asked::Example(id) => {
            let entries = EXAMPLES.iter().find(|example| example.id == id).and_then(opened);
            if entries.is_none() {
                tell(notices, Notice::about("There is no worked example of this name.", id));
            }
            entries
        }
        Asked::Damaged(error, link) => {
            let says = Text::of("The link cannot be opened: {}. Nothing of it was used.").with(&error);
            tell(notices, Notice::about(says, link));
            None
        }
    }
}

/// Whether someone typed this: it is neither empty nor a worked example.
pub(super) fn is_work(entries: &Entries) -> bool {
    let example = EXAMPLES.iter().any(|example| opened(example).as_ref() == Some(entries));
    *entries != Entries::default() && !example
}

fn opened(example: &Example) -> Option<Entries> {
    document::entries(example.json).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::preferences::{Preferences, Theme};
    use crate::units::Units;
    use holdround_core::quantity::UnitSystem;
    use holdround_core::setup::LinkError;

    fn work(length: &str) -> Entries {
        let mut entries = Entries::default();
        entries.set("part.length", length);
        entries
    }

    fn kept(entries: Entries) -> Option<Kept> {
        let preferences = Some(Preferences::of(Units::of(UnitSystem::Inch), Theme::Shop, None));
        Some(Kept { setup: Some(entries), preferences, ..Kept::default() })
    }

    fn earlier(desk: &Desk) -> Vec<Entries> {
        desk.earlier.0.iter().map(|(entries, _)| entries.clone()).collect()
    }

    #[test]
    fn a_link_comes_before_the_store_and_the_store_is_not_lost() {
        let mut desk = desk(Asked::Setup(work("40 mm")), kept(work("50 mm")));
        assert_eq!(desk.entries, work("40 mm"), "the link was asked for");
        assert_eq!(earlier(&desk), [work("50 mm")], "the stored work can be gone back to");
        assert_eq!(desk.units.system, UnitSystem::Inch, "preferences hold whatever is opened");
        follow(&mut desk, Asked::Example("thin-ring".into()));
        let both = [work("40 mm"), work("50 mm")];
        assert_eq!(earlier(&desk), both, "and so can work that an example replaces");
        follow(&mut desk, Asked::Example("fast-sleeve".into()));
        assert_eq!(earlier(&desk), both, "an example is nobody's work");
    }

    #[test]
    fn what_cannot_be_opened_is_kept_for_copying_and_breaks_nothing() {
        let damaged = Kept { notices: vec![Notice::about("It cannot be read.", "{")], ..Kept::default() };
        let mut desk = desk(Asked::Damaged(LinkError::Damaged, "1-x".into()), Some(damaged));
        let kept: Vec<_> = desk.notices.iter().filter_map(|notice| notice.kept.as_deref()).collect();
        assert_eq!(kept, ["{", "1-x"], "both texts are there");
        assert!(desk.faults.is_empty() && desk.waiting.is_some(), "the first example is on the desk");
        follow(&mut desk, Asked::Damaged(LinkError::Damaged, "1-x".into()));
        follow(&mut desk, Asked::Example("nothing".into()));
        assert_eq!(desk.notices.len(), 3, "the same is told once");
    }

    #[test]
    fn a_link_to_a_lesson_keeps_the_job_and_one_to_something_else_closes_it() {
        let lesson = |key: &str| Asked::Lesson(key.into(), None);
        let mut desk = desk(lesson("taper"), kept(work("50 mm")));
        let open = |desk: &Desk| desk.lesson.as_ref().map(|open| open.lesson.key);
        assert_eq!((open(&desk), earlier(&desk).len()), (Some("taper"), 0), "the lesson, and no offer to go back");
        follow(&mut desk, lesson("speed"));
        assert_eq!(open(&desk), Some("speed"), "another lesson");
        follow(&mut desk, lesson("nothing"));
        assert_eq!((open(&desk), desk.notices.len()), (Some("speed"), 1), "a name that is none is told");
        follow(&mut desk, Asked::Example("fast-sleeve".into()));
        assert_eq!((open(&desk), earlier(&desk)), (None, vec![work("50 mm")]), "the job can be gone back to");
    }

    #[test]
    fn rings_of_the_shop_can_be_taken_to_the_next_job() {
        let mut with_ring = work("50 mm");
        with_ring.set("rings.0.outside", "120 mm");
        let mut desk = desk(Asked::Setup(with_ring), Some(Kept::default()));
        follow(&mut desk, Asked::Example("fast-sleeve".into()));
        let rings = desk.rings.clone();
        follow(&mut desk, Asked::Example("thin-ring".into()));
        assert!(rings.is_some() && desk.rings == rings, "offered until they are taken or left");
        let rings = rings.unwrap();
        desk.take_rings(&rings);
        assert_eq!(desk.entries.get("rings.0.outside"), Some("120 mm"), "the ring is in the list");
        assert_ne!(desk.entries.get("part.length"), Some("50 mm"), "and nothing else came along");
    }

    #[test]
    fn without_link_and_store_the_first_example_opens() {
        let first = EXAMPLES.first().and_then(opened);
        assert_eq!(Some(desk(Asked::Nothing, Some(Kept::default())).entries), first, "the first example");
        assert_eq!(desk(Asked::Nothing, kept(work("9"))).entries, work("9"), "stored work comes first");
        assert_eq!(desk(Asked::Nothing, None).notices.len(), 1, "no store is told");
    }
}
