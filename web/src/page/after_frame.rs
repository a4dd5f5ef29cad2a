//! Something done just after a frame: then the browser has found the place of everything, and need not for this.

use std::rc::Rc;

use super::delay::Delay;
use super::each_frame::EachFrame;

/// How long a frame may keep waiting, in milliseconds: none is drawn of a page that is out of sight.
const AT_LAST: i32 = 100;

/// An act that waits until the screen has drawn what was changed.
pub(crate) struct AfterFrame {
    frame: EachFrame,
    then: Rc<Delay>,
}

impl AfterFrame {
    /// `act`, to be done after a frame each time it is asked for.
    pub(crate) fn new(act: impl FnMut() + 'static) -> Self {
        let then = Rc::new(Delay::new(0, act));
        let after = Rc::clone(&then);
        Self { frame: EachFrame::new(move |_| after.restart()), then }
    }

    /// Asks for it after the next frame, in place of one that was asked for already.
    pub(crate) fn next(&self) {
        self.frame.next();
        self.then.after(AT_LAST);
    }

    /// Asks for it at once.
    pub(crate) fn now(&self) {
        self.then.restart();
    }
}
