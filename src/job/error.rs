//! What is said when a job, or one value of it, is not taken.

use super::Declaration;
use crate::quantity::cut;
use serde_json::Value;
use std::fmt;
use std::ops::RangeInclusive;

/// One thing that was refused, for a person to put right.
#[derive(Clone, Debug, PartialEq, serde::Serialize)]
pub struct JobError {
    /// `group.leaf`, or the group, or empty when the whole text could not be read.
    pub path: String,
    /// What stood there. A list, an object or a number too big for a computer is given as text; long text is cut.
    pub given: Value,
    /// What would have been taken.
    pub allowed: String,
    /// All of it in one sentence.
    pub message: String,
    /// The line of the text it stands on, counted from 1; none when the job did not come as a text.
    #[serde(skip)]
    pub line: Option<usize>,
}

impl fmt::Display for JobError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for JobError {}

/// What stood at a place, from its JSON text.
pub(super) fn given(json: &str) -> Value {
    match json.as_bytes().first() {
        Some(b'{' | b'[') => Value::String(cut(json, 200)),
        _ => match serde_json::from_str(json) {
            Ok(Value::String(text)) => Value::String(cut(&text, 200)),
            Ok(scalar) => scalar,
            Err(_) => Value::String(cut(json, 200)),
        },
    }
}

/// What a job file may hold for this fact.
pub(super) fn allowed_in_file(declaration: &Declaration) -> String {
    use super::Kind::{Choice, Date, YesNo};
    match declaration.kind {
        YesNo => "true or false".to_owned(),
        Choice(words) => {
            let codes: Vec<_> = words.iter().map(|word| format!("\"{}\"", word.code)).collect();
            format!("one of {}", codes.join(", "))
        }
        Date => "a real date as \"YYYY-MM-DD\"".to_owned(),
        _ => allowed_anywhere(declaration),
    }
}

/// The years a person may type: of a rulebook in use, or of one that is long out of date.
pub(super) const YEARS_TYPED: RangeInclusive<i64> = 1950..=2099;

/// What a person may type for this fact.
pub(super) fn allowed_in_form(declaration: &Declaration) -> String {
    use super::Kind::{Choice, Date, YesNo};
    match declaration.kind {
        YesNo => "yes or no".to_owned(),
        Choice(words) => {
            let labels: Vec<_> = words.iter().map(|word| word.label).collect();
            format!("one of: {}", labels.join("; "))
        }
        Date => "a real date as year-month-day, such as 2026-03-31".to_owned(),
        super::Kind::Year => {
            format!("a year in four figures, from {} to {}, such as 2027", YEARS_TYPED.start(), YEARS_TYPED.end())
        }
        _ => allowed_anywhere(declaration),
    }
}

fn allowed_anywhere(declaration: &Declaration) -> String {
    use super::Bound::{Any, NotNegative, OneOf, OneOfOrWhole, Positive};
    let number = match declaration.kind {
        super::Kind::Text => return "words on one line, not empty".to_owned(),
        super::Kind::Year => return "a year as a whole number from 1 to 9999".to_owned(),
        super::Kind::Number(symbol) => match crate::quantity::unit_in_words(symbol) {
            Some(unit) => format!("a number of {unit}"),
            None => "a number".to_owned(),
        },
        _ => "a whole number".to_owned(),
    };
    let listed = |list: &[f64]| list.iter().map(f64::to_string).collect::<Vec<_>>().join(", ");
    match declaration.bound {
        Any => format!("{number}, also below zero"),
        NotNegative => format!("{number}, zero or more"),
        Positive => format!("{number}, above zero"),
        OneOf(list) => format!("one of {}", listed(list)),
        OneOfOrWhole(list) => format!("one of {}, or another whole number", listed(list)),
    }
}
