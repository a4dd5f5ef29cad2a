//! Window and parts drawn come out the same to the last digit, natively and in a browser.

use holdround_core::Engine;
use holdround_core::setup::{Entries, Setup};
#[cfg(target_arch = "wasm32")]
use wasm_bindgen_test::wasm_bindgen_test;

#[cfg(target_arch = "wasm32")]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

/// A solid part on a centre: good pressures at 60 rad/s, share of good parts, error of the table; then of
/// each output the share that is good and the shares of the spread.
const KEPT: &[f64] = &[
    1053945.2720763397,
    1316022.8015599174,
    0.0,
    9.523409951776862e-5,
    1.0,
    0.5213937360169711,
    0.2407111077812839,
    0.18014634127330714,
    0.027199338560516415,
    0.005996781945968348,
    0.0,
    0.0,
    1.0,
    0.921419750435784,
    0.0607424620112809,
    0.002037607685755352,
    0.0006483858407362854,
    6.266660377696319e-5,
    0.0,
    0.0,
    1.0,
    0.9219755690174021,
    0.06126834792847426,
    0.002186560939153248,
    0.0006191647774616386,
    0.0,
    0.0,
    0.0,
    0.766,
    0.9278326755422528,
    0.062310712491629915,
    0.001978638594416876,
    0.0012985928128288551,
    0.00034371632865815683,
    0.0,
    0.0,
    0.0,
    0.9278274890148951,
    0.06231404058471408,
    0.001978429956840378,
    0.0013013012962932052,
    0.00034668805146041194,
    0.0,
    0.0,
    1.0,
    0.8653346532247395,
    0.07095137587814757,
    0.06054426101729591,
    0.003199723045095102,
    0.002084832599868191,
    0.0020046705573704584,
    0.0,
];

#[cfg_attr(target_arch = "wasm32", wasm_bindgen_test)]
#[cfg_attr(not(target_arch = "wasm32"), test)]
fn window_and_parts_drawn_are_the_same_to_the_last_digit_everywhere() -> Result<(), String> {
    let mut entries = Entries::default();
    for (path, text) in [("part.bore_diameter", "0 mm"), ("grip.tail", "centre"), ("part.size_limit", "2 µm")] {
        assert!(entries.set(path, text), "{path} is declared");
    }
    let setup = Setup::read(&entries).map_err(|faults| format!("{faults:?}"))?;
    let mut engine = Engine::default();
    let span = engine.window(&setup).span(60.0);
    let sampled = engine.sampled(&setup).ok_or("the model does not cover it")?;
    let mut digits = vec![span.pressures[0], span.pressures[1], sampled.good, sampled.table_error];
    for output in &sampled.outputs {
        digits.push(output.good);
        digits.extend(output.driven_by.iter().map(|(.., share)| share.of_variance));
    }
    let bits = |digits: &[f64]| digits.iter().map(|digit| digit.to_bits()).collect::<Vec<_>>();
    assert_eq!(bits(&digits), bits(KEPT), "{digits:?}");
    Ok(())
}
