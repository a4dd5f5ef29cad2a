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
    1053939.6528152921,
    1315769.6249518532,
    0.0,
    0.00010504191658033957,
    1.0,
    0.5213935059323236,
    0.24071103461622073,
    0.18014661497367657,
    0.02719936826224207,
    0.0059969037990614945,
    0.0,
    0.0,
    1.0,
    0.9212459250301118,
    0.060965211926207664,
    0.002051482042634686,
    0.0006480057209772495,
    1.0433974122411366e-5,
    0.0,
    0.0,
    1.0,
    0.9217433853104484,
    0.06120218962739436,
    0.0021565491780100657,
    0.0006227814729050604,
    0.0,
    0.0,
    0.0,
    0.7655,
    0.9278326159209591,
    0.062310751807503055,
    0.001978636131852057,
    0.0012986247246781078,
    0.0003437513507543504,
    0.0,
    0.0,
    0.0,
    0.9278276707315637,
    0.06231392698356417,
    0.0019784370845510124,
    0.0013012086054521362,
    0.00034658637666175714,
    0.0,
    0.0,
    1.0,
    0.865231281802123,
    0.0710689255193451,
    0.060539259064908604,
    0.0032013404248796796,
    0.002086019769269326,
    0.0020048398161389013,
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
