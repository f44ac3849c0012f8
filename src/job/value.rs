//! The types a fact's value can have: how each is read from a job file and written back.

use super::declaration::{Bound, Declaration, Kind, Word};
use crate::quantity::{Quantity, Unit};
use jiff::civil::Date;
use serde_json::{Value, json};

/// A type that a fact can hold.
pub trait FactValue: Sized + PartialEq {
    /// What kind it is, for pages and errors.
    const KIND: Kind;
    /// Reads a job file's value.
    ///
    /// # Errors
    /// [`Refused`] says what would have been allowed.
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused>;
    /// Writes it as a job file does.
    fn json(&self) -> Value;
}

/// Why a value was not taken: what is allowed, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// What would have been taken.
    pub allowed: String,
}

impl Refused {
    fn because(allowed: impl Into<String>) -> Self {
        Self { allowed: allowed.into() }
    }
}

/// A word of a fixed list, as an enum.
pub trait Choice: Copy + PartialEq + 'static {
    /// Every variant with its words, in declared order.
    const WORDS: &'static [Word];
    /// Every variant in the same order.
    const ALL: &'static [Self];
    /// The variant's place in both.
    fn place(self) -> usize;
}

impl FactValue for bool {
    const KIND: Kind = Kind::YesNo;
    fn read(given: &Value, _: &Declaration) -> Result<Self, Refused> {
        given.as_bool().ok_or_else(|| Refused::because("true or false"))
    }
    fn json(&self) -> Value {
        json!(self)
    }
}

impl FactValue for u32 {
    const KIND: Kind = Kind::Count;
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused> {
        let allowed = || Refused::because(allowed_numbers(declaration.bound, true));
        let number =
            given.as_f64().filter(|n| n.fract() == 0.0 && permitted(declaration.bound, *n)).ok_or_else(allowed)?;
        if (0.0..=f64::from(Self::MAX)).contains(&number) { Ok(number as Self) } else { Err(allowed()) }
    }
    fn json(&self) -> Value {
        json!(self)
    }
}

impl<U: Unit> FactValue for Quantity<U> {
    const KIND: Kind = Kind::Number(U::SYMBOL);
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused> {
        match given.as_f64() {
            Some(number) if number.is_finite() && permitted(declaration.bound, number) => Ok(Self::new(number)),
            _ => Err(Refused::because(allowed_numbers(declaration.bound, false))),
        }
    }
    fn json(&self) -> Value {
        number_json(self.value())
    }
}

impl FactValue for Date {
    const KIND: Kind = Kind::Date;
    fn read(given: &Value, _: &Declaration) -> Result<Self, Refused> {
        given
            .as_str()
            .filter(|text| text.len() == 10)
            .and_then(|text| text.parse().ok())
            .ok_or_else(|| Refused::because("a real date as \"YYYY-MM-DD\""))
    }
    fn json(&self) -> Value {
        json!(self.to_string())
    }
}

impl FactValue for String {
    const KIND: Kind = Kind::Text;
    fn read(given: &Value, _: &Declaration) -> Result<Self, Refused> {
        match given.as_str() {
            Some(text) if !text.trim().is_empty() => Ok(text.to_owned()),
            _ => Err(Refused::because("words in quotes, not empty; leave it out while it is not known")),
        }
    }
    fn json(&self) -> Value {
        json!(self)
    }
}

/// A calendar year of the common era.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Year(pub i16);

impl FactValue for Year {
    const KIND: Kind = Kind::Year;
    fn read(given: &Value, _: &Declaration) -> Result<Self, Refused> {
        given
            .as_f64()
            .filter(|n| n.fract() == 0.0 && (1.0..=9999.0).contains(n))
            .map(|n| Self(n as i16))
            .ok_or_else(|| Refused::because("a year as a whole number from 1 to 9999"))
    }
    fn json(&self) -> Value {
        json!(self.0)
    }
}

/// Reads a word of a choice.
///
/// # Errors
/// [`Refused`] lists the words.
pub fn read_choice<T: Choice>(given: &Value) -> Result<T, Refused> {
    let place = given.as_str().and_then(|text| T::WORDS.iter().position(|word| word.code == text));
    place.map(|at| T::ALL[at]).ok_or_else(|| {
        let codes: Vec<_> = T::WORDS.iter().map(|word| format!("\"{}\"", word.code)).collect();
        Refused::because(format!("one of {}", codes.join(", ")))
    })
}

/// A number as JSON: whole ones without a point.
pub(crate) fn number_json(number: f64) -> Value {
    if number.fract() == 0.0 && number.abs() < 9e15 { json!(number as i64) } else { json!(number) }
}

fn permitted(bound: Bound, number: f64) -> bool {
    match bound {
        Bound::Any => true,
        Bound::NotNegative => number >= 0.0,
        Bound::Positive => number > 0.0,
        Bound::OneOf(list) => list.contains(&number),
        Bound::OneOfOrWhole(list) => list.contains(&number) || (number >= 0.0 && number.fract() == 0.0),
    }
}

fn allowed_numbers(bound: Bound, whole: bool) -> String {
    let number = if whole { "a whole number" } else { "a number" };
    let listed = |list: &[f64]| list.iter().map(f64::to_string).collect::<Vec<_>>().join(", ");
    match bound {
        Bound::Any => number.to_owned(),
        Bound::NotNegative => format!("{number}, zero or more"),
        Bound::Positive => format!("{number} above zero"),
        Bound::OneOf(list) => format!("one of {}", listed(list)),
        Bound::OneOfOrWhole(list) => format!("one of {}, or another whole number", listed(list)),
    }
}
