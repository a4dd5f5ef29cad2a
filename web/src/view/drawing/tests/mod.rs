//! Both views over many set-ups and scenes, read back as XML.

mod boxes;
mod jobs;
mod lettering;
mod markup;
mod shapes;
mod touch;

use holdround_core::quantity::UnitSystem;

use jobs::{Numbers, broken_scenes, findings, random_scene, random_setup};

use crate::units::Units;
use crate::view::{Stage, face, section};

/// Both views by name.
type Views = [(&'static str, String); 2];

/// Calls `check` for both views of many stages, each with the words that tell which one it was.
fn for_all(check: &dyn Fn(&Stage<'_>, &Views, &str)) {
    const WANTED: usize = 200;
    let mut numbers = Numbers(20);
    let mut drawn = 0;
    for round in 0..40 * WANTED {
        let Some(setup) = random_setup(&mut numbers) else { continue };
        let scene = match broken_scenes().get(round % 40) {
            Some(broken) => broken.clone(),
            None => random_scene(&mut numbers, &setup),
        };
        let findings = findings(scene);
        let (radius, length) = (setup.part.largest_outside() / 2.0, setup.part.length());
        let mesh = [[radius, 0.0, radius, length], [0.0, length, radius, length]];
        let stage = Stage {
            setup: &setup,
            findings: &findings,
            units: Units::of(numbers.one_of(&[UnitSystem::Metric, UnitSystem::Inch])),
            clamped: numbers.share() < 0.7,
            spinning: numbers.share() < 0.5,
            step: (numbers.share() * 12.0) as usize % setup.part.profile.steps().len(),
            parting: (numbers.share() < 0.3).then_some(length * numbers.share()),
            mesh: (numbers.share() < 0.3).then_some(&mesh),
        };
        let views = [("face", face::draw(&stage).into_string()), ("section", section::draw(&stage).into_string())];
        check(&stage, &views, &format!("round {round}"));
        drawn += 1;
        if drawn == WANTED {
            return;
        }
    }
    panic!("only {drawn} of {WANTED} random set-ups were valid");
}
