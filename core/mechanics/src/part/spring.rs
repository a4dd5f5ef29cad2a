//! The part as a spring: what pressure on the gripped band does to the band and to the surfaces
//! of interest, harmonic by harmonic, and what spin does.

use super::element::Elastic;
use super::error::PartError;
use super::harmonic::Stiffness;
use super::load::add_spin;
use super::mesh::{Edge, Mesh};
use super::profile::Profile;
use super::surface::{Band, Side, Surface, nodes, sides};
use alloc::vec::Vec;

/// Harmonics solved by elements at most, besides 0.
pub const MAX_HARMONICS: usize = 30;

/// Highest order around the axis solved by elements. Beyond it the wave is so short that the
/// part answers as a half-plane (see `contact`), and better than a mesh too coarse for it.
pub const MAX_ORDER: usize = 90;

/// Orders up to here are all solved. Beyond, the answer times its order changes slowly, and a cubic through the
/// solved ones is within 0.1 % of what is between (checked in `reference`).
pub(super) const EACH: usize = 30;

/// A meshed part with its loads and surfaces, ready to be solved one harmonic after another.
///
/// ```
/// use holdround_mechanics::part::{Band, Elastic, PartModel, Profile, Side, Step, Surface};
/// let ring = Profile::new(&[Step::cylinder(0.02, 0.15, 0.138)])?;
/// let steel = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
/// let band = Band { side: Side::Outside, z: [0.0, 0.02], cells: Band::CELLS };
/// let bore = Surface { name: "bore".into(), side: Side::Bore, z: [0.0, 0.02] };
/// let model = PartModel::new(&ring, steel, band, 3, &[bore], 1.0)?;
/// let spring = model.spring()?;
/// assert_eq!(spring.responses.len(), 31);
/// // Spinning at 100 rad/s opens the bore.
/// assert!(spring.spin[0][0] * 100.0 * 100.0 > 0.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct PartModel {
    mesh: Mesh,
    elastic: Elastic,
    jaws: usize,
    stiffness: Stiffness,
    radius: f64,
    /// Band nodes and their loads: for each band point, (block row, share) of a unit pressure hat.
    loads: Vec<Vec<(usize, f64)>>,
    points: Vec<f64>,
    goes_on: [bool; 2],
    mass: Vec<f64>,
    surfaces: Vec<Stations>,
    side: Side,
}

/// Where a surface is sampled.
#[derive(Clone, Debug, PartialEq)]
pub struct Stations {
    /// (r, z) of each station, m.
    pub at: Vec<[f64; 2]>,
    /// For each station under the jaws, the band point at or below it, and the share of the way to the next.
    pub pressed: Vec<Option<(usize, f64)>>,
    nodes: Vec<usize>,
    component: usize,
}

/// The answer of the part in one harmonic, per unit amplitude of outward pressure (1 Pa) at each
/// band point (a hat: 1 at the point, 0 at its neighbours along z).
#[derive(Clone, Debug, PartialEq)]
pub struct Response {
    /// Order around the axis: 0, J, 2 J, ...
    pub order: usize,
    /// Points x points: work-conjugate displacement of the band, m3 (radius times length times
    /// displacement per Pa), symmetric.
    pub band: Vec<f64>,
    /// For each surface, points x stations: displacement, m/Pa.
    pub surfaces: Vec<Vec<f64>>,
    /// For each surface and station: displacement per squared angular speed, m s2; empty beyond order 0.
    pub spin: Vec<Vec<f64>>,
}

/// Everything kept of a part's elasticity.
#[derive(Clone, Debug)]
pub struct PartSpring {
    /// Radius of the gripped band, m.
    pub radius: f64,
    /// Which side is gripped.
    pub side: Side,
    /// Equal jaws.
    pub jaws: usize,
    /// Elastic constants.
    pub elastic: Elastic,
    /// z of the band points, m, ascending.
    pub points: Vec<f64>,
    /// Whether the part goes on behind the gripped surface beyond either end of the band.
    pub goes_on: [bool; 2],
    /// Points x points: integral of hat times hat times radius along z, m2.
    pub mass: Vec<f64>,
    /// Harmonics 0, J, 2 J, ...
    pub responses: Vec<Response>,
    /// Stations of each surface.
    pub stations: Vec<Stations>,
    /// For each surface and station: displacement per squared angular speed, m s2.
    pub spin: Vec<Vec<f64>>,
}

impl PartModel {
    /// Meshes and assembles. `density`, 0.1 to 10, multiplies the number of elements each way
    /// (1 = default).
    ///
    /// # Errors
    /// [`PartError`], naming what is wrong.
    pub fn new(
        profile: &Profile,
        elastic: Elastic,
        band: Band,
        jaws: usize,
        surfaces: &[Surface],
        density: f64,
    ) -> Result<Self, PartError> {
        if !elastic.is_valid() {
            return Err(PartError::Material);
        }
        if !(0.1..=10.0).contains(&density) {
            return Err(PartError::Density);
        }
        if !(2..=12).contains(&jaws) {
            return Err(PartError::Jaws { jaws });
        }
        check_band(band, profile.length())?;
        let points = band.points();
        let ends = surfaces.iter().filter(|s| s.side != Side::Face).flat_map(|s| s.z);
        let planes: Vec<f64> = ends.chain(points.iter().copied()).collect();
        let mesh = Mesh::new(profile, &band, &planes, density)?;
        let gripped = sides(&mesh, band.side, band.z);
        let radius = gripped.first().map_or(0.0, |side| mesh.nodes[side[0]][0]);
        let covered: f64 = gripped.iter().map(|s| mesh.nodes[s[2]][1] - mesh.nodes[s[0]][1]).sum();
        if (covered - (band.z[1] - band.z[0])).abs() > 1e-6 * profile.length() {
            return Err(PartError::BandOffPart);
        }
        let off = |n: &usize| (mesh.nodes[*n][0] - radius).abs() > 1e-6 * radius;
        if gripped.iter().flatten().any(off) {
            return Err(PartError::BandNotCylinder);
        }
        let band_nodes = nodes(&gripped);
        let stiffness = Stiffness::new(&mesh, &elastic, &band_nodes)?;
        let stations = surfaces
            .iter()
            .enumerate()
            .map(|(k, s)| stations(&mesh, s, &band_nodes, &points).ok_or(PartError::NoSurface { surface: k }))
            .collect::<Result<Vec<_>, _>>()?;
        let loads = hat_loads(&mesh, &gripped, &points, &stiffness.position);
        let goes_on = goes_on(profile, band, radius);
        let mass = hat_mass(&points, radius);
        Ok(Self {
            mesh,
            elastic,
            jaws,
            stiffness,
            radius,
            loads,
            points,
            goes_on,
            mass,
            surfaces: stations,
            side: band.side,
        })
    }

    /// Orders around the axis to solve: of 0, J, 2 J, ... up to [`MAX_HARMONICS`] and [`MAX_ORDER`] the lower ones
    /// all, of the higher ones enough for [`Self::gather`] to find those between.
    pub fn orders(&self) -> impl Iterator<Item = usize> + use<> {
        let (jaws, last) = (self.jaws, self.last());
        let next =
            move |k: &usize| (*k < last).then(|| if k * jaws < EACH { k + 1 } else { (k + (k / 4).max(1)).min(last) });
        core::iter::successors(Some(0), next).map(move |k| k * jaws)
    }

    /// Number of the highest harmonic.
    fn last(&self) -> usize {
        (MAX_ORDER / self.jaws).min(MAX_HARMONICS)
    }

    /// The mesh, for drawing.
    pub fn mesh(&self) -> &Mesh {
        &self.mesh
    }

    /// Unknowns: three for each node.
    pub fn unknowns(&self) -> usize {
        self.stiffness.unknowns()
    }

    /// Multiplications that one harmonic costs, about.
    pub fn work(&self) -> f64 {
        let (rows, numbers) = (self.stiffness.unknowns() as f64, self.stiffness.numbers() as f64);
        numbers * numbers / rows / 2.0 + 2.0 * numbers * self.points.len() as f64
    }

    /// Solves one harmonic: the unit of work to slice a page's time by.
    ///
    /// # Errors
    /// [`PartError::Singular`] if rounding has eaten the stiffness.
    pub fn respond(&self, order: usize) -> Result<Response, PartError> {
        let factor = self.stiffness.factor(order).ok_or(PartError::Singular { order })?;
        let points = self.points.len();
        // Beside the hats, order 0 has one more load: the spin.
        let sides = points + usize::from(order == 0);
        let mut x = alloc::vec![0.0; self.stiffness.unknowns() * sides];
        for (b, load) in self.loads.iter().enumerate() {
            for &(row, share) in load {
                x[3 * row * sides + b] += share;
            }
        }
        if order == 0 {
            let mut spun = alloc::vec![0.0; self.stiffness.unknowns()];
            add_spin(&self.mesh, &self.elastic, &self.stiffness.position, &mut spun);
            x.chunks_exact_mut(sides).zip(spun).for_each(|(line, force)| line[points] = force);
        }
        factor.solve(&mut x, sides);
        let mut band = Vec::with_capacity(points * points);
        for load in &self.loads {
            for b in 0..points {
                band.push(load.iter().map(|&(row, share)| share * x[3 * row * sides + b]).sum());
            }
        }
        let under = |load: usize, s: &Stations| -> Vec<f64> {
            s.rows(&self.stiffness).map(|row| x[row * sides + load]).collect()
        };
        let surfaces = self.surfaces.iter().map(|s| (0..points).flat_map(|b| under(b, s)).collect());
        let spin = self.surfaces.iter().map(|s| (points..sides).flat_map(|spin| under(spin, s)).collect());
        Ok(Response { order, band, surfaces: surfaces.collect(), spin: spin.collect() })
    }

    /// Solves every harmonic, the spin with the first.
    ///
    /// # Errors
    /// As [`Self::respond`].
    pub fn spring(&self) -> Result<PartSpring, PartError> {
        Ok(self.gather(self.orders().map(|n| self.respond(n)).collect::<Result<_, _>>()?))
    }

    /// Keeps the responses of [`Self::orders`], solved one by one, and finds those between.
    pub fn gather(&self, mut responses: Vec<Response>) -> PartSpring {
        PartSpring {
            spin: responses.first_mut().map(|first| core::mem::take(&mut first.spin)).unwrap_or_default(),
            radius: self.radius,
            side: self.side,
            jaws: self.jaws,
            elastic: self.elastic,
            points: self.points.clone(),
            goes_on: self.goes_on,
            mass: self.mass.clone(),
            responses: (0..=self.last()).filter_map(|k| between(&responses, k * self.jaws)).collect(),
            stations: self.surfaces.clone(),
        }
    }
}

/// The response in an order, from a cubic through the four solved ones around it, each times its order.
fn between(solved: &[Response], order: usize) -> Option<Response> {
    let at = match solved.binary_search_by_key(&order, |response| response.order) {
        Ok(at) => return solved.get(at).cloned(),
        Err(at) => at.saturating_sub(2).min(solved.len().saturating_sub(4)),
    };
    let around = solved.get(at..at + 4)?;
    let n = order as f64;
    let mut sum = Response { order, band: Vec::new(), surfaces: Vec::new(), spin: Vec::new() };
    for response in around {
        let own = response.order as f64;
        let others = around.iter().map(|other| other.order as f64).filter(|other| *other != own);
        let weight = others.fold(own / n, |weight, other| weight * (n - other) / (own - other));
        add(&mut sum.band, weight, &response.band);
        sum.surfaces.resize(response.surfaces.len(), Vec::new());
        for (sum, rows) in sum.surfaces.iter_mut().zip(&response.surfaces) {
            add(sum, weight, rows);
        }
    }
    Some(sum)
}

fn add(sum: &mut Vec<f64>, weight: f64, values: &[f64]) {
    sum.resize(values.len(), 0.0);
    sum.iter_mut().zip(values).for_each(|(sum, value)| *sum += weight * value);
}

impl Stations {
    fn rows<'a>(&'a self, stiffness: &'a Stiffness) -> impl Iterator<Item = usize> + 'a {
        self.nodes.iter().map(move |&n| 3 * stiffness.position[n] + self.component)
    }
}

fn check_band(band: Band, length: f64) -> Result<(), PartError> {
    let [from, to] = band.z;
    let slack = 1e-9 * length;
    let inside = from >= -slack && to <= length + slack && to - from > 1e-4 * length;
    if inside && band.side != Side::Face { Ok(()) } else { Err(PartError::BandOffPart) }
}

/// Whether there is metal under the gripped surface just beyond either end of the band.
fn goes_on(profile: &Profile, band: Band, radius: f64) -> [bool; 2] {
    let slack = 1e-6 * radius;
    let metal = |z: f64| {
        let mut start = 0.0;
        profile.steps().iter().any(|step| {
            let along = (z - start) / step.length;
            start += step.length;
            let at = |ends: [f64; 2]| (ends[0] + along * (ends[1] - ends[0])) / 2.0;
            let deep = if band.side == Side::Bore { radius - at(step.inner) } else { at(step.outer) - radius };
            (0.0..=1.0).contains(&along) && deep > -slack
        })
    };
    [metal(band.z[0] - slack), metal(band.z[1] + slack)]
}

fn stations(mesh: &Mesh, surface: &Surface, band: &[usize], points: &[f64]) -> Option<Stations> {
    let nodes = nodes(&sides(mesh, surface.side, surface.z));
    (!nodes.is_empty()).then(|| Stations {
        at: nodes.iter().map(|&n| mesh.nodes[n]).collect(),
        pressed: nodes
            .iter()
            .map(|n| (surface.side != Side::Face && band.contains(n)).then(|| place(points, mesh.nodes[*n][1])))
            .collect(),
        nodes,
        component: if surface.side == Side::Face { 2 } else { 0 },
    })
}

/// Nodal loads of each band point's hat: linear from point to point along z, so that a pressure
/// that is positive at the points is positive between them.
fn hat_loads(mesh: &Mesh, gripped: &[Edge], points: &[f64], position: &[usize]) -> Vec<Vec<(usize, f64)>> {
    let mut loads: Vec<Vec<(usize, f64)>> = alloc::vec![Vec::new(); points.len()];
    for edge in gripped {
        let [start, middle, end] = edge.map(|n| mesh.nodes[n]);
        let scale = start[0] * (end[1] - start[1]) / 6.0;
        let (below, _) = place(points, middle[1]);
        let rise = [start, end].map(|at| (at[1] - points[below]) / (points[below + 1] - points[below]));
        for (hat, at) in [(below, rise.map(|rise| 1.0 - rise)), (below + 1, rise)] {
            // Integrals of a straight line times the shape functions of the edge.
            let shares = [at[0], 2.0 * (at[0] + at[1]), at[1]];
            loads[hat].extend(edge.iter().zip(shares).map(|(&node, s)| (position[node], scale * s)));
        }
    }
    loads
}

/// The point at or below `z`, and the share of the way from it to the next.
fn place(points: &[f64], z: f64) -> (usize, f64) {
    let below = points.partition_point(|point| *point <= z).clamp(1, points.len() - 1) - 1;
    (below, ((z - points[below]) / (points[below + 1] - points[below])).clamp(0.0, 1.0))
}

/// Integral of hat times hat times radius.
fn hat_mass(points: &[f64], radius: f64) -> Vec<f64> {
    let m = points.len();
    let mut mass = alloc::vec![0.0; m * m];
    for (k, pair) in points.windows(2).enumerate() {
        let length = (pair[1] - pair[0]) * radius;
        for (a, b, share) in [(0, 0, 3.0), (0, 1, 6.0), (1, 0, 6.0), (1, 1, 3.0)] {
            mass[(k + a) * m + k + b] += length / share;
        }
    }
    mass
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part::Step;

    #[test]
    fn stations_under_the_jaws_are_those_of_the_gripped_side_within_the_band() {
        let ring = Profile::new(&[Step::cylinder(0.03, 0.15, 0.138)]).unwrap();
        let steel = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
        let band = Band { side: Side::Outside, z: [0.0, 0.02], cells: Band::CELLS };
        let surface = |side, z| Surface { name: "".into(), side, z };
        let surfaces =
            [surface(Side::Outside, [0.0, 0.03]), surface(Side::Bore, [0.0, 0.03]), surface(Side::Face, [-1e-6, 1e-6])];
        let spring = PartModel::new(&ring, steel, band, 3, &surfaces, 0.5).unwrap().spring().unwrap();
        let [outside, bore, face] = spring.stations.as_slice() else { panic!("three surfaces") };
        let mut pressed = 0;
        for (&[_, z], &under) in outside.at.iter().zip(&outside.pressed) {
            assert_eq!(under.is_some(), z <= 0.02 + 1e-12, "outside at {z}");
            let Some((at, share)) = under else { continue };
            let (below, above) = (spring.points[at], spring.points[at + 1]);
            assert!((below + share * (above - below) - z).abs() < 1e-12, "{z} is {share} of the way past {below}");
            pressed += 1;
        }
        assert!(pressed > 3 && pressed < outside.at.len(), "some are under the jaws, some are not");
        // The face has a corner in common with the band, and is not pressed there: it is read along the axis.
        assert!(face.at.iter().any(|&[r, _]| (r - 0.075).abs() < 1e-12), "the face reaches the corner");
        for other in [bore, face] {
            assert!(other.pressed.iter().all(Option::is_none) && !other.at.is_empty(), "{other:?}");
        }
    }
}
