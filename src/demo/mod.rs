//! The invented shop: people, units and jobs that never were, told through the program's own use cases.

mod bench;
mod classes;
mod early;
mod fill;
mod late;
mod middle;
mod own_rules;
mod story;

pub use fill::{Demo, fill};
pub use story::{Person, Step, Story};

/// Every story, oldest first.
pub fn stories() -> Vec<Story> {
    let mut all = early::stories();
    all.extend(middle::stories());
    all.extend(late::stories());
    all
}

/// The staff of the invented shop, who all use one password.
pub const OWNER: &str = "Marit Oakfen";
/// At the front desk.
pub const DESK: &str = "Pell Harrowgate";
/// At the bench.
pub const TECHNICIAN: &str = "Juno Tessaly";
/// Printed when the demo starts; it opens nothing but the invented shop.
pub const PASSWORD: &str = "quiet gears turn all day";
