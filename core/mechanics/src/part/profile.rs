//! The turned part as a list of steps along its axis.

use crate::quantity::decimal;
use alloc::vec::Vec;
use core::fmt;

use crate::text::Text;

/// Most steps a profile may have.
pub const MAX_STEPS: usize = 200;

/// Thinnest wall covered, as a share of the outer radius. The harmonic elements hold 0.1 % down
/// to here (test `a_wall_of_one_hundred_and_fiftieth_of_the_radius_does_not_lock`); thinner walls
/// are the business of shell and buckling theory.
pub const THINNEST_WALL: f64 = 1.0 / 150.0;

/// Largest diameter accepted, m.
pub const LARGEST_DIAMETER: f64 = 10.0;

/// Differences in radius below this share of the radius are taken as the same radius, because
/// they are beneath any turning tolerance and would make slivers of elements.
const SAME_RADIUS: f64 = 1e-7;

/// One length of the part between two planes across the axis: a cylinder or a cone outside, a
/// cylinder, a cone or nothing (0 = solid) inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Length along the axis, m.
    pub length: f64,
    /// Outer diameter at the start and at the end, m.
    pub outer: [f64; 2],
    /// Inner diameter at the start and at the end, m; 0 means solid there.
    pub inner: [f64; 2],
}

impl Step {
    /// A plain cylinder: `outer` and `inner` are diameters, m.
    pub const fn cylinder(length: f64, outer: f64, inner: f64) -> Self {
        Self { length, outer: [outer, outer], inner: [inner, inner] }
    }
}

/// Why a list of steps is not a part. Steps are counted from 0; messages count from 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ProfileError {
    /// There is no step at all.
    NoSteps,
    /// More than [`MAX_STEPS`] steps.
    TooManySteps {
        /// How many were given.
        count: usize,
    },
    /// A length or diameter is not a finite number, negative, or beyond [`LARGEST_DIAMETER`].
    NotADimension {
        /// The step.
        step: usize,
    },
    /// The length is zero, or too short beside the diameter (below 1/2000 of it) to be meshed.
    NoLength {
        /// The step.
        step: usize,
    },
    /// The inside reaches or crosses the outside.
    Crossed {
        /// The step.
        step: usize,
    },
    /// The wall is thinner than [`THINNEST_WALL`] of the outer radius.
    TooThin {
        /// The step.
        step: usize,
        /// Wall at its thinner end, m.
        wall: f64,
    },
    /// The step does not hang together with the one before it: their end faces share too little
    /// metal (less than the thinnest wall covered).
    Gap {
        /// The later of the two steps.
        step: usize,
    },
}

impl From<&ProfileError> for Text {
    fn from(error: &ProfileError) -> Self {
        match *error {
            ProfileError::NoSteps => Self::of("The part has no steps."),
            ProfileError::TooManySteps { count } => {
                Self::of("The part has {} steps; at most {} are covered.").with(count).with(MAX_STEPS)
            }
            ProfileError::NotADimension { step } => {
                Self::of("Step {}: every length and diameter must be a number from 0 to {} m.")
                    .with(step + 1)
                    .with(Self::number(decimal(LARGEST_DIAMETER, 3)))
            }
            ProfileError::NoLength { step } => Self::of("Step {} has no length to speak of.").with(step + 1),
            ProfileError::Crossed { step } => {
                Self::of("Step {}: the inside reaches the outside, so there is no wall.").with(step + 1)
            }
            ProfileError::TooThin { step, wall } => {
                Self::of("Step {}: a wall of {} mm is thinner than the model covers (1/150 of the radius).")
                    .with(step + 1)
                    .with(Self::number(decimal(wall * 1e3, 3)))
            }
            ProfileError::Gap { step } => {
                Self::of("Step {} does not hang together with step {}.").with(step + 1).with(step)
            }
        }
    }
}

impl fmt::Display for ProfileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for ProfileError {}

/// A part that hangs together: steps from the front (z = 0) along +z.
///
/// ```
/// use holdround_mechanics::part::{Profile, ProfileError, Step};
/// let cup = Profile::new(&[Step::cylinder(0.008, 0.1, 0.0), Step::cylinder(0.04, 0.1, 0.09)])?;
/// assert_eq!(cup.length(), 0.048);
/// let crossed = Profile::new(&[Step::cylinder(0.01, 0.05, 0.06)]);
/// assert_eq!(crossed.unwrap_err(), ProfileError::Crossed { step: 0 });
/// # Ok::<(), ProfileError>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    steps: Vec<Step>,
}

impl Profile {
    /// Checks the steps and keeps them.
    ///
    /// # Errors
    /// The first fault found, naming its step.
    pub fn new(steps: &[Step]) -> Result<Self, ProfileError> {
        if steps.is_empty() {
            return Err(ProfileError::NoSteps);
        }
        if steps.len() > MAX_STEPS {
            return Err(ProfileError::TooManySteps { count: steps.len() });
        }
        for (index, step) in steps.iter().enumerate() {
            check_step(index, step)?;
        }
        let mut steps = steps.to_vec();
        for index in 1..steps.len() {
            let mut next = steps[index];
            let before = steps[index - 1];
            snap(&mut next.outer[0], before.outer[1]);
            snap(&mut next.inner[0], before.inner[1]);
            steps[index] = next;
            let outer = before.outer[1].min(next.outer[0]);
            let inner = before.inner[1].max(next.inner[0]);
            if outer - inner < THINNEST_WALL * outer {
                return Err(ProfileError::Gap { step: index });
            }
        }
        Ok(Self { steps })
    }

    /// The steps, from the front.
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// Length of the part along its axis, m.
    pub fn length(&self) -> f64 {
        self.steps.iter().map(|step| step.length).sum()
    }
}

fn snap(value: &mut f64, to: f64) {
    if (*value - to).abs() <= SAME_RADIUS * to {
        *value = to;
    }
}

fn check_step(index: usize, step: &Step) -> Result<(), ProfileError> {
    let dimensions = [step.length, step.outer[0], step.outer[1], step.inner[0], step.inner[1]];
    if dimensions.iter().any(|d| !(0.0..=LARGEST_DIAMETER).contains(d)) {
        return Err(ProfileError::NotADimension { step: index });
    }
    let largest = step.outer[0].max(step.outer[1]);
    if step.length <= largest / 2000.0 {
        return Err(ProfileError::NoLength { step: index });
    }
    let mut thinnest = f64::INFINITY;
    for end in 0..2 {
        if step.inner[end] >= step.outer[end] {
            return Err(ProfileError::Crossed { step: index });
        }
        let wall = (step.outer[end] - step.inner[end]) / 2.0;
        if wall < THINNEST_WALL * step.outer[end] / 2.0 {
            thinnest = thinnest.min(wall);
        }
    }
    if thinnest.is_finite() {
        return Err(ProfileError::TooThin { step: index, wall: thinnest });
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::string::ToString;
    use alloc::vec;

    fn fault(steps: &[Step]) -> ProfileError {
        Profile::new(steps).expect_err("must be refused")
    }

    #[test]
    fn every_fault_names_its_step() {
        let ring = Step::cylinder(0.02, 0.15, 0.138);
        let cases = [
            (Step::cylinder(f64::NAN, 0.1, 0.0), ProfileError::NotADimension { step: 1 }),
            (Step::cylinder(0.01, -0.1, 0.0), ProfileError::NotADimension { step: 1 }),
            (Step::cylinder(0.0, 0.15, 0.13), ProfileError::NoLength { step: 1 }),
            (Step::cylinder(0.01, 0.15, 0.15), ProfileError::Crossed { step: 1 }),
            (Step::cylinder(0.01, 0.138, 0.10), ProfileError::Gap { step: 1 }),
            (Step::cylinder(0.01, 0.20, 0.16), ProfileError::Gap { step: 1 }),
        ];
        for (second, expected) in cases {
            assert_eq!(fault(&[ring, second]), expected, "{second:?}");
        }
        let thin = fault(&[ring, Step::cylinder(0.01, 0.15, 0.1495)]);
        assert!(
            matches!(thin, ProfileError::TooThin { step: 1, .. }),
            "a wall of 0.25 mm on radius 75 mm is refused, got {thin:?}"
        );
        assert!(
            thin.to_string().starts_with("Step 2: a wall of 0.25 mm"),
            "the sentence names the step as a person counts it: {thin}"
        );
    }

    #[test]
    fn two_hundred_steps_are_the_bound() {
        let ring = Step::cylinder(0.02, 0.15, 0.138);
        assert!(Profile::new(&vec![ring; MAX_STEPS]).is_ok(), "{MAX_STEPS} steps are a part");
        assert_eq!(
            fault(&vec![ring; MAX_STEPS + 1]),
            ProfileError::TooManySteps { count: MAX_STEPS + 1 },
            "one more is refused"
        );
        assert_eq!(fault(&[]), ProfileError::NoSteps, "none is refused");
    }
}
