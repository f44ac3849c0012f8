//! The jobs that are measured.

use endplay::job::{Job, fact_ids, random_value};

/// A source of chance that is the same on every run.
pub struct Dice(pub u64);

impl Dice {
    pub fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 >> 11
    }
}

/// The plain job with about so many of a hundred facts at any value, and so many forgotten.
pub fn thrown(dice: &mut Dice, thrown_of_100: u64, forgotten_of_100: u64) -> Job {
    let mut job = Job::plain();
    for fact in fact_ids() {
        let said = fact.declaration();
        if dice.roll() % 100 < thrown_of_100 {
            let value = random_value(said, || dice.roll());
            job.slot_mut(fact).read(&value, said).expect("a value the fact may have");
        }
        if dice.roll() % 100 < forgotten_of_100 {
            job.slot_mut(fact).read(&serde_json::Value::Null, said).expect("any fact may be unknown");
        }
    }
    job
}
