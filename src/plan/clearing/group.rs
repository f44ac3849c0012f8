//! Levers and rules that hang together, apart from all others.

use super::hand::Hand;
use super::pulls::Pull;
use super::reads::reads;
use super::search::Goal;
use super::{Terms, counts};
use crate::job::{FactSet, Job};
use crate::rules::{Derived, Known, Rule, rules};

/// One group: nothing outside it changes what happens inside.
#[derive(Debug, Default)]
pub(super) struct Group {
    /// Its levers.
    pub levers: Hand,
    /// Its rules that a plan is about.
    pub rules: Vec<Watched>,
}

/// A rule with what it looks at and whether it is a finding to begin with.
#[derive(Clone, Copy, Debug)]
pub(super) struct Watched {
    pub rule: &'static Rule,
    pub reads: FactSet,
    pub found: bool,
}

/// The groups in which something has to be cleared for this goal.
pub(super) fn groups(job: &Job, terms: &Terms<'_>, pulls: &[Pull], goal: Goal) -> Vec<Group> {
    let derived = Derived::of(job, terms.limits);
    let watched = rules().filter(|rule| counts(rule, terms)).map(|rule| Watched {
        rule,
        reads: reads(rule),
        found: matches!((rule.when)(job, &derived, terms.limits), Known::Yes(true, _)),
    });
    let mut waiting: Vec<Watched> = watched.collect();
    let mut groups = Vec::new();
    while let Some(at) = waiting.iter().position(|rule| rule.found && goal.covers(rule.rule)) {
        let mut group = Group { levers: Hand::default(), rules: vec![waiting.swap_remove(at)] };
        let mut seen = 0;
        while seen < group.rules.len() {
            let rule = group.rules[seen];
            seen += 1;
            let touching: Hand = (0..pulls.len()).filter(|at| pulls[*at].changes.meets(&rule.reads)).collect();
            let mut new = touching.without(group.levers);
            while let Some(at) = new.iter().next() {
                let pull = &pulls[at];
                group.levers = group.levers.with(Hand::of(at));
                new = new.with(pull.against).without(group.levers);
                let (touched, rest): (Vec<Watched>, Vec<Watched>) =
                    waiting.into_iter().partition(|rule| pull.changes.meets(&rule.reads));
                group.rules.extend(touched);
                waiting = rest;
            }
        }
        group.rules.sort_by_key(|rule| rule.rule.code);
        groups.push(group);
    }
    groups
}
