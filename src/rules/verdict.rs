//! One job held against the whole book.

use super::book::rules;
use super::derived::Derived;
use super::known::Known;
use super::limits::{LimitUsed, Limits};
use super::rule::{Rule, Severity};
use crate::job::{FactSet, Job};

/// What the rule book makes of one job.
#[derive(Debug)]
pub struct Verdicts {
    /// Rules that are true of it, in the book's order.
    pub findings: Vec<Finding>,
    /// Rules that cannot be decided yet, in the book's order.
    pub undecided: Vec<Undecided>,
    /// How many rules are known not to be true of it.
    pub clear: usize,
    /// What its facts amount to.
    pub derived: Derived,
}

/// A rule that is true of a job.
#[derive(Clone, Debug)]
pub struct Finding {
    /// Which rule.
    pub rule: &'static Rule,
    /// The facts it rests on: those that made it true.
    pub facts: FactSet,
    /// The limits it used, as they stood.
    pub limits: Vec<LimitUsed>,
}

/// A rule that waits for facts.
#[derive(Clone, Copy, Debug)]
pub struct Undecided {
    /// Which rule.
    pub rule: &'static Rule,
    /// The facts that would have to be learnt.
    pub needs: FactSet,
}

/// What each limit in the words about a finding begins with.
pub const LIMIT_USED: &str = "Limit used: ";

impl Finding {
    /// The limits used, each with its number and mark, for people.
    pub fn limit_sentences(&self) -> Vec<String> {
        self.limits.iter().map(|used| format!("{LIMIT_USED}{used}.")).collect()
    }

    /// Where the knowledge comes from and what it was held against, as one paragraph.
    pub fn basis(&self) -> String {
        let mut text = self.rule.basis.to_owned();
        for sentence in self.limit_sentences() {
            text.push(' ');
            text.push_str(&sentence);
        }
        text
    }
}

impl Verdicts {
    /// Is there a finding that forbids going on?
    pub fn has_stop(&self) -> bool {
        self.findings.iter().any(|finding| finding.rule.severity == Severity::Stop)
    }
}

/// Holds a job against every rule of the book.
pub fn judge(job: &Job, limits: &Limits) -> Verdicts {
    let derived = Derived::of(job, limits);
    let mut findings = Vec::new();
    let mut undecided = Vec::new();
    let mut clear = 0;
    for rule in rules() {
        match (rule.when)(job, &derived, limits) {
            Known::Yes(true, facts) => {
                findings.push(Finding { rule, facts, limits: rule.limits_used(job, limits) });
            }
            Known::Yes(false, _) => clear += 1,
            Known::Waits(needs) => undecided.push(Undecided { rule, needs }),
        }
    }
    Verdicts { findings, undecided, clear, derived }
}
