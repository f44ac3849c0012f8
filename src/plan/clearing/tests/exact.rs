//! The search against trying everything, on jobs at random.

use super::super::check::checks;
use super::super::pulls::{Pull, pulls, together};
use super::super::search::Goal;
use super::brute;
use super::*;
use crate::job::{fact_ids, random_job, random_value};
use crate::rules::{Rule, judge, rules};

/// A source of chance that gives the same draws each time.
fn chance(seed: u64) -> impl FnMut() -> u64 {
    let mut state = seed.wrapping_mul(0x9E37_79B9_7F4A_7C15).wrapping_add(1);
    move || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        state >> 17
    }
}

/// A job with several things wrong at once: the plain one made to fire some rules, shaken, partly forgotten.
fn troubled_job(next: &mut impl FnMut() -> u64) -> Job {
    if next().is_multiple_of(8) {
        return random_job(next);
    }
    let all: Vec<&Rule> = rules().collect();
    let mut job = Job::plain();
    for _ in 0..1 + next() % 5 {
        (all[(next() % all.len() as u64) as usize].fires)(&mut job);
    }
    let facts: Vec<_> = fact_ids().collect();
    for _ in 0..next() % 12 {
        let fact = facts[(next() % facts.len() as u64) as usize];
        let value = if next().is_multiple_of(4) {
            serde_json::Value::Null
        } else {
            random_value(fact.declaration(), &mut *next)
        };
        job.slot_mut(fact).read(&value, fact.declaration()).unwrap();
    }
    job
}

/// Up to so many levers, of those that could be pulled; chosen near the trouble first.
fn some(job: &Job, prices: &Prices, most: usize, next: &mut impl FnMut() -> u64) -> Vec<Pull> {
    let behind = judge(job, &Limits::default()).findings;
    let mut all = pulls(job, prices);
    all.sort_by_cached_key(|pull| {
        let near = behind.iter().any(|finding| finding.facts.meets(&pull.changes));
        (!near && !next().is_multiple_of(8), next())
    });
    all.truncate(most);
    all.sort_by_key(|pull| pull.lever.code);
    together(all)
}

/// Prices at which some levers cost nothing and some cost the same, so that every tie comes up.
fn prices(next: &mut impl FnMut() -> u64) -> Prices {
    let mut prices = Prices::default();
    if next().is_multiple_of(2) {
        for lever in crate::plan::levers::levers() {
            let own = crate::plan::levers::LeverPrice { minutes: 0, parts: Cents((next() % 4 * 100) as i64) };
            prices.own.insert(lever.code.to_owned(), own);
        }
    }
    prices
}

#[test]
fn no_subset_of_levers_does_it_for_less() {
    let (mut jobs, mut moved, mut subsets, mut largest, mut left_over) = (0, 0, 0_u64, 0, 0);
    for seed in 0..200 {
        let mut next = chance(seed);
        let job = troubled_job(&mut next);
        let (limits, prices) = (Limits::default(), prices(&mut next));
        // Seldom the most, so that every size comes up and the slow way stays bearable.
        let most =
            if seed.is_multiple_of(50) { 14 } else { 3 + (next() % 12).min(next() % 12).min(next() % 15) as usize };
        let pulls = some(&job, &prices, most, &mut next);
        let terms = Terms { limits: &limits, house: &[], prices: &prices, aside: &[], effort: u32::MAX };
        let desk = Desk { job: &job, terms: &terms, checks: checks(&terms), pulls: pulls.clone() };
        for goal in [Goal::Stops, Goal::StopsAndCautions] {
            let (wanted, weight) = brute::best(&job, &terms, &pulls, goal, true);
            if pulls.len() <= 5 {
                let slow = brute::best(&job, &terms, &pulls, goal, false);
                assert_eq!(slow, (wanted.clone(), weight), "seed {seed}: the memory of the slow way is at fault");
            }
            let found = desk.solve(goal, Hand::default());
            let names: Vec<_> = pulls.iter().map(|pull| pull.lever.code).collect();
            assert_eq!(found.cost.0, weight.cost, "seed {seed}, {goal:?}: {:?} of {names:?}", desk.codes(&found));
            assert_eq!(found.pulled, wanted, "seed {seed}, {goal:?} of {names:?}");
            assert_eq!((found.stops_left, found.proven), (weight.stops_left, true), "seed {seed}, {goal:?}");
            jobs += 1;
            moved += usize::from(!wanted.is_empty());
            left_over += usize::from(weight.stops_left > 0);
            subsets += 1 << pulls.len();
            largest = largest.max(pulls.len());
        }
    }
    println!(
        "{jobs} searches, {moved} with a plan, {left_over} with a stop left, {subsets} subsets, {largest} levers at most"
    );
    assert!(largest == 14 && moved > jobs / 4, "the jobs are too tame: {moved} of {jobs}");
}

#[test]
fn with_every_lever_the_answer_is_proven_and_holds_what_it_says() {
    let mut shown = 0;
    for seed in 1_000..1_020 {
        let mut next = chance(seed);
        let job = troubled_job(&mut next);
        let clear = plans_for(&job);
        let limits = Limits::default();
        let before = judge(&job, &limits);
        let found = |rule: &RuleNamed| before.findings.iter().any(|finding| finding.rule.code == rule.code);
        for plan in &clear.plans {
            shown += 1;
            let impossible = |rule: &RuleNamed| clear.impossible.iter().any(|stop| stop.rule.code == rule.code);
            let stop = |rule: &&RuleNamed| rule.severity == Severity::Stop;
            assert!(plan.left.iter().filter(stop).all(&found), "seed {seed} brings a stop");
            if plan.proven {
                assert!(plan.left.iter().filter(stop).all(impossible), "seed {seed}, {:?}", plan.offer);
            }
            let idle = plan.changes.iter().filter(|change| change.clears.is_empty() && change.keeps_away.is_empty());
            assert_eq!(idle.count(), 0, "seed {seed}: a lever of {:?} does nothing", plan.codes());
            assert_eq!(plan.cost.0, plan.changes.iter().map(|change| change.cost.0).sum::<i64>());
        }
        let again = plans_for(&job);
        let codes = |clear: &Clearing| clear.plans.iter().map(Plan::codes).collect::<Vec<_>>();
        assert_eq!(codes(&again), codes(&clear), "seed {seed} is told differently twice");
    }
    assert!(shown > 30, "{shown}");
}

#[test]
fn why_a_stop_stays_is_so_for_every_subset_of_levers() {
    let mut seen = [0; 3];
    for seed in 2_000..2_200 {
        let mut next = chance(seed);
        let job = troubled_job(&mut next);
        let (limits, prices) = (Limits::default(), Prices::default());
        let terms = Terms { limits: &limits, house: &[], prices: &prices, aside: &[], effort: u32::MAX };
        let pulls = some(&job, &prices, 2 + (next() % 5) as usize, &mut next);
        let desk = Desk { job: &job, terms: &terms, checks: checks(&terms), pulls: pulls.clone() };
        let stops: Vec<_> = desk.checks.iter().filter(|rule| rule.severity == Severity::Stop && rule.counts).collect();
        let said = |job: &Job| {
            let derived = Derived::of(job, &limits);
            stops.iter().map(|rule| rule.verdict(job, &derived, &limits).value().copied()).collect::<Vec<_>>()
        };
        let allowed = |chosen: &Vec<usize>| {
            let hand: Hand = chosen.iter().copied().collect();
            chosen.iter().all(|at| !pulls[*at].against.meets(hand))
        };
        let subsets = (0..1_usize << pulls.len())
            .map(|subset| (0..pulls.len()).filter(|at| subset >> at & 1 == 1).collect::<Vec<_>>());
        let before = said(&job);
        let after: Vec<_> = subsets.filter(allowed).map(|chosen| said(&desk.with(&chosen))).collect();
        for stop in desk.impossible(&desk.solve(Goal::Stops, Hand::default())) {
            let at = stops.iter().position(|rule| rule.code == stop.rule.code).unwrap();
            let brings = |said: &[Option<bool>]| {
                before.iter().zip(said).any(|(was, is)| *was != Some(true) && *is == Some(true))
            };
            let ways = after.iter().filter(|said| said[at] == Some(false) && !brings(said)).count();
            assert_eq!(ways > 0, stop.why == Stays::OrOthersStay, "seed {seed}: {stop:?}");
            let always = after.iter().all(|said| said[at] == Some(true));
            assert!(stop.why != Stays::Fixed || always, "seed {seed}: {stop:?}");
            seen[stop.why as usize] += 1;
        }
    }
    assert!(seen.iter().all(|times| *times > 0), "{seen:?}");
}
