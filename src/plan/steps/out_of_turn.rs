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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{fact_ids, fact_named};

    /// A harmless job in whose log these stand and nothing else.
    fn logged(places: &[(&str, u32)]) -> Job {
        let mut job = Job::plain();
        for fact in fact_ids().filter(|fact| fact.declaration().path.starts_with("order.")) {
            job.slot_mut(fact).read(&serde_json::Value::Null, fact.declaration()).expect("a blank");
        }
        let places: Vec<_> = places.iter().map(|(path, place)| (fact_named(path).expect(path), *place)).collect();
        with(&job, &places)
    }

    fn told(places: &[(&str, u32)], does: &str, place: u32) -> Vec<(&'static str, Option<&'static str>)> {
        let step = steps().find(|step| step.order == Some(does)).expect(does);
        let added = [step.code.to_owned()];
        let found = out_of_turn(&logged(places), &added, step, place);
        found.iter().map(|found| (found.rule.code, found.first.and_then(|first| first.order))).collect()
    }

    #[test]
    fn what_would_spoil_the_next_step_is_told_with_the_step_to_do_first() {
        let dry = [("order.drum_fit", 3), ("order.pump_torque", 4), ("order.front_end_play", 5)];
        let body_first = told(&dry, "order.valve_body_fit", 6);
        assert_eq!(body_first, [("SEQ-08", Some("order.air_check"))]);
        let tried = [dry.as_slice(), &[("order.air_check", 6)]].concat();
        assert_eq!(told(&tried, "order.valve_body_fit", 7), [], "with the air check behind it, nothing is spoiled");
        assert_eq!(told(&dry, "order.air_check", 6), [], "the right one of the two is told nothing");
    }

    #[test]
    fn what_is_too_late_already_is_told_without_a_step_to_do_first() {
        assert_eq!(told(&[("order.final_wash", 4)], "order.boss_drill", 5), [("SEQ-02", None)]);
        assert_eq!(told(&[("order.drum_fit", 4)], "order.one_way_check", 5), [("SEQ-06", None)]);
        assert_eq!(told(&[("order.drum_fit", 6)], "order.one_way_check", 5), [], "in time is in time");
    }

    #[test]
    fn what_was_broken_before_is_not_told_of_the_next_step() {
        let broken = [("order.drum_fit", 2), ("order.one_way_check", 3), ("order.air_check", 4)];
        let rule = rules().find(|rule| rule.code == "SEQ-06").expect("a rule of the order");
        assert_eq!(rule.verdict(&logged(&broken), &Limits::default()).value(), Some(&true), "it is broken");
        assert!(told(&broken, "order.valve_body_fit", 5).iter().all(|(code, _)| *code != "SEQ-06"));
    }

    #[test]
    fn a_step_that_fills_no_place_spoils_no_order() {
        let step = steps().find(|step| step.order.is_none()).expect("most of them");
        assert!(out_of_turn(&logged(&[("order.final_wash", 4)]), &[], step, 5).is_empty());
    }

    #[test]
    fn only_what_this_job_needs_and_has_not_done_is_to_come() {
        let [air, wash, plug] = ["order.air_check", "order.final_wash", "order.plug"]
            .map(|path| steps().find(|step| step.order == Some(path)).expect(path));
        let job = logged(&[("order.final_wash", 4)]);
        assert!(is_to_come(air, &job, &[]));
        assert!(!is_to_come(wash, &job, &[]), "it is done");
        assert!(!is_to_come(plug, &job, &[]), "the plain job needs no plug");
    }
}
