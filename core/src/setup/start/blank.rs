//! Where screws and gripping face of an assumed jaw lie, so that it stands on its master jaw.
//!
//! The T-nut must stay on the master jaw, and the gripping face clear of the screws. Small rounds from outside and
//! large ones from inside have both screws in the jaw's body, behind the face. At the other end both lie below the
//! seat, under the part; between, the face stands between them, and they are farther apart. Common practice, no source.

/// What the sizes of an assumed jaw hang on, m.
pub(super) struct Around {
    /// Whether the part is gripped from inside.
    pub(super) inside: bool,
    /// Radius gripped.
    pub(super) radius: f64,
    /// Radius of the chuck body.
    pub(super) body: f64,
    /// Width of the jaw.
    pub(super) width: f64,
    /// Width of seat that would do.
    pub(super) step: f64,
    /// Length of jaw that would do.
    pub(super) length: f64,
    /// Ends of the master jaw's serrated face, from the axis, when closed.
    pub(super) face: [f64; 2],
    /// Travel of the master jaw.
    pub(super) stroke: f64,
    /// Length of a T-nut.
    pub(super) nut: f64,
    /// From screw to screw.
    pub(super) apart: f64,
    /// From the gripping end to the nearer screw, if nothing is in the way.
    pub(super) near: f64,
    /// Diameter of the counterbores.
    pub(super) counterbore: f64,
    /// Least metal beside one.
    pub(super) wall: f64,
}

/// Sizes of an assumed jaw, m.
pub(super) struct JawSizes {
    pub(super) length: f64,
    pub(super) step: f64,
    pub(super) near_screw: f64,
    pub(super) far_screw: f64,
    pub(super) nut: f64,
    /// Whether a screw lies below the seat, which then must leave room for its head.
    pub(super) covers: bool,
}

/// Metal behind a face that stands beyond or between the screws, as a share of the chuck's radius.
const BEHIND: f64 = 0.16;

impl Around {
    pub(super) fn sizes(&self) -> JawSizes {
        // What is assumed is rounded, and a tooth is not where one would have it to the millimetre.
        let reach = self.counterbore / 2.0 + 1.5 * self.wall;
        let asunder = self.apart.max(2.0 * reach);
        let longer = self.nut + asunder - self.apart;
        let beside = self.apart / 2.0 + reach;
        let outward = if self.inside { -1.0 } else { 1.0 };
        let [behind, under] = [1.0, -1.0].map(|way| self.radius + way * outward * beside);
        let on_master = |nut: f64, middle: f64| {
            let [low, high] = self.room(nut);
            if self.inside { middle >= low } else { middle <= high }
        };
        if on_master(self.nut, behind) {
            self.before_screws(reach)
        } else if self.stays(longer, self.radius) {
            self.on_screws(self.radius, asunder, longer, reach)
        } else {
            let [low, high] = self.room(self.nut);
            let below = self.on_screws(under.max(low).min(high), self.apart, self.nut, reach);
            // In a chuck far too large for the bore hardly anything would be left to grip with.
            if below.length > 1.1 * below.step { below } else { self.before_screws(reach) }
        }
    }

    /// Between which radii the middle of a T-nut can lie while the jaws stand in the middle of their stroke.
    fn room(&self, nut: f64) -> [f64; 2] {
        let [from, to] = self.face;
        [from + nut / 2.0 + 0.8 * self.stroke, to.min(self.body - self.stroke) - nut / 2.0]
    }

    fn stays(&self, nut: f64, middle: f64) -> bool {
        let [low, high] = self.room(nut);
        (low..=high).contains(&middle)
    }

    /// Both screws behind the gripping face, as far behind as the master jaw asks for.
    fn before_screws(&self, reach: f64) -> JawSizes {
        let [low, high] = self.room(self.nut);
        let back = if self.inside { self.radius + self.step - high } else { low - self.radius + self.step };
        let past = self.apart + self.counterbore / 2.0 + self.wall;
        let longest = self.longest(self.step);
        let asked = self.near.max((back - self.apart / 2.0).min(longest - past));
        let near_screw = asked.max((self.step + reach).min(self.length - past));
        JawSizes {
            length: self.length.max((near_screw + past).min(longest)),
            step: self.step,
            near_screw,
            far_screw: near_screw + self.apart,
            nut: self.nut,
            covers: false,
        }
    }

    /// One screw or both below the seat: the gripping end lies beyond the nearer one.
    fn on_screws(&self, middle: f64, apart: f64, nut: f64, reach: f64) -> JawSizes {
        let beyond = if self.inside { middle - self.radius } else { self.radius - middle };
        let step = beyond + apart / 2.0 + reach;
        let near_screw = reach;
        let far_screw = near_screw + apart;
        let length = (step + BEHIND * self.body).max(far_screw + reach).min(self.longest(step));
        JawSizes { length, step, near_screw, far_screw, nut, covers: true }
    }

    /// The longest jaw that does not meet its neighbours at the axis. Written in two figures, a step may lose a tenth.
    fn longest(&self, step: f64) -> f64 {
        if self.inside { self.radius + 0.9 * step - 0.7 * self.width } else { f64::INFINITY }
    }
}
