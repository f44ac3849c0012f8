use super::*;
use crate::job::{Demand, FactSet, Kind, fact_ids, random_job};
use crate::rules::Known;
use std::collections::{BTreeMap, HashSet};

fn conditional() -> impl Iterator<Item = (&'static Step, super::step::When)> {
    steps().filter_map(|step| Some((step, step.when?)))
}

fn plain_but(change: fn(&mut Job)) -> Job {
    let mut job = Job::plain();
    change(&mut job);
    job
}

#[test]
fn codes_stand_once_carry_their_phases_letters_and_count_up() {
    let mut counted: BTreeMap<Phase, usize> = BTreeMap::new();
    for step in steps() {
        let place = counted.entry(step.phase).or_default();
        *place += 1;
        assert_eq!(step.code, format!("{}-{place:02}", step.phase.letters()));
        assert_eq!(step_named(&step.code.to_lowercase()).map(|found| found.code), Some(step.code));
    }
    assert_eq!(counted.into_keys().collect::<Vec<_>>(), Phase::ALL);
    assert_eq!(steps().count(), 84);
    assert!(step_named("XX-01").is_none());
}

#[test]
fn phases_follow_each_other_in_the_order_of_the_work() {
    let phases: Vec<_> = steps().map(|step| step.phase).collect();
    assert!(phases.is_sorted());
}

#[test]
fn every_step_says_what_and_why_in_whole_sentences_and_no_two_say_the_same() {
    let mut said = HashSet::new();
    for step in steps() {
        for text in [Some(step.text), Some(step.why), step.hazard].into_iter().flatten() {
            let begins = text.starts_with(|c: char| c.is_uppercase());
            assert!(begins && text.ends_with('.') && !text.contains("  "), "{}: {text}", step.code);
            assert!(text.len() >= 30, "{} says too little: {text}", step.code);
        }
        assert!(step.title.len() <= 50 && !step.title.ends_with('.'), "{}: {}", step.code, step.title);
        assert!(step.title.starts_with(|c: char| c.is_uppercase()), "{}: {}", step.code, step.title);
        for text in [step.title, step.text, step.why] {
            assert!(said.insert(text), "{}: {text}", step.code);
        }
    }
}

#[test]
fn whatever_cuts_metal_or_runs_says_how_it_can_hurt() {
    let silent = |step: &&Step| (step.permanent || step.phase == Phase::Test) && step.hazard.is_none();
    assert_eq!(steps().filter(silent).map(|step| step.code).collect::<Vec<_>>(), Vec::<&str>::new());
}

#[test]
fn a_conditional_step_comes_up_on_its_example_and_not_on_its_counter_example() {
    for (step, when) in conditional() {
        assert_eq!(step.applies(&plain_but(when.applies)).value(), Some(&true), "{}", step.code);
        assert_eq!(step.applies(&plain_but(when.spares)).value(), Some(&false), "{}", step.code);
    }
}

#[test]
fn while_nothing_is_known_a_conditional_step_waits_and_the_others_stand() {
    for due in checklist(&Job::unknown()) {
        match due.step.when {
            Some(_) => assert!(matches!(due.applies, Known::Waits(facts) if !facts.is_empty()), "{:?}", due.step),
            None => assert_eq!(due.applies, Known::given(true)),
        }
    }
}

/// Forgetting everything a settled answer rests on leaves it open.
#[test]
fn a_settled_answer_rests_on_the_facts_it_names() {
    for (step, when) in conditional() {
        for change in [when.applies, when.spares] {
            let mut job = plain_but(change);
            let facts = step.applies(&job).facts();
            for fact in facts.iter() {
                job.slot_mut(fact).read(&serde_json::Value::Null, fact.declaration()).unwrap();
            }
            assert!(step.applies(&job).value().is_none(), "{} is settled without {facts:?}", step.code);
        }
    }
}

#[test]
fn every_place_in_the_log_is_filled_by_a_step_and_two_fill_the_inserts_and_the_plugs() {
    let mut fills: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for step in steps() {
        if let Some(path) = step.order {
            assert!(step.order_fact().is_some(), "{} fills {path}, which is no fact", step.code);
            fills.entry(path).or_default().push(step.code);
        }
    }
    let places = fact_ids().map(|fact| fact.declaration().path).filter(|path| path.starts_with("order."));
    assert_eq!(fills.keys().copied().collect::<HashSet<_>>(), places.collect());
    for (path, codes) in fills {
        match path {
            "order.insert" => assert_eq!(codes, ["MC-05", "MC-06"], "in the case or in the bell, whichever is later"),
            "order.plug" => assert_eq!(codes, ["MC-08", "MC-09"], "ball or plug, whichever is later"),
            _ => assert_eq!(codes.len(), 1, "{path} is filled by {codes:?}"),
        }
        assert_eq!(crate::job::fact_named(path).and_then(filled_by).map(|step| step.code), Some(codes[0]));
    }
}

#[test]
fn what_is_read_while_working_is_a_fact_and_never_a_place_in_the_log() {
    for step in steps() {
        assert_eq!(step.facts_read().count(), step.reads.len(), "{}: {:?}", step.code, step.reads);
        for fact in step.facts_read() {
            assert!(filled_by(fact).is_none(), "{}", step.code);
            assert!(!matches!(fact.declaration().kind, Kind::Text), "{}", step.code);
            assert!(is_work_done(fact), "{}", step.code);
        }
    }
}

#[test]
fn a_fact_typed_from_the_bench_is_no_place_in_the_log() {
    let job = Job::unknown();
    assert!(filled_by(job.bench.front_end_play_in.id()).is_none());
    assert_eq!(filled_by(job.order.final_wash.id()).map(|step| step.code), Some("WA-01"));
}

/// A part that settles the matter settles it whatever is still unknown.
#[test]
fn one_known_reason_is_enough() {
    let mut job = Job::unknown();
    job.bell.cut_planned.set(true);
    let signature = step_named("MC-01").unwrap();
    assert_eq!(signature.applies(&job).value(), Some(&true));
    job.bell.cut_planned.set(false);
    assert!(signature.applies(&job).waits_for().contains(job.order.vent_tap.id()));
    assert!(!signature.applies(&job).waits_for().contains(job.bell.cut_planned.id()));
}

#[test]
fn learning_more_never_turns_a_settled_step_around() {
    let mut state = 11u64;
    let mut roll = move || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        state >> 33
    };
    for _ in 0..200 {
        let whole = random_job(&mut roll);
        let mut part = whole.clone();
        for fact in fact_ids() {
            if roll() % 2 == 0 {
                part.slot_mut(fact).read(&serde_json::Value::Null, fact.declaration()).unwrap();
            }
        }
        for (less, more) in checklist(&part).into_iter().zip(checklist(&whole)) {
            if let (Some(before), Some(after)) = (less.applies.value(), more.applies.value()) {
                assert_eq!(before, after, "{:?}", less.step);
            }
        }
    }
}

#[test]
fn what_can_be_added_by_hand_has_a_name_of_its_own_and_a_place_in_the_log() {
    let added: Vec<_> = steps().filter_map(|step| Some((step.code, step.added_as?, step.order?))).collect();
    let codes: Vec<_> = added.iter().map(|(code, ..)| *code).collect();
    assert_eq!(codes, ["MC-03", "MC-04", "MC-05", "MC-06", "MC-07", "MC-08", "MC-09", "MC-10"]);
    assert_eq!(added.iter().map(|(_, name, _)| *name).collect::<HashSet<_>>().len(), codes.len());
}

#[test]
fn a_bushing_that_is_only_tried_is_no_permanent_work_and_a_honed_one_is() {
    let trial = step_named("MC-10").unwrap();
    let honed = ["MC-10".to_owned()];
    assert!(!trial.is_for_good(&[]) && trial.fills(&[]).is_none());
    assert!(trial.is_for_good(&honed) && trial.fills(&honed).is_some());
    let job = Job::plain();
    assert_eq!(permanent_work(&job, &[], FactSet::EMPTY).value(), Some(&false), "the plain job has a slip yoke to try");
    assert_eq!(permanent_work(&job, &honed, FactSet::EMPTY).value(), Some(&true));
}

#[test]
fn permanent_work_is_not_ruled_out_while_it_is_not_known() {
    assert!(permanent_work(&Job::unknown(), &[], FactSet::EMPTY).value().is_none());
    assert_eq!(permanent_work(&plain_but(|j| j.bell.cut_planned.set(true)), &[], FactSet::EMPTY).value(), Some(&true));
    assert_eq!(permanent_work(&plain_but(|j| j.order.vent_tap.set(4)), &[], FactSet::EMPTY).value(), Some(&true));
    let mut driven = Job::plain();
    driven.valve_body.passage_ball.set(Demand::Required);
    assert_eq!(permanent_work(&driven, &[], FactSet::EMPTY).value(), Some(&true));
    driven.case.passage_ball.set(true);
    assert_eq!(permanent_work(&driven, &[], FactSet::EMPTY).value(), Some(&false), "an earlier builder drove it");
    let planned = FactSet::of(driven.case.passage_ball.id());
    assert_eq!(permanent_work(&driven, &[], planned).value(), Some(&true), "it is only planned");
    driven.order.plug.set(3);
    assert_eq!(permanent_work(&driven, &[], FactSet::EMPTY).value(), Some(&true), "this shop drove it");
    let mut unread = Job::plain();
    unread.bell.cut_planned.forget();
    assert!(permanent_work(&unread, &[], FactSet::EMPTY).value().is_none());
}

#[test]
fn somebody_who_types_what_nobody_types_is_told_where_it_comes_from() {
    assert!(not_typed("order.final_wash").unwrap().contains("Tick Wash it for the last time (WA-01)"));
    for path in FROM_PAPERS {
        assert!(not_typed(path).unwrap().ends_with("signatures and is not typed."), "{path}");
    }
    assert!(not_typed("paper.customer_parts").is_none());
    assert!(not_typed("bell.kind").is_none());
}

#[test]
fn a_reading_is_held_against_limits_of_its_own_unit() {
    let job = Job::unknown();
    let names = |fact: FactId| limits_on(fact).into_iter().map(|limit| limit.declaration().name).collect::<Vec<_>>();
    assert_eq!(names(job.yoke.clear_in.id()), ["yoke_clear_least", "yoke_clear_most"]);
    assert_eq!(names(job.cooling.flow_s_per_qt.id()), ["cooler_flow"]);
    assert!(names(job.one_way.free.id()).is_empty());
}

#[test]
fn a_word_that_says_nobody_has_looked_is_no_reading_and_every_other_word_is() {
    let mut unread = HashSet::new();
    for fact in steps().filter(|step| step.hold_point).flat_map(Step::facts_read) {
        let Kind::Choice(words) = fact.declaration().kind else { continue };
        for word in words {
            let says_not = word.label.starts_with("Not ");
            assert_eq!(is_reading(&word.code.into()), !says_not, "{}: {}", fact.declaration().path, word.label);
            unread.extend(says_not.then_some(word.code));
        }
    }
    assert_eq!(unread, reading::NOT_YET.into());
    assert!(is_reading(&0.into()) && is_reading(&false.into()), "a no is an answer");
}

#[test]
fn what_the_bench_reads_is_work_done_and_what_was_chosen_is_not() {
    for step in steps() {
        assert!(step.facts_read().all(is_work_done), "{}", step.code);
    }
    for chosen in ["use.kind", "engine.torque_lbft", "valve_body.kind", "converter.stall_rpm", "output.swap_planned"] {
        assert!(!is_work_done(crate::job::fact_named(chosen).expect(chosen)), "{chosen}");
    }
}
