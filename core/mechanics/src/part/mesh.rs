//! A conforming mesh of eight-node quadrilaterals over the (r, z) profile.

use super::profile::Profile;
use super::strips::{Strip, strips};
use super::subdivision::{axial_shares, radial_shares};
use super::surface::Band;
use crate::sorting::sort;
use alloc::vec::Vec;
use core::fmt;

use crate::text::Text;

/// Most nodes a mesh may have: three unknowns each, so 18,000 unknowns.
pub const MAX_NODES: usize = 6000;

/// The mesh would exceed [`MAX_NODES`], or be too wide in both directions for its matrix.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooLarge {
    /// Nodes the mesh would need.
    pub nodes: usize,
}

impl From<&TooLarge> for Text {
    fn from(error: &TooLarge) -> Self {
        Self::of("The profile needs {} mesh points, more than can be solved (at most {}). Leave out small steps.")
            .with(error.nodes)
            .with(MAX_NODES)
    }
}

impl fmt::Display for TooLarge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for TooLarge {}

/// Nodes of an element side: corner, middle, corner, towards +z or outward.
pub type Edge = [usize; 3];

/// Eight-node quadrilaterals over the profile.
#[derive(Clone, Debug)]
pub struct Mesh {
    /// (r, z) of each node, m.
    pub nodes: Vec<[f64; 2]>,
    /// Nodes of each element: four corners counter-clockwise in (r, z), then the four middles.
    pub elements: Vec<[usize; 8]>,
    /// Sides on the outside, along +z.
    pub outside: Vec<Edge>,
    /// Sides on the bore, along +z; none where the part is solid.
    pub bore: Vec<Edge>,
    /// Sides on faces across the axis, outward.
    pub faces: Vec<Edge>,
}

impl Mesh {
    /// Meshes a profile for a grip on `band`: element sides fall on the band's edges and elements
    /// shorten towards it; `planes` are further z (m) where sides must fall.
    /// `density` multiplies the number of elements each way (1 = default).
    ///
    /// # Errors
    /// [`TooLarge`] instead of a mesh that could not be solved in reasonable time.
    pub(crate) fn new(profile: &Profile, band: &Band, planes: &[f64], density: f64) -> Result<Self, TooLarge> {
        let strips = strips(profile);
        let shares = radial_shares(&strips, band, density);
        let along = axial_shares(&strips, &band.z, planes, density);
        let nodes = along
            .iter()
            .zip(&shares)
            .map(|(z, r)| (z.len() - 1) * (3 * r.iter().map(|s| s.len() - 1).sum::<usize>() + 2))
            .sum();
        if nodes > MAX_NODES {
            return Err(TooLarge { nodes });
        }
        let mut mesh =
            Self { nodes: Vec::new(), elements: Vec::new(), outside: Vec::new(), bore: Vec::new(), faces: Vec::new() };
        let mut last: Option<Column> = None;
        for (k, strip) in strips.iter().enumerate() {
            last = Some(mesh.add_strip(strip, &along[k], &shares[k], last.as_ref()));
        }
        if let Some(column) = last {
            mesh.add_face(&column.nodes);
        }
        Ok(mesh)
    }

    /// Sides of the elements, each once: r and z of its one end, then of its other, m.
    pub fn lines(&self) -> Vec<[f64; 4]> {
        let mut sides: Vec<(usize, usize)> = self
            .elements
            .iter()
            .flat_map(|e| [(e[0], e[1]), (e[1], e[2]), (e[2], e[3]), (e[3], e[0])])
            .map(|(a, b)| (a.min(b), a.max(b)))
            .collect();
        sort(&mut sides, Ord::cmp);
        sides.dedup();
        sides
            .iter()
            .map(|(a, b)| [self.nodes[*a][0], self.nodes[*a][1], self.nodes[*b][0], self.nodes[*b][1]])
            .collect()
    }

    /// Adds one strip's nodes and elements, sharing nodes with the column it starts on.
    fn add_strip(&mut self, strip: &Strip, along: &[f64], shares: &[Vec<f64>], before: Option<&Column>) -> Column {
        let across = across(shares);
        let starts = line_starts(shares, strip.first[0]);
        let mut column = self.first_column(strip, &across, starts, before);
        for piece in along.windows(2) {
            let middle = (piece[0] + piece[1]) / 2.0;
            let half = self.new_column(strip, &across, middle, 2);
            let end = self.new_column(strip, &across, piece[1], 1);
            for j in (0..across.len() - 1).step_by(2) {
                let (a, b) = (&column, &end);
                self.elements.push([a[j], a[j + 2], b[j + 2], b[j], a[j + 1], half[j / 2 + 1], b[j + 1], half[j / 2]]);
            }
            let top = across.len() - 1;
            self.outside.push([column[top], half[top / 2], end[top]]);
            let inner = strip.walls().0;
            if inner[0] > 0.0 || inner[1] > 0.0 {
                self.bore.push([column[0], half[0], end[0]]);
            }
            column = end;
        }
        Column { nodes: column, starts: line_starts(shares, strip.first[1]) }
    }

    fn new_column(&mut self, strip: &Strip, across: &[Place], share: f64, step: usize) -> Vec<usize> {
        let z = strip.z[0] + share * strip.length();
        across
            .iter()
            .step_by(step)
            .map(|place| {
                self.nodes.push([place.radius(strip, share), z]);
                self.nodes.len() - 1
            })
            .collect()
    }

    /// The column at a strip's start: nodes of the strip before where they touch, new ones and
    /// open faces elsewhere.
    fn first_column(&mut self, strip: &Strip, across: &[Place], starts: Starts, before: Option<&Column>) -> Vec<usize> {
        let Some(before) = before else {
            let column = self.new_column(strip, across, 0.0, 1);
            self.add_face(&column);
            return column;
        };
        let low = starts.lowest().max(before.starts.lowest());
        let high = starts.highest().min(before.starts.highest());
        let (mine, theirs) = (starts.span(low, high), before.starts.span(low, high));
        let mut column = Vec::with_capacity(across.len());
        for (j, place) in across.iter().enumerate() {
            if j >= mine.0 && j <= mine.1 {
                column.push(before.nodes[theirs.0 + j - mine.0]);
            } else {
                self.nodes.push([place.radius(strip, 0.0), strip.z[0]]);
                column.push(self.nodes.len() - 1);
            }
        }
        self.add_face(&column[..=mine.0]);
        self.add_face(&column[mine.1..]);
        self.add_face(&before.nodes[..=theirs.0]);
        self.add_face(&before.nodes[theirs.1..]);
        column
    }

    fn add_face(&mut self, column: &[usize]) {
        for side in column.windows(3).step_by(2) {
            self.faces.push([side[0], side[1], side[2]]);
        }
    }
}

/// A column of nodes across the wall, with the break each line starts at.
struct Column {
    nodes: Vec<usize>,
    starts: Starts,
}

/// For the lines of a strip: number of the first line's break, and node index of each line.
struct Starts {
    first: usize,
    at: Vec<usize>,
}

impl Starts {
    fn lowest(&self) -> usize {
        self.first
    }
    fn highest(&self) -> usize {
        self.first + self.at.len() - 1
    }
    fn span(&self, low: usize, high: usize) -> (usize, usize) {
        (self.at[low - self.first], self.at[high - self.first])
    }
}

fn line_starts(shares: &[Vec<f64>], first: usize) -> Starts {
    let mut at = alloc::vec![0];
    let mut nodes = 0;
    for part in shares {
        nodes += 2 * (part.len() - 1);
        at.push(nodes);
    }
    Starts { first, at }
}

/// A place between two neighbouring lines.
struct Place {
    line: usize,
    share: f64,
}

impl Place {
    fn radius(&self, strip: &Strip, along: f64) -> f64 {
        let between = |line: [f64; 2]| line[0] + along * (line[1] - line[0]);
        let below = between(strip.lines[self.line]);
        if self.share == 0.0 {
            return below;
        }
        let above = between(strip.lines[self.line + 1]);
        below + self.share * (above - below)
    }
}

/// Node places across a strip: corners and middles in turn.
fn across(shares: &[Vec<f64>]) -> Vec<Place> {
    let mut places = Vec::new();
    for (line, part) in shares.iter().enumerate() {
        for side in part.windows(2) {
            for share in [side[0], (side[0] + side[1]) / 2.0] {
                places.push(Place { line, share });
            }
        }
    }
    places.push(Place { line: shares.len(), share: 0.0 });
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part::profile::Step;
    use crate::part::surface::Side;
    use core::f64::consts::PI;

    fn band(from: f64, to: f64) -> Band {
        Band { side: Side::Outside, z: [from, to], cells: Band::CELLS }
    }

    fn stepped() -> Vec<Step> {
        alloc::vec![
            Step::cylinder(0.01, 0.10, 0.0),
            Step { length: 0.02, outer: [0.10, 0.08], inner: [0.06, 0.05] },
            Step::cylinder(0.005, 0.12, 0.07),
            Step::cylinder(0.03, 0.09, 0.05),
            Step::cylinder(0.004, 0.084, 0.0),
        ]
    }

    fn area(mesh: &Mesh, element: &[usize; 8]) -> f64 {
        let at = |k: usize| mesh.nodes[element[k]];
        let cross = |a: [f64; 2], b: [f64; 2]| a[0] * b[1] - a[1] * b[0];
        (0..4).map(|k| cross(at(k), at((k + 1) % 4))).sum::<f64>() / 2.0
    }

    #[test]
    fn elements_fill_the_profile_and_meet_side_to_side() {
        let steps = stepped();
        let profile = Profile::new(&steps).expect("a sound profile");
        for density in [0.7, 1.0, 2.0] {
            let mesh = Mesh::new(&profile, &band(0.0, 0.004), &[0.04], density).expect("small");
            let meshed: f64 = mesh.elements.iter().map(|e| area(&mesh, e)).sum();
            let exact: f64 =
                steps.iter().map(|s| s.length * (s.outer[0] + s.outer[1] - s.inner[0] - s.inner[1]) / 4.0).sum();
            assert!((meshed - exact).abs() < 1e-12, "area {meshed} of {exact}");
            assert!(mesh.elements.iter().all(|e| area(&mesh, e) > 0.0), "none is inside out");
            // Every side belongs to two elements or to the boundary: count sides by their middles.
            let mut uses = alloc::vec![0usize; mesh.nodes.len()];
            for element in &mesh.elements {
                element[4..].iter().for_each(|&m| uses[m] += 1);
            }
            for side in mesh.outside.iter().chain(&mesh.bore).chain(&mesh.faces) {
                uses[side[1]] += 1;
            }
            let axis_sides =
                mesh.elements.iter().flat_map(|e| e[4..].iter()).filter(|&&m| mesh.nodes[m][0] == 0.0).count();
            let single = uses.iter().filter(|u| **u == 1).count();
            assert_eq!(single, axis_sides, "only sides on the axis are alone");
            assert!(uses.iter().all(|u| *u <= 2), "no side is used three times");
        }
    }

    #[test]
    fn each_side_is_one_line() {
        let ring = Profile::new(&[Step::cylinder(0.02, 0.1, 0.08)]).unwrap();
        let mesh = Mesh::new(&ring, &band(0.0, 0.02), &[], 1.0).unwrap();
        let lines = mesh.lines();
        // Euler: corners - sides + elements = 1 for a profile without a hole.
        let mut corners: Vec<[u64; 2]> =
            lines.iter().flat_map(|l| [[l[0].to_bits(), l[1].to_bits()], [l[2].to_bits(), l[3].to_bits()]]).collect();
        corners.sort_unstable();
        corners.dedup();
        assert_eq!(corners.len() + mesh.elements.len(), lines.len() + 1, "no side is left out or drawn twice");
    }

    #[test]
    fn sides_fall_on_the_planes_asked_for() {
        let profile = Profile::new(&stepped()).expect("a sound profile");
        let mesh = Mesh::new(&profile, &band(0.0, 0.004), &[0.0401], 1.0).expect("small");
        for z in [0.004, 0.0401] {
            assert!(mesh.outside.iter().any(|side| (mesh.nodes[side[0]][1] - z).abs() < 1e-12), "a side starts at {z}");
        }
    }

    #[test]
    fn the_outside_has_the_area_of_the_cylinder() {
        let profile = Profile::new(&[Step::cylinder(0.02, 0.15, 0.138)]).expect("a ring");
        let mesh = Mesh::new(&profile, &band(0.0, 0.02), &[], 1.0).expect("small");
        let area: f64 = mesh
            .outside
            .iter()
            .map(|s| {
                let [a, _, b] = s.map(|n| mesh.nodes[n]);
                PI * (a[0] + b[0]) * (b[1] - a[1])
            })
            .sum();
        assert!((area - PI * 0.15 * 0.02).abs() < 1e-12, "outside area {area}");
    }

    #[test]
    fn a_part_of_two_hundred_odd_steps_is_meshed_or_refused() {
        let steps: Vec<Step> = (0..200)
            .map(|k| {
                let outer = 0.1 + 0.0001 * f64::from(k * 37 % 100);
                Step::cylinder(0.002, outer, 0.08 - 0.0001 * f64::from(k * 53 % 90))
            })
            .collect();
        let profile = Profile::new(&steps).expect("sound");
        match Mesh::new(&profile, &band(0.0, 0.02), &[], 1.0) {
            Ok(mesh) => assert!(mesh.nodes.len() <= MAX_NODES, "within the bound"),
            Err(large) => assert!(large.nodes > MAX_NODES, "refused for its size: {large}"),
        }
    }
}
