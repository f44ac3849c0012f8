//! The checklist of a job: every step of the trade by phase, and which of them this job needs.
//!
//! **Adding a step** is one declaration in a file of `phases/`. What makes it part of a job is a condition
//! over facts, three-valued like a rule's: while it cannot be decided, the step waits for the facts that
//! would settle it. `order.*` facts are places in the job's log; each is filled by ticking a step that
//! names it and is never typed.

mod hazard;
mod out_of_turn;
mod phases;
mod reading;
mod step;

pub use out_of_turn::{OutOfTurn, out_of_turn};
pub use reading::{is_reading, limits_on};
pub use step::{Phase, SeenPaper, Step};

use crate::job::{FactId, FactSet, Job, fact_named};
use crate::rules::{Known, Truth};
use std::sync::LazyLock;

/// One step as it stands for one job.
#[derive(Clone, Copy, Debug)]
pub struct Due {
    /// Which step.
    pub step: &'static Step,
    /// Is it part of this job? Open while facts are missing that would settle it.
    pub applies: Truth,
}

/// Every step of the trade, in the order of the work.
pub fn steps() -> impl Iterator<Item = &'static Step> {
    phases::ALL.iter().copied().flatten()
}

/// The step of this code, however it is spelled (`wa-01`).
pub fn step_named(code: &str) -> Option<&'static Step> {
    steps().find(|step| step.code.eq_ignore_ascii_case(code.trim()))
}

/// Every step, each with the answer whether this job needs it, in the order of the work.
pub fn checklist(job: &Job) -> Vec<Due> {
    steps().map(|step| Due { step, applies: step.applies(job) }).collect()
}

/// Where a fact comes from that nobody types.
#[derive(Clone, Copy, Debug)]
pub enum Filler {
    /// Its value is the place of this step in the job's log.
    Log(&'static Step),
    /// It follows from the job's own papers: versions, prices, signatures.
    Papers,
}

/// The facts that follow from the job's own papers.
pub const FROM_PAPERS: [&str; 7] = [
    "paper.permanent_mods",
    "paper.permanent_ack",
    "paper.quoted_total",
    "paper.current_total",
    "paper.change_signed",
    "paper.spec_version",
    "paper.signed_version",
];

/// What fills this fact, when nobody types it.
pub fn filler(fact: FactId) -> Option<Filler> {
    let papers = || FROM_PAPERS.contains(&fact.declaration().path).then_some(Filler::Papers);
    filled_by(fact).map(Filler::Log).or_else(papers)
}

/// Facts of the unit that record what a step did to it. Doing what was agreed does not change what was agreed.
pub fn is_work_done(fact: FactId) -> bool {
    static READ: LazyLock<FactSet> = LazyLock::new(|| {
        let read = steps().flat_map(Step::facts_read);
        read.fold(FactSet::EMPTY, |all, fact| all.with(FactSet::of(fact)))
    });
    READ.contains(fact)
}

/// Is anything part of this job that cannot be undone, for its facts or because it was added by hand? What the unit has
/// only by a fact that is `planned` is still to be done.
pub fn permanent_work(job: &Job, added: &[String], planned: FactSet) -> Truth {
    steps().filter(|step| step.permanent).fold(Known::given(false), |any, step| {
        let in_log = step.order_fact().is_some_and(|fact| is_in_log(job, fact));
        any | if in_log { Known::given(true) } else { step.is_wanted(job, added, planned) }
    })
}

fn is_in_log(job: &Job, order: FactId) -> bool {
    job.slot(order).json().and_then(|place| place.as_u64()).is_some_and(|place| place > 0)
}

/// What is said to somebody who types a fact that nobody types; none for all other facts.
pub fn not_typed(path: &str) -> Option<String> {
    let fact = fact_named(path)?;
    let label = fact.declaration().label;
    Some(match filler(fact)? {
        Filler::Log(step) => format!(
            "{label}: this is the place of the step in the job's log and is not typed. Tick {} ({}) on the page of \
             the job's steps.",
            step.title, step.code
        ),
        Filler::Papers => {
            format!("{label}: this follows from the job's own versions, prices and signatures and is not typed.")
        }
    })
}

/// The step whose place in the log is this fact. Such a fact is filled by the log and never typed.
///
/// Where several steps fill one fact, the first in the order of the work.
pub fn filled_by(fact: FactId) -> Option<&'static Step> {
    steps().find(|step| step.order_fact() == Some(fact))
}

#[cfg(test)]
mod tests;
