//! The list of a job's measurements with their verdicts.

use super::line::past_due;
use crate::plan::sheet::{Chapter, Fills, Measurement, Verdict, judge, measurements};
use crate::rules::Known;
use crate::service::{self, BenchSheet, Reading, TicketPage};
use crate::web::findings::{From, fact_link};
use crate::web::frame::Frame;
use crate::web::pages::ticket::{Head, Now};
use askama::Template;

/// The page of all measurements.
#[derive(Template)]
#[template(path = "pages/measures.html")]
pub struct ListPage {
    frame: Frame,
    head: Head,
    summary: String,
    /// What is out, for a glance: name and label.
    out: Vec<(&'static str, &'static str)>,
    chapters: Vec<ChapterView>,
    /// How the air checks stand: that one is no number.
    air_checks: String,
    /// Measurements that this job does not need.
    spared: Vec<(&'static str, &'static str)>,
}

struct ChapterView {
    label: &'static str,
    id: String,
    rows: Vec<Row>,
}

/// One measurement.
struct Row {
    name: &'static str,
    label: &'static str,
    /// What it came to; empty when nobody took it.
    said: String,
    code: &'static str,
    word: &'static str,
    sentence: String,
    /// What else has to be said: another number on the job's sheets, a date, a missing fact.
    more: Vec<String>,
}

/// How a measurement stands on a job.
pub struct Stands {
    /// The number that counts, in the scale's own unit.
    pub value: Option<f64>,
    /// What is said of it.
    pub verdict: Verdict,
    /// That the job's own sheets say something else than the latest reading; empty when they agree.
    pub differs: String,
}

/// How a measurement stands: the number on the job's sheets counts, as it does for the rules.
pub fn stands(measurement: &Measurement, page: &TicketPage, latest: Option<&Reading>) -> Stands {
    let facts = &page.revision.contents.facts;
    let own = latest.map(|reading| reading.number);
    let written = match measurement.fills {
        Fills::Number(_) => measurement.fact().map(|fact| (fact, facts.value(fact).and_then(|value| value.as_f64()))),
        Fills::Nothing | Fills::Word(..) => None,
    };
    let value = written.map_or(own, |(_, value)| value);
    let differs = match (written, own) {
        (Some((fact, Some(value))), Some(own)) if (value - own).abs() > 1e-9 => {
            let by = facts.origin(fact).map_or("somebody", |origin| origin.by.as_str());
            format!(
                "{by} wrote {} on the job since; the last reading here was {}.",
                measurement.scale.say(value),
                measurement.scale.say(own)
            )
        }
        (Some((fact, Some(_))), None) => facts.origin(fact).map_or_else(String::new, |origin| {
            format!(
                "Written on the job without a reading here: {}, {}.",
                origin.source.label().to_lowercase(),
                origin.by
            )
        }),
        (Some((_, None)), Some(own)) => {
            format!("The job's own sheet is blank again; the last reading here was {}.", measurement.scale.say(own))
        }
        _ => String::new(),
    };
    Stands { value, verdict: judge(value, &super::band(measurement, page)), differs }
}

/// The reading of a measurement that counts on this job.
pub fn latest<'a>(measurement: &Measurement, sheet: &'a BenchSheet) -> Option<&'a Reading> {
    service::latest(&sheet.readings, measurement.name)
}

fn belongs(measurement: &Measurement, page: &TicketPage, latest: Option<&Reading>) -> bool {
    let applies = measurement.applies(page.revision.contents.facts.job());
    applies.value() != Some(&false) || latest.is_some()
}

/// How far the sheet is: `5 of 31 measurements taken, 1 out`.
pub fn summary(page: &TicketPage, sheet: &BenchSheet) -> String {
    let all = measurements().map(|measurement| (measurement, latest(measurement, sheet)));
    let needed: Vec<_> = all.filter(|(measurement, latest)| belongs(measurement, page, *latest)).collect();
    let verdicts: Vec<_> =
        needed.iter().map(|(measurement, latest)| stands(measurement, page, *latest).verdict).collect();
    let taken = verdicts.iter().filter(|verdict| **verdict != Verdict::NotTaken).count();
    let out = verdicts.iter().filter(|verdict| matches!(verdict, Verdict::Out(..))).count();
    let out = if out == 0 { "none out".to_owned() } else { format!("{out} out") };
    format!("{taken} of {} measurements taken, {out}", needed.len())
}

impl ListPage {
    /// The page.
    pub fn new(frame: Frame, page: &TicketPage, sheet: &BenchSheet, _: &Now) -> Self {
        let (mut out, mut spared, mut chapters) = (Vec::new(), Vec::new(), Vec::new());
        for chapter in Chapter::ALL {
            let mut rows = Vec::new();
            for measurement in measurements().filter(|measurement| measurement.chapter == chapter) {
                let latest = latest(measurement, sheet);
                if !belongs(measurement, page, latest) {
                    spared.push((measurement.name, measurement.label));
                    continue;
                }
                let row = row(measurement, page, latest);
                if row.code == "out" {
                    out.push((measurement.name, measurement.label));
                }
                rows.push(row);
            }
            let id = format!("c-{chapter:?}").to_lowercase();
            chapters.push(ChapterView { label: chapter.label(), id, rows });
        }
        let contents = &page.revision.contents;
        Self {
            head: Head::new(page),
            summary: summary(page, sheet),
            air_checks: contents.facts.words(contents.facts.job().bench.air_checks.id()),
            out,
            chapters,
            spared,
            frame,
        }
    }
}

fn row(measurement: &'static Measurement, page: &TicketPage, latest: Option<&Reading>) -> Row {
    let Stands { value, verdict, differs } = stands(measurement, page, latest);
    let mut more = vec![differs, latest.map(past_due).unwrap_or_default()];
    if let Verdict::CannotSay(facts) = &verdict {
        let facts: Vec<_> = facts.iter().map(|fact| fact.declaration().label).collect();
        more.push(format!("It waits for: {}.", facts.join("; ")));
    }
    if let Known::Waits(facts) = measurement.applies(page.revision.contents.facts.job()) {
        let facts: Vec<_> = facts
            .iter()
            .map(|fact| {
                fact_link(fact.declaration().path, &page.revision.contents.facts, From::Ticket(page.ticket.number))
                    .label
            })
            .collect();
        more.push(format!("Whether this job needs it waits for: {}.", facts.join("; ")));
    }
    more.retain(|text| !text.is_empty());
    Row {
        name: measurement.name,
        label: measurement.label,
        said: value.map_or_else(String::new, |value| measurement.scale.say(value)),
        code: verdict.code(),
        word: verdict.word(),
        sentence: verdict.sentence(measurement.scale),
        more,
    }
}
