//! Of the commands, the one that reads jobs.

#[path = "../../src/command/check/mod.rs"]
pub mod check;

#[path = "../../src/command/wrap.rs"]
pub mod wrap;
