//! How one step stands on one job.

use crate::job::fact_named;
use crate::plan::steps::{OutOfTurn, Step, out_of_turn};
use crate::service::TicketPage;
use crate::ticket::{Found, Logged, Severity, UNDO, done, in_words, next_place, not_passed, unsigned};
use crate::web::moment::moment;
use crate::web::pages::ticket::Now;
use jiff::tz::TimeZone;

/// A step that was done.
pub struct Done {
    /// Its place in the log.
    pub place: i32,
    /// Initials, name, moment.
    pub who: String,
    /// What was read, with its unit.
    pub read: Vec<String>,
    /// Why it was done again; empty for most.
    pub reason: String,
    /// Can it still be taken back by one tap?
    pub fresh: bool,
    /// What the rules now say of what was read and of its place.
    pub found: Vec<Verdict>,
}

/// A finding in a line.
pub struct Verdict {
    /// `stop`, `caution` or `note`.
    pub severity: &'static str,
    /// What it is.
    pub title: String,
    /// What to do.
    pub fix: String,
}

impl Verdict {
    /// The line for a finding.
    pub fn of(found: &Found) -> Self {
        let severity = match found.severity {
            Severity::Stop => "stop",
            Severity::Caution => "caution",
            Severity::Note => "note",
        };
        Self { severity, title: found.title.clone(), fix: found.fix.clone() }
    }
}

impl Done {
    /// How the step was done, if it was.
    pub fn of(page: &TicketPage, step: &Step, now: &Now) -> Option<Self> {
        let entry = done(&page.log, step.code)?;
        Some(Self {
            place: entry.place,
            who: who(entry, &now.zone),
            read: entry.typed.iter().filter_map(|(path, value)| read(path, value.as_str()?)).collect(),
            reason: entry.reason.clone(),
            fresh: page.ticket.stage.open() && now.at.duration_since(entry.at) <= UNDO,
            found: found(page, step, entry),
        })
    }
}

fn who(entry: &Logged, zone: &TimeZone) -> String {
    let initials = if entry.initials.is_empty() { String::new() } else { format!("{}, ", entry.initials) };
    format!("{initials}{}, {}", entry.by, moment(entry.at, zone))
}

/// `Front end play: 0.012 in`.
fn read(path: &str, typed: &str) -> Option<String> {
    let declaration = fact_named(path)?.declaration();
    let value = crate::job::read_text(typed, declaration).ok().flatten()?;
    Some(format!("{}: {}", declaration.label, in_words(declaration, &value)))
}

fn found(page: &TicketPage, step: &Step, entry: &Logged) -> Vec<Verdict> {
    let about = |fact: &String| step.reads.contains(&fact.as_str()) || entry.fills.as_ref() == Some(fact);
    let found = page.revision.judgement.findings.iter();
    found.filter(|found| found.facts.iter().any(about)).map(Verdict::of).collect()
}

/// What speaks against doing a step now.
pub fn warnings(page: &TicketPage, step: &Step) -> Vec<OutOfTurn> {
    let contents = &page.revision.contents;
    let place = u32::try_from(next_place(&page.log)).unwrap_or_default();
    out_of_turn(contents.facts.job(), &contents.added, step, place)
}

/// Why a step may not be done before the customer signs; empty when no signature is missing.
pub fn locked(page: &TicketPage, step: &Step) -> String {
    unsigned(step, &page.revision.contents.added, &page.standing).unwrap_or_default()
}

/// What keeps a hold point from being done: the stops that what is written down of it leads to.
pub fn failed(page: &TicketPage, step: &Step) -> Vec<Verdict> {
    if done(&page.log, step.code).is_some() {
        return Vec::new();
    }
    not_passed(step, &page.revision.judgement).map(Verdict::of).collect()
}
