//! The screens the page is held to.

use serde_json::{Value, json};

/// A screen in CSS pixels, and whether fingers work it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Viewport {
    /// Width, in CSS pixels.
    pub width: u32,
    /// Height, in CSS pixels.
    pub height: u32,
    /// Whether it is worked by touch; such a screen also reports no hover and a coarse pointer.
    pub touch: bool,
}

impl Viewport {
    /// A tablet on its side, beside the machine.
    pub const TABLET: Self = Self { width: 1180, height: 820, touch: true };
    /// A tablet upright.
    pub const TABLET_UPRIGHT: Self = Self { width: 820, height: 1180, touch: true };
    /// A phone upright.
    pub const PHONE: Self = Self { width: 390, height: 844, touch: true };
    /// A screen on a desk, with a mouse.
    pub const DESK: Self = Self { width: 1440, height: 900, touch: false };

    pub(crate) fn metrics(self) -> Value {
        json!({
            "width": self.width,
            "height": self.height,
            "deviceScaleFactor": 1,
            "mobile": self.touch,
        })
    }
}
