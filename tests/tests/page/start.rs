//! The page starts, keeps itself for later, and speaks to nobody.

use std::fs;
use std::path::Path;

use holdround_build::fault::Outcome;
use holdround_build::offline::integrity;
use holdround_build::serve::Server;
use holdround_build::site::{SINGLE_FILE, read_folder};
use holdround_core::quantity::UnitSystem;
use holdround_tests::browser::{Browser, Viewport, serve_site, single_file_url, site_folder};
use serde_json::json;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{WORKED_OUT, assert_shows, first_example};

const STARTED: &str = "document.querySelector('main > :not(noscript)')";

#[test]
fn the_served_page_starts_with_a_clean_console_on_every_screen() {
    let site = serve_site();
    for viewport in [Viewport::TABLET, Viewport::TABLET_UPRIGHT, Viewport::PHONE, Viewport::DESK] {
        let browser = Browser::open(viewport);
        browser.goto(&site.url());
        browser.wait_until(STARTED);
        browser.eventually(
            "document.querySelector('main').innerText.includes('Holdround')",
            &json!(true),
            &format!("the page says its name on {viewport:?}"),
        );
        assert_eq!(browser.console_errors(), Vec::<String>::new(), "the console is not clean on {viewport:?}");
        let width = browser.execute("return document.documentElement.scrollWidth", Vec::new());
        assert!(width.as_u64() <= Some(viewport.width.into()), "the page is {width} wide on {viewport:?}");
    }
}

#[test]
fn a_finding_leads_to_what_the_numbers_were_checked_against() {
    let site = serve_site();
    let browser = Browser::open(Viewport::PHONE);
    browser.goto(&site.url());
    open_first_line(&browser);
    let leads = browser.execute("return document.querySelector('.title-block .sure a').href", Vec::new());
    browser.goto(leads.as_str().expect("an address"));
    assert!(browser.text("main").contains("three-dimensional solids"), "the page of evidence opens");
    assert_eq!(browser.console_errors(), Vec::<String>::new(), "its console is clean");
    assert_keeps_the_rules(&browser, "the page of evidence");
    assert!(!browser.is_shown("#hold table"), "the rows of a topic are folded away");
    browser.click("#glance a[href='#hold']");
    browser.eventually(
        "document.querySelector('#hold table').checkVisibility()",
        &json!(true),
        "a line opens its rows",
    );

    browser.goto(&single_file_url());
    open_first_line(&browser);
    assert!(!browser.is_shown(".title-block .sure"), "one file by itself leads nowhere");
}

/// Opens the steps of the verdict's first line, which are drawn once it is open.
fn open_first_line(browser: &Browser) {
    browser.wait_until(WORKED_OUT);
    browser.execute("document.querySelector('.title-block details').open = true", Vec::new());
    browser.wait_until("document.querySelector('.title-block .explained .sure')");
}

#[test]
fn the_single_file_starts_from_the_disk_and_asks_for_nothing() {
    let browser = Browser::open(Viewport::TABLET);
    browser.goto(&single_file_url());
    browser.wait_until(STARTED);
    assert!(browser.text("main").contains("Holdround"), "the page does not say its name");
    assert_eq!(browser.console_errors(), Vec::<String>::new(), "the console is not clean");
    let others: Vec<_> =
        browser.requests().into_iter().filter(|url| !url.starts_with("data:") && *url != single_file_url()).collect();
    assert_eq!(others, Vec::<String>::new(), "the single file asked for other files");
}

#[test]
fn the_page_opens_again_without_its_host() {
    let mut site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    browser.goto(&site.url());
    browser.wait_until("document.documentElement.dataset.offline === 'ready'");
    site.stop();
    browser.reload();
    browser.wait_until(WORKED_OUT);
    assert_shows(&browser, &first_example(), UnitSystem::Metric, "the kept page");
    browser.goto(&format!("{}index.html?from=elsewhere", site.url()));
    browser.wait_until(WORKED_OUT);
    assert_shows(&browser, &first_example(), UnitSystem::Metric, "the kept page under its file's name");
}

#[test]
fn the_page_asks_nobody_but_its_host() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    browser.goto(&site.url());
    browser.wait_until("document.documentElement.dataset.offline === 'ready'");
    let requests = browser.requests();
    assert!(
        requests.iter().any(|url| url.ends_with("holdround_web_bg.wasm")),
        "the module's own request must be among those seen: {requests:?}"
    );
    let others: Vec<_> = requests.iter().filter(|url| !url.starts_with(&site.url())).collect();
    assert!(others.is_empty(), "the page asked other hosts: {others:?}");
}

/// A frame that may only run scripts has no storage and no service worker: both throw.
#[test]
fn the_single_file_starts_in_a_frame_that_may_only_run_scripts() {
    let folder = tempfile::tempdir().unwrap();
    fs::copy(site_folder().join(SINGLE_FILE), folder.path().join(SINGLE_FILE)).unwrap();
    let frame = format!("<!doctype html><iframe sandbox=\"allow-scripts\" src=\"{SINGLE_FILE}\"></iframe>");
    fs::write(folder.path().join("index.html"), frame).unwrap();
    let host = Server::start(folder.path().into(), 0).unwrap();

    let browser = Browser::open(Viewport::DESK);
    browser.goto(&host.url());
    browser.enter_frame("iframe");
    browser.wait_until(STARTED);
    assert!(browser.text("main").contains("Holdround"), "the page does not say its name in a frame");
}

#[test]
fn a_new_version_comes_only_when_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let published = folder.path().join("sub folder");
    publish(&published, |_, content| content).unwrap();
    let host = Server::start(folder.path().into(), 0).unwrap();
    let browser = Browser::open(Viewport::TABLET);
    browser.goto(&format!("{}sub%20folder/", host.url()));
    browser.wait_until("document.documentElement.dataset.offline === 'ready'");
    browser.reload();
    browser.wait_until("navigator.serviceWorker.controller");

    publish_newer(&published);
    browser.execute("return navigator.serviceWorker.ready.then((kept) => kept.update()).then(() => true)", Vec::new());
    browser.wait_until("document.querySelector('#update button')");
    browser.reload();
    browser.wait_until("document.querySelector('#update button')");
    let version = || browser.attribute("meta[name=description]", "content").unwrap_or_default();
    assert!(version().starts_with("How hard"), "the new version came without being asked for: {}", version());
    let offer = "document.querySelector('#update button').textContent";
    browser.wait_until(WORKED_OUT);
    for (code, said) in [("de", "Neue Version verwenden"), ("en", "Use the new version")] {
        browser.click(&format!("#prefer-language option[value='{code}']"));
        browser.eventually(offer, &json!(said), "the offer follows the language");
    }

    browser.click("#update button");
    browser.wait_until("document.querySelector('meta[name=description]')?.content.startsWith('New: how hard')");
    let kept = browser.execute("return caches.keys().then((names) => names.length)", Vec::new());
    assert_eq!(kept.as_u64(), Some(1), "the old version's files must be gone");
}

/// Writes a newer version of the site: what the page says of itself begins with "New".
pub(crate) fn publish_newer(folder: &Path) {
    let newer = |page: &[u8]| {
        String::from_utf8_lossy(page).replace("content=\"How hard", "content=\"New: how hard").into_bytes()
    };
    let page = fs::read(site_folder().join("index.html")).unwrap();
    let [old, new] = [page.clone(), newer(&page)].map(|page| integrity(&page));
    publish(folder, |name, content| match name {
        "index.html" => newer(&content),
        "sw.js" => {
            let worker = String::from_utf8(content).unwrap().replace("version = \"", "version = \"new");
            worker.replace(&old, &new).into()
        }
        _ => content,
    })
    .unwrap();
}

/// Writes a copy of the site, each file changed as told.
fn publish(folder: &Path, change: impl Fn(&str, Vec<u8>) -> Vec<u8>) -> Outcome<()> {
    for (name, content) in read_folder(&site_folder())? {
        let path = folder.join(&name);
        fs::create_dir_all(path.parent().unwrap_or(folder))?;
        fs::write(path, change(&name, content))?;
    }
    Ok(())
}
