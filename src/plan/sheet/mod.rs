//! The measurement sheet: what is measured on a unit, with what, how, against which limit, and what follows from it.
//!
//! **Adding a measurement** is one declaration in a file of `pages/`. Its name is for ever: it stands in addresses and
//! in the history of every unit it was taken on. A number it is held against is a limit of the shop's book, never bare.

mod band;
mod entry;
mod pages;
mod pick;
mod reading;
mod scale;
mod sets;
mod taking;

pub use band::{Band, Edge, Side, Verdict, judge};
pub use entry::{Chapter, Counts, Fills, Fit, Instrument, Measurement, Span};
pub use pages::{AIR, PRYING, SERVO};
pub use pick::{Fitted, Offer, Picked, Proposal, Washers, fitted_asked, pick, washers};
pub use reading::{Bad, Meant, Read, how_to_write, read, read_size};
pub use scale::{Habit, LengthHabit, PressureHabit, Scale, TorqueHabit, Written};
pub use sets::{MOST_PARTS, SetKind, SetPart};
pub use taking::{Taking, Wrong, reading_field, take};

/// Every measurement, in the order of the sheet.
pub fn measurements() -> impl Iterator<Item = &'static Measurement> {
    pages::ALL.iter().copied().flatten()
}

/// The measurement of this name.
pub fn measurement_named(name: &str) -> Option<&'static Measurement> {
    measurements().find(|measurement| measurement.name == name)
}

#[cfg(test)]
mod tests;
