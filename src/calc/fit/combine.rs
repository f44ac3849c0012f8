//! Every thickness that several parts together can come to.

use std::collections::BTreeMap;

/// A size that can be taken several times.
#[derive(Clone, Copy)]
pub(super) struct Pile {
    /// Nanometres.
    pub(super) size: i64,
    /// How many there are.
    pub(super) count: usize,
    /// How many of them are fitted already and cost no work.
    pub(super) fitted: usize,
}

/// The way to one thickness that changes the fewest parts.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Way {
    /// How many parts are new.
    pub(super) new: usize,
    /// How many are taken of each pile.
    pub(super) taken: Vec<usize>,
}

/// The most stacks that are tried: sizes measured to a ten-thousandth come to some thousands, and what anybody may ask for
/// must not fill the machine.
const MOST_STACKS: usize = 60_000;

/// For each number of parts up to `most`, every thickness they can come to, each by the way with the fewest new parts.
///
/// `None` when there are more than [`MOST_STACKS`].
pub(super) fn sums(piles: &[Pile], most: usize) -> Option<BTreeMap<(usize, i64), Way>> {
    let mut reached = BTreeMap::from([((0, 0), Way { new: 0, taken: Vec::new() })]);
    for pile in piles {
        let mut next: BTreeMap<(usize, i64), Way> = BTreeMap::new();
        for ((parts, thick), way) in &reached {
            let mut thick = *thick;
            for take in 0..=pile.count.min(most - parts) {
                let mut taken = way.taken.clone();
                taken.push(take);
                let found = Way { new: way.new + take.saturating_sub(pile.fitted), taken };
                let known = next.entry((parts + take, thick)).or_insert_with(|| found.clone());
                if found < *known {
                    *known = found;
                }
                thick += pile.size;
            }
            if next.len() > MOST_STACKS {
                return None;
            }
        }
        reached = next;
    }
    Some(reached)
}
