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
    1053939.647192378,
    1315769.624951853,
    0.0,
    0.00010504191658031181,
    1.0,
    0.5213934978574217,
    0.24071103398402863,
    0.18014662439221332,
    0.02719936896699405,
    0.005996902599881412,
    0.0,
    0.0,
    1.0,
    0.9212459250301104,
    0.06096521192620742,
    0.0020514820426346544,
    0.0006480057209772304,
    1.0433974122244926e-5,
    0.0,
    0.0,
    1.0,
    0.9217433853104496,
    0.061202189627394495,
    0.002156549178010067,
    0.000622781472905079,
    0.0,
    0.0,
    0.0,
    0.7655,
    0.9278326159209587,
    0.062310751807503104,
    0.0019786361318520655,
    0.0012986247246780905,
    0.0003437513507543325,
    0.0,
    0.0,
    0.0,
    0.9278276707315627,
    0.06231392698356478,
    0.0019784370845511946,
    0.0013012086054522566,
    0.0003465863766619301,
    0.0,
    0.0,
    1.0,
    0.8652312818021257,
    0.07106892551934463,
    0.06053925906490881,
    0.0032013404248797364,
    0.0020860197692693376,
    0.0020048398161389234,
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
