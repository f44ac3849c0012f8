//! One measurement: how it is taken, with what, against which limit; the form; the part by it; its history.

use super::line::Line;
use super::list::{Stands, latest, stands};
use super::look::Look;
use super::{band, taken};
use crate::plan::sheet::{
    Fit, Instrument, Measurement, Picked, SetKind, Wrong, fitted_asked, how_to_write, reading_field,
};
use crate::rules::Known;
use crate::service::{BenchSheet, KeptInstrument, TicketPage, is_past, taking_of};
use crate::web::findings::{FactLink, From, fact_link};
use crate::web::form::{Fields, FormState};
use crate::web::frame::Frame;
use crate::web::moment::{day, today};
use crate::web::pages::ticket::{Head, Now};
use askama::Template;
use jiff::civil::Date;

/// The page of one measurement.
#[derive(Template)]
#[template(path = "pages/measure.html")]
pub struct OnePage {
    frame: Frame,
    head: Head,
    measurement: &'static Measurement,
    open: bool,
    /// What was just saved, in a sentence; empty when nothing was.
    saved: &'static str,
    revision: i32,
    /// Each edge of its band: name, number, mark, the limit's own page.
    edges: Vec<(&'static str, String, String, String)>,
    /// The facts its limit waits for.
    waits: Vec<FactLink>,
    /// The number that counts now, with its verdict; empty when nobody took it.
    now: String,
    code: &'static str,
    word: &'static str,
    sentence: String,
    /// What else has to be said of it.
    more: Vec<String>,
    /// The latest reading, to choose a part by.
    reading: Option<i32>,
    /// What follows from the latest reading.
    found: Option<Picked>,
    /// The part that was chosen by it already.
    chosen: String,
    /// What is missing before a part can be chosen by it.
    missing: String,
    set: Option<SetKind>,
    instruments: Vec<Tool>,
    fields: Vec<NumberField>,
    unit: &'static str,
    unit_name: &'static str,
    hint: String,
    fitted_hint: &'static str,
    fitted_many: bool,
    /// Is there an unlikely number in the form that is taken when somebody says that it is so?
    doubted: bool,
    wrong: Vec<Wrong>,
    look: Look,
    lines: Vec<Line>,
    /// Readings of the unit's earlier jobs; each with whether it surely is the same unit.
    earlier: Vec<(Line, bool)>,
    form: FormState,
}

/// An instrument to choose.
struct Tool {
    nth: i32,
    name: String,
    dated: String,
}

/// A field for one reading.
struct NumberField {
    name: String,
    label: String,
}

/// The form as it is first shown: the instrument used last for this, and what is fitted as far as it is known.
pub fn held(measurement: &Measurement, sheet: &BenchSheet) -> Fields {
    let mut fields = Fields::default();
    let Some(latest) = latest(measurement, sheet) else { return fields };
    if let Some((nth, _)) = latest.instrument {
        fields.set("instrument", nth.to_string());
    }
    // Once a part was chosen, something else is in.
    if latest.chosen.is_none() {
        let fitted: Vec<_> = latest.fitted.iter().map(|read| format!("{} {}", read.typed, read.unit)).collect();
        fields.set("fitted", fitted.join(", "));
    }
    fields
}

/// How an instrument stands with its date: `good through ...`, `past its date since ...`, `no date known`.
pub fn dated(instrument: &KeptInstrument, on: Date) -> String {
    match instrument.due {
        None => "no calibration date known".to_owned(),
        Some(due) if is_past(instrument, on) => format!("PAST ITS DATE: was good through {}", day(due)),
        Some(due) => format!("good through {}", day(due)),
    }
}

fn tools(measurement: &Measurement, sheet: &BenchSheet, on: Date) -> Vec<Tool> {
    let usual = |kept: &&KeptInstrument| kept.kind == measurement.instrument.code();
    let in_use = sheet.instruments.iter().filter(|kept| !kept.retired);
    let (first, rest): (Vec<_>, Vec<_>) = in_use.partition(usual);
    let named = |kept: &KeptInstrument| {
        let kind = Instrument::from_code(&kept.kind).map_or("", Instrument::label);
        Tool { nth: kept.nth, name: format!("{} ({kind})", kept.name), dated: dated(kept, on) }
    };
    first.into_iter().chain(rest).map(named).collect()
}

impl OnePage {
    /// The page.
    pub fn new(
        frame: Frame,
        page: &TicketPage,
        sheet: &BenchSheet,
        now: &Now,
        measurement: &'static Measurement,
        form: FormState,
        saved: &str,
    ) -> Self {
        let last = latest(measurement, sheet);
        let Stands { value, verdict, differs } = stands(measurement, page, last);
        let facts = &page.revision.contents.facts;
        let (edges, waits) = match band(measurement, page) {
            Known::Yes(band, _) => {
                let limits = [&band.least, &band.tight, &band.aim, &band.loose, &band.most];
                let pages = limits.into_iter().flatten().map(|edge| {
                    edge.limit.map_or_else(String::new, |limit| format!("/limits/{}", limit.declaration().name))
                });
                let told = band.told(measurement.scale).into_iter().zip(pages);
                (told.map(|((name, value, mark), href)| (name, value, mark, href)).collect(), Vec::new())
            }
            Known::Waits(missing) => {
                let link = |fact: crate::job::FactId| {
                    fact_link(fact.declaration().path, facts, From::Ticket(page.ticket.number))
                };
                (Vec::new(), missing.iter().map(link).collect())
            }
        };
        let looked = last.map(|reading| Look::of_taking(measurement, page, sheet, &taking_of(reading)));
        let wrong = taken(measurement, sheet, form.typed()).and_then(Result::err).unwrap_or_default();
        let habit = sheet.shelf.habit.of(measurement.scale);
        let mut more = vec![differs, last.map(super::line::past_due).unwrap_or_default()];
        more.retain(|text| !text.is_empty());
        let on = today(now.at, &now.zone);
        let nth = |nth: usize| NumberField {
            name: reading_field(nth),
            label: if measurement.readings == 1 { "Reading".to_owned() } else { format!("Reading {nth}") },
        };
        Self {
            head: Head::new(page),
            open: page.ticket.stage.open(),
            saved: match saved {
                "reading" => "Saved. It stands on the job now.",
                "part" => "Saved. Fit it, then measure again.",
                "struck" => "Struck out. It counts no more, and stays in the history below.",
                _ => "",
            },
            revision: page.ticket.revision,
            edges,
            waits,
            now: value.map_or_else(String::new, |value| measurement.scale.say(value)),
            code: verdict.code(),
            word: verdict.word(),
            sentence: verdict.sentence(measurement.scale),
            more,
            reading: last.map(|reading| reading.turn),
            found: looked.as_ref().and_then(Look::found).cloned(),
            chosen: last.and_then(|reading| reading.chosen.as_ref()).map_or_else(String::new, |one| one.part.clone()),
            missing: looked.map_or_else(String::new, |look| look.missing().to_owned()),
            set: measurement.fit.and_then(Fit::set),
            instruments: tools(measurement, sheet, on),
            fields: (1..=measurement.readings).map(nth).collect(),
            unit: habit.symbol,
            unit_name: habit.name,
            hint: how_to_write(measurement.scale, habit),
            fitted_hint: measurement.fit.map_or("", fitted_asked),
            fitted_many: matches!(measurement.fit, Some(Fit::Pack(_))),
            doubted: wrong.iter().any(|wrong| wrong.possible),
            wrong,
            look: Look::of_form(measurement, page, sheet, form.typed(), on),
            lines: sheet.readings.iter().map(|reading| Line::of(reading, &now.zone)).collect(),
            earlier: sheet
                .earlier
                .iter()
                .map(|reading| (Line::of(reading, &now.zone), sheet.same_unit.contains(&reading.ticket)))
                .collect(),
            measurement,
            form,
            frame,
        }
    }

    /// What was perhaps meant in a field: the button's value and its words.
    fn meant(&self, field: &str) -> Vec<(String, String)> {
        let wrong = self.wrong.iter().filter(|wrong| wrong.field == field);
        wrong.flat_map(|wrong| &wrong.meant).map(|one| (format!("{field}={}", one.typed), one.typed.clone())).collect()
    }

    /// Is this the instrument that is chosen?
    fn is_used(&self, tool: &Tool) -> bool {
        self.form.value("instrument") == tool.nth.to_string()
    }
}
