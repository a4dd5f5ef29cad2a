//! The section under a finger and a key: sizes dragged, steps parted, the mesh shown.

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Point, Viewport};
use serde_json::{Value, json};
use thirtyfour::Key;

use crate::sheet::{assert_address_holds, assert_shows, field, first_example, on_both_pages, open};
use crate::steps::flanged_bushing;

/// Whether the handle of an entry is hit all over the 44 by 44 CSS pixels of WCAG 2.2, 2.5.5.
const HIT_ALL_OVER: &str = "
    const handle = document.querySelector(arguments[0]);
    const knob = handle.querySelector('.knob').getBoundingClientRect();
    const [x, y] = [knob.x + knob.width / 2, knob.y + knob.height / 2];
    return [-21.9, 0, 21.9].every((right) => [-21.9, 0, 21.9].every((down) =>
        document.elementFromPoint(x + right, y + down)?.closest('[data-drag]') === handle))";

#[test]
fn a_finger_drags_bore_and_corner_and_parts_a_step() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        let bushing = flanged_bushing();
        open(browser, &format!("{url}#{}", bushing.to_link()));
        assert_address_holds(browser, &bushing, "nothing was dragged yet");
        for entry in ["outside", "bore", "outside_end", "bore_end", "length"].map(|it| format!("steps.0.{it}")) {
            assert!(hit_all_over(browser, &entry), "{entry} is too small for a finger");
        }
        assert!(hit_all_over(browser, ""), "the handle that parts a step is too small for a finger");

        for entry in ["steps.1.bore", "steps.0.bore"] {
            browser.execute("document.querySelector(arguments[0]).focus()", vec![json!(field(entry))]);
            let chosen = format!("!!document.querySelector(\"{}\")", handle(entry));
            browser.eventually(&chosen, &json!(true), "the step whose field is entered gets the handles");
        }

        let bored = dragged(browser, &bushing, "steps.0.bore", (0.0, 6.0));
        assert!(size(&bored, "steps.0.bore") < 70.0, "toward the axis is a smaller bore");
        let coned = dragged(browser, &bored, "steps.0.bore_end", (0.0, 6.0));
        assert!(size(&coned, "steps.0.bore_end") < size(&bored, "steps.0.bore"), "the corner makes a cone of it");
        for earlier in [&bored, &bushing] {
            browser.click("#undo");
            assert_shows(browser, earlier, UnitSystem::Metric, "a drag is taken back in one step");
        }

        browser.tap(&format!("{} .grasp", handle("")));
        browser.eventually(
            "document.querySelectorAll(\"[id$='.length'][id^='in-steps.']\").length",
            &json!(4),
            "parted",
        );
        let lengths = (0..2).map(|at| browser.value(&field(&format!("steps.{at}.length")))).collect::<Vec<_>>();
        assert_eq!(lengths, ["15", "15"], "a tap parts the step in its middle");
        assert_eq!(browser.count(&handle("steps.1.bore")), 1, "the farther half is the one to drag next");
        browser.click("#undo");
        assert_shows(browser, &bushing, UnitSystem::Metric, "and is taken back in one step");
    });
}

#[test]
fn keys_move_a_size_and_part_a_ring() {
    on_both_pages(Viewport::TABLET_UPRIGHT, |browser, _| {
        let first = first_example();
        let mut longer = first.clone();
        focus(browser, "part.length");
        let step =
            number(&browser.execute(
                "const at = document.activeElement.getAttribute('aria-valuenow'); return Number(at)",
                Vec::new(),
            ));
        for _ in 0..3 {
            browser.press(Key::Up);
        }
        let length: f64 = browser.value(&field("part.length")).parse().unwrap();
        assert!(length > step, "up is longer: {length}");
        assert_eq!(focused(browser), "drag-part.length", "the keyboard stays on the handle");
        longer.set("part.length", &format!("{length} mm"));
        assert_shows(browser, &longer, UnitSystem::Metric, "as if it were typed");
        browser.click("#undo");
        assert_shows(browser, &first, UnitSystem::Metric, "a run of keys is taken back in one step");

        focus(browser, "");
        browser.press(Key::Down);
        let place = browser.attribute(":focus", "aria-valuenow").unwrap();
        browser.press(Key::Enter);
        browser.eventually(
            "document.querySelectorAll(\"[id$='.length'][id^='in-steps.']\").length",
            &json!(2),
            "Enter makes two steps of the ring",
        );
        assert_eq!(browser.value(&field("steps.0.length")), place, "parted where the key put it");
        browser.click("#undo");
        assert_shows(browser, &first, UnitSystem::Metric, "and is a ring again");
    });
}

#[test]
fn the_mesh_is_shown_on_demand_and_is_in_neither_link_nor_print() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let shown = "document.querySelectorAll('#section .mesh path').length";
        let first = first_example();
        assert_address_holds(browser, &first, "before");
        browser.eventually(shown, &json!(0), "no mesh unless asked");
        browser.tap("#mesh");
        browser.eventually(shown, &json!(2), "both halves show it");
        assert_eq!(browser.attribute("#mesh", "aria-pressed").as_deref(), Some("true"), "the button says so");
        let sides = number(&browser.execute(
            "return document.querySelector('#section .mesh path').getAttribute('d').split('M').length - 1",
            Vec::new(),
        ));
        assert!(sides > 20.0, "{sides} sides are no mesh");
        browser.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }));
        let printed =
            browser.execute("return getComputedStyle(document.querySelector('#section .mesh')).display", Vec::new());
        assert_eq!(printed, json!("none"), "paper shows the part without it");
        browser.devtools("Emulation.setEmulatedMedia", json!({ "media": "" }));
        assert_address_holds(browser, &first, "the link says nothing of it");
        browser.tap("#mesh");
        browser.eventually(shown, &json!(0), "and it goes again");
    });
}

fn handle(entry: &str) -> String {
    format!("[data-drag='{entry}']")
}

fn hit_all_over(browser: &Browser, entry: &str) -> bool {
    browser.execute(HIT_ALL_OVER, vec![json!(handle(entry))]) == json!(true)
}

/// Drags the handle of an entry, which must come to hold a round figure, and gives the set-up then.
fn dragged(browser: &Browser, before: &Entries, entry: &str, (right, down): Point) -> Entries {
    let (x, y) = browser.middle(&format!("{} .knob", handle(entry)));
    browser.drag((x, y), (x + right, y + down));
    let mut after = before.clone();
    after.set(entry, &format!("{} mm", browser.value(&field(entry))));
    assert_ne!(after, *before, "{entry} follows the finger");
    let tenths = size(&after, entry) * 10.0;
    assert!((tenths - tenths.round()).abs() < 1e-9, "{entry} is a round figure: {:?}", after.get(entry));
    assert_shows(browser, &after, UnitSystem::Metric, "the dragged part");
    after
}

fn size(entries: &Entries, entry: &str) -> f64 {
    entries.get(entry).and_then(|text| text.strip_suffix(" mm")).and_then(|text| text.parse().ok()).unwrap()
}

fn focus(browser: &Browser, entry: &str) {
    browser.execute("document.querySelector(arguments[0]).focus()", vec![json!(handle(entry))]);
}

fn focused(browser: &Browser) -> String {
    browser.execute("return document.activeElement.id", Vec::new()).as_str().unwrap_or_default().to_owned()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or(f64::NAN)
}
