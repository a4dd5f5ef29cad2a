//! The page that shows what the numbers were checked against. Every row is worked out here, from the same data
//! and by the same engines as the tests; none is written by hand.
//!
//! It keeps apart what ASME V&V 10 keeps apart: whether the code solves its equations (closed forms and published
//! figures), how far a mesh is from its limit (convergence), and whether the equations describe a chuck (validation).

mod closed;
mod convergence;
mod figure;
pub mod growth;
mod plot;
mod ranges;
mod solids;
mod table;

use maud::{DOCTYPE, Markup, html};

use self::closed::Closed;
use self::solids::Bodies;
use self::table::table;

pub use plot::power;

use crate::reference::topics;

const GLANCE: [&str; 6] = ["Of what", "Greatest difference", "Middle difference", "Figures", "Checks", "Not read"];

/// The whole page.
///
/// # Errors
/// When a reference cannot be read or an engine refuses what it once solved.
pub fn page() -> Result<String, String> {
    let topics = topics()?;
    let closed = Closed::solve(&topics)?;
    let solids = Bodies::solve()?;
    let meshes = convergence::section(&convergence::of_parts()?, &convergence::of_contact()?);
    let ranges = ranges::section(&topics, &solids)?;
    let glance = html! { (closed.lines()) (solids.line()) };
    let growth = growth::Growth::count()?;
    let markup = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { "What the numbers were checked against · Holdround" }
                link rel="icon" href="icon.svg" type="image/svg+xml";
                link rel="stylesheet" href="style.css";
                link rel="stylesheet" href="evidence.css";
            }
            body {
                main.evidence {
                    p { a href="./" { "To the calculator" } }
                    h1 { "What the numbers were checked against" }
                    p {
                        "Every figure below was worked out when this site was built, by the engines that the page runs. "
                        (closed.checks()) " checks with " (closed.figures()) " figures have a source outside this "
                        "project, and " (solids.figures()) " figures more come from parts solved as three-dimensional "
                        "solids by a general finite-element library. A check that misses stops the build."
                    }
                    p {
                        "So the arithmetic is checked, and the bending of the part. What no check here shows is that a "
                        "chuck does what the equations say: no measured part in a three-jaw chuck could be repeated. "
                        a href="#chuck" { "What was not checked" } " comes last, and weighs most."
                    }
                    p.caution {
                        "No check makes a chuck safe. The chuck's own plate and manual, local codes and qualified "
                        "people rule over every number here."
                    }
                    nav aria-label="Parts of this page" {
                        ol {
                            li { a href="#glance" { "At a glance" } }
                            li { a href="#code" { "Does the code solve its equations?" } }
                            li { a href="#meshes" { "How far is a mesh from its limit?" } }
                            li { a href="#solids" { "Do other elements agree?" } }
                            li { a href="#ranges" { "Between which bounds was each engine checked?" } }
                            li { a href="#cost" { "What does an answer cost?" } }
                            li { a href="#chuck" { "Do the equations describe a chuck?" } }
                        }
                    }
                    section #glance {
                        h2 { "At a glance" }
                        (table("Checks at a glance", &GLANCE, &glance))
                        p {
                            "Differences are shares of the source's figure; a figure that is to be nothing, or only no "
                            "more or no less than a bound, has none. \"Not read\" counts the checks whose source was "
                            "recalled, or is common practice without one."
                        }
                    }
                    (closed.section())
                    (meshes)
                    (solids.section())
                    (ranges)
                    (growth.section())
                    (chuck())
                }
            }
        }
    };
    Ok(markup.into_string())
}

/// What stands behind the whole, and what does not.
fn chuck() -> Markup {
    html! {
        section #chuck {
            h2 { "Do the equations describe a chuck?" }
            p {
                "This is the weakest part. No published measurement of a part in a three-jaw chuck was found with enough "
                "numbers to repeat it, so the whole is not validated by measurement. What stands in its place are the "
                a href="#trade" { "facts of the trade" }
                ", marked as common practice without a source, which must come out of the same engines."
            }
            p {
                "Left out of the model: friction on the jaw face while clamping, plastic flow of jaw or part, the order "
                "in which jaws touch, chatter, heat, and wear of the chuck. How much a chuck gives is an entry: the solids "
                "above are held by rigid jaws or an even pressure."
            }
            h3 { "Where the bending of the part is known to be off, or nothing is known" }
            p { "Measured once beside solids of their own, and not worked out anew with this page:" }
            ul {
                li {
                    "Steep tapers. A ring in rigid jaws with a taper of 4 µm per mm, touching along one edge, came out 3 % "
                    "less lobed; the solid's own figure fell by 1.4 % when its cells along the grip were halved. Gripped "
                    "from inside with −2 µm per mm it came out 2.4 % less lobed, and 0.6 % on meshes twice as fine each "
                    "way. In four rigid jaws with −1.5 µm per mm an aluminium ring came out 1.9 % less lobed than a solid "
                    "sure to 0.4 %: that one load is left out of its part above."
                }
                li {
                    "Just at the edge of a rigid jaw, on a disc with a small bore, the dent is 1.2 % shallower than the "
                    "solid's. At the front edge of rigid pie jaws that fit, on a thick aluminium ring, it is 1.7 % shallower "
                    "than a solid sure to 0.3 %; everywhere else that ring is within 0.6 %."
                }
                li { "A cup gripped at a thick floor hardly moves, and its solid is sure to 23 % only: it tells nothing." }
            }
        }
    }
}
