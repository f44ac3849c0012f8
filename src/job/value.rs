//! The types a fact's value can have: how each is read from a job file and written back.

use super::declaration::{Bound, Declaration, Kind, Word};
use super::error::allowed_in_file;
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
    fn by(declaration: &Declaration) -> Self {
        Self { allowed: allowed_in_file(declaration) }
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
    /// As people read it.
    fn label(self) -> &'static str {
        Self::WORDS[self.place()].label
    }
}

impl FactValue for bool {
    const KIND: Kind = Kind::YesNo;
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused> {
        given.as_bool().ok_or_else(|| Refused::by(declaration))
    }
    fn json(&self) -> Value {
        json!(self)
    }
}

impl FactValue for u32 {
    const KIND: Kind = Kind::Count;
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused> {
        given
            .as_f64()
            .filter(|number| number.fract() == 0.0 && permitted(declaration.bound, *number))
            .filter(|number| (0.0..=f64::from(Self::MAX)).contains(number))
            .map(|number| number as Self)
            .ok_or_else(|| Refused::by(declaration))
    }
    fn json(&self) -> Value {
        json!(self)
    }
}

impl<U: Unit> FactValue for Quantity<U> {
    const KIND: Kind = Kind::Number(U::SYMBOL);
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused> {
        given
            .as_f64()
            .filter(|number| number.is_finite() && permitted(declaration.bound, *number))
            .map(Self::new)
            .ok_or_else(|| Refused::by(declaration))
    }
    fn json(&self) -> Value {
        number_json(self.value())
    }
}

impl FactValue for Date {
    const KIND: Kind = Kind::Date;
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused> {
        let text = given.as_str().unwrap_or_default();
        // Read back and compared: the parser knows other spellings of a day than the one a job file has.
        text.parse().ok().filter(|date: &Self| date.to_string() == text).ok_or_else(|| Refused::by(declaration))
    }
    fn json(&self) -> Value {
        json!(self.to_string())
    }
}

impl FactValue for String {
    const KIND: Kind = Kind::Text;
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused> {
        given
            .as_str()
            .filter(|text| !text.trim().is_empty() && !text.contains(char::is_control))
            .map(str::to_owned)
            .ok_or_else(|| Refused::by(declaration))
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
    fn read(given: &Value, declaration: &Declaration) -> Result<Self, Refused> {
        given
            .as_f64()
            .filter(|number| number.fract() == 0.0 && (1.0..=9999.0).contains(number))
            .map(|number| Self(number as i16))
            .ok_or_else(|| Refused::by(declaration))
    }
    fn json(&self) -> Value {
        json!(self.0)
    }
}

/// Reads a word of a choice.
///
/// # Errors
/// [`Refused`] lists the words.
pub fn read_choice<T: Choice>(given: &Value, declaration: &Declaration) -> Result<T, Refused> {
    let place = given.as_str().and_then(|text| T::WORDS.iter().position(|word| word.code == text));
    place.map(|at| T::ALL[at]).ok_or_else(|| Refused::by(declaration))
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
