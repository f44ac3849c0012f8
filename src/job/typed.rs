//! One value between a person and the job: what a form's field says, and how a value is said back.

use super::error::{JobError, YEARS_TYPED, allowed_in_form};
use super::value::number_json;
use super::{Declaration, FactId, Job, Kind, Word};
use crate::quantity::{self, Unread, cut, number_and_unit, parts_in_one, unit_in_words, unit_named};
use serde_json::Value;

/// Reads a form's field; blank is unknown (`None`).
///
/// # Errors
/// A sentence that names the field by its label, what was typed and what is allowed.
pub fn read_text(text: &str, declaration: &Declaration) -> Result<Option<Value>, JobError> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let value = match declaration.kind {
        Kind::YesNo => yes_or_no(text).map(Value::from),
        Kind::Choice(words) => word_meant(text, words).map(|word| Value::from(word.code)),
        Kind::Date | Kind::Text => Some(Value::from(text)),
        Kind::Count => Some(number(text, "", declaration)?),
        // Two figures are short for a year, not a year of their own.
        Kind::Year => Some(number(text, "", declaration)?)
            .filter(|year| year.as_i64().is_some_and(|year| YEARS_TYPED.contains(&year))),
        Kind::Number(symbol) => Some(number(text, symbol, declaration)?),
    };
    match value.filter(|value| (declaration.check)(value, declaration).is_ok()) {
        Some(value) => Ok(Some(value)),
        None => Err(refused(text, declaration, &format!("it must be {}", allowed_in_form(declaration)))),
    }
}

/// Says a value as people read it: the words of a choice, yes or no, a number with its unit.
pub fn say(value: &Value, declaration: &Declaration) -> String {
    match (declaration.kind, value) {
        (_, Value::Null) => "not known".to_owned(),
        (Kind::YesNo, Value::Bool(yes)) => if *yes { "yes" } else { "no" }.to_owned(),
        (Kind::Choice(words), Value::String(code)) => {
            words.iter().find(|word| word.code == code).map_or(code.as_str(), |word| word.label).to_owned()
        }
        (Kind::Number(symbol), Value::Number(number)) => quantity::said(number.as_f64().unwrap_or(f64::NAN), symbol),
        (_, Value::String(text)) => text.clone(),
        (_, other) => other.to_string(),
    }
}

impl Job {
    /// Says what is known of a fact, as people read it; none while unknown.
    pub fn say(&self, fact: FactId) -> Option<String> {
        self.slot(fact).json().map(|value| say(&value, fact.declaration()))
    }
}

fn yes_or_no(text: &str) -> Option<bool> {
    match text.to_lowercase().as_str() {
        "yes" | "y" | "true" => Some(true),
        "no" | "n" | "false" => Some(false),
        _ => None,
    }
}

fn word_meant<'a>(text: &str, words: &'a [Word]) -> Option<&'a Word> {
    let label = text.to_lowercase();
    words
        .iter()
        .find(|word| word.code == text)
        .or_else(|| words.iter().find(|word| word.code == label || word.label.to_lowercase() == label))
}

fn number(text: &str, symbol: &str, declaration: &Declaration) -> Result<Value, JobError> {
    let wanted = allowed_in_form(declaration);
    let (number, unit) = number_and_unit(without_note(text, declaration.note), symbol, &wanted).map_err(|unread| {
        let what = match unread {
            Unread::Comma { .. } => {
                "the comma can be read two ways; write thousands without a mark, as 1900".to_owned()
            }
            Unread::OverNought { .. } => "the lower number of a fraction must be 1 or more".to_owned(),
            Unread::FractionTooLarge { .. } => "the fraction behind a whole number must be less than one".to_owned(),
            Unread::TooLong { .. } => "it has too many digits".to_owned(),
            _ => format!("it must be {wanted}"),
        };
        refused(text, declaration, &what)
    })?;
    // A ratio is said aloud in more ways than a quantity is printed.
    let unit = if symbol.is_empty() && matches!(unit.as_str(), ": 1" | "to 1") { String::new() } else { unit };
    if let Some(parts) = parts_in_one(&unit, symbol) {
        return Ok(number_json(number / parts));
    }
    let what = match (unit_named(&unit), unit_in_words(symbol)) {
        (Some(given), Some(own)) => {
            format!("that is {given}, and this is wanted in {own}; nothing is converted unasked")
        }
        (Some(given), None) => format!("that is {given}, and this has no unit"),
        (None, _) => format!("what does \"{}\" mean here? It must be {wanted}", cut(&unit, 40)),
    };
    Err(refused(text, declaration, &what))
}

/// What is left of the words behind a number when they repeat the note that stands at the field.
fn without_note<'a>(tail: &'a str, note: &str) -> &'a str {
    let open = tail.strip_suffix(')').unwrap_or(tail);
    let Some(at) = open.len().checked_sub(note.len()).filter(|at| !note.is_empty() && open.is_char_boundary(*at))
    else {
        return tail;
    };
    if open[at..].eq_ignore_ascii_case(note) { open[..at].trim_end_matches([' ', ',', ';', '(']) } else { tail }
}

fn refused(text: &str, declaration: &Declaration, what: &str) -> JobError {
    let message = format!("{} cannot be \"{}\": {what}.", declaration.label, cut(text, 60));
    JobError {
        path: declaration.path.to_owned(),
        given: Value::String(cut(text, 200)),
        allowed: allowed_in_form(declaration),
        message,
        line: None,
    }
}

#[cfg(test)]
mod tests;
