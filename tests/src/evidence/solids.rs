//! The engine beside three-dimensional solids: how far off its figures are, all of them, not only the worst.

use holdround_core::contact::Arc;
use maud::{Markup, html};

use super::figure::{number, percent, spread};
use super::table::table;
use crate::solids::{Case, Load, Pair, cases};

/// Every body with the figures of the engine beside the reference's.
pub(super) struct Bodies(Vec<Body>);

pub(super) struct Body {
    pub(super) case: Case,
    even: Vec<Pair>,
    rigid: Vec<Pair>,
    spin: Vec<Pair>,
}

/// Bounds of the classes of the distribution, as shares.
const CLASSES: [f64; 6] = [1e-4, 5e-4, 1e-3, 2e-3, 5e-3, 1e-2];

impl Bodies {
    /// Solves every case as finely as the engine settles for.
    ///
    /// # Errors
    /// When the file cannot be read or the engine refuses a case.
    pub(super) fn solve() -> Result<Self, String> {
        let bodies = cases()?.into_iter().map(|case| {
            let solved = case.settled(Arc::CELLS)?;
            let (mut even, mut rigid, mut spin) = (Vec::new(), Vec::new(), Vec::new());
            for loaded in &case.results {
                let of_load = match loaded.load {
                    Load::Uniform { .. } => &mut even,
                    Load::Rigid { .. } => &mut rigid,
                    Load::Spin { .. } => &mut spin,
                };
                of_load.extend(solved.compare(loaded)?);
            }
            Ok(Body { case, even, rigid, spin })
        });
        bodies.collect::<Result<_, String>>().map(Self)
    }

    pub(super) fn cases(&self) -> impl Iterator<Item = &Case> {
        self.0.iter().map(|body| &body.case)
    }

    fn pairs(&self) -> impl Iterator<Item = &Pair> {
        self.0.iter().flat_map(|body| body.even.iter().chain(&body.rigid).chain(&body.spin))
    }

    /// How many figures there are.
    pub(super) fn figures(&self) -> usize {
        self.pairs().count()
    }

    /// How many figures are off by less than each class's bound and no less than the one's before it; the last
    /// are those beyond every bound.
    fn distribution(&self) -> [usize; CLASSES.len() + 1] {
        let mut counts = [0; CLASSES.len() + 1];
        for pair in self.pairs() {
            counts[CLASSES.iter().take_while(|bound| pair.off().abs() >= **bound).count()] += 1;
        }
        counts
    }

    /// The figures farthest off.
    fn farthest(&self) -> Vec<&Pair> {
        const SHOWN: usize = 10;
        let mut pairs: Vec<&Pair> = self.pairs().collect();
        pairs.sort_by(|a, b| b.off().abs().total_cmp(&a.off().abs()));
        pairs.truncate(SHOWN);
        pairs
    }

    /// The line of the first table.
    pub(super) fn line(&self) -> Markup {
        let [middle, worst] = spread(self.pairs().map(Pair::off));
        html! {
            tr {
                th scope="row" { a href="#solids" { "Held parts, beside solids of finite elements" } }
                td { (worst) }
                td { (middle) }
                td { (self.figures()) }
                td { (self.0.len()) " parts" }
                td { "0" }
            }
        }
    }

    /// The distribution, the bodies, and the largest disagreements.
    pub(super) fn section(&self) -> Markup {
        html! {
            section #solids {
                h2 { "Do other elements agree?" }
                p {
                    "Parts solved once as three-dimensional solids by a general finite-element library, which shares "
                    "nothing with the engine; the scripts are kept in the project beside their figures. Differences are "
                    "shares of the largest such figure of the part under the same load. Allowed: 0.5 % under even "
                    "pressure, 1 % under rigid jaws, 0.05 % spinning, and what the solid is unsure of by itself."
                }
                (self.bars())
                (self.table())
                h3 { "Known disagreements: the figures farthest off" }
                (farthest(&self.farthest()))
            }
        }
    }

    fn bars(&self) -> Markup {
        let counts = self.distribution();
        let most = counts.iter().copied().max().unwrap_or(1).max(1);
        html! {
            table.bars {
                caption { "How far the figures are off" }
                thead { tr { th scope="col" { "Off by" } th scope="col" { "Figures" } } }
                tbody {
                    @for (at, count) in counts.iter().enumerate() {
                        tr {
                            th scope="row" {
                                @if let Some(bound) = CLASSES.get(at) { "less than " (percent(*bound)) } @else { "more" }
                            }
                            td { meter min="0" max=(most) value=(count) { (count) } " " (count) }
                        }
                    }
                }
            }
        }
    }

    fn table(&self) -> Markup {
        const HEADINGS: [&str; 5] =
            ["Body", "Figures", "Even pressure: middle, worst", "Rigid jaws: middle, worst", "Spin: middle, worst"];
        let rows = html! {
            @for body in &self.0 {
                tr {
                    th scope="row" { (body.case.purpose) }
                    td { (body.even.len() + body.rigid.len() + body.spin.len()) }
                    @for pairs in [&body.even, &body.rigid, &body.spin] {
                        @let [middle, worst] = off(pairs);
                        td { @if pairs.is_empty() { "not solved" } @else { (middle) ", " (worst) } }
                    }
                }
            }
        };
        table("Bodies", &HEADINGS, &rows)
    }
}

fn farthest(pairs: &[&Pair]) -> Markup {
    let rows = html! {
        @for pair in pairs {
            tr {
                th scope="row" { (pair.of) }
                td { (number(pair.theirs.value)) }
                td { (number(pair.ours)) }
                td { (percent(pair.off())) }
                td { (percent(pair.unsure())) }
            }
        }
    };
    table("Figures farthest off", &["Figure", "Theirs", "Ours", "Difference", "Theirs is sure to"], &rows)
}

fn off(pairs: &[Pair]) -> [String; 2] {
    spread(pairs.iter().map(Pair::off))
}
