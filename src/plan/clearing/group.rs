//! Levers and rules that hang together, apart from all others.

use super::hand::Hand;
use super::pulls::Pull;
use super::search::Goal;
use super::{Terms, check::Check};
use crate::job::Job;
use crate::rules::{Derived, Severity};

/// One group: nothing outside it changes what happens inside.
#[derive(Debug, Default)]
pub(super) struct Group<'a> {
    /// Its levers.
    pub levers: Hand,
    /// Its rules that a plan is about.
    pub rules: Vec<Watched<'a>>,
}

/// A rule, and whether it is a finding to begin with.
#[derive(Clone, Copy, Debug)]
pub(super) struct Watched<'a> {
    pub rule: Check<'a>,
    pub found: bool,
}

impl Watched<'_> {
    /// May it be left as a finding? A stop that was not there before may not.
    pub fn may_stay(&self) -> bool {
        self.found || self.rule.severity != Severity::Stop
    }
}

/// The groups in which something has to be cleared for this goal.
pub(super) fn groups<'a>(
    job: &Job,
    terms: &Terms<'_>,
    checks: &[Check<'a>],
    pulls: &[Pull],
    goal: Goal,
) -> Vec<Group<'a>> {
    let derived = Derived::of(job, terms.limits);
    let watched = |rule: &Check<'a>| Watched { rule: *rule, found: rule.found(job, &derived, terms.limits) };
    let mut waiting: Vec<Watched<'a>> = checks.iter().filter(|rule| rule.counts).map(watched).collect();
    let mut groups = Vec::new();
    while let Some(at) = waiting.iter().position(|rule| rule.found && goal.covers(&rule.rule)) {
        let mut group = Group { levers: Hand::default(), rules: vec![waiting.swap_remove(at)] };
        let mut seen = 0;
        while seen < group.rules.len() {
            let rule = group.rules[seen];
            seen += 1;
            let touching: Hand = (0..pulls.len()).filter(|at| pulls[*at].changes.meets(&rule.rule.reads)).collect();
            let mut new = touching.without(group.levers);
            while let Some(at) = new.iter().next() {
                let pull = &pulls[at];
                group.levers = group.levers.with(Hand::of(at));
                new = new.with(pull.against).without(group.levers);
                let (touched, rest): (Vec<Watched<'a>>, Vec<Watched<'a>>) =
                    waiting.into_iter().partition(|rule| pull.changes.meets(&rule.rule.reads));
                group.rules.extend(touched);
                waiting = rest;
            }
        }
        group.rules.sort_by_key(|rule| rule.rule.code);
        groups.push(group);
    }
    groups
}
