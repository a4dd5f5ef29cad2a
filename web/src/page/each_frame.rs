//! Something done with every frame that the screen draws.

use std::cell::Cell;

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// An act that is done with the next frame, told the time in milliseconds.
pub(crate) struct EachFrame {
    act: Closure<dyn FnMut(f64)>,
    waiting: Cell<Option<i32>>,
}

impl EachFrame {
    /// `act`, to be done with a frame each time it is asked for.
    pub(crate) fn new(act: impl FnMut(f64) + 'static) -> Self {
        Self { act: Closure::new(act), waiting: Cell::new(None) }
    }

    /// Asks for the next frame, in place of one that was asked for already.
    pub(crate) fn next(&self) {
        let Some(window) = web_sys::window() else { return };
        if let Some(earlier) = self.waiting.take() {
            let _cancelled = window.cancel_animation_frame(earlier);
        }
        self.waiting.set(window.request_animation_frame(self.act.as_ref().unchecked_ref()).ok());
    }
}
