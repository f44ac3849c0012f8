use super::early::answers_to;
use super::order::{Open, TOGETHER, WHOLE, order, steps, worth};
use super::*;
use crate::job::{BellKind, Declaration, ThreadSystem, fact_ids, fact_named, random_value};
use crate::rules::{Truth, YesNo};
use serde_json::json;

const STAGES: [Due; 6] = [Due::Intake, Due::Spec, Due::Teardown, Due::Assembly, Due::Test, Due::Delivery];

fn at(due: &Due) -> impl Fn(Due) -> bool + '_ {
    move |of| of <= *due
}

fn asked(job: &Job, due: Due) -> Next<'static> {
    next(job, &Limits::default(), &[], At { asks_for: &at(&due), apart: due >= Due::Teardown })
}

fn dice(mut seed: u64) -> impl FnMut() -> u64 {
    move || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        seed >> 11
    }
}

/// A value that somebody could have measured. One too big to reckon with is no answer, and is asked for again.
fn value(declaration: &Declaration, next: &mut impl FnMut() -> u64) -> serde_json::Value {
    loop {
        let value = random_value(declaration, &mut *next);
        if value.as_f64().is_none_or(|number| number == 0.0 || (1e-6..1e9).contains(&number.abs())) {
            return value;
        }
    }
}

fn random_job(next: &mut impl FnMut() -> u64) -> Job {
    let mut job = crate::job::random_job(&mut *next);
    for fact in fact_ids().filter(|fact| job.slot(*fact).json().is_some()).collect::<Vec<_>>() {
        let value = value(fact.declaration(), next);
        job.slot_mut(fact).read(&value, fact.declaration()).expect("a value it may have");
    }
    job
}

fn fact(path: &str) -> FactId {
    fact_named(path).expect("a fact of the job file")
}

/// What each due rule says: true, false or open.
fn verdicts(job: &Job, due: Due) -> Vec<(&'static str, Option<bool>)> {
    let limits = Limits::default();
    let derived = Derived::of(job, &limits);
    let due = rules().filter(|rule| rule.due <= due);
    due.map(|rule| (rule.code, (rule.when)(job, &derived, &limits).value().copied())).collect()
}

fn all_of(next: &Next) -> Vec<FactId> {
    next.questions.iter().map(|question| question.fact).chain(next.filled.iter().map(|filled| filled.fact)).collect()
}

#[test]
fn a_blank_that_is_never_asked_for_cannot_change_a_due_verdict() {
    let mut next = dice(3);
    for _ in 0..20 {
        let job = random_job(&mut next);
        let due = STAGES[next() as usize % STAGES.len()];
        let listed = all_of(&asked(&job, due));
        let before = verdicts(&job, due);
        let mut all = job.clone();
        let blank = |fact: &FactId| job.slot(*fact).json().is_none() && !listed.contains(fact);
        for fact in fact_ids().filter(blank) {
            let value = value(fact.declaration(), &mut next);
            all.slot_mut(fact).read(&value, fact.declaration()).expect("a value it may have");
            if next().is_multiple_of(8) {
                let mut one = job.clone();
                one.slot_mut(fact).read(&value, fact.declaration()).expect("a value it may have");
                assert_eq!(verdicts(&one, due), before, "{} at {value}", fact.declaration().path);
            }
        }
        assert_eq!(verdicts(&all, due), before, "all of them at once");
    }
}

#[test]
fn every_blank_that_a_due_check_waits_for_is_listed_once_and_what_is_known_is_not_asked() {
    let mut next = dice(5);
    for _ in 0..20 {
        let job = random_job(&mut next);
        let due = STAGES[next() as usize % STAGES.len()];
        let list = asked(&job, due);
        let mut listed = all_of(&list);
        assert!(listed.iter().all(|fact| job.slot(*fact).json().is_none()));
        assert_eq!(list.open, verdicts(&job, due).iter().filter(|(_, verdict)| verdict.is_none()).count());
        listed.sort();
        let mut once = listed.clone();
        once.dedup();
        assert_eq!(once, listed);
        for question in &list.questions {
            assert!(!question.decides.is_empty(), "{} is asked for nothing", question.fact.declaration().path);
            assert!(filler(question.fact).is_none());
        }
    }
}

/// Answers to all that is listed, until nothing is: then nothing due may be left open.
#[test]
fn going_down_the_list_decides_everything_that_is_due() {
    let mut next = dice(7);
    for _ in 0..5 {
        let mut job = random_job(&mut next);
        let due = STAGES[next() as usize % STAGES.len()];
        // An answer may bring up another question, so the list is made anew until it is empty.
        for _ in 0..4 {
            for fact in all_of(&asked(&job, due)) {
                let value = value(fact.declaration(), &mut next);
                job.slot_mut(fact).read(&value, fact.declaration()).expect("a value it may have");
            }
        }
        let open: Vec<_> = verdicts(&job, due).into_iter().filter(|(_, verdict)| verdict.is_none()).collect();
        assert!(open.is_empty(), "{open:?}");
    }
}

#[test]
fn what_the_records_fill_in_is_named_and_not_asked() {
    let mut job = Job::plain();
    job.order.vent_tap.forget();
    job.order.final_wash.forget();
    job.paper.signed_version.forget();
    let list = asked(&job, Due::Delivery);
    assert!(list.questions.is_empty(), "{:?}", list.questions);
    let filled: Vec<_> = list.filled.iter().map(|filled| (filled.fact.declaration().path, filled.from)).collect();
    for place in ["order.vent_tap", "order.final_wash"] {
        assert!(filled.iter().any(|(path, from)| *path == place && matches!(from, Filler::Log(_))), "{filled:?}");
    }
    assert!(filled.iter().any(|(path, from)| *path == "paper.signed_version" && matches!(from, Filler::Papers)));
}

#[test]
fn a_question_says_what_it_decides_and_with_what() {
    let mut job = Job::plain();
    job.threads.mount_hole.forget();
    let list = asked(&job, Due::Delivery);
    let question = list.questions.iter().find(|one| one.fact == fact("threads.mount_hole")).expect("it is asked");
    let decides: Vec<_> = question.decides.iter().map(|one| (one.check.code(), one.with.is_empty())).collect();
    assert!(decides.contains(&("THR-02", true)), "{decides:?}");
    job.threads.mount_bolt.forget();
    let list = asked(&job, Due::Delivery);
    let question = list.questions.iter().find(|one| one.fact == fact("threads.mount_hole")).expect("it is asked");
    let stop = question.decides.iter().find(|one| one.check.code() == "THR-02").expect("still waiting");
    assert!(stop.with.contains(fact("threads.mount_bolt")), "the bolt is wanted, too");
    job.threads.mount_hole.set(ThreadSystem::Inch);
    assert!(asked(&job, Due::Delivery).questions.iter().all(|one| one.fact != fact("threads.mount_hole")));
}

#[test]
fn what_hangs_on_another_answer_and_what_only_shows_inside_waits_for_its_turn() {
    let list = asked(&Job::unknown(), Due::Intake);
    let turns: Vec<_> = list.questions.iter().map(|question| question.turn).collect();
    let first_later = turns.iter().position(|turn| *turn != Turn::Now).unwrap_or(turns.len());
    assert!(turns[first_later..].iter().all(|turn| *turn != Turn::Now), "{turns:?}");
    let turn = |job: &Job, path: &str| {
        let list = asked(job, Due::Intake);
        list.questions.iter().find(|question| question.fact == fact(path)).map(|question| question.turn)
    };
    assert_eq!(turn(&Job::unknown(), "pump.holes"), Some(Turn::AfterAnother));
    let mut bolted = Job::unknown();
    bolted.bell.kind.set(BellKind::BoltOn);
    assert_eq!(turn(&bolted, "pump.holes"), Some(Turn::Now));
    let inside = fact_ids().find(|fact| fact.declaration().sheet == Sheet::Inside).expect("a fact of the inside");
    assert_eq!(super::turn(&bolted, inside, false), Turn::OnceApart);
    assert_eq!(super::turn(&bolted, inside, true), Turn::Now);
}

/// The share that one answer settles early is what judging the job with each answer shows.
#[test]
fn early_shares_are_what_each_answer_really_settles() {
    let mut next = dice(11);
    for _ in 0..4 {
        let job = random_job(&mut next);
        for question in asked(&job, Due::Delivery).questions {
            let declaration = question.fact.declaration();
            for decides in question.decides.iter().filter(|one| !one.with.is_empty()) {
                let settles = answers_to(declaration).into_iter().any(|answer| {
                    let mut job = job.clone();
                    let read = job.slot_mut(question.fact).read(&answer, declaration);
                    read.is_ok()
                        && decides
                            .check
                            .verdict(&job, &Derived::of(&job, &Limits::default()), &Limits::default())
                            .value()
                            .is_some()
                });
                assert_eq!(decides.may_settle_alone, settles, "{} by {}", decides.check.code(), declaration.path);
            }
        }
    }
}

#[test]
fn every_question_is_tried_with_answers_it_may_have() {
    for fact in fact_ids().filter(|fact| filler(*fact).is_none()) {
        let declaration = fact.declaration();
        let fit =
            answers_to(declaration).iter().filter(|answer| (declaration.check)(answer, declaration).is_ok()).count();
        assert!(fit > 0 || declaration.plain.json().is_null(), "{} is tried with nothing", declaration.path);
    }
}

/// A few facts to make small cases of.
fn some(count: usize) -> Vec<FactId> {
    fact_ids().take(count).collect()
}

fn subsets(of: &[FactId]) -> Vec<FactSet> {
    (0_u32..1 << of.len())
        .map(|bits| {
            set(&of.iter().enumerate().filter(|(at, _)| bits & (1 << at) != 0).map(|(_, id)| *id).collect::<Vec<_>>())
        })
        .collect()
}

/// A small case: rules that wait for some of seven facts, some of which settle them early.
fn small_case(next: &mut impl FnMut() -> u64, facts: &[FactId]) -> Vec<Open> {
    let rules = 1 + next() % 8;
    (0..rules)
        .map(|_| {
            let needs: Vec<FactId> = facts.iter().copied().filter(|_| next().is_multiple_of(3)).collect();
            let needs = if needs.is_empty() { vec![facts[next() as usize % facts.len()]] } else { needs };
            let mut early: Vec<_> = needs.iter().map(|fact| (*fact, WHOLE / 4 * (next() % 4))).collect();
            early.retain(|(_, share)| *share > 0);
            Open { weight: [16, 4, 1][next() as usize % 3], early, needs: set(&needs) }
        })
        .collect()
}

#[test]
fn no_set_of_up_to_three_questions_adds_more_per_question_than_the_next_step() {
    let facts = some(7);
    let mut next = dice(13);
    for _ in 0..400 {
        let open = small_case(&mut next, &facts);
        let wanted = open.iter().fold(FactSet::EMPTY, |all, rule| all.with(rule.needs));
        let mut asked = FactSet::EMPTY;
        for step in steps(&open, FactSet::EMPTY, wanted) {
            let step = set(&step);
            let added = worth(&open, asked.with(step)) - worth(&open, asked);
            for other in subsets(&facts).into_iter().filter(|other| (1..=TOGETHER).contains(&other.len())) {
                let more = worth(&open, asked.with(other)) - worth(&open, asked);
                assert!(
                    added * other.len() as u64 >= more * step.len() as u64,
                    "{added} for {} against {more} for {}",
                    step.len(),
                    other.len()
                );
            }
            asked = asked.with(step);
        }
        assert_eq!(asked, wanted, "all that is wanted is asked in the end");
    }
}

#[test]
fn after_the_first_step_nothing_else_asked_as_often_leaves_less_undecided() {
    let facts = some(7);
    let mut next = dice(17);
    let mut lengths = [0; TOGETHER + 1];
    for _ in 0..400 {
        let open = small_case(&mut next, &facts);
        let wanted = open.iter().fold(FactSet::EMPTY, |all, rule| all.with(rule.needs));
        let first = &steps(&open, FactSet::EMPTY, wanted)[0];
        if first.len() > TOGETHER {
            continue;
        }
        lengths[first.len()] += 1;
        let best =
            subsets(&facts).into_iter().filter(|set| set.len() == first.len()).map(|set| worth(&open, set)).max();
        assert_eq!(Some(worth(&open, set(first))), best);
    }
    assert!(lengths[1..].iter().all(|count| *count > 0), "steps of every length were held against it: {lengths:?}");
}

#[test]
fn the_order_is_the_same_whatever_the_rules_order() {
    let facts = some(7);
    let mut next = dice(19);
    for _ in 0..100 {
        let mut open = small_case(&mut next, &facts);
        let there = order(&open, FactSet::EMPTY, set(&facts));
        open.reverse();
        assert_eq!(order(&open, FactSet::EMPTY, set(&facts)), there);
    }
}

/// Conditions in which each fact stands once: the fewest facts that decide all of them, whatever the answers, are all
/// that they wait for. Tried with every set and every answer.
#[test]
fn fewer_questions_than_are_listed_would_not_do() {
    type Condition = fn(&Job) -> Truth;
    let conditions: [Condition; 5] = [
        |job| job.usage.raced.yes() & job.usage.road_driven.no(),
        |job| job.usage.raced.yes() | (job.bell.insert_fitted.yes() & job.bell.cut_planned.no()),
        |job| job.usage.road_driven.yes() | !job.bell.cut_planned.yes(),
        |job| job.bell.insert_fitted.no(),
        |job| !(job.usage.raced.no() & job.bell.cut_planned.yes()) | job.bell.insert_fitted.yes(),
    ];
    let facts = ["use.raced", "use.road_driven", "bell.insert_fitted", "bell.cut_planned"].map(fact);
    for picked in 1_u32..1 << conditions.len() {
        let picked: Vec<Condition> =
            conditions.iter().enumerate().filter(|(at, _)| picked & (1 << at) != 0).map(|(_, one)| *one).collect();
        let union = picked.iter().fold(FactSet::EMPTY, |all, when| all.with(when(&Job::unknown()).waits_for()));
        let decides_all = |asked: &FactSet| {
            let asked: Vec<FactId> = asked.iter().collect();
            (0_u32..1 << asked.len()).all(|answers| {
                let mut job = Job::unknown();
                for (at, fact) in asked.iter().enumerate() {
                    let answer = json!(answers & (1 << at) != 0);
                    job.slot_mut(*fact).read(&answer, fact.declaration()).expect("yes or no");
                }
                picked.iter().all(|when| when(&job).value().is_some())
            })
        };
        let enough: Vec<FactSet> = subsets(&facts).into_iter().filter(decides_all).collect();
        let fewest = enough.iter().min_by_key(|asked| asked.len()).expect("asking everything is enough");
        assert_eq!((*fewest, enough.contains(&union)), (union, true));
    }
}

#[test]
fn a_rule_of_the_shops_own_is_asked_for_like_any_other() {
    let house = [HouseRule {
        code: "HR-01".into(),
        version: 1,
        severity: Severity::Stop,
        due: Due::Spec,
        customer_accepts: false,
        title: "Never for racing".into(),
        shop: String::new(),
        customer: None,
        fix: String::new(),
        condition: crate::rules::house::read("use.raced").expect("a condition"),
    }];
    let mut job = Job::plain();
    job.usage.raced.forget();
    let codes = |due: Due| {
        let at = At { asks_for: &at(&due), apart: true };
        let list = next(&job, &Limits::default(), &house, at);
        let own = list.questions.iter().find(|question| question.fact == fact("use.raced"));
        own.map_or_else(Vec::new, |own| own.decides.iter().map(|one| one.check.code().to_owned()).collect())
    };
    assert!(codes(Due::Spec).contains(&"HR-01".to_owned()));
    assert!(!codes(Due::Intake).contains(&"HR-01".to_owned()), "it is not due yet");
}
