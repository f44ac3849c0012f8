//! Counts and sizes that tell one part from another. They name the part; nobody can move them.

use crate::quantity::{Inch, Quantity};

/// Splines of the small output shaft.
pub const SMALL_OUTPUT: u32 = 27;
/// Holes of a bell ring that uses every place an eight-place case has.
pub const FULL_RING: u32 = 8;
/// Tilting elements of the factory's intermediate one-way clutch.
pub const SPRAG_FACTORY: u32 = 16;
/// Tilting elements of the stronger set that drops into the same round race.
pub const SPRAG_34: u32 = 34;
/// Tilting elements of the set that needs the large-hub drum.
pub const SPRAG_LARGE_HUB: u32 = 36;
/// Bolt circle noted for a flexplate that is drilled for both.
pub const DUAL_DRILLED: Quantity<Inch> = Quantity::new(0.0);
