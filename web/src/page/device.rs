//! What only some devices have: a sheet to share with, and a screen that stays on when asked to.

use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

use super::{Page, files, with_page};
use crate::language::{Tongue, say};
use crate::root;

/// The button that keeps the screen on.
const AWAKE: &str = "awake";

/// Whether the screen is kept on.
#[derive(Debug, Default)]
pub(crate) struct Awake {
    wanted: bool,
    /// What the browser gave; letting go of it lets the screen go dark.
    held: Option<JsValue>,
}

impl Awake {
    /// Whether it is kept on now.
    pub(super) fn is_held(&self) -> bool {
        self.held.is_some()
    }
}

/// The function `name` of what `navigator` has under `path`, and what it belongs to.
fn offered(path: &[&str], name: &str) -> Option<(JsValue, Function)> {
    let mut of = Reflect::get(web_sys::window()?.as_ref(), &"navigator".into()).ok()?;
    for part in path {
        of = Reflect::get(&of, &(*part).into()).ok()?;
    }
    let function = Reflect::get(&of, &name.into()).ok()?.dyn_into().ok()?;
    Some((of, function))
}

/// The first language of the device that the page speaks.
pub(super) fn tongue() -> Option<Tongue> {
    let navigator = Reflect::get(web_sys::window()?.as_ref(), &"navigator".into()).ok()?;
    let languages: Array = Reflect::get(&navigator, &"languages".into()).ok()?.dyn_into().ok()?;
    languages.iter().find_map(|language| Tongue::of_code(&language.as_string()?))
}

/// Whether the device has a sheet to share with.
pub(crate) fn shares() -> bool {
    offered(&[], "share").is_some()
}

/// Whether the browser can keep the screen on.
pub(crate) fn stays_awake() -> bool {
    offered(&["wakeLock"], "request").is_some()
}

/// Does one of two things with what a promise comes to.
pub(super) fn then(promise: &JsValue, kept: impl FnOnce(JsValue) + 'static, broken: impl FnOnce() + 'static) {
    let (kept, broken) = (Closure::once_into_js(kept), Closure::once_into_js(move |_: JsValue| broken()));
    let promise: &Promise = promise.unchecked_ref();
    let _later = Reflect::get(promise, &"then".into())
        .and_then(|then| then.unchecked_into::<Function>().call2(promise, &kept, &broken));
}

/// Opens the sheet of the device to share the address of this set-up.
pub(super) fn share() {
    let (Some((navigator, share)), Some(document)) = (offered(&[], "share"), root::document()) else { return };
    let shared = Object::new();
    let address = web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    let _set = Reflect::set(&shared, &"title".into(), &document.title().into());
    let _set = Reflect::set(&shared, &"url".into(), &address.into());
    if let Ok(promise) = share.call1(&navigator, &shared) {
        then(&promise, |_| files::tell(say("Shared.")), || files::tell(say("Not shared.")));
    }
}

impl Page {
    /// Keeps the screen on from now on, or no longer.
    pub(super) fn awake_or_not(&mut self) {
        self.awake.wanted = !self.awake.wanted;
        if !self.awake.wanted
            && let Some(held) = self.awake.held.take()
        {
            let release = Reflect::get(&held, &"release".into()).map(JsCast::unchecked_into::<Function>);
            let _released = release.and_then(|release| release.call0(&held));
            tell_awake(false, "The screen goes dark as the device is set.");
            return;
        }
        self.stay_awake();
    }

    /// Asks for the screen to stay on where that is wanted: browsers let go of it whenever the page is out of sight.
    pub(super) fn stay_awake(&self) {
        let hidden = root::document().is_none_or(|document| document.hidden());
        let Some((lock, request)) = offered(&["wakeLock"], "request").filter(|_| self.awake.wanted && !hidden) else {
            return;
        };
        let refused = || with_page(|page| page.awake_told(None));
        match request.call1(&lock, &"screen".into()) {
            Ok(promise) => then(&promise, |held| with_page(|page| page.awake_told(Some(held))), refused),
            // It is being asked from within the page.
            Err(_) => tell_awake(false, REFUSED),
        }
    }

    fn awake_told(&mut self, held: Option<JsValue>) {
        self.awake.wanted = held.is_some();
        self.awake.held = held;
        match self.awake.held {
            Some(_) => tell_awake(true, "The screen stays on while this page is in sight."),
            None => tell_awake(false, REFUSED),
        }
    }
}

const REFUSED: &str = "The device did not allow it, as when its battery is low: set its own screen time.";

fn tell_awake(on: bool, words: &str) {
    if let Some(button) = root::by_id(AWAKE) {
        let _set = button.set_attribute("aria-pressed", if on { "true" } else { "false" });
    }
    files::tell(say(words));
}
