//! The measurements by chapter.

use super::{Band, Chapter, Counts, Edge, Fit, Instrument, Measurement, Scale, SetKind};

mod assembly;
mod installation;
mod parts;
mod running;
mod torques;

pub use assembly::{AIR, PRYING, SERVO};

/// Every measurement, chapter by chapter.
pub(super) static ALL: &[&[Measurement]] =
    &[parts::SHEET, assembly::SHEET, torques::SHEET, installation::SHEET, running::SHEET];
