//! The job told step by step on the two views: from blank jaws on their teeth to the part as it comes out.

mod chapter;
mod face;
mod film;
mod moment;
pub(crate) mod panel;
mod section;
#[cfg(test)]
mod tests;
mod words;

pub(crate) use film::{Change, Film};
