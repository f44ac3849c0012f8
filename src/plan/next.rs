//! What to ask next: the fewest questions that decide every check that is due, in the order in which they decide most.
//!
//! **Which questions.** Every fact that a due and undecided rule waits for, and no other. As long as one of them stays
//! blank, some answers to the rest leave a rule open, so fewer would not do; and a fact that is not among them
//! cannot change a due verdict, whatever its value. An answer can bring new questions up (a rule may wait for one
//! thing or another, by the answer), and a list made anew after every answer shows them.
//!
//! **In which order.** A rule weighs by its severity: a stop 16, a caution 4, a note 1. What a set of questions is
//! worth is the weight it decides: the whole weight of a rule whose blanks are all in the set, and otherwise the share
//! of a rule's weight that the best one of its questions settles early, that is, the share of the answers to that
//! question which decide the rule alone. The list is made step by step: the next step is the set of at most three
//! questions, or the blanks of one rule, that adds the most worth per question to what was asked before. Within a step
//! the question that adds most alone comes first. What is still equal goes by the smaller set, then by the job
//! file's order. So after the first step of k questions (k up to three) no other k questions leave less weight
//! undecided, reckoned like this; the tests hold that against trying all sets.
//!
//! **Whose turn it is.** A question of the counter set that hangs on another answer, and a fact that shows only inside
//! while the unit is closed, wait for their turn: they come after the others and are ordered in the same way. Facts
//! that the shop's own records fill in are not asked at all.

mod early;
mod order;

use super::counter::comes_up;
use super::steps::{Filler, filler};
use crate::job::{FactId, FactSet, Job, Sheet};
use crate::rules::house::HouseRule;
use crate::rules::{Derived, Due, Limits, Rule, Severity, Truth, rules};
use order::Open;

/// What is to be learnt so that every due check is decided.
#[derive(Debug)]
pub struct Next<'a> {
    /// The questions, best first; those whose turn has not come stand last.
    pub questions: Vec<NextQuestion<'a>>,
    /// What nobody has to ask, since the shop's records fill it in.
    pub filled: Vec<Filled<'a>>,
    /// How many due checks are not decided.
    pub open: usize,
}

/// One question to ask.
#[derive(Debug)]
pub struct NextQuestion<'a> {
    /// The fact it asks for.
    pub fact: FactId,
    /// Can it be asked now?
    pub turn: Turn,
    /// The checks that wait for it, the gravest first.
    pub decides: Vec<Decides<'a>>,
}

/// A fact that a due check waits for and that the shop's records fill in.
#[derive(Debug)]
pub struct Filled<'a> {
    /// The fact.
    pub fact: FactId,
    /// Where it comes from.
    pub from: Filler,
    /// The checks that wait for it, the gravest first.
    pub decides: Vec<Decides<'a>>,
}

/// A check that a question helps to decide.
#[derive(Clone, Copy, Debug)]
pub struct Decides<'a> {
    /// The check.
    pub check: Check<'a>,
    /// What has to be known besides, unless an answer settles it early.
    pub with: FactSet,
    /// Can the right answer settle it although other things are unknown?
    pub may_settle_alone: bool,
}

/// A rule of the book, or one of the shop's own.
#[derive(Clone, Copy, Debug)]
pub enum Check<'a> {
    /// One that is the same everywhere.
    Book(&'static Rule),
    /// One of this shop.
    House(&'a HouseRule),
}

impl<'a> Check<'a> {
    /// Its code.
    pub fn code(self) -> &'a str {
        match self {
            Self::Book(rule) => rule.code,
            Self::House(rule) => &rule.code,
        }
    }

    /// What it looks for, in a few words.
    pub fn title(self) -> &'a str {
        match self {
            Self::Book(rule) => rule.title,
            Self::House(rule) => &rule.title,
        }
    }

    /// How bad it is when it is true.
    pub const fn severity(self) -> Severity {
        match self {
            Self::Book(rule) => rule.severity,
            Self::House(rule) => rule.severity,
        }
    }

    const fn due(self) -> Due {
        match self {
            Self::Book(rule) => rule.due,
            Self::House(rule) => rule.due,
        }
    }

    fn verdict(self, job: &Job, derived: &Derived, limits: &Limits) -> Truth {
        match self {
            Self::Book(rule) => (rule.when)(job, derived, limits),
            Self::House(rule) => rule.condition.verdict(job, derived),
        }
    }
}

/// When a question can be asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// At once.
    Now,
    /// Once another question is answered: the answer may make it needless.
    AfterAnother,
    /// Once the unit is apart: it cannot be seen before.
    OnceApart,
}

/// How far the work has come, as far as asking goes.
#[derive(Clone, Copy)]
pub struct At<'a> {
    /// Is a rule that is due then asked about already?
    pub asks_for: &'a dyn Fn(Due) -> bool,
    /// Is the unit apart, so that its inside can be seen?
    pub apart: bool,
}

/// What to ask next about this job, held against the rule book with these limits and against the shop's own rules.
pub fn next<'a>(job: &Job, limits: &Limits, house: &'a [HouseRule], at: At<'_>) -> Next<'a> {
    let derived = Derived::of(job, limits);
    let checks = rules().map(Check::Book).chain(house.iter().map(Check::House));
    let waiting: Vec<(Check<'a>, FactSet)> = checks
        .filter(|check| (at.asks_for)(check.due()))
        .map(|check| (check, check.verdict(job, &derived, limits).waits_for()))
        .filter(|(_, needs)| !needs.is_empty())
        .collect();
    let wanted = waiting.iter().fold(FactSet::EMPTY, |all, (_, needs)| all.with(*needs));
    let (filled, asked): (Vec<FactId>, Vec<FactId>) = wanted.iter().partition(|fact| filler(*fact).is_some());
    let early = early::shares(job, limits, &waiting, &asked);
    let open: Vec<Open> = waiting
        .iter()
        .zip(&early)
        .map(|((check, needs), early)| Open { weight: weight(check.severity()), needs: *needs, early: early.clone() })
        .collect();
    let decides = |fact: FactId| {
        let mut decides: Vec<Decides<'a>> = waiting
            .iter()
            .zip(&open)
            .filter(|((_, needs), _)| needs.contains(fact))
            .map(|((check, needs), open)| Decides {
                check: *check,
                with: needs.without(FactSet::of(fact)),
                may_settle_alone: open.early_by(fact) > 0,
            })
            .collect();
        decides.sort_by_key(|decides| decides.check.severity());
        decides
    };
    let turn = |fact: FactId| turn(job, fact, at.apart);
    let now = asked.iter().copied().filter(|fact| turn(*fact) == Turn::Now).collect::<Vec<_>>();
    let later = asked.iter().copied().filter(|fact| turn(*fact) != Turn::Now).collect::<Vec<_>>();
    let mut ordered = Vec::new();
    for facts in [now, later] {
        ordered.extend(order::order(&open, set(&ordered), set(&facts)));
    }
    Next {
        questions: ordered
            .into_iter()
            .map(|fact| NextQuestion { fact, turn: turn(fact), decides: decides(fact) })
            .collect(),
        filled: filled
            .into_iter()
            .filter_map(|fact| Some(Filled { fact, from: filler(fact)?, decides: decides(fact) }))
            .collect(),
        open: waiting.len(),
    }
}

/// Four notes weigh as one caution, four cautions as one stop.
const fn weight(severity: Severity) -> u64 {
    match severity {
        Severity::Stop => 16,
        Severity::Caution => 4,
        Severity::Note => 1,
    }
}

fn turn(job: &Job, fact: FactId, apart: bool) -> Turn {
    if !apart && fact.declaration().sheet == Sheet::Inside {
        Turn::OnceApart
    } else if comes_up(job, fact) {
        Turn::Now
    } else {
        Turn::AfterAnother
    }
}

fn set(facts: &[FactId]) -> FactSet {
    facts.iter().fold(FactSet::EMPTY, |all, fact| all.with(FactSet::of(*fact)))
}

#[cfg(test)]
mod tests;
