//! What voids a signature and what does not.

use super::*;
use crate::job::fact_named;
use crate::quantity::Cents;
use crate::ticket::{Edit, FactChange, Found, Hand, Price, Severity, Silenced, Source, merge};
use jiff::Timestamp;
use std::collections::BTreeMap;

fn after(contents: &Contents, edit: Edit) -> Contents {
    merge(contents, contents, &edit, &Hand { by: "Ada".into(), at: Timestamp::UNIX_EPOCH }).expect("an allowed edit")
}

fn fact(path: &str, value: Value) -> Edit {
    Edit {
        facts: vec![FactChange { path: path.into(), value: Some(value), source: Source::Looked }],
        ..Edit::default()
    }
}

fn finding(code: &str, customer: &str, customer_accepts: bool) -> Found {
    Found {
        code: code.into(),
        severity: Severity::Caution,
        title: "Title".into(),
        shop: "Shop".into(),
        customer: customer.into(),
        fix: "Fix".into(),
        basis: "Basis".into(),
        customer_accepts,
        facts: Vec::new(),
    }
}

fn with(findings: Vec<Found>) -> Judgement {
    Judgement { findings, ..Judgement::default() }
}

#[test]
fn a_changed_spec_text_price_or_acceptance_voids() {
    let signed = after(&Contents::default(), fact("bell.kind", json!("bolt_on")));
    let judged = with(vec![finding("SPD-01", "Your dial reads 4 percent high.", true)]);
    let covered = covers(&signed, &judged).to_string();
    let void = |contents: &Contents, judgement: &Judgement| {
        Approval::of_build(Some((Answer::Signed, &covered)), &covers(contents, judgement).to_string())
    };
    assert_eq!(void(&signed, &judged), Approval::Signed);
    let price = Edit { price: Some(Price::single("rebuild", Cents(1))), ..Edit::default() };
    let wants = Edit { wants: Some("soft shifts".into()), ..Edit::default() };
    for edit in [fact("bell.kind", json!("integral")), fact("bell.ring_holes", json!(7)), price, wants] {
        assert_eq!(void(&after(&signed, edit.clone()), &judged), Approval::Void, "{edit:?}");
    }
    let reworded = with(vec![finding("SPD-01", "Your dial reads 6 percent high.", true)]);
    assert_eq!(void(&signed, &reworded), Approval::Void);
    assert_eq!(void(&signed, &with(vec![])), Approval::Void);
}

/// What was planned, what the customer chose of it and what was then seen done is one and the same build.
#[test]
fn a_choice_is_covered_alike_when_it_is_planned_chosen_and_done() {
    let by = |source| {
        let fact = |path: &str, value: Value| FactChange { path: path.into(), value: Some(value), source };
        let facts = vec![fact("valve_body.kind", json!("manual")), fact("yoke.kind", json!("slip"))];
        covers(&after(&Contents::default(), Edit { facts, ..Edit::default() }), &with(vec![]))
    };
    let planned = by(Source::Planned);
    assert_ne!(planned, covers(&Contents::default(), &with(vec![])), "adopting it has to be signed");
    for source in [Source::CustomerSaid, Source::Looked] {
        assert_eq!(by(source), planned, "{source:?}");
    }
}

#[test]
fn a_measurement_that_changes_no_finding_leaves_the_signature_standing() {
    let signed = after(&Contents::default(), fact("bell.kind", json!("bolt_on")));
    let judged = with(vec![finding("SPD-01", "Your dial reads 4 percent high.", true)]);
    let measured = after(&signed, fact("bell.runout_in", json!(0.003)));
    assert_eq!(fact_named("bell.runout_in").map(|fact| fact.declaration().sheet), Some(Sheet::Measured));
    assert_eq!(covers(&signed, &judged), covers(&measured, &judged));
    let mut noted = judged.clone();
    noted.findings.push(finding("OUT-12", "", false));
    assert_eq!(covers(&signed, &judged), covers(&measured, &noted), "the customer is not told of it");
    noted.findings.push(finding("COL-09", "Larger cooler lines are better.", false));
    assert_ne!(covers(&signed, &judged), covers(&measured, &noted), "the customer has not read this yet");
}

#[test]
fn doing_what_was_agreed_leaves_the_signature_standing() {
    let signed = after(&Contents::default(), fact("valve_body.passage_ball", json!("required")));
    let stop =
        |accepts| Found { severity: Severity::Stop, ..finding("CSE-05", "A hole is not finished yet.", accepts) };
    let covered = covers(&signed, &with(vec![stop(false)]));
    let mut driven = after(&signed, fact("case.passage_ball", json!(true)));
    assert_ne!(covered, covers(&driven, &with(vec![])), "it is there, and nobody here has driven it");
    driven.done_here = BTreeMap::from([("MC-08".to_owned(), true)]);
    assert_eq!(covered, covers(&driven, &with(vec![])), "the ball is in, and what was to be put right is");
    assert_ne!(covers(&signed, &with(vec![stop(true)])), covered, "what wants a tick is covered");
    let other = after(&signed, fact("valve_body.passage_ball", json!("either")));
    assert_ne!(covered, covers(&other, &with(vec![])));
}

#[test]
fn a_change_for_good_that_was_not_on_the_paper_voids_and_doing_the_one_that_was_does_not() {
    let mut whole = after(&Contents::default(), fact("bell.cut_planned", json!(true)));
    whole = after(&after(&whole, fact("case.pump_bosses", json!(7))), fact("case.pump_tapped", json!(7)));
    let judged = with(vec![]);
    let spare = after(&whole, fact("case.pump_tapped", json!(6)));
    assert_ne!(covers(&whole, &judged), covers(&spare, &judged), "now a hole is drilled that nobody signed for");
    let mut drilled = whole.clone();
    drilled.done_here = BTreeMap::from([("MC-03".to_owned(), true)]);
    assert_eq!(covers(&spare, &judged), covers(&drilled, &judged), "it was signed for, and is drilled");
    let mut sawn = spare.clone();
    sawn.done_here = BTreeMap::from([("MC-02".to_owned(), true)]);
    assert_eq!(covers(&spare, &judged), covers(&sawn, &judged));
    for fact in [fact("case.threads_repaired", json!(1)), fact("yoke.clear_in", json!(0.003))] {
        assert_eq!(covers(&spare, &judged), covers(&after(&spare, fact), &judged), "bench work");
    }
}

#[test]
fn what_the_papers_say_about_the_signature_is_no_part_of_what_was_signed() {
    let contents = Contents::default();
    let mut unsigned = finding("COM-03", "Your build changed since you signed.", true);
    unsigned.facts = vec!["paper.signed_version".into(), "paper.spec_version".into()];
    assert_eq!(covers(&contents, &with(vec![unsigned])), covers(&contents, &with(vec![])));
}

#[test]
fn work_added_by_hand_voids() {
    let added = Contents { added: vec!["MC-04".into()], ..Contents::default() };
    assert_ne!(covers(&added, &with(vec![])), covers(&Contents::default(), &with(vec![])));
}

#[test]
fn who_wrote_it_and_when_is_not_what_was_signed_but_unknown_is_not_a_value() {
    let first = after(&Contents::default(), fact("use.raced", json!(false)));
    let mut later = Contents::default();
    let origin = crate::ticket::Origin { source: Source::CustomerSaid, by: "Ben".into(), at: Timestamp::MAX };
    let raced = fact_named("use.raced").expect("a fact of the job file");
    later.facts.write(raced, Some(&json!(false)), origin).expect("allowed");
    assert_eq!(covers(&first, &with(vec![])), covers(&later, &with(vec![])));
    assert_ne!(covers(&first, &with(vec![])), covers(&Contents::default(), &with(vec![])));
}

#[test]
fn a_refusal_stands_until_the_offer_changes() {
    assert_eq!(Approval::of_build(Some((Answer::Declined, "a")), "a"), Approval::Declined);
    assert_eq!(Approval::of_build(Some((Answer::Declined, "a")), "b"), Approval::Missing);
    assert_eq!(Approval::of_build(None, "b"), Approval::Missing);
}

#[test]
fn one_tick_each_none_missing_none_made_up() {
    let tick = |code: &str| Tick { code: code.into(), severity: None, text: format!("About {code}.") };
    let asked = [tick("A-1"), tick("B-2")];
    let given = |codes: &[&str]| codes.iter().map(|code| (*code).to_owned()).collect::<Vec<_>>();
    assert_eq!(check_ticks(&asked, &given(&["B-2", "A-1"])), Ok(()));
    assert_eq!(check_ticks(&[], &[]), Ok(()));
    let problems = check_ticks(&asked, &given(&["B-2", "C-3"])).expect_err("one missing, one strange");
    let fields: Vec<_> = problems.iter().map(|problem| problem.field.as_str()).collect();
    assert_eq!(fields, ["tick.A-1", "tick.C-3"]);
}

#[test]
fn it_is_said_which_ticks_are_void() {
    let tick = |code: &str, text: &str| Tick { code: code.into(), severity: None, text: text.into() };
    let earlier = [tick("A-1", "one"), tick("B-2", "two"), tick("C-3", "three")];
    let present = [tick("A-1", "one"), tick("C-3", "four"), tick("D-4", "five")];
    assert_eq!(
        tick_standing(&earlier, &present),
        [
            TickStanding::Same(tick("A-1", "one")),
            TickStanding::Changed { was: tick("C-3", "three"), now: tick("C-3", "four") },
            TickStanding::New(tick("D-4", "five")),
            TickStanding::Gone(tick("B-2", "two")),
        ]
    );
}

#[test]
fn what_the_shop_sets_aside_is_covered_with_its_reason_where_the_customer_is_told() {
    let contents = Contents::default();
    let aside = |finding: Found, reason: &str| {
        let silenced = Silenced { found: finding, reason: reason.into(), by: "Ada".into(), at: Timestamp::UNIX_EPOCH };
        covers(&contents, &Judgement { silenced: vec![silenced], ..Judgement::default() })
    };
    let told = || finding("SPD-01", "Your dial reads 4 percent high.", true);
    let nothing = covers(&contents, &with(vec![]));
    let set_aside = aside(told(), "You asked for it.");
    assert_ne!(set_aside, nothing, "the paper names it");
    assert_ne!(set_aside, covers(&contents, &with(vec![told()])), "it is no tick any more");
    assert_ne!(set_aside, aside(told(), "You ask for it."), "the reason is read by the customer");
    assert_eq!(aside(finding("OUT-12", "", false), "bench business"), nothing, "the customer is not told of it");
}
