//! Surroundings that fail: files that do not arrive, a store that is full, refused, damaged or of a newer page, other
//! windows, a wrong clock, a slow device. Nothing typed is lost, and what happened is told.

use std::fs;

use holdround_build::serve::Server;
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Viewport, serve_site, site_folder};
use serde_json::{Value, json};
use tempfile::TempDir;

use crate::records::{KEPT, file, keep, open_records, read, settle};
use crate::sheet::{assert_address_holds, assert_shows, field, first_example, open, type_at};
use crate::start::publish_newer;

/// What the page keeps the desk under.
const KEY: &str = "holdround.desk.1";
const TOLD: &str = "document.querySelector('#notices')?.textContent.includes(arguments[0]) ?? false";
const OFFLINE: &str = "document.documentElement.dataset.offline === 'ready'";

/// Waits until a note with these words stands above the sheet.
fn told(browser: &Browser, words: &str, claim: &str) {
    browser.eventually(&TOLD.replace("arguments[0]", &json!(words).to_string()), &json!(true), claim);
}

fn stored(browser: &Browser, key: &str) -> Value {
    browser.execute("return localStorage.getItem(arguments[0])", vec![json!(key)])
}

/// Everything that is kept, with its key.
fn all_stored(browser: &Browser) -> String {
    browser.execute("return Object.entries(localStorage)", Vec::new()).to_string()
}

/// What would lie on the desk after typing this length into the first example.
fn with_length(length: &str) -> Entries {
    let mut entries = first_example();
    entries.set("part.length", &format!("{length} mm"));
    entries
}

/// Waits until the store holds a set-up.
fn assert_kept(browser: &Browser, entries: &Entries, claim: &str) {
    let holds = format!("localStorage.getItem('{KEY}')?.includes(`setup {}`)", entries.to_link());
    browser.eventually(&holds, &json!(true), claim);
}

/// A copy of the site that can be broken.
fn copy_of_the_site() -> TempDir {
    let copy = tempfile::tempdir().expect("a folder");
    for entry in fs::read_dir(site_folder()).expect("the site").map(|entry| entry.expect("a file").path()) {
        fs::copy(&entry, copy.path().join(entry.file_name().expect("a name"))).expect("a copy");
    }
    copy
}

fn mend(copy: &TempDir, file: &str) {
    fs::copy(site_folder().join(file), copy.path().join(file)).expect("a copy");
}

#[test]
fn a_module_that_does_not_arrive_is_told_with_what_to_do_and_what_was_typed_is_there_once_it_does() {
    const MODULE: &str = "holdround_web_bg.wasm";
    const GLUE: &str = "holdround_web.js";
    type Break = fn(&TempDir);
    let breaks: [(&str, Break); 5] = [
        (MODULE, |copy| fs::remove_file(copy.path().join(MODULE)).expect("it is there")),
        (MODULE, |copy| {
            let whole = fs::read(copy.path().join(MODULE)).expect("it is there");
            fs::write(copy.path().join(MODULE), &whole[..whole.len() / 2]).expect("it can be cut short");
        }),
        (MODULE, |copy| {
            fs::write(copy.path().join(MODULE), "<!doctype html><p>Moved.</p>").expect("it can be changed")
        }),
        (GLUE, |copy| fs::remove_file(copy.path().join(GLUE)).expect("it is there")),
        (GLUE, |copy| fs::write(copy.path().join(GLUE), "export default").expect("it can be cut short")),
    ];
    for (file, break_it) in breaks {
        let copy = copy_of_the_site();
        let site = Server::start(copy.path().to_path_buf(), 0).expect("a server");
        let browser = Browser::open(Viewport::TABLET);
        open(&browser, &site.url());
        type_at(&browser, "part.length", "about 18");
        assert_address_holds(&browser, &with_length("about 18"), "typed before");
        browser.wait_until(OFFLINE);
        // As a browser is left that came by while the host was half copied.
        browser.execute(
            "return (async () => {
                for (const one of await navigator.serviceWorker.getRegistrations()) await one.unregister();
                for (const name of await caches.keys()) await caches.delete(name);
            })()",
            Vec::new(),
        );
        break_it(&copy);
        browser.goto("about:blank");
        browser.goto(&site.url());
        browser.wait_until("document.querySelector('main [role=alert]')");
        let words = browser.text("main");
        for part in ["could not start", "still kept", "Fetch it anew", "holdround.html"] {
            assert!(words.contains(part), "{file}: {part:?} must be told: {words}");
        }
        mend(&copy, file);
        browser.click("main button");
        browser.wait_until("document.querySelector('#verdict h2')");
        assert_eq!(browser.value(&field("part.length")), "about 18", "{file}: what was typed is there");
    }
}

#[test]
fn a_site_that_is_half_copied_is_not_kept_for_use_without_the_host() {
    let copy = copy_of_the_site();
    let style = fs::read_to_string(copy.path().join("style.css")).expect("it is there");
    fs::write(copy.path().join("style.css"), format!("{style}\n/* of another version */")).expect("it can be changed");
    let site = Server::start(copy.path().to_path_buf(), 0).expect("a server");
    let browser = Browser::open(Viewport::TABLET);
    let watch = "const workers = navigator.serviceWorker, register = workers.register.bind(workers);
        workers.register = (...asked) => (window.registered = register(...asked))";
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": watch }));
    open(&browser, &site.url());
    browser.wait_until("window.registered");
    let state = "return registered.then((one) => new Promise((done) => {
        const worker = one.installing ?? one.waiting ?? one.active;
        if (!worker) return done('redundant');
        const look = () => worker.state === 'installing' || done(worker.state);
        worker.addEventListener('statechange', look);
        look();
    }))";
    assert_eq!(browser.execute(state, Vec::new()), json!("redundant"), "files of two versions are not kept as one");
    mend(&copy, "style.css");
    browser.reload();
    browser.wait_until(OFFLINE);
}

#[test]
fn kept_files_that_are_damaged_are_given_up_on_request_and_nothing_typed_with_them() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    browser.wait_until(OFFLINE);
    type_at(&browser, "part.length", "about 18");
    assert_address_holds(&browser, &with_length("about 18"), "typed before");
    browser.execute(
        "return (async () => {
            const cache = await caches.open((await caches.keys())[0]);
            const address = (await cache.keys()).find((kept) => kept.url.endsWith('.wasm')).url;
            await cache.put(address, new Response('', { headers: { 'Content-Type': 'application/wasm' } }));
        })()",
        Vec::new(),
    );
    browser.reload();
    browser.wait_until("document.querySelector('main button')");
    browser.click("main button");
    browser.wait_until("document.querySelector('#verdict h2')");
    assert_eq!(browser.value(&field("part.length")), "about 18", "what was typed is there");
    browser.wait_until(OFFLINE);
}

#[test]
fn what_a_newer_page_kept_is_told_set_aside_and_offered_once_it_can_be_read() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    type_at(&browser, "part.length", "17");
    assert_kept(&browser, &with_length("17"), "typed");
    let whole = stored(&browser, KEY).as_str().expect("a text").to_owned();
    let newer =
        [whole.replace("setup 2-", "setup 3-"), whole.replace(" device", " night"), format!("{whole}bench oak\n")];
    for newer in &newer {
        assert_ne!(newer, &whole, "it is changed");
        // Written by a page in another window and closed since: this one takes it in when it keeps something.
        browser.execute("localStorage.setItem(arguments[0], arguments[1])", vec![json!(KEY), json!(newer)]);
        browser.execute("history.replaceState(null, '', '#')", Vec::new());
        browser.goto("about:blank");
        open(&browser, &site.url());
        told(&browser, "a newer version wrote it", "it is told");
        type_at(&browser, "part.length", "18.5");
        assert_kept(&browser, &with_length("18.5"), "the page works beside it");
        let kept = all_stored(&browser);
        assert!(kept.contains(&json!(newer).to_string()), "{newer} is in {kept}");
        browser.reload();
        told(&browser, "a newer version wrote it", "and told again until it is put away");
        assert!(
            browser
                .execute(
                    "return [...document.querySelectorAll('#notices textarea')].map((kept) => kept.value)",
                    Vec::new()
                )
                .as_array()
                .is_some_and(|texts| texts.contains(&json!(newer))),
            "with its text"
        );
        // What a page that can read it would find: the same work, whole.
        browser.execute(
            "for (const [key, text] of Object.entries(localStorage))
                if (key.startsWith('holdround.damaged')) localStorage.setItem(key, arguments[0])",
            vec![json!(whole)],
        );
        browser.reload();
        told(&browser, "Your earlier set-up is kept", "a page that can read it offers it");
        browser.click("#go-back-0");
        assert_shows(&browser, &with_length("17"), UnitSystem::Metric, "and opens it");
        assert_kept(&browser, &with_length("17"), "and keeps it");
        assert!(!all_stored(&browser).contains("damaged"), "nothing is set aside any more");
        browser.click("#drop-earlier-0");
        browser.eventually("document.querySelectorAll('[id^=go-back]').length", &json!(0), "nothing else is offered");
    }
}

/// A link of the first version, of a job called "a _B".
const FIRST_VERSION: &str = "1-2da4c96a~uud:a_%5FB~hxN7:0,2_mm/rev~86l:75_kN";

#[test]
fn the_page_that_a_worker_has_kept_and_what_another_version_wrote_get_along_whichever_is_older() {
    let copy = copy_of_the_site();
    let site = Server::start(copy.path().to_path_buf(), 0).expect("a server");
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    browser.wait_until(OFFLINE);
    browser.reload();
    browser.wait_until("navigator.serviceWorker.controller");
    type_at(&browser, "part.length", "17");
    assert_kept(&browser, &with_length("17"), "typed");
    let whole = stored(&browser, KEY).as_str().expect("a text").to_owned();
    let newer = whole.replace("setup 2-", "setup 3-");
    let version = || browser.attribute("meta[name=description]", "content").unwrap_or_default();
    let reopen_with = |text: &str| {
        // From a page beside it, which holds back the worker that waits and writes nothing itself.
        browser.goto(&format!("{}evidence.html", site.url()));
        browser.execute("localStorage.setItem(arguments[0], arguments[1])", vec![json!(KEY), json!(text)]);
        browser.goto(&site.url());
        browser.wait_until("document.querySelector('#verdict h2')");
    };

    // A newer version is there, and has written, as in another window; the worker still hands out the old page.
    publish_newer(copy.path());
    browser.execute("return navigator.serviceWorker.ready.then((kept) => kept.update()).then(() => true)", Vec::new());
    browser.wait_until("document.querySelector('#update button')");
    reopen_with(&newer);
    assert!(version().starts_with("How hard"), "the old page: {}", version());
    told(&browser, "a newer version wrote it", "the old page tells what it cannot read");
    type_at(&browser, "part.length", "18.5");
    assert_kept(&browser, &with_length("18.5"), "and works beside it");
    assert!(all_stored(&browser).contains(&json!(newer).to_string()), "nothing is written over");

    // The new page takes over, and finds what the old one left, and a set-up of the first version.
    browser.wait_until("document.querySelector('#update button')");
    browser.click("#update button");
    browser.wait_until("document.querySelector('meta[name=description]')?.content.startsWith('New: how hard')");
    assert_shows(&browser, &with_length("18.5"), UnitSystem::Metric, "the new page has what the old one kept");
    told(&browser, "a newer version wrote it", "and what was set aside is still told");
    let others = whole.lines().filter(|line| !line.starts_with("setup ")).collect::<Vec<_>>().join("\n");
    let oldest = format!("setup {FIRST_VERSION}\n{others}\n");
    reopen_with(&oldest);
    assert!(version().starts_with("New: how hard"), "the new page: {}", version());
    assert_eq!(browser.value(&field("job.name")), "a _B", "a set-up of the first version lies on the desk");
}

/// Opens the page in another window and waits for it.
fn open_beside(browser: &Browser) {
    browser.execute("window.other = window.open(location.href.split('#')[0])", Vec::new());
    browser.wait_until("window.other.document.querySelector('#verdict h2')");
}

/// Types a length in the other window.
fn type_beside(browser: &Browser, length: &str) {
    browser.execute(
        "const field = window.other.document.getElementById('in-part.length');
        field.value = arguments[0];
        field.dispatchEvent(new window.other.InputEvent('input', { bubbles: true }))",
        vec![json!(length)],
    );
}

#[test]
fn of_two_windows_neither_loses_what_the_other_keeps() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    type_at(&browser, "part.length", "17");
    assert_kept(&browser, &with_length("17"), "the first window's");
    open_beside(&browser);
    type_beside(&browser, "18.5");
    assert_kept(&browser, &with_length("18.5"), "the second window's");
    told(&browser, "Another window of this page has a set-up of its own", "the first is told");
    type_at(&browser, "part.length", "19");
    assert_kept(&browser, &with_length("19"), "the first window saves last");
    browser.eventually(
        "window.other.document.querySelector('#notices').textContent.includes('Another window of this page')",
        &json!(true),
        "the second is told",
    );
    browser.execute("window.other.close()", Vec::new());
    browser.wait_until("window.other.closed");
    browser.execute("history.replaceState(null, '', '#')", Vec::new());
    browser.reload();
    assert_shows(&browser, &with_length("19"), UnitSystem::Metric, "what was saved last opens");
    told(&browser, "A set-up of another window is kept", "the other is offered");
    browser.click("#go-back-0");
    assert_shows(&browser, &with_length("18.5"), UnitSystem::Metric, "and is the other window's newest");
    told(&browser, "Your earlier set-up is kept", "and the first is not lost by that");
}

#[test]
fn a_window_that_is_killed_while_it_saves_leaves_its_work_whole() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    type_at(&browser, "part.length", "17");
    assert_kept(&browser, &with_length("17"), "the first window's");
    for length in ["19", "20"] {
        open_beside(&browser);
        type_beside(&browser, length);
        assert_kept(&browser, &with_length(length), "the second window's is on its way");
        type_beside(&browser, &format!("{length}.5"));
        let targets = browser.devtools("Target.getTargets", json!({}));
        let pages = targets["targetInfos"].as_array().expect("targets").clone();
        let newest =
            pages.iter().find(|info| info["type"] == "page" && info["openerId"].is_string()).expect("the other");
        browser.devtools("Target.closeTarget", json!({ "targetId": newest["targetId"] }));
        browser.wait_until("window.other.closed");
        browser.execute("history.replaceState(null, '', '#')", Vec::new());
        browser.goto("about:blank");
        open(&browser, &site.url());
        // On the desk, or offered beside what the window that stayed has on its own.
        let kept = all_stored(&browser);
        let whole = [length.to_owned(), format!("{length}.5")].map(|length| with_length(&length).to_link());
        assert!(whole.iter().any(|link| kept.contains(link)), "old or new, and whole: {whole:?} in {kept}");
        assert!(!all_stored(&browser).contains("damaged"), "nothing is damaged");
    }
}

#[test]
fn a_full_store_is_told_the_address_holds_the_work_and_it_is_kept_once_there_is_room() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    type_at(&browser, "part.length", "17");
    assert_kept(&browser, &with_length("17"), "at first there is room");
    browser.execute(
        "let size = 1 << 22, at = 0;
        while (size) try { localStorage.setItem('filler' + at++, 'x'.repeat(size)) } catch { size >>= 1 }",
        Vec::new(),
    );
    type_at(&browser, "job.name", "A name that is longer than what was left in the store, so that it has no room");
    told(&browser, "it is full", "a full store is told");
    let mut named = with_length("17");
    named.set("job.name", "A name that is longer than what was left in the store, so that it has no room");
    assert_address_holds(&browser, &named, "the address holds it");
    browser.execute(
        "for (const key of Object.keys(localStorage)) if (key.startsWith('filler')) localStorage.removeItem(key)",
        Vec::new(),
    );
    type_at(&browser, "part.length", "18");
    named.set("part.length", "18 mm");
    assert_kept(&browser, &named, "there is room again");
    browser.eventually(
        "document.querySelector('#notices').textContent.includes('it is full')",
        &json!(false),
        "told no more",
    );
}

#[test]
fn where_the_browser_keeps_nothing_the_page_works_and_says_so() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    let refuse = "for (const store of ['localStorage', 'sessionStorage', 'indexedDB', 'caches'])
        Object.defineProperty(window, store, { get() { throw new DOMException('no', 'SecurityError') } })";
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": refuse }));
    open(&browser, &site.url());
    told(&browser, "This browser keeps nothing for this page", "it is told");
    type_at(&browser, "part.length", "17");
    assert_shows(&browser, &with_length("17"), UnitSystem::Metric, "and the page works");
    assert_address_holds(&browser, &with_length("17"), "from its address alone");
}

/// Reads, or writes, the text of a record in the store itself.
fn text_in_store(browser: &Browser, id: &str, text: Option<&str>) -> Value {
    browser.execute(
        "const [id, text] = arguments;
        const done = (request) => new Promise((yes, no) => { request.onsuccess = () => yes(request.result); request.onerror = no });
        return (async () => {
            const base = await done(indexedDB.open('holdround'));
            const store = base.transaction('jaw-records', 'readwrite').objectStore('jaw-records');
            if (text !== null) await done(store.put(text, id));
            const found = await done(store.get(id));
            base.close();
            return found;
        })()",
        vec![json!(id), json!(text)],
    )
}

#[test]
fn a_newer_pages_jaw_records_are_left_alone_and_that_is_told() {
    const TAKEN: &str = "A newer version of this page has the jaw records";
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    let id = keep(&browser);

    let newer = json!({ "id": id, "name": "Newer", "borings": { "by date": {} } }).to_string();
    text_in_store(&browser, &id, Some(&newer));
    browser.type_into(&format!("#record-name-{id}"), "Mine");
    told(&browser, TAKEN, "a record that a newer page wrote is told");
    assert_eq!(text_in_store(&browser, &id, None), json!(newer), "it is not written over");
    assert_eq!(
        read(&file(&browser)).get(&id).expect("the record").get("name"),
        "Mine",
        "and this page's is in its file"
    );

    browser.reload();
    told(&browser, "A kept jaw record cannot be read. It stays kept.", "it is told at the next opening too");
    assert_eq!(text_in_store(&browser, &id, None), json!(newer), "and stays");

    // A newer page in another window brings a store of its own making.
    browser.execute(
        "return new Promise((yes, no) => {
            const request = indexedDB.open('holdround', 2);
            request.onsuccess = () => { request.result.close(); yes() };
            request.onerror = no;
        })",
        Vec::new(),
    );
    told(&browser, TAKEN, "the page lets go of the store and says so");
    browser.reload();
    told(&browser, TAKEN, "and finds it taken at the next opening");
    assert_eq!(text_in_store(&browser, &id, None), json!(newer), "what is in it stays");
}

#[test]
fn a_clock_that_is_wrong_neither_loses_nor_undoes_a_change() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    let id = keep(&browser);
    for (round, time) in [0_i64, 8_640_000_000_000_000, 946_684_800_000, 1].into_iter().enumerate() {
        let clock = format!(
            "const Real = Date; Date = class extends Real {{ constructor(...a) {{ a.length ? super(...a) : super({time}) }} static now() {{ return {time} }} }}"
        );
        let added = browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": clock }));
        browser.reload();
        open_records(&browser);
        let name = format!("Round {round}");
        browser.execute("document.getElementById(arguments[0]).open = true", vec![json!(format!("record-{id}"))]);
        browser.type_into(&format!("#record-name-{id}"), &name);
        settle(&browser);
        let here = file(&browser);
        browser.reload();
        open_records(&browser);
        assert_eq!(browser.value(&format!("#record-name-{id}")), name, "at {time} the change is kept");
        crate::records::take_over(&browser, &here);
        browser.eventually(KEPT, &json!("kept"), "the file is taken over");
        assert_eq!(browser.value(&format!("#record-name-{id}")), name, "at {time} the newest change holds");
        browser.devtools("Page.removeScriptToEvaluateOnNewDocument", json!({ "identifier": added["identifier"] }));
    }
}

#[test]
fn on_a_slow_device_what_is_typed_while_the_page_works_is_judged_in_the_end() {
    let site = serve_site();
    let browser = Browser::open(Viewport::PHONE);
    open(&browser, &site.url());
    browser.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 12 }));
    type_at(&browser, "part.length", "17");
    type_at(&browser, "job.name", "Slow");
    type_at(&browser, "run.speed", "612");
    let mut typed = with_length("17");
    typed.set("job.name", "Slow");
    typed.set("run.speed", "612 rev/min");
    assert_address_holds(&browser, &typed, "every key counts");
    browser.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 1 }));
    assert_shows(&browser, &typed, UnitSystem::Metric, "and is judged");
}
