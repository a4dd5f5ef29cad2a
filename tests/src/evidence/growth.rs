//! What an answer costs: multiplications counted, not timed, so that they are the same on every machine.

use holdround_core::part::{Band, Elastic, PartModel, Profile, Side, Step};
use maud::{Markup, html};

use super::figure::number;
use super::plot::{self, Series};
use super::table::table;

/// How many of its first length a tube has.
pub const LENGTHS: [usize; 5] = [1, 8, 16, 32, 64];

const STEEL: Elastic = Elastic { youngs: 206e9, poisson: 0.29, density: 7850.0 };

const JAWS: usize = 3;

/// A tube of so many lengths of 20 mm, gripped at its end by three jaws.
///
/// # Errors
/// An engine's refusal.
pub fn tube(lengths: usize) -> Result<PartModel, String> {
    let profile = Profile::new(&vec![Step::cylinder(0.02, 0.12, 0.104); lengths]).map_err(|error| error.to_string())?;
    let band = Band { side: Side::Outside, z: [0.0, 0.01], cells: Band::CELLS };
    PartModel::new(&profile, STEEL, band, JAWS, &[], 1.0).map_err(|error| error.to_string())
}

/// Elements along a part.
#[must_use]
pub fn elements_along(model: &PartModel) -> usize {
    model.mesh().outside.len()
}

/// How the work grows.
pub(super) struct Growth {
    /// Elements along the part, and multiplications for one harmonic.
    along: Vec<[f64; 2]>,
    /// Harmonics around the part beside the mean, and multiplications for all of them.
    around: Vec<[f64; 2]>,
}

impl Growth {
    /// Counts it.
    ///
    /// # Errors
    /// An engine's refusal.
    pub(super) fn count() -> Result<Self, String> {
        let models = LENGTHS.iter().map(|lengths| tube(*lengths)).collect::<Result<Vec<_>, _>>()?;
        let along = models.iter().map(|model| [elements_along(model) as f64, model.work()]).collect();
        let one = tube(1)?;
        // Those between are found from those solved.
        let orders = one.orders().enumerate().skip(1);
        let around = orders.map(|(solved, order)| [(order / JAWS) as f64, (solved + 1) as f64 * one.work()]).collect();
        Ok(Self { along, around })
    }

    /// The drawing and its table.
    pub(super) fn section(&self) -> Markup {
        let studies = [("one harmonic, by elements", &self.along), ("all, by harmonics", &self.around)];
        let series = studies.map(|(name, points)| Series { name, points: points.clone() });
        let rows = html! {
            @for (name, points) in studies {
                @for (at, [count, work]) in points.iter().enumerate() {
                    tr {
                        @if at == 0 { th scope="rowgroup" rowspan=(points.len()) { (name) } }
                        td { (number(*count)) }
                        td { (number(*work)) }
                        @if at == 0 { td rowspan=(points.len()) { (format!("{:.2}", plot::power(points))) } }
                    }
                }
            }
        };
        html! {
            section #cost {
                h2 { "What does an answer cost?" }
                p {
                    "Tubes from " (LENGTHS[0]) " to " (LENGTHS[LENGTHS.len() - 1]) " times as long as the first, and the "
                    "first with more and more harmonics around it. Multiplications are counted, not timed, so that "
                    "they are the same on every machine. Power 1 is growth in proportion; high harmonics grow by less, "
                    "because some are found from their neighbours."
                }
                (plot::draw(
                    "Multiplications against elements along the part, and against harmonics around it, as in the table",
                    ["elements along the part, or harmonics around it", "multiplications"],
                    &series,
                ))
                (table("Work", &["Solved", "Elements or harmonics", "Multiplications", "Power seen"], &rows))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Growth, plot};

    #[test]
    fn work_grows_in_proportion_to_the_part_and_no_faster_than_the_harmonics() {
        let growth = Growth::count().unwrap();
        let along = plot::power(&growth.along);
        assert!((0.9..1.1).contains(&along), "by elements: power {along}, a quadratic method would have 2");
        let around = plot::power(&growth.around);
        assert!((0.5..=1.0).contains(&around), "by harmonics: power {around}");
    }
}
