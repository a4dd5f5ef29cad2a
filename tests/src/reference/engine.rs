//! The engines a check may name.

use std::collections::BTreeMap;

use serde::de::DeserializeOwned;
use serde_json::Value;

use super::{bending, cutting, figures, gripping, holding, placing, pressing, reading, spreading};

/// What an engine tells, by name.
pub(crate) type Told = Result<BTreeMap<String, f64>, String>;

/// Runs the engine called `name` on `inputs`.
pub(crate) fn run(name: &str, inputs: &Value) -> Told {
    match name {
        "spinning_grip" => given(inputs, gripping::spinning_grip),
        "permissible_speed" => given(inputs, gripping::permissible_speed),
        "thrown_jaws" => given(inputs, gripping::thrown_jaws),
        "cylinder" => given(inputs, gripping::cylinder),
        "gauge_line" => given(inputs, gripping::gauge_line),
        "spin_line" => given(inputs, gripping::spin_line),
        "fourier_fit" => given(inputs, reading::fourier_fit),
        "kienzle" => given(inputs, cutting::kienzle),
        "three_jaws" => given(inputs, holding::three_jaws),
        "two_rings" => given(inputs, holding::two_rings),
        "two_rings_centred" => given(inputs, holding::two_rings_centred),
        "annulus_harmonic" => given(inputs, bending::annulus_harmonic),
        "uniform_pressure" => given(inputs, bending::uniform_pressure),
        "rotating_disc" => given(inputs, bending::rotating_disc),
        "thin_ring" => given(inputs, bending::thin_ring),
        "squeezed_ring" => given(inputs, bending::squeezed_ring),
        "roundness" => given(inputs, bending::roundness),
        "bored_jaw" => given(inputs, pressing::bored_jaw),
        "jaw_column" => given(inputs, pressing::jaw_column),
        "rigid_jaws" => given(inputs, pressing::rigid_jaws),
        "disc_in_hole" => given(inputs, pressing::disc_in_hole),
        "limit_curve" => given(inputs, spreading::limit_curve),
        "window" => given(inputs, spreading::window),
        "ishigami" => given(inputs, spreading::ishigami),
        "draws" => given(inputs, spreading::draws),
        "program_read_back" => given(inputs, spreading::program_read_back),
        "serration" => given(inputs, placing::serrations),
        "tooth" => given(inputs, placing::tooth),
        "boring_ring" => given(inputs, placing::boring_ring),
        "recut" => given(inputs, placing::recut),
        "unit" => given(inputs, figures::unit),
        "typed" => given(inputs, figures::typed),
        "material" => given(inputs, figures::material),
        _ => Err(format!("no engine {name}")),
    }
}

fn given<T: DeserializeOwned>(inputs: &Value, engine: fn(T) -> Told) -> Told {
    engine(T::deserialize(inputs).map_err(|error| format!("inputs: {error}"))?)
}

/// The values told.
pub(super) fn told<const N: usize>(values: [(&str, f64); N]) -> Told {
    Ok(values.into_iter().map(|(name, value)| (name.to_string(), value)).collect())
}

/// An engine's refusal in words.
pub(super) fn refused(error: impl std::fmt::Display) -> String {
    error.to_string()
}
