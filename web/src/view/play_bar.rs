//! The play bar: pressure and speed under the finger, clamp and spin.

use holdround_core::findings::Findings;
use holdround_core::quantity::{Kind, Unit, decimal};
use holdround_core::setup::{Setup, jaw_inputs};
use maud::{Markup, html};

use crate::language::{fill, number, say};
use crate::page::desk::Desk;

/// One slider: an entry between nothing and its limit.
pub(crate) struct Slide {
    /// The entry it moves.
    pub(crate) path: &'static str,
    /// Its name.
    pub(crate) name: &'static str,
    /// The unit it moves in.
    pub(crate) unit: &'static Unit,
    /// Where it stands, in the unit.
    pub(crate) at: f64,
    /// The limit, in the unit.
    limit: f64,
    /// The end of its travel: the last step within the limit, in the unit.
    pub(crate) most: f64,
    /// The step it moves by, in the unit.
    pub(crate) step: f64,
}

/// The two sliders, while there is a valid set-up to take their limits from.
pub(crate) fn slides(desk: &Desk) -> Option<[Slide; 2]> {
    let (setup, findings) = desk.good.as_ref()?;
    let slide = |kind: Kind, input: &holdround_core::setup::Input, at: f64, most: f64| {
        let unit = desk.units.unit(kind);
        let step = match unit.symbol {
            "MPa" => 0.05,
            "bar" => 0.5,
            "psi" => 5.0,
            _ => 10.0,
        };
        let limit = unit.from_si(most);
        let most = (limit / step + 1e-9).floor().max(1.0) * step;
        Slide { path: input.path, name: input.name, unit, at: unit.from_si(at), limit, most, step }
    };
    let (most_pressure, most_speed) = limits(setup, findings);
    Some([
        slide(Kind::Pressure, &jaw_inputs::PRESSURE, setup.pressure.value, most_pressure),
        slide(Kind::RotationalSpeed, &jaw_inputs::SPEED, setup.speed.value, most_speed),
    ])
}

/// The limits of pressure and speed: those found, else those of the plate.
fn limits(setup: &Setup, findings: &Findings) -> (f64, f64) {
    let found = |id: &str| findings.get(id).and_then(|finding| finding.limit.as_ref()).map(|limit| limit.value);
    (
        found("pressure.set").unwrap_or(setup.chuck.max_pressure.value),
        found("speed.set").unwrap_or(setup.chuck.max_speed.value),
    )
}

impl Slide {
    /// A number of its unit as it is typed.
    pub(crate) fn number(&self, value: f64) -> String {
        decimal(value, self.unit.decimals)
    }

    /// Where it stands, of how much.
    pub(crate) fn words(&self) -> Markup {
        let at = html! { strong { (number(self.number(self.at))) } };
        fill("{} of {} {}", &[&at, &number(self.number(self.limit)), &say(self.unit.symbol)])
    }

    /// Where it stands, for those who hear the page.
    pub(crate) fn spoken(&self) -> String {
        format!("{} {}", number(self.number(self.at)), say(self.unit.symbol))
    }
}

/// The bar.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        @for slide in slides(desk).into_iter().flatten() {
            div.slide {
                label for={ "slide-" (slide.path) } { (say(slide.name)) }
                span.reading id={ "reading-" (slide.path) } aria-hidden="true" { (slide.words()) }
                input type="range" id={ "slide-" (slide.path) } data-slide=(slide.path)
                    min=(decimal(if slide.path == jaw_inputs::SPEED.path { 0.0 } else { slide.step }, 7))
                    max=(slide.number(slide.most)) step=(decimal(slide.step, 7)) value=(slide.number(slide.at))
                    aria-valuetext=(slide.spoken());
            }
        }
        div.buttons id="play-buttons" { (buttons(desk)) }
    }
}

/// Clamp or release, spin or stop.
pub(crate) fn buttons(desk: &Desk) -> Markup {
    html! {
        button type="button" id="clamp" data-act="clamp" { (if desk.clamped { say("Release") } else { say("Clamp") }) }
        button type="button" id="spin" data-act="spin" aria-disabled=(!desk.clamped) {
            (if desk.spinning { say("Stop") } else { say("Spin") })
        }
    }
}

/// Whether the section shows the mesh, and the way to the job told step by step.
pub(crate) fn mesh(desk: &Desk) -> Markup {
    html! {
        (super::story::panel::opener())
        button type="button" id="mesh" data-act="mesh" aria-pressed=(desk.meshed) { (say("Mesh")) }
    }
}
