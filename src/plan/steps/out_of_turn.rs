//! What doing a step now would spoil: the rules about the order of the work, asked before it is done.

use super::{Step, steps};
use crate::job::{FactId, Job};
use crate::rules::{Limits, Rule, rules};

/// The family of rules about the order of the work.
const ORDER: &str = "SEQ";

/// Why a step should not be done now.
#[derive(Clone, Copy, Debug)]
pub struct OutOfTurn {
    /// The rule that would be broken.
    pub rule: &'static Rule,
    /// The step to do first; none when what is done already makes it too late.
    pub first: Option<&'static Step>,
}

/// Everything that doing `step` next, at this place in the log, would break at once or when the rest follows.
///
/// Two things are tried: the step at this place, and the step at this place with each other step that is
/// still to be done right after it. Where the other way round would be well, the other step goes first.
pub fn out_of_turn(job: &Job, added: &[String], step: &Step, place: u32) -> Vec<OutOfTurn> {
    let Some(fact) = step.fills(added) else { return Vec::new() };
    let order: Vec<&'static Rule> = rules().filter(|rule| rule.family() == ORDER).collect();
    let broken = |job: &Job, rule: &Rule| rule.verdict(job, &Limits::default()).value() == Some(&true);
    let now = with(job, &[(fact, place)]);
    let mut found: Vec<OutOfTurn> = order
        .iter()
        .filter(|rule| broken(&now, rule) && !broken(job, rule))
        .map(|rule| OutOfTurn { rule, first: None })
        .collect();
    for other in steps().filter(|other| is_to_come(other, job, added)) {
        let Some(later) = other.fills(added).filter(|later| *later != fact) else { continue };
        let after = with(job, &[(fact, place), (later, place + 1)]);
        let before = with(job, &[(later, place), (fact, place + 1)]);
        for rule in order.iter().filter(|rule| broken(&after, rule) && !broken(&before, rule)) {
            if found.iter().all(|known| known.rule.code != rule.code) {
                found.push(OutOfTurn { rule, first: Some(other) });
            }
        }
    }
    found
}

/// Is it part of the job and not done yet?
fn is_to_come(step: &Step, job: &Job, added: &[String]) -> bool {
    let place = step.order_fact().and_then(|fact| job.slot(fact).json()).and_then(|place| place.as_u64());
    place.unwrap_or_default() == 0 && step.needed(job, added).value() == Some(&true)
}

fn with(job: &Job, places: &[(FactId, u32)]) -> Job {
    let mut job = job.clone();
    for (fact, place) in places {
        // A place in the log is a count from 1, which every such fact may be.
        job.slot_mut(*fact).read(&(*place).into(), fact.declaration()).ok();
    }
    job
}
