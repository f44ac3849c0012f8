//! Every calculation on its own: what it is for, what it wants to know, what comes out and how it was got.
//!
//! A sum is declared once ([`Sum`]) in its subject's file under `chapters/`. It reads what people type, asks `calc`,
//! and says the result with its formula, the numbers put in, its source, and the limit it is held against. It works
//! nothing out by itself, guesses nothing, and with an input missing it says what is still needed.

mod chapters;
mod declaration;
mod given;
mod link;
mod outcome;
mod prefill;
mod search;

pub use chapters::{Chapter, chapters};
pub use declaration::{Input, Kind, Sum};
pub use given::{Answer, Wrong};
pub use link::{address, of_address};
pub use outcome::{Filled, Line, Outcome, Table, Verdict, short};
pub use prefill::{Taken, taken_from};
pub use search::{find, words_of};

/// Every sum with the chapter it stands in, in the order of the page.
pub fn all() -> impl Iterator<Item = (&'static Chapter, &'static Sum)> {
    chapters().iter().flat_map(|chapter| chapter.sums.iter().map(move |sum| (chapter, sum)))
}

/// The sum of this name.
pub fn named(name: &str) -> Option<&'static Sum> {
    all().map(|(_, sum)| sum).find(|sum| sum.name == name)
}

#[cfg(test)]
mod tests;
