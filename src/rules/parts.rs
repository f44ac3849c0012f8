//! Counts that tell one part from another. They name the part; nobody can move them.

/// Tilting elements of the stronger set that drops into the same round race as the factory's.
pub const SPRAG_34: u32 = 34;
/// Tilting elements of the set that needs the large-hub drum.
pub const SPRAG_LARGE_HUB: u32 = 36;
