//! The window of pressure and speed, and other jaws beside those set, as a person uses them.

use holdround_core::quantity::Kind;
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Comparison, Engine, OpeningWork, ROWS};
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;
use thirtyfour::Key;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{
    assert_address_holds, assert_quiet, choose, come_to_rest, field, first_example, on_both_pages, open, type_at,
};

/// What stands in words beside the drawing.
const WORDS: &str = "document.querySelector('#window').textContent";

fn pressure_and_speed(browser: &Browser) -> [f64; 2] {
    ["run.pressure", "run.speed"].map(|path| {
        let text = browser.value(&field(path));
        text.split(' ').next().and_then(|number| number.parse().ok()).expect("a number")
    })
}

#[test]
fn the_window_tells_pressures_and_its_point_is_moved_by_finger_key_and_button() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        come_to_rest(browser);
        let setup = Setup::read(&first_example()).expect("a worked example");
        let window = Engine::default().window(&setup);
        let span = window.span(setup.speed.value);
        let bound = span.by.map(|at| at.map(|at| window.boundaries[at].name.clone()));
        for name in bound.into_iter().flatten() {
            browser.eventually(&format!("{WORDS}.includes({})", json!(name)), &json!(true), "what bounds it is named");
        }
        let decided = "document.querySelector('#at-worst').textContent.includes(' decides')";
        browser.eventually(decided, &json!(true), "the verdict says which range decides");
        assert_eq!(browser.count("#window-point"), 1, "the point");

        let before = pressure_and_speed(browser);
        let (x, y) = browser.middle("#window-point .knob");
        browser.drag((x, y), (x + 40.0, y - 30.0));
        let dragged = pressure_and_speed(browser);
        assert!(dragged[0] > before[0] && dragged[1] > before[1], "right is more pressure, up is faster: {dragged:?}");
        browser.press(Key::Left);
        browser.press(Key::Down);
        let nudged = pressure_and_speed(browser);
        assert!(nudged[0] < dragged[0] && nudged[1] < dragged[1], "keys move it by a step: {nudged:?}");
        for _ in 0..3 {
            browser.click("#undo");
        }
        assert_eq!(pressure_and_speed(browser), before, "each is taken back in one step");
    });
}

#[test]
fn who_scrolls_on_is_not_called_back_when_the_window_is_drawn_anew() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        come_to_rest(browser);
        browser.execute(
            "document.querySelector('#window-point .knob').closest('[tabindex]').focus();
            document.querySelector('#window-drawing').firstElementChild.dataset.old = 'yes'",
            Vec::new(),
        );
        browser.press(Key::Left);
        browser.execute("document.querySelector('#undo').scrollIntoView()", Vec::new());
        let anew = "document.querySelector('#window-drawing').firstElementChild.dataset.old ?? 'anew'";
        browser.eventually(anew, &json!("anew"), "the window is drawn anew");
        come_to_rest(browser);
        let place = "const { top } = document.querySelector('#undo').getBoundingClientRect(); return top >= 0 && top < innerHeight";
        assert_eq!(browser.execute(place, Vec::new()), json!(true), "what was scrolled to is still in sight");
    });
}

#[test]
fn a_window_of_the_last_valid_set_up_says_so_and_offers_no_pressure() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        open(browser, &format!("{url}#example=fast-sleeve"));
        browser.wait_until("document.querySelector('#adopt')");
        let good = browser.value(&field("run.pressure"));
        type_at(browser, "run.pressure", "hard");
        browser.wait_until("document.querySelector('#window .stale')");
        assert_eq!(browser.count("#adopt"), 0, "no pressure is offered while an entry is wrong");
        type_at(browser, "run.pressure", &good);
        browser.wait_until("!document.querySelector('#window .stale') && document.querySelector('#adopt')");
    });
}

#[test]
fn a_shut_window_says_so_and_lists_what_would_open_it() {
    on_both_pages(Viewport::TABLET_UPRIGHT, |browser, _| {
        let mut shut = first_example();
        for (path, text) in [("part.roundness_limit", "1 µm"), ("part.runout_limit", "1 µm")] {
            shut.set(path, text);
            type_at(browser, path, text);
        }
        let setup = Setup::read(&shut).expect("a valid set-up");
        let speed = setup.speed.value;
        assert!(!Engine::default().window(&setup).span(speed).is_open(), "nothing is that round");
        browser.eventually(&format!("{WORDS}.includes('there is no good pressure')"), &json!(true), "it says so");
        let mut work = OpeningWork::new(&setup, speed);
        while work.step() {}
        let wanted: Vec<&str> = work.found().map(|opening| opening.says).collect();
        assert!(!wanted.is_empty(), "something helps");
        const LISTED: &str = "[...document.querySelectorAll('[id^=\"open-\"]')].map((button) => button.ariaLabel.replace('Go to it: ', ''))";
        browser.eventually(LISTED, &json!(wanted), "what would open it, most gain first");
    });
}

#[test]
fn a_tail_centre_is_offered_drawn_and_refused_where_it_cannot_stand() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let bar = [("part.bore_diameter", "0 mm"), ("part.roundness_limit", "1 mm"), ("part.runout_limit", "1 mm")];
        choose(browser, "grip.side", "outside");
        for (path, text) in bar {
            type_at(browser, path, text);
        }
        choose(browser, "grip.tail", "centre");
        browser.eventually("!!document.querySelector('#section-centre')", &json!(true), "it is drawn");
        let told = "document.querySelector('#notes').textContent.includes('The hold counts on the centre')";
        browser.eventually(told, &json!(true), "with its caution");
        type_at(browser, "part.bore_diameter", "20 mm");
        let refused = "document.querySelector(\"[id='message-grip.tail']\").textContent.includes('bored')";
        browser.eventually(refused, &json!(true), "a bored end is refused");
    });
}

#[test]
fn with_two_pressures_roughing_has_a_window_of_its_own() {
    on_both_pages(Viewport::PHONE, |browser, _| {
        choose(browser, "run.pressures", "two");
        let told = "!!document.querySelector('#window-roughing')?.textContent.includes('While roughing')";
        browser.eventually(told, &json!(true), "beside that of finishing");
    });
}

#[test]
fn window_and_comparison_keep_the_rules_and_fit_every_screen() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    for viewport in [Viewport::TABLET, Viewport::TABLET_UPRIGHT, Viewport::PHONE] {
        browser.resize(viewport);
        open(&browser, &site.url());
        come_to_rest(&browser);
        compare(&browser);
        browser.execute(
            "document.querySelectorAll('#window details').forEach((limit) => { limit.open = true })",
            Vec::new(),
        );
        assert_keeps_the_rules(&browser, &format!("window and comparison on {viewport:?}"));
        let nonsense = "return /NaN|Infinity|undefined/.test(['window', 'comparison'].map((id) =>
            document.getElementById(id).innerHTML).join())";
        assert_eq!(browser.execute(nonsense, Vec::new()), json!(false), "no number that is none");
    }
    assert_quiet(&browser, &site.url());
}

/// Has the jaws compared.
fn compare(browser: &Browser) {
    browser.wait_until("document.querySelector('#compare')");
    browser.execute("document.querySelector('#compare').closest('details')?.setAttribute('open', '')", Vec::new());
    browser.tap("#compare");
    let compared = "document.querySelector('#compare-state').textContent.includes('All compared')";
    browser.eventually(compared, &json!(true), "all are worked out");
}

#[test]
fn other_jaws_stand_beside_those_set_and_can_be_taken() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let job = first_example();
        let mut comparison = Comparison::of(&job);
        while comparison.work() {}
        compare(browser);
        const NAMES: &str =
            "[...document.querySelectorAll('.compared > li:first-child dt')].map((name) => name.textContent)";
        let names: Vec<&str> = ROWS.iter().filter(|row| comparison.differs(row)).map(|row| row.name).collect();
        assert!(ROWS.iter().any(|row| row.kind == Kind::Pressure && names.contains(&row.name)), "the window's width");
        assert_eq!(browser.execute(&format!("return {NAMES}"), Vec::new()), json!(names), "what differs");
        let pie = comparison.done().iter().position(|one| one.choice.entries.get("jaws.kind") == Some("pie"));
        let pie = pie.expect("pie jaws are among them");
        browser.tap(&format!("#take-jaws-{pie}"));
        let taken: Entries = comparison.done()[pie].choice.entries.clone();
        assert_address_holds(browser, &taken, "the whole set-up with these jaws");
        let told = "document.querySelector('#comparison').textContent.includes('compare again')";
        browser.eventually(told, &json!(true), "what stands there is of the set-up before");
    });
}
