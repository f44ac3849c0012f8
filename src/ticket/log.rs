//! The job's step log: what was done, in the order it was done, and what that makes of the facts of order.

use super::coded::coded;
use crate::job::{FactId, Job, fact_named};
use crate::plan::steps::{Step, steps};
use jiff::{SignedDuration, Timestamp};
use serde_json::{Map, Value};
use std::collections::BTreeMap;

coded! {
    /// What an entry of the log says of its step.
    Act {
        /// It was done.
        Done = "done", "Done";
        /// It was not done after all, or what it did is undone.
        Undone = "undone", "Taken back";
    }
}

/// One entry. Nothing is ever taken out of a log; a step is taken back by another entry.
#[derive(Clone, Debug, PartialEq)]
pub struct Logged {
    /// Its place, counted from 1.
    pub place: i32,
    /// The step's code.
    pub step: String,
    /// What it says.
    pub act: Act,
    /// The initials put to it; empty for an ordinary step.
    pub initials: String,
    /// What was read, as it was typed, by the fact's path.
    pub typed: Map<String, Value>,
    /// Why it was taken back or done again; empty for most.
    pub reason: String,
    /// The `order.*` fact that this place is, when it is one.
    pub fills: Option<String>,
    /// The name of whoever signed in.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

/// How long a tick can be taken back by one tap, without a written reason.
pub const UNDO: SignedDuration = SignedDuration::from_secs(30);

/// The entry by which a step is done now; none while it is not.
pub fn done<'a>(log: &'a [Logged], code: &str) -> Option<&'a Logged> {
    log.iter().filter(|entry| entry.step == code).max_by_key(|entry| entry.place).filter(|entry| entry.act == Act::Done)
}

/// The place of the next entry.
pub fn next_place(log: &[Logged]) -> i32 {
    log.iter().map(|entry| entry.place).max().unwrap_or_default() + 1
}

/// What the facts of order are by this log.
///
/// A fact that several steps fill has the place of the last. Once there is a log, work that is optional or
/// no part of this job and stands in no entry is known not to be done: 0. What must still be done is unknown.
pub fn order(log: &[Logged], job: &Job, added: &[String]) -> BTreeMap<FactId, Option<u32>> {
    let mut order: BTreeMap<FactId, Option<u32>> = BTreeMap::new();
    for step in steps() {
        if let Some(fact) = step.order_fact() {
            let to_come = !log.is_empty() && (step.added_as.is_some() || is_no_part(step, job, added));
            let place = order.entry(fact).or_default();
            *place = (*place).max(to_come.then_some(0));
        }
    }
    for code in log.iter().map(|entry| &entry.step) {
        let Some(entry) = done(log, code) else { continue };
        if let Some(fact) = entry.fills.as_deref().and_then(fact_named) {
            let place = order.entry(fact).or_default();
            *place = (*place).max(u32::try_from(entry.place).ok());
        }
    }
    order
}

fn is_no_part(step: &Step, job: &Job, added: &[String]) -> bool {
    step.needed(job, added).value() == Some(&false)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::Cooler;
    use crate::plan::steps::step_named;

    fn entry(place: i32, code: &str, act: Act) -> Logged {
        Logged {
            place,
            step: code.into(),
            act,
            initials: String::new(),
            typed: Map::new(),
            reason: String::new(),
            fills: step_named(code).unwrap().order.map(str::to_owned),
            by: "Ada".into(),
            at: Timestamp::UNIX_EPOCH,
        }
    }

    fn places(log: &[Logged]) -> impl Fn(&str) -> Option<u32> + use<> {
        let order = order(log, &Job::plain(), &[]);
        move |path| order[&fact_named(path).unwrap()]
    }

    #[test]
    fn without_a_log_nothing_is_known_of_the_order() {
        assert!(order(&[], &Job::plain(), &[]).values().all(Option::is_none));
    }

    #[test]
    fn once_there_is_a_log_optional_work_is_known_not_to_be_done_and_the_rest_still_waits() {
        let place = places(&[entry(1, "IN-01", Act::Done)]);
        for path in ["vent_tap", "boss_drill", "insert", "bridge", "plug", "bushing_hone"] {
            assert_eq!(place(&format!("order.{path}")), Some(0), "{path}");
        }
        for path in ["final_wash", "output_fit", "front_end_play", "first_start", "cooler_flush"] {
            assert_eq!(place(&format!("order.{path}")), None, "{path}");
        }
    }

    #[test]
    fn a_step_that_is_no_part_of_the_job_has_no_place_in_it() {
        let mut job = Job::plain();
        job.cooling.cooler.set(Cooler::None);
        let order = order(&[entry(1, "IN-01", Act::Done)], &job, &[]);
        assert_eq!(order[&fact_named("order.cooler_flush").unwrap()], Some(0));
    }

    #[test]
    fn a_step_done_again_has_its_later_place_and_one_taken_back_has_none() {
        let mut log = vec![entry(1, "WA-01", Act::Done), entry(2, "MC-04", Act::Done), entry(3, "WA-01", Act::Done)];
        let place = places(&log);
        assert_eq!((place("order.final_wash"), place("order.vent_tap")), (Some(3), Some(2)));
        log.push(entry(4, "WA-01", Act::Undone));
        log.push(entry(5, "MC-04", Act::Undone));
        let place = places(&log);
        assert_eq!((place("order.final_wash"), place("order.vent_tap")), (None, Some(0)));
        assert_eq!((done(&log, "WA-01"), next_place(&log)), (None, 6));
    }

    #[test]
    fn of_two_steps_that_fill_one_fact_the_later_counts_while_it_stands() {
        let mut log = vec![entry(1, "MC-09", Act::Done), entry(2, "MC-08", Act::Done)];
        assert_eq!(places(&log)("order.plug"), Some(2));
        log.push(entry(3, "MC-08", Act::Undone));
        assert_eq!(places(&log)("order.plug"), Some(1));
    }
}
