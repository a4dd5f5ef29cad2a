//! Primal-dual interior-point steps for the limit problem.
//!
//! Each contact is a pair of points of the second-order cone: slip
//! `(sigma, z)` with `|z| <= sigma`, and friction `(c, -t)` with `|t| <= c`.
//! Each seat point is a pair of numbers: lift and push. Steps follow Nesterov &
//! Todd's scaling with Mehrotra's choice of centring (Vandenberghe, *The CVXOPT
//! linear and quadratic cone program solvers*, 2010; Nocedal & Wright, ch. 14;
//! both from memory). The cone's first dual entry `c` is given, which leaves a
//! 2 x 2 block for each contact and a 6 x 6 system in all.

use super::limit::{Contact, Problem};
use super::matrix::{Symmetric, add, dot6, lift_of, push, scale, transposed};
use alloc::vec::Vec;

/// Share of the way to the cone's boundary that is taken. A larger one leaves the
/// central path, and takes more steps or stalls at a gap of 1e-6 (measured).
const SHARE: f64 = 0.9;
/// A step shorter than this gets nowhere.
const LEAST_SHARE: f64 = 1e-3;

/// Where the method stands.
#[derive(Debug, Clone)]
pub(crate) struct Point {
    /// Scaled velocity of the part.
    pub(crate) velocity: [f64; 6],
    /// Multiple of the load that the forces balance, as far as they do.
    pub(crate) multiple: f64,
    /// One to a contact.
    pub(crate) cones: Vec<Cone>,
    /// One to a seat point.
    pub(crate) rays: Vec<Ray>,
}

/// Slip and friction at a contact.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cone {
    /// `sigma`, a bound on the speed of slip.
    speed: f64,
    slip: [f64; 2],
    /// Friction on the jaw: along the slip.
    pub(crate) force: [f64; 2],
    /// Determinants of slip and of friction.
    slip_det: f64,
    force_det: f64,
    /// Nesterov-Todd scaling: its size and unit vector.
    eta: f64,
    scaling: [f64; 3],
    /// Inverse of the tail of the squared scaling, a symmetric 2 x 2:
    /// `(I - 2 w w^T / (1 + 2 |w|^2)) / eta^2`.
    block: [f64; 3],
    /// Centring target of the slip.
    target: [f64; 3],
    step: ConeStep,
}

/// Step of a [`Cone`].
#[derive(Debug, Clone, Copy, Default)]
struct ConeStep {
    speed: f64,
    slip: [f64; 2],
    force: [f64; 2],
}

/// Lift and push at a seat point.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ray {
    lift: f64,
    /// Push on the part.
    pub(crate) force: f64,
    target: f64,
    step: (f64, f64),
}

fn dot2(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

fn along(start: [f64; 2], step: [f64; 2], share: f64) -> [f64; 2] {
    [start[0] + share * step[0], start[1] + share * step[1]]
}

/// `head^2 - |tail|^2` without cancellation of squares.
fn determinant(head: f64, tail: [f64; 2]) -> f64 {
    let length = crate::sqrt(dot2(tail, tail));
    (head - length) * (head + length)
}

/// The longest step that stays in the cone, at most 1 / SHARE, from a point of determinant `c`.
fn longest(c: f64, head: f64, tail: [f64; 2], dhead: f64, dtail: [f64; 2]) -> f64 {
    let a = dhead * dhead - dot2(dtail, dtail);
    let b = head * dhead - dot2(tail, dtail);
    let most = 1.0 / SHARE;
    // Least positive root of c + 2 b x + a x^2.
    let root = b * b - a * c;
    if root < 0.0 || (a >= 0.0 && b >= 0.0) {
        return most;
    }
    let divisor = crate::sqrt(root) - b;
    if divisor > 0.0 { (c / divisor).min(most) } else { most }
}

impl Cone {
    /// On the central path at complementarity `mu` with the given slip.
    fn central(slip: [f64; 2], friction: f64, mu: f64) -> Self {
        let half = mu / (2.0 * friction);
        let speed = half + crate::sqrt(half * half + dot2(slip, slip));
        Self {
            speed,
            slip,
            force: slip.map(|z| friction * z / speed),
            slip_det: 1.0,
            force_det: 1.0,
            eta: 1.0,
            block: [1.0, 0.0, 1.0],
            scaling: [1.0, 0.0, 0.0],
            target: [0.0; 3],
            step: ConeStep::default(),
        }
    }

    fn complementarity(&self, friction: f64) -> f64 {
        self.speed * friction - dot2(self.slip, self.force)
    }

    fn rescale(&mut self, friction: f64) {
        self.slip_det = determinant(self.speed, self.slip);
        self.force_det = determinant(friction, self.force);
        let (slip_size, force_size) = (crate::sqrt(self.slip_det), crate::sqrt(self.force_det));
        let (s, y) = (1.0 / slip_size, 1.0 / force_size);
        let product = s * y * self.complementarity(friction);
        let half = 0.5 / crate::sqrt(0.5 * (1.0 + product));
        self.scaling = [
            half * (self.speed * s + friction * y),
            half * (self.slip[0] * s + self.force[0] * y),
            half * (self.slip[1] * s + self.force[1] * y),
        ];
        let squared = slip_size / force_size;
        self.eta = crate::sqrt(squared);
        let [_, x, y] = self.scaling;
        let inverse = 1.0 / squared;
        let share = 2.0 * inverse / (1.0 + 2.0 * (x * x + y * y));
        self.block = [inverse - share * x * x, -share * x * y, inverse - share * y * y];
        self.step = ConeStep::default();
    }

    /// Force that the block gives for a slip short of its target.
    fn response(&self, short: [f64; 2]) -> [f64; 2] {
        let [a, b, c] = self.block;
        [a * short[0] + b * short[1], b * short[0] + c * short[1]]
    }

    /// The scaling applied to a point of the cone, or (`inverse`) undone.
    fn scaled(&self, point: [f64; 3], inverse: bool) -> [f64; 3] {
        let [head, x, y] = self.scaling;
        let (sign, factor) = if inverse { (-1.0, 1.0 / self.eta) } else { (1.0, self.eta) };
        let across = x * point[1] + y * point[2];
        let shared = sign * point[0] + across / (1.0 + head);
        [factor * (head * point[0] + sign * across), factor * (point[1] + x * shared), factor * (point[2] + y * shared)]
    }

    /// `-s + W (lambda \ (centring e - (W^-1 ds) o (W dy)))`: where the slip
    /// should go, second-order terms of the last step included.
    fn aim(&mut self, friction: f64, centring: f64) {
        let ConeStep { speed, slip, force } = self.step;
        let u = self.scaled([speed, slip[0], slip[1]], true);
        let q = self.scaled([0.0, -force[0], -force[1]], false);
        let right = [
            centring - (u[0] * q[0] + u[1] * q[1] + u[2] * q[2]),
            -(u[0] * q[1] + q[0] * u[1]),
            -(u[0] * q[2] + q[0] * u[2]),
        ];
        let middle = self.scaled([friction, -self.force[0], -self.force[1]], false);
        let tail = [middle[1], middle[2]];
        let head = (middle[0] * right[0] - dot2(tail, [right[1], right[2]])) / determinant(middle[0], tail);
        let quotient = [head, (right[1] - head * tail[0]) / middle[0], (right[2] - head * tail[1]) / middle[0]];
        let toward = self.scaled(quotient, false);
        self.target = [toward[0] - self.speed, toward[1] - self.slip[0], toward[2] - self.slip[1]];
    }

    fn set_step(&mut self, slip: [f64; 2]) {
        let [speed, x, y] = self.target;
        let [head, wx, wy] = self.scaling;
        // The cone's dual tail is minus the friction.
        let tail = self.response([x - slip[0], y - slip[1]]);
        let coupling = 2.0 * self.eta * self.eta * head * (wx * tail[0] + wy * tail[1]);
        self.step = ConeStep { speed: speed - coupling, slip, force: [-tail[0], -tail[1]] };
    }
}

impl Point {
    /// A centred point at the given velocity, which clears the seat by `clearance`; in all it is as far from
    /// complementary as all friction times that speed.
    pub(crate) fn new(problem: &Problem, velocity: [f64; 6], clearance: f64) -> Self {
        let mu = crate::sqrt(dot6(&velocity, &velocity)) / problem.contacts.len() as f64;
        let cone = |contact: &Contact| Cone::central(contact.slip(&velocity), contact.friction, mu);
        let ray = |row: &[f64; 3]| {
            // Rounding alone can take a lift below the clearance.
            let lift = lift_of(row, &velocity).max(clearance);
            Ray { lift, force: mu / lift, target: 0.0, step: (0.0, 0.0) }
        };
        Self {
            velocity,
            multiple: 0.0,
            cones: problem.contacts.iter().map(cone).collect(),
            rays: problem.seat.iter().map(ray).collect(),
        }
    }

    /// Moves `factor` times as fast, under the same forces.
    pub(crate) fn hasten(&mut self, factor: f64) {
        self.velocity = scale(&self.velocity, factor);
        for cone in &mut self.cones {
            cone.speed *= factor;
            cone.slip = cone.slip.map(|z| factor * z);
        }
        self.rays.iter_mut().for_each(|ray| ray.lift *= factor);
    }

    /// Mean complementarity after the given shares of the step.
    fn complementarity(&self, problem: &Problem, primal: f64, dual: f64) -> f64 {
        let cones: f64 = problem
            .contacts
            .iter()
            .zip(&self.cones)
            .map(|(contact, cone)| {
                let slip = along(cone.slip, cone.step.slip, primal);
                let force = along(cone.force, cone.step.force, dual);
                (cone.speed + primal * cone.step.speed) * contact.friction - dot2(slip, force)
            })
            .sum();
        let rays: f64 =
            self.rays.iter().map(|ray| (ray.lift + primal * ray.step.0) * (ray.force + dual * ray.step.1)).sum();
        (cones + rays) / (self.cones.len() + self.rays.len()) as f64
    }

    /// One predictor and corrector step; false if rounding leaves no way on.
    pub(crate) fn step(&mut self, problem: &Problem, load: &[f64; 6]) -> bool {
        let mut hessian = Symmetric::tiny();
        for (contact, cone) in problem.contacts.iter().zip(&mut self.cones) {
            cone.rescale(contact.friction);
            let [a, b, c] = cone.block;
            hessian.add_rows(&contact.rows, a, b, c);
        }
        for (row, ray) in problem.seat.iter().zip(&mut self.rays) {
            ray.step = (0.0, 0.0);
            hessian.add_lift(row, ray.force / ray.lift);
        }
        // The step's part along the load is given; stiffening it changes nothing
        // but the accuracy, for the friction's own stiffness there is nearly nil.
        let stiffness = hessian.trace();
        hessian.add_row(load, stiffness);
        let factor = hessian.factor();
        let unit = factor.solve(load);
        let solve = |right: [f64; 6], velocity: &[f64; 6]| {
            let short = 1.0 - dot6(load, velocity);
            let plain = factor.solve(&add(&right, &scale(load, stiffness * short)));
            let multiple = (short - dot6(load, &plain)) / dot6(load, &unit);
            (add(&plain, &scale(&unit, multiple)), multiple)
        };
        let mu = self.complementarity(problem, 0.0, 0.0);
        let (primal, dual, _, _) = self.aim(problem, None, solve);
        let left = self.complementarity(problem, primal, dual) / mu;
        let centring = mu * (left * left * left).clamp(1e-6, 1.0);
        let (primal, dual, step, multiple) = self.aim(problem, Some(centring), solve);
        let moves = multiple.is_finite() && primal.max(dual) > LEAST_SHARE;
        if moves {
            self.advance(primal, dual, &step, multiple);
        }
        moves
    }

    /// Finds the step toward a centring target, or with none all the way to the
    /// boundary, and how much of it to take in motion and in force.
    fn aim(
        &mut self,
        problem: &Problem,
        centring: Option<f64>,
        solve: impl Fn([f64; 6], &[f64; 6]) -> ([f64; 6], f64),
    ) -> (f64, f64, [f64; 6], f64) {
        let v = self.velocity;
        let mut right = [0.0; 6];
        for (contact, cone) in problem.contacts.iter().zip(&mut self.cones) {
            match centring {
                Some(centring) => cone.aim(contact.friction, centring),
                None => cone.target = [-cone.speed, -cone.slip[0], -cone.slip[1]],
            }
            let z = contact.slip(&v);
            let short = [cone.target[1] - (z[0] - cone.slip[0]), cone.target[2] - (z[1] - cone.slip[1])];
            let tail = cone.response(short);
            let missing = [tail[0] - cone.force[0], tail[1] - cone.force[1]];
            right = add(&right, &transposed(&contact.rows, missing));
        }
        for (row, ray) in problem.seat.iter().zip(&mut self.rays) {
            ray.target = (centring.unwrap_or(0.0) - ray.step.0 * ray.step.1) / ray.force - ray.lift;
            let short = ray.target - (lift_of(row, &v) - ray.lift);
            push(&mut right, row, ray.force + ray.force / ray.lift * short);
        }
        let (step, multiple) = solve(right, &v);
        let (mut primal, mut dual) = (1.0 / SHARE, 1.0 / SHARE);
        for (contact, cone) in problem.contacts.iter().zip(&mut self.cones) {
            let (z, dz) = (contact.slip(&v), contact.slip(&step));
            cone.set_step([dz[0] + z[0] - cone.slip[0], dz[1] + z[1] - cone.slip[1]]);
            let ConeStep { speed, slip, force } = cone.step;
            primal = longest(cone.slip_det, cone.speed, cone.slip, speed, slip).min(primal);
            dual = longest(cone.force_det, contact.friction, cone.force, 0.0, force).min(dual);
        }
        for (row, ray) in problem.seat.iter().zip(&mut self.rays) {
            let lift = lift_of(row, &step) + lift_of(row, &v) - ray.lift;
            let force = ray.force / ray.lift * (ray.target - lift);
            ray.step = (lift, force);
            if lift < 0.0 {
                primal = primal.min(-ray.lift / lift);
            }
            if force < 0.0 {
                dual = dual.min(-ray.force / force);
            }
        }
        (SHARE * primal, SHARE * dual, step, multiple)
    }

    fn advance(&mut self, primal: f64, dual: f64, step: &[f64; 6], multiple: f64) {
        self.velocity = add(&self.velocity, &scale(step, primal));
        self.multiple += dual * (multiple - self.multiple);
        for cone in &mut self.cones {
            let ConeStep { speed, slip, force } = cone.step;
            cone.speed += primal * speed;
            cone.slip = along(cone.slip, slip, primal);
            cone.force = along(cone.force, force, dual);
        }
        for ray in &mut self.rays {
            ray.lift += primal * ray.step.0;
            ray.force += dual * ray.step.1;
        }
    }
}
