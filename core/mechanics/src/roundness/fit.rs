//! The four reference circles of a profile.

use alloc::vec::Vec;

use super::exchange::{Constraint, Vertex, minimise};
use super::profile::{Profile, Station};

/// A circle fitted to a profile, and how far the profile leaves it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReferenceCircle {
    /// Centre from the spindle axis toward angle zero, m.
    pub x: f64,
    /// Centre from the spindle axis toward a quarter turn, m.
    pub y: f64,
    /// Radius of the circle less the nominal radius, m; midway for the minimum zone.
    pub radius: f64,
    /// Greatest departure outward from the circle, m (RONp for least squares).
    pub peak: f64,
    /// Greatest departure inward from the circle, m, positive (RONv for least squares).
    pub valley: f64,
}

impl ReferenceCircle {
    /// Peak to valley from this circle, m (RONt).
    #[must_use]
    pub fn roundness(&self) -> f64 {
        self.peak + self.valley
    }

    /// Distance of the centre from the spindle axis, m.
    #[must_use]
    pub fn eccentricity(&self) -> f64 {
        libm::hypot(self.x, self.y)
    }
}

/// Everything a profile says about roundness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assessment {
    /// Least-squares circle (LSCI).
    pub least_squares: ReferenceCircle,
    /// Minimum-zone circles (MZCI).
    pub minimum_zone: ReferenceCircle,
    /// Minimum circumscribed circle (MCCI).
    pub minimum_circumscribed: ReferenceCircle,
    /// Maximum inscribed circle (MICI).
    pub maximum_inscribed: ReferenceCircle,
    /// Full indicator reading about the spindle axis, m.
    pub total_indicator_reading: f64,
    /// Range of the two-point diameter, m; `None` without opposite readings.
    pub two_point_range: Option<f64>,
}

impl Profile {
    /// Least-squares circle (LSCI): the profile's mean and once-round term.
    #[must_use]
    pub fn least_squares(&self) -> ReferenceCircle {
        let (radius, x, y) = least_squares_centre(&self.stations);
        about(&self.stations, x, y, |_, _| radius)
    }

    /// Minimum-zone circles (MZCI): concentric, least apart, holding the whole profile.
    #[must_use]
    pub fn minimum_zone(&self) -> ReferenceCircle {
        let centred = Centred::new(self);
        let (x, y) = centred.minimum_zone().unwrap_or((0.0, 0.0));
        centred.circle(self, x, y, |low, high| 0.5 * (low + high))
    }

    /// Minimum circumscribed circle (MCCI): the smallest ring gauge that goes over.
    #[must_use]
    pub fn minimum_circumscribed(&self) -> ReferenceCircle {
        let centred = Centred::new(self);
        let (x, y) = centred.circumscribed(1.0).unwrap_or((0.0, 0.0));
        centred.circle(self, x, y, |_, high| high)
    }

    /// Maximum inscribed circle (MICI): the largest plug that goes in.
    #[must_use]
    pub fn maximum_inscribed(&self) -> ReferenceCircle {
        let centred = Centred::new(self);
        let (x, y) = centred.circumscribed(-1.0).unwrap_or((0.0, 0.0));
        centred.circle(self, x, y, |low, _| low)
    }

    /// All four circles, the indicator reading and the two-point range.
    #[must_use]
    pub fn assess(&self) -> Assessment {
        Assessment {
            least_squares: self.least_squares(),
            minimum_zone: self.minimum_zone(),
            minimum_circumscribed: self.minimum_circumscribed(),
            maximum_inscribed: self.maximum_inscribed(),
            total_indicator_reading: self.total_indicator_reading(),
            two_point_range: self.two_point_range(),
        }
    }
}

/// Departures from a circle about `(x, y)`, its radius chosen from their extremes.
fn about(stations: &[Station], x: f64, y: f64, radius: impl Fn(f64, f64) -> f64) -> ReferenceCircle {
    let (low, high) = stations
        .iter()
        .map(|s| s.departure - x * s.cos - y * s.sin)
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), e| (low.min(e), high.max(e)));
    let radius = radius(low, high);
    ReferenceCircle { x, y, radius, peak: high - radius, valley: radius - low }
}

/// Normal equations of `R + x cos + y sin`, solved by elimination of the mean.
fn least_squares_centre(stations: &[Station]) -> (f64, f64, f64) {
    let n = stations.len() as f64;
    let mean = |f: fn(&Station) -> f64| stations.iter().map(f).sum::<f64>() / n;
    let (r, c, s) = (mean(|p| p.departure), mean(|p| p.cos), mean(|p| p.sin));
    let (mut cc, mut cs, mut ss, mut rc, mut rs) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for p in stations {
        let (dr, dc, ds) = (p.departure - r, p.cos - c, p.sin - s);
        cc += dc * dc;
        cs += dc * ds;
        ss += ds * ds;
        rc += dr * dc;
        rs += dr * ds;
    }
    // Positive: readings at four or more places, no half circle empty.
    let determinant = cc * ss - cs * cs;
    let x = (rc * ss - rs * cs) / determinant;
    let y = (rs * cc - rc * cs) / determinant;
    (r - x * c - y * s, x, y)
}

/// A profile about its least-squares circle, scaled to a greatest departure of 1.
///
/// Where an exchange ends without an answer, which no profile tried has caused, the
/// least-squares centre stands in: its zone is true, only not the least.
struct Centred {
    x: f64,
    y: f64,
    scale: f64,
    stations: Vec<Station>,
}

impl Centred {
    fn new(profile: &Profile) -> Self {
        let (radius, x, y) = least_squares_centre(&profile.stations);
        let mut stations = profile.stations.clone();
        for s in &mut stations {
            s.departure -= radius + x * s.cos + y * s.sin;
        }
        let scale = stations.iter().fold(0.0_f64, |most, s| most.max(s.departure.abs()));
        if scale > 0.0 {
            for s in &mut stations {
                s.departure /= scale;
            }
        }
        Self { x, y, scale, stations }
    }

    fn circle(&self, profile: &Profile, x: f64, y: f64, radius: impl Fn(f64, f64) -> f64) -> ReferenceCircle {
        let (x, y) = (self.x + self.scale * x, self.y + self.scale * y);
        about(&profile.stations, x, y, radius)
    }

    /// Least `h` with `|e - R - x cos - y sin| <= h`. The four touching places alternate
    /// in and out around the circle, whatever the profile, so the answer is unique and
    /// each exchange strictly gains (Chebyshev; Remez).
    fn minimum_zone(&self) -> Option<(f64, f64)> {
        let mut constraints = Vec::with_capacity(2 * self.stations.len());
        for s in &self.stations {
            let (c, d, e) = (s.cos, s.sin, s.departure);
            constraints.push(Constraint { row: [1.0, 1.0, c, d], bound: e });
            constraints.push(Constraint { row: [1.0, -1.0, -c, -d], bound: -e });
        }
        let quarter = |k: usize| 2 * (k * self.stations.len() / 4);
        let outer_first = [quarter(0), quarter(1) + 1, quarter(2), quarter(3) + 1];
        let inner_first = outer_first.map(|i| i ^ 1);
        let objective = [1.0, 0.0, 0.0, 0.0];
        let start = if zone_of(&constraints, outer_first)? >= 0.0 { outer_first } else { inner_first };
        let Vertex { point: [_, _, x, y], .. } = minimise(&constraints, objective, start)?;
        Some((x, y))
    }

    /// Least `R` with `side * e - x cos - y sin <= R`: circumscribed for side 1,
    /// inscribed, mirrored, for -1.
    fn circumscribed(&self, side: f64) -> Option<(f64, f64)> {
        let constraints: Vec<_> =
            self.stations.iter().map(|s| Constraint { row: [1.0, s.cos, s.sin], bound: side * s.departure }).collect();
        let Vertex { point, active, weights } = minimise(&constraints, [1.0, 0.0, 0.0], self.triangle())?;
        let (x, y) = if weights.iter().any(|&w| w < IDLE) {
            let pair = (0..3).find(|&k| weights[k] >= IDLE)?;
            nearest_least_squares(&constraints, active[pair], point)
        } else {
            (point[1], point[2])
        };
        Some((side * x, side * y))
    }

    /// Three stations whose triangle holds the axis.
    fn triangle(&self) -> [usize; 3] {
        let first = self.stations[0].angle;
        let before = |s: &Station| s.angle - first < core::f64::consts::PI;
        let beyond = self.stations.partition_point(before).min(self.stations.len() - 1);
        [0, beyond - 1, beyond]
    }
}

/// A constraint with less weight holds nothing.
const IDLE: f64 = 1e-9;

/// Two opposite stations alone hold a circle only along their own line: of the
/// centres across it that do as well, the nearest to the least-squares centre.
fn nearest_least_squares(constraints: &[Constraint<3>], held: usize, [radius, x, y]: [f64; 3]) -> (f64, f64) {
    let [_, cos, sin] = constraints[held].row;
    let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
    for c in constraints {
        let rate = c.row[2] * cos - c.row[1] * sin;
        if rate.abs() < IDLE {
            continue;
        }
        let slack = radius + c.row[1] * x + c.row[2] * y - c.bound;
        let limit = -slack.max(0.0) / rate;
        if rate > 0.0 {
            low = low.max(limit);
        } else {
            high = high.min(limit);
        }
    }
    let step = (x * sin - y * cos).min(high).max(low);
    (x - step * sin, y + step * cos)
}

/// Zone width of four constraints taken alone, negative if they touch the wrong way round.
fn zone_of(constraints: &[Constraint<4>], active: [usize; 4]) -> Option<f64> {
    let alone = active.map(|i| constraints[i]);
    minimise(&alone, [1.0, 0.0, 0.0, 0.0], [0, 1, 2, 3]).map(|v| v.point[0])
}

#[cfg(test)]
mod tests;
