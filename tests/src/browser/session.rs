//! A browser under a test's control.

use std::fmt::Display;
use std::path::Path;
use std::time::Duration;

use holdround_build::chromium::Chromium;
use serde_json::{Value, json};
use tempfile::TempDir;
use thirtyfour::common::print::{PrintPage, PrintParameters};
use thirtyfour::error::{WebDriverErrorInner, WebDriverResult};
use thirtyfour::support::block_on;
use thirtyfour::{
    By, ChromeCapabilities, ChromiumLikeCapabilities, DesiredCapabilities, Key, LoggingPrefsLogLevel,
    TimeoutConfiguration, TypingData, WebDriver, WebElement,
};

use super::driver::Driver;
use super::surroundings;
use super::viewport::Viewport;

/// How long the driver may take over one call before it gives up on the browser. No claim about
/// the page: only far more than any machine needs.
const PATIENCE: Duration = Duration::from_secs(300);
/// How long an element, or what [`Browser::eventually`] looks at, is waited for; no claim either. The driver's
/// client gives up on a call after two minutes.
const LOOKING: Duration = Duration::from_secs(100);
/// How often an element that the page has just replaced is looked up again.
const REPLACEMENTS: usize = 20;

/// A sheet of paper, upright.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Paper {
    /// Width, in centimetres.
    pub width: f64,
    /// Height, in centimetres.
    pub height: f64,
}

impl Paper {
    /// ISO 216 A4.
    pub const A4: Self = Self { width: 21.0, height: 29.7 };
    /// ANSI A, called letter: 8 1/2 by 11 inches.
    pub const LETTER: Self = Self { width: 21.59, height: 27.94 };
}

/// A headless browser with a profile of its own; it closes when dropped.
pub struct Browser {
    session: Option<WebDriver>,
    _driver: Driver,
    _profile: TempDir,
}

impl Browser {
    /// Opens a browser with a fresh profile and an empty page on a screen.
    pub fn open(viewport: Viewport) -> Self {
        Self::start(&surroundings::chromium(), viewport)
    }

    /// Opens this browser with a fresh profile and an empty page on a screen.
    pub fn start(chromium: &Chromium, viewport: Viewport) -> Self {
        let driver = Driver::start(&chromium.driver);
        let profile = tempfile::tempdir().expect("a folder for the profile");
        let session = block_on(WebDriver::new(driver.url.as_str(), capabilities(&chromium.browser, profile.path())));
        let browser = Self { session: Some(told(session, "opening a session")), _driver: driver, _profile: profile };
        let patience = TimeoutConfiguration::new(Some(PATIENCE), Some(PATIENCE), None);
        told(block_on(browser.session().update_timeouts(patience)), "setting the patience");
        // A field that gets the keyboard says so only in a page that has it.
        browser.devtools("Emulation.setFocusEmulationEnabled", json!({ "enabled": true }));
        browser.resize(viewport);
        browser
    }

    /// Puts the page on another screen.
    pub fn resize(&self, viewport: Viewport) {
        self.devtools("Emulation.setDeviceMetricsOverride", viewport.metrics());
        self.devtools("Emulation.setTouchEmulationEnabled", json!({ "enabled": viewport.touch }));
    }

    /// Makes the browser report what a person has set: `feature` as in CSS, such as
    /// `prefers-reduced-motion` with `reduce` or `prefers-color-scheme` with `dark`.
    pub fn prefer(&self, feature: &str, value: &str) {
        self.devtools("Emulation.setEmulatedMedia", json!({ "features": [{ "name": feature, "value": value }] }));
    }

    /// Sends a command of the DevTools protocol and gives its answer.
    pub fn devtools(&self, command: &str, parameters: Value) -> Value {
        told(block_on(self.session().cdp().send_raw(command, parameters)), command)
    }

    /// Opens an address and waits until the page has loaded.
    pub fn goto(&self, url: &str) {
        told(block_on(self.session().goto(url)), url);
    }

    /// Loads the page again.
    pub fn reload(&self) {
        told(block_on(self.session().refresh()), "reloading");
    }

    /// Goes on inside the frame a CSS selector finds.
    pub fn enter_frame(&self, selector: &str) {
        told(block_on(self.find(selector).enter_frame()), selector);
    }

    /// The address shown.
    pub fn url(&self) -> String {
        told(block_on(self.session().current_url()), "the address").to_string()
    }

    /// The page's title.
    pub fn title(&self) -> String {
        told(block_on(self.session().title()), "the title")
    }

    /// Clicks, or taps, the first element a CSS selector finds.
    pub fn click(&self, selector: &str) {
        self.on(selector, |element| block_on(element.click()));
    }

    /// Replaces what is in a field by typing; typing nothing empties it.
    pub fn type_into(&self, selector: &str, text: &str) {
        self.on(selector, |field| block_on(field.send_keys(Key::Control + "a")));
        let typed = || if text.is_empty() { TypingData::from(Key::Delete) } else { TypingData::from(text) };
        self.on(selector, |field| block_on(field.send_keys(typed())));
    }

    /// Sends keys to the element that has the focus.
    pub fn press(&self, keys: impl Into<TypingData> + Send) {
        let keys: String = keys.into().as_vec().into_iter().collect();
        let focused = || told(block_on(self.session().active_element()), "the focused element");
        on_present(focused, |element| block_on(element.send_keys(keys.as_str())), "pressing keys");
    }

    /// The visible text of the first element a CSS selector finds.
    pub fn text(&self, selector: &str) -> String {
        self.on(selector, |element| block_on(element.text()))
    }

    /// An attribute of the first element a CSS selector finds, when it has one.
    pub fn attribute(&self, selector: &str, name: &str) -> Option<String> {
        self.on(selector, |element| block_on(element.attr(name)))
    }

    /// What is in a field now.
    pub fn value(&self, selector: &str) -> String {
        self.on(selector, |field| block_on(field.value())).unwrap_or_default()
    }

    /// How many elements a CSS selector finds.
    pub fn count(&self, selector: &str) -> usize {
        told(block_on(self.session().find_all(By::Css(selector))), selector).len()
    }

    /// Whether the first element a CSS selector finds can be seen.
    pub fn is_shown(&self, selector: &str) -> bool {
        self.on(selector, |element| block_on(element.is_displayed()))
    }

    /// Runs the body of a function in the page and gives what it returns; of a promise, what it
    /// comes to. The values are its `arguments`.
    pub fn execute(&self, script: &str, values: Vec<Value>) -> Value {
        told(block_on(self.session().execute(script, values)), script).json().clone()
    }

    /// Waits until an expression in the page is true, looking again with every frame drawn.
    pub fn wait_until(&self, expression: &str) {
        self.execute(
            &format!(
                "return new Promise((done) => {{
                    const look = () => (({expression}) ? done() : setTimeout(look, 16));
                    look();
                }})"
            ),
            Vec::new(),
        );
    }

    /// Looks at an expression in the page until it gives this value; what it gave instead is told.
    pub fn eventually(&self, expression: &str, wanted: &Value, claim: &str) {
        let seen = self.execute(
            &format!(
                "const [wanted, patience] = arguments;
                const end = performance.now() + patience;
                return new Promise((done) => {{
                    const look = () => {{
                        const seen = ({expression});
                        if (JSON.stringify(seen) === wanted || performance.now() > end) done(seen);
                        else setTimeout(look, 16);
                    }};
                    look();
                }})"
            ),
            vec![json!(wanted.to_string()), json!(LOOKING.as_millis())],
        );
        assert_eq!(&seen, wanted, "{claim}");
    }

    /// Errors that reached the console since the last look: uncaught ones, logged ones, refused
    /// by the policy, and failed requests.
    pub fn console_errors(&self) -> Vec<String> {
        told(block_on(self.session().browser_log()), "the console")
            .into_iter()
            .filter(|entry| entry.level == "SEVERE")
            .map(|entry| entry.message)
            .collect()
    }

    /// Addresses the page has asked for, itself included.
    pub fn requests(&self) -> Vec<String> {
        let entries = self.execute(
            "return ['navigation', 'resource'].flatMap((kind) => performance.getEntriesByType(kind)).map((entry) => entry.name)",
            Vec::new(),
        );
        entries.as_array().into_iter().flatten().filter_map(Value::as_str).map(str::to_owned).collect()
    }

    /// Saves what is on the screen as PNG.
    pub fn screenshot(&self, path: impl AsRef<Path>) {
        let path = path.as_ref();
        told(block_on(self.session().screenshot(path)), path.display());
    }

    /// Prints the page to PDF, on the paper its style asks for, else on this one, and gives the
    /// file's bytes.
    pub fn print(&self, paper: Paper) -> Vec<u8> {
        let paper = PrintParameters {
            background: true,
            page: PrintPage { width: paper.width, height: paper.height },
            shrink_to_fit: false,
            ..PrintParameters::default()
        };
        told(block_on(self.session().print_page(paper)), "printing")
    }

    fn session(&self) -> &WebDriver {
        self.session.as_ref().expect("the session lasts as long as the browser")
    }

    /// The first element a CSS selector finds; what is drawn a turn later than it is asked for is waited for.
    fn find(&self, selector: &str) -> WebElement {
        let there = format!("Boolean(document.querySelector({}))", json!(selector));
        self.eventually(&there, &json!(true), selector);
        told(block_on(self.session().find(By::Css(selector))), selector)
    }

    /// Does something with the first element a CSS selector finds; with its successor, if the page replaced it
    /// between finding and doing.
    fn on<T>(&self, selector: &str, act: impl Fn(&WebElement) -> WebDriverResult<T>) -> T {
        on_present(|| self.find(selector), act, selector)
    }
}

/// Acts on the element that is `found`; on what took its place where the page replaced it meanwhile.
fn on_present<T>(
    found: impl Fn() -> WebElement,
    act: impl Fn(&WebElement) -> WebDriverResult<T>,
    doing: impl Display,
) -> T {
    for _ in 1..REPLACEMENTS {
        match act(&found()) {
            Err(error)
                if matches!(
                    *error,
                    WebDriverErrorInner::StaleElementReference(_) | WebDriverErrorInner::ElementNotInteractable(_)
                ) => {}
            done => return told(done, doing),
        }
    }
    told(act(&found()), doing)
}

impl Drop for Browser {
    fn drop(&mut self) {
        if let Some(session) = self.session.take() {
            let _closed = block_on(session.quit());
        }
    }
}

fn capabilities(program: &Path, profile: &Path) -> ChromeCapabilities {
    let mut wanted = DesiredCapabilities::chrome();
    let mut arguments: Vec<String> = [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ]
    .map(str::to_owned)
    .into();
    arguments.push(format!("--user-data-dir={}", profile.display()));
    for argument in &arguments {
        told(wanted.add_arg(argument), argument);
    }
    told(wanted.set_binary(&program.to_string_lossy()), "the browser's program");
    told(wanted.set_browser_log_level(LoggingPrefsLogLevel::All), "the console's level");
    wanted
}

fn told<T, E: Display>(result: Result<T, E>, doing: impl Display) -> T {
    result.unwrap_or_else(|error| panic!("{doing}: {error}"))
}
