//! What benches and the tests of the page time, and how.

use std::time::Instant;

use holdround_core::setup::Entries;

/// The flanged ring that times are wanted for, as JSON.
pub const FLANGED_RING: &str = include_str!("../../core/benches/flanged-ring.json");

/// An entry with two values in turn, neither of which changes how much there is to work out.
pub type Turns = (&'static str, [&'static str; 2]);

/// Nothing that was worked out for the one fits the other.
pub const OTHER_SIZE: Turns = ("grip.length", ["20 mm", "20.05 mm"]);

/// The shape work for the one fits the other.
pub const OTHER_PRESSURE: Turns = ("run.pressure", ["0.5 MPa", "0.6 MPa"]);

/// A set-up twice, with each value of the entry.
///
/// # Errors
/// When it is no set-up, or has no such entry.
pub fn in_turn(json: &str, (path, values): Turns) -> Result<[Entries; 2], String> {
    let entries = Entries::from_json(json).map_err(|faults| format!("{faults:?}"))?;
    let [mut one, mut other] = [entries.clone(), entries];
    for (entries, value) in [&mut one, &mut other].into_iter().zip(values) {
        if !entries.set(path, value) {
            return Err(format!("no input {path}"));
        }
    }
    Ok([one, other])
}

/// The least time of so many runs in ms: what disturbs a run only makes it longer. `run` is told how many there were.
pub fn least(runs: usize, mut run: impl FnMut(usize)) -> f64 {
    (0..runs).fold(f64::INFINITY, |least, turn| {
        let begun = Instant::now();
        run(turn);
        least.min(begun.elapsed().as_secs_f64() * 1e3)
    })
}

/// As [`least`], for `evaluate` of the page's own module in the page that `browser` shows, from JSON text to plain
/// objects. Its clock is coarse: every time is that of several calls.
#[cfg(feature = "browser")]
pub fn least_in_page(browser: &crate::browser::Browser, runs: usize, setups: &[Entries; 2]) -> f64 {
    const EVALUATE: &str = "
        const [runs, setups] = arguments;
        const body = async () => {
            const { default: load, evaluate } = await import('./holdround_web.js');
            await load();
            let least = Infinity;
            for (let run = 0; run < runs; run += 1) {
                const begun = performance.now();
                for (let call = 0; call < 10; call += 1) evaluate(setups[call % 2]);
                least = Math.min(least, (performance.now() - begun) / 10);
                await new Promise((done) => setTimeout(done));
            }
            return least;
        };
        return body()";
    let setups: Vec<String> = setups.iter().map(Entries::to_json).collect();
    let least = browser.execute(EVALUATE, vec![runs.into(), setups.into()]);
    least.as_f64().unwrap_or(f64::NAN)
}
