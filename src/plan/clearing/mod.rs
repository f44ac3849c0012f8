//! The clearing plan: the cheapest set of changes that leaves no stop, or no stop and no caution.
//!
//! The answer is exact. Levers and rules fall into independent groups, and each group is searched by
//! branch and bound: where something is still wrong, one of the levers that touch the facts behind it
//! has to be pulled, and a branch is left only when it cannot become cheaper than the best found. If
//! that takes more work than allowed, the best so far is given and said not to be proven.
//!
//! **Never on a blank.** A finding counts as cleared only when its rule is known not to be true. A
//! plan never brings a new stop. What a plan leaves to be measured, tried or signed is blank once it
//! is applied, and the rules that then wait are named.

mod check;
mod group;
mod hand;
mod pulls;
mod reads;
mod report;
mod search;

pub use report::{Change, Impossible, Opened, Plan, RuleNamed, Stays};

use super::levers::Prices;
use crate::job::{FactId, Job};
use crate::quantity::Cents;
use crate::rules::house::HouseRule;
use crate::rules::{Derived, Limits, Severity};
use check::{Check, checks};
use group::groups;
use hand::Hand;
use pulls::{Pull, pulls, together};
use report::edits;
use search::{Goal, Search};
use serde_json::Value;

/// What could be done about the findings of one job.
#[derive(Debug)]
pub struct Clearing {
    /// Up to three plans, the cheapest that leaves no stop first.
    pub plans: Vec<Plan>,
    /// Stops that stay with the best plan, each with why.
    pub impossible: Vec<Impossible>,
    /// Was everything tried? If not, no plan shown means that none was found, not that there is none.
    pub proven: bool,
}

/// What a plan is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Offer {
    /// The cheapest that leaves no stop.
    NoStop,
    /// The cheapest that leaves no stop and no caution.
    NoCaution,
    /// The cheapest that leaves no stop and changes nothing for good.
    NothingForGood,
    /// The cheapest that leaves no stop by other means than the first.
    OtherMeans,
}

/// What the search goes by.
#[derive(Clone, Copy, Debug)]
pub struct Terms<'a> {
    /// The limits the rules compare with.
    pub limits: &'a Limits,
    /// The shop's own rules.
    pub house: &'a [HouseRule],
    /// What levers cost here.
    pub prices: &'a Prices,
    /// Codes of rules that are set aside for this job: nothing is spent on them.
    pub aside: &'a [&'a str],
    /// How many times the rules may be asked for each plan before the best so far has to do.
    pub effort: u32,
}

impl Terms<'_> {
    /// Enough for any job met so far, little enough to be answered while somebody waits.
    pub const EFFORT: u32 = 60_000;
}

/// Works out up to three plans for a job; none when it has neither stop nor caution that could be cleared.
pub fn clearing(job: &Job, terms: &Terms<'_>) -> Clearing {
    clearing_with(job, terms, pulls(job, terms.prices))
}

/// What these levers write on the ticket of a job: each fact with its value, none where it has to be measured, tried or
/// signed first. None when one of them cannot be pulled there, or not with the others.
pub fn edits_of(job: &Job, levers: &[&str]) -> Option<Vec<(FactId, Option<Value>)>> {
    let mut all = pulls(job, &Prices::default());
    all.retain(|pull| levers.contains(&pull.lever.code));
    let all = together(all);
    let whole = all.len() == levers.len() && !all.is_empty();
    let at_peace = all.iter().all(|pull| pull.against.is_empty());
    (whole && at_peace).then(|| edits(job, all.iter()))
}

/// The same with these levers only.
fn clearing_with(job: &Job, terms: &Terms<'_>, pulls: Vec<Pull>) -> Clearing {
    let desk = Desk { job, terms, checks: checks(terms), pulls };
    let derived = Derived::of(job, terms.limits);
    let counting: Vec<&Check<'_>> = desk.checks.iter().filter(|rule| rule.counts).collect();
    let found = |severity| {
        let mut grave = counting.iter().filter(|rule| rule.severity == severity);
        grave.any(|rule| rule.found(job, &derived, terms.limits))
    };
    let mut plans: Vec<Plan> = Vec::new();
    let mut proven = true;
    let first = found(Severity::Stop).then(|| desk.solve(Goal::Stops, Hand::default()));
    if let Some(first) = &first {
        proven &= first.proven;
        plans.extend(desk.plan(Offer::NoStop, first));
    }
    if found(Severity::Caution) {
        let second = desk.solve(Goal::StopsAndCautions, Hand::default());
        proven &= second.proven;
        if first.as_ref().is_none_or(|first| first.pulled != second.pulled) {
            plans.extend(desk.plan(Offer::NoCaution, &second));
        }
    }
    if let Some(first) = &first {
        plans.extend(desk.another(first, &plans));
    }
    let impossible = first.map_or_else(Vec::new, |first| desk.impossible(&first));
    Clearing { plans, impossible, proven }
}

/// A job with everything that could be done to it.
struct Desk<'a> {
    job: &'a Job,
    terms: &'a Terms<'a>,
    checks: Vec<Check<'a>>,
    pulls: Vec<Pull>,
}

/// A set of levers that serves a goal as well as any can.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Solution {
    /// Places of the levers pulled, in order of code.
    pulled: Vec<usize>,
    /// Was it shown that there is no cheaper one?
    proven: bool,
    /// Stops that are left.
    stops_left: usize,
    /// What it costs.
    cost: Cents,
}

impl Desk<'_> {
    /// The best set for a goal without the barred levers.
    fn solve(&self, goal: Goal, barred: Hand) -> Solution {
        let mut effort = self.terms.effort;
        let mut solution = Solution { pulled: Vec::new(), proven: true, stops_left: 0, cost: Cents(0) };
        for group in groups(self.job, self.terms, &self.checks, &self.pulls, goal) {
            let best = Search::new(self.job, self.terms, &self.pulls, &group, goal).best(barred, &mut effort);
            solution.pulled.extend(best.pulled.iter());
            solution.proven &= best.proven;
            solution.stops_left += best.weight.stops_left;
            solution.cost = solution.cost + Cents(best.weight.cost);
        }
        solution.pulled.sort_unstable();
        solution
    }

    /// A second way to leave no stop: without a change for good if the first has one, or else by other means.
    fn another(&self, first: &Solution, shown: &[Plan]) -> Option<Plan> {
        let for_good = |at: &usize| self.pulls[*at].permanent;
        let as_good = |solution: &Solution| solution.stops_left == first.stops_left && !solution.pulled.is_empty();
        let new = |solution: &Solution| shown.iter().all(|plan| plan.codes() != self.codes(solution));
        if first.pulled.iter().any(for_good) {
            let barred = (0..self.pulls.len()).filter(for_good).collect();
            let gentle = self.solve(Goal::Stops, barred);
            if as_good(&gentle) && new(&gentle) {
                return self.plan(Offer::NothingForGood, &gentle);
            }
        }
        let others = first.pulled.iter().map(|at| self.solve(Goal::Stops, Hand::of(*at)));
        let others = others.filter(|other| as_good(other) && new(other));
        let other = others.min_by_key(|other| (other.cost, other.pulled.len(), other.pulled.clone()))?;
        self.plan(Offer::OtherMeans, &other)
    }

    fn codes(&self, solution: &Solution) -> Vec<&'static str> {
        solution.pulled.iter().map(|at| self.pulls[*at].lever.code).collect()
    }
}

#[cfg(test)]
mod tests;
