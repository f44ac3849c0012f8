//! What is told of a plan: what each change clears and brings, what is left, what cannot be helped.

use super::pulls::apply;
use super::reads::reads;
use super::{Desk, Offer, Solution, counts};
use crate::job::{FactId, FactSet, Job};
use crate::plan::levers::{Lever, Setting};
use crate::quantity::Cents;
use crate::rules::{Derived, Known, Rule, Severity, Verdicts, judge};
use serde_json::Value;

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
    pub left: Vec<&'static Rule>,
    /// Cautions and notes that were not there before.
    pub brought: Vec<&'static Rule>,
    /// Rules that were decided and, once the plan is applied, wait for something to be measured, tried or signed.
    pub opened: Vec<Opened>,
    /// What is written on the ticket when it is applied; a blank is what has to be measured, tried or signed.
    pub edits: Vec<(FactId, Option<Value>)>,
    /// Was it shown that no other set does the same for less?
    pub proven: bool,
}

/// A rule that waits after a plan is applied.
#[derive(Clone, Copy, Debug)]
pub struct Opened {
    /// Which rule.
    pub rule: &'static Rule,
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
    pub clears: Vec<&'static Rule>,
    /// Stops and cautions the rest of the plan would bring without it.
    pub keeps_away: Vec<&'static Rule>,
    /// Findings that are there because of it.
    pub brings: Vec<&'static Rule>,
}

/// A stop that no set of changes clears.
#[derive(Debug)]
pub struct Impossible {
    /// Which rule.
    pub rule: &'static Rule,
    /// The facts it rests on that nothing here changes; empty when each way out brings another stop.
    pub because: FactSet,
    /// Everything it rests on.
    pub rests_on: FactSet,
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
        let before = self.judged(self.job);
        let after = self.judged(&self.with(&solution.pulled));
        let change = |at: &usize| self.change(*at, solution, &before, &after);
        let changes: Vec<Change> = solution.pulled.iter().map(change).collect();
        let edits = self.edits(&solution.pulled);
        let mut applied = self.job.clone();
        for (fact, value) in &edits {
            let read = applied.slot_mut(*fact).read(value.as_ref().unwrap_or(&Value::Null), fact.declaration());
            debug_assert!(read.is_ok(), "{fact:?} {value:?}");
        }
        let waited = |rule: &Rule| before.undecided.iter().any(|open| open.rule.code == rule.code);
        let opened = self.judged(&applied).undecided.into_iter().filter(|open| !waited(open.rule));
        Some(Plan {
            offer,
            minutes: changes.iter().map(|change| change.minutes).sum(),
            cost: solution.cost,
            left: found(&after).filter(|rule| rule.severity != Severity::Note).collect(),
            brought: found(&after).filter(|rule| !has(&before, rule)).collect(),
            opened: opened.map(|open| Opened { rule: open.rule, needs: open.needs }).collect(),
            changes,
            edits,
            proven: solution.proven,
        })
    }

    /// A lever is credited with what is otherwise without it, the rest of the plan being done.
    fn change(&self, at: usize, solution: &Solution, before: &Verdicts, after: &Verdicts) -> Change {
        let rest: Vec<usize> = solution.pulled.iter().copied().filter(|other| *other != at).collect();
        let without = self.judged(&self.with(&rest));
        let gone = |rule: &&'static Rule| !has(after, rule);
        let (clears, keeps_away): (Vec<_>, Vec<_>) = found(&without).filter(gone).partition(|rule| has(before, rule));
        let pull = &self.pulls[at];
        Change {
            lever: pull.lever,
            minutes: pull.minutes,
            cost: pull.cost,
            sets: pull.sets.clone(),
            clears,
            keeps_away,
            brings: found(after).filter(|rule| !has(before, rule) && !has(&without, rule)).collect(),
        }
    }

    /// Stops that stay whatever is done, with what makes it so.
    pub(super) fn impossible(&self, best: &Solution) -> Vec<Impossible> {
        let after = self.judged(&self.with(&best.pulled));
        let changed = self.pulls.iter().fold(FactSet::EMPTY, |all, pull| all.with(pull.changes));
        let stays = found(&after).filter(|rule| rule.severity == Severity::Stop && counts(rule, self.terms));
        stays
            .map(|rule| {
                let rests_on = self.behind(rule);
                Impossible { rule, because: rests_on.without(changed), rests_on }
            })
            .collect()
    }

    /// The fewest known facts that make a rule true of the job, taking away one after the other.
    fn behind(&self, rule: &'static Rule) -> FactSet {
        let verdict = |job: &Job| (rule.when)(job, &Derived::of(job, self.terms.limits), self.terms.limits);
        let mut job = self.job.clone();
        let mut behind = FactSet::EMPTY;
        for fact in reads(rule).iter() {
            let held = job.slot(fact).json().unwrap_or(Value::Null);
            let mut fewer = job.clone();
            fewer.slot_mut(fact).read(&Value::Null, fact.declaration()).ok();
            if matches!(verdict(&fewer), Known::Yes(true, _)) {
                job = fewer;
            } else if !held.is_null() {
                behind = behind.with(FactSet::of(fact));
            }
        }
        behind
    }

    fn judged(&self, job: &Job) -> Verdicts {
        judge(job, self.terms.limits)
    }

    /// The job with these levers pulled.
    pub(super) fn with(&self, pulled: &[usize]) -> Job {
        let mut job = self.job.clone();
        for at in pulled {
            apply(&mut job, &self.pulls[*at].sets);
        }
        job
    }

    /// What is written when a plan is applied. The order of work is kept by the log and not written here.
    fn edits(&self, pulled: &[usize]) -> Vec<(FactId, Option<Value>)> {
        let sets = pulled.iter().flat_map(|at| &self.pulls[*at].sets);
        let mut edits: Vec<(FactId, Option<Value>)> = Vec::new();
        for set in sets {
            let value = (!set.aimed).then(|| set.value.clone());
            let held = self.job.slot(set.fact).json();
            let written = edits.iter().any(|(fact, _)| *fact == set.fact);
            let logged = set.fact.declaration().path.starts_with("order.");
            // A reading that is as it should be already is left alone.
            if held != value && held.as_ref() != Some(&set.value) && !written && !logged {
                edits.push((set.fact, value));
            }
        }
        edits.sort_by_key(|(fact, _)| *fact);
        edits
    }
}

fn found(verdicts: &Verdicts) -> impl Iterator<Item = &'static Rule> + '_ {
    verdicts.findings.iter().map(|finding| finding.rule)
}

fn has(verdicts: &Verdicts, rule: &Rule) -> bool {
    verdicts.findings.iter().any(|finding| finding.rule.code == rule.code)
}
