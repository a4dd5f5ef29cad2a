//! The limit problem of one load, bracketed from both sides.
//!
//! `min sum c_i |A_i v|` over `w.v = 1` and `S v >= 0` is a second-order cone
//! programme in six unknowns. See [`interior`](super::interior) for the method;
//! whatever point it stands at, [`Problem::upper_bound`] and
//! [`Problem::lower_bound`] turn into a motion and into forces in equilibrium.
//!
//! Unknowns are scaled: velocities at the friction's centre, rotations times
//! the contact's mean distance from it, friction over its sum, a load of unit
//! length.

use super::interior::Point;
use super::matrix::{Cholesky, Symmetric, add, dot6, lift_of, push, scale, transposed};
use super::motion::{Motion, dot};
use super::{Centre, ContactPoint, LateralSupport, Seat};
use crate::cutting::{Wrench, cross};
use alloc::vec::Vec;

/// A scaled hold factor from which the load counts as borne by the seat.
const BORNE_BY_SEAT: f64 = 1e3;
/// A load smaller than this share of the friction is rounding.
const NEGLIGIBLE: f64 = 1e-12;
const MOST_STEPS: usize = 60;
/// The same from another load's point: most take a third of these.
const MOST_RESUMED: usize = 20;
/// Width of the bracket at which a point is still far enough from the cones' boundaries to begin another load from:
/// the solution itself lies on them. Anything from a hundredth to one serves (measured).
const CENTRAL: f64 = 0.3;

/// When to stop.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Goal {
    /// Width of the bracket over its upper end.
    pub(crate) gap: f64,
    /// A factor above which the exact value is of no interest.
    pub(crate) enough: f64,
}

/// The bracket of a final answer.
pub(crate) const FINE: Goal = Goal { gap: 1e-7, enough: f64::INFINITY };

/// Answer of the limit problem.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Slip {
    NothingToHold,
    CarriedBySeat,
    /// No motion that the seat allows was found, nor that there is none.
    Unsettled,
    /// Factor bracketed; the scaled velocity that shows the upper end.
    At {
        lower: f64,
        upper: f64,
        velocity: [f64; 6],
    },
}

/// A contact point: two tangential velocities as rows, and its friction.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Contact {
    pub(crate) rows: [[f64; 6]; 2],
    pub(crate) friction: f64,
}

impl Contact {
    pub(crate) fn slip(&self, v: &[f64; 6]) -> [f64; 2] {
        [dot6(&self.rows[0], v), dot6(&self.rows[1], v)]
    }
}

/// Contacts and seat, scaled, without the load.
#[derive(Debug, Clone)]
pub(crate) struct Problem {
    pub(crate) contacts: Vec<Contact>,
    /// Rows that give the lift of the part off each seat point.
    pub(crate) seat: Vec<[f64; 3]>,
    centre: [f64; 3],
    length: f64,
    /// All that resists: friction, and what a centre bears across and along.
    resistance: f64,
    support: LateralSupport,
    /// `sum c A^T A`: spreads a residual over the contacts.
    spread: Cholesky,
}

/// Centre of the normal forces, their mean distance from it, and their sum.
fn extent(contacts: &[ContactPoint]) -> ([f64; 3], f64, f64) {
    let sum: f64 = contacts.iter().map(|c| c.normal_force).sum();
    let share = |c: &ContactPoint| if sum > 0.0 { c.normal_force / sum } else { 0.0 };
    let centre: [f64; 3] = core::array::from_fn(|k| contacts.iter().map(|c| share(c) * c.position[k]).sum());
    let square: f64 = contacts
        .iter()
        .map(|c| {
            let arm = core::array::from_fn(|k| c.position[k] - centre[k]);
            share(c) * dot(arm, arm)
        })
        .sum();
    (centre, crate::sqrt(square), sum)
}

/// See [`Clamped::imbalance`](super::Clamped::imbalance).
pub(crate) fn imbalance(contacts: &[ContactPoint]) -> f64 {
    let (centre, distance, sum) = extent(contacts);
    if sum == 0.0 {
        return 0.0;
    }
    let (mut force, mut moment) = ([0.0; 3], [0.0; 3]);
    for contact in contacts {
        let normal = contact.normal.map(|n| n * contact.normal_force);
        let turning = cross(core::array::from_fn(|k| contact.position[k] - centre[k]), normal);
        for k in 0..3 {
            force[k] += normal[k];
            moment[k] += turning[k];
        }
    }
    let force = crate::sqrt(dot(force, force)) / sum;
    let moment = if distance > 0.0 { crate::sqrt(dot(moment, moment)) / (sum * distance) } else { 0.0 };
    force.max(moment)
}

/// Two unit vectors square to a unit normal and to each other.
fn tangents(normal: [f64; 3]) -> [[f64; 3]; 2] {
    let least = if normal[0].abs() < 0.6 { [1.0, 0.0, 0.0] } else { [0.0, 1.0, 0.0] };
    let first = cross(normal, least);
    let length = crate::sqrt(dot(first, first));
    let first = first.map(|x| x / length);
    [first, cross(normal, first)]
}

impl Problem {
    /// None where there is no friction.
    pub(crate) fn new(
        contacts: &[ContactPoint],
        friction: f64,
        seat: Option<&Seat>,
        support: LateralSupport,
        centre_point: Option<&Centre>,
    ) -> Option<Self> {
        let (centre, distance, sum) = extent(contacts);
        let of_grip = friction * sum;
        if !(of_grip > 0.0 && of_grip.is_finite()) {
            return None;
        }
        let resistance = of_grip + centre_point.map_or(0.0, |point| point.bears_across() + point.thrust);
        let length = if distance > 0.0 { distance } else { 1.0 };
        let row = |direction: [f64; 3], position: [f64; 3]| {
            let arm = core::array::from_fn(|k| (position[k] - centre[k]) / length);
            let turning = cross(arm, direction);
            let [x, y, z] = support.borne_by_friction(direction);
            [x, y, z, turning[0], turning[1], turning[2]]
        };
        let mut contacts: Vec<Contact> = contacts
            .iter()
            .filter(|contact| contact.normal_force > 0.0)
            .map(|contact| Contact {
                rows: tangents(contact.normal).map(|tangent| row(tangent, contact.position)),
                friction: contact.normal_force / sum * (of_grip / resistance),
            })
            .collect();
        // A centre resists as two contacts do: across the axis up to what its point bears, and along it up to its
        // thrust. The seat lets no part of the axis go the other way, where the thrust would help instead.
        if let Some(point) = centre_point {
            let at = [0.0, 0.0, point.z];
            let across = [row([1.0, 0.0, 0.0], at), row([0.0, 1.0, 0.0], at)];
            let along = [row([0.0, 0.0, 1.0], at), [0.0; 6]];
            contacts.push(Contact { rows: across, friction: point.bears_across() / resistance });
            contacts.push(Contact { rows: along, friction: point.thrust / resistance });
        }
        let lift = |point: &[f64; 3]| {
            let [_, _, along, tilt, across, _] = row([0.0, 0.0, 1.0], *point);
            [along, tilt, across]
        };
        let seat = seat.map_or_else(Vec::new, |seat| seat.points().iter().map(lift).collect());
        let mut spread = Symmetric::tiny();
        for contact in &contacts {
            spread.add_rows(&contact.rows, contact.friction, 0.0, contact.friction);
        }
        let spread = spread.factor();
        Some(Self { contacts, seat, centre, length, resistance, support, spread })
    }

    /// Centre of the normal forces in m.
    pub(crate) fn centre(&self) -> [f64; 3] {
        self.centre
    }

    /// The velocity at the chuck's origin of a scaled velocity at the centre,
    /// per W of load.
    pub(crate) fn motion(&self, scaled: &[f64; 6]) -> Motion {
        let [x, y, z, a, b, c] = *scaled;
        let rotation = [a, b, c].map(|w| w / self.length);
        let turned = cross(rotation, self.centre);
        Motion { velocity: [x - turned[0], y - turned[1], z - turned[2]], rotation }
    }

    fn scaled_load(&self, load: &Wrench) -> [f64; 6] {
        let moved = cross(self.centre, load.force);
        let [x, y, z] = self.support.borne_by_friction(load.force);
        let moment: [f64; 3] = core::array::from_fn(|k| (load.moment[k] - moved[k]) / self.length);
        [x, y, z, moment[0], moment[1], moment[2]]
    }

    /// Power of a load in W on a scaled velocity.
    pub(crate) fn power(&self, load: &Wrench, scaled: &[f64; 6]) -> f64 {
        dot6(&self.scaled_load(load), scaled)
    }

    /// Brackets the hold factor of one load, starting from a point on the way to
    /// another load's solution if there is one, and leaving one of this load's.
    pub(crate) fn solve(&self, load: &Wrench, near: &mut Option<Point>, goal: Goal) -> Slip {
        let load = self.scaled_load(load);
        let size = crate::sqrt(dot6(&load, &load));
        if size <= NEGLIGIBLE * self.resistance {
            return Slip::NothingToHold;
        }
        if !size.is_finite() {
            return Slip::Unsettled;
        }
        let unit = self.resistance / size;
        let load = scale(&load, 1.0 / size);
        let (mut upper, mut best) = self.upper_bound(&load, &plain_motion(&load));
        let mut lower = 0.0;
        if !self.seat.is_empty() {
            let beside = beside_seat(&load);
            let tip = self.tip(&load);
            if tip.is_none() {
                lower = self.viscous_bound(&beside);
            }
            if lower > BORNE_BY_SEAT {
                return Slip::CarriedBySeat;
            }
            for trial in [Some(beside), tip].iter().flatten() {
                let (cost, shown) = self.upper_bound(&load, trial);
                if cost < upper {
                    (upper, best) = (cost, shown);
                }
            }
        }
        let last = near.take().and_then(|last| resumed(last, &load));
        let mut resuming = last.is_some();
        let mut point = last.unwrap_or_else(|| self.start(&load, &best));
        let mut central = None;
        let mut steps = 0;
        loop {
            let moved = point.step(self, &load);
            steps += 1;
            lower = self.lower_bound(&load, &point).max(lower);
            let (cost, shown) = self.upper_bound(&load, &point.velocity);
            if cost < upper {
                (upper, best) = (cost, shown);
            }
            if lower > BORNE_BY_SEAT {
                return Slip::CarriedBySeat;
            }
            let within = |gap: f64| upper.is_finite() && upper - lower <= gap * upper;
            if central.is_none() && within(CENTRAL) {
                central = Some(point.clone());
            }
            if within(goal.gap) || lower * unit > goal.enough {
                break;
            }
            if moved && steps < if resuming { MOST_RESUMED } else { MOST_STEPS } {
                continue;
            }
            // From the point of another load there may be no way on.
            if !resuming {
                break;
            }
            (point, central, steps, resuming) = (self.start(&load, &best), None, 0, false);
        }
        if !upper.is_finite() {
            return Slip::Unsettled;
        }
        *near = central.or(Some(point));
        let velocity = scale(&best, 1.0 / size);
        Slip::At { lower: lower.min(upper) * unit, upper: upper * unit, velocity }
    }

    /// A first point: the motion of a viscous contact, or `trial` where the seat stops that.
    fn start(&self, load: &[f64; 6], trial: &[f64; 6]) -> Point {
        let (cost, softest) = self.upper_bound(load, &self.spread.solve(load));
        self.clear_of_seat(load, if cost.is_finite() { &softest } else { trial })
    }

    /// A first point at a motion of unit load power that the seat allows, lifted
    /// off the seat by as much as leaves at least half of that power: one that
    /// dips into the seat may never find its way out of it.
    fn clear_of_seat(&self, load: &[f64; 6], motion: &[f64; 6]) -> Point {
        if self.seat.is_empty() {
            return Point::new(self, *motion, 0.0);
        }
        let most = if load[2] < 0.0 { -0.5 / load[2] } else { f64::INFINITY };
        let clearance = crate::sqrt(dot6(motion, motion)).min(most);
        let mut lifted = *motion;
        lifted[2] += clearance;
        let power = dot6(load, &lifted);
        Point::new(self, scale(&lifted, 1.0 / power), clearance / power)
    }

    /// The tip about an edge of the seat on which thrust and tilt work most.
    /// None where they press on the seat within its edges: every lift and tilt
    /// that the seat allows is a sum of such tips.
    fn tip(&self, load: &[f64; 6]) -> Option<[f64; 6]> {
        let [_, _, thrust, tilt, across, _] = *load;
        let (mut most, mut best) = (NEGLIGIBLE, None);
        for (a, b) in self.seat.iter().zip(self.seat.iter().cycle().skip(1)) {
            let tip = cross(*a, *b);
            let power = dot(tip, [thrust, tilt, across]) / crate::sqrt(dot(tip, tip));
            if power > most {
                (most, best) = (power, Some([0.0, 0.0, tip[0], tip[1], tip[2], 0.0]));
            }
        }
        best
    }

    fn friction_cost(&self, v: &[f64; 6]) -> f64 {
        self.contacts
            .iter()
            .map(|contact| {
                let z = contact.slip(v);
                contact.friction * crate::sqrt(z[0] * z[0] + z[1] * z[1])
            })
            .sum()
    }

    /// Cost per unit of load power of the velocity, lifted clear of the seat
    /// where it dips into it; and that velocity at unit load power.
    fn upper_bound(&self, load: &[f64; 6], v: &[f64; 6]) -> (f64, [f64; 6]) {
        let mut lifted = *v;
        lifted[2] += self.seat.iter().fold(0.0_f64, |dip, row| dip.max(-lift_of(row, v)));
        let power = dot6(load, &lifted);
        if power > 0.0 {
            (self.friction_cost(&lifted) / power, scale(&lifted, 1.0 / power))
        } else {
            (f64::INFINITY, *v)
        }
    }

    /// The largest multiple of a load that friction balances where each contact
    /// resists as if viscous.
    fn viscous_bound(&self, load: &[f64; 6]) -> f64 {
        let share = self.spread.solve(load);
        let mut residual = *load;
        let mut worst = 0.0_f64;
        for contact in &self.contacts {
            let slip = contact.slip(&share);
            worst = worst.max(crate::sqrt(slip[0] * slip[0] + slip[1] * slip[1]));
            residual = add(&residual, &scale(&transposed(&contact.rows, slip), -contact.friction));
        }
        // As in `lower_bound`; no load at all is balanced by nothing.
        let balanced = dot6(&residual, &residual) <= 1e-20 * dot6(load, load);
        if balanced { 1.0 / worst } else { 0.0 }
    }

    /// The largest multiple of the load shown to be in equilibrium: what is left
    /// over is spread over the contacts in proportion to their friction, then
    /// all is scaled down until no contact bears more than its friction.
    fn lower_bound(&self, load: &[f64; 6], point: &Point) -> f64 {
        let multiple = point.multiple;
        let mut residual = scale(load, multiple);
        for (contact, cone) in self.contacts.iter().zip(&point.cones) {
            residual = add(&residual, &scale(&transposed(&contact.rows, cone.force), -1.0));
        }
        for (row, ray) in self.seat.iter().zip(&point.rays) {
            push(&mut residual, row, ray.force);
        }
        let share = self.spread.solve(&residual);
        let mut worst = 1.0_f64;
        for (contact, cone) in self.contacts.iter().zip(&point.cones) {
            let c = contact.friction;
            let extra = contact.slip(&share).map(|x| c * x);
            let (x, y) = (cone.force[0] + extra[0], cone.force[1] + extra[1]);
            worst = worst.max(crate::sqrt(x * x + y * y) / c);
            residual = add(&residual, &scale(&transposed(&contact.rows, extra), -1.0));
        }
        // Contacts that cannot resist in some direction leave a remainder.
        let balanced = dot6(&residual, &residual) < 1e-20 * multiple * multiple;
        if balanced && multiple > 0.0 { multiple / worst } else { 0.0 }
    }
}

/// The point of another load at unit power of this one, if this one does work enough on it.
fn resumed(mut last: Point, load: &[f64; 6]) -> Option<Point> {
    let power = dot6(load, &last.velocity);
    if power <= 0.1 * crate::sqrt(dot6(&last.velocity, &last.velocity)) {
        return None;
    }
    last.hasten(1.0 / power);
    Some(last)
}

/// A load but for the thrust and tilt that a seat can bear.
fn beside_seat(load: &[f64; 6]) -> [f64; 6] {
    [load[0], load[1], 0.0, 0.0, 0.0, load[5]]
}

/// The load itself as a motion, but for its thrust on the seat.
fn plain_motion(load: &[f64; 6]) -> [f64; 6] {
    let mut motion = *load;
    motion[2] = motion[2].max(0.0);
    motion
}
