//! Numbers too big to hold, limits that only some jobs use, and what counts as a stop.

use super::*;
use crate::job::{TubeMaterial, fact_named};
use crate::quantity::{Quantity, Rpm};
use crate::rules::{Known, LimitId, Severity, judge};

fn metal_of_the_shaft() -> FactSet {
    FactSet::of(fact_named("driveshaft.material").expect("a fact of the driveshaft"))
}

#[test]
fn a_number_that_cannot_be_held_waits_and_any_other_stands() {
    let facts = metal_of_the_shaft();
    for (number, holds) in [(0.0, true), (-1.0e300, true), (f64::MAX, true), (f64::INFINITY, false), (f64::NAN, false)]
    {
        let known = Known::Yes(Quantity::<Rpm>::new(number), facts).finite();
        let expected = if holds { Known::Yes(Quantity::new(number), facts) } else { Known::Waits(facts) };
        assert_eq!(known, expected, "{number}");
    }
}

#[test]
fn only_the_limit_of_the_shafts_own_metal_is_used() {
    let metals = [(TubeMaterial::Steel, LimitId::tube_steel), (TubeMaterial::Aluminum, LimitId::tube_aluminum)];
    let mut seen = 0;
    for rule in rules().filter(|rule| rule.all_limits().contains(&LimitId::tube_steel)) {
        for (metal, own) in metals {
            let mut job = rule.example();
            job.driveshaft.material.set(metal);
            let used: Vec<_> = rule.limits_used(&job, &Limits::default()).iter().map(|used| used.limit).collect();
            let tubes: Vec<_> = used.into_iter().filter(|limit| metals.iter().any(|(_, tube)| tube == limit)).collect();
            assert_eq!(tubes, [own], "{} with {metal:?}", rule.code);
            seen += 1;
        }
        let blank = without(&rule.example(), metal_of_the_shaft());
        let used: Vec<_> = rule.limits_used(&blank, &Limits::default()).iter().map(|used| used.limit).collect();
        assert!(!metals.iter().any(|(_, tube)| used.contains(tube)), "{}: no metal, no constant", rule.code);
    }
    assert!(seen > 0, "some rule rests on the shaft's metal");
}

#[test]
fn a_job_has_a_stop_when_one_of_its_findings_is_one() {
    assert!(!judge(&Job::plain(), &Limits::default()).has_stop(), "nothing is found in the plain job");
    let mut seen = [false; 3];
    for rule in rules() {
        let verdicts = judge(&rule.example(), &Limits::default());
        let expected = verdicts.findings.iter().any(|finding| matches!(finding.rule.severity, Severity::Stop));
        assert_eq!(verdicts.has_stop(), expected, "{}", rule.code);
        let gravest = verdicts.findings.iter().map(|finding| match finding.rule.severity {
            Severity::Note => 0,
            Severity::Caution => 1,
            Severity::Stop => 2,
        });
        if let Some(gravest) = gravest.max() {
            seen[gravest] = true;
        }
    }
    assert_eq!(seen, [true; 3], "jobs with at most a note, a caution, a stop");
}
