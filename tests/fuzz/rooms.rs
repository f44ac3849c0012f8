//! The rooms that read what people send, compiled from the house's own sources.

#[path = "../../src/quantity/mod.rs"]
pub mod quantity;

#[path = "../../src/calc/mod.rs"]
pub mod calc;

#[path = "../../src/job/mod.rs"]
pub mod job;

#[path = "../../src/rules/mod.rs"]
pub mod rules;

#[path = "../../src/plan/mod.rs"]
pub mod plan;

#[path = "../../src/sums/mod.rs"]
pub mod sums;

pub mod command;
pub mod form;
