//! What stays for good is told before it is done and after, and nobody signs for it unseen.

use super::super::tests::{NOTHING, block_of, matter, planning, with, you_told};
use super::super::{FOR_GOOD, Matter, build, reading};
use super::*;
use crate::plan::steps::steps;
use serde_json::json;

#[test]
fn permanent_work_the_shop_adds_by_hand_is_named() {
    let job = Job::plain();
    let added: Vec<String> = steps().filter(|step| step.permanent).map(|step| step.code.to_owned()).collect();
    for code in added.iter().filter(|code| *code != "MC-02") {
        let matter = Matter { added: std::slice::from_ref(code), ..matter(&job, &you_told) };
        let lasting = block_of(&build(&matter), FOR_GOOD);
        assert_eq!(lasting.lines().count(), 1, "{code}: {lasting}");
        assert!(lasting.starts_with("We ") && !lasting.contains("does not name it"), "{code}: {lasting}");
    }
}

#[test]
fn every_lasting_change_stands_on_a_line_of_its_own() {
    let job = with(&[
        ("bell.cut_planned", json!(true)),
        ("valve_body.bridge", json!("required")),
        ("valve_body.passage_ball", json!("required")),
        ("case.passage_ball", json!(false)),
        ("case.bridge_lowered", json!(false)),
    ]);
    let lasting = block_of(&build(&matter(&job, &you_told)), FOR_GOOD);
    for sign in ["saw off", "grind down", "steel ball"] {
        assert_eq!(lasting.lines().filter(|line| line.contains(sign)).count(), 1, "{lasting}");
    }
    assert!(!lasting.contains("no change that stays"), "{lasting}");
}

#[test]
fn a_change_that_is_there_already_is_not_announced_but_found() {
    let job = with(&[("valve_body.passage_ball", json!("required")), ("case.passage_ball", json!(true))]);
    assert_eq!(job.valve_body.passage_ball.value(), Some(&Demand::Required));
    let blocks = build(&matter(&job, &you_told));
    assert!(!block_of(&blocks, FOR_GOOD).contains("steel ball"));
    assert!(block_of(&blocks, "What we found").contains("earlier builder drove a steel ball"));
}

#[test]
fn what_this_shop_has_done_is_told_as_done_and_blamed_on_nobody_else() {
    let demanded = |there: bool| {
        with(&[
            ("valve_body.passage_ball", json!("required")),
            ("case.passage_ball", json!(there)),
            ("case.feed_plugged", json!(true)),
        ])
    };
    let told = |job: &Job, stands: bool| {
        let done_here = BTreeMap::from([("MC-08".to_owned(), stands)]);
        let blocks = build(&Matter { done_here: &done_here, ..matter(job, &you_told) });
        (block_of(&blocks, "What we found"), block_of(&blocks, FOR_GOOD))
    };
    for stands in [true, false] {
        let (found, lasting) = told(&demanded(true), stands);
        assert!(lasting.starts_with("We have driven a steel ball"), "{lasting}");
        assert!(!found.contains("steel ball") && found.contains("earlier builder drove a plug"), "{found}");
    }
    let (_, lasting) = told(&demanded(false), false);
    assert!(lasting.starts_with("We drive a steel ball"), "taken back, and still to be done: {lasting}");
}

#[test]
fn every_permanent_step_has_its_line_before_and_after_it_is_done_under_one_code() {
    let job = Job::plain();
    for step in steps().filter(|step| step.permanent) {
        let code = [step.code.to_owned()];
        let done_here = BTreeMap::from([(step.code.to_owned(), true)]);
        let (planned, done) =
            (for_good(&job, &code, &NOTHING, FactSet::EMPTY), for_good(&job, &code, &done_here, FactSet::EMPTY));
        assert_eq!((planned.len(), done.len()), (1, 1), "{step:?}");
        assert_eq!((planned[0].code, planned[0].step), (done[0].code, Some(step.code)));
        assert!(done[0].text.starts_with("We have ") && !planned[0].text.starts_with("We have "), "{step:?}");
        assert!(reading::age(done[0].text) <= 12.0, "{}", done[0].text);
        assert_eq!(for_good(&job, &[], &NOTHING, FactSet::EMPTY), []);
    }
}

#[test]
fn a_lasting_change_nobody_named_is_not_hidden() {
    let mut job = Job::unknown();
    job.paper.permanent_mods.set(true);
    let lasting = block_of(&build(&matter(&job, &you_told)), FOR_GOOD);
    assert!(lasting.contains("does not name it yet"), "{lasting}");
    job.paper.permanent_mods.set(false);
    assert!(block_of(&build(&matter(&job, &you_told)), FOR_GOOD).contains("So far we plan no change"));
}

#[test]
fn a_lasting_change_that_a_plan_has_written_down_is_still_to_be_signed_for() {
    let bolt_on = [("bell.kind", json!("bolt_on")), ("case.pump_bosses", json!(8))];
    type Facts<'a> = &'a [(&'a str, serde_json::Value)];
    let cases: [(&[&str], Facts<'_>, &str); 6] = [
        (&["case.pump_tapped"], &[("case.pump_tapped", json!(8)), ("pump.holes", json!(8))], "spare bolt places"),
        (&["pump.holes"], &[("case.pump_tapped", json!(8)), ("pump.holes", json!(8))], "the rim of the pump"),
        (
            &["case.bridge_lowered"],
            &[("valve_body.bridge", json!("required")), ("case.bridge_lowered", json!(true))],
            "grind down",
        ),
        (
            &["case.passage_ball"],
            &[("valve_body.passage_ball", json!("required")), ("case.passage_ball", json!(true))],
            "steel ball",
        ),
        (
            &["case.feed_plugged"],
            &[("valve_body.feed_plug", json!("required")), ("case.feed_plugged", json!(true))],
            "drive a plug",
        ),
        (
            &["vent.port"],
            &[("vent.fitting_angle", json!("angled")), ("vent.port", json!("tapped_pipe_1_8"))],
            "the vent hole",
        ),
    ];
    for (planned, facts, sign) in cases {
        let job = with(&[&bolt_on[..], facts].concat());
        let told = |planned| {
            let how_known = planning(planned);
            let blocks = build(&matter(&job, &how_known));
            (block_of(&blocks, FOR_GOOD), block_of(&blocks, "What we found"))
        };
        let (lasting, found) = told(planned);
        assert!(lasting.contains(sign) && !lasting.contains("no change that stays"), "{planned:?}: {lasting}");
        assert!(!found.contains("earlier builder"), "{planned:?}: {found}");
        let (lasting, _) = told(&[]);
        assert!(!lasting.contains(sign), "{planned:?} was seen on the unit: {lasting}");
    }
}
