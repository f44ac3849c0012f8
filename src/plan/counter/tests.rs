use super::{Question, comes_up, counter, counter_sections};
use crate::job::{Job, Kind, fact_named, random_job, random_value};
use serde_json::{Value, json};
use std::collections::BTreeSet;

fn questions() -> impl Iterator<Item = &'static Question> {
    counter_sections().iter().flat_map(|section| section.questions)
}

fn job(facts: &[(&str, Value)]) -> Job {
    let mut job = Job::unknown();
    for (path, value) in facts {
        let fact = fact_named(path).unwrap_or_else(|| panic!("no fact {path}"));
        job.slot_mut(fact).read(value, fact.declaration()).unwrap_or_else(|refused| panic!("{path}: {refused:?}"));
    }
    job
}

fn asked(facts: &[(&str, Value)]) -> BTreeSet<&'static str> {
    counter(&job(facts)).iter().map(|asked| asked.fact.declaration().path).collect()
}

#[test]
fn an_answer_brings_its_own_questions_and_the_near_miss_does_not() {
    let class = ["event.date", "event.quarter_mile_s", "class_table.year", "class_table.brake_allowed", "stick.locks"];
    let counts = ["pump.holes", "case.pump_bosses", "bell.ring_holes"];
    let dates = ["shield.expires", "shield.modified"];
    type Facts<'a> = &'a [(&'a str, Value)];
    let table: &[(&[&str], Facts<'_>, Facts<'_>)] = &[
        (&class, &[("use.raced", json!(true))], &[("use.raced", json!(false))]),
        (&class, &[("use.raced", json!(true))], &[("use.kind", json!("drag"))]),
        (&counts, &[("bell.kind", json!("bolt_on"))], &[("bell.kind", json!("integral"))]),
        (&counts, &[("bell.kind", json!("bolt_on"))], &[]),
        (
            &counts,
            &[("bell.kind", json!("integral")), ("bell.cut_planned", json!(true))],
            &[("bell.kind", json!("integral")), ("bell.cut_planned", json!(false))],
        ),
        (&["bell.cut_planned"], &[("bell.kind", json!("integral"))], &[("bell.kind", json!("bolt_on"))]),
        (&dates, &[("shield.kind", json!("rigid"))], &[("shield.kind", json!("none"))]),
        (&dates, &[("shield.kind", json!("blanket"))], &[]),
        (
            &["class_table.shield_s", "class_table.shield_mph"],
            &[("use.raced", json!(true))],
            &[("use.raced", json!(true)), ("class_table.shield_always", json!(true))],
        ),
        (
            &["class_table.loop_slick_s"],
            &[("use.raced", json!(true)), ("vehicle.tire_kind", json!("slick"))],
            &[("use.raced", json!(true)), ("vehicle.tire_kind", json!("street"))],
        ),
        (
            &["class_table.loop_street_s"],
            &[("use.raced", json!(true)), ("vehicle.tire_kind", json!("street"))],
            &[("use.raced", json!(true)), ("vehicle.tire_kind", json!("slick"))],
        ),
        (
            &["class_table.shield_with_brake"],
            &[("use.raced", json!(true))],
            &[("use.raced", json!(true)), ("class_table.brake_allowed", json!(false))],
        ),
        (
            &["flexplate.expires"],
            &[("flexplate.spec", json!("sfi_29_1"))],
            &[("flexplate.spec", json!("none")), ("use.raced", json!(true))],
        ),
        (
            &["flexplate.shield_expires"],
            &[("flexplate.shield", json!("sfi_30_1"))],
            &[("flexplate.shield", json!("none"))],
        ),
        (&["yoke.spline", "driveshaft.kind"], &[("yoke.kind", json!("slip"))], &[("yoke.kind", json!("none"))]),
        (&["yoke.spline", "driveshaft.kind"], &[("yoke.kind", json!("bolt_on"))], &[]),
        (&["output.park_drum"], &[("output.tail", json!("heavy_bearing"))], &[("output.tail", json!("slip"))]),
        (
            &["vehicle.axle_park_brake"],
            &[("output.park_drum", json!("removed"))],
            &[("output.park_drum", json!("removed")), ("use.road_driven", json!(false))],
        ),
        (
            &["vehicle.axle_park_brake"],
            &[("output.park_drum", json!("removed")), ("use.road_driven", json!(true))],
            &[("output.park_drum", json!("kept")), ("use.road_driven", json!(true))],
        ),
    ];
    for (paths, with, without) in table {
        for path in *paths {
            assert!(asked(with).contains(path), "{path} is asked with {with:?}");
            assert!(!asked(without).contains(path), "{path} is not asked with {without:?}");
        }
    }
}

#[test]
fn a_fact_comes_up_with_its_question_and_one_without_always_does() {
    let fact = |path| fact_named(path).expect("a fact");
    let bolted_on = job(&[("bell.kind", json!("bolt_on"))]);
    assert!(comes_up(&bolted_on, fact("pump.holes")));
    assert!(!comes_up(&job(&[("bell.kind", json!("integral"))]), fact("pump.holes")));
    assert!(comes_up(&Job::unknown(), fact("bell.kind")));
    assert!(comes_up(&Job::unknown(), fact("engine.dowels")), "not of the counter set");
}

#[test]
fn a_street_unit_is_asked_little() {
    let street =
        asked(&[("use.raced", json!(false)), ("bell.kind", json!("integral")), ("shield.kind", json!("none"))]);
    assert!(street.len() <= 42, "{} questions is more than ten minutes at a counter", street.len());
}

#[test]
fn the_sections_stand_in_the_order_of_the_counter_sheet() {
    let numbers: Vec<u8> = counter_sections().iter().map(|section| section.number).collect();
    assert_eq!(numbers, (1..=22).collect::<Vec<u8>>());
    let all = job(&[("use.raced", json!(true)), ("bell.kind", json!("bolt_on"))]);
    assert!(counter(&all).is_sorted_by_key(|asked| asked.section));
}

#[test]
fn no_fact_is_asked_twice_and_every_question_is_one() {
    let facts: Vec<_> = questions().map(Question::fact).collect();
    assert_eq!(facts.iter().collect::<BTreeSet<_>>().len(), facts.len());
    for question in questions() {
        assert!(question.words.contains('?'), "{}", question.words);
        assert!(question.words.len() <= 110, "too long to ask at a counter: {}", question.words);
    }
}

#[test]
fn no_is_kept_from_counting_only_where_yes_or_no_is_asked() {
    for question in questions().filter(|question| !question.no_counts) {
        assert_eq!(question.fact().declaration().kind, Kind::YesNo, "{}", question.words);
    }
}

/// A question that hangs on another would be missed if the other came later on the page.
#[test]
fn what_a_question_hangs_on_is_asked_before_it() {
    let mut seed = 11_u64;
    let mut next = || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        seed >> 11
    };
    for _ in 0..300 {
        let job = random_job(&mut next);
        for (at, cause) in questions().enumerate() {
            let mut changed = job.clone();
            let declaration = cause.fact().declaration();
            let value = random_value(declaration, &mut next);
            changed.slot_mut(cause.fact()).read(&value, declaration).expect("a value the fact may have");
            for (other, question) in questions().enumerate().filter(|(other, _)| *other < at) {
                let moved = question.applies(&job) != question.applies(&changed);
                assert!(!moved, "question {other} ({}) hangs on {}", question.words, declaration.path);
            }
        }
    }
}
