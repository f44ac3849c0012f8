//! The steps, one file a phase or two.

mod assembly;
mod delivery;
mod hookup;
mod installation;
mod intake;
mod machining;
mod sub_assembly;
mod teardown;
mod test;

use super::{Phase, SeenPaper, Step, hazard};

/// Every list of steps, in the order of the work.
pub(super) const ALL: &[&[Step]] = &[
    intake::STEPS,
    teardown::STEPS,
    machining::STEPS,
    sub_assembly::STEPS,
    assembly::STEPS,
    hookup::STEPS,
    test::STEPS,
    delivery::STEPS,
    installation::STEPS,
];
