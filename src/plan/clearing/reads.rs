//! Which facts each rule can ever look at.
//!
//! A condition evaluates all of its parts, so a job of which nothing is known makes a rule wait for
//! everything it looks at, except behind a choice whose test is open. Those are found by settling
//! each yes-or-no and each word the rule looks at, one at a time, and looking again.

use crate::job::{Bound, FactId, FactSet, Job, Kind};
use crate::rules::house::Condition;
use crate::rules::{Derived, Limits, Rule, rules};
use serde_json::{Value, json};
use std::collections::HashMap;
use std::sync::LazyLock;

/// Every fact this rule can ever look at.
pub(super) fn reads(rule: &Rule) -> FactSet {
    static READS: LazyLock<HashMap<&str, FactSet>> =
        LazyLock::new(|| rules().map(|rule| (rule.code, looked_at(rule))).collect());
    READS.get(rule.code).copied().unwrap_or_else(|| looked_at(rule))
}

/// Every fact a condition of the shop's own can ever look at: those it names, and those behind what it names.
pub(super) fn reads_of_house(condition: &Condition) -> FactSet {
    let names = condition.names();
    let limits = Limits::default();
    let asked = |job: &Job| {
        let derived = Derived::of(job, &limits);
        names.computed.iter().fold(FactSet::EMPTY, |all, which| all.with(derived.get(*which).1))
    };
    names.facts.with(reached(&[Job::unknown()], asked))
}

fn looked_at(rule: &Rule) -> FactSet {
    let limits = Limits::default();
    let examples = [Job::unknown(), rule.example(), rule.counter_example()];
    reached(&examples, |job| rule.verdict(job, &limits).facts())
}

/// Every fact that `asked` can name, beginning with what it names for these jobs.
fn reached(first: &[Job], asked: impl Fn(&Job) -> FactSet) -> FactSet {
    let mut all = first.iter().fold(FactSet::EMPTY, |all, job| all.with(asked(job)));
    let mut tried = FactSet::EMPTY;
    while let Some(fact) = all.without(tried).iter().next() {
        tried = tried.with(FactSet::of(fact));
        for value in settled(fact) {
            let mut job = Job::unknown();
            if job.slot_mut(fact).read(&value, fact.declaration()).is_ok() {
                all = all.with(asked(&job));
            }
        }
    }
    all
}

/// The values a choice can hang on.
fn settled(fact: FactId) -> Vec<Value> {
    let said = fact.declaration();
    match (said.kind, said.bound) {
        (Kind::YesNo, _) => vec![json!(true), json!(false)],
        (Kind::Choice(words), _) => words.iter().map(|word| json!(word.code)).collect(),
        (_, Bound::OneOf(list) | Bound::OneOfOrWhole(list)) => list.iter().map(|number| json!(number)).collect(),
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::random_job;

    #[test]
    fn no_verdict_ever_rests_on_a_fact_its_rule_is_not_known_to_look_at() {
        let mut seed = 11_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            seed >> 11
        };
        let limits = Limits::default();
        for job in (0..400).map(|_| random_job(&mut next)) {
            let derived = crate::rules::Derived::of(&job, &limits);
            for rule in rules() {
                let beyond = (rule.when)(&job, &derived, &limits).facts().without(reads(rule));
                let beyond: Vec<_> = beyond.iter().map(|fact| fact.declaration().path).collect();
                assert!(beyond.is_empty(), "{} looked at {beyond:?}", rule.code);
            }
        }
    }
}
