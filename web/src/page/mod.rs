//! The page: what lies on the desk, the regions that show it, and what is done after a pause.

mod action;
pub(crate) mod address;
mod after_frame;
pub(crate) mod compare;
mod delay;
pub(crate) mod desk;
mod device;
mod drag;
mod each_frame;
pub(crate) mod earlier;
pub(crate) mod entry_text;
mod events;
mod fields;
mod files;
pub(crate) mod frame;
mod hand_out;
mod history;
pub(crate) mod indicator;
mod influence;
mod items;
mod keep;
pub(crate) mod lessons;
mod lessons_store;
mod making;
mod motion;
mod notice;
mod opening;
pub(crate) mod own;
mod photo;
mod picture;
pub(crate) mod preferences;
pub(crate) mod recent;
pub(crate) mod record_of_desk;
mod records;
mod records_file;
mod records_store;
mod regions;
pub(crate) mod shelf;
mod showing;
mod sliding;
mod stamp;
mod story;
mod window;

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::mem;

use holdround_core::quantity::{Kind, Unit};
use wasm_bindgen::JsValue;

use address::Asked;
use after_frame::AfterFrame;
use delay::Delay;
use desk::Desk;
use device::Awake;
use each_frame::EachFrame;
use frame::Frame;
use keep::{Kept, Store};
use notice::Notice;
use preferences::Theme;
use regions::Regions;
use shelf::Shelf;
use showing::{dress, stage};

use crate::language::{self, Tongue};
use crate::root;
use crate::view::{
    examples, files as files_view, lessons as lessons_view, notices, sheet, title_block, tools, verdict,
};

thread_local! {
    static PAGE: RefCell<Option<Page>> = const { RefCell::new(None) };
}

/// Time for a change to settle before it is kept.
const BEFORE_KEEPING: i32 = 400;
/// Time for a change to settle before bands and bounds are worked out.
const BEFORE_COMPLETING: i32 = 250;
/// How long a slice of work may hold the page, in milliseconds: well under a frame's worth even on a slow tablet.
const SLICE: f64 = 8.0;
/// Time for a change to settle before the verdict is spoken.
const BEFORE_SPEAKING: i32 = 700;

/// The open page.
pub(crate) struct Page {
    desk: Desk,
    regions: Regions,
    /// Which fields of each group are shown, by its key, and which sliders.
    structures: BTreeMap<String, String>,
    store: Store,
    keeps: bool,
    unkept: bool,
    keeping: Delay,
    /// Whether the address is still to tell what was kept.
    unaddressed: bool,
    addressing: AfterFrame,
    speaking: Delay,
    working: AfterFrame,
    /// How long was drawn since a frame was last waited for, in milliseconds.
    drawn: f64,
    completing: Delay,
    tracing: Delay,
    /// Where a slider was moved to, until the next frame takes it: the entry, and what it says.
    slid: Option<(String, String)>,
    following: EachFrame,
    /// Whether the window of pressure and speed is in sight, as long as something moves.
    window_seen: Option<bool>,
    running: Delay,
    run: making::Run,
    /// The job told step by step, while it is.
    telling: story::Telling,
    /// Whether what stands beside groups of fields that were just drawn is still to be shown.
    unfinished: bool,
    /// The next step of drawing what was found.
    drawing: Option<usize>,
    /// A size that is being dragged.
    drag: Option<drag::Drag>,
    /// The pointer that holds the window's point.
    point: Option<i32>,
    /// The jaw records.
    shelf: Shelf,
    shelving: Delay,
    /// Other jaws, beside those set.
    beside: compare::Beside,
    comparing: Delay,
    /// The start of a lesson, once more.
    recalling: Delay,
    /// What was asked for beside the set-up.
    frame: Frame,
    /// Whether the screen is kept on.
    awake: Awake,
    /// Answers for a job of one's own.
    own: own::Own,
    before_weighing: Delay,
    weighing: Delay,
}

/// Puts a set-up on the desk, draws the sheet and begins to listen.
///
/// # Errors
/// When the browser does not let the page listen.
pub(crate) fn open() -> Result<(), JsValue> {
    let asked = Asked::at_opening();
    let damaged = matches!(asked, Asked::Damaged(..));
    let frame = Frame::at_opening();
    let own = frame.is_own();
    let (store, kept) = if own { Store::open() } else { (Store::default(), Some(Kept::default())) };
    let asked = if own { lessons_store::go_on(asked) } else { asked };
    let mut desk = opening::desk(asked, kept);
    if own {
        desk.done = lessons_store::done();
    }
    let keeps = own && !desk.notices.contains(&Notice::new(opening::NOT_KEPT));
    let mut page = Page {
        desk,
        regions: Regions::default(),
        structures: BTreeMap::new(),
        store,
        keeps,
        // A link that cannot be opened stays in the address until something is changed.
        unkept: !damaged,
        keeping: Delay::new(BEFORE_KEEPING, || with_page(Page::save)),
        unaddressed: false,
        // To change the address the browser lays the page out.
        addressing: AfterFrame::new(|| with_page(Page::write_address)),
        speaking: Delay::new(BEFORE_SPEAKING, || with_page(|page| page.speak())),
        working: AfterFrame::new(|| with_page(Page::work)),
        drawn: 0.0,
        completing: Delay::new(BEFORE_COMPLETING, || with_page(Page::complete)),
        tracing: Delay::new(0, || with_page(Page::trace)),
        slid: None,
        following: EachFrame::new(|_| with_page(Page::follow)),
        window_seen: None,
        running: Delay::new(making::TICK, || with_page(Page::tick)),
        run: making::Run::default(),
        telling: story::Telling::default(),
        unfinished: true,
        drawing: None,
        drag: None,
        point: None,
        shelf: Shelf::default(),
        shelving: Delay::new(BEFORE_KEEPING, || with_page(Page::shelve)),
        beside: compare::Beside::default(),
        comparing: Delay::new(0, || with_page(Page::go_on_comparing)),
        recalling: Delay::new(0, || with_page(Page::recall)),
        frame,
        awake: Awake::default(),
        own: own::Own::kept(),
        before_weighing: Delay::new(BEFORE_COMPLETING, || with_page(Page::begin_weighing)),
        weighing: Delay::new(0, || with_page(Page::weigh)),
    };
    page.take_over_frame();
    page.lay_out();
    page.working.now();
    page.keeping.restart();
    page.go_on();
    let first = PAGE.with(|kept| kept.replace(Some(page)).is_none());
    if own {
        records_store::open();
    }
    frame::keep_telling_height();
    if first { events::listen() } else { Ok(()) }
}

/// Does something with the page. Events that the page's own redrawing sets off find it busy, and are let go.
fn with_page(act: impl FnOnce(&mut Page)) {
    PAGE.with(|page| {
        if let Ok(mut page) = page.try_borrow_mut() {
            page.as_mut().map(act);
        }
    });
}

impl Page {
    /// Draws the whole sheet in the language that is wanted; what stands in it is still to be shown.
    fn lay_out(&mut self) {
        language::speak(self.desk.tongue.or_else(device::tongue).unwrap_or_default());
        root::tell_styles("lang", Some(language::spoken().code()));
        if let Some(place) = root::by_id(root::PLACE) {
            // What was opened stays so.
            regions::replace(&place, &sheet::show(is_wide()).into_string());
        }
        self.regions = Regions::default();
        self.structures.clear();
        self.desk.opened.clear();
        self.unfinished = true;
        self.wear_frame();
        self.show_lessons();
        self.regions.show("examples", examples::show());
        self.regions.show("files", files_view::show(device::shares(), device::stays_awake(), self.awake.is_held()));
        self.regions.show("tools", tools::show(&self.desk));
        dress(&self.desk);
    }

    /// Shows what changed, and keeps and speaks it after a pause.
    fn refresh(&mut self) {
        self.unkept = true;
        self.show();
        self.keeping.restart();
        self.go_on();
    }

    /// Works on what waits, a slice at a time so that the page stays responsive.
    fn work(&mut self) {
        let begun = now();
        if self.unfinished {
            self.show_fields();
            if !self.unfinished {
                self.desk.look_at_task();
                self.regions.show("verdict", title_block::show(&self.desk));
                self.show_lesson();
                dress(&self.desk);
                self.draw_from(1);
            }
            self.draw_on(begun);
        } else if self.desk.waiting.is_none() {
            // A slider may have put off what was to be drawn.
            let Some(step) = self.drawing else { return };
            self.draw(step);
            if self.drawing.is_some() {
                self.draw_on(begun);
            }
        } else {
            while self.desk.work() && now() - begun < SLICE {}
            if self.desk.waiting.is_some() {
                self.regions.show("verdict", title_block::show(&self.desk));
                self.working.now();
            } else {
                self.draw_anew();
                self.trace_anew();
                self.desk.begin_sample();
            }
        }
    }

    /// Asks for the next turn of drawing after one that was begun then: at once as long as little was drawn, otherwise
    /// after a frame, so that no frame has to find the styles and places of more than a slice.
    fn draw_on(&mut self, begun: f64) {
        self.drawn += now() - begun;
        if self.drawn < SLICE {
            return self.working.now();
        }
        self.drawn = 0.0;
        self.working.next();
    }

    /// Begins to draw what was found, step by step.
    fn draw_anew(&mut self) {
        self.draw_from(0);
    }

    /// The same from a later step on; those before it have just been done.
    fn draw_from(&mut self, step: usize) {
        self.regions.drop_held();
        self.drawing = Some(step);
        self.working.now();
    }

    /// Begins to trace the window, where it hangs on what was changed.
    fn trace_anew(&mut self) {
        self.desk.begin_window();
        self.tracing.restart();
    }

    /// After what was just shown: more work, or what may wait for a pause.
    fn go_on(&mut self) {
        if self.desk.waiting.is_some() {
            self.working.now();
        } else {
            self.trace_anew();
            self.completing.restart();
            self.speaking.restart();
        }
    }

    fn complete(&mut self) {
        self.window_seen = None;
        if self.desk.waiting.is_none() {
            self.desk.complete();
            self.desk.begin_sample();
            self.draw_anew();
            self.tracing.restart();
        }
    }

    /// A field was left: what stands in it may be written anew.
    fn left(&mut self) {
        self.desk.history.rest();
        fields::update(&self.desk, &mut self.regions);
    }

    /// The page goes: what was typed in the last moment is kept, also for a reload, which asks for the old address.
    fn leave(&mut self) {
        if self.unkept && self.frame.is_own() {
            address::hand_on(&self.desk);
        }
        self.save();
        self.write_address();
        self.shelve();
    }

    /// Tells in the address what was kept.
    fn write_address(&mut self) {
        if mem::take(&mut self.unaddressed) {
            address::write(&self.desk, &self.frame.asked);
        }
    }

    /// Keeps what has changed in the store, and in the address after the next frame; another window may have kept newer
    /// work since.
    fn save(&mut self) {
        if !mem::take(&mut self.unkept) || self.frame.locked {
            return;
        }
        self.unaddressed = true;
        self.addressing.next();
        if !self.frame.is_own() {
            return;
        }
        lessons_store::keep_open(&self.desk);
        let keeps = self.store.write(&mut self.desk);
        if keeps != self.keeps {
            self.keeps = keeps;
            self.desk.notices.retain(|notice| notice.says != opening::NOT_KEPT);
            if !keeps {
                self.desk.notices.push(Notice::new(opening::NOT_KEPT));
            }
        }
        self.regions.show("notices", notices::show(&self.desk));
    }

    /// Another window has kept something.
    fn hear(&mut self) {
        if !self.frame.is_own() {
            return;
        }
        if self.store.hear(&mut self.desk) {
            self.unkept = true;
            self.keeping.restart();
        }
        self.regions.show("notices", notices::show(&self.desk));
    }

    fn speak(&self) {
        let words = verdict::spoken(&self.desk) + &lessons_view::spoken(&self.desk);
        if let Some(region) = root::by_id(sheet::SPOKEN).filter(|region| region.text_content().as_ref() != Some(&words))
        {
            region.set_text_content(Some(&words));
        }
    }

    /// Takes a choice of units, look or language.
    fn prefer(&mut self, key: &str, value: &str) {
        let units = self.desk.units;
        match key {
            "length" => self.desk.units = preferences::changed_to(units, preferences::system(value)),
            "pressure" => self.desk.units.pressure = Unit::named(Kind::Pressure, value).unwrap_or(units.pressure),
            "force" => self.desk.units.force = Unit::named(Kind::Force, value).unwrap_or(units.force),
            "theme" => self.desk.theme = Theme::named(value),
            "language" => self.desk.tongue = Tongue::of_code(value).or(self.desk.tongue),
            _ => {}
        }
    }
}

/// Whether the window has room for the trace beside the views, as the styles have it.
fn is_wide() -> bool {
    const WIDE: f64 = 1400.0;
    let width = web_sys::window().and_then(|window| window.inner_width().ok());
    width.and_then(|width| width.as_f64()).is_some_and(|width| width >= WIDE)
}

/// Milliseconds since the page began.
fn now() -> f64 {
    web_sys::window().and_then(|window| window.performance()).map_or(0.0, |clock| clock.now())
}
