//! Reads what an indicator showed.

use alloc::vec::Vec;

use uom::si::length::meter;

use super::Input;
use super::fault::range_words;
use super::indicator::{DialSet, Indicator};
use super::indicator_inputs as d;
use super::job::Grip;
use super::part::{Part, SurfaceSide, Toward};
use super::reader::Reader;
use crate::quantity::{Kind, Length, Measure};
use crate::text::Text;

/// Greatest reading, m: beyond it waves are no longer small beside the part.
const GREATEST: f64 = 5e-3;

/// What was read; none when it was not, and none within when something cannot be, which is then a fault noted.
pub(super) fn read(reader: &mut Reader<'_>, part: Option<&Part>, grip: Option<&Grip>) -> Option<Option<Indicator>> {
    // What is left out is no assumption about the job, and is not listed as one.
    if reader.is_chosen(&d::USE, "no") {
        return Some(None);
    }
    let twice = reader.choice(&d::USE, 0)? == "twice";
    let stations = stations(reader);
    let start = reader.angle(&d::START, 0);
    let bore = reader.choice(&d::SURFACE, 0).map(|side| side == "bore");
    let distance = reader.length(&d::DISTANCE);
    let released = reader.choice(&d::STATE, 0).map(|state| state == "released");
    let unit = reader.choice(&d::UNIT, 0).and_then(|unit| Measure::parse(Kind::Length, unit).ok());
    let resolution = reader.length(&d::RESOLUTION);
    let pressures =
        [reader.pressure(&d::PRESSURE, 0), if twice { reader.pressure(&d::SECOND_PRESSURE, 0) } else { None }];
    let (stations, bore, unit) = (stations?, bore?, unit?);
    let one = if bore { -unit.si } else { unit.si };
    let sets: [Option<Vec<Option<f64>>>; 2] = [(&d::DIAL_READING, true), (&d::DIAL_SECOND, twice)]
        .map(|(input, read)| read.then(|| (0..stations).map(|at| reading(reader, input, at, one)).collect()));
    let [first, second] = sets;
    let [pressure, second_pressure] = pressures;
    let indicator = Indicator {
        side: if bore { SurfaceSide::Bore } else { SurfaceSide::Outside },
        place: place(reader, part?, grip?, distance, bore)?,
        start: start?,
        released: released?,
        resolution: resolution?,
        first: DialSet { departures: first?, pressure },
        second: second.map(|departures| DialSet { departures, pressure: second_pressure }),
    };
    Some(Some(indicator))
}

fn stations(reader: &mut Reader<'_>) -> Option<usize> {
    let typed = reader.plain(&d::STATIONS)?;
    if typed == libm::round(typed) {
        return Some(typed as usize);
    }
    reader.conflict(&d::STATIONS, 0, "a whole number", "Leave out what stands behind the decimal point.");
    None
}

/// How far outward a station stands.
fn reading(reader: &mut Reader<'_>, input: &Input, at: usize, one: f64) -> Option<f64> {
    let departure = reader.ratio(input, at)?.value * one;
    if libm::fabs(departure) > GREATEST {
        let allowed = Text::of("at most {} either way").with(Text::quantity(GREATEST, Kind::Length.bare_unit()));
        reader.conflict(input, at, allowed, "Correct it, or “One on the dial is”.");
        return None;
    }
    Some(departure)
}

/// Where along the part the indicator stood.
fn place(reader: &mut Reader<'_>, part: &Part, grip: &Grip, distance: Option<Length>, bore: bool) -> Option<Length> {
    let front = grip.start.value + grip.length.value;
    let place = distance.map_or(part.length(), |distance| front + distance.value);
    let (least, most) = (-front, part.length() - front);
    if place < -1e-9 || place > part.length() + 1e-9 {
        let allowed = range_words(least, most, reader.unit_of(&d::DISTANCE, 0));
        reader.conflict(&d::DISTANCE, 0, allowed, "The indicator must be on the part.");
        return None;
    }
    if bore && part.diameters_at(place, Toward::Chuck)[1] <= 0.0 {
        reader.conflict(&d::SURFACE, 0, "the outside", "There is no bore at this place of the part.");
        return None;
    }
    Some(Length::new::<meter>(place))
}
