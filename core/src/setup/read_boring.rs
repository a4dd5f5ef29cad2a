//! Reads how the jaws are bored.

use alloc::vec::Vec;

use super::boring::{Bears, Boring, TaperReading};
use super::reader::Reader;
use super::{boring_inputs as b, taper_inputs as t};
use crate::quantity::UnitSystem;
use crate::taper::End;

pub(super) fn read_boring(reader: &mut Reader<'_>) -> Option<Boring> {
    let standing = reader.length(&b::STANDING);
    let skim = reader.length(&b::SKIM);
    let skim_width = reader.length(&b::SKIM_WIDTH);
    let chamfer = reader.length(&b::CHAMFER);
    let relief_width = reader.length(&b::RELIEF_WIDTH);
    let relief_depth = reader.length(&b::RELIEF_DEPTH);
    let nose_radius = reader.length(&b::NOSE_RADIUS);
    let behind = reader.angle(&b::BEHIND, 0);
    let bar_diameter = reader.length(&b::BAR_DIAMETER);
    let bar_reach = reader.length(&b::BAR_REACH);
    let holder_width = reader.length(&b::HOLDER_WIDTH);
    let depth_of_cut = reader.length(&b::DEPTH_OF_CUT);
    let allowance = reader.length(&b::ALLOWANCE);
    let rough_feed = reader.length(&b::ROUGH_FEED);
    let finish_feed = reader.length(&b::FINISH_FEED);
    let surface_speed = reader.plain(&b::SURFACE_SPEED);
    let interrupted = reader.ratio(&b::INTERRUPTED, 0);
    let speed_limit = reader.rotation(&b::SPEED_LIMIT);
    let start = reader.length(&b::START_DISTANCE);
    let units = reader.choice(&b::PROGRAM_UNITS, 0);
    let backward = reader.choice(&b::SPINDLE_TURNS, 0);
    let number = reader.words(&b::PROGRAM_NUMBER);
    let name = reader.words(&b::PROGRAM_NAME);
    let readings: Vec<_> = (0..reader.count("readings")).map(|at| read_reading(reader, at)).collect();
    Some(Boring {
        standing,
        skim: skim?,
        skim_width: skim_width?,
        chamfer: chamfer?,
        relief_width: relief_width?,
        relief_depth: relief_depth?,
        nose_radius: nose_radius?,
        behind: behind?,
        bar_diameter: bar_diameter?,
        bar_reach: bar_reach?,
        holder_width: holder_width?,
        depth_of_cut: depth_of_cut?,
        allowance: allowance?,
        rough_feed: rough_feed?,
        finish_feed: finish_feed?,
        surface_speed: surface_speed?,
        interrupted: interrupted?,
        speed_limit: speed_limit?,
        start: start?,
        units: match units? {
            "mm" => Some(UnitSystem::Metric),
            "inch" => Some(UnitSystem::Inch),
            _ => None,
        },
        backward: backward? == "backward",
        number: number?,
        name: name?,
        readings: readings.into_iter().flatten().collect(),
    })
}

/// A reading; none while its feeler is not entered: an assumed one would teach what nobody saw.
fn read_reading(reader: &mut Reader<'_>, at: usize) -> Option<TaperReading> {
    let taper = reader.item_length(&t::READING_TAPER, at);
    let shows = match reader.choice(&t::READING_SHOWS, at) {
        Some("gap") => reader.item_length(&t::READING_GAP, at).map(Bears::Gap),
        Some("even") => Some(Bears::Even),
        Some(end) => {
            let end = if end == "base" { End::Base } else { End::Tip };
            Some(Bears::Only(end, reader.item_length(&t::READING_BAND, at)))
        }
        None => None,
    };
    let pressure = reader.pressure(&t::READING_PRESSURE, at);
    Some(TaperReading { taper: taper?, shows: shows?, pressure })
}
