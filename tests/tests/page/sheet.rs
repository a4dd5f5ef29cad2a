//! The sheet as a person reads and fills it, and what it must show.

use std::thread;
use std::time::{Duration, Instant};

use holdround_core::evaluate;
use holdround_core::examples::EXAMPLES;
use holdround_core::findings::{Finding, Findings};
use holdround_core::quantity::{UnitSystem, shown};
use holdround_core::setup::{Entries, Setup};
use holdround_tests::browser::{Browser, Viewport, serve_site, single_file_url};
use serde_json::{Value, json};

/// True once the findings of what is on the sheet are there.
pub(crate) const WORKED_OUT: &str =
    "document.querySelector('#verdict h2') && !document.querySelector('#verdict progress, [aria-busy=true]')";

/// How long to look for something before telling what is there instead; no claim about the page.
const LOOKING: Duration = Duration::from_secs(30);

/// Follows `flow` on the served page and on the single file, each in a browser of its own; neither may
/// log an error or ask for anything from elsewhere.
pub(crate) fn on_both_pages(viewport: Viewport, flow: impl Fn(&Browser, &str)) {
    let site = serve_site();
    for url in [site.url(), single_file_url()] {
        let browser = Browser::open(viewport);
        open(&browser, &url);
        flow(&browser, &url);
        assert_quiet(&browser, &url);
    }
}

/// Opens the page and waits for its first findings.
pub(crate) fn open(browser: &Browser, url: &str) {
    browser.goto(url);
    browser.wait_until(WORKED_OUT);
}

/// Waits until nothing is left to be worked out: what appears moves what is below it from under a finger.
pub(crate) fn come_to_rest(browser: &Browser) {
    browser.wait_until("document.querySelector('#window-parts') && /^(At worst|Schlimmstenfalls) (still|not|noch|nicht|beim)/.test(document.querySelector('#at-worst')?.textContent)");
}

/// Chooses a file with this text in the field found by `field`.
pub(crate) fn choose_file(browser: &Browser, field: &str, text: &str) {
    browser.execute(
        "const files = new DataTransfer();
        files.items.add(new File([arguments[1]], 'chosen.json'));
        const field = document.querySelector(arguments[0]);
        field.files = files.files;
        field.dispatchEvent(new Event('change', { bubbles: true }))",
        vec![json!(field), json!(text)],
    );
}

/// The page at `url` has logged no error and asked nobody else for anything.
pub(crate) fn assert_quiet(browser: &Browser, url: &str) {
    assert_eq!(browser.console_errors(), Vec::<String>::new(), "the console of {url} is not clean");
    let requests = browser.requests();
    assert!(requests.iter().any(|asked| asked.starts_with(url)), "the page's own request is not seen: {requests:?}");
    let others: Vec<_> =
        requests.iter().filter(|asked| !asked.starts_with(url) && !asked.starts_with("data:")).collect();
    assert!(others.is_empty(), "{url} asked others: {others:?}");
}

/// Finds the field of the entry at `path`.
pub(crate) fn field(path: &str) -> String {
    format!("[id='in-{path}']")
}

/// Finds the message at the field of the entry at `path`.
pub(crate) fn message(path: &str) -> String {
    format!("[id='message-{path}']")
}

/// Finds the line of a finding in the title block.
pub(crate) fn line(id: &str) -> String {
    format!("[id='line-{id}']")
}

/// Types into the field of the entry at `path`.
pub(crate) fn type_at(browser: &Browser, path: &str, text: &str) {
    browser.type_into(&field(path), text);
}

/// Chooses from the list of the entry at `path`.
pub(crate) fn choose(browser: &Browser, path: &str, key: &str) {
    browser.click(&format!("{} option[value='{key}']", field(path)));
}

/// The set-up of the worked example `id`.
pub(crate) fn example(id: &str) -> Entries {
    let found = EXAMPLES.iter().find(|example| example.id == id).expect("a worked example of this name");
    Entries::from_json(found.json).expect("a worked example is a set-up")
}

/// The set-up of the first worked example, which an empty page opens.
pub(crate) fn first_example() -> Entries {
    example(EXAMPLES[0].id)
}

/// A set-up of these entries.
pub(crate) fn entries(typed: &[(&str, &str)]) -> Entries {
    let mut entries = Entries::default();
    for (path, text) in typed {
        assert!(entries.set(path, text), "{path} is no entry");
    }
    entries
}

/// What the engines find for a set-up, computed outside the browser.
pub(crate) fn found(entries: &Entries) -> Findings {
    evaluate(&Setup::read(entries).expect("a valid set-up"))
}

/// The value of a finding as the page must write it.
pub(crate) fn written(finding: &Finding, system: UnitSystem) -> String {
    finding.value.as_ref().map_or_else(|_| "—".into(), |value| shown(*value, finding.kind.unit_in(system)))
}

/// Every finding on the page by name and value, those of the title block once more.
const READ: &str = "[...document.querySelectorAll('section.findings details, #title-block details')]
    .map((line) => [line.id, line.querySelector('.value').textContent])";

/// What the ids of findings on making the jaws begin with.
const OF_MAKING: [&str; 8] = ["stroke.", "ring.", "rings.", "recut.", "bore.", "taper.", "program.", "boring."];

/// The page must come to show exactly what the engines find for `entries`.
pub(crate) fn assert_shows(browser: &Browser, entries: &Entries, system: UnitSystem, claim: &str) {
    let findings = found(entries);
    const TOLD: &str =
        "[...document.querySelectorAll('#title-block details')].map((line) => line.id.replace('line-', ''))";
    let both = format!("['hold.factor', 'shape.roundness'].every((told) => {TOLD}.includes(told))");
    browser.eventually(&both, &json!(true), &format!("{claim}: the title block must tell hold and roundness"));
    let headlines = browser.execute(&format!("return {TOLD}"), Vec::new());
    let headlines: Vec<&str> = headlines.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    let above = headlines.iter().filter_map(|id| findings.get(id)).map(|finding| ("line", finding));
    // Those of making the jaws stand in a list of their own, after the others.
    let of_making = |finding: &&Finding| OF_MAKING.iter().any(|topic| finding.id.starts_with(topic));
    let holding = findings.findings.iter().filter(|finding| !of_making(finding));
    let below = holding.chain(findings.findings.iter().filter(of_making)).map(|finding| ("all", finding));
    let wanted: Vec<Value> = above
        .chain(below)
        .map(|(list, finding)| json!([format!("{list}-{}", finding.id), written(finding, system)]))
        .collect();
    browser.eventually(READ, &json!(wanted), claim);
}

/// The address must come to hold `entries`.
pub(crate) fn assert_address_holds(browser: &Browser, entries: &Entries, claim: &str) {
    let held = || Entries::from_link(browser.url().split_once('#').map_or("", |(_, link)| link)).ok();
    let begun = Instant::now();
    while held().as_ref() != Some(entries) && begun.elapsed() < LOOKING {
        thread::sleep(Duration::from_millis(50));
    }
    assert_eq!(held().as_ref(), Some(entries), "{claim}");
}

/// Nothing computed on the page may be a number that is none.
pub(crate) fn assert_no_nonsense(browser: &Browser, claim: &str) {
    let nonsense = browser.execute(
        "return ['views', 'play', 'verdict', 'notes', 'findings'].filter((id) =>
            /NaN|Infinity|undefined|\\[object/.test(document.getElementById(id).innerHTML))",
        Vec::new(),
    );
    assert_eq!(nonsense, json!([]), "{claim}: regions that show nonsense");
}
