//! The part as a spring: what pressure on the gripped band does to the band and to the surfaces
//! of interest, harmonic by harmonic, and what spin does.

use super::element::{Elastic, GAUSS, side as shape_of_side};
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

/// A meshed part with its loads and surfaces, ready to be solved one harmonic after another.
///
/// ```
/// use holdround_core::part::{Band, Elastic, PartModel, Profile, Side, Step, Surface};
/// let ring = Profile::new(&[Step::cylinder(0.02, 0.15, 0.138)])?;
/// let steel = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
/// let band = Band { side: Side::Outside, z: [0.0, 0.02] };
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
    mass: Vec<f64>,
    surfaces: Vec<Stations>,
    side: Side,
}

/// Where a surface is sampled.
#[derive(Clone, Debug, PartialEq)]
pub struct Stations {
    /// (r, z) of each station, m.
    pub at: Vec<[f64; 2]>,
    /// For each station, the band point it is, if it lies under the jaws.
    pub pressed: Vec<Option<usize>>,
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
    /// For each surface, stations x points: displacement, m/Pa.
    pub surfaces: Vec<Vec<f64>>,
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
        let planes: Vec<f64> = surfaces.iter().filter(|s| s.side != Side::Face).flat_map(|s| s.z).collect();
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
        let stiffness = Stiffness::new(&mesh, &elastic)?;
        let band_nodes = nodes(&gripped);
        let stations = surfaces
            .iter()
            .enumerate()
            .map(|(k, s)| stations(&mesh, s, &band_nodes).ok_or(PartError::NoSurface { surface: k }))
            .collect::<Result<Vec<_>, _>>()?;
        let points: Vec<f64> = band_nodes.iter().map(|&n| mesh.nodes[n][1]).collect();
        let loads = hat_loads(&mesh, &gripped, &stiffness.position);
        let mass = hat_mass(&points, radius);
        Ok(Self { mesh, elastic, jaws, stiffness, radius, loads, points, mass, surfaces: stations, side: band.side })
    }

    /// Orders around the axis to solve: 0, J, 2 J, ... up to [`MAX_HARMONICS`] and [`MAX_ORDER`].
    pub fn orders(&self) -> impl Iterator<Item = usize> + use<> {
        let last = (MAX_ORDER / self.jaws).min(MAX_HARMONICS);
        let jaws = self.jaws;
        (0..=last).map(move |k| k * jaws)
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
        let sides = self.points.len();
        let mut x = alloc::vec![0.0; self.stiffness.unknowns() * sides];
        for (b, load) in self.loads.iter().enumerate() {
            for &(row, share) in load {
                x[3 * row * sides + b] += share;
            }
        }
        factor.solve(&mut x, sides);
        let mut band = Vec::with_capacity(sides * sides);
        for load in &self.loads {
            for b in 0..sides {
                band.push(load.iter().map(|&(row, share)| share * x[3 * row * sides + b]).sum());
            }
        }
        let surfaces = self
            .surfaces
            .iter()
            .map(|s| s.rows(&self.stiffness).flat_map(|r| x[r * sides..][..sides].iter().copied()).collect())
            .collect();
        Ok(Response { order, band, surfaces })
    }

    /// Displacement of each surface's stations per squared angular speed, m s2.
    ///
    /// # Errors
    /// [`PartError::Singular`] as [`Self::respond`].
    pub fn spin(&self) -> Result<Vec<Vec<f64>>, PartError> {
        let factor = self.stiffness.factor(0).ok_or(PartError::Singular { order: 0 })?;
        let mut x = alloc::vec![0.0; self.stiffness.unknowns()];
        add_spin(&self.mesh, &self.elastic, &self.stiffness.position, &mut x);
        factor.solve(&mut x, 1);
        Ok(self.surfaces.iter().map(|s| s.rows(&self.stiffness).map(|r| x[r]).collect()).collect())
    }

    /// Solves every harmonic and the spin.
    ///
    /// # Errors
    /// As [`Self::respond`].
    pub fn spring(&self) -> Result<PartSpring, PartError> {
        self.gather(self.orders().map(|n| self.respond(n)).collect::<Result<_, _>>()?)
    }

    /// Keeps the responses of [`Self::orders`], solved one by one, and adds the spin.
    ///
    /// # Errors
    /// As [`Self::respond`].
    pub fn gather(&self, responses: Vec<Response>) -> Result<PartSpring, PartError> {
        Ok(PartSpring {
            radius: self.radius,
            side: self.side,
            jaws: self.jaws,
            elastic: self.elastic,
            points: self.points.clone(),
            mass: self.mass.clone(),
            responses,
            stations: self.surfaces.clone(),
            spin: self.spin()?,
        })
    }
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

fn stations(mesh: &Mesh, surface: &Surface, band: &[usize]) -> Option<Stations> {
    let nodes = nodes(&sides(mesh, surface.side, surface.z));
    (!nodes.is_empty()).then(|| Stations {
        at: nodes.iter().map(|&n| mesh.nodes[n]).collect(),
        pressed: nodes
            .iter()
            .map(|n| band.iter().position(|b| b == n).filter(|_| surface.side != Side::Face))
            .collect(),
        nodes,
        component: if surface.side == Side::Face { 2 } else { 0 },
    })
}

/// Nodal loads of each band point's hat: linear from node to node along z, so that a pressure
/// that is positive at the points is positive between them.
fn hat_loads(mesh: &Mesh, gripped: &[Edge], position: &[usize]) -> Vec<Vec<(usize, f64)>> {
    let mut loads: Vec<Vec<(usize, f64)>> = alloc::vec![Vec::new(); 2 * gripped.len() + 1];
    for (k, edge) in gripped.iter().enumerate() {
        let [start, _, end] = edge.map(|n| mesh.nodes[n]);
        let scale = start[0] * (end[1] - start[1]) / 2.0;
        for (half, shift) in [-0.5, 0.5].into_iter().enumerate() {
            let mut shares = [[0.0; 3]; 2];
            for (x, weight) in GAUSS {
                let (n, _) = shape_of_side(x / 2.0 + shift);
                for (share, hat) in shares.iter_mut().zip([(1.0 - x) / 2.0, (1.0 + x) / 2.0]) {
                    for (sum, n) in share.iter_mut().zip(n) {
                        *sum += scale * weight / 2.0 * hat * n;
                    }
                }
            }
            for (end, share) in shares.iter().enumerate() {
                let entries = edge.iter().zip(share).map(|(&node, s)| (position[node], *s));
                loads[2 * k + half + end].extend(entries);
            }
        }
    }
    loads
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
