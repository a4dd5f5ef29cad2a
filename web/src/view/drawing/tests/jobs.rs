//! Set-ups and scenes at random, and scenes that no engine should hand over.

use holdround_core::findings::{Findings, PressureMap, Scene, Shift, Wave};
use holdround_core::setup::{Entries, Setup, Side};

/// A stream of numbers that look random and are the same each time (Knuth's MMIX constants).
pub(super) struct Numbers(pub(super) u64);

impl Numbers {
    pub(super) fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    /// Evenly spread over the decades.
    fn size(&mut self, least: f64, most: f64) -> f64 {
        libm::exp(self.between(libm::log(least), libm::log(most)))
    }

    pub(super) fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[((self.share() * all.len() as f64) as usize).min(all.len() - 1)]
    }
}

pub(super) fn random_setup(numbers: &mut Numbers) -> Option<Setup> {
    let mut entries = Entries::default();
    let mut set = |path: &str, text: String| assert!(entries.set(path, &text), "{path} is an input");
    let outside = numbers.size(1.5, 2000.0);
    let inside_grip = numbers.share() < 0.4;
    let bore = if !inside_grip && numbers.share() < 0.3 { 0.0 } else { outside * numbers.between(0.05, 0.995) };
    let gripped = if inside_grip { bore } else { outside };
    let (length, height) = (numbers.size(1.0, 2000.0), numbers.size(5.0, 200.0));
    let grip = numbers.between(0.05, 0.85) * length.min(height);
    set("grip.side", if inside_grip { "inside" } else { "outside" }.into());
    set("grip.seat", numbers.one_of(&["seated", "free"]).into());
    set("grip.length", format!("{grip} mm"));
    set("part.outside_diameter", format!("{outside} mm"));
    set("part.bore_diameter", format!("{bore} mm"));
    set("part.length", format!("{length} mm"));
    if numbers.share() < 0.5 {
        set("part.shape", "steps".into());
        let steps = numbers.one_of(&[1, 2, 3, 12]);
        let ahead = (length - grip * 1.05).max(0.0) / f64::from(steps - 1).max(1.0);
        for step in 0..steps {
            let first = step == 0;
            let larger = if first { 1.0 } else { numbers.between(0.9, 1.4) };
            let bore = if inside_grip && first { bore } else { bore * numbers.one_of(&[0.0, 0.5, 1.0]) };
            let long = if first && steps > 1 {
                grip * 1.05
            } else if first {
                length
            } else {
                ahead
            };
            set(&format!("steps.{step}.length"), format!("{long} mm"));
            set(&format!("steps.{step}.outside"), format!("{} mm", outside * larger));
            set(&format!("steps.{step}.bore"), format!("{bore} mm"));
            if !first && numbers.share() < 0.3 {
                set(&format!("steps.{step}.outside_end"), format!("{} mm", outside * numbers.between(1.0, 1.3)));
            }
        }
    }
    set("chuck.jaws", numbers.one_of(&["2", "3", "4", "5", "6"]).into());
    set("chuck.body_diameter", format!("{} mm", numbers.size(50.0, 2000.0)));
    set("jaws.kind", numbers.one_of(&["ordinary", "wide", "pie"]).into());
    set("jaws.width", format!("{} mm", (gripped * numbers.between(0.05, 0.45)).max(2.0)));
    set("jaws.angle", format!("{}°", numbers.between(5.0, 59.0)));
    set("jaws.saw_cut", format!("{} mm", (gripped * numbers.between(0.001, 0.05)).max(0.1)));
    set("jaws.height", format!("{height} mm"));
    let jaw_length = if inside_grip { (gripped * 0.5).max(5.0) } else { numbers.size(5.0, 500.0) };
    set("jaws.length", format!("{jaw_length} mm"));
    set("jaws.step", format!("{} mm", numbers.between(0.0, 0.5) * jaw_length.min(gripped / 2.0)));
    for cut in 0..numbers.one_of(&[1, 2, 4, 5, 8]) {
        let kind = numbers.one_of(&["turning", "facing", "boring", "grooving", "drilling", "power"]);
        set(&format!("cuts.{cut}.kind"), kind.into());
        set(&format!("cuts.{cut}.diameter"), format!("{} mm", numbers.between(bore, outside)));
        set(&format!("cuts.{cut}.distance"), format!("{} mm", numbers.between(-grip, length - grip)));
    }
    if numbers.share() < 0.2 {
        set("run.speed", "0".into());
    }
    Setup::read(&entries).ok()
}

fn random_wave(numbers: &mut Numbers, jaws: u32) -> Wave {
    let amplitude = numbers.one_of(&[0.0, 1e-12, 1e-7, 1e-5, 1e-3, 1.0]) * numbers.between(-1.0, 1.0);
    Wave {
        mean: amplitude * numbers.share(),
        harmonics: (1..6).map(|k| (k * jaws, amplitude / f64::from(k))).collect(),
    }
}

fn random_shifts(numbers: &mut Numbers, setup: &Setup) -> Vec<Shift> {
    let most = numbers.one_of(&[0.0, 1e-6, 1e-3]);
    let mut shift = |at: u32| Shift {
        z: setup.part.length() * f64::from(at) / 20.0,
        at_jaw: most * numbers.between(-1.0, 1.0),
        between_jaws: most * numbers.between(-1.0, 1.0),
    };
    (0..=20).map(&mut shift).collect()
}

fn random_pressure(numbers: &mut Numbers, setup: &Setup) -> PressureMap {
    let (start, length) = (setup.grip.start.value, setup.grip.length.value);
    let (angles, heights) = (numbers.one_of(&[0_u32, 1, 6]), numbers.one_of(&[0_u32, 1, 5]));
    PressureMap {
        angles: (0..angles).map(|at| f64::from(at) * 0.05).collect(),
        heights: (0..heights).map(|at| start + length * f64::from(at) / 4.0).collect(),
        pressure: (0..angles * heights).map(|_| numbers.size(1e3, 1e9) * numbers.one_of(&[0.0, 1.0])).collect(),
    }
}

pub(super) fn random_scene(numbers: &mut Numbers, setup: &Setup) -> Scene {
    let side = setup.grip.side;
    let radius = setup.gripped_radius();
    let (step, length) = (setup.jaws.step.value, setup.jaws.length.value);
    let inner = match side {
        Side::Outside => radius - step,
        Side::Inside => radius + step - length,
    };
    let outer = inner + length;
    let jaws = setup.chuck.jaws;
    let grip = numbers.size(1.0, 1e6);
    Scene {
        contact_half_angle: numbers.between(0.01, core::f64::consts::PI / f64::from(setup.chuck.jaws)),
        jaw_inner_radius: inner.max(0.0),
        jaw_outer_radius: outer,
        swing_radius: outer * numbers.between(1.0, 1.2),
        jaw_grip_at_rest: grip,
        jaw_grip_at_speed: grip * numbers.between(-0.5, 2.0),
        contact_pressure: numbers.size(1e3, 1e9),
        pressure: random_pressure(numbers, setup),
        clamped_outside: random_wave(numbers, jaws),
        clamped_bore: random_wave(numbers, jaws),
        outside_along: random_shifts(numbers, setup),
        bore_along: random_shifts(numbers, setup),
        shape_share_at_speed: numbers.between(0.0, 2.0),
        ..Scene::default()
    }
}

/// Scenes that no engine should hand over, and that must still not break the drawing.
pub(super) fn broken_scenes() -> Vec<Scene> {
    // Ten times what the largest chuck grips: the sheet has no room for more figures.
    let force = |value: f64| if value > 1e7 { 1e7 } else { value };
    let with = |value: f64| Scene {
        contact_half_angle: value,
        jaw_inner_radius: value,
        jaw_outer_radius: value,
        swing_radius: value,
        jaw_grip_at_rest: force(value),
        jaw_grip_at_speed: force(value),
        contact_pressure: value,
        pressure: PressureMap::default(),
        clamped_outside: Wave { mean: value, harmonics: vec![(3, value)] },
        clamped_bore: Wave { mean: value, harmonics: vec![(3, value)] },
        outside_along: vec![Shift { z: value, at_jaw: value, between_jaws: -value }; 3],
        bore_along: vec![Shift { z: value, at_jaw: value, between_jaws: -value }; 3],
        shape_share_at_speed: value,
        ..Scene::default()
    };
    [0.0, -1.0, f64::NAN, f64::INFINITY, 1e11, 1e-308].map(with).into()
}

pub(super) fn findings(scene: Scene) -> Findings {
    Findings { job: String::new(), findings: vec![], cautions: vec![], assumed: vec![], scene }
}
