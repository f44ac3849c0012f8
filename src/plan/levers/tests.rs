use super::*;
use crate::job::{Sheet, fact_named, random_job};
use crate::rules::rules;
use std::collections::HashSet;

fn chance(mut seed: u64) -> impl FnMut() -> u64 {
    move || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        seed >> 11
    }
}

#[test]
fn every_lever_says_in_whole_sentences_what_is_done() {
    let mut codes = HashSet::new();
    let mut names = HashSet::new();
    for lever in levers() {
        assert!(codes.insert(lever.code), "{} twice", lever.code);
        assert!(names.insert(lever.name), "{} twice", lever.name);
        let plain = |sign: char| sign.is_ascii_lowercase() || sign.is_ascii_digit() || sign == '-';
        assert!(lever.code.chars().all(plain) && lever.code.len() <= 40, "{}", lever.code);
        assert!(lever.name.len() <= 70 && !lever.name.ends_with('.'), "{}", lever.code);
        assert!(lever.work.ends_with('.') && lever.work.len() > 25, "{}: {}", lever.code, lever.work);
        assert!(lever.minutes <= 60 * 24 && (0..=500_000).contains(&lever.parts.0), "{}", lever.code);
        assert!(!lever.subject().is_empty());
        assert_eq!(lever_named(lever.code).map(|found| found.name), Some(lever.name));
    }
    assert!(levers().len() <= 256, "more levers than a search can hold");
}

#[test]
fn what_a_lever_sets_may_stand_in_a_job_and_nothing_is_set_twice() {
    let mut next = chance(5);
    let mut seen = HashSet::new();
    let examples = rules().map(crate::rules::Rule::example);
    for job in examples.chain((0..400).map(|_| random_job(&mut next))) {
        for lever in levers() {
            let Some(settings) = lever.on(&job) else { continue };
            seen.insert(lever.code);
            let mut facts = HashSet::new();
            for set in &settings {
                let said = set.fact.declaration();
                assert_eq!((said.check)(&set.value, said), Ok(()), "{} on {}", lever.code, said.path);
                let again = settings.iter().find(|other| other.fact == set.fact).map(|first| &first.value);
                assert!(facts.insert(set.fact) || again == Some(&set.value), "{} sets {} twice", lever.code, said.path);
            }
        }
    }
    let idle: Vec<_> = levers().iter().filter(|lever| !seen.contains(lever.code)).collect();
    assert!(idle.is_empty(), "levers that never came up: {idle:?}");
}

#[test]
fn what_is_measured_tried_or_signed_is_only_ever_aimed_at() {
    let mut next = chance(9);
    for job in (0..300).map(|_| random_job(&mut next)) {
        for lever in levers() {
            for set in lever.on(&job).unwrap_or_default() {
                let said = set.fact.declaration();
                // That a job has changes for good is decided with them.
                let chosen = said.path == "paper.permanent_mods";
                let decided = chosen || job.slot(set.fact).json() == Some(set.value.clone());
                let read = said.path == "driveshaft.loop_distance_in";
                let proved = read || matches!(said.sheet, Sheet::Measured | Sheet::Paper);
                assert!(!proved || set.aimed || decided, "{} decides {}", lever.code, said.path);
            }
        }
    }
}

#[test]
fn what_the_customer_brought_is_no_lever() {
    let fixed = [
        "use.kind",
        "use.raced",
        "use.road_driven",
        "use.cruise_mph",
        "engine.torque_lbft",
        "engine.max_rpm",
        "engine.pattern",
        "engine.upper_hole",
        "engine.crank_flange",
        "engine.starter_teeth",
        "engine.induction",
        "vehicle.drive_layout",
        "vehicle.weight_lb",
        "vehicle.tow_weight_lb",
        "vehicle.axle_ratio",
        "event.date",
        "event.quarter_mile_s",
        "event.trap_mph",
        "trans_brake.hold_s",
        "case.failure_debris",
    ];
    let fixed: Vec<FactId> = fixed.iter().map(|path| fact_named(path).unwrap()).collect();
    let mut next = chance(3);
    for job in (0..200).map(|_| random_job(&mut next)) {
        for lever in levers() {
            for set in lever.on(&job).unwrap_or_default() {
                let path = set.fact.declaration().path;
                assert!(!fixed.contains(&set.fact) && !path.starts_with("class_table."), "{} sets {path}", lever.code);
            }
        }
    }
}

#[test]
fn nothing_is_done_to_a_job_of_which_nothing_is_known_or_which_has_it_already() {
    for lever in levers() {
        assert_eq!(lever.on(&Job::unknown()), None, "{}", lever.code);
    }
    let mut job = Job::plain();
    assert!(lever_named("output-o-ring-off").unwrap().on(&job).is_none());
    job.output.o_ring.set(true);
    assert!(lever_named("output-o-ring-off").unwrap().on(&job).is_some());
}

#[test]
fn a_change_for_good_says_so_on_the_papers() {
    let mut job = Job::plain();
    job.case.bridge_lowered.set(false);
    let settings = lever_named("case-bridge").unwrap().on(&job).unwrap();
    let said = settings.iter().find(|set| set.fact == job.paper.permanent_mods.id()).unwrap();
    assert_eq!((said.value.as_bool(), said.aimed), (Some(true), false));
}

#[test]
fn labour_is_reckoned_in_whole_cents_and_the_shops_own_numbers_win() {
    let lever = lever_named("linkage-nut").unwrap();
    let mut prices = Prices { hour: Cents(9_995), ..Prices::default() };
    assert_eq!(prices.cost(lever), Cents(1_000 + 300), "six minutes of 99.95 are 9.995, rounded up");
    prices.own.insert("linkage-nut".to_owned(), LeverPrice { minutes: 12, parts: Cents(0) });
    assert_eq!(prices.cost(lever), Cents(1_999));
}

/// What a lever makes of a fact; none when it leaves it alone.
fn made(code: &str, job: &Job, path: &str) -> Option<serde_json::Value> {
    let settings = lever_named(code).expect(code).on(job).expect(code);
    settings.into_iter().find(|set| set.fact == fact_named(path).expect(path)).map(|set| set.value)
}

#[test]
fn another_part_is_as_new_in_what_was_known_to_be_wrong_and_says_nothing_of_the_rest() {
    let mut job = Job::plain();
    job.bell.kind.set(crate::job::BellKind::BoltOn);
    job.case.pump_bosses.set(6);
    job.case.threads_bad.set(2);
    job.case.bridge_lowered.set(false);
    assert_eq!(made("case-eight-boss", &job, "case.threads_bad"), Some(0.into()));
    assert_eq!(made("case-eight-boss", &job, "case.bridge_lowered"), None, "it is so already");
    job.case.threads_bad.forget();
    assert_eq!(made("case-eight-boss", &job, "case.threads_bad"), None, "nobody has looked");
}

#[test]
fn a_lever_carries_along_what_hangs_on_what_it_changes() {
    let mut job = Job::plain();
    job.yoke.kind.set(crate::job::YokeKind::None);
    job.yoke.clear_in.set(crate::quantity::Quantity::new(0.010));
    assert!(made("yoke-slip", &job, "yoke.clear_in").is_some(), "another yoke has another clearance");

    let mut job = Job::plain();
    job.direct.center_seal.set(crate::job::CenterSeal::Out);
    job.valve_body.center_seal.set(crate::job::SealDemand::In);
    job.direct.piston_area_in2.set(crate::quantity::Quantity::new(24.0));
    assert_eq!(made("clutch-feed-split", &job, "direct.piston_area_in2"), Some(13.5.into()));
}
