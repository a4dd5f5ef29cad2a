//! Something done once things have settled.

use std::cell::Cell;

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// An act that waits for a pause.
pub(crate) struct Delay {
    milliseconds: i32,
    act: Closure<dyn FnMut()>,
    waiting: Cell<Option<i32>>,
}

impl Delay {
    /// `act`, to be done after a pause of so many milliseconds.
    pub(crate) fn new(milliseconds: i32, act: impl FnMut() + 'static) -> Self {
        Self { milliseconds, act: Closure::new(act), waiting: Cell::new(None) }
    }

    /// Begins to wait, anew if it was waiting already.
    pub(crate) fn restart(&self) {
        self.after(self.milliseconds);
    }

    /// The same, for so many milliseconds this time.
    pub(crate) fn after(&self, milliseconds: i32) {
        let Some(window) = web_sys::window() else { return };
        if let Some(earlier) = self.waiting.take() {
            window.clear_timeout_with_handle(earlier);
        }
        let act = self.act.as_ref().unchecked_ref();
        self.waiting.set(window.set_timeout_with_callback_and_timeout_and_arguments_0(act, milliseconds).ok());
    }
}
