//! Rules of the shop's own: a condition over the facts of a job, written in CEL.
//!
//! CEL is the Common Expression Language, an open standard. Its text is read by
//! the `cel` crate; what comes of it is checked here, name by name and type by
//! type, and becomes a [`Condition`] that is worked out with the same
//! three-valued truth as the built-in rules: an unknown fact leaves the rule
//! open instead of stopping the evaluation, as an error would in plain CEL.
//!
//! **What can be written**: facts (`engine.torque_lbft`), computed quantities
//! (`one_way.load_share`), numbers, texts and dates in quotes, `true`, `false`,
//! `&& || !`, `== != < <= > >=`, `+ - * /`, `in [...]`, `a ? b : c`, and
//! `math.abs`, `math.sqrt`, `math.least`, `math.greatest` of CEL's own
//! extension. Every number is a double.
//!
//! **Never endless**: there is no loop in what can be written, and the length,
//! the depth and the number of parts are limited.

mod condition;
mod read;
mod rule;
mod words;

pub use condition::{Condition, Names};
pub use read::{Amiss, LONGEST, read};
pub use rule::{HouseRule, house_code, house_number};

#[cfg(test)]
mod tests;
