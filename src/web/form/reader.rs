//! Reads a form's fields into types, and gathers every problem before it gives up.

use super::{Fields, Problem};
use crate::quantity::{Cents, cut};
use jiff::civil::Date;
use uuid::Uuid;

/// Something a form is read into.
pub trait Entry: Sized {
    /// Reads it. What could not be read has been told to the reader; the value is then not used.
    fn read(reader: &mut Reader<'_>) -> Self;
}

/// Walks through the fields of a form and notes what is wrong.
pub struct Reader<'a> {
    fields: &'a Fields,
    problems: Vec<Problem>,
}

impl<'a> Reader<'a> {
    /// Starts on a form.
    pub const fn new(fields: &'a Fields) -> Self {
        Self { fields, problems: Vec::new() }
    }

    /// All that was sent.
    pub const fn fields(&self) -> &'a Fields {
        self.fields
    }

    /// Notes a problem at a field.
    pub fn wrong(&mut self, field: impl Into<String>, message: impl Into<String>) {
        self.problems.push(Problem { field: field.into(), message: message.into() });
    }

    /// What was wrong, in the order it was met.
    pub fn problems(self) -> Vec<Problem> {
        self.problems
    }

    /// Words on one line, at most so many characters; empty when left out.
    pub fn line(&mut self, field: &str, label: &str, most: usize) -> String {
        let text = self.words(field, label, most);
        if text.contains(char::is_control) {
            self.wrong(field, format!("{label} must stand on one line. Take out the line breaks."));
        }
        text
    }

    /// Words on one line that may not be left out; `ask` is the sentence said when they are.
    pub fn needed_line(&mut self, field: &str, label: &str, most: usize, ask: &str) -> String {
        let text = self.line(field, label, most);
        if text.is_empty() {
            self.wrong(field, ask);
        }
        text
    }

    /// Words over several lines, at most so many characters; empty when left out.
    pub fn words(&mut self, field: &str, label: &str, most: usize) -> String {
        let text = self.fields.get(field).unwrap_or_default().trim().replace("\r\n", "\n");
        let count = text.chars().count();
        if count > most {
            self.wrong(field, format!("{label} has {count} characters. It can have {most} at most: shorten it."));
        }
        // A zero byte cannot be stored, and nobody types one.
        text.replace('\0', "")
    }

    /// Words over several lines that may not be left out.
    pub fn needed_words(&mut self, field: &str, label: &str, most: usize, ask: &str) -> String {
        let text = self.words(field, label, most);
        if text.is_empty() {
            self.wrong(field, ask);
        }
        text
    }

    /// A secret, exactly as typed.
    pub fn secret(&mut self, field: &str, ask: &str) -> String {
        let text = self.fields.get(field).unwrap_or_default();
        if text.is_empty() {
            self.wrong(field, ask);
        }
        text.to_owned()
    }

    /// A day; none when left out.
    pub fn date(&mut self, field: &str, label: &str) -> Option<Date> {
        let text = self.fields.get(field).unwrap_or_default().trim();
        if text.is_empty() {
            return None;
        }
        let date = text.parse().ok();
        if date.is_none() {
            self.wrong(
                field,
                format!(
                    "{label} cannot be \"{}\": write a real day as year-month-day, such as 2026-03-31.",
                    cut(text, 60)
                ),
            );
        }
        date
    }

    /// An amount of money, zero or more; none when left out.
    pub fn money(&mut self, field: &str, label: &str) -> Option<Cents> {
        let text = self.fields.get(field).unwrap_or_default().trim();
        if text.is_empty() {
            return None;
        }
        let cents = cents(text);
        if cents.is_none() {
            self.wrong(
                field,
                format!(
                    "{label} cannot be \"{}\": write an amount such as 1450 or 1450.00, up to 10,000,000.",
                    cut(text, 60)
                ),
            );
        }
        cents
    }

    /// One of a list of words.
    pub fn one_of<T>(&mut self, field: &str, ask: &str, find: impl FnOnce(&str) -> Option<T>) -> Option<T> {
        let found = find(self.fields.get(field).unwrap_or_default());
        if found.is_none() {
            self.wrong(field, ask);
        }
        found
    }

    /// A number that the page itself put in a hidden field; none when it is missing or was changed.
    pub fn number(&self, field: &str) -> Option<i64> {
        self.fields.get(field)?.parse().ok()
    }

    /// A key that the page itself put in a hidden field.
    pub fn key(&self, field: &str) -> Option<Uuid> {
        self.fields.get(field)?.parse().ok()
    }
}

/// `1,450`, `$1450`, `1450.5`, `1450.00`: at most two digits behind the point.
fn cents(text: &str) -> Option<Cents> {
    let plain = text.trim_start_matches('$').trim().replace(',', "");
    let (whole, part) = plain.split_once('.').unwrap_or((&plain, ""));
    let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty() || whole.len() > 8 || part.len() > 2 || !digits(whole) || !digits(part) {
        return None;
    }
    let cents: i64 = format!("{whole}{part:0<2}").parse().ok()?;
    (cents <= 1_000_000_000).then_some(Cents(cents))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_is_read_to_the_cent_or_not_at_all() {
        for (text, cents_meant) in
            [("1450", 145_000), ("$1,450.5", 145_050), ("0.05", 5), ("0", 0), ("10000000", 1_000_000_000)]
        {
            assert_eq!(cents(text), Some(Cents(cents_meant)), "{text}");
        }
        for text in ["-5", "1.234", "ten", "", ".", "1e3", "10000000.01", "999999999"] {
            assert_eq!(cents(text), None, "{text}");
        }
    }

    #[test]
    fn every_problem_is_noted_not_only_the_first() {
        let fields = Fields::parse(b"phone=&due=31.03.2026&price=much");
        let mut reader = Reader::new(&fields);
        reader.needed_line("phone", "Phone", 40, "Enter a phone number.");
        reader.date("due", "The promised day");
        reader.money("price", "The price");
        let problems = reader.problems();
        assert_eq!(
            problems.iter().map(|problem| problem.field.as_str()).collect::<Vec<_>>(),
            ["phone", "due", "price"]
        );
        assert!(problems[1].message.contains("31.03.2026"), "{}", problems[1].message);
    }

    #[test]
    fn a_line_holds_no_breaks_and_no_more_than_its_length() {
        let fields = Fields::parse(b"a=one%0Atwo&b=12345&c=1234");
        let mut reader = Reader::new(&fields);
        reader.line("a", "Name", 10);
        reader.line("b", "Name", 4);
        assert_eq!(reader.line("c", "Name", 4), "1234");
        assert_eq!(reader.problems().len(), 2);
    }
}
