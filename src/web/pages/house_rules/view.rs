//! What the pages of the shop's own rules show.

use crate::service::{OpenJob, Trial, Version, house_code};
use crate::ticket::{Severity, TicketFacts};
use crate::web::findings::{FactLink, From, fact_link};
use crate::web::moment::moment;
use jiff::tz::TimeZone;

/// One line of the list.
pub struct Row {
    /// Which rule.
    pub nth: i32,
    /// Its code.
    pub code: String,
    /// Its newest title.
    pub title: String,
    /// How bad it is, as its mark is drawn.
    pub severity: Severity,
    /// What it is at the moment, in words.
    pub state: String,
}

/// The list: a line each rule, from all versions, newest first within a rule.
pub fn rows(versions: &[Version]) -> Vec<Row> {
    versions.chunk_by(|a, b| a.nth == b.nth).map(row).collect()
}

fn row(versions: &[Version]) -> Row {
    let newest = &versions[0];
    Row {
        nth: newest.nth,
        code: house_code(newest.nth),
        title: newest.title.clone(),
        severity: severity(newest),
        state: state(versions),
    }
}

fn severity(version: &Version) -> Severity {
    Severity::from_code(&version.severity).unwrap_or(Severity::Note)
}

/// Which version is in force, and whether a newer one waits.
fn state(versions: &[Version]) -> String {
    let newest = versions[0].version;
    match versions.iter().find(|version| version.in_force) {
        Some(version) if version.version == newest => format!("In force, version {newest}"),
        Some(version) => {
            format!("Version {} is in force; version {newest} is written and not in force yet", version.version)
        }
        None => format!("Not in force; version {newest} is written"),
    }
}

/// One rule, whole.
pub struct One {
    /// Its line.
    pub row: Row,
    /// The newest version.
    pub newest: Shown,
    /// The version in force; none when it is off.
    pub in_force: Option<i32>,
    /// The older versions, newest first.
    pub older: Vec<Shown>,
}

/// One version.
pub struct Shown {
    /// What was kept.
    pub kept: Version,
    /// When it was written.
    pub made: String,
    /// How bad it is, in words.
    pub severity: &'static str,
}

impl One {
    /// The rule of these versions, newest first; there is at least one.
    pub fn new(versions: &[Version], zone: &TimeZone) -> Self {
        let shown = |version: &Version| Shown {
            kept: version.clone(),
            made: moment(version.at, zone),
            severity: severity(version).label(),
        };
        Self {
            row: row(versions),
            newest: shown(&versions[0]),
            in_force: versions.iter().find(|version| version.in_force).map(|version| version.version),
            older: versions[1..].iter().map(shown).collect(),
        }
    }

    /// Is the newest version the one in force?
    pub fn newest_in_force(&self) -> bool {
        self.in_force == Some(self.newest.kept.version)
    }
}

/// A trial in words.
pub struct Tried {
    /// What came of it.
    pub sentence: String,
    /// Jobs on which it would have fired.
    pub on_jobs: Vec<i64>,
    /// Are there more of them than are named?
    pub more: bool,
    /// Jobs on which it could not have decided, each with the facts it waits for.
    pub open_on: Vec<(i64, Vec<FactLink>)>,
    /// How many more of those there are than are named.
    pub more_open: usize,
    /// Who and when.
    pub by: String,
}

impl Tried {
    /// A trial, for people.
    pub fn new(trial: &Trial, zone: &TimeZone) -> Self {
        let jobs = if trial.whole { "jobs of this shop" } else { "newest jobs of this shop" };
        let open = match trial.open {
            0 => String::new(),
            1 => " On 1 it could not have decided.".to_owned(),
            open => format!(" On {open} it could not have decided."),
        };
        Self {
            sentence: format!("It would have fired on {} of {} {jobs}.{open}", trial.fired, trial.jobs),
            on_jobs: trial.on_jobs.clone(),
            more: usize::try_from(trial.fired).is_ok_and(|fired| fired > trial.on_jobs.len()),
            open_on: trial.open_on.iter().map(waiting).collect(),
            more_open: usize::try_from(trial.open).unwrap_or_default().saturating_sub(trial.open_on.len()),
            by: format!("{}, {}", trial.made_by, moment(trial.at, zone)),
        }
    }
}

/// Each fact leads to where it is written down on that job.
fn waiting(open: &OpenJob) -> (i64, Vec<FactLink>) {
    let nothing = TicketFacts::default();
    let links = open.waits.iter().map(|path| fact_link(path, &nothing, From::Ticket(open.job)));
    (open.job, links.collect())
}
