//! How one step stands on one job.

use crate::job::fact_named;
use crate::plan::steps::{OutOfTurn, Step, out_of_turn};
use crate::service::TicketPage;
use crate::ticket::{Approval, Found, Logged, Severity, UNDO, done, in_words, next_place};
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

/// Why a step that cannot be undone may not be done yet; empty when it may.
pub fn locked(page: &TicketPage, step: &Step) -> &'static str {
    if !step.is_for_good(&page.revision.contents.added) {
        return "";
    }
    match page.standing.build {
        Approval::Signed => "",
        Approval::Missing => "This cannot be undone. The customer has not signed the current version yet.",
        Approval::Void => "This cannot be undone. The build changed after the customer signed: send the new version.",
        Approval::Declined => "This cannot be undone, and the customer declined the current version.",
    }
}
