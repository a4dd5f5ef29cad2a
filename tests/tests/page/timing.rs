//! How long the page takes here. The times are printed beside those wanted; only what must come out is asserted.

use holdround_build::budget::{Budget, Wanted, beside};
use holdround_core::examples::EXAMPLES;
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Viewport, serve_site};
use holdround_tests::speed::{FLANGED_RING, OTHER_PRESSURE, OTHER_SIZE, in_turn, least_in_page};
use serde_json::{Value, json};

use crate::sheet::{WORKED_OUT, assert_shows, come_to_rest, example, field, first_example, open};
use crate::steps::flanged_bushing;

fn wanted() -> Wanted {
    Budget::read().expect("the file of the budget").milliseconds
}

#[test]
fn the_functions_answer_for_other_sizes_and_pressures() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    browser.goto(&format!("{}api-example.html", site.url()));
    let least = |json, turns, runs| least_in_page(&browser, runs, &in_turn(json, turns).expect("two set-ups"));
    let size = least(FLANGED_RING, OTHER_SIZE, 5);
    let pressure = least(FLANGED_RING, OTHER_PRESSURE, 20);
    let full = least(EXAMPLES[0].json, OTHER_PRESSURE, 40);
    assert!(full > 0.0 && pressure > 0.0 && size > pressure, "shape work takes time: {size}, {pressure}, {full} ms");
    let wanted = wanted();
    println!("shape work of the flanged ring: {}", beside(size - pressure, wanted.shape_work.in_chromium));
    println!("full findings of {}: {}", EXAMPLES[0].id, beside(full, wanted.full_findings.in_chromium));
}

/// Moves the pressure slider 60 times and gives the milliseconds each move took in its frame: what the page did, and
/// with the styles and layout that follow from it.
const SLIDE: &str = "
    const slider = document.querySelector(\"[id='slide-run.pressure']\");
    const [least, most, step] = [slider.min, slider.max, slider.step].map(Number);
    const times = [];
    return new Promise((done) => {
        const move = () => {
            if (times.length === 60) return done(times);
            let begun;
            // The page takes what a slider says with the frame, after this and before what was asked for last.
            requestAnimationFrame(() => { begun = performance.now(); });
            slider.value = least + step * ((times.length * 7) % Math.floor((most - least) / step));
            slider.dispatchEvent(new InputEvent('input', { bubbles: true }));
            requestAnimationFrame(() => {
                const told = performance.now();
                document.body.getBoundingClientRect();
                times.push([told - begun, performance.now() - begun]);
                move();
            });
        };
        move();
    })";

#[test]
fn the_pressure_slider_plays_on_a_kept_shape() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    for (name, mut entries, slower) in [
        ("first example", first_example(), 1),
        ("flanged ring", Entries::from_json(FLANGED_RING).expect("a set-up"), 1),
        ("flanged bushing", flanged_bushing(), 1),
        ("flanged bushing, processor slowed 4 times", flanged_bushing(), 4),
    ] {
        browser.goto("about:blank");
        open(&browser, &format!("{}#{}", site.url(), entries.to_link()));
        browser.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": slower }));
        let times = browser.execute(SLIDE, Vec::new());
        browser.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 1 }));
        let [moved, layout] = [0, 1].map(|at| column(&times, at));
        println!("slider, {name}: a move {}; with layout {}", spread(&moved), spread(&layout));
        if slower == 1 {
            println!(
                "    load work and its drawing, in the middle: {}",
                beside(middle(&moved), wanted().load_work.in_chromium)
            );
        }
        entries.set("run.pressure", &format!("{} MPa", browser.value(&field("run.pressure"))));
        assert_shows(&browser, &entries, UnitSystem::Metric, "the last of many pressures");
    }
}

/// Does something and gives the milliseconds of every task meanwhile that the browser itself calls long: above 50,
/// whatever it did, scripts, styles, layout or painting.
const LONG_TASKS: &str = "
    const long = [];
    const watch = new PerformanceObserver((list) => list.getEntries().forEach((task) => long.push(task.duration)));
    watch.observe({ entryTypes: ['longtask'] });
    const pause = (time) => new Promise((done) => setTimeout(done, time));
    const body = async () => {
        await ACT;
        await pause(1500);
        watch.disconnect();
        return long;
    };
    return body()";
/// A task of 80 ms.
const HOLD: &str = "pause(0).then(() => {
    const begun = performance.now();
    while (performance.now() - begun < 80);
})";
/// Opens a worked example that was not worked out before.
const OPEN: &str = "(async () => {
    location.hash = 'example=flanged-tube';
    do await pause(50); while (!location.hash.startsWith('#2') || document.querySelector('#verdict progress'));
})()";
/// Types another diameter, and waits until what comes of it stands there.
const TYPE: &str = "(async () => {
    const field = document.querySelector(\"[id='in-steps.0.bore']\");
    field.value = `${parseFloat(field.value) - 1}`;
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    do await pause(50); while (document.querySelector('#verdict progress'));
})()";
/// Moves the speed slider as often as frames are drawn.
const PLAY: &str = "(async () => {
    const slider = document.querySelector(\"[id='slide-run.speed']\");
    for (let at = 0; at < 60; at += 1) {
        slider.value = slider.max * (0.3 + (at % 20) / 40);
        slider.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await pause(16);
    }
})()";

#[test]
fn the_page_answers_while_shape_work_is_done_and_a_slider_moves() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    for slower in [1, 4] {
        browser.goto("about:blank");
        open(&browser, &site.url());
        browser.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": slower }));
        for (name, act) in [("the flanged tube opened", OPEN), ("another bore of it", TYPE), ("slider on it", PLAY)] {
            let longest = long_tasks(&browser, act).into_iter().fold(0.0, f64::max);
            let most = wanted().task_slowed_4_times;
            let told =
                if longest > 0.0 { beside(longest, most) } else { format!("no task above the {most} ms wanted") };
            println!("{name}, processor slowed {slower} times: {told}");
        }
        browser.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 1 }));
        let mut tube = example("flanged-tube");
        tube.set("steps.0.bore", &format!("{} mm", browser.value(&field("steps.0.bore"))));
        tube.set("run.speed", &format!("{} rev/min", browser.value(&field("run.speed"))));
        assert_shows(&browser, &tube, UnitSystem::Metric, "the last of many speeds");
    }
}

#[test]
fn the_browser_tells_of_a_task_that_is_long() {
    let browser = Browser::open(Viewport::TABLET);
    let long = long_tasks(&browser, HOLD);
    assert!(matches!(long[..], [held] if (80.0..).contains(&held)), "one, as long as it was: {long:?}");
}

fn long_tasks(browser: &Browser, act: &str) -> Vec<f64> {
    let tasks = browser.execute(&LONG_TASKS.replace("ACT", act), Vec::new());
    let tasks = tasks.as_array().expect("the page came to rest");
    tasks.iter().filter_map(Value::as_f64).collect()
}

/// Notes when the verdict first stands on the page.
const WATCH: &str = "new MutationObserver((_, watch) => {
    if (document.querySelector('#verdict h2')) { window.verdictAt = performance.now(); watch.disconnect(); }
}).observe(document, { childList: true, subtree: true })";

#[test]
fn the_verdict_stands_soon_after_a_warm_load() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    browser.wait_until("document.documentElement.dataset.offline === 'ready'");
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH }));
    let mut times = Vec::new();
    for _ in 0..7 {
        browser.reload();
        browser.wait_until(WORKED_OUT);
        times.extend(browser.execute("return window.verdictAt", Vec::new()).as_f64());
    }
    assert_eq!(times.len(), 7, "every load must come to a verdict");
    println!("warm load to verdict: {}", spread(&times));
    println!("    in the middle: {}", beside(middle(&times), wanted().verdict_after_warm_load));
}

/// Changes how well the cutting force is known, and gives the milliseconds until the window is traced, until parts
/// are drawn, and of the longest time between two turns on the way.
const TRACE: &str = "
    const field = document.querySelector(\"[id='in-ranges.force']\");
    const region = document.querySelector('#window');
    const pause = (time) => new Promise((done) => setTimeout(done, time));
    const body = async () => {
        const times = [];
        for (let at = 1; at <= 5; at += 1) {
            field.value = 0.2 + at / 100;
            const begun = performance.now();
            let [traced, drawn, longest, last] = [0, 0, 0, begun];
            let begins = false;
            const watch = new MutationObserver(() => {
                const tracing = region.textContent.includes('Still being traced');
                // A short trace is over before it is first drawn; the parts of before are gone all the same.
                begins ||= tracing || !document.querySelector('#window-parts');
                if (begins && !tracing) traced ||= performance.now() - begun;
                if (traced && document.querySelector('#window-parts')) drawn ||= performance.now() - begun;
            });
            watch.observe(region, { childList: true, subtree: true });
            field.dispatchEvent(new InputEvent('input', { bubbles: true }));
            while (!drawn && performance.now() - begun < 20000) {
                await pause(0);
                longest = Math.max(longest, performance.now() - last);
                last = performance.now();
            }
            watch.disconnect();
            times.push([traced, drawn, longest]);
            await pause(1500);
        }
        return times;
    };
    return body()";

#[test]
fn the_window_is_traced_and_parts_are_drawn_without_holding_the_page() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    for id in ["thin-ring", "flanged-tube"] {
        browser.goto("about:blank");
        open(&browser, &format!("{}#{}", site.url(), example(id).to_link()));
        come_to_rest(&browser);
        let times = browser.execute(TRACE, Vec::new());
        let [traced, drawn, longest] = [0, 1, 2].map(|at| column(&times, at));
        assert!(drawn.len() == 5 && drawn.iter().all(|time| *time > 0.0), "parts are drawn in the end: {drawn:?}");
        println!(
            "window of {id}: traced {}; parts {}; longest turn {}",
            spread(&traced),
            spread(&drawn),
            spread(&longest)
        );
        println!("    traced, in the middle: {}", beside(middle(&traced), wanted().window.in_chromium));
    }
}

fn column(times: &Value, at: usize) -> Vec<f64> {
    times.as_array().into_iter().flatten().filter_map(|time| time[at].as_f64()).collect()
}

fn middle(times: &[f64]) -> f64 {
    at_share(times, 50)
}

fn spread(times: &[f64]) -> String {
    let at = |share| at_share(times, share);
    format!(
        "{:.1} ms at best, {:.1} in the middle, {:.1} at most of 95 in 100, {:.1} at most",
        at(0),
        at(50),
        at(95),
        at(100)
    )
}

/// The time that so many of a hundred do not exceed.
fn at_share(times: &[f64], hundredths: usize) -> f64 {
    let mut times = times.to_vec();
    times.sort_by(f64::total_cmp);
    times[(times.len() - 1) * hundredths / 100]
}
