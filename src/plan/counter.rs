//! The counter set: what is asked when a unit comes in, in order, and only what applies to the job so far.
//!
//! Which questions apply is decided by what is already known and by nothing else. A question that
//! hangs on another one is asked once that one is answered so, never on a guess.

mod questions;

use crate::job::{FactId, Job};
use std::sync::LazyLock;

/// One question at the counter.
#[derive(Clone, Copy)]
pub struct Question {
    fact: fn(&Job) -> FactId,
    /// The question in words for the customer at the counter.
    pub words: &'static str,
    /// May "no" be answered here? Some things only a unit taken apart can rule out.
    pub no_counts: bool,
    applies: fn(&Job) -> bool,
}

/// Questions that are asked in one breath.
#[derive(Clone, Copy)]
pub struct Section {
    /// Its place in the set, counted from 1.
    pub number: u8,
    /// A few words.
    pub title: &'static str,
    /// Its questions, in order.
    pub questions: &'static [Question],
}

/// A question that applies to a job.
#[derive(Clone, Copy)]
pub struct Asked {
    /// The place of its section in the set, counted from 1.
    pub section: u8,
    /// The fact it asks for.
    pub fact: FactId,
    /// The question.
    pub question: &'static Question,
}

impl Question {
    const fn always(fact: fn(&Job) -> FactId, words: &'static str) -> Self {
        Self { fact, words, no_counts: true, applies: |_| true }
    }

    const fn when(self, applies: fn(&Job) -> bool) -> Self {
        Self { applies, ..self }
    }

    const fn only_yes(self) -> Self {
        Self { no_counts: false, ..self }
    }

    /// The fact it asks for.
    pub fn fact(&self) -> FactId {
        static NAMES: LazyLock<Job> = LazyLock::new(Job::unknown);
        (self.fact)(&NAMES)
    }

    /// Does it apply to the job so far?
    pub fn applies(&self, job: &Job) -> bool {
        (self.applies)(job)
    }
}

/// The whole set in order, with questions that may not apply.
pub fn counter_sections() -> &'static [Section] {
    questions::SECTIONS
}

/// The questions that apply to this job, in order, answered or not.
pub fn counter(job: &Job) -> Vec<Asked> {
    let asked = |section: &'static Section| {
        let own = section.questions.iter().filter(|question| question.applies(job));
        own.map(|question| Asked { section: section.number, fact: question.fact(), question })
    };
    counter_sections().iter().flat_map(asked).collect()
}

/// The question of the counter set that asks for this fact, if one does.
pub fn counter_question(fact: FactId) -> Option<&'static Question> {
    let mut questions = counter_sections().iter().flat_map(|section| section.questions);
    questions.find(|question| question.fact() == fact)
}

/// Does a question for this fact come up now? One of the counter set does once it applies; any other always does.
pub fn comes_up(job: &Job, fact: FactId) -> bool {
    counter_question(fact).is_none_or(|question| question.applies(job))
}

#[cfg(test)]
mod tests;
