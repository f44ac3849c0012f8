//! The verdict on what stands in the form, and what follows from it.

use super::{band, taken};
use crate::plan::sheet::{Measurement, Picked, Proposal, Taking, Wrong, judge};
use crate::service::{BenchSheet, KeptInstrument, TicketPage, is_past, proposal};
use crate::web::form::Fields;
use crate::web::moment::day;
use askama::Template;
use jiff::civil::Date;

/// What is said of a measurement.
#[derive(Template)]
#[template(path = "parts/measure_look.html")]
pub struct Look {
    summary: String,
    code: &'static str,
    word: &'static str,
    /// What it came to, with its spread; empty while nothing is typed.
    said: String,
    /// That the instrument is past its date; empty when it is not, or nobody said which it is.
    past_due: String,
    /// What cannot be taken as it stands.
    wrong: Vec<Wrong>,
    /// What to do when it is out; empty when it is not.
    out: &'static str,
    /// What is missing before a part can be chosen; empty when nothing is.
    missing: String,
    found: Option<Picked>,
}

impl Look {
    /// What is said today of what stands in the form.
    pub fn of_form(
        measurement: &Measurement,
        page: &TicketPage,
        sheet: &BenchSheet,
        typed: &Fields,
        today: Date,
    ) -> Self {
        let look = match taken(measurement, sheet, typed) {
            None => Self::nothing("Nothing is typed yet."),
            Some(Ok(taking)) => Self::of_taking(measurement, page, sheet, &taking),
            Some(Err(wrong)) => Self { wrong, ..Self::nothing("This cannot be taken as it stands.") },
        };
        let nth = typed.get("instrument").and_then(|nth| nth.parse::<i32>().ok());
        let used = sheet.instruments.iter().find(|kept| nth == Some(kept.nth));
        Self { past_due: used.map_or_else(String::new, |used| past_due(used, today)), ..look }
    }

    fn nothing(summary: &str) -> Self {
        Self {
            summary: summary.to_owned(),
            code: "open",
            word: "not taken",
            said: String::new(),
            past_due: String::new(),
            wrong: Vec::new(),
            out: "",
            missing: String::new(),
            found: None,
        }
    }

    /// What is said of a taking.
    pub fn of_taking(measurement: &Measurement, page: &TicketPage, sheet: &BenchSheet, taking: &Taking) -> Self {
        let band = band(measurement, page);
        let verdict = judge(Some(taking.value), &band);
        let (missing, found) = match proposal(measurement, taking, &band, &sheet.shelf, &page.book.limits) {
            Proposal::Nothing => (String::new(), None),
            Proposal::Missing(what) => (what, None),
            Proposal::Found(found) => (String::new(), Some(found)),
        };
        let scale = measurement.scale;
        let of = match (taking.taken.len(), measurement.readings) {
            (1, 1) => String::new(),
            (1, asked) => format!("; read once of {asked} times, and one reading has no spread"),
            (read, asked) if read < asked => {
                format!("; read {read} of {asked} times, {} apart", scale.say(taking.spread))
            }
            (read, _) => format!("; read {read} times, {} apart", scale.say(taking.spread)),
        };
        let code = verdict.code();
        Self {
            summary: verdict.sentence(scale),
            code,
            word: verdict.word(),
            said: format!("{}{of}", scale.say(taking.value)),
            past_due: String::new(),
            wrong: Vec::new(),
            out: if matches!(code, "out" | "allowed") { measurement.out } else { "" },
            missing,
            found,
        }
    }

    /// What is missing before a part can be chosen.
    pub fn missing(&self) -> &str {
        &self.missing
    }

    /// What was worked out, for the form that chooses.
    pub const fn found(&self) -> Option<&Picked> {
        self.found.as_ref()
    }
}

/// That an instrument is past its date, before anything is saved; empty when it is not.
fn past_due(used: &KeptInstrument, today: Date) -> String {
    match used.due.filter(|_| is_past(used, today)) {
        Some(due) => format!(
            "{} is past its calibration date: it was good through {}. Take another one, or the reading says so for ever.",
            used.name,
            day(due)
        ),
        None => String::new(),
    }
}
