//! A rule of the shop's own, whole.

use super::condition::Condition;
use crate::rules::rule::{Due, Severity};

/// A rule of the shop's own, as it stands in one of its versions.
#[derive(Clone, Debug, PartialEq)]
pub struct HouseRule {
    /// Its code, for ever: `HR-01`. Never one of the built-in codes.
    pub code: String,
    /// Which version of it this is, from 1.
    pub version: i32,
    /// How bad it is when it is true.
    pub severity: Severity,
    /// When an open verdict begins to be asked about.
    pub due: Due,
    /// Must the customer tick that they accept it?
    pub customer_accepts: bool,
    /// What is wrong, in a few words.
    pub title: String,
    /// What the shop is told.
    pub shop: String,
    /// What the customer is told; none when it is the bench's business alone.
    pub customer: Option<String>,
    /// What puts it right.
    pub fix: String,
    /// The condition.
    pub condition: Condition,
}

/// The code of the shop's nth rule, counted from 1.
pub fn house_code(nth: i32) -> String {
    format!("HR-{nth:02}")
}

/// Which of the shop's rules has this code, however it is spelled.
pub fn house_number(code: &str) -> Option<i32> {
    let (letters, number) = code.trim().split_once('-')?;
    let nth = number.parse().ok().filter(|nth| *nth > 0)?;
    letters.eq_ignore_ascii_case("HR").then_some(nth)
}
