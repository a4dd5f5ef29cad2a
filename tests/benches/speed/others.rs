//! The engine against its own method written with numpy, and against three-dimensional finite elements, on the same
//! case.
//!
//! The others want Python with `reference/solids/requirements.txt`; name it in `HOLDROUND_PYTHON` if it is not
//! `python3`. The third mesh takes minutes. Beside the ratios stands how far each is from the reference's best estimate:
//! the ratio that counts is that of the first mesh which is at least as near as the engine.

use std::path::Path;
use std::process::Command;
use std::time::Instant;

use holdround_core::contact::Arc;
use holdround_core::part::Band;
use holdround_tests::solids::{Case, Fineness, Load, cases};
use serde::Deserialize;

const CASE: &str = "flange-far";
const MESHES: [u8; 3] = [1, 2, 3];
const RUNS: usize = 20;

#[derive(Deserialize)]
struct Other {
    seconds: f64,
    unknowns: usize,
    /// Under even pressure and under rigid jaws.
    off: [f64; 2],
}

pub(crate) fn compare() {
    let case = cases().unwrap().into_iter().find(|case| case.name == CASE).unwrap();
    println!("\n{CASE}, from its profile: part, even pressure, rigid jaws of every bored size, and spin");
    let runs: Vec<(f64, [f64; 2])> = (0..RUNS).map(|_| engine(&case)).collect();
    let (seconds, off) = runs.into_iter().min_by(|a, b| a.0.total_cmp(&b.0)).unwrap();
    tell("engine", seconds, off);
    let numpy = ("numpy, the same method".to_string(), vec!["harmonics.py".to_string(), CASE.to_string()]);
    let solids = MESHES
        .map(|mesh| (format!("solids, mesh {mesh}"), vec!["clock.py".to_string(), CASE.to_string(), mesh.to_string()]));
    for (who, script) in std::iter::once(numpy).chain(solids) {
        match other(&script) {
            Ok(other) => {
                tell(&format!("{who}, {} unknowns", other.unknowns), other.seconds, other.off);
                let nearer = other.off.iter().zip(off).all(|(theirs, ours)| *theirs <= ours);
                let place = if nearer { "at least as near as the engine" } else { "less near than the engine" };
                println!("    {:.1} times the engine's time, {place}", other.seconds / seconds);
            }
            Err(why) => println!("{who}: the ratio was not measured: {why}"),
        }
    }
}

fn tell(who: &str, seconds: f64, [even, rigid]: [f64; 2]) {
    let (even, rigid) = (even * 100.0, rigid * 100.0);
    println!(
        "{who}: {:.2} ms, peak to valley off by {even:.3} % evenly pressed, {rigid:.3} % in rigid jaws",
        seconds * 1e3
    );
}

/// Everything from the profile to the figures: seconds, and how far they are off.
fn engine(case: &Case) -> (f64, [f64; 2]) {
    let start = Instant::now();
    let solved = case.solve(Fineness { density: 1.0, cells: Arc::CELLS, along: Band::CELLS }).unwrap();
    let face = solved.face().unwrap();
    let pairs = case.results.iter().map(|loaded| (loaded.load, solved.compare_in(&face, loaded).unwrap()));
    let pairs: Vec<_> = pairs.collect();
    let seconds = start.elapsed().as_secs_f64();
    let mut off = [0.0_f64; 2];
    for (load, pairs) in pairs {
        let which = match load {
            Load::Uniform { .. } => 0,
            Load::Rigid { .. } => 1,
            Load::Spin { .. } => continue,
        };
        let lobes = pairs.iter().filter(|pair| pair.of.contains("peak to valley"));
        off[which] = lobes.map(|pair| pair.off().abs()).fold(off[which], f64::max);
    }
    (seconds, off)
}

fn other(script: &[String]) -> Result<Other, String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference/solids");
    let python = std::env::var("HOLDROUND_PYTHON").unwrap_or_else(|_| "python3".to_string());
    let ran = Command::new(&python).current_dir(folder).arg("-B").args(script).output();
    let ran = ran.map_err(|error| format!("{python}: {error}"))?;
    let said = String::from_utf8_lossy(&ran.stdout);
    let last = said.lines().last().filter(|_| ran.status.success());
    let last =
        last.ok_or_else(|| String::from_utf8_lossy(&ran.stderr).lines().last().unwrap_or_default().to_string())?;
    serde_json::from_str(last).map_err(|error| error.to_string())
}
