//! Which waves a number of evenly spaced stations can see.

/// How a wave shows at the stations.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sight {
    /// Whole: height and direction.
    Whole,
    /// Only the part of it that is highest or lowest in the middle of a jaw: two stations a wave.
    AtJaws,
    /// Not at all: the stations stand where this wave passes through nought.
    Hidden,
    /// It cannot be told from a slower wave of this order; 0 is the mean.
    LooksLike(usize),
}

/// Orders that mean something: offset, oval, and once and twice a jaw. In rising order, each once.
///
/// ```
/// use holdround_mechanics::indicator::orders;
/// assert!(orders(3).eq([1, 2, 3, 6]));
/// assert!(orders(2).eq([1, 2, 4]), "two jaws make a part oval");
/// ```
pub fn orders(jaws: usize) -> impl Iterator<Item = usize> {
    let once = (jaws > 2).then_some(jaws);
    [1, 2].into_iter().chain(once).chain([2 * jaws])
}

/// The slowest wave that shows the same readings at `stations` places as one of this `order`: with N stations order n
/// and N - n look alike (sampling theorem).
///
/// ```
/// use holdround_mechanics::indicator::looks_like;
/// assert_eq!([looks_like(8, 6), looks_like(6, 6), looks_like(12, 3)], [2, 0, 3]);
/// ```
#[must_use]
pub const fn looks_like(stations: usize, order: usize) -> usize {
    if stations == 0 {
        return 0;
    }
    let rest = order % stations;
    if stations - rest < rest { stations - rest } else { rest }
}

/// How a wave of this order shows at so many stations, the first `start` rad from the middle of jaw 1.
#[must_use]
pub fn sight(stations: usize, order: usize, start: f64) -> Sight {
    let seen = looks_like(stations, order);
    if seen != order {
        Sight::LooksLike(seen)
    } else if 2 * order < stations {
        Sight::Whole
    } else if libm::fabs(libm::cos(order as f64 * start)) < LEAST_SEEN {
        Sight::Hidden
    } else {
        Sight::AtJaws
    }
}

/// Least share of a wave's height at the stations at which it is still told: our own choice.
const LEAST_SEEN: f64 = 0.5;
