//! The page inside another one: locked, one part alone, as high as what is in it, and keeping nothing.

use std::fs;

use holdround_build::serve::Server;
use holdround_build::site::read_folder;
use holdround_core::lessons::LESSONS;
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Viewport, serve_site, site_folder};
use serde_json::json;
use tempfile::TempDir;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{WORKED_OUT, assert_shows, come_to_rest, example, field, open, type_at};

/// A page beside the site that holds this frame, and gives it the height that it tells.
fn wiki(frame: &str) -> (TempDir, Server) {
    let folder = tempfile::tempdir().unwrap();
    for (name, content) in read_folder(&site_folder()).unwrap() {
        fs::write(folder.path().join(name), content).unwrap();
    }
    let page = format!(
        "<!doctype html><title>Wiki</title><link rel=icon href=icon.svg><body>{frame}<script>
        const frame = document.querySelector('iframe');
        window.heights = [];
        addEventListener('message', ({{ data, source }}) => {{
            if (source !== frame.contentWindow || data.holdround !== 'height') return;
            frame.height = data.height;
            window.heights.push(data.height);
        }});
        </script>"
    );
    fs::write(folder.path().join("wiki.html"), page).unwrap();
    let host = Server::start(folder.path().into(), 0).unwrap();
    (folder, host)
}

fn enter(host: &Server, viewport: Viewport) -> Browser {
    let browser = Browser::open(viewport);
    browser.goto(&format!("{}wiki.html", host.url()));
    browser.enter_frame("iframe");
    browser.wait_until(WORKED_OUT);
    browser
}

const LOCKED: &str = "#example=fast-sleeve&show=sheet&locked";

#[test]
fn a_locked_frame_can_be_read_and_opened_but_not_changed_and_keeps_nothing() {
    for (page, sandbox) in [("", "allow-scripts allow-same-origin"), ("holdround.html", "allow-scripts")] {
        let frame = format!("<iframe src='./{page}{LOCKED}' width='100%' height='300' sandbox='{sandbox}'></iframe>");
        let (_folder, host) = wiki(&frame);
        let browser = enter(&host, Viewport::DESK);
        let sleeve = example("fast-sleeve");
        assert_shows(&browser, &sleeve, UnitSystem::Metric, "the set-up in the frame");
        let open_to_change = browser.execute(
            "return [...document.querySelectorAll('#inputs :is(input, select)[data-path]')]
                .filter((field) => !field.readOnly && !field.disabled).map((field) => field.id)",
            Vec::new(),
        );
        assert_eq!(open_to_change, json!([]), "{page}: fields that could be changed");
        assert!(browser.is_shown(&field("part.length")), "{page}: fields are shown");
        browser.execute(
            "for (const path of ['part.length', 'run.speed']) {
                const field = document.getElementById(`in-${path}`);
                field.value = '11';
                field.dispatchEvent(new InputEvent('input', { bubbles: true }));
            }
            for (const act of ['adopt', 'fresh', 'file-recent', 'take-jaws', 'undo']) {
                const button = document.createElement('button');
                [button.dataset.act, button.dataset.index] = [act, '0'];
                document.querySelector('.sheet').append(button);
                button.click();
            }",
            Vec::new(),
        );
        assert_shows(&browser, &sleeve, UnitSystem::Metric, "after every way to change it was tried");
        browser.click("[id='line-hold.factor'] > summary");
        assert!(browser.is_shown("[id='line-hold.factor'] .steps"), "{page}: steps still open");
        let leads = browser.attribute("#framed a", "href").expect("a link to a page of its own");
        assert_eq!(leads, format!("#{}", sleeve.to_link()), "{page}: with the same set-up, unlocked");

        browser.execute("window.dispatchEvent(new PageTransitionEvent('pagehide'))", Vec::new());
        if page.is_empty() {
            let kept = browser.execute(
                "return indexedDB.databases().then((found) => [localStorage.length, sessionStorage.length, found.length])",
                Vec::new(),
            );
            assert_eq!(kept, json!([0, 0, 0]), "nothing is kept in the browser");
        }
        assert_eq!(browser.console_errors(), Vec::<String>::new(), "{page}: its console is clean");
    }
}

#[test]
fn the_height_is_told_where_the_frame_is_far_from_what_is_in_sight() {
    let (_folder, host) = wiki(&format!(
        "<p style='height: 9000px'>Much before it.</p>
        <iframe src='holdround.html{LOCKED}' width='100%' height='300' sandbox='allow-scripts'></iframe>"
    ));
    let browser = Browser::open(Viewport::TABLET);
    browser.goto(&format!("{}wiki.html", host.url()));
    browser.eventually(
        "heights.some((height) => height > 1000) && scrollY === 0",
        &json!(true),
        "told without scrolling",
    );
}

#[test]
fn the_page_around_is_told_the_height_whenever_it_changes() {
    let frame =
        format!("<iframe src='holdround.html{LOCKED}' width='100%' height='300' sandbox='allow-scripts'></iframe>");
    for (frame, viewport) in [(frame.clone(), Viewport::TABLET), (frame.replace("=sheet", "=verdict"), Viewport::PHONE)]
    {
        let (_folder, host) = wiki(&frame);
        let browser = enter(&host, viewport);
        come_to_rest(&browser);
        // Within two pixels of rounding there is nothing to scroll, and no room that nothing is in.
        let fits = "Math.abs(innerHeight - document.body.getBoundingClientRect().height) <= 2
            && document.documentElement.scrollHeight <= innerHeight + 2";
        browser.eventually(fits, &json!(true), "the frame is as high as what is in it");
        let height = || browser.execute("return innerHeight", Vec::new()).as_f64().expect("a height");
        let open = |open: bool| {
            let line = "document.getElementById('line-hold.factor').open = arguments[0]";
            browser.execute(line, vec![json!(open)]);
        };
        let before = height();
        open(true);
        browser.eventually(&format!("innerHeight > {before} + 100"), &json!(true), "higher once a line is opened");
        browser.eventually(fits, &json!(true), "by what is in it");
        let opened = height();
        open(false);
        browser.eventually(&format!("innerHeight < {opened} - 100"), &json!(true), "lower once it is closed");
        browser.eventually(fits, &json!(true), "as high as what is left");
    }
}

#[test]
fn one_part_is_shown_alone_with_the_verdict_and_the_cautions() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    let parts = [
        ("verdict", "[id='line-hold.factor']"),
        ("face", "#face svg"),
        ("section", "#section svg"),
        ("trace", "#trace svg"),
        ("window", "#window-drawing"),
        ("findings", "[id='all-hold.factor']"),
    ];
    for (part, shown) in parts {
        browser.goto("about:blank");
        open(&browser, &format!("{}#example=thin-ring&show={part}&locked&look=shop&units=in", site.url()));
        browser.wait_until("/^At worst (still|not)/.test(document.querySelector('#at-worst')?.textContent)");
        for (other, selector) in parts {
            assert_eq!(browser.is_shown(selector), other == part, "{selector} while {part} is shown");
        }
        assert!(browser.is_shown(shown), "{part} is shown");
        for always in [".verdict", ".standing", ".cautions li", "#framed a"] {
            assert!(browser.is_shown(always), "{always} stands beside {part}");
        }
        for never in ["#inputs", "#tools", ".records", ".files", "#examples"] {
            assert!(!browser.is_shown(never), "{never} does not stand beside {part}");
        }
        let look = browser.execute("return document.documentElement.dataset.theme", Vec::new());
        assert_eq!(look, json!("shop"), "in the look that was asked for");
        assert_eq!(browser.value("#prefer-length"), "in", "and its units");
        assert_keeps_the_rules(&browser, &format!("{part} alone"));
    }
}

/// What is copied where this is chosen to be shown, as it stands on a page beside the site.
fn copied_for_a_wiki(browser: &Browser, site: &str, part: &str) -> String {
    browser.execute(
        "document.querySelector('#files-box').open = true;
        document.addEventListener('copy', () => { window.copied = document.activeElement.value })",
        Vec::new(),
    );
    browser.click(&format!("#frame-part option[value='{part}']"));
    browser.click("#file-frame");
    browser.eventually("document.querySelector('#files-told').textContent", &json!("Copied."), "it is told");
    let markup = browser.execute("return window.copied", Vec::new());
    markup.as_str().expect("markup was copied").replace(site, "./")
}

#[test]
fn what_is_copied_for_a_wiki_shows_the_set_up_there() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    let sleeve = example("fast-sleeve");
    open(&browser, &format!("{}#{}", site.url(), sleeve.to_link()));
    let markup = copied_for_a_wiki(&browser, &site.url(), "verdict");
    assert!(!markup.contains("allow-same-origin"), "it may do no more than it must: {markup}");

    let (_folder, host) = wiki(&markup);
    let wiki = enter(&host, Viewport::TABLET);
    assert_shows(&wiki, &sleeve, UnitSystem::Metric, "the set-up that was on the sheet");
    assert!(!wiki.is_shown("#inputs") && wiki.is_shown("[id='line-hold.factor']"), "the part that was chosen");
    let locked = wiki.execute("return document.documentElement.hasAttribute('data-locked')", Vec::new());
    assert_eq!(locked, json!(true), "locked");

    browser.click("#frame-lock option[value='']");
    browser.wait_until("!document.querySelector('#frame-markup').value.includes('locked')");
    browser.execute("document.execCommand = () => false", Vec::new());
    browser.click("#file-frame");
    browser.wait_until("/copy it by hand/.test(document.querySelector('#files-told').textContent)");
    let chosen = browser.execute(
        "const text = document.querySelector('#frame-markup');
        return document.activeElement === text && text.selectionEnd - text.selectionStart === text.value.length",
        Vec::new(),
    );
    assert_eq!(chosen, json!(true), "where the browser copies nothing the text is chosen");
}

#[test]
fn a_lesson_that_is_copied_for_a_wiki_is_done_there_and_keeps_nothing() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    let markup = copied_for_a_wiki(&browser, &site.url(), "lesson=thin-ring");
    assert!(markup.contains("#lesson=thin-ring&amp;show=sheet\""), "free to be tried: {markup}");
    let lock = "document.querySelector('#frame-lock').disabled";
    browser.eventually(lock, &json!(true), "a lesson cannot be locked");
    browser.click("#frame-part option[value='sheet']");
    browser.eventually(lock, &json!(false), "a set-up can");

    let (_folder, host) = wiki(&markup);
    let wiki = enter(&host, Viewport::TABLET);
    let lesson = LESSONS.iter().find(|lesson| lesson.key == "thin-ring").expect("the lesson");
    wiki.eventually("document.querySelector('#lesson h2')?.textContent", &json!(lesson.title), "the lesson");
    let start = Entries::from_json(lesson.json).expect("a set-up");
    assert_shows(&wiki, &start, UnitSystem::Metric, "its set-up");
    type_at(&wiki, "run.pressure", "0.4");
    let done = "document.querySelector('#lesson .state')?.textContent.includes('The task is done')";
    wiki.eventually(done, &json!(true), "its task can be done");
    assert_eq!(wiki.console_errors(), Vec::<String>::new(), "with a clean console");
}

#[test]
fn a_frame_that_is_free_to_be_tried_follows_what_is_typed_and_keeps_nothing() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &format!("{}#example=fast-sleeve&show=sheet", site.url()));
    let mut sleeve = example("fast-sleeve");
    browser.type_into(&field("run.speed"), "900");
    sleeve.set("run.speed", "900 rev/min");
    assert_shows(&browser, &sleeve, UnitSystem::Metric, "what was typed");
    let address = format!("#{}&show=sheet", sleeve.to_link());
    browser.eventually("location.hash", &json!(address), "the address follows");
    assert_eq!(browser.execute("return localStorage.length", Vec::new()), json!(0), "nothing is kept in the browser");
    browser.reload();
    browser.wait_until(WORKED_OUT);
    assert_shows(&browser, &sleeve, UnitSystem::Metric, "the address holds it");
}
