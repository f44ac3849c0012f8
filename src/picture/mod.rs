//! Pictures of a job's numbers: drawn on the server, each with its title, its description and its table.
//!
//! A picture is made from what the sums gave, never from facts of its own, so that it says the same as the rule book
//! and the sums page. Its table holds the very numbers that are drawn, printed alike, each with where it comes from.
//! What is not known is said and never drawn as nought. Whatever differs in meaning differs in pattern or shape and
//! has its name beside it; colour only follows. [`pictures`] says which pictures a job's facts allow, and which facts
//! the others wait for.
//!
//! **Adding a picture** is a file here with its input and its function, and its line in `of_job.rs`.

mod area;
mod canvas;
mod capacity;
mod driveshaft;
mod end_play;
mod engagement;
mod linked;
mod of_bolt;
mod of_job;
mod of_train;
mod plot;
mod power_flow;
mod put;
mod scale;
mod speeds;
mod stall;

pub use capacity::{Capacity, Held, capacity};
pub use driveshaft::{Driveshaft, driveshaft};
pub use end_play::{EndPlay, Washer, end_play};
pub use engagement::{Engagement, engagement};
pub use linked::Linked;
pub use of_job::{Bench, Beside, Slot, pictures};
pub use power_flow::{PowerFlow, power_flow};
pub use put::Put;
pub use speeds::{Speeds, speeds};
pub use stall::{Stall, stall};

/// A drawing and all that belongs to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Its name, unique on a page: every id inside begins with it.
    pub name: String,
    /// What it shows, in a few words.
    pub title: String,
    /// What can be seen in it, in sentences with the main numbers.
    pub description: String,
    /// The drawing, ready to stand in a page.
    pub svg: String,
    /// Its numbers.
    pub table: Table,
    /// What was left out or taken for granted, a sentence each.
    pub notes: Vec<String>,
    /// The sums that give the same numbers, and those that would give what is not known.
    pub sums: Vec<Linked>,
}

/// The numbers of a picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// A heading for each column; the first column names the row.
    pub columns: Vec<&'static str>,
    /// As many cells in each as there are columns.
    pub rows: Vec<Vec<Cell>>,
}

/// What stands in one place of a table.
#[derive(Clone, Debug, PartialEq)]
pub enum Cell {
    /// A number that stands in the picture, printed the same.
    Drawn(String),
    /// Words, or a number that only the table has.
    Said(String),
    /// Not known, and why.
    Blank(String),
}

impl Cell {
    /// What is printed.
    pub fn text(&self) -> &str {
        match self {
            Self::Drawn(text) | Self::Said(text) | Self::Blank(text) => text,
        }
    }

    /// Is it a number of the picture?
    pub const fn is_drawn(&self) -> bool {
        matches!(self, Self::Drawn(_))
    }
}

fn drawn(text: impl Into<String>) -> Cell {
    Cell::Drawn(text.into())
}

fn said(text: impl Into<String>) -> Cell {
    Cell::Said(text.into())
}

/// Are all of these numbers, so that they can be drawn?
fn sound(values: &[f64]) -> bool {
    values.iter().all(|value| value.is_finite() && value.abs() < 1e9)
}

#[cfg(test)]
mod agreement;
#[cfg(test)]
mod check;
#[cfg(test)]
mod tests;
