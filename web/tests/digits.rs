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
    1053939.6449945667,
    1315769.6249518674,
    0.0,
    0.00010504191658057549,
    1.0,
    0.5213934985543331,
    0.24071103334700836,
    0.18014662432047548,
    0.027199368950045388,
    0.005996902682651731,
    0.0,
    0.0,
    1.0,
    0.9212459250301047,
    0.060965211926207116,
    0.0020514820426347368,
    0.0006480057209769168,
    1.0433974128142882e-5,
    0.0,
    0.0,
    1.0,
    0.9217433853104479,
    0.06120218962739598,
    0.0021565491780110007,
    0.000622781472904351,
    0.0,
    0.0,
    0.0,
    0.7655,
    0.927832615920959,
    0.062310751807503346,
    0.001978636131852162,
    0.0012986247246781653,
    0.00034375135075435497,
    0.0,
    0.0,
    0.0,
    0.9278276707315662,
    0.06231392698356502,
    0.0019784370845521656,
    0.0013012086054530944,
    0.00034658637666175524,
    0.0,
    0.0,
    1.0,
    0.86523128180215,
    0.07106892551931578,
    0.060539259064911595,
    0.0032013404248802594,
    0.002086019769268657,
    0.0020048398161383323,
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
