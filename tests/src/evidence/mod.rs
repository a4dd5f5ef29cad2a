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

use maud::{DOCTYPE, html};

pub use plot::power;

use crate::reference::topics;

/// The whole page.
///
/// # Errors
/// When a reference cannot be read or an engine refuses what it once solved.
pub fn page() -> Result<String, String> {
    let topics = topics()?;
    let solids = solids::Bodies::solve()?;
    let studies = convergence::studies()?;
    let growth = growth::Growth::count()?;
    let checks: usize = topics.values().map(|topic| topic.checks.len()).sum();
    let figures: usize = topics.values().flat_map(|topic| &topic.checks).map(|check| check.expect.len()).sum();
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
                        "Each row below was worked out when this site was built, by the engines that the page runs. "
                        (checks) " checks with " (figures) " figures have a source outside this project, and "
                        (solids.figures()) " more come from parts solved as three-dimensional solids by a general "
                        "finite-element library. A check that misses stops the build."
                    }
                    p.caution {
                        "No check makes a chuck safe. The chuck's own plate and manual, local codes and qualified "
                        "people rule over every number here."
                    }
                    nav aria-label="Parts of this page" {
                        ol {
                            li { a href="#code" { "Does the code solve its equations?" } }
                            li { a href="#meshes" { "How far is a mesh from its limit?" } }
                            li { a href="#solids" { "Do other elements agree?" } }
                            li { a href="#ranges" { "Between which bounds was each engine checked?" } }
                            li { a href="#cost" { "What does an answer cost?" } }
                            li { a href="#chuck" { "Do the equations describe a chuck?" } }
                        }
                    }
                    (closed::section(&topics)?)
                    (convergence::section(&studies))
                    (solids.section())
                    (ranges::section(&topics, &solids))
                    (growth.section())
                    section #chuck {
                        h2 { "Do the equations describe a chuck?" }
                        p {
                            "This is the weakest part. No published measurement of a part in a three-jaw chuck was "
                            "found with enough numbers to repeat it, so the whole is not validated by measurement. "
                            "What stands in its place are the facts of the trade listed above under "
                            a href="#trade" { "Facts of the trade" }
                            ", marked as common practice without a source, which must come out of the same engines."
                        }
                        p {
                            "Left out of the model: friction on the jaw face while clamping, plastic flow of jaw or "
                            "part, the order in which jaws touch, chatter, heat, and wear of the chuck."
                        }
                    }
                }
            }
        }
    };
    Ok(markup.into_string())
}
