//! Endplay: job tickets for a small automatic-transmission rebuild shop.
//!
//! The rooms, top to bottom; a file imports only from rooms above its own.

pub mod quantity;
