//! The rule book: three-valued truth, limits, computed quantities, and one file a family of rules.
//!
//! [`judge`] holds one job against every rule. A rule is a finding (true),
//! clear (false) or undecided (unknown, with the facts it waits for).

mod ask;
mod book;
mod derived;
mod families;
mod known;
mod limits;
mod parts;
mod rule;
mod verdict;

pub use ask::{Ask, Measured, YesNo};
pub use book::{Chapter, Retired, chapters, nearest_codes, retired, rule_named, rules};
pub use derived::{Derived, DerivedDeclaration, DerivedId};
pub use known::{Known, Together, Truth};
pub use limits::{LimitDeclaration, LimitId, LimitUsed, Limits, Mark, OutOfRange};
pub use rule::{Due, Rule, Severity};
pub use verdict::{Finding, Undecided, Verdicts, judge};

#[cfg(test)]
mod tests;
