//! What is said of the face: the key under it, and the whole view in words.

use holdround_core::quantity::{Kind, decimal};
use holdround_core::setup::JawShape;
use maud::{Markup, html};

use super::{FORCE_KEY, Face};
use crate::language::{fill_plain, number, say};
use crate::view::drawing::{Anchor, LEFT, PRESSURE_KEY, State, block_arrow, is_hollow, letters, line_arrow};

/// Base line of the first line under the view.
pub(in crate::view) const FIRST_LINE: f64 = 268.0;
/// Between the lines under the view.
pub(in crate::view) const LINE: f64 = 28.0;
/// Half a block arrow's width above the base line of the words beside it.
pub(in crate::view) const RISE: f64 = 7.0;

impl Face<'_> {
    /// What the arrows and the lobes stand for, in words, under the view.
    pub(super) fn key(&self) -> Markup {
        let line = |at: usize| FIRST_LINE + LINE * at as f64;
        let left = LEFT + 6.0;
        let scene = &self.stage.findings.scene;
        html! {
            @for (at, words) in self.lobe_words().iter().enumerate() {
                (letters((left, line(at)), Anchor::Start, "note lobes", words))
            }
            @if self.both.shape.state == State::Released {
                (letters((left, line(2)), Anchor::Start, "note", say("The jaws stand back: no grip.")))
            } @else {
                @if let Some(force) = self.round_force() {
                    @let unit = self.stage.units.unit(Kind::Force);
                    (block_arrow((left, line(1) - RISE), (left + FORCE_KEY, line(1) - RISE), "speed"))
                    (letters((left + FORCE_KEY + 8.0, line(1)), Anchor::Start, "note",
                        &format!("= {} {}", number(decimal(force, 3)), unit.symbol)))
                }
                @if let Some(pressure) = self.both.pressure.round {
                    @let unit = self.stage.units.unit(Kind::Stress);
                    (line_arrow((-64.0, line(1) - RISE), (PRESSURE_KEY - 64.0, line(1) - RISE), 7.0, "live"))
                    (letters((PRESSURE_KEY - 56.0, line(1)), Anchor::Start, "note",
                        &fill_plain("= {} {} pressure", &[&number(decimal(pressure, 3)), &unit.symbol])))
                }
                (block_arrow((left, line(2) - RISE), (left + 24.0, line(2) - RISE), "rest"))
                (letters((left + 32.0, line(2)), Anchor::Start, "note",
                    &fill_plain("each jaw at rest: {}", &[&self.stage.units.show(Kind::Force, scene.jaw_grip_at_rest)])))
                (block_arrow((left, line(3) - RISE), (left + 24.0, line(3) - RISE), "speed"))
                (letters((left + 32.0, line(3)), Anchor::Start,
                    if scene.jaw_grip_at_speed > 0.0 { "note" } else { "note wrong" },
                    &fill_plain("at {}: {}", &[&self.speed_words(), &self.grip_words_at_speed()])))
            }
        }
    }

    /// The grip of a jaw at speed is the end of a range that is bad for slip.
    fn grip_words_at_speed(&self) -> String {
        let least = self.stage.findings.scene.jaw_grip_at_speed;
        if least > 0.0 {
            fill_plain("at least {}", &[&self.stage.units.show(Kind::Force, least)])
        } else {
            say("the grip may be lost").into()
        }
    }

    pub(super) fn speed_words(&self) -> String {
        self.stage.units.show(Kind::RotationalSpeed, self.stage.setup.speed.value)
    }

    pub(super) fn state_words(&self) -> &'static str {
        match self.both.shape.state {
            State::Released => say("Released"),
            State::AtRest => say("Clamped, at rest"),
            State::AtSpeed => say("Clamped, at speed"),
        }
    }

    /// The same within a sentence.
    fn state_in_sentence(&self) -> &'static str {
        match self.both.shape.state {
            State::Released => say("released"),
            State::AtRest => say("clamped, at rest"),
            State::AtSpeed => say("clamped, at speed"),
        }
    }

    /// What is drawn of the lobes, in lines short enough for the sheet.
    fn lobe_words(&self) -> Vec<String> {
        let shape = &self.both.shape;
        let released = shape.state == State::Released;
        if released && !(shape.turns_outside || shape.turns_bore) {
            return vec![say("Released. No round surface was").into(), say("turned in this clamping.").into()];
        }
        let Some(factor) = shape.magnification else {
            return vec![say("No lobes drawn: no shape was worked out.").into()];
        };
        let lobes = fill_plain("Lobes × {}. Dashed: true shape.", &[&number(decimal(factor, 3))]);
        match (released, shape.turns_outside, shape.turns_bore) {
            (true, true, true) => vec![lobes, say("Turned outside and bore, sprung back.").into()],
            (true, true, false) => vec![lobes, say("Turned outside, sprung back.").into()],
            (true, false, _) => vec![lobes, say("Turned bore, sprung back.").into()],
            _ => vec![lobes],
        }
    }

    pub(super) fn description(&self) -> String {
        let setup = self.stage.setup;
        let scene = &self.stage.findings.scene;
        let units = self.stage.units;
        let jaws = match setup.jaws.shape {
            JawShape::Ordinary(width) => {
                fill_plain("{} ordinary soft jaws {} wide", &[&self.jaws(), &units.show(Kind::Length, width.value)])
            }
            JawShape::Wide(angle) => {
                fill_plain("{} wide soft jaws of {} each", &[&self.jaws(), &units.show(Kind::Angle, angle.value)])
            }
            JawShape::Pie(cut) => {
                fill_plain("{} pie jaws with saw cuts of {}", &[&self.jaws(), &units.show(Kind::Length, cut.value)])
            }
        };
        let bore = setup.part.smallest_bore();
        let part = match (setup.part.stepped, is_hollow(&setup.part)) {
            (true, true) => say("A hollow part of steps").into(),
            (false, true) => fill_plain("A ring with bore {}", &[&units.show(Kind::Length, bore)]),
            (_, false) => say("A solid part").into(),
        };
        let grip = if self.both.shape.state == State::Released {
            say("The jaws stand back from it.").into()
        } else {
            fill_plain(
                "Grip of each jaw: {} at rest, {} at {}; mean pressure under a jaw at rest {}. Thin arrows: pressure around the arc, as a mean over the grip length.",
                &[
                    &units.show(Kind::Force, scene.jaw_grip_at_rest),
                    &self.grip_words_at_speed(),
                    &self.speed_words(),
                    &units.show(Kind::Stress, scene.contact_pressure),
                ],
            )
        };
        fill_plain(
            "{} and outside diameter {}, {} by {}, {}. {} {}",
            &[
                &part,
                &units.show(Kind::Length, setup.part.largest_outside()),
                &self.both.way,
                &jaws,
                &self.state_in_sentence(),
                &grip,
                &self.lobe_words().join(" "),
            ],
        )
    }
}
