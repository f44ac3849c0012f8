use super::*;
use crate::job::{BellKind, EnginePattern, OutputEnd, ShaftKind, UseKind, YokeKind};
use crate::quantity::Quantity;

mod brute;
mod exact;

fn plans_for(job: &Job) -> Clearing {
    plans_at(job, Terms::EFFORT)
}

fn plans_at(job: &Job, effort: u32) -> Clearing {
    let (limits, prices) = (Limits::default(), Prices::default());
    clearing(job, &Terms { limits: &limits, house: &[], prices: &prices, aside: &[], effort })
}

fn codes(rules: &[RuleNamed]) -> Vec<&str> {
    rules.iter().map(|rule| rule.code.as_str()).collect()
}

/// A yoke that does not fit the output shaft.
fn wrong_yoke() -> Job {
    let mut job = Job::plain();
    job.yoke.spline.set(27);
    job
}

#[test]
fn a_job_without_stop_or_caution_needs_no_plan() {
    let clear = plans_for(&Job::plain());
    assert!(clear.plans.is_empty() && clear.impossible.is_empty());
    let unknown = plans_for(&Job::unknown());
    assert!(unknown.plans.is_empty() && unknown.impossible.is_empty());
}

#[test]
fn one_stop_is_cleared_by_its_cheapest_lever_and_the_lever_says_so() {
    let clear = plans_for(&wrong_yoke());
    let first = &clear.plans[0];
    assert_eq!((first.offer, first.codes(), first.proven), (Offer::NoStop, vec!["yoke-slip"], true));
    assert_eq!(codes(&first.changes[0].clears), ["OUT-01"]);
    assert!(first.left.is_empty() && first.brought.is_empty() && clear.impossible.is_empty());
    assert_eq!(first.cost, Cents(30 * 10_000 / 60 + 12_000));
    let other = &clear.plans[1];
    assert_eq!((other.offer, other.codes()), (Offer::OtherMeans, vec!["output-32-short"]), "the dearer way round");
}

#[test]
fn what_has_to_be_measured_is_blank_once_the_plan_is_applied() {
    let mut job = Job::plain();
    job.yoke.clear_in.set(Quantity::new(0.009));
    let clear = plans_for(&job);
    let plan = &clear.plans[0];
    assert_eq!((plan.offer, plan.codes()), (Offer::NoCaution, vec!["output-bushing"]));
    assert_eq!(plan.edits, [(job.yoke.clear_in.id(), None)]);
    assert_eq!(plan.opened.iter().map(|open| open.rule.code.as_str()).collect::<Vec<_>>(), ["OUT-11", "OUT-12"]);
}

#[test]
fn the_first_plan_leaves_a_caution_that_the_second_clears() {
    let mut job = wrong_yoke();
    job.output.o_ring.set(true);
    let clear = plans_for(&job);
    assert_eq!((clear.plans[0].codes(), codes(&clear.plans[0].left)), (vec!["yoke-slip"], vec!["OUT-02"]));
    assert_eq!(clear.plans[1].codes(), ["output-o-ring-off", "yoke-slip"]);
    assert!(clear.plans[1].left.is_empty());
}

#[test]
fn a_lever_that_brings_a_caution_says_which() {
    let mut job = Job::plain();
    job.yoke.kind.set(YokeKind::BoltOn);
    job.output.end.set(OutputEnd::TappedBoltOn);
    job.output.o_ring.set(true);
    job.driveshaft.kind.set(ShaftKind::Fixed);
    let clear = plans_for(&job);
    let first = &clear.plans[0];
    assert_eq!(first.codes(), ["yoke-slip"], "a slip yoke in place of the bolted one lets the shaft move");
    assert_eq!(codes(&first.changes[0].clears), ["OUT-05"]);
    assert_eq!(codes(&first.changes[0].brings), ["OUT-02", "OUT-20"]);
    assert_eq!(codes(&first.left), ["OUT-02"]);
}

#[test]
fn what_no_lever_reaches_is_said_to_be_impossible_and_why() {
    let mut job = wrong_yoke();
    job.engine.pattern.set(EnginePattern::Other);
    let clear = plans_for(&job);
    assert_eq!(clear.plans[0].codes(), ["yoke-slip"], "the rest is cleared all the same");
    let [stop] = clear.impossible.as_slice() else { panic!("{:?}", clear.impossible) };
    assert_eq!(stop.rule.code, "CSE-01");
    assert_eq!((stop.why, stop.rests_on.iter().collect::<Vec<_>>()), (Stays::Fixed, vec![job.engine.pattern.id()]));
}

#[test]
fn a_stop_that_nothing_here_changes_is_known_to_stay_however_short_the_search() {
    let mut job = wrong_yoke();
    job.engine.pattern.set(EnginePattern::Other);
    let clear = plans_at(&job, 1);
    let why = |code: &str| clear.impossible.iter().find(|stop| stop.rule.code == code).map(|stop| stop.why);
    assert_eq!((why("CSE-01"), why("OUT-01")), (Some(Stays::Fixed), Some(Stays::NotAllTried)));
    assert!(!clear.proven && plans_for(&job).proven);
}

#[test]
fn a_change_for_good_has_no_gentler_plan_where_there_is_no_other_way() {
    let mut job = Job::plain();
    job.bell.kind.set(BellKind::BoltOn);
    job.bell.ring_holes.set(7);
    job.case.pump_bosses.set(7);
    let clear = plans_for(&job);
    let first = &clear.plans[0];
    assert!(first.codes().contains(&"boss-drill") && first.for_good() == 1, "{:?}", first.codes());
    assert!(first.codes().contains(&"paper-permanent-ack"), "nothing is drilled before it is signed");
    assert_eq!(codes(&first.until), ["SEQ-11"], "the plan itself signs nothing");
    assert!(first.to_do.contains(&job.paper.permanent_ack.id()));
    assert!(first.edits.iter().all(|(fact, _)| *fact != job.paper.permanent_ack.id()));
    assert!(clear.plans.iter().all(|plan| plan.offer != Offer::NothingForGood), "a bolt-on bell cannot do without");
}

#[test]
fn a_plan_rests_on_no_blank() {
    let mut job = Job::plain();
    job.one_way.race_shape.forget();
    job.one_way.elements.set(36);
    job.usage.kind.set(UseKind::Drag);
    let clear = plans_for(&job);
    assert!(clear.plans.iter().all(|plan| !plan.codes().contains(&"one-way-34")), "nobody knows the race is round");
}

#[test]
fn too_little_effort_is_owned_up_to() {
    let mut job = wrong_yoke();
    job.threads.linkage_nut.set(crate::job::ThreadSystem::Metric);
    let clear = plans_at(&job, 3);
    assert!(clear.plans.iter().all(|plan| !plan.proven));
}

#[test]
fn a_rule_set_aside_is_worth_no_money() {
    let (limits, prices) = (Limits::default(), Prices::default());
    let terms = Terms { limits: &limits, house: &[], prices: &prices, aside: &["OUT-01"], effort: Terms::EFFORT };
    assert!(clearing(&wrong_yoke(), &terms).plans.is_empty());
}

#[test]
fn every_rule_that_fires_can_be_cleared_or_is_said_to_be_impossible() {
    let stop_or_caution = crate::rules::rules().filter(|rule| rule.severity != Severity::Note);
    let mut unhelped = Vec::new();
    for rule in stop_or_caution {
        let clear = plans_for(&rule.example());
        let left = clear.plans.iter().rfind(|plan| matches!(plan.offer, Offer::NoStop | Offer::NoCaution));
        let cleared = left.is_some_and(|plan| plan.left.iter().all(|left| left.code != rule.code));
        let owned = clear.impossible.iter().any(|stop| stop.rule.code == rule.code);
        assert!(cleared || owned || rule.severity == Severity::Caution, "{} is passed over", rule.code);
        if !cleared {
            unhelped.push(rule.code);
        }
    }
    // Engine work, how long the driver holds the brake, the year of the rulebook: not the shop's to change.
    unhelped.retain(|code| !["CNV-22", "CNV-25", "SFT-15"].contains(code));
    assert!(unhelped.is_empty(), "no lever for {unhelped:?}");
}

#[test]
fn a_rule_of_the_shops_own_counts_like_any_other() {
    let condition = crate::rules::house::read(r#"yoke.kind == "slip" && yoke.spline == 32"#).unwrap();
    let own = HouseRule {
        code: "HR-01".to_owned(),
        version: 1,
        severity: Severity::Stop,
        due: crate::rules::Due::Spec,
        customer_accepts: false,
        title: "No slip yoke".to_owned(),
        shop: String::new(),
        customer: None,
        fix: String::new(),
        condition,
    };
    let (limits, prices) = (Limits::default(), Prices::default());
    let house = [own];
    let terms = Terms { limits: &limits, house: &house, prices: &prices, aside: &[], effort: Terms::EFFORT };
    let mut job = wrong_yoke();
    let helpless = clearing(&job, &terms);
    assert!(helpless.plans.is_empty(), "{:?}", helpless.plans);
    let stop = &helpless.impossible[0];
    assert_eq!((stop.rule.code.as_str(), stop.why), ("OUT-01", Stays::BringsAnother), "the shop's own");
    let hasty = clearing(&job, &Terms { effort: 2, ..terms });
    assert_eq!(hasty.impossible[0].why, Stays::NotAllTried, "what was not tried is not ruled out");
    job.output.end.set(OutputEnd::TappedBoltOn);
    job.driveshaft.kind.set(ShaftKind::SlipJoint);
    assert_eq!(clearing(&job, &terms).plans[0].codes(), ["yoke-bolt-on"]);
}
