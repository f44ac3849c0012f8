//! Says facts in sentences, each number with where it comes from.

use super::Matter;
use crate::job::{Fact, FactId, FactSet, Job, fact_ids};
use crate::quantity::{Inch, Quantity, short};
use jiff::civil::Date;
use std::collections::BTreeMap;

/// How the shop came to know a fact, as the customer is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HowKnown {
    /// The customer said so.
    YouTold,
    /// Somebody looked.
    WeLooked,
    /// Somebody measured.
    WeMeasured,
    /// Somebody measured with a tool whose check was overdue.
    WeMeasuredPastDue,
    /// It stands on the sheet that came with the part.
    PartSheet,
    /// The shop always does it this way.
    OurHabit,
    /// It follows from other numbers.
    WeReckoned,
    /// It is what will be done.
    WePlan,
}

impl HowKnown {
    const fn words(self) -> &'static str {
        match self {
            Self::YouTold => "you told us",
            Self::WeLooked => "we looked",
            Self::WeMeasured => "we measured",
            Self::WeMeasuredPastDue => "we measured, with a tool whose check was overdue",
            Self::PartSheet => "from the sheet of the part",
            Self::OurHabit => "our usual figure",
            Self::WeReckoned => "we worked it out",
            Self::WePlan => "we plan it so",
        }
    }
}

/// The job with the means to say it.
pub(super) struct Say<'a> {
    pub(super) job: &'a Job,
    how_known: &'a dyn Fn(FactId) -> Option<HowKnown>,
    pub(super) added: &'a [String],
    pub(super) done_here: &'a BTreeMap<String, bool>,
    /// Facts that are written down as they will be; nobody has done or seen them yet.
    pub(super) planned: FactSet,
    /// The job without them: what is there.
    pub(super) seen: Job,
}

impl<'a> Say<'a> {
    pub(super) fn of(matter: &Matter<'a>) -> Self {
        let &Matter { job, how_known, added, done_here, .. } = matter;
        let planned = fact_ids().filter(|fact| how_known(*fact) == Some(HowKnown::WePlan));
        let planned = planned.filter(|fact| job.slot(*fact).json().is_some());
        let planned = planned.fold(FactSet::EMPTY, |all, fact| all.with(FactSet::of(fact)));
        let mut seen = job.clone();
        planned.iter().for_each(|fact| seen.slot_mut(fact).forget());
        Self { job, how_known, added, done_here, planned, seen }
    }

    /// A sentence about a known fact, with where it comes from.
    pub(super) fn sourced<T>(&self, fact: &Fact<T>, words: impl FnOnce(&T) -> String) -> Option<String> {
        let text = words(fact.value()?);
        Some(format!("{text} ({}).", self.source_of(fact.id())))
    }

    /// A sentence under a heading that says the customer told it: only another source is named.
    pub(super) fn as_told<T>(&self, fact: &Fact<T>, words: impl FnOnce(&T) -> String) -> Option<String> {
        if (self.how_known)(fact.id()) == Some(HowKnown::YouTold) {
            return Some(format!("{}.", words(fact.value()?)));
        }
        self.sourced(fact, words)
    }

    /// Words without their full stop that rest on several facts, with where each comes from: `tire: we measured`.
    pub(super) fn resting_on(&self, text: &str, facts: &[(&str, FactId)]) -> String {
        let sources: Vec<_> = facts.iter().map(|(name, fact)| format!("{name}: {}", self.source_of(*fact))).collect();
        format!("{text} ({}).", sources.join("; "))
    }

    /// How the shop came to know a fact; of a blank one, if it is awaited.
    pub(super) fn how_known(&self, fact: FactId) -> Option<HowKnown> {
        (self.how_known)(fact)
    }

    /// Does anybody know it?
    pub(super) fn is_known(&self, fact: FactId) -> bool {
        self.job.slot(fact).json().is_some()
    }

    /// Is it written down as it will be, and not as anybody has seen it?
    pub(super) const fn is_planned(&self, fact: FactId) -> bool {
        self.planned.contains(fact)
    }

    /// Does it come from what the shop keeps for all of its jobs?
    pub(super) fn is_our_habit(&self, fact: FactId) -> bool {
        (self.how_known)(fact) == Some(HowKnown::OurHabit)
    }

    fn source_of(&self, fact: FactId) -> &'static str {
        (self.how_known)(fact).map_or("nobody noted where this comes from", HowKnown::words)
    }
}

/// A sentence about a choice, which needs no source: it is what was chosen.
pub(super) fn chosen<T: Copy>(fact: &Fact<T>, words: impl FnOnce(T) -> Option<&'static str>) -> Option<String> {
    fact.value().copied().and_then(words).map(str::to_owned)
}

/// A day in words: `November 30, 2029`.
pub(super) fn day(date: Date) -> String {
    date.strftime("%B %-d, %Y").to_string()
}

/// A length in words: `0.015 inch`.
pub(super) fn inches(length: Quantity<Inch>, places: usize) -> String {
    format!("{} inch", short(length.value(), places))
}
