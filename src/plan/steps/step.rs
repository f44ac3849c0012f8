//! What a step is: one declaration that says what is done, why, and when it belongs to a job.

use crate::job::{FactId, FactSet, Job, fact_named};
use crate::rules::{Known, Truth};
use std::fmt;

/// One step of the work.
pub struct Step {
    /// Its code, for ever: `WA-01`.
    pub code: &'static str,
    /// The part of the work it belongs to.
    pub phase: Phase,
    /// What it is called, in a few words.
    pub title: &'static str,
    /// What is done.
    pub text: &'static str,
    /// What goes wrong without it.
    pub why: &'static str,
    /// How it can hurt somebody, and whose word counts; none when it cannot more than any work can.
    pub hazard: Option<&'static str>,
    /// Must somebody put initials to it before the work goes on?
    pub hold_point: bool,
    /// The customer's signature that it consists in seeing; none for all other work.
    pub sees: Option<SeenPaper>,
    /// Can it not be undone? Then the customer signs first.
    pub permanent: bool,
    /// What it is called on the list of work that can be added to a job by hand; none when it cannot be.
    pub added_as: Option<&'static str>,
    /// Has the unit already what it would change for good? Then nothing of that is left to be done.
    pub already: Option<fn(&Job) -> Truth>,
    /// Is what cannot be undone part of it only when it was added by hand?
    pub only_by_hand: bool,
    /// Facts that are read off or found while doing it, by path: its number, or what the test showed.
    pub reads: &'static [&'static str],
    /// The `order.*` fact that its place in the log fills, by path.
    pub order: Option<&'static str>,
    /// When it belongs to a job; none when it belongs to every job.
    pub when: Option<When>,
}

/// When a step belongs to a job, with an example of either answer.
#[derive(Clone, Copy)]
pub struct When {
    /// The condition.
    pub truth: fn(&Job) -> Truth,
    /// Changes the plain job so that the step belongs to it.
    pub applies: fn(&mut Job),
    /// Changes the plain job in the same corner so that it does not.
    pub spares: fn(&mut Job),
}

impl fmt::Debug for Step {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code)
    }
}

impl Step {
    /// Does it belong to this job?
    pub fn applies(&self, job: &Job) -> Truth {
        self.when.map_or(Known::given(true), |when| (when.truth)(job))
    }

    /// Does it belong to this job, for its facts or because it was added by hand?
    pub fn needed(&self, job: &Job, added: &[String]) -> Truth {
        match self.applies(job) {
            _ if self.is_added(added) => Known::given(true),
            // It comes up only by being done or added, and neither has happened.
            Known::Waits(facts) if self.order_fact().is_some_and(|own| facts == FactSet::of(own)) => {
                Known::Yes(false, facts)
            }
            settled => settled,
        }
    }

    /// Is what it would change work of this job: added by hand, or needed while the unit has it not yet?
    ///
    /// What the unit has only by a fact that is `planned` it has not yet.
    pub fn is_wanted(&self, job: &Job, added: &[String], planned: FactSet) -> Truth {
        if self.only_by_hand || self.is_added(added) {
            return Known::given(self.is_added(added));
        }
        let missing = self.already.map_or(Known::given(true), |already| match already(job) {
            Known::Yes(true, facts) if facts.meets(&planned) => Known::Yes(true, facts),
            there => !there,
        });
        self.needed(job, added) & missing
    }

    /// Was it added by hand?
    pub fn is_added(&self, added: &[String]) -> bool {
        added.iter().any(|code| code == self.code)
    }

    /// Would doing it now change something for good?
    pub fn is_for_good(&self, added: &[String]) -> bool {
        self.permanent && (!self.only_by_hand || self.is_added(added))
    }

    /// The `order.*` fact that doing it now fills.
    pub fn fills(&self, added: &[String]) -> Option<FactId> {
        self.order_fact().filter(|_| !self.only_by_hand || self.is_added(added))
    }

    /// The `order.*` fact that its place in the log fills.
    pub fn order_fact(&self) -> Option<FactId> {
        self.order.and_then(fact_named)
    }

    /// The facts read off or found while doing it.
    pub fn facts_read(&self) -> impl Iterator<Item = FactId> {
        self.reads.iter().filter_map(|path| fact_named(path))
    }

    /// A step of every job that anybody may tick, until the declaration says more.
    pub(super) const fn new(
        code: &'static str,
        phase: Phase,
        title: &'static str,
        text: &'static str,
        why: &'static str,
    ) -> Self {
        Self {
            code,
            phase,
            title,
            text,
            why,
            hazard: None,
            hold_point: false,
            sees: None,
            permanent: false,
            added_as: None,
            already: None,
            only_by_hand: false,
            reads: &[],
            order: None,
            when: None,
        }
    }

    /// The work stops here until somebody put initials to it.
    pub(super) const fn hold(mut self) -> Self {
        self.hold_point = true;
        self
    }

    /// It is seeing the customer's signature on this paper.
    pub(super) const fn sees(mut self, paper: SeenPaper) -> Self {
        self.sees = Some(paper);
        self
    }

    /// It cannot be undone.
    pub(super) const fn permanent(mut self) -> Self {
        self.permanent = true;
        self
    }

    /// The shop can add it to a job, under this name.
    pub(super) const fn added_as(mut self, name: &'static str) -> Self {
        self.added_as = Some(name);
        self
    }

    /// Nothing is changed for good where this is true already.
    pub(super) const fn unless(mut self, already: fn(&Job) -> Truth) -> Self {
        self.already = Some(already);
        self
    }

    /// What cannot be undone, and has a place in the log, is done only when it was added by hand.
    pub(super) const fn only_by_hand(mut self) -> Self {
        self.only_by_hand = true;
        self
    }

    /// It can hurt somebody in this way.
    pub(super) const fn hurts(mut self, hazard: &'static str) -> Self {
        self.hazard = Some(hazard);
        self
    }

    /// These facts are learnt by doing it.
    pub(super) const fn reads(mut self, facts: &'static [&'static str]) -> Self {
        self.reads = facts;
        self
    }

    /// Its place in the log is this fact.
    pub(super) const fn order(mut self, fact: &'static str) -> Self {
        self.order = Some(fact);
        self
    }

    /// It belongs only to jobs of which this is true; then an example of a job that needs it and of one that does not.
    pub(super) const fn when(mut self, truth: fn(&Job) -> Truth, applies: fn(&mut Job), spares: fn(&mut Job)) -> Self {
        self.when = Some(When { truth, applies, spares });
        self
    }
}

/// A paper on which a step sees the customer's signature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SeenPaper {
    /// The leave to take the unit apart.
    Teardown,
    /// The build as it stands, with what cannot be undone.
    Build,
}

/// The parts of the work, in their order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Phase {
    /// The unit comes in.
    Intake,
    /// It is taken apart and looked at.
    Teardown,
    /// Metal is cut, drilled and ground.
    Machining,
    /// It is washed for good.
    Wash,
    /// Pump, drums and gears are made up.
    SubAssembly,
    /// The case is filled.
    Assembly,
    /// What bolts on outside is tried together.
    MockUp,
    /// It is tried.
    Test,
    /// It goes out, with its papers.
    Delivery,
    /// It goes into the vehicle.
    Installation,
    /// It is looked at again.
    AfterCare,
}

impl Phase {
    /// Every phase, in the order of the work.
    pub const ALL: [Self; 11] = [
        Self::Intake,
        Self::Teardown,
        Self::Machining,
        Self::Wash,
        Self::SubAssembly,
        Self::Assembly,
        Self::MockUp,
        Self::Test,
        Self::Delivery,
        Self::Installation,
        Self::AfterCare,
    ];

    /// As people read it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Intake => "Intake",
            Self::Teardown => "Teardown",
            Self::Machining => "Machining",
            Self::Wash => "Wash",
            Self::SubAssembly => "Sub-assembly",
            Self::Assembly => "Assembly",
            Self::MockUp => "Mock-up",
            Self::Test => "Test",
            Self::Delivery => "Delivery",
            Self::Installation => "Installation",
            Self::AfterCare => "After-care",
        }
    }

    /// The letters its codes begin with.
    pub const fn letters(self) -> &'static str {
        match self {
            Self::Intake => "IN",
            Self::Teardown => "TD",
            Self::Machining => "MC",
            Self::Wash => "WA",
            Self::SubAssembly => "SA",
            Self::Assembly => "AS",
            Self::MockUp => "MU",
            Self::Test => "TE",
            Self::Delivery => "DL",
            Self::Installation => "IS",
            Self::AfterCare => "AC",
        }
    }
}
