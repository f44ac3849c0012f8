//! A set of levers, small enough to copy about.

/// Which levers of a job, by their place: one bit each.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Hand([u128; 2]);

impl Hand {
    /// The most levers a hand holds; a test holds the table under it.
    pub const CAPACITY: usize = 256;

    /// One lever.
    pub fn of(at: usize) -> Self {
        let mut words = [0; 2];
        words[at / 128] = 1 << (at % 128);
        Self(words)
    }

    pub fn with(self, other: Self) -> Self {
        Self([self.0[0] | other.0[0], self.0[1] | other.0[1]])
    }

    pub fn without(self, other: Self) -> Self {
        Self([self.0[0] & !other.0[0], self.0[1] & !other.0[1]])
    }

    pub fn meets(self, other: Self) -> bool {
        self.0[0] & other.0[0] != 0 || self.0[1] & other.0[1] != 0
    }

    pub fn has(self, at: usize) -> bool {
        self.meets(Self::of(at))
    }

    pub fn is_empty(self) -> bool {
        self == Self::default()
    }

    pub fn len(self) -> usize {
        (self.0[0].count_ones() + self.0[1].count_ones()) as usize
    }

    /// Their places, in order.
    pub fn iter(self) -> impl Iterator<Item = usize> {
        (0..Self::CAPACITY).filter(move |at| self.has(*at))
    }

    /// The first lever that only one of the two holds: is it in this one?
    pub fn comes_before(self, other: Self) -> bool {
        let one_only = self.without(other).with(other.without(self));
        one_only.iter().next().is_some_and(|first| self.has(first))
    }
}

impl FromIterator<usize> for Hand {
    fn from_iter<I: IntoIterator<Item = usize>>(places: I) -> Self {
        places.into_iter().fold(Self::default(), |all, at| all.with(Self::of(at)))
    }
}
