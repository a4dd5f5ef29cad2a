//! Reference figures of held parts by three-dimensional finite elements (`reference/solids`), and the
//! engine's answer to the same cases.

use std::path::Path;

use holdround_core::Engine;
use holdround_core::contact::{Arc, Face, Gap, JawGive};
use holdround_core::part::{Band, Elastic, PartModel, PartSpring, Profile, Side, Step, Surface};
use serde::Deserialize;

/// The whole file; how it came about is told in `solve.py` beside it.
#[derive(Deserialize)]
struct Solids {
    cases: Vec<Case>,
}

/// One part in one set of jaws, under several loads.
#[derive(Clone, Debug, Deserialize)]
pub struct Case {
    /// Its name.
    pub name: String,
    /// What it is for.
    pub purpose: String,
    part: Part,
    jaws: Jaws,
    /// What came out, load by load.
    pub results: Vec<Loaded>,
}

#[derive(Clone, Debug, Deserialize)]
struct Part {
    steps: Vec<Length>,
    length: f64,
    young: f64,
    poisson: f64,
    density: f64,
}

#[derive(Clone, Debug, Deserialize)]
struct Length {
    length: f64,
    outer_diameter: [f64; 2],
    inner_diameter: [f64; 2],
}

#[derive(Clone, Debug, Deserialize)]
struct Jaws {
    count: usize,
    half_angle: f64,
    side: Gripped,
    z: [f64; 2],
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Gripped {
    Outside,
    Inside,
}

/// The figures under one load.
#[derive(Clone, Debug, Deserialize)]
#[serde(try_from = "Told")]
pub struct Loaded {
    /// The load.
    pub load: Load,
    /// Circles around the part.
    pub lines: Vec<Line>,
}

/// A load as the file tells it.
#[derive(Deserialize)]
struct Told {
    load: String,
    force_per_jaw: Option<f64>,
    mismatch: Option<f64>,
    taper: Option<f64>,
    jaw_travel: Option<Figure>,
    speed: Option<f64>,
    lines: Vec<Line>,
}

impl TryFrom<Told> for Loaded {
    type Error = String;

    fn try_from(told: Told) -> Result<Self, String> {
        let load = match (told.load.as_str(), told.force_per_jaw, told.mismatch, told.jaw_travel, told.speed) {
            ("uniform", Some(force_per_jaw), None, None, None) => Load::Uniform { force_per_jaw },
            ("rigid", Some(force_per_jaw), Some(mismatch), Some(jaw_travel), None) => {
                Load::Rigid { force_per_jaw, mismatch, taper: told.taper.unwrap_or(0.0), jaw_travel }
            }
            ("spin", None, None, None, Some(speed)) => Load::Spin { speed },
            (load, ..) => return Err(format!("{load} is no load, or is told in part")),
        };
        Ok(Self { load, lines: told.lines })
    }
}

/// How a part is loaded. SI.
#[derive(Clone, Copy, Debug)]
pub enum Load {
    /// Even pressure under each jaw.
    Uniform {
        /// Resultant along the jaw's axis.
        force_per_jaw: f64,
    },
    /// Rigid jaws, frictionless and one-sided.
    Rigid {
        /// Resultant along the jaw's axis.
        force_per_jaw: f64,
        /// Radius of the jaw less that of the part.
        mismatch: f64,
        /// Slope of its face: above 0 it opens toward the front of the part, below toward the back.
        taper: f64,
        /// Travel of a jaw from where its middle touches.
        jaw_travel: Figure,
    },
    /// Rotation alone.
    Spin {
        /// Angular speed.
        speed: f64,
    },
}

/// Radial displacement around one circle.
#[derive(Clone, Debug, Deserialize)]
pub struct Line {
    surface: Bound,
    z: f64,
    radius: f64,
    peak_to_valley: Option<Figure>,
    mean: Figure,
}

#[derive(Clone, Copy, Debug, Deserialize, PartialEq)]
#[serde(rename_all = "snake_case")]
enum Bound {
    Outside,
    Bore,
}

/// A figure of the reference.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct Figure {
    /// Its best estimate.
    pub value: f64,
    /// How far off the reference takes itself to be, at most.
    pub mesh_error: f64,
}

/// One figure of the engine beside the reference's.
#[derive(Clone, Debug)]
pub struct Pair {
    /// Case, load, circle and quantity.
    pub of: String,
    /// The engine's.
    pub ours: f64,
    /// The reference's.
    pub theirs: Figure,
    /// What is taken as the whole: the largest such figure of the part under this load.
    pub scale: f64,
}

impl Pair {
    /// Difference as a share of the scale.
    #[must_use]
    pub fn off(&self) -> f64 {
        (self.ours - self.theirs.value) / self.scale
    }

    /// The reference's own error as a share of the scale.
    #[must_use]
    pub fn unsure(&self) -> f64 {
        self.theirs.mesh_error / self.scale
    }
}

/// Every case.
///
/// # Errors
/// When the file cannot be read.
pub fn cases() -> Result<Vec<Case>, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference/solids/solids.json");
    let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    serde_json::from_str::<Solids>(&text).map(|solids| solids.cases).map_err(|error| error.to_string())
}

/// How finely the engine divides.
#[derive(Clone, Copy, Debug)]
pub struct Fineness {
    /// Density of the part's mesh.
    pub density: f64,
    /// Cells across half a jaw.
    pub cells: usize,
    /// Cells along its grip.
    pub along: usize,
}

/// A case solved by the engine.
pub struct Solved {
    case: Case,
    spring: PartSpring,
    surfaces: Vec<Surface>,
    cells: usize,
}

impl Case {
    /// Solves the part's spring.
    ///
    /// # Errors
    /// The engine's refusal.
    pub fn solve(&self, fineness: Fineness) -> Result<Solved, String> {
        let step = |length: &Length| Step {
            length: length.length,
            outer: length.outer_diameter,
            inner: length.inner_diameter,
        };
        let steps: Vec<Step> = self.part.steps.iter().map(step).collect();
        let profile = Profile::new(&steps).map_err(|error| error.to_string())?;
        let elastic = Elastic { youngs: self.part.young, poisson: self.part.poisson, density: self.part.density };
        let side = match self.jaws.side {
            Gripped::Outside => Side::Outside,
            Gripped::Inside => Side::Bore,
        };
        let band = Band { side, z: self.jaws.z, cells: fineness.along };
        let surfaces = self.surfaces();
        let model = PartModel::new(&profile, elastic, band, self.jaws.count, &surfaces, fineness.density);
        let spring = model.and_then(|model| model.spring()).map_err(|error| error.to_string())?;
        Ok(Solved { case: self.clone(), spring, surfaces, cells: fineness.cells })
    }

    /// Solves the spring on finer and finer meshes until its lobes under even pressure and under rigid jaws
    /// change no more than the engine asks for, as the engine does with a set-up (which has elastic jaws too).
    ///
    /// # Errors
    /// The engine's refusal.
    pub fn settled(&self, cells: usize) -> Result<Solved, String> {
        let mut before: Option<[f64; 2]> = None;
        let mut solved = None;
        for density in Engine::DENSITIES {
            let next = self.solve(Fineness { density, cells, along: Band::CELLS })?;
            let lobes = next.lobes()?;
            let change = |k: usize| before.map_or(f64::INFINITY, |before| (before[k] / lobes[k] - 1.0).abs());
            solved = Some(next);
            if change(0).max(change(1) / 1.5) <= Engine::SETTLED {
                break;
            }
            before = Some(lobes);
        }
        solved.ok_or("no mesh was tried".to_string())
    }

    /// The same part and jaws, front and back exchanged.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let mut other = self.clone();
        let length = self.part.length;
        other.part.steps.reverse();
        for step in &mut other.part.steps {
            step.outer_diameter.reverse();
            step.inner_diameter.reverse();
        }
        other.jaws.z = [length - self.jaws.z[1], length - self.jaws.z[0]];
        for loaded in &mut other.results {
            if let Load::Rigid { taper, .. } = &mut loaded.load {
                *taper = -*taper;
            }
            loaded.lines.iter_mut().for_each(|line| line.z = length - line.z);
        }
        other
    }

    /// What tells how far a case lies from others: proportions of the part and of its jaws, by name.
    #[must_use]
    pub fn proportions(&self) -> Vec<(&'static str, f64)> {
        let mut told = vec![
            ("jaws", self.jaws.count as f64),
            ("share of the circle in jaws", self.jaws.count as f64 * self.jaws.half_angle / std::f64::consts::PI),
            ("share of the length gripped", (self.jaws.z[1] - self.jaws.z[0]) / self.part.length),
            ("Young's modulus", self.part.young),
        ];
        for step in &self.part.steps {
            let outer = step.outer_diameter[0];
            told.push(("wall over outer radius", 1.0 - step.inner_diameter[0] / outer));
            told.push(("length over outer diameter", self.part.length / outer));
        }
        for loaded in &self.results {
            if let Load::Rigid { mismatch, taper, .. } = loaded.load {
                told.push(("radius of the jaws less that of the part", mismatch));
                told.push(("taper of the jaws", taper));
            }
        }
        told
    }

    /// Outside and bore, each cut at its circles so that a node lies on every one.
    fn surfaces(&self) -> Vec<Surface> {
        let mut surfaces = Vec::new();
        for (bound, side) in [(Bound::Outside, Side::Outside), (Bound::Bore, Side::Bore)] {
            let mut planes = vec![0.0, self.part.length];
            if bound == Bound::Bore {
                // It ends at a floor.
                planes.extend(self.part.steps.iter().scan(0.0, |end, step| {
                    *end += step.length;
                    Some(*end)
                }));
            }
            let lines = self.results.iter().flat_map(|loaded| &loaded.lines);
            planes.extend(lines.filter(|line| line.surface == bound).map(|line| line.z));
            planes.sort_by(f64::total_cmp);
            planes.dedup_by(|a, b| (*a - *b).abs() < SAME);
            let open = |z: [f64; 2]| bound == Bound::Outside || self.part.inner_at(z[0] / 2.0 + z[1] / 2.0) > 0.0;
            let pieces = planes.windows(2).map(|w| [w[0], w[1]]).filter(|z| open(*z));
            surfaces.extend(pieces.map(|z| Surface { name: "".into(), side, z }));
        }
        surfaces
    }
}

/// Points nearer than this are one, m.
const SAME: f64 = 1e-7;

impl Part {
    fn inner_at(&self, z: f64) -> f64 {
        let mut end = 0.0;
        for step in &self.steps {
            end += step.length;
            if z < end {
                return step.inner_diameter[0].max(step.inner_diameter[1]);
            }
        }
        0.0
    }
}

impl Solved {
    /// Greatest peak to valley of any surface under even pressure and under rigid jaws, for 1 kN.
    fn lobes(&self) -> Result<[f64; 2], String> {
        let face = self.face()?;
        let even = face.even(1e3).map_err(|error| error.to_string())?;
        let rigid = face.press(1e3, &Gap::straight(0.0)).map_err(|error| error.to_string())?;
        let surfaces = 0..self.spring.stations.len();
        Ok([even, rigid].map(|contact| {
            let lobes = surfaces.clone().filter_map(|at| face.worst(&contact, at));
            lobes.map(|(_, lobing)| lobing.peak_to_valley()).fold(0.0, f64::max)
        }))
    }

    /// Greatest peak to valley on the outside and in the bore in rigid jaws that fit, each pressed with `force`.
    ///
    /// # Errors
    /// The engine's refusal.
    pub fn pressed(&self, force: f64) -> Result<[f64; 2], String> {
        let face = self.face()?;
        let rigid = face.press(force, &Gap::straight(0.0)).map_err(|error| error.to_string())?;
        Ok([Side::Outside, Side::Bore].map(|side| {
            let on_side = self.surfaces.iter().enumerate().filter(|(_, surface)| surface.side == side);
            let lobes = on_side.filter_map(|(at, _)| face.worst(&rigid, at));
            lobes.map(|(_, lobing)| lobing.peak_to_valley()).fold(0.0, f64::max)
        }))
    }

    /// Rigid jaws on it.
    ///
    /// # Errors
    /// The engine's refusal.
    pub fn face(&self) -> Result<Face<'_>, String> {
        let arc = Arc::graded(2.0 * self.case.jaws.half_angle, self.cells);
        Face::new(&self.spring, arc, &JawGive::default()).map_err(|error| error.to_string())
    }

    /// The engine's figures beside the reference's, of one load.
    ///
    /// # Errors
    /// When the engine refuses, or has no station where the reference has a circle.
    pub fn compare(&self, loaded: &Loaded) -> Result<Vec<Pair>, String> {
        self.compare_in(&self.face()?, loaded)
    }

    /// [`Self::compare`] with the jaws of [`Self::face`], which serve every load.
    ///
    /// # Errors
    /// As [`Self::compare`].
    pub fn compare_in(&self, face: &Face<'_>, loaded: &Loaded) -> Result<Vec<Pair>, String> {
        let (contact, spoken) = match loaded.load {
            Load::Uniform { force_per_jaw } => (Some(face.even(force_per_jaw)), "even pressure".to_string()),
            Load::Rigid { force_per_jaw, mismatch, taper, .. } => (
                Some(face.press(force_per_jaw, &self.gap(mismatch, taper))),
                format!("rigid, {:+.0} um, {:+.0} um/mm", mismatch * 1e6, taper * 1e3),
            ),
            Load::Spin { .. } => (None, "spin".to_string()),
        };
        let contact = contact.transpose().map_err(|error| error.to_string())?;
        let mut pairs = Vec::new();
        let of = |what: &str| format!("{}, {spoken}: {what}", self.case.name);
        if let (Load::Rigid { jaw_travel, .. }, Some(contact)) = (loaded.load, &contact) {
            let scale = jaw_travel.value.abs();
            pairs.push(Pair { of: of("travel"), ours: contact.travel, theirs: jaw_travel, scale });
        }
        let largest = |figure: fn(&Line) -> Option<Figure>| {
            loaded.lines.iter().filter_map(figure).map(|figure| figure.value.abs()).fold(0.0, f64::max)
        };
        let (lobes, grown) = (largest(|line| line.peak_to_valley), largest(|line| Some(line.mean)));
        for line in &loaded.lines {
            let (surface, station) = self.station(line)?;
            let place = format!("{:?} at z {:.1} mm", line.surface, line.z * 1e3);
            let Some(contact) = &contact else {
                let Load::Spin { speed } = loaded.load else { continue };
                let ours = self.spring.spin[surface][station] * speed * speed;
                pairs.push(Pair { of: of(&format!("growth of {place}")), ours, theirs: line.mean, scale: grown });
                continue;
            };
            let lobing = face.station(contact, surface, station).ok_or("no such station")?;
            if let Some(theirs) = line.peak_to_valley {
                let ours = lobing.peak_to_valley();
                pairs.push(Pair { of: of(&format!("peak to valley of {place}")), ours, theirs, scale: lobes });
            }
            let (ours, scale) = (lobing.mean(), grown.max(lobes));
            pairs.push(Pair { of: of(&format!("mean of {place}")), ours, theirs: line.mean, scale });
        }
        Ok(pairs)
    }

    /// The gap of jaws with a taper, which first touch at one end of the grip.
    fn gap(&self, larger: f64, taper: f64) -> Gap {
        let [front, back] = self.case.jaws.z;
        let away = |z: &f64| if taper > 0.0 { back - z } else { z - front };
        Gap { larger, relief: self.spring.points.iter().map(|z| taper.abs() * away(z)).collect() }
    }

    /// Which surface and station lies on a circle.
    fn station(&self, line: &Line) -> Result<(usize, usize), String> {
        for (surface, stations) in self.spring.stations.iter().enumerate() {
            let on = |at: &[f64; 2]| (at[0] - line.radius).abs() < SAME && (at[1] - line.z).abs() < SAME;
            if let Some(station) = stations.at.iter().position(on) {
                return Ok((surface, station));
            }
        }
        Err(format!("{}: no station at r {} z {}", self.case.name, line.radius, line.z))
    }
}
