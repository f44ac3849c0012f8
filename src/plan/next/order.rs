//! The order of the questions, reckoned on weights and sets alone.

use crate::job::{FactId, FactSet};
use std::collections::BTreeSet;

/// A rule's whole weight in parts: divides by every count of answers up to ten, so that shares stay whole numbers.
pub const WHOLE: u64 = 2520;

/// The most questions that are looked at together.
pub const TOGETHER: usize = 3;

/// A rule that is not decided.
pub struct Open {
    /// What it counts.
    pub weight: u64,
    /// What it waits for.
    pub needs: FactSet,
    /// The facts of which some answers decide it alone, with the share of such answers in parts of [`WHOLE`].
    pub early: Vec<(FactId, u64)>,
}

impl Open {
    /// The share of the answers to this question that settle the rule alone, in parts of [`WHOLE`].
    pub fn early_by(&self, fact: FactId) -> u64 {
        self.early.iter().find(|(of, _)| *of == fact).map_or(0, |(_, share)| *share)
    }

    /// The part of its weight that asking this set decides.
    fn decided_by(&self, asked: FactSet) -> u64 {
        let settles = |(fact, share): &(FactId, u64)| asked.contains(*fact).then_some(*share);
        let share = if self.needs.is_within(asked) {
            WHOLE
        } else {
            self.early.iter().filter_map(settles).max().unwrap_or_default()
        };
        self.weight * share
    }
}

/// The weight that asking this set decides, in parts.
pub fn worth(open: &[Open], asked: FactSet) -> u64 {
    open.iter().map(|rule| rule.decided_by(asked)).sum()
}

/// Brings all of `facts` into order, after `asked` has been asked.
pub fn order(open: &[Open], asked: FactSet, facts: FactSet) -> Vec<FactId> {
    steps(open, asked, facts).concat()
}

/// The same, step by step.
pub fn steps(open: &[Open], mut asked: FactSet, mut facts: FactSet) -> Vec<Vec<FactId>> {
    let mut steps = Vec::new();
    while let Some(best) = best_step(open, asked, facts) {
        let mut step = Vec::new();
        let mut rest = best;
        while let Some(fact) = best_single(open, asked, rest) {
            step.push(fact);
            asked = asked.with(FactSet::of(fact));
            rest = rest.without(FactSet::of(fact));
        }
        facts = facts.without(best);
        steps.push(step);
    }
    steps
}

/// The set that adds the most per question.
///
/// Only single facts and what whole rules wait for, joined where they share a fact, have to be looked at: a fact that
/// completes no rule adds to a set no more than it adds alone, and two parts of a set that no rule joins add to it no
/// more than each of them alone. So the better part is never worse than the whole.
fn best_step(open: &[Open], asked: FactSet, facts: FactSet) -> Option<FactSet> {
    let mut best: Option<(u64, FactSet)> = None;
    let open: Vec<(&Open, u64)> =
        open.iter().filter(|rule| !rule.needs.is_within(asked)).map(|rule| (rule, rule.decided_by(asked))).collect();
    for set in candidates(&open, asked, facts) {
        let touched = open.iter().filter(|(rule, _)| rule.needs.meets(&set));
        let added = touched.map(|(rule, before)| rule.decided_by(asked.with(set)) - before).sum::<u64>();
        let better = best.is_none_or(|(most, than)| {
            let (this, other) = (added * than.len() as u64, most * set.len() as u64);
            this > other || this == other && (set.len(), first(set)) < (than.len(), first(than))
        });
        if better {
            best = Some((added, set));
        }
    }
    best.map(|(_, set)| set)
}

fn first(set: FactSet) -> Vec<FactId> {
    set.iter().collect()
}

fn best_single(open: &[Open], asked: FactSet, of: FactSet) -> Option<FactId> {
    of.iter().max_by_key(|fact| (worth(open, asked.with(FactSet::of(*fact))), std::cmp::Reverse(*fact)))
}

/// Every set that has to be looked at.
fn candidates(open: &[(&Open, u64)], asked: FactSet, facts: FactSet) -> BTreeSet<FactSet> {
    let wanted: BTreeSet<FactSet> =
        open.iter().map(|(rule, _)| rule.needs.without(asked)).filter(|needs| needs.is_within(facts)).collect();
    let small: Vec<FactSet> = wanted.iter().copied().filter(|needs| needs.len() <= TOGETHER).collect();
    let mut joined: BTreeSet<FactSet> = small.iter().copied().collect();
    let mut fresh = small.clone();
    while let Some(set) = fresh.pop() {
        for other in &small {
            let both = set.with(*other);
            if other.meets(&set) && both.len() <= TOGETHER && joined.insert(both) {
                fresh.push(both);
            }
        }
    }
    joined.extend(wanted);
    joined.extend(facts.iter().map(FactSet::of));
    joined
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::fact_ids;

    #[test]
    fn a_question_is_worth_what_it_decides_of_the_weight() {
        let [a, b, c] = [0, 1, 2].map(|nth| fact_ids().nth(nth).expect("more facts than three"));
        let set = |facts: &[FactId]| facts.iter().fold(FactSet::EMPTY, |all, fact| all.with(FactSet::of(*fact)));
        let open = [
            Open { weight: 3, needs: set(&[a, b]), early: vec![(a, WHOLE / 2)] },
            Open { weight: 5, needs: set(&[c]), early: vec![] },
        ];
        for (asked, halves) in
            [(&[][..], 0), (&[a], 3), (&[b], 0), (&[c], 10), (&[a, b], 6), (&[a, c], 13), (&[a, b, c], 16)]
        {
            assert_eq!(worth(&open, set(asked)), halves * WHOLE / 2, "{asked:?}");
        }
        assert_eq!(order(&open, FactSet::EMPTY, set(&[a, b, c])), [c, a, b], "the most for one question comes first");
    }
}
