//! A centre in the tail end of the part.

use super::motion::{Motion, dot};
use core::f64::consts::FRAC_PI_6;

/// A live centre: it presses the part on its seat with a thrust that stays, holds it across the axis up to
/// [`Centre::bears_across`], and turns with it, so that it takes no torque.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Centre {
    /// Where its point sits on the axis, m from the jaws' front faces; positive.
    pub z: f64,
    /// Its thrust in N; positive.
    pub thrust: f64,
}

impl Centre {
    /// Half the angle of the point in rad: 60° over all (ISO 866 and ISO 2541, form A centre holes; from memory).
    pub const HALF_ANGLE: f64 = FRAC_PI_6;

    /// The push across the axis in N at which the far side of the hole comes off the point.
    ///
    /// A cone pressed and pushed bears with `1 + cos` around it there: the push is the thrust over twice the tangent
    /// of half the angle (by statics, no friction on the point). Beyond, it can grow to twice that while the part
    /// moves, which is not counted.
    #[must_use]
    pub fn bears_across(&self) -> f64 {
        self.thrust / (2.0 * libm::tan(Self::HALF_ANGLE))
    }

    /// Power in W that it costs to move the part like this: lifting it off the seat against the thrust, and moving it
    /// across against what the point bears.
    pub(super) fn cost(&self, motion: &Motion) -> f64 {
        let [x, y, z] = motion.velocity_at([0.0, 0.0, self.z]);
        self.thrust * z.abs() + self.bears_across() * libm::sqrt(dot([x, y, 0.0], [x, y, 0.0]))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cutting::Wrench;
    use crate::hold::tests::{close, grip, limit, seated, two_rings};
    use crate::hold::{Clamped, HoldError, LateralSupport, Seat};
    use core::f64::consts::{PI, TAU};

    const CENTRE: Centre = Centre { z: 0.12, thrust: 1500.0 };

    #[test]
    fn the_push_is_that_of_a_cone_that_bears_with_one_plus_cosine() {
        // Pressure on a band of a cone, summed around it: along the axis by the sine of half the angle, across by the
        // cosine. Nil on the far side, so that any greater push lifts it off there.
        let (mut along, mut across) = (0.0, 0.0);
        for k in 0..360 {
            let around = TAU * f64::from(k) / 360.0;
            let pressure = 1.0 + libm::cos(around);
            along += pressure * libm::sin(PI / 6.0);
            across += pressure * libm::cos(PI / 6.0) * libm::cos(around);
        }
        let ratio = CENTRE.bears_across() / CENTRE.thrust;
        // Rounding alone: an even sum over a full turn is exact for a cosine.
        assert!((ratio - across / along).abs() < 1e-12, "{ratio}, not {}", across / along);
    }

    #[test]
    fn it_takes_no_torque() {
        let part = seated(20_000.0, 0.1).centred(CENTRE).unwrap();
        close(limit(&part, [0.0; 3], [0.0, 0.0, 50.0]).factor, 2.0, "mu F d / 2 over 50 N m");
    }

    #[test]
    fn a_pull_must_overcome_friction_and_thrust() {
        let part = seated(20_000.0, 0.1).centred(CENTRE).unwrap();
        let pulled = limit(&part, [0.0, 0.0, 500.0], [0.0; 3]);
        close(pulled.factor, (0.1 * 20_000.0 + 1500.0) / 500.0, "mu F + T over the pull");
        close(pulled.upper, pulled.factor, "and the motion shows it");
    }

    // Tipping about the edge of a seat, by hand: the points slip along their jaws by the hypotenuse of half the grip
    // length and the seat's radius, the axis rises by that radius against the thrust, and the centre is carried across
    // by its distance from the middle of the grip.
    #[test]
    fn a_tilt_is_shared_by_friction_thrust_and_the_push_it_bears() {
        let (friction, ring, half) = (0.2, 0.03, 0.015);
        let free = two_rings(0.04, 2.0 * half, friction);
        let seat = Some(Seat { radius: ring, z: -2.0 * half });
        let part = Clamped::new(&free.contacts, friction, seat).unwrap().supported(LateralSupport::Jaws);
        let part = part.centred(CENTRE).unwrap();
        let borne = friction * 4000.0 * libm::hypot(half, ring)
            + 1500.0 * ring
            + 1500.0 / (2.0 * libm::tan(PI / 6.0)) * (0.12 + half);
        close(limit(&part, [0.0; 3], [100.0, 0.0, 0.0]).factor, borne / 100.0, "tilt");
    }

    #[test]
    fn jaws_and_centre_share_a_push_as_supports_of_a_beam() {
        let part = Clamped::new(&grip(20_000.0).contacts(5, 3).unwrap(), 0.1, Some(Seat { radius: 0.04, z: -0.03 }));
        let part = part.unwrap().centred(CENTRE).unwrap();
        // The middle of the grip is at -15 mm, the centre 135 mm from it.
        let at = |z: f64| part.across(&Wrench::of_force_at([0.0, -300.0, 0.0], [0.05, 0.0, z]));
        assert!((at(0.03) - 300.0).abs() < 1e-9, "the jaws may have to bear all of it: {}", at(0.03));
        // 600 N along the axis at 50 mm tilt by 30 N m, 222.2 N at 135 mm.
        let along = part.across(&Wrench::of_force_at([-300.0, 0.0, -600.0], [0.05, 0.0, -0.015]));
        assert!((along - (300.0 + 30.0 / 0.135)).abs() < 1e-9, "and what tilts adds to it: {along}");
    }

    #[test]
    fn without_a_seat_a_thrust_or_room_it_is_refused() {
        let free = Clamped::new(&grip(20_000.0).contacts(5, 3).unwrap(), 0.1, None).unwrap();
        assert_eq!(free.centred(CENTRE).unwrap_err(), HoldError::Centre, "nothing to press on");
        for (z, thrust) in [(0.12, 0.0), (0.12, f64::NAN), (-0.01, 1500.0), (1e4, 1500.0)] {
            let refused = seated(20_000.0, 0.1).centred(Centre { z, thrust });
            assert_eq!(refused.unwrap_err(), HoldError::Centre, "{z} m, {thrust} N");
        }
    }
}
