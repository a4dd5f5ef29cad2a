//! Checks of the elements against exact displacement fields, harmonic by harmonic.

use super::element::Elastic;
use super::harmonic::Stiffness;
use super::load::{add_body_force, add_traction};
use super::mesh::Mesh;
use super::profile::{Profile, Step};
use super::surface::{Band, Side};

/// Gripped from end to end.
const BAND: Band = Band { side: Side::Outside, z: [0.0, 0.03], cells: Band::CELLS };

const STEEL: Elastic = Elastic { youngs: 207e9, poisson: 0.3, density: 7850.0 };

/// `u_r = r^a z^b cos(n t)`, nothing else. Exact body force and stress by hand from Navier's
/// equations in cylindrical coordinates (Timoshenko and Goodier, *Theory of Elasticity*).
struct Radial {
    n: usize,
    a: f64,
    b: f64,
}

fn power(x: f64, k: f64) -> f64 {
    if k == 0.0 { 1.0 } else { libm::pow(x, k) }
}

impl Radial {
    fn body_force(&self, r: f64, z: f64) -> [f64; 3] {
        let (lambda, mu) = STEEL.lame();
        let (n, a, b) = (self.n as f64, self.a, self.b);
        let both = lambda + mu;
        let along = if b > 1.0 { b * (b - 1.0) * power(z, b - 2.0) } else { 0.0 };
        let slope = if b > 0.0 { b * power(z, b - 1.0) } else { 0.0 };
        let flat = power(r, a - 2.0) * power(z, b);
        let radial = both * (a * a - 1.0) * flat + mu * ((a * a - n * n - 1.0) * flat + power(r, a) * along);
        let around = -both * n * (a + 1.0) * flat - 2.0 * mu * n * flat;
        let axial = both * (a + 1.0) * power(r, a - 1.0) * slope;
        [-radial, -around, -axial]
    }

    /// Traction on a surface whose outward normal is (m_r, m_z).
    fn traction(&self, r: f64, z: f64, [m_r, m_z]: [f64; 2]) -> [f64; 3] {
        let (lambda, mu) = STEEL.lame();
        let (n, a, b) = (self.n as f64, self.a, self.b);
        let slope = if b > 0.0 { b * power(z, b - 1.0) } else { 0.0 };
        let flat = power(r, a - 1.0) * power(z, b);
        let spread = lambda * (a + 1.0) * flat;
        let shear_rz = mu * power(r, a) * slope;
        [(spread + 2.0 * mu * a * flat) * m_r + shear_rz * m_z, -mu * n * flat * m_r, shear_rz * m_r + spread * m_z]
    }

    fn displacement(&self, r: f64, z: f64) -> [f64; 3] {
        [power(r, self.a) * power(z, self.b), 0.0, 0.0]
    }
}

/// A meshed tube of radii about 30 and 50 mm, conical for most of its length.
fn tube(density: f64) -> (Mesh, Stiffness) {
    let cone = [Step { length: 0.02, outer: [0.1, 0.09], inner: [0.06, 0.05] }, Step::cylinder(0.01, 0.09, 0.06)];
    let profile = Profile::new(&cone).expect("sound");
    let mesh = Mesh::new(&profile, &BAND, &[], density).expect("small");
    let stiffness = Stiffness::new(&mesh, &STEEL, &[]).expect("small");
    (mesh, stiffness)
}

/// Root mean square error at the nodes, relative to the displacement, after solving harmonic `n`
/// with the tractions and body force of an exact field.
fn error(
    (mesh, stiffness): &(Mesh, Stiffness),
    n: usize,
    body: impl Fn(f64, f64) -> [f64; 3],
    traction: impl Fn(f64, f64, [f64; 2]) -> [f64; 3],
    exact: impl Fn(f64, f64) -> [f64; 3],
) -> f64 {
    let mut loads = alloc::vec![0.0; stiffness.unknowns()];
    add_body_force(mesh, &stiffness.position, &mut loads, &body);
    for (sides, sign) in [(&mesh.outside, 1.0), (&mesh.bore, -1.0), (&mesh.faces, 0.0)] {
        for side in sides {
            let [p, _, q] = side.map(|k| mesh.nodes[k]);
            let length = libm::hypot(q[0] - p[0], q[1] - p[1]);
            let normal = if sign == 0.0 {
                // The front faces -z; the end, and the shoulder in the bore, face +z.
                [0.0, if p[1] == 0.0 { -1.0 } else { 1.0 }]
            } else {
                [sign * (q[1] - p[1]) / length, -sign * (q[0] - p[0]) / length]
            };
            add_traction(mesh, side, &stiffness.position, &mut loads, |r, z| traction(r, z, normal));
        }
    }
    stiffness.factor(n).expect("regular").solve(&mut loads, 1);
    let drift = |node: usize| loads[3 * stiffness.position[node] + 2];
    let mut wrong = 0.0;
    let mut all = 0.0;
    // Harmonic 0 leaves the part free to slide along z: compare after removing that.
    let slide = if n == 0 { exact(mesh.nodes[0][0], mesh.nodes[0][1])[2] - drift(0) } else { 0.0 };
    for (node, &[r, z]) in mesh.nodes.iter().enumerate() {
        for (a, wanted) in exact(r, z).into_iter().enumerate() {
            let got = loads[3 * stiffness.position[node] + a] + if a == 2 { slide } else { 0.0 };
            wrong += (got - wanted) * (got - wanted);
            all += wanted * wanted;
        }
    }
    libm::sqrt(wrong / all)
}

#[test]
fn patch_fields_are_exact() {
    // Linear fields lie in the elements, whatever their shape.
    // Pure shear in the plane, `x = r cos t, y = -r sin t` of `u = (x, -y)`, is harmonic 2.
    let (_, mu) = STEEL.lame();
    let tube = tube(1.0);
    let e =
        error(&tube, 2, |_, _| [0.0; 3], |_, _, [m_r, _]| [2.0 * mu * m_r, -2.0 * mu * m_r, 0.0], |r, _| [r, -r, 0.0]);
    assert!(e < 1e-9, "pure shear: error {e:e} should be rounding");
    let stretch = Radial { n: 0, a: 1.0, b: 0.0 };
    let e = error(
        &tube,
        0,
        |r, z| stretch.body_force(r, z),
        |r, z, m| stretch.traction(r, z, m),
        |r, z| stretch.displacement(r, z),
    );
    assert!(e < 1e-9, "uniform radial stretch: error {e:e} should be rounding");
}

#[test]
fn a_manufactured_solution_converges_at_third_order_in_every_harmonic() {
    let [default, coarse, fine] = [1.0, 1.3, 2.2].map(tube);
    // Element length goes as the root of their number over the same profile.
    let [few, many] = [&coarse, &fine].map(|tube| tube.0.elements.len() as f64);
    let lengths = libm::log(many / few) / 2.0;
    for n in [0, 2, 3, 6, 30] {
        let field = Radial { n, a: 4.0, b: 3.0 };
        let at = |tube: &(Mesh, Stiffness)| {
            error(
                tube,
                n,
                |r, z| field.body_force(r, z),
                |r, z, m| field.traction(r, z, m),
                |r, z| field.displacement(r, z),
            )
        };
        let (first, second, third) = (at(&default), at(&coarse), at(&fine));
        let order = libm::log(second / third) / lengths;
        assert!(first < 1e-3, "harmonic {n}: error at default {first:e}");
        assert!(order >= 3.0, "harmonic {n}: observed order {order}, {second:e} to {third:e}");
    }
}

#[test]
fn every_solution_balances_its_load() {
    // A thin cup, a pressure on its outside: internal forces equal the load at every unknown, and
    // for n = 0 the reaction at the one held axial motion vanishes.
    let cup = [Step::cylinder(0.004, 0.1, 0.0), Step::cylinder(0.04, 0.1, 0.096)];
    let mesh = Mesh::new(&Profile::new(&cup).expect("sound"), &BAND, &[], 1.0).expect("small");
    let stiffness = Stiffness::new(&mesh, &STEEL, &[]).expect("small");
    for n in [0, 2, 3, 30, 90] {
        let mut loads = alloc::vec![0.0; stiffness.unknowns()];
        for side in &mesh.outside {
            add_traction(&mesh, side, &stiffness.position, &mut loads, |_, z| [z, 0.0, 0.0]);
        }
        let mut moved = loads.clone();
        stiffness.factor(n).expect("regular").solve(&mut moved, 1);
        let forces = stiffness.forces(n, &moved);
        let on_axis = |unknown: usize| {
            mesh.nodes.iter().enumerate().any(|(node, at)| at[0] == 0.0 && stiffness.position[node] == unknown / 3)
        };
        let (mut wrong, mut all) = (0.0, 0.0);
        for (unknown, (got, wanted)) in forces.iter().zip(&loads).enumerate() {
            // Forces on the axis are the reactions of what symmetry holds there.
            if !on_axis(unknown) || (n == 0 && unknown % 3 == 2) {
                wrong += (got - wanted) * (got - wanted);
                all += wanted * wanted;
            }
        }
        let error = libm::sqrt(wrong / all);
        // The thinnest elements, at the floor, leave nine digits.
        assert!(error < 1e-8, "order {n}: {error:e}");
    }
}
