//! Every subset of the levers, tried one by one: the slow way to the same answer.

use super::super::hand::Hand;
use super::super::pulls::{Pull, apply};
use super::super::search::{Goal, Weight};
use super::super::{Terms, check::Check, check::checks};
use crate::job::Job;
use crate::rules::{Derived, Known, Severity};
use std::cell::LazyCell;

/// What a rule says: found, known not to be, or waiting.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Said {
    Found,
    Clear,
    Waits,
}

fn said(rule: &Check<'_>, job: &Job, terms: &Terms<'_>) -> Said {
    match rule.verdict(job, &Derived::of(job, terms.limits), terms.limits) {
        Known::Yes(true, _) => Said::Found,
        Known::Yes(false, _) => Said::Clear,
        Known::Waits(_) => Said::Waits,
    }
}

/// The best subset, by its weight, then cautions left, then codes. With `remember`, a rule is asked once for each
/// different state of the facts it looks at; without, every time.
pub fn best(job: &Job, terms: &Terms<'_>, pulls: &[Pull], goal: Goal, remember: bool) -> (Vec<usize>, Weight) {
    let all = checks(terms).into_iter().filter(|rule| rule.counts);
    let touching = |rule: &Check<'_>| -> usize {
        let touches = |at: &usize| pulls[*at].changes.meets(&rule.reads);
        (0..pulls.len()).filter(touches).map(|at| 1 << at).sum()
    };
    let watched: Vec<(Check<'_>, Said, usize)> =
        all.map(|rule| (rule, said(&rule, job, terms), touching(&rule))).collect();
    // What no lever touches is the same for every subset.
    let fixed = watched.iter().filter(|(_, _, touch)| *touch == 0);
    let fixed: Weight = fixed
        .filter(|(rule, before, _)| *before == Said::Found && goal.covers(rule))
        .fold(Weight::default(), |all, (rule, _, _)| all + Weight::left(rule));
    let room = |touch: &usize| if *touch == 0 { 0 } else { 1 << pulls.len() };
    let mut asked: Vec<Vec<Option<Said>>> = watched.iter().map(|(_, _, touch)| vec![None; room(touch)]).collect();
    let mut best: Option<((Weight, usize), Hand)> = None;
    for subset in 0_usize..1 << pulls.len() {
        let chosen: Vec<usize> = (0..pulls.len()).filter(|at| subset >> at & 1 == 1).collect();
        let hand: Hand = chosen.iter().copied().collect();
        if chosen.iter().any(|at| pulls[*at].against.meets(hand)) {
            continue;
        }
        let after = LazyCell::new(|| {
            let mut after = job.clone();
            chosen.iter().for_each(|at| apply(&mut after, &pulls[*at].sets));
            after
        });
        let mut weight = chosen.iter().fold(fixed, |all, at| all + Weight::of(&pulls[*at]));
        let (mut cautions, mut spoiled) = (0, false);
        for (at, (rule, before, touch)) in watched.iter().enumerate().filter(|(_, (_, _, touch))| *touch != 0) {
            let now = if remember {
                *asked[at][subset & touch].get_or_insert_with(|| said(rule, &after, terms))
            } else {
                said(rule, &after, terms)
            };
            cautions += usize::from(rule.severity == Severity::Caution && now == Said::Found);
            if goal.covers(rule) {
                match (before, now) {
                    (Said::Found, Said::Found | Said::Waits) => weight = weight + Weight::left(rule),
                    (_, Said::Found) if rule.severity == Severity::Stop => spoiled = true,
                    (_, Said::Found) => weight = weight + Weight::left(rule),
                    _ => {}
                }
            }
        }
        let order = (weight, cautions);
        let better = match &best {
            None => true,
            Some((held, _)) if order < *held => true,
            Some((held, set)) => order == *held && hand.comes_before(*set),
        };
        if !spoiled && better {
            best = Some((order, hand));
        }
    }
    best.map_or_else(|| (Vec::new(), fixed), |((weight, _), hand)| (hand.iter().collect(), weight))
}
