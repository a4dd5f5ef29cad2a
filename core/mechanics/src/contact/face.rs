//! A jaw's face on the part: gap, pressure, and what they do to the part.

use super::active_set::Problem;
use super::arc::Arc;
use super::compliance::{Compliance, JawGive, share};
use super::lines::{add_lines, dot};
use super::lobing::Lobing;
use super::short_waves::{ShortWaves, short_waves};
use crate::part::{PartSpring, Side};
use alloc::borrow::Cow;
use alloc::vec::Vec;
use core::fmt;

use crate::text::Text;

/// Highest order around the axis kept of the surface under the jaws. Under the sharp edge of a rigid
/// jaw bored too small, a sixth of it would lose up to 6 % of peak to valley (checked in `tests`).
pub const SHORTEST_DENT: usize = 2160;

/// Why no contact could be found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ContactError {
    /// The arc is not above 0 or the jaws' arcs overlap.
    Arc,
    /// The force is not a positive number.
    Force,
    /// The gap is not a number, or not given for every band point.
    Gap,
    /// The jaw's give is negative, not a number, or not given for every pair of band points.
    Give,
    /// The compliance is not positive definite.
    Compliance,
}

impl From<&ContactError> for Text {
    fn from(error: &ContactError) -> Self {
        Self::Words(match error {
            ContactError::Arc => "The jaws' arcs must be above zero and must not overlap.",
            ContactError::Force => "The force of a jaw must be above zero.",
            ContactError::Gap => "The gap between jaw and part must be given along the whole band.",
            ContactError::Give => "The give of the jaw must be positive and given along the whole band.",
            ContactError::Compliance => "The contact cannot be solved: the compliance is not positive.",
        })
    }
}

impl fmt::Display for ContactError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for ContactError {}

/// The gap between a jaw's face and the part before the jaw is pressed on.
#[derive(Clone, Debug, PartialEq)]
pub struct Gap {
    /// Radius of the jaw's face less the radius of the part, m.
    pub larger: f64,
    /// Further gap at each band point, m (taper, a jaw tilted while bored); empty = none.
    pub relief: Vec<f64>,
}

impl Gap {
    /// Jaws bored `larger` (m, on the radius) than the part, straight along the axis.
    pub const fn straight(larger: f64) -> Self {
        Self { larger, relief: Vec::new() }
    }
}

/// One jaw's face on a part: everything that depends on shapes but not on force.
///
/// ```
/// use holdround_mechanics::contact::{Arc, Face, Gap, JawGive};
/// # use holdround_mechanics::part::{Band, Elastic, PartModel, Profile, Side, Step, Surface};
/// # let ring = Profile::new(&[Step::cylinder(0.02, 0.15, 0.138)])?;
/// # let steel = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
/// # let band = Band { side: Side::Outside, z: [0.0, 0.02], cells: Band::CELLS };
/// # let bore = Surface { name: "bore".into(), side: Side::Bore, z: [0.0, 0.02] };
/// # let part = PartModel::new(&ring, steel, band, 3, &[bore], 0.6)?.spring()?;
/// let face = Face::new(&part, Arc::graded(1.047, Arc::CELLS), &JawGive::default())?;
/// let rigid = face.press(3000.0, &Gap::straight(0.0))?;
/// let even = face.even(3000.0)?;
/// let lobes = |contact| face.station(contact, 0, 0).map(|lobing| lobing.peak_to_valley());
/// assert!(lobes(&even).unwrap() > 4.0 * lobes(&rigid).unwrap());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct Face<'a> {
    pub(super) part: Cow<'a, PartSpring>,
    pub(super) arc: Arc,
    pub(super) compliance: Compliance,
    /// Integrals of the hats around the face with each order of the part.
    cosines: Vec<Vec<f64>>,
    /// The orders beyond.
    short: Vec<ShortWaves>,
}

/// Pressure on a jaw's face, the same on each jaw and on both halves of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Contact {
    /// Pressure at each point, Pa: for each angle, each band point.
    pub pressure: Vec<f64>,
    /// Gap left at each point, m (0 where pressed).
    pub clearance: Vec<f64>,
    /// How far the jaw moved along its axis from where the middle of its face would touch, m.
    pub travel: f64,
    /// Active sets tried.
    pub rounds: usize,
}

impl<'a> Face<'a> {
    /// A face of `arc` on a part; `give` is how the jaw gives.
    ///
    /// # Errors
    /// [`ContactError::Arc`] or [`ContactError::Give`].
    pub fn new(part: &'a PartSpring, arc: Arc, give: &JawGive) -> Result<Self, ContactError> {
        let half = arc.angles().last().copied().unwrap_or(0.0);
        let most = core::f64::consts::PI / part.jaws as f64;
        if !(half > 0.0 && half <= most * (1.0 + 1e-12)) {
            return Err(ContactError::Arc);
        }
        let short = short_waves(part, &arc).ok_or(ContactError::Compliance)?;
        let compliance = Compliance::new(part, &arc, &short).ok_or(ContactError::Compliance)?;
        let cosines = part.responses.iter().map(|r| arc.cosines(r.order)).collect();
        Self { part: Cow::Borrowed(part), arc, compliance, cosines, short }.giving(give)
    }

    /// The same face on a jaw that gives by `give` besides what it gives already: quicker than [`Self::new`].
    ///
    /// # Errors
    /// [`ContactError::Give`].
    pub fn giving(&self, give: &JawGive) -> Result<Self, ContactError> {
        let points = self.part.points.len();
        let whole = give.column.is_empty() || give.column.len() == points * points;
        let finite = give.spot >= 0.0
            && give.spot.is_finite()
            && give.column.iter().all(|c| c.is_finite())
            && give.body.is_none_or(|b| b.is_valid());
        if !(whole && finite) {
            return Err(ContactError::Give);
        }
        let compliance = if *give == JawGive::default() {
            self.compliance.clone()
        } else {
            self.compliance.giving(&self.part, &self.arc, give).ok_or(ContactError::Compliance)?
        };
        Ok(Self {
            part: self.part.clone(),
            arc: self.arc.clone(),
            compliance,
            cosines: self.cosines.clone(),
            short: self.short.clone(),
        })
    }

    /// The same face with its own copy of the part, to be kept.
    pub fn into_owned(self) -> Face<'static> {
        Face {
            part: Cow::Owned(self.part.into_owned()),
            arc: self.arc,
            compliance: self.compliance,
            cosines: self.cosines,
            short: self.short,
        }
    }

    /// The part.
    pub fn part(&self) -> &PartSpring {
        &self.part
    }

    /// Angles of the grid.
    pub fn arc(&self) -> &Arc {
        &self.arc
    }

    /// Presses the jaws with `force` (N, each jaw's resultant along its own axis) over a gap.
    ///
    /// # Errors
    /// [`ContactError`], naming what is wrong.
    pub fn press(&self, force: f64, gap: &Gap) -> Result<Contact, ContactError> {
        self.press_from(force, gap, None)
    }

    /// [`Self::press`], quicker where `like` is a contact that bears at about the same places.
    ///
    /// # Errors
    /// [`ContactError`], naming what is wrong.
    pub fn press_from(&self, force: f64, gap: &Gap, like: Option<&Contact>) -> Result<Contact, ContactError> {
        let gap = self.weighed(gap)?;
        self.check(force)?;
        let Compliance { matrix, inverse, weight, travelled, .. } = &self.compliance;
        let problem = Problem { compliance: matrix, inverse, gap: &gap, weight, travelled, force };
        let points = self.compliance.weight.len();
        let first = match like {
            Some(like) if like.pressure.len() == points => like.pressure.iter().map(|p| *p > 0.0).collect(),
            _ => alloc::vec![true; points],
        };
        let solution = problem.solve(first).ok_or(ContactError::Compliance)?;
        let clearance = solution.clearance.iter().zip(&self.compliance.area).map(|(c, a)| c.max(0.0) / a);
        Ok(Contact {
            clearance: clearance.collect(),
            pressure: solution.pressure,
            travel: solution.travel,
            rounds: solution.rounds,
        })
    }

    /// The bound of evenly spread pressure (a perfectly soft pad) with the same force.
    ///
    /// # Errors
    /// [`ContactError::Force`].
    pub fn even(&self, force: f64) -> Result<Contact, ContactError> {
        self.check(force)?;
        let points = self.compliance.weight.len();
        let pressure = force / self.compliance.weight.iter().sum::<f64>();
        Ok(Contact {
            pressure: alloc::vec![pressure; points],
            clearance: alloc::vec![0.0; points],
            travel: 0.0,
            rounds: 0,
        })
    }

    fn check(&self, force: f64) -> Result<(), ContactError> {
        if force > 0.0 && force.is_finite() { Ok(()) } else { Err(ContactError::Force) }
    }

    /// The gap at each point weighed by its area, m3.
    fn weighed(&self, gap: &Gap) -> Result<Vec<f64>, ContactError> {
        let points = self.part.points.len();
        let whole = gap.relief.is_empty() || gap.relief.len() == points;
        if !whole || !gap.larger.is_finite() || gap.relief.iter().any(|g| !g.is_finite()) {
            return Err(ContactError::Gap);
        }
        // A larger jaw touches an outside in the middle, a bore at the edges.
        let sign = if self.part.side == Side::Bore { -1.0 } else { 1.0 };
        let rows = self.part.mass.chunks_exact(points);
        let relief: Vec<f64> = rows.map(|row| row.iter().zip(&gap.relief).map(|(m, g)| m * g).sum()).collect();
        let (area, weight) = (&self.compliance.area, &self.compliance.weight);
        let flat = self.arc.cosines(0);
        Ok(area
            .iter()
            .zip(weight)
            .enumerate()
            .map(|(k, (a, c))| sign * gap.larger * (a - c) + flat[k / points] * relief[k % points])
            .collect())
    }

    /// Displacement around a surface (by its number) at each of its stations, by the orders that the part was
    /// solved for: without the dent under the edge of a stiff jaw, see [`Self::station`].
    pub fn lobing(&self, contact: &Contact, surface: usize) -> Vec<Lobing> {
        let part = &self.part;
        let Some(stations) = part.stations.get(surface) else {
            return Vec::new();
        };
        let round = || Lobing { jaws: part.jaws, amplitudes: Vec::with_capacity(part.responses.len()) };
        let mut traces: Vec<Lobing> = stations.at.iter().map(|_| round()).collect();
        for (response, cosines) in part.responses.iter().zip(&self.cosines) {
            let pressure = self.outward(contact, response.order, cosines);
            let lines = response.surfaces.get(surface).map_or(&[][..], |lines| lines).chunks_exact(traces.len().max(1));
            let mut displaced = alloc::vec![0.0; traces.len()];
            add_lines(&mut displaced, pressure.into_iter().zip(lines));
            traces.iter_mut().zip(displaced).for_each(|(trace, amplitude)| trace.amplitudes.push(amplitude));
        }
        traces
    }

    /// Displacement around a surface at one of its stations; under the jaws with orders up to [`SHORTEST_DENT`].
    pub fn station(&self, contact: &Contact, surface: usize, station: usize) -> Option<Lobing> {
        let long = self.lobing(contact, surface).into_iter().nth(station)?;
        Some(self.dented(contact, surface, station, long))
    }

    /// The station of a surface whose lobes carry most, by its number, and what [`Self::station`] tells of it.
    pub fn worst(&self, contact: &Contact, surface: usize) -> Option<(usize, Lobing)> {
        let stations = self.lobing(contact, surface).into_iter().enumerate();
        let (station, long) = stations.max_by(|a, b| a.1.power().total_cmp(&b.1.power()))?;
        Some((station, self.dented(contact, surface, station, long)))
    }

    /// Adds the dent to a station under the jaws.
    fn dented(&self, contact: &Contact, surface: usize, station: usize, mut lobing: Lobing) -> Lobing {
        let part = &self.part;
        let pressed = part.stations.get(surface).and_then(|stations| *stations.pressed.get(station)?);
        if let Some((point, on)) = pressed {
            let points = part.points.len();
            for waves in &self.short {
                let rows = waves.spread.chunks_exact(points).skip(point).take(2).zip([1.0 - on, on]);
                let mut spread = alloc::vec![0.0; points];
                for (row, share) in rows {
                    spread.iter_mut().zip(row).for_each(|(sum, value)| *sum += self.sign() * share * value);
                }
                let line: Vec<f64> = contact.pressure.chunks_exact(points).map(|row| dot(row, &spread)).collect();
                lobing.amplitudes.extend(waves.dents.iter().map(|dent| dot(dent, &line)));
            }
        }
        lobing.trim();
        lobing
    }

    /// 1 if the jaws push the part outward, -1 inward.
    fn sign(&self) -> f64 {
        if self.part.side == Side::Bore { 1.0 } else { -1.0 }
    }

    /// Amplitude of an order of the pressure at each band point, outward.
    fn outward(&self, contact: &Contact, order: usize, cosines: &[f64]) -> Vec<f64> {
        let points = self.part.points.len();
        let factor = self.sign() * share(order, self.part.jaws);
        let mut amplitude = alloc::vec![0.0; points];
        for (line, c) in contact.pressure.chunks_exact(points).zip(cosines) {
            for (sum, p) in amplitude.iter_mut().zip(line) {
                *sum += factor * c * p;
            }
        }
        amplitude
    }
}
