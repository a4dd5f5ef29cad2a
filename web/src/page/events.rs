//! What happens on the page, handed on to it.

use holdround_core::setup::declared;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    Element, Event, EventTarget, HtmlInputElement, HtmlSelectElement, HtmlTextAreaElement, KeyboardEvent, SvgElement,
};

use super::action::Action;
use super::address::{self, Asked};
use super::frame::Frame;
use super::{Page, files, lessons, opening, records, records_file, with_page};
use crate::language::spoken;
use crate::root;
use crate::view::field;
use crate::view::making::path;
use crate::view::story::panel;

/// Listens to everything the page answers to.
///
/// # Errors
/// When the browser does not let it listen.
pub(crate) fn listen() -> Result<(), JsValue> {
    let (Some(window), Some(document)) = (web_sys::window(), root::document()) else { return Ok(()) };
    on(&document, "input", |page, event| page.typed(event))?;
    on(&document, "change", |page, event| page.chosen(event))?;
    on(&document, "focusin", |page, event| page.entered(event))?;
    on(&document, "focusout", |page, _| page.left())?;
    on(&document, "click", |page, event| page.clicked(event))?;
    on(&document, "submit", |_, event| event.prevent_default())?;
    on(&document, "keydown", |page, event| page.key(event))?;
    on(&document, "pointerdown", |page, event| page.take_hold(event))?;
    on(&document, "pointermove", |page, event| page.drag(event))?;
    on(&document, "pointerup", |page, event| page.let_go(event))?;
    on(&document, "pointercancel", |page, event| page.let_go(event))?;
    on(&document, "visibilitychange", |page, _| {
        page.save();
        page.shelve();
        page.stay_awake();
    })?;
    on(&document, "dragover", |page, event| page.dropped(event))?;
    on(&document, "drop", |page, event| page.dropped(event))?;
    // What is opened tells nobody around it.
    let opened = Closure::<dyn Fn(Event)>::new(|event: Event| {
        with_page(|page| {
            page.open_line(&event);
            page.open_group(&event);
            page.tell_about(&event);
            page.show_photos();
            page.weigh_anew();
        });
    });
    document.add_event_listener_with_callback_and_bool("toggle", opened.as_ref().unchecked_ref(), true)?;
    opened.forget();
    on(&window, "beforeprint", |page, _| page.close_story())?;
    on(&window, "afterprint", |_, _| records::show_for_print(""))?;
    on(&window, "pagehide", |page, _| page.leave())?;
    on(&window, "storage", |page, _| page.hear())?;
    on(&window, "hashchange", |page, event| {
        // A locked page can still be sent elsewhere by whoever holds its address.
        page.desk.locked = false;
        let asked = Asked::by(event);
        let lesson = matches!(asked, Asked::Lesson(..));
        opening::follow(&mut page.desk, asked);
        page.frame = Frame::of(&address::changed_to(event));
        page.take_over_frame();
        if page.desk.tongue.is_none_or(|tongue| tongue == spoken()) {
            page.wear_frame();
        } else {
            page.lay_out();
        }
        page.refresh();
        if lesson {
            lessons::to_lesson();
        }
    })
}

fn on(target: &EventTarget, name: &str, act: fn(&mut Page, &Event)) -> Result<(), JsValue> {
    // Whatever else happens finds the set-up as a slider left it.
    let follows = !matches!(name, "input" | "pointermove");
    // One event may set off another, as when a redrawing takes the keyboard away from a field.
    let listener = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        with_page(|page| {
            if follows {
                page.follow();
            }
            act(page, &event);
        });
    });
    target.add_event_listener_with_callback(name, listener.as_ref().unchecked_ref())?;
    // The page listens for as long as it is open.
    listener.forget();
    Ok(())
}

fn target<T: JsCast>(event: &Event) -> Option<T> {
    event.target()?.dyn_into().ok()
}

impl Page {
    /// A key in a field, or a slider on its way.
    fn typed(&mut self, event: &Event) {
        if let Some(column) = target::<HtmlTextAreaElement>(event) {
            return self.column_typed(&column);
        }
        let Some(field) = target::<HtmlInputElement>(event) else { return };
        if field.id() == panel::SLIDER {
            return self.scrub(field.value_as_number());
        }
        if field.id() == path::SLIDER {
            return self.run_to(field.value_as_number());
        }
        if let Some(question) = field.get_attribute("data-answer") {
            return self.answer(&question, &field.value());
        }
        if let Some(id) = field.get_attribute("data-record") {
            return self.write_record(&id, &field.name(), &field.value());
        }
        if let Some(path) = field.get_attribute("data-slide") {
            return self.slide(path, field.value());
        }
        let Some(path) = field.get_attribute("data-path") else { return };
        self.follow();
        let stood = self.desk.entries.get(&path).map(str::to_owned);
        self.desk.type_in(&path, &field.value());
        // A field that is left says once more what it said key by key.
        if self.desk.entries.get(&path) != stood.as_deref() {
            self.refresh();
        }
    }

    /// A choice made, or a field left after typing.
    fn chosen(&mut self, event: &Event) {
        if let Some(select) = target::<HtmlSelectElement>(event) {
            if select.id() == panel::STEP {
                return self.tell_step(select.selected_index());
            }
            if let Some(question) = select.get_attribute("data-answer") {
                return self.answer(&question, &select.value());
            }
            if let Some(path) = select.get_attribute("data-path") {
                self.desk.history.rest();
                self.desk.type_in(&path, &select.value());
            } else if select.has_attribute("data-files") {
                return self.show_files();
            } else if let Some(key) = select.get_attribute("data-prefer") {
                self.prefer(&key, &select.value());
                if key == "language" {
                    self.lay_out();
                    root::by_id("prefer-language").iter().for_each(root::give_keyboard_back);
                }
            }
            self.refresh();
        } else if let Some(field) = target::<HtmlInputElement>(event).filter(|field| field.files().is_some()) {
            match field.get_attribute("data-photo-of") {
                Some(id) => self.take_photo(id, &field),
                None if field.has_attribute("data-setup") => {
                    field.files().iter().for_each(files::read_first);
                    // The same file may be chosen again.
                    field.set_value("");
                }
                None => records_file::read_file(&field),
            }
        } else {
            // Most fields told it key by key; some tools change them at one go.
            self.typed(event);
            // A slider says so with every arrow key: what is done to it until it is left is one change.
            if target::<Element>(event).is_some_and(|field| field.has_attribute("data-slide")) {
                return;
            }
        }
        self.desk.history.rest();
    }

    /// A field got the keyboard: the step it belongs to gets the handles.
    fn entered(&mut self, event: &Event) {
        let path = target::<Element>(event).and_then(|field| field.get_attribute("data-path"));
        let step = path.as_deref().and_then(|path| path.strip_prefix("steps.")?.split_once('.')?.0.parse().ok());
        if let Some(step) = step {
            self.choose_step(step);
        }
    }

    /// A line of a finding was opened or closed: its steps are drawn only while they can be read.
    fn open_line(&mut self, event: &Event) {
        let Some(line) = target::<Element>(event).filter(|element| element.matches(".line").unwrap_or(false)) else {
            return;
        };
        let id = line.id();
        let open = line.has_attribute("open");
        let opened = &mut self.desk.opened;
        if open != opened.contains(&id) {
            if open {
                opened.push(id.clone());
            } else {
                opened.retain(|other| *other != id);
            }
            self.show_lines();
            // In the verdict it may open below the edge of its own panel.
            if let Some(line) = root::by_id(&id).filter(|_| open && id.starts_with("line-")) {
                root::bring_into_view(&line);
            }
        }
    }

    /// A group was opened: what is made in it is drawn only while it can be seen.
    fn open_group(&mut self, event: &Event) {
        if target::<Element>(event).is_some_and(|group| group.matches(".group[open]").unwrap_or(false)) {
            self.show_making();
        }
    }

    /// What an input is about is drawn once it is asked for.
    fn tell_about(&mut self, event: &Event) {
        let Some(id) = target::<Element>(event).filter(|it| it.has_attribute("open")).map(|it| it.id()) else { return };
        if let Some((path, input)) = id.strip_prefix("about-").and_then(|path| Some((path, declared(path)?))) {
            self.regions.show(&format!("told-{path}"), field::about(&self.desk, input, path));
        }
    }

    fn clicked(&mut self, event: &Event) {
        if let Some(action) = asked_for(event) {
            if action == Action::Skip {
                event.prevent_default();
            }
            self.act(action);
        }
    }

    /// Undo and redo from the keyboard; in a text field they are the field's own.
    fn key(&mut self, event: &Event) {
        let Some(key) = event.dyn_ref::<KeyboardEvent>() else { return };
        if self.nudge(event, &key.key()) || self.nudge_point(event, &key.key()) {
            return event.prevent_default();
        }
        if matches!(key.key().as_str(), "Enter" | " ") {
            // A dimension on the drawing is no button of the browser's own.
            if let Some(action) = asked_for(event)
                .filter(|action| matches!(action, Action::GoTo(_) | Action::Dial(..)) && on_drawing(event))
            {
                event.prevent_default();
                self.act(action);
            }
            return;
        }
        if !(key.ctrl_key() || key.meta_key()) || key.alt_key() || types_text(event) {
            return;
        }
        let action = match (key.key().to_ascii_lowercase().as_str(), key.shift_key()) {
            ("z", false) => Action::Undo,
            ("z", true) | ("y", false) => Action::Redo,
            _ => return,
        };
        event.prevent_default();
        self.act(action);
    }
}

/// What the button or the dimension under the finger asks for.
fn asked_for(event: &Event) -> Option<Action> {
    Action::of(&target::<Element>(event)?.closest("[data-act], [data-entry]").ok()??)
}

fn on_drawing(event: &Event) -> bool {
    target::<SvgElement>(event).is_some()
}

fn types_text(event: &Event) -> bool {
    target::<HtmlTextAreaElement>(event).is_some()
        || target::<HtmlInputElement>(event).is_some_and(|field| field.type_() == "text")
}
