//! The page's own module in Chromium beside the same work natively: `evaluate`, from JSON text to plain data.

use std::env;
use std::hint::black_box;
use std::path::PathBuf;

use holdround_build::budget::{Wanted, beside};
use holdround_build::chromium;
use holdround_build::fault::{Fault, Outcome};
use holdround_build::serve::Server;
use holdround_build::workspace::Workspace;
use holdround_core::examples::EXAMPLES;
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Effort, Engine};
use holdround_tests::browser::{Browser, Viewport};
use holdround_tests::speed::{FLANGED_RING, OTHER_PRESSURE, OTHER_SIZE, Turns, in_turn, least, least_in_page};

pub(crate) fn compare(wanted: &Wanted) {
    println!("\nevaluate, from JSON text to plain data: the page's module in Chromium beside the same natively");
    match page() {
        Ok((_server, browser)) => {
            let size = told(&browser, "flanged ring, another size", FLANGED_RING, OTHER_SIZE, 10);
            let pressure = told(&browser, "flanged ring, another pressure", FLANGED_RING, OTHER_PRESSURE, 60);
            let example = EXAMPLES[0];
            let full = told(&browser, example.id, example.json, OTHER_PRESSURE, 60);
            let shape = [0, 1].map(|place| size[place] - pressure[place]);
            println!("    shape work, what the other size takes longer: {:.2} times native", shape[0] / shape[1]);
            println!("        in Chromium {}", beside(shape[0], wanted.shape_work.in_chromium));
            println!(
                "    full findings of {} in Chromium {}",
                example.id,
                beside(full[0], wanted.full_findings.in_chromium)
            );
        }
        Err(why) => println!("    the ratio was not measured: {why}"),
    }
}

/// The plain page of the site, whose module has nothing else to do.
fn page() -> Outcome<(Server, Browser)> {
    let site = match env::var_os("HOLDROUND_SITE") {
        Some(folder) => PathBuf::from(folder),
        None => Workspace::find()?.site(),
    };
    if !site.exists() {
        return Err(Fault::new("there is no site; `cargo run -- site` builds it"));
    }
    let chromium = chromium::provide()?;
    let server = Server::start(site, 0)?;
    let browser = Browser::start(&chromium, Viewport::TABLET);
    browser.goto(&format!("{}api-example.html", server.url()));
    Ok((server, browser))
}

/// In Chromium and natively, in ms.
fn told(browser: &Browser, name: &str, json: &str, turns: Turns, runs: usize) -> [f64; 2] {
    let setups = in_turn(json, turns).unwrap();
    let times = [least_in_page(browser, runs, &setups), natively(10 * runs, &setups)];
    let [there, here] = times;
    println!("    {name}: {there:.2} ms beside {here:.2}, {:.2} times native", there / here);
    times
}

fn natively(runs: usize, setups: &[Entries; 2]) -> f64 {
    let texts = setups.each_ref().map(Entries::to_json);
    let mut engine = Engine::default();
    least(runs, |turn| {
        let setup = Setup::read(&Entries::from_json(black_box(&texts[turn % 2])).unwrap()).unwrap();
        black_box(serde_json::to_value(engine.evaluate(&setup, Effort::Full)).unwrap());
    })
}
