//! The rule book: three-valued truth, limits, computed quantities, and one file a family of rules.
//!
//! [`judge`] holds one job against every rule. A rule is a finding (true),
//! clear (false) or undecided (unknown, with the facts it waits for).
//!
//! **Adding a rule** is one declaration in a file of `families/`; a new file is
//! one line in `families/mod.rs`. A number it compares with becomes a limit in
//! `limits/table.rs`; a count that names a part stands in `parts.rs`; a sum
//! stands in `derived.rs` and is asked for by name under `numbers:`. The tests
//! in `tests/` then ask for the rest: words, examples, near misses, and a
//! second reading of the condition in `tests/oracle/conditions.txt`.
//!
//! **Order of evaluation** never matters: a condition evaluates all of its
//! parts, and `&`, `|` and `!` combine what they found.

mod ask;
mod book;
mod derived;
mod examples;
mod families;
pub mod house;
mod known;
mod limits;
mod parts;
mod rule;
pub mod told;
mod verdict;

pub use ask::{Ask, Measured, YesNo};
pub use book::{Chapter, Retired, chapters, families, nearest_codes, retired, rule_named, rules};
pub use derived::{Derived, DerivedDeclaration, DerivedId};
pub use known::{Known, Together, Truth};
pub use limits::{LimitDeclaration, LimitId, LimitUsed, Limits, Mark, OutOfRange};
pub use rule::{Due, Rule, Severity};
pub use verdict::{Finding, LIMIT_USED, Undecided, Verdicts, judge};

#[cfg(test)]
mod tests;
