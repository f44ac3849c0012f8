//! Walks the whole book: what every rule, present and future, has to keep.

mod edges;
mod gear_train;
mod logic;
mod near_misses;
mod registry;
mod words;

use super::{Limits, Rule, Truth, rules};
use crate::job::{FactSet, Job, random_job, random_value};

/// A source of chance that is the same on every run.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }
}

fn verdict(rule: &Rule, job: &Job) -> Truth {
    rule.verdict(job, &Limits::default())
}

/// Every fact the rule can wait for: all it touches while nothing is known, and all its example rests on.
fn touched(rule: &Rule) -> FactSet {
    verdict(rule, &Job::unknown()).facts().with(verdict(rule, &rule.example()).facts())
}

/// Throws about half of these facts to values at random.
fn throw_some(job: &mut Job, facts: FactSet, dice: &mut Dice) {
    for fact in facts.iter() {
        let declaration = fact.declaration();
        let value = random_value(declaration, || dice.roll());
        if dice.roll().is_multiple_of(2) {
            job.slot_mut(fact).read(&value, declaration).unwrap();
        }
    }
}

fn without(job: &Job, facts: FactSet) -> Job {
    let mut job = job.clone();
    for fact in facts.iter() {
        job.slot_mut(fact).read(&serde_json::Value::Null, fact.declaration()).unwrap();
    }
    job
}
