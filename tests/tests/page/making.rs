//! Making the jaws: tooth and ring, the boring path and its program, the taper and what readings teach.

use holdround_core::jaw_program;
use holdround_core::quantity::{Kind, UnitSystem, shown};
use holdround_core::setup::{Entries, Setup};
use holdround_core::text::ENGLISH;
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;
use thirtyfour::Key;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{
    assert_address_holds, assert_no_nonsense, assert_quiet, assert_shows, choose, come_to_rest, entries, example,
    field, found, on_both_pages, open, type_at, written,
};
use crate::typing::units;

/// Jaws whose tooth and ring are worked out.
fn planned() -> Entries {
    entries(&[("stroke.plan", "yes")])
}

/// Opens a group of making the jaws.
fn unfold(browser: &Browser, group: &str) {
    browser.execute(
        "for (const id of ['making', `group-${arguments[0]}`]) document.getElementById(id).open = true",
        vec![json!(group)],
    );
}

/// The line that tells what is settled in a group.
fn settled(group: &str) -> String {
    format!("document.querySelector('#settled-{group}').textContent")
}

/// What a line beside the inputs must come to show of a finding.
fn assert_tells(browser: &Browser, entries: &Entries, id: &str) {
    let findings = found(entries);
    let wanted = written(findings.get(id).expect(id), UnitSystem::Metric);
    let shown = format!("document.querySelector(\"[id='here-{id}'] .value\")?.textContent");
    browser.eventually(&shown, &json!(wanted), id);
}

#[test]
fn making_the_jaws_is_folded_away_until_it_is_asked_for() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let open = "[...document.querySelectorAll('#making, #making .group')].filter((group) => group.open).length";
        browser.eventually(open, &json!(0), "closed at first");
        assert!(browser.count("#making .group") >= 4, "boring, readings, stroke, recut: a ring only once planned");
        assert!(!browser.is_shown(&field("boring.skim")), "no field of it is in the way of a beginner");
        let said = browser.execute(&format!("return {}", settled("stroke")), Vec::new());
        assert_eq!(said, json!("Not planned."), "and it says what is settled");
    });
}

#[test]
fn fingers_plan_the_stroke_choose_a_ring_and_see_the_tooth() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        open(browser, &format!("{url}#{}", Entries::default().to_link()));
        browser.tap("#making > summary");
        browser.tap("#group-stroke > summary");
        choose(browser, "stroke.plan", "yes");
        let mut plan = planned();
        assert_shows(browser, &plan, UnitSystem::Metric, "with the stroke planned");
        let tooth = |plan: &Entries| found(plan).scene.placing.expect("a place on the chuck").tooth;
        let drawn = "document.querySelector('#made-stroke svg').textContent";
        browser.eventually(&format!("{drawn}.includes('tooth {}')", tooth(&plan)), &json!(true), "the tooth is drawn");
        assert!(browser.is_shown("#made-stroke svg"), "and in sight");
        browser.eventually(
            &format!("{}.startsWith('Tooth {}; bored at')", settled("stroke"), tooth(&plan)),
            &json!(true),
            "the group tells it when folded",
        );

        unfold(browser, "ring");
        choose(browser, "ring.bearing", "plug");
        plan.set("ring.bearing", "plug");
        assert_shows(browser, &plan, UnitSystem::Metric, "on a plug");
        browser.tap("#add-rings");
        browser.wait_until("document.getElementById('in-rings.0.name')");
        type_at(browser, "rings.0.name", "black");
        type_at(browser, "rings.0.outside", "170");
        let fits = "document.querySelector('#made-ring').textContent.includes('Your ring 1, black')";
        browser.eventually(fits, &json!(true), "how the jaws would stand on the user's own ring");

        // A tooth far out is beyond limits: told beside it, in the list and in the title block, with what to do.
        type_at(browser, "stroke.tooth", "40");
        browser.eventually(
            "document.querySelectorAll(\"#verdict [id^='line-stroke.']\").length > 0",
            &json!(true),
            "what is beyond a limit stands in the title block",
        );
        browser.wait_until("document.querySelector('.findings .remedy')");
        assert_no_nonsense(browser, "a tooth far out");
    });
}

#[test]
fn the_program_is_shown_saved_and_copied_as_the_engine_writes_it() {
    const CATCH: &str = "
        const make = URL.createObjectURL.bind(URL);
        URL.createObjectURL = (content) => { content.text().then((text) => { window.saved = text }); return make(content) };
        HTMLAnchorElement.prototype.click = function () { window.savedAs = this.download };";
    on_both_pages(Viewport::TABLET, |browser, url| {
        let mut job = entries(&[("boring.number", "12"), ("boring.name", "sleeve (first)")]);
        open(browser, &format!("{url}#{}", job.to_link()));
        unfold(browser, "boring");
        let in_units =
            |job: &Entries, shown| jaw_program(&Setup::read(job).expect("valid"), shown, ENGLISH).expect("a program");
        let text = |job: &Entries| in_units(job, UnitSystem::Metric);
        let shown = "document.querySelector('#program-text').value";
        browser.eventually(shown, &json!(text(&job)), "the engine's text");
        units(browser, "in");
        browser.eventually(shown, &json!(in_units(&job, UnitSystem::Inch)), "in inches, as lengths are shown");
        units(browser, "mm");
        browser.eventually(shown, &json!(text(&job)), "and back");
        assert!(browser.text("#made-boring").contains("UNPROVEN"), "never without its warning");
        browser.execute(CATCH, Vec::new());
        browser.tap("#save-program");
        browser.eventually("window.saved", &json!(text(&job)), "saved as shown");
        browser.eventually("window.savedAs", &json!("jaws.txt"), "under a plain name");
        browser.tap("#copy-program");
        browser.wait_until("document.querySelector('#program-told').textContent.includes('opied')");

        choose(browser, "boring.units", "inch");
        job.set("boring.units", "inch");
        browser.eventually(shown, &json!(text(&job)), "and in inches");

        type_at(browser, "boring.bar_diameter", "190");
        browser.wait_until("!document.querySelector('#program-text')");
        assert!(browser.text("#made-boring").contains("would hit"), "no program that hits something, but what is hit");
        assert!(browser.count("#made-boring .lost") > 0, "marked on the drawing");
    });
}

#[test]
fn the_tool_runs_along_its_path_and_stands_where_the_slider_is() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        unfold(browser, "boring");
        let place = "document.querySelector('#run-tool').getAttribute('transform')";
        let at = |browser: &Browser| browser.execute(&format!("return {place}"), Vec::new());
        browser.wait_until("document.querySelector('#run-place').textContent.startsWith('Move')");
        let start = at(browser);
        browser.tap("#run");
        browser.wait_until(&format!("{place} !== {start}"));
        browser.tap("#run");
        browser.eventually("document.querySelector('#run').textContent", &json!("Play"), "a second tap stops it");

        // By keyboard alone: to the end, where nothing is left to go.
        browser.execute("document.querySelector('#run-at').focus()", Vec::new());
        browser.press(Key::End);
        let last = "document.querySelector('#run-place').textContent.includes('retract')";
        browser.eventually(last, &json!(true), "the end of the slider is the end of the path");
        browser.press(Key::Home);
        browser.eventually(place, &start, "and its start the start");
        assert!(browser.attribute("#run-at", "aria-valuetext").is_some_and(|told| told.starts_with("Move")));

        browser.prefer("prefers-reduced-motion", "reduce");
        assert!(!browser.is_shown("#run"), "who wants no motion has the slider alone");
        assert!(browser.is_shown("#run-at"));
    });
}

#[test]
fn the_tool_and_what_it_has_cut_are_drawn_on_both_views() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        unfold(browser, "boring");
        browser.wait_until("document.querySelector('#run-place').textContent.startsWith('Move 1 ')");
        assert!(!browser.is_shown("#section-tool"), "the views show the part in the jaws until the tool runs");
        browser.execute("document.querySelector('#run-at').focus()", Vec::new());
        browser.press(Key::End);
        for view in ["section", "face"] {
            browser.wait_until(&format!("document.querySelector('#{view}-swept').getAttribute('d')?.length > 20"));
            assert!(browser.is_shown(&format!("#{view}-tool")), "the tool on the {view}");
        }
        let area = |browser: &Browser| {
            let length = "return document.querySelector('#section-swept').getAttribute('d').length";
            browser.execute(length, Vec::new()).as_f64().unwrap_or(0.0)
        };
        let all = area(browser);
        browser.press(Key::PageDown);
        browser.press(Key::PageDown);
        browser.press(Key::PageDown);
        browser.press(Key::PageDown);
        assert!(area(browser) < all, "farther back less is cut");
        browser.press(Key::Home);
        browser.wait_until("document.querySelector('#views').dataset.boring === 'false'");
    });
}

#[test]
fn the_best_diameter_is_looked_for_when_asked_and_adopted_so_that_it_can_be_taken_back() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        // A solid blank has a best diameter within what is searched.
        let job = example("stubby-blank");
        open(browser, &format!("{url}#{}", job.to_link()));
        unfold(browser, "boring");
        browser.wait_until("document.querySelector('#study-bore')");
        assert_eq!(browser.count("#adopt-bore"), 0, "nothing to adopt before it is looked for");
        browser.tap("#study-bore");
        let setup = Setup::read(&job).expect("valid");
        let choice = holdround_core::Engine::default().bore_choice(&setup);
        for id in ["bore.best", "bore.best.roundness", "bore.best.even", "bore.best.rigid"] {
            let finding = choice.findings.iter().find(|finding| finding.id == id).expect(id);
            let shown = format!("document.querySelector(\"[id='study-{id}'] .value\")?.textContent");
            browser.eventually(&shown, &json!(written(finding, UnitSystem::Metric)), id);
        }
        browser.tap("#adopt-bore");
        let best = choice.findings.iter().find(|finding| finding.id == "bore.best").expect("a best").value.clone();
        let typed = holdround_core::quantity::decimal(1e3 * best.expect("a diameter"), 3);
        browser.eventually(
            &format!("document.querySelector(\"{}\").value", field("jaws.bored_diameter")),
            &json!(typed),
            "adopted",
        );
        let offered = "document.querySelectorAll('#adopt-bore').length";
        browser.eventually(offered, &json!(0), "what was found is of the job before");
        browser.tap("[data-act='undo']");
        browser.eventually(
            &format!("document.querySelector(\"{}\").value", field("jaws.bored_diameter")),
            &json!(""),
            "and taken back",
        );
    });
}

#[test]
fn while_an_entry_is_wrong_there_is_no_program_and_the_drawings_are_marked_old() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        let job = planned();
        open(browser, &format!("{url}#{}", job.to_link()));
        unfold(browser, "boring");
        browser.wait_until("document.querySelector('#program-text')");
        let stale = "document.querySelector('#making').dataset.stale";
        browser.eventually(stale, &json!("false"), "all is of what is typed");
        type_at(browser, "part.length", "abc");
        browser.wait_until("!document.querySelector('#program-text')");
        assert!(browser.text("#made-boring").contains("No program: an entry must be corrected first."));
        browser.eventually(stale, &json!("true"), "as the views are");
        let faint = "getComputedStyle(document.querySelector('#made-boring svg.making')).opacity < 1";
        browser.eventually(faint, &json!(true), "and looks it");
        type_at(browser, "part.length", "30");
        browser.wait_until("document.querySelector('#program-text')");
        browser.eventually(stale, &json!("false"), "put right");
    });
}

#[test]
fn a_reading_changes_the_next_cut() {
    on_both_pages(Viewport::DESK, |browser, url| {
        let mut job = entries(&[("readings.0.taper", "10 µm"), ("readings.0.shows", "base")]);
        open(browser, &format!("{url}#{}", job.to_link()));
        unfold(browser, "readings");
        for id in ["taper.right", "taper.right.diameter", "taper.next", "taper.next.diameter"] {
            assert_tells(browser, &job, id);
        }
        let before = found(&job).get("taper.next").expect("a next taper").value.clone();
        type_at(browser, "readings.0.taper", "30");
        job.set("readings.0.taper", "30 µm");
        assert_ne!(found(&job).get("taper.next").expect("a next taper").value, before, "another reading, another cut");
        for id in ["taper.next", "taper.next.diameter"] {
            assert_tells(browser, &job, id);
        }
        let right = found(&job).get("taper.right").expect("a taper").value.clone().expect("a figure");
        let caption = browser
            .execute("return document.querySelector(\"[id='says-taper.bluing.right']\").textContent", Vec::new());
        let unit = Kind::Departure.unit_in(UnitSystem::Metric);
        for told in [right, 2.0 * right] {
            let told = shown(told, unit);
            assert!(caption.as_str().is_some_and(|caption| caption.contains(&told)), "{told} in {caption}");
        }
        let why = found(&job).get("taper.next").and_then(|next| next.caution.clone()).expect("what to do with it");
        browser.eventually("document.querySelector('#taper-why').textContent", &json!(why), "told in sight");
        assert_eq!(browser.count("#made-readings figure"), 4, "too little, right, too much, as set");
    });
}

#[test]
fn the_taper_to_cut_is_planned_with_one_tap_and_taken_back_with_one() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        let mut job = example("fast-sleeve");
        open(browser, &format!("{url}#example=fast-sleeve"));
        come_to_rest(browser);
        unfold(browser, "readings");
        let cut = found(&job).scene.cut_taper.expect("a taper to cut");
        let told = shown(cut, Kind::Departure.unit_in(UnitSystem::Metric));
        let says = |words: &str| format!("document.querySelector('#taper-planned').textContent.includes('{words}')");
        browser.eventually(&says("Planned: 0 µm per side"), &json!(true), "what is planned");
        browser.eventually(&says(&format!("To cut: {told} per side")), &json!(true), "beside what is to be cut");
        browser.tap("#adopt-taper");
        job.set("jaws.taper", &told);
        assert_address_holds(browser, &job, "planned");
        browser.eventually(&says(&format!("Planned: {told} per side")), &json!(true), "and told so");
        let settled = "document.querySelector('#taper-settled')?.textContent";
        browser.eventually(settled, &json!("That is what is planned: nothing to change."), "nothing is left to use");
        assert_eq!(browser.count("#adopt-taper"), 0, "and no button offers it");
        browser.eventually("document.activeElement.id", &json!("taper-settled"), "the keyboard is where that is told");
        browser.tap("#undo");
        job.unset("jaws.taper");
        assert_address_holds(browser, &job, "and taken back");
    });
}

#[test]
fn where_no_tooth_will_do_what_would_is_read_without_opening_anything() {
    let site = serve_site();
    let mut job = planned();
    job.set("stroke.least_wall", "40 mm");
    let why = found(&job).get("stroke.tooth").expect("a tooth").value.clone().expect_err("none will do");
    let browser = Browser::open(Viewport::PHONE);
    open(&browser, &format!("{}#{}", site.url(), job.to_link()));
    unfold(&browser, "stroke");
    browser.eventually("document.querySelector('.tooth-told').textContent", &json!(why), "the whole advice");
    assert!(browser.is_shown(".tooth-told"), "in sight, by the drawing");
}

#[test]
fn the_opened_parts_keep_the_rules_and_ask_for_nothing() {
    let site = serve_site();
    let mut job = planned();
    for (path, text) in [("recut.jaws", "bored"), ("rings.0.name", "black"), ("readings.0.shows", "base")] {
        job.set(path, text);
    }
    let browser = Browser::open(Viewport::TABLET);
    for viewport in [Viewport::TABLET, Viewport::TABLET_UPRIGHT, Viewport::PHONE] {
        browser.resize(viewport);
        open(&browser, &format!("{}#{}", site.url(), job.to_link()));
        let open_all = |what| {
            browser.execute(
                &format!("document.querySelectorAll('{what}').forEach((line) => {{ line.open = true }})"),
                Vec::new(),
            )
        };
        // What is made in a group is drawn once it is open.
        open_all("#making, #making .group");
        browser.wait_until("document.querySelector('#made-readings figure')");
        open_all("#making details");
        assert_keeps_the_rules(&browser, &format!("making the jaws on {viewport:?}"));
        assert_no_nonsense(&browser, "everything of making the jaws");
        let nonsense = "return /NaN|Infinity|undefined/.test(document.querySelector('#making').innerHTML)";
        assert_eq!(browser.execute(nonsense, Vec::new()), json!(false), "no number that is none");
    }
    assert_quiet(&browser, &site.url());
}
