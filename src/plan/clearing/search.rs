//! Branch and bound within one group.
//!
//! A branch has pulled some levers and barred others. If nothing is wrong there, it is a solution, and
//! pulling more would only cost more. Otherwise some rule is wrong, and it stays wrong unless a fact
//! its verdict rests on changes: so one of the levers that change such a fact is pulled, or none ever
//! is and the finding stays. Each of these is one branch, and together they are all there is.

use super::Terms;
use super::check::Check;
use super::group::{Group, Watched};
use super::hand::Hand;
use super::pulls::{Pull, apply};
use crate::job::{FactSet, Job};
use crate::rules::{Derived, Known, Severity};
use std::cmp::Ordering;

/// What has to be gone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Goal {
    Stops,
    StopsAndCautions,
}

impl Goal {
    /// Has a finding of this rule to be gone?
    pub fn covers(self, rule: &Check<'_>) -> bool {
        rule.severity == Severity::Stop || (self == Self::StopsAndCautions && rule.severity == Severity::Caution)
    }
}

/// How good a set of levers is: the first difference decides, less is better.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Weight {
    pub stops_left: usize,
    /// Cautions left, where they have to be gone.
    pub cautions_left: usize,
    pub cost: i64,
    pub permanent: usize,
    pub levers: usize,
}

impl std::ops::Add for Weight {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            stops_left: self.stops_left + other.stops_left,
            cautions_left: self.cautions_left + other.cautions_left,
            cost: self.cost.saturating_add(other.cost),
            permanent: self.permanent + other.permanent,
            levers: self.levers + other.levers,
        }
    }
}

impl Weight {
    pub fn of(pull: &Pull) -> Self {
        Self { cost: pull.cost.0, permanent: usize::from(pull.permanent), levers: 1, ..Self::default() }
    }

    /// A finding that stays.
    pub fn left(rule: &Check<'_>) -> Self {
        let stop = rule.severity == Severity::Stop;
        Self { stops_left: usize::from(stop), cautions_left: usize::from(!stop), ..Self::default() }
    }
}

/// The best set of levers for one group.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Best {
    pub pulled: Hand,
    pub weight: Weight,
    /// Cautions that are left, whether or not they had to be gone.
    pub cautions: usize,
    /// Was it shown that there is no better one?
    pub proven: bool,
}

impl Best {
    /// Is the other set the one to prefer? The last word has the order of codes: whoever has the earlier one.
    pub fn yields_to(&self, other: &Self) -> bool {
        match (other.weight, other.cautions).cmp(&(self.weight, self.cautions)) {
            Ordering::Less => true,
            Ordering::Equal => other.pulled.comes_before(self.pulled),
            Ordering::Greater => false,
        }
    }
}

/// A search within one group.
pub(super) struct Search<'a> {
    job: &'a Job,
    terms: &'a Terms<'a>,
    pulls: &'a [Pull],
    group: &'a Group<'a>,
    goal: Goal,
    best: Option<Best>,
    left: u32,
}

/// A branch.
#[derive(Clone)]
struct Branch<'a> {
    job: Job,
    pulled: Hand,
    barred: Hand,
    /// Facts the pulled levers have settled.
    settled: FactSet,
    /// Findings that stay.
    stays: Vec<&'a str>,
    weight: Weight,
}

/// Something wrong, and the levers that could help.
struct Wrong<'a> {
    rule: Watched<'a>,
    helps: Hand,
}

impl<'a> Search<'a> {
    pub fn new(job: &'a Job, terms: &'a Terms<'a>, pulls: &'a [Pull], group: &'a Group<'a>, goal: Goal) -> Self {
        Self { job, terms, pulls, group, goal, best: None, left: 0 }
    }

    /// The best set without the barred levers; what it takes of the effort is gone.
    pub fn best(mut self, barred: Hand, effort: &mut u32) -> Best {
        self.left = *effort;
        let root = Branch {
            job: self.job.clone(),
            pulled: Hand::default(),
            barred,
            settled: FactSet::EMPTY,
            stays: Vec::new(),
            weight: Weight::default(),
        };
        self.visit(root);
        *effort = self.left;
        let proven = self.left > 0;
        match self.best {
            Some(best) => Best { proven, ..best },
            None => self.untouched(),
        }
    }

    /// Nothing done: what there is when the effort was too small to find anything.
    fn untouched(&self) -> Best {
        let stays = self.group.rules.iter().filter(|rule| rule.found && self.goal.covers(&rule.rule));
        let weight = stays.fold(Weight::default(), |all, rule| all + Weight::left(&rule.rule));
        Best { pulled: Hand::default(), weight, cautions: self.cautions(self.job), proven: false }
    }

    fn visit(&mut self, branch: Branch<'a>) {
        self.left = self.left.saturating_sub(1);
        if self.left == 0 {
            return;
        }
        let Some((wrongs, bound)) = self.wrongs(&branch) else { return };
        if self.best.is_some_and(|best| branch.weight + bound > best.weight) {
            return;
        }
        let Some(wrong) = wrongs.iter().min_by_key(|wrong| wrong.helps.len()) else {
            let cautions = self.cautions(&branch.job);
            let found = Best { pulled: branch.pulled, weight: branch.weight, cautions, proven: true };
            if self.best.is_none_or(|best| best.yields_to(&found)) {
                self.best = Some(found);
            }
            return;
        };
        let mut helps: Vec<usize> = wrong.helps.iter().collect();
        helps.sort_by_key(|at| Weight::of(&self.pulls[*at]));
        let mut barred = branch.barred;
        for at in helps {
            let pull = &self.pulls[at];
            let mut next = branch.clone();
            apply(&mut next.job, &pull.sets);
            next.pulled = next.pulled.with(Hand::of(at));
            next.barred = barred.with(pull.against);
            next.settled = next.settled.with(pull.touches);
            next.weight = next.weight + Weight::of(pull);
            self.visit(next);
            barred = barred.with(Hand::of(at));
        }
        if wrong.rule.may_stay() {
            let mut next = branch;
            next.barred = barred;
            next.stays.push(wrong.rule.rule.code);
            next.weight = next.weight + Weight::left(&wrong.rule.rule);
            self.visit(next);
        }
    }

    /// What is still wrong, and what putting it right costs at the least; none when a new stop can never go.
    fn wrongs(&self, branch: &Branch<'a>) -> Option<(Vec<Wrong<'a>>, Weight)> {
        let derived = Derived::of(&branch.job, self.terms.limits);
        let free = self.group.levers.without(branch.pulled).without(branch.barred);
        let mut wrongs = Vec::new();
        let (mut bound, mut counted) = (Weight::default(), Hand::default());
        let asked = self.group.rules.iter().filter(|rule| self.goal.covers(&rule.rule));
        for rule in asked.filter(|rule| !branch.stays.contains(&rule.rule.code)) {
            let behind = match rule.rule.verdict(&branch.job, &derived, self.terms.limits) {
                Known::Yes(true, facts) => facts,
                Known::Waits(_) if rule.found => rule.rule.reads,
                _ => continue,
            };
            let behind = behind.without(branch.settled);
            let helps: Hand = free.iter().filter(|at| self.pulls[*at].changes.meets(&behind)).collect();
            if helps.is_empty() && !rule.may_stay() {
                return None;
            }
            if !helps.meets(counted) {
                counted = counted.with(helps);
                bound = bound + self.least(helps).unwrap_or_else(|| Weight::left(&rule.rule));
            }
            wrongs.push(Wrong { rule: *rule, helps });
        }
        Some((wrongs, bound))
    }

    /// The lightest of these levers.
    fn least(&self, levers: Hand) -> Option<Weight> {
        levers.iter().map(|at| Weight::of(&self.pulls[at])).min()
    }

    /// Cautions of the group that are true of a job.
    fn cautions(&self, job: &Job) -> usize {
        let derived = Derived::of(job, self.terms.limits);
        let cautions = self.group.rules.iter().filter(|rule| rule.rule.severity == Severity::Caution);
        cautions.filter(|rule| rule.rule.found(job, &derived, self.terms.limits)).count()
    }
}
