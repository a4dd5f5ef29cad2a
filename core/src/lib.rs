//! The mechanics of holding turned parts in lathe chucks with soft jaws.
//!
//! ```
//! use holdround_core::setup::{Entries, Setup};
//! use holdround_core::window::Keep;
//! use holdround_core::{
//!     Better, BoreChoice, Boundary, Choice, Compared, Comparison, Decider, Effort, Engine, Fitted, Opening, OpeningWork,
//!     Progress, ROWS, Row, SampleWork, Sampled, SampledOutput, Span, Window, WindowWork,
//! };
//!
//! // Shape work a slice at a time, then load work as often as a slider moves.
//! let entries = Entries::default();
//! let setup = Setup::read(&entries).unwrap();
//! let mut engine = Engine::default();
//! while engine.prepare(&setup) != Progress::Done {}
//! assert!(engine.evaluate(&setup, Effort::Sliding).value("hold.factor").unwrap() > 0.0);
//!
//! // Between which pressures the part is held and stays in tolerance, at the speed set and at others.
//! let speed = setup.speed.value;
//! let mut work = WindowWork::new(&setup);
//! while work.step(&mut engine) {}
//! let window: &Window = work.window();
//! let span: Span = window.span(speed);
//! assert_eq!(span.is_open(), span.width() > 0.0);
//! assert_eq!(window.recommended(speed).is_some(), span.is_open());
//! assert!(window.fastest().is_none_or(|fastest| fastest <= window.greatest_speed));
//! let hold: &Boundary = &window.boundaries[span.by[0].unwrap()];
//! assert!(hold.points().iter().all(|[_, pressure]| *pressure <= window.pressures[1]));
//! assert!(hold.keep() == Keep::AtLeast && hold.at(speed).unwrap() >= span.pressures[0] - 1.0);
//! let decider: Option<Decider> = work.decided_by(&engine, span.by[0].unwrap(), speed);
//! assert!(decider.is_none_or(|decider| decider.without > 1.0));
//!
//! // Where one speed is enough, and where roughing may spoil the shape, less is asked; walls once meshed are kept.
//! let mut rough = WindowWork::at_speed(&setup, speed).without_shape();
//! rough.take_over(work);
//! while rough.step(&mut engine) {}
//! assert!(rough.into_window().span(speed).width() >= span.width() - 1.0);
//!
//! // What would widen it.
//! let mut opening = OpeningWork::new(&setup, speed);
//! while opening.step() {}
//! let found: Vec<&Opening> = opening.found().collect();
//! assert!(found.iter().all(|opening| opening.gain > 0.0));
//!
//! // How many parts of a thousand come out good, and whose doing the others are.
//! let mut sampling = SampleWork::new(&setup);
//! while sampling.step(&mut engine) {}
//! let sampled: &Sampled = sampling.sampled().unwrap();
//! assert!(sampled.words().contains("%"), "{}", sampled.words());
//! assert!(sampled.outputs.iter().all(|SampledOutput { good, .. }| (0.0..=1.0).contains(good)));
//!
//! // Which diameter to bore to.
//! let BoreChoice { curve, .. } = engine.bore_choice(&setup);
//! assert!(!curve.is_empty());
//!
//! // And what other jaws would do.
//! let mut comparison = Comparison::of(&entries);
//! while comparison.work() {}
//! assert!(comparison.is_done());
//! let row: &Row = &ROWS[0];
//! let [mine, ..]: &[Compared] = comparison.done() else { unreachable!() };
//! let (Choice { differs, .. }, Ok(Fitted { found, .. })) = (&mine.choice, &mine.fitted) else { unreachable!() };
//! assert!(differs.is_empty() && found.get("hold.factor").is_some());
//! let best = comparison.done()[comparison.best(row).unwrap()].value(row);
//! assert!(comparison.differs(row) && (row.better == Better::More) == (best > mine.value(row)));
//! ```
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;

pub mod boring_ring;
mod evaluate;
pub mod examples;
pub mod findings;
pub mod glossary;
pub mod lessons;
pub mod materials;
pub mod program;
pub mod record;
pub mod recut;
pub mod setup;
pub mod stroke;

pub use holdround_mechanics::{
    bore, contact, cutting, grip, hold, indicator, jaw, jaw_spring, part, quantity, ring, roundness, sampling, sorting,
    sqrt, taper, text, window,
};

pub use evaluate::{
    Better, BoreChoice, Boundary, Choice, Compared, Comparison, Decider, Effort, Engine, Fitted, HEADLINES,
    InfluenceWork, Mover, Opening, OpeningWork, Progress, QUESTION, ROWS, Row, SampleWork, Sampled, SampledOutput,
    Span, Window, WindowWork, evaluate, jaw_program,
};
