//! Levers as they stand for one job: what each would change, what it costs, what it cannot go with.

use super::hand::Hand;
use crate::job::{FactSet, Job};
use crate::plan::levers::{Lever, Prices, Setting, Undo, levers, touched};
use crate::quantity::Cents;

/// One lever that could be pulled on a job.
#[derive(Clone, Debug)]
pub(super) struct Pull {
    pub lever: &'static Lever,
    pub sets: Vec<Setting>,
    /// Facts it decides, other than they are or not.
    pub touches: FactSet,
    /// Facts that would be other than they are.
    pub changes: FactSet,
    pub cost: Cents,
    pub minutes: u32,
    pub permanent: bool,
    /// Levers that set one of its facts to something else.
    pub against: Hand,
}

/// Every lever that could be pulled on this job, in order of code.
pub(super) fn pulls(job: &Job, prices: &Prices) -> Vec<Pull> {
    together(levers().iter().filter_map(|lever| pull(job, prices, lever)).collect())
}

fn pull(job: &Job, prices: &Prices, lever: &'static Lever) -> Option<Pull> {
    let sets = lever.on(job)?;
    let changes = sets.iter().filter(|set| job.slot(set.fact).json().as_ref() != Some(&set.value));
    let changes = changes.fold(FactSet::EMPTY, |all, set| all.with(FactSet::of(set.fact)));
    let minutes = prices.of(lever).minutes;
    let permanent = lever.undo == Undo::Never;
    Some(Pull {
        lever,
        touches: touched(&sets),
        sets,
        changes,
        cost: prices.cost(lever),
        minutes,
        permanent,
        against: Hand::default(),
    })
}

/// Marks which levers cannot go with which.
pub(super) fn together(mut pulls: Vec<Pull>) -> Vec<Pull> {
    for at in 0..pulls.len() {
        pulls[at].against = (0..pulls.len()).filter(|other| clash(&pulls[at], &pulls[*other])).collect();
    }
    pulls
}

fn clash(one: &Pull, other: &Pull) -> bool {
    one.touches.meets(&other.touches)
        && one.sets.iter().any(|set| other.sets.iter().any(|its| its.fact == set.fact && its.value != set.value))
}

/// Writes what a lever sets into a job.
pub(super) fn apply(job: &mut Job, sets: &[Setting]) {
    for set in sets {
        let read = job.slot_mut(set.fact).read(&set.value, set.fact.declaration());
        debug_assert!(read.is_ok(), "{set:?}");
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::rules;

    #[test]
    fn two_levers_go_together_unless_they_want_one_fact_to_be_two_things() {
        let (mut apart, mut beside) = (0, 0);
        for rule in rules() {
            let pulls = pulls(&rule.example(), &Prices::default());
            for (at, one) in pulls.iter().enumerate() {
                assert_eq!(one.permanent, one.lever.undo == Undo::Never, "{}", one.lever.code);
                for (other_at, other) in pulls.iter().enumerate() {
                    let shared: Vec<_> = one
                        .sets
                        .iter()
                        .flat_map(|a| other.sets.iter().map(move |b| (a, b)))
                        .filter(|(a, b)| a.fact == b.fact)
                        .collect();
                    let fights = shared.iter().any(|(a, b)| a.value != b.value);
                    assert_eq!(one.against.has(other_at), fights, "{} and {}", one.lever.code, other.lever.code);
                    if at != other_at && fights {
                        apart += 1;
                    } else if at != other_at && !shared.is_empty() {
                        beside += 1;
                    }
                }
            }
        }
        assert!(apart > 0 && beside > 0, "{apart} pairs fight and {beside} agree on a fact both set");
    }
}
