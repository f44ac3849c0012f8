//! One rule of the shop's book as a plan sees it: built in or the shop's own.

use super::Terms;
use super::reads::{reads, reads_of_house};
use crate::job::{FactSet, Job};
use crate::rules::house::Condition;
use crate::rules::{Derived, Known, Limits, Rule, Severity, Truth, rules};

/// A rule with everything it can look at.
#[derive(Clone, Copy, Debug)]
pub(super) struct Check<'a> {
    pub code: &'a str,
    pub title: &'a str,
    pub severity: Severity,
    pub reads: FactSet,
    /// Is a plan about it? A note is not, nor what was set aside for this job.
    pub counts: bool,
    when: When<'a>,
}

#[derive(Clone, Copy, Debug)]
enum When<'a> {
    BuiltIn(&'static Rule),
    House(&'a Condition),
}

impl Check<'_> {
    pub fn verdict(&self, job: &Job, derived: &Derived, limits: &Limits) -> Truth {
        match self.when {
            When::BuiltIn(rule) => (rule.when)(job, derived, limits),
            When::House(condition) => condition.verdict(job, derived),
        }
    }

    pub fn found(&self, job: &Job, derived: &Derived, limits: &Limits) -> bool {
        matches!(self.verdict(job, derived, limits), Known::Yes(true, _))
    }
}

/// Every rule of the book, in its order, then the shop's own.
pub(super) fn checks<'a>(terms: &Terms<'a>) -> Vec<Check<'a>> {
    let counts = |severity, code| severity != Severity::Note && !terms.aside.contains(&code);
    let built_in = rules().map(|rule| Check {
        code: rule.code,
        title: rule.title,
        severity: rule.severity,
        reads: reads(rule),
        counts: counts(rule.severity, rule.code),
        when: When::BuiltIn(rule),
    });
    let own = terms.house.iter().map(|rule| Check {
        code: &rule.code,
        title: &rule.title,
        severity: rule.severity,
        reads: reads_of_house(&rule.condition),
        counts: counts(rule.severity, rule.code.as_str()),
        when: When::House(&rule.condition),
    });
    built_in.chain(own).collect()
}
