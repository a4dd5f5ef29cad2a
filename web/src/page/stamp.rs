//! What tells one change from another: when it was made, and an id.

use js_sys::{Date, Math};

/// The time, as records have it.
pub(super) fn now() -> String {
    Date::new_0().to_iso_string().into()
}

/// An id that nothing else has.
pub(super) fn new_id() -> String {
    let chance = || (Math::random() * 4_294_967_296.0) as u32;
    format!("{:08x}{:08x}{:08x}", chance(), chance(), chance())
}
