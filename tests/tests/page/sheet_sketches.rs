//! Sketches of tooth and ring on the printed sheet.

use holdround_core::examples::EXAMPLES;
use holdround_core::findings::Placing;
use holdround_core::quantity::{Kind, UnitSystem, shown};
use holdround_tests::browser::{Browser, Paper, Viewport, single_file_url};
use serde_json::json;

use crate::paper::{pages, words};
use crate::sheet::{WORKED_OUT, example, found, open};

#[test]
fn every_worked_example_with_tooth_and_ring_planned_prints_its_sketches_or_why_there_are_none_on_one_page() {
    let browser = Browser::open(Viewport::TABLET);
    for known in EXAMPLES {
        let mut job = example(known.id);
        job.set("stroke.plan", "yes");
        open(&browser, &format!("{}#{}", single_file_url(), job.to_link()));
        browser.wait_until(WORKED_OUT);
        let findings = found(&job);
        if let Err(why) = &findings.get("stroke.tooth").expect("a tooth").value {
            let told = format!("No tooth is settled. {why}");
            let settled = format!("document.querySelector('#work').textContent.includes({})", json!(told));
            browser.eventually(&settled, &json!(true), &format!("{}: why, and what would do", known.id));
            assert_eq!(browser.count("#work .sketches"), 0, "{}: no tooth is drawn that does not serve", known.id);
            for paper in [Paper::A4, Paper::LETTER] {
                let pdf = browser.print(paper);
                assert_eq!(pages(&pdf), 1, "pages of {} on {paper:?}", known.id);
                assert!(words(&pdf).contains(&told.replace(' ', "")), "{} on {paper:?}: {told}", known.id);
            }
            continue;
        }
        browser.wait_until("document.querySelector('#work .sketches')");
        let placing = findings.scene.placing.expect("a plan");
        let wanted = [UnitSystem::Metric, UnitSystem::Inch].map(|system| dimensions(&placing, system));
        for paper in [Paper::A4, Paper::LETTER] {
            let pdf = browser.print(paper);
            assert_eq!(pages(&pdf), 1, "pages of {} on {paper:?}", known.id);
            let told = words(&pdf);
            let stands = |wanted: &Vec<String>| wanted.iter().all(|dimension| told.contains(dimension));
            assert!(wanted.iter().any(stands), "{wanted:?} on the sketches of {} on {paper:?}: {told}", known.id);
        }
    }
}

/// The bored diameter, the tooth, and the ring's diameter where there is one, as they stand on the page.
fn dimensions(placing: &Placing, system: UnitSystem) -> Vec<String> {
    let diameter = |radius: f64| format!("Ø{}", shown(2.0 * radius, Kind::Length.unit_in(system))).replace(' ', "");
    let mut wanted = vec![diameter(placing.bored_radius), format!("tooth{}", placing.tooth)];
    wanted.extend(placing.ring.map(|ring| diameter(ring.radii[1])));
    wanted
}
