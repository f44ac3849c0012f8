//! The job's step log: what was done, in the order it was done, and what that makes of the facts of order.

use super::coded::coded;
use crate::job::{FactId, FactSet, Job};
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

/// What the facts of order are by this log. What the unit has only by a fact that is `planned` is still to be done.
///
/// A fact that several steps fill has the place of the last, once none of them is still to come. Once there is
/// a log, work that is no part of this job and stands in no entry is known not to be done: 0. What is still to be
/// done, and what may have to be, is unknown.
pub fn order(log: &[Logged], job: &Job, added: &[String], planned: FactSet) -> BTreeMap<FactId, Option<u32>> {
    let mut order: BTreeMap<FactId, Option<u32>> = BTreeMap::new();
    for step in steps() {
        let Some(fact) = step.order_fact() else { continue };
        let place = match done(log, step.code).filter(|entry| entry.fills.is_some()) {
            Some(entry) => u32::try_from(entry.place).ok(),
            None if log.is_empty() => None,
            None => (step.is_wanted(job, added, planned).value() == Some(&false)).then_some(0),
        };
        let of_all = |others: &mut Option<u32>| *others = others.zip(place).map(|(one, other)| one.max(other));
        order.entry(fact).and_modify(of_all).or_insert(place);
    }
    order
}

/// The permanent steps that changed this unit for good, by code: does the step stand, or was it taken back?
///
/// A step that was only tried (the yoke in its bushing, without honing) changed nothing.
pub fn done_here(log: &[Logged]) -> BTreeMap<String, bool> {
    let permanent = steps().filter(|step| step.permanent);
    let changed = |step: &Step, entry: &Logged| {
        entry.step == step.code && entry.act == Act::Done && (step.order.is_none() || entry.fills.is_some())
    };
    permanent
        .filter(|step| log.iter().any(|entry| changed(step, entry)))
        .map(|step| (step.code.to_owned(), done(log, step.code).is_some_and(|entry| changed(step, entry))))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{BridgeDemand, Cooler, Demand, fact_named};
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
        let order = order(log, &Job::plain(), &[], FactSet::EMPTY);
        move |path| order[&fact_named(path).unwrap()]
    }

    #[test]
    fn without_a_log_nothing_is_known_of_the_order() {
        assert!(order(&[], &Job::plain(), &[], FactSet::EMPTY).values().all(Option::is_none));
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
        let order = order(&[entry(1, "IN-01", Act::Done)], &job, &[], FactSet::EMPTY);
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
    fn work_that_is_needed_or_added_and_not_done_is_no_work_that_will_not_be_done() {
        let log = [entry(1, "WA-01", Act::Done)];
        let place = |job: &Job, added: &[&str], path: &str| {
            let added: Vec<_> = added.iter().map(|code| (*code).to_owned()).collect();
            order(&log, job, &added, FactSet::EMPTY)[&fact_named(path).unwrap()]
        };
        let with = |change: fn(&mut Job)| {
            let mut job = Job::plain();
            change(&mut job);
            job
        };
        type Change = fn(&mut Job);
        let cases: [(&str, Change, Change); 5] = [
            ("order.insert", |j| j.case.threads_bad.set(1), |j| j.case.threads_bad.set(0)),
            ("order.insert", |j| j.bell.insert_fitted.set(true), |j| j.bell.insert_fitted.set(false)),
            ("order.insert", |j| j.case.threads_bad.forget(), |j| j.case.threads_bad.set(0)),
            (
                "order.bridge",
                |j| j.valve_body.bridge.set(BridgeDemand::Required),
                |j| {
                    j.valve_body.bridge.set(BridgeDemand::Required);
                    j.case.bridge_lowered.set(true);
                },
            ),
            (
                "order.plug",
                |j| j.valve_body.feed_plug.set(Demand::Required),
                |j| j.valve_body.feed_plug.set(Demand::Either),
            ),
        ];
        for (path, waits, spares) in cases {
            assert_eq!((place(&with(waits), &[], path), place(&with(spares), &[], path)), (None, Some(0)), "{path}");
        }
        for (code, path) in [("MC-04", "order.vent_tap"), ("MC-10", "order.bushing_hone"), ("MC-06", "order.insert")] {
            let plain = Job::plain();
            assert_eq!((place(&plain, &[code], path), place(&plain, &[], path)), (None, Some(0)), "{code}");
        }
    }

    #[test]
    fn a_fact_of_two_steps_is_known_when_neither_is_still_to_come() {
        let mut job = Job::plain();
        job.valve_body.feed_plug.set(Demand::Required);
        let plug = fact_named("order.plug").unwrap();
        let ball = ["MC-08".to_owned()];
        let mut log = vec![entry(1, "MC-08", Act::Done)];
        assert_eq!(order(&log, &job, &ball, FactSet::EMPTY)[&plug], None, "the plug is still to be driven");
        log.push(entry(2, "MC-09", Act::Done));
        assert_eq!(order(&log, &job, &ball, FactSet::EMPTY)[&plug], Some(2));
    }

    #[test]
    fn what_was_changed_for_good_is_remembered_and_a_trial_is_no_change() {
        let trial = Logged { fills: None, ..entry(1, "MC-10", Act::Done) };
        let mut log = vec![trial, entry(2, "MC-02", Act::Done), entry(3, "IN-01", Act::Done)];
        let said = |log: &[Logged]| done_here(log).into_iter().collect::<Vec<_>>();
        assert_eq!(said(&log), [("MC-02".to_owned(), true)]);
        log.push(entry(4, "MC-02", Act::Undone));
        log.push(entry(5, "MC-10", Act::Done));
        assert_eq!(said(&log), [("MC-02".to_owned(), false), ("MC-10".to_owned(), true)]);
    }

    #[test]
    fn of_two_steps_that_fill_one_fact_the_later_counts_while_it_stands() {
        let mut log = vec![entry(1, "MC-09", Act::Done), entry(2, "MC-08", Act::Done)];
        assert_eq!(places(&log)("order.plug"), Some(2));
        log.push(entry(3, "MC-08", Act::Undone));
        assert_eq!(places(&log)("order.plug"), Some(1));
    }
}
