//! What is told of a plan: what each change clears and brings, what is left, what cannot be helped.

use super::check::Check;
use super::hand::Hand;
use super::pulls::{Pull, apply};
use super::search::Goal;
use super::{Desk, Offer, Solution};
use crate::job::{FactId, FactSet, Job};
use crate::plan::levers::{Lever, Setting};
use crate::plan::steps::{filler, permanent_work};
use crate::quantity::Cents;
use crate::rules::{Derived, Known, Severity, Truth};
use serde_json::Value;

/// A rule, as a plan speaks of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RuleNamed {
    /// Its code.
    pub code: String,
    /// What is wrong when it is true.
    pub title: String,
    /// How bad that is.
    pub severity: Severity,
}

/// A set of changes, with what it costs and what comes of it.
#[derive(Debug)]
pub struct Plan {
    /// What it is for.
    pub offer: Offer,
    /// What is changed, in order of code; empty when nothing can be done.
    pub changes: Vec<Change>,
    /// Labour of all changes.
    pub minutes: u32,
    /// Labour and parts of all changes.
    pub cost: Cents,
    /// Stops and cautions that stay, in the book's order.
    pub left: Vec<RuleNamed>,
    /// Cautions and notes that were not there before.
    pub brought: Vec<RuleNamed>,
    /// Rules that were decided and, once the plan is applied, wait for something to be measured, tried or signed.
    pub opened: Vec<Opened>,
    /// Findings it clears that stay until what it leaves to be done, tried or signed has been.
    pub until: Vec<RuleNamed>,
    /// Facts that have to be measured, tried, signed or logged before the plan has done what it says.
    pub to_do: Vec<FactId>,
    /// What is written on the ticket when it is applied; a blank is what has to be measured, tried or signed.
    pub edits: Vec<(FactId, Option<Value>)>,
    /// Was it shown that no other set does the same for less?
    pub proven: bool,
}

/// A rule that waits after a plan is applied.
#[derive(Clone, Debug)]
pub struct Opened {
    /// Which rule.
    pub rule: RuleNamed,
    /// What it waits for.
    pub needs: FactSet,
}

/// One lever of a plan.
#[derive(Debug)]
pub struct Change {
    /// Which lever.
    pub lever: &'static Lever,
    /// Its labour here.
    pub minutes: u32,
    /// Its labour and parts here.
    pub cost: Cents,
    /// What it makes of the facts.
    pub sets: Vec<Setting>,
    /// Findings that would come back without it.
    pub clears: Vec<RuleNamed>,
    /// Stops and cautions the rest of the plan would bring without it.
    pub keeps_away: Vec<RuleNamed>,
    /// Findings that are there because of it.
    pub brings: Vec<RuleNamed>,
}

/// A stop that stays.
#[derive(Debug)]
pub struct Impossible {
    /// Which rule.
    pub rule: RuleNamed,
    /// Why it stays.
    pub why: Stays,
    /// What it rests on.
    pub rests_on: FactSet,
}

/// Why a stop stays.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stays {
    /// What it rests on is changed by no lever: whatever is done, it is true.
    Fixed,
    /// It was shown that every set of levers that clears it brings a stop that is not there now.
    BringsAnother,
    /// It was shown that it can go, but then more or other stops stay.
    OrOthersStay,
    /// The search ended before all was tried: there may be a way.
    NotAllTried,
}

impl Plan {
    /// The codes of its levers.
    pub fn codes(&self) -> Vec<&'static str> {
        self.changes.iter().map(|change| change.lever.code).collect()
    }

    /// How many of its changes can never be undone.
    pub fn for_good(&self) -> usize {
        self.changes.iter().filter(|change| change.lever.undo == crate::plan::levers::Undo::Never).count()
    }

    /// Does a stop stay?
    pub fn leaves_a_stop(&self) -> bool {
        self.left.iter().any(|rule| rule.severity == Severity::Stop)
    }
}

impl Desk<'_> {
    /// Tells a solution as a plan; none when it changes nothing.
    pub(super) fn plan(&self, offer: Offer, solution: &Solution) -> Option<Plan> {
        if solution.pulled.is_empty() {
            return None;
        }
        let before = self.said(self.job);
        let after = self.said(&self.with(&solution.pulled));
        let change = |at: &usize| self.change(*at, solution, &before, &after);
        let changes: Vec<Change> = solution.pulled.iter().map(change).collect();
        let edits = edits(self.job, solution.pulled.iter().map(|at| &self.pulls[*at]));
        let mut applied = self.job.clone();
        for (fact, value) in &edits {
            let read = applied.slot_mut(*fact).read(value.as_ref().unwrap_or(&Value::Null), fact.declaration());
            debug_assert!(read.is_ok(), "{fact:?} {value:?}");
        }
        let pulled: Vec<&Setting> = solution.pulled.iter().flat_map(|at| &self.pulls[*at].sets).collect();
        // What the program fills in by itself will say what is decided, but not what is only aimed at.
        for set in pulled.iter().filter(|set| !set.aimed && filler(set.fact).is_some()) {
            applied.slot_mut(set.fact).read(&set.value, set.fact.declaration()).ok();
        }
        let planned = edits.iter().fold(FactSet::EMPTY, |all, (fact, _)| all.with(FactSet::of(*fact)));
        // What it changes for good has to be signed for first, whatever was signed before.
        let to_sign = applied.paper.permanent_mods.value() != Some(&true)
            && permanent_work(&applied, &[], planned).value() == Some(&true);
        if to_sign {
            applied.paper.permanent_mods.set(true);
            applied.paper.permanent_ack.set(false);
        }
        let undone =
            pulled.iter().filter(|set| set.aimed && self.job.slot(set.fact).json().as_ref() != Some(&set.value));
        let signature = if to_sign { FactSet::of(applied.paper.permanent_ack.id()) } else { FactSet::EMPTY };
        let to_do = undone.fold(signature, |all, set| all.with(FactSet::of(set.fact)));
        let then = self.said(&applied);
        let opened = self.checks.iter().enumerate().filter(|(at, _)| before[*at].value().is_some());
        let opened = opened.filter(|(at, _)| then[*at].value().is_none());
        Some(Plan {
            offer,
            minutes: changes.iter().map(|change| change.minutes).sum(),
            cost: solution.cost,
            left: self.named(|at, rule| is_found(&after[at]) && rule.severity != Severity::Note),
            brought: self.named(|at, _| is_found(&after[at]) && !is_found(&before[at])),
            opened: opened.map(|(at, rule)| Opened { rule: named(rule), needs: then[at].waits_for() }).collect(),
            until: self
                .named(|at, rule| is_found(&then[at]) && !is_found(&after[at]) && rule.severity != Severity::Note),
            to_do: to_do.iter().collect(),
            changes,
            edits,
            proven: solution.proven,
        })
    }

    /// A lever is credited with what is otherwise without it, the rest of the plan being done.
    fn change(&self, at: usize, solution: &Solution, before: &[Truth], after: &[Truth]) -> Change {
        let rest: Vec<usize> = solution.pulled.iter().copied().filter(|other| *other != at).collect();
        let without = self.said(&self.with(&rest));
        let needs = |rule: usize| is_found(&without[rule]) && !is_found(&after[rule]);
        // A finding that would be left open is not cleared either.
        let opens = |rule: usize| without[rule].value().is_none() && after[rule].value() == Some(&false);
        let pull = &self.pulls[at];
        Change {
            lever: pull.lever,
            minutes: pull.minutes,
            cost: pull.cost,
            sets: pull.sets.clone(),
            clears: self.named(|rule, _| is_found(&before[rule]) && (needs(rule) || opens(rule))),
            keeps_away: self.named(|rule, _| !is_found(&before[rule]) && needs(rule)),
            brings: self
                .named(|rule, _| is_found(&after[rule]) && !is_found(&before[rule]) && !is_found(&without[rule])),
        }
    }

    /// Stops that stay with the best plan, each with why.
    pub(super) fn impossible(&self, best: &Solution) -> Vec<Impossible> {
        let after = self.said(&self.with(&best.pulled));
        let stops = self.checks.iter().zip(&after);
        let stops = stops.filter(|(rule, said)| rule.severity == Severity::Stop && rule.counts && is_found(said));
        stops.map(|(rule, _)| self.stays(rule)).collect()
    }

    fn stays(&self, rule: &Check<'_>) -> Impossible {
        let changed = self.pulls.iter().fold(FactSet::EMPTY, |all, pull| all.with(pull.changes));
        let mut bare = self.job.clone();
        for fact in changed.iter() {
            bare.slot_mut(fact).read(&Value::Null, fact.declaration()).ok();
        }
        // What is true while all that could be changed is unknown is true whatever it is changed to.
        if self.is_true(rule, &bare) {
            return Impossible { rule: named(rule), why: Stays::Fixed, rests_on: self.behind(rule, &bare) };
        }
        let alone = self.for_its_own_sake(rule);
        let why = match (alone.stops_left, alone.proven) {
            (0, _) => Stays::OrOthersStay,
            (_, true) => Stays::BringsAnother,
            (_, false) => Stays::NotAllTried,
        };
        Impossible { rule: named(rule), why, rests_on: self.behind(rule, self.job) }
    }

    /// The best that can be done about one stop, whatever becomes of the others that are there now.
    fn for_its_own_sake(&self, stop: &Check<'_>) -> Solution {
        let mut checks = self.checks.clone();
        for rule in checks.iter_mut().filter(|rule| rule.severity == Severity::Stop && rule.code != stop.code) {
            rule.counts &= !self.is_true(rule, self.job);
        }
        Desk { job: self.job, terms: self.terms, checks, pulls: self.pulls.clone() }.solve(Goal::Stops, Hand::default())
    }

    fn is_true(&self, rule: &Check<'_>, job: &Job) -> bool {
        rule.found(job, &Derived::of(job, self.terms.limits), self.terms.limits)
    }

    /// The fewest known facts that make a rule true of a job, taking away one after the other.
    fn behind(&self, rule: &Check<'_>, job: &Job) -> FactSet {
        let mut job = job.clone();
        let mut behind = FactSet::EMPTY;
        for fact in rule.reads.iter().filter(|fact| self.job.slot(*fact).json().is_some()) {
            let mut fewer = job.clone();
            fewer.slot_mut(fact).read(&Value::Null, fact.declaration()).ok();
            if self.is_true(rule, &fewer) {
                job = fewer;
            } else {
                behind = behind.with(FactSet::of(fact));
            }
        }
        behind
    }

    /// What every rule says of a job.
    fn said(&self, job: &Job) -> Vec<Truth> {
        let derived = Derived::of(job, self.terms.limits);
        self.checks.iter().map(|rule| rule.verdict(job, &derived, self.terms.limits)).collect()
    }

    /// The rules of which this holds, in the book's order.
    fn named(&self, holds: impl Fn(usize, &Check<'_>) -> bool) -> Vec<RuleNamed> {
        self.checks.iter().enumerate().filter(|(at, rule)| holds(*at, rule)).map(|(_, rule)| named(rule)).collect()
    }

    /// The job with these levers pulled.
    pub(super) fn with(&self, pulled: &[usize]) -> Job {
        let mut job = self.job.clone();
        for at in pulled {
            apply(&mut job, &self.pulls[*at].sets);
        }
        job
    }
}

/// What these levers write on the ticket of this job. What the log and the papers fill in by themselves is not written.
pub(super) fn edits<'a>(job: &Job, pulls: impl Iterator<Item = &'a Pull>) -> Vec<(FactId, Option<Value>)> {
    let mut edits: Vec<(FactId, Option<Value>)> = Vec::new();
    for set in pulls.flat_map(|pull| &pull.sets) {
        let value = (!set.aimed).then(|| set.value.clone());
        let held = job.slot(set.fact).json();
        let written = edits.iter().any(|(fact, _)| *fact == set.fact);
        let filled = filler(set.fact).is_some();
        // A reading that is as it should be already is left alone.
        if held != value && held.as_ref() != Some(&set.value) && !written && !filled {
            edits.push((set.fact, value));
        }
    }
    edits.sort_by_key(|(fact, _)| *fact);
    edits
}

fn is_found(said: &Truth) -> bool {
    matches!(said, Known::Yes(true, _))
}

fn named(rule: &Check<'_>) -> RuleNamed {
    RuleNamed { code: rule.code.to_owned(), title: rule.title.to_owned(), severity: rule.severity }
}
