//! The checklist of a job: every step of the trade by phase, and which of them this job needs.
//!
//! **Adding a step** is one declaration in a file of `phases/`. What makes it part of a job is a condition
//! over facts, three-valued like a rule's: while it cannot be decided, the step waits for the facts that
//! would settle it. `order.*` facts are places in the job's log; each is filled by ticking a step that
//! names it and is never typed.

mod hazard;
mod phases;
mod step;

pub use step::{Phase, Step};

use crate::job::{FactId, Job};
use crate::rules::Truth;

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

/// The step whose place in the log is this fact. Such a fact is filled by the log and never typed.
///
/// Where several steps fill one fact, the first in the order of the work.
pub fn filled_by(fact: FactId) -> Option<&'static Step> {
    steps().find(|step| step.order_fact() == Some(fact))
}

#[cfg(test)]
mod tests;
