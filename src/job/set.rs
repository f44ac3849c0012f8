//! A set of facts, small enough to copy about.

use super::FactId;

const WORDS: usize = 5;

/// Which facts a verdict rests on or waits for: one bit a fact.
#[derive(Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct FactSet([u64; WORDS]);

impl FactSet {
    /// How many different facts a set can hold; a test holds the registry under it.
    pub const CAPACITY: usize = WORDS * 64;

    /// The set of nothing.
    pub const EMPTY: Self = Self([0; WORDS]);

    /// The set of one fact.
    pub const fn of(fact: FactId) -> Self {
        let mut words = [0; WORDS];
        words[fact.0 as usize / 64] = 1 << (fact.0 % 64);
        Self(words)
    }

    /// Everything in either set.
    #[must_use]
    pub const fn with(self, other: Self) -> Self {
        let mut words = self.0;
        let mut at = 0;
        while at < WORDS {
            words[at] |= other.0[at];
            at += 1;
        }
        Self(words)
    }

    /// What is in this set and not in the other.
    #[must_use]
    pub fn without(self, other: Self) -> Self {
        Self(std::array::from_fn(|at| self.0[at] & !other.0[at]))
    }

    /// Do the two have a fact in common?
    pub fn meets(&self, other: &Self) -> bool {
        self.0.iter().zip(other.0).any(|(mine, theirs)| mine & theirs != 0)
    }

    /// Is all of it in the other set, too?
    pub fn is_within(self, other: Self) -> bool {
        self.without(other).is_empty()
    }

    /// How many facts it holds.
    pub fn len(&self) -> usize {
        self.0.iter().map(|word| word.count_ones() as usize).sum()
    }

    /// Is this fact in the set?
    pub const fn contains(&self, fact: FactId) -> bool {
        self.0[fact.0 as usize / 64] & (1 << (fact.0 % 64)) != 0
    }

    /// Is there nothing in it?
    pub fn is_empty(&self) -> bool {
        self.0 == [0; WORDS]
    }

    /// The facts in registry order.
    pub fn iter(&self) -> impl Iterator<Item = FactId> + '_ {
        (0..Self::CAPACITY as u16).map(FactId).filter(|fact| self.contains(*fact))
    }
}
