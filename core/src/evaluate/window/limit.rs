//! What limits pressure and speed, each as a ratio that is 1 where it is reached.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::cell::RefCell;

use super::corner::{At, Corner, Ends};
use crate::contact::{Contact, Face, Lobing};
use crate::evaluate::contact::AVERAGED;
use crate::evaluate::elastic::Elasticity;
use crate::evaluate::grip_at_speed::LEAST_LEFT;
use crate::evaluate::hold::{self, Factors, Slip};
use crate::evaluate::pressed::Load;
use crate::evaluate::shape::{section, toward_buckling};
use crate::jaw::BoredJaw;
use crate::part::Side as SurfaceSide;
use crate::setup::{Setup, Side};
use crate::text::Text;
use crate::window::{Keep, Over};

/// A ratio far above any limit.
pub(super) const FAR: f64 = 1e9;

/// One limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::evaluate) enum Limit {
    /// The hold factor wanted, as entered.
    Hold,
    /// The hold factor wanted at its worst.
    WorstHold,
    /// A third of the grip at rest.
    Third,
    /// No grip.
    Lost,
    /// The cylinder's pressure.
    Pressure,
    /// The plate's draw force.
    Draw,
    /// The plate's grip.
    Grip,
    /// Run-out of a surface.
    Runout(usize),
    /// Roundness of a surface.
    Roundness(usize),
    /// Size change of a surface.
    Size(usize),
    /// Growth of a surface by spin.
    Growth(usize),
    /// Yield under a jaw.
    Contact,
    /// Buckling of the wall.
    Buckling,
}

/// Something that would move a limit: the entry it hangs on, and how.
pub type Mover = (&'static str, &'static str);

const HOLDING: &[Mover] = &[
    ("cuts.0.feed", "a smaller feed or depth of cut"),
    ("grip.length", "a longer grip"),
    ("cuts.0.distance", "a tool nearer to the jaws"),
    ("grip.tail", "a live centre, where the tail end is solid"),
    ("grip.required_hold", "another hold factor wanted"),
];
const HOLDING_AT_WORST: &[Mover] = &[
    ("ranges.friction", "friction that is known better"),
    ("ranges.condition", "a chuck measured with a grip gauge"),
    ("ranges.pressure", "a better pressure gauge"),
    ("cuts.0.feed", "a smaller feed or depth of cut"),
];
const SPINNING: &[Mover] = &[
    ("jaws.material", "lighter jaws"),
    ("jaws.height", "lower jaws"),
    ("jaws.length", "shorter jaws"),
    ("chuck.spin_share_most", "a gauge reading at speed"),
];
const PLATE: &[Mover] = &[("chuck.max_grip", "another chuck or cylinder only: plates are not to be exceeded")];
const SQUEEZED: &[Mover] = &[
    ("jaws.kind", "jaws that wrap further: wide or pie"),
    ("chuck.jaws", "more jaws"),
    ("jaws.bored_diameter", "jaws bored to size"),
    ("part.bore_diameter", "a thicker wall at this cut"),
    ("ranges.wall", "a wall that is known better"),
];
const GROWN: &[Mover] = &[("run.speed", "a lower speed"), ("part.size_limit", "correcting the size by offset")];
const PRESSED: &[Mover] = &[
    ("jaws.kind", "jaws that wrap further"),
    ("grip.length", "a longer grip"),
    ("jaws.bored_diameter", "jaws bored to size"),
];

impl Limit {
    /// Every limit of a set-up, those that are found soonest first.
    pub(in crate::evaluate) fn all(setup: &Setup, elastic: &Elasticity) -> Vec<Self> {
        let mut all: Vec<Self> = [Self::Pressure, Self::Draw, Self::Grip, Self::Third, Self::Lost].into();
        if setup.grip.side == Side::Inside {
            all.retain(|limit| !matches!(limit, Self::Third | Self::Lost));
        }
        // With no cut there is nothing to hold against.
        if !setup.cuts.is_empty() {
            all.extend([Self::Hold, Self::WorstHold]);
        }
        if setup.grip.side == Side::Outside && section(setup).inner > 0.0 {
            all.push(Self::Buckling);
        }
        let named = elastic.surfaces.len() - setup.part.surfaces.len();
        let first = if setup.part.surfaces.is_empty() { 0 } else { named };
        let round = (first..elastic.surfaces.len()).filter(|at| elastic.surfaces[*at].side != SurfaceSide::Face);
        for at in round {
            all.extend([Self::Roundness(at), Self::Runout(at)]);
            if setup.part.size_limit.is_some() {
                all.push(Self::Size(at));
                if setup.grip.side == Side::Outside {
                    all.push(Self::Growth(at));
                }
            }
        }
        all.push(Self::Contact);
        all
    }

    pub(in crate::evaluate) fn keep(self) -> Keep {
        match self {
            Self::Hold | Self::WorstHold | Self::Third | Self::Lost | Self::Growth(_) => Keep::AtLeast,
            _ => Keep::AtMost,
        }
    }

    pub(in crate::evaluate) fn over(self) -> Over {
        match self {
            Self::Pressure | Self::Draw | Self::Grip | Self::Runout(_) | Self::Buckling => Over::Any,
            _ => Over::Every,
        }
    }

    /// Whether it is judged at the ends of the ranges that squeeze most.
    pub(in crate::evaluate) fn of_shape(self) -> bool {
        self.of_form() || matches!(self, Self::Contact | Self::Buckling)
    }

    /// The ends of the ranges at which it is judged; none where it is judged as entered.
    pub(in crate::evaluate) fn ends(self) -> Option<Ends> {
        match self {
            Self::WorstHold => Some(Ends::SLIP),
            limit if limit.of_shape() => Some(Ends::SHAPE),
            _ => None,
        }
    }

    /// Whether it is about the form or size of a surface that is turned.
    pub(in crate::evaluate) fn of_form(self) -> bool {
        matches!(self, Self::Runout(_) | Self::Roundness(_) | Self::Size(_) | Self::Growth(_))
    }

    /// Its key, its name, what happens beyond it, and what would move it.
    pub(in crate::evaluate) fn words(self, elastic: &Elasticity) -> (String, Text, &'static str, &'static [Mover]) {
        let of = |kind: &'static str, key: &str, at: usize| {
            let surface = elastic.surfaces.get(at).map_or_else(|| "part".into(), |surface| surface.name.clone());
            (format!("{key}.{at}"), Text::of("{} of the {}").with(kind).with(surface))
        };
        let plain = |key: &str, name: &'static str| (key.to_string(), name.into());
        let ((key, name), says, moves) = match self {
            Self::Hold => (
                plain("hold", "Hold factor wanted"),
                "With less pressure the hold factor is below the one you want.",
                HOLDING,
            ),
            Self::WorstHold => (
                plain("worst_hold", "Hold at its worst"),
                "With less pressure the part may slip where friction, grip and cut are all at their bad ends.",
                HOLDING_AT_WORST,
            ),
            Self::Third => (
                plain("third", "A third of the grip left"),
                "With less pressure, or faster, spin leaves less than a third of the grip at rest.",
                SPINNING,
            ),
            Self::Lost => {
                (plain("lost", "Grip lost"), "With less pressure, or faster, spin takes all of the grip.", SPINNING)
            }
            Self::Pressure => (plain("pressure", "Cylinder pressure"), "More than the cylinder's plate allows.", PLATE),
            Self::Draw => (plain("draw", "Draw force"), "More draw force than the chuck's plate allows.", PLATE),
            Self::Grip => {
                (plain("grip", "Total grip"), "More grip than the chuck's plate allows for jaws of this height.", PLATE)
            }
            Self::Runout(at) => (
                of("Run-out", "runout", at),
                "With more pressure the clamped part may run out by more than you allow.",
                SQUEEZED,
            ),
            Self::Roundness(at) => (
                of("Roundness", "roundness", at),
                "With more pressure the part may spring out of round by more than you allow when released.",
                SQUEEZED,
            ),
            Self::Size(at) => (
                of("Size", "size", at),
                "With more pressure the diameter may change by more than you allow on release.",
                SQUEEZED,
            ),
            Self::Growth(at) => (
                of("Growth by spin", "growth", at),
                "Faster, or with less pressure, spin widens the part by more than the size change you allow.",
                GROWN,
            ),
            Self::Contact => {
                (plain("contact", "Yield under a jaw"), "With more pressure a jaw may mark the part or yield.", PRESSED)
            }
            Self::Buckling => (
                plain("buckling", "Buckling"),
                "With more pressure the wall comes near to buckling: beyond this model.",
                SQUEEZED,
            ),
        };
        (key, name, says, moves)
    }
}

/// What limits are asked of.
pub(in crate::evaluate) struct Asked<'a> {
    pub(in crate::evaluate) elastic: &'a Elasticity,
    /// The part with the thinnest wall, if the wall has a range.
    pub(in crate::evaluate) thin: Option<&'a Face<'static>>,
    pub(in crate::evaluate) jaw: &'a BoredJaw,
    pub(in crate::evaluate) corners: &'a Corners,
}

/// The set-up as entered, and at the ends that are bad for slip and for shape.
#[derive(Clone, Debug)]
pub(in crate::evaluate) struct Corners {
    usual: Corner,
    worst: Corner,
    shape: Corner,
    /// A contact to begin the next one from.
    like: RefCell<Option<Contact>>,
    /// How the part moved first.
    slip: RefCell<Option<Slip>>,
}

impl Corners {
    /// `thin` is the set-up with the thinnest wall.
    pub(in crate::evaluate) fn of(setup: &Setup, thin: &Setup) -> Self {
        Self {
            usual: Corner::of(setup, &Ends::default()),
            worst: Corner::of(setup, &Ends::SLIP),
            shape: Corner::of(thin, &Ends::SHAPE),
            like: RefCell::default(),
            slip: RefCell::default(),
        }
    }
}

impl Asked<'_> {
    /// The limit's ratio at `pressure` Pa and `speed` rad/s: 1 where it is reached, above 1 with more pressure.
    pub(in crate::evaluate) fn ratio(&self, limit: Limit, pressure: f64, speed: f64) -> f64 {
        let corners = self.corners;
        let corner = match limit {
            Limit::WorstHold => &corners.worst,
            limit if limit.of_shape() => &corners.shape,
            _ => &corners.usual,
        };
        let Some(at) = corner.at(self.jaw, pressure, speed) else { return 0.0 };
        self.at(limit, &at)
    }

    /// The limit's ratio with a set-up somewhere in its ranges.
    pub(in crate::evaluate) fn at(&self, limit: Limit, at: &At) -> f64 {
        let (setup, spinning) = (&at.setup, &at.spinning);
        match limit {
            Limit::Hold => self.hold(at) / setup.grip.required_hold.value,
            Limit::WorstHold => self.hold(at) / setup.ranges.worst_hold.value,
            Limit::Third | Limit::Lost => {
                let left = if limit == Limit::Third { LEAST_LEFT } else { 0.0 };
                let taken = spinning.share.high()
                    * spinning.careful.centrifugal_force(setup.speed.value).unwrap_or(f64::INFINITY);
                (spinning.least_at_rest * (1.0 - left) / taken).min(FAR)
            }
            Limit::Pressure => at.over_limit("pressure.set"),
            Limit::Draw => at.over_limit("grip.draw"),
            Limit::Grip => at.over_limit("grip.rest"),
            Limit::Buckling => toward_buckling(setup, spinning),
            Limit::Runout(surface) => self.lobes(at, surface, false) / setup.part.runout_limit.value,
            Limit::Roundness(surface) => self.lobes(at, surface, true) / setup.part.roundness_limit.value,
            Limit::Size(surface) => {
                // Squeezed smaller from outside, wider from inside.
                let way = if setup.grip.side == Side::Outside { -1.0 } else { 1.0 };
                setup.part.size_limit.map_or(0.0, |limit| self.growth(at, surface, way) / limit.value)
            }
            Limit::Growth(surface) => {
                setup.part.size_limit.map_or(2.0, |limit| 2.0 - self.growth(at, surface, 1.0) / limit.value)
            }
            Limit::Contact => {
                let yields = [
                    setup.part.yield_stress.map(|stress| stress.value),
                    setup.jaws.material.yield_strength.map(|figure| figure.value),
                ];
                let weaker = yields.into_iter().flatten().fold(f64::INFINITY, f64::min);
                let face = self.face();
                let hardest = |turning: bool| {
                    self.over_sizes(at, turning, &|contact| face.greatest_mean_pressure(contact, AVERAGED))
                };
                hardest(false).max(hardest(true)) / weaker
            }
        }
    }

    fn face(&self) -> &Face<'static> {
        self.thin.unwrap_or(&self.elastic.usual)
    }

    /// The least hold factor; nil where the grip is gone.
    fn hold(&self, at: &At) -> f64 {
        self.factors(at).map_or(0.0, |factors| factors.slip.min(factors.lift))
    }

    /// What limits the hold; none where the grip is gone.
    pub(in crate::evaluate) fn factors(&self, at: &At) -> Option<Factors> {
        let (setup, spinning) = (&at.setup, &at.spinning);
        let force = spinning.at_speed.lowest / f64::from(setup.chuck.jaws);
        if force <= 0.0 {
            return None;
        }
        let middle = f64::midpoint(setup.grip.upper_deviation.value, setup.grip.lower_deviation.value);
        let gap = Load::of(setup, self.elastic, spinning).gap(middle, setup.speed.value);
        let face = &self.elastic.usual;
        let pressed = face.press_from(force, &gap, self.corners.like.borrow().as_ref());
        let contact = pressed.ok()?;
        let factors = hold::least_factors(setup, face, &contact, &mut self.corners.slip.borrow_mut());
        self.corners.like.replace(Some(contact));
        factors
    }

    /// The greatest of `value` over the sizes of part, clamped at rest or turning.
    fn over_sizes(&self, at: &At, turning: bool, value: &dyn Fn(&Contact) -> f64) -> f64 {
        let (setup, spinning) = (&at.setup, &at.spinning);
        let grip = if turning { spinning.at_speed.highest } else { spinning.most_at_rest };
        let force = grip / f64::from(setup.chuck.jaws);
        if force <= 0.0 {
            return 0.0;
        }
        let load = Load::of(setup, self.elastic, spinning);
        let (upper, lower) = (setup.grip.upper_deviation.value, setup.grip.lower_deviation.value);
        let mut greatest: f64 = 0.0;
        for deviation in [Some(upper), (lower < upper).then_some(lower)].into_iter().flatten() {
            let gap = load.gap(deviation, if turning { setup.speed.value } else { 0.0 });
            let pressed = self.face().press_from(force, &gap, self.corners.like.borrow().as_ref());
            let Ok(contact) = pressed else { continue };
            greatest = greatest.max(value(&contact));
            self.corners.like.replace(Some(contact));
        }
        greatest
    }

    /// Peak to valley of a surface at its worst station: released if it was cut turning, clamped if at rest.
    fn lobes(&self, at: &At, surface: usize, turning: bool) -> f64 {
        let worst = |contact: &Contact| self.face().worst(contact, surface);
        self.over_sizes(at, turning, &|contact| worst(contact).map_or(0.0, |(_, lobing)| lobing.peak_to_valley()))
    }

    /// How far a clamped, turning surface is from its free diameter, `way` times, at the station where that is most;
    /// nil where it is the other way.
    fn growth(&self, at: &At, surface: usize, way: f64) -> f64 {
        let squared = at.setup.speed.value * at.setup.speed.value;
        let spin = self.face().part().spin.get(surface);
        let change = |(lobing, spin): (Lobing, &f64)| way * 2.0 * (lobing.mean() + spin * squared);
        self.over_sizes(at, true, &|contact| {
            let stations = self.face().lobing(contact, surface).into_iter();
            stations.zip(spin.into_iter().flatten()).map(change).fold(0.0, f64::max)
        })
    }
}
