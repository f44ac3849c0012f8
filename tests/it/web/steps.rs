//! The steps of a job: ticked with one tap, held at hold points, warned of out of turn, signed for before what lasts.

use super::client::{Page, Shop};
use super::jobs;
use axum::http::StatusCode;
use endplay::job::fact_ids;
use endplay::plan::steps::{filler, step_named};
use endplay::service::{Failure, Key, TickStep, TicketPage, Who};
use endplay::ticket::{Act, Approval, Purpose, Role, Source, done};
use jiff::SignedDuration;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use uuid::Uuid;

/// A job of which every harmless fact is known, but for these.
pub(super) async fn known_job(shop: &Shop, but: &[(&str, Value)]) -> i64 {
    let ticket = jobs::take_in(shop).await;
    let mut facts: Vec<(&str, Value)> = fact_ids()
        .filter(|fact| filler(*fact).is_none())
        .map(|fact| (fact.declaration().path, fact.declaration().plain.json()))
        .filter(|(_, value)| !value.is_null())
        .collect();
    facts.extend(but.iter().cloned());
    jobs::write(shop, Role::Owner, ticket, &facts).await;
    ticket
}

pub(super) async fn page(shop: &Shop, ticket: i64) -> TicketPage {
    let desk = jobs::caller(shop, Role::Desk).await;
    shop.service.ticket(&desk, ticket).await.expect("the ticket")
}

pub(super) fn codes(page: &TicketPage) -> Vec<&str> {
    page.revision.judgement.findings.iter().map(|found| found.code.as_str()).collect()
}

/// What stands in a fact, with how it was learnt.
pub(super) fn fact(page: &TicketPage, path: &str) -> Option<(Value, Source)> {
    let entry = page.revision.contents.facts.entry(endplay::job::fact_named(path).expect("a fact"))?;
    Some((entry.value, entry.origin.source))
}

/// Ticks a step as a technician does who knows what they do, with harmless readings.
async fn tick(shop: &Shop, ticket: i64, code: &str, act: Act) -> Result<bool, Failure> {
    let step = step_named(code).expect("a step");
    let text = |value: Value| match value {
        Value::Bool(yes) => if yes { "yes" } else { "no" }.to_owned(),
        Value::String(word) => word,
        other => other.to_string(),
    };
    let typed: BTreeMap<_, _> = step
        .facts_read()
        .map(|fact| fact.declaration())
        .map(|fact| (fact.path.to_owned(), text(fact.plain.json())))
        .collect();
    let command = TickStep {
        ticket,
        step: code.into(),
        act,
        over: done(&page(shop, ticket).await.log, code).map(|entry| entry.place),
        initials: "TT".into(),
        typed,
        reason: String::new(),
        knowing: true,
    };
    let who = Who::Staff(jobs::caller(shop, Role::Technician).await);
    shop.service.write(who, Key::fresh(), command).await.map(|ticked| ticked.fresh)
}

pub(super) async fn ticked(shop: &Shop, ticket: i64, steps: &[&str]) {
    for code in steps {
        assert!(
            tick(shop, ticket, code, Act::Done).await.unwrap_or_else(|failure| panic!("{code}: {failure}")),
            "{code}"
        );
    }
}

pub(super) fn says_why(page: &Page, words: &str) {
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", page.text);
    page.assert_says("Check what you entered");
    page.assert_says(words);
}

#[tokio::test]
async fn an_ordinary_step_takes_one_tap_and_a_second_tap_changes_nothing() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let list = format!("/tickets/{ticket}/steps");
    bench.get(&list).await.assert_says("0 of");
    let once = Uuid::now_v7();
    for once in [once, once, Uuid::now_v7()] {
        let sent = bench.post_once(&format!("{list}/IN-01"), once, &[("do", "done")]).await;
        assert_eq!(sent.location().as_deref(), Some(format!("{list}?did=IN-01#s-IN-01").as_str()));
    }
    let after = bench.get(&format!("{list}?did=IN-01")).await;
    after.assert_says("Done: Tag everything and take four photos, place 1 in the log.");
    after.assert_says("Terry Tech");
    let page = page(&shop, ticket).await;
    assert_eq!(page.log.len(), 1);
    assert_eq!(fact(&page, "order.vent_tap"), Some((json!(0), Source::Log)), "there is a log, and it is not in it");
    assert_eq!(fact(&page, "order.final_wash"), None, "still to come");
}

#[tokio::test]
async fn a_hold_point_wants_initials_and_its_reading_and_the_reading_becomes_a_fact() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    ticked(&shop, ticket, &["AS-03", "AS-04"]).await;
    let bench = shop.client(Role::Technician).await;
    let step = format!("/tickets/{ticket}/steps/AS-05");
    let shown = bench.get(&step).await;
    assert_eq!(shown.value("initials"), "TT", "the initials of whoever is signed in are offered");
    shown.assert_says("Hold point");
    let empty = bench.post(&step, &[("do", "done"), ("initials", ""), ("f.bench.front_end_play_in", "")]).await;
    says_why(&empty, "until somebody puts initials to it");
    let no_number = bench.post(&step, &[("do", "done"), ("initials", "TT"), ("f.bench.front_end_play_in", "")]).await;
    says_why(&no_number, "until this is written down");
    let odd = bench.post(&step, &[("do", "done"), ("initials", "TT"), ("f.bench.front_end_play_in", "a hair")]).await;
    says_why(&odd, "a hair");
    assert_eq!(odd.value("f.bench.front_end_play_in"), "a hair", "what was typed stays");
    assert_eq!(page(&shop, ticket).await.log.len(), 2);

    let fields = [("do", "done"), ("initials", "JB"), ("f.bench.front_end_play_in", "0.013")];
    assert_eq!(bench.post(&step, &fields).await.status, StatusCode::SEE_OTHER);
    let page = page(&shop, ticket).await;
    assert_eq!(fact(&page, "bench.front_end_play_in"), Some((json!(0.013), Source::Measured)));
    assert_eq!(fact(&page, "order.front_end_play"), Some((json!(3), Source::Log)));
    let list = bench.get(&format!("/tickets/{ticket}/steps")).await;
    list.assert_says("JB, Terry Tech");
    list.assert_says("0.013 in");
}

#[tokio::test]
async fn the_limit_and_the_verdict_stand_beside_a_reading_before_it_is_kept() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let step = format!("/tickets/{ticket}/steps/MC-10");
    for (path, do_) in [(format!("{step}/look"), "done"), (step.clone(), "look")] {
        let looked = bench.post(&path, &[("do", do_), ("f.yoke.clear_in", "0.0005")]).await;
        assert_eq!(looked.status, StatusCode::OK);
        looked.assert_says("0.0005 in");
        looked.assert_says("Limit: yoke clearance, least 0.0015 in");
        looked.assert_says("One finding about what is read here.");
        let well = bench.post(&path, &[("do", do_), ("f.yoke.clear_in", "0.003")]).await;
        well.assert_says("Nothing in the rule book speaks against it.");
    }
    assert!(page(&shop, ticket).await.log.is_empty(), "looking writes nothing");
}

#[tokio::test]
async fn what_cannot_be_undone_waits_for_the_signature_on_what_stands_now() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[("bell.cut_planned", json!(true))]).await;
    let bench = shop.client(Role::Technician).await;
    let saw = format!("/tickets/{ticket}/steps/MC-02");
    bench.get(&saw).await.assert_says("The customer signs first.");
    says_why(&bench.post(&saw, &[("do", "done")]).await, "cannot be undone, so the customer signs before");
    assert!(codes(&page(&shop, ticket).await).contains(&"SEQ-11"), "permanent work is planned and not agreed");

    jobs::sign(&shop, ticket, Purpose::Build).await;
    let signed = page(&shop, ticket).await;
    assert_eq!(signed.standing.build, Approval::Signed);
    assert!(!codes(&signed).contains(&"SEQ-11"), "the signature agrees to it at once: {:?}", codes(&signed));
    assert_eq!(fact(&signed, "paper.permanent_ack"), Some((json!(true), Source::Papers)));
    jobs::write(&shop, Role::Desk, ticket, &[("use.road_driven", json!(false))]).await;
    says_why(&bench.post(&saw, &[("do", "done")]).await, "has changed since, so that signature no longer holds");
    jobs::sign(&shop, ticket, Purpose::Build).await;
    assert_eq!(bench.post(&saw, &[("do", "done")]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(page(&shop, ticket).await.standing.build, Approval::Signed, "doing what was signed voids nothing");
}

/// A bolt-on bell on a case with seven places for pump bolts, this many of them threaded.
pub(super) async fn bolt_on(shop: &Shop, tapped: u32) -> i64 {
    let facts = [
        ("bell.kind", json!("bolt_on")),
        ("bell.cut_planned", json!(true)),
        ("case.pump_bosses", json!(7)),
        ("pump.holes", json!(7)),
        ("case.pump_tapped", json!(tapped)),
    ];
    let ticket = known_job(shop, &facts).await;
    jobs::sign(shop, ticket, Purpose::Build).await;
    ticket
}

pub(super) async fn on_the_paper(shop: &Shop, ticket: i64) -> String {
    let desk = jobs::caller(shop, Role::Desk).await;
    let paper = shop.service.paper(&desk, ticket, Purpose::Build).await.expect("the paper");
    serde_json::to_string(&paper).expect("JSON")
}

#[tokio::test]
async fn a_change_for_good_that_came_after_the_signature_voids_it_and_is_not_done() {
    let shop = Shop::staffed().await;
    let ticket = bolt_on(&shop, 7).await;
    let bench = shop.client(Role::Technician).await;
    let drill = format!("/tickets/{ticket}/steps/MC-03");
    let fields = [("do", "done"), ("knowing", "yes"), ("f.case.pump_tapped", "7")];
    says_why(&bench.post(&drill, &fields).await, "what the customer signed does not name it");
    jobs::write(&shop, Role::Technician, ticket, &[("case.pump_tapped", json!(6))]).await;
    assert_eq!(page(&shop, ticket).await.standing.build, Approval::Void);
    assert!(on_the_paper(&shop, ticket).await.contains("We drill and thread spare bolt places"));
    says_why(&bench.post(&drill, &fields).await, "What the customer signed has changed since");
    assert!(page(&shop, ticket).await.log.is_empty());
}

#[tokio::test]
async fn the_change_for_good_that_was_signed_is_done_and_the_paper_says_we_did_it() {
    let shop = Shop::staffed().await;
    let ticket = bolt_on(&shop, 6).await;
    let bench = shop.client(Role::Technician).await;
    let drill = format!("/tickets/{ticket}/steps/MC-03");
    let fields = [("do", "done"), ("knowing", "yes"), ("f.case.pump_tapped", "7")];
    assert_eq!(bench.post(&drill, &fields).await.status, StatusCode::SEE_OTHER);
    let after = page(&shop, ticket).await;
    assert_eq!(fact(&after, "case.pump_tapped"), Some((json!(7), Source::Looked)));
    assert_eq!(after.standing.build, Approval::Signed, "it was signed for");
    assert!(on_the_paper(&shop, ticket).await.contains("We have drilled and threaded spare bolt places"));
    // A slip taken back leaves the signature standing, too.
    assert!(tick(&shop, ticket, "MC-03", Act::Undone).await.expect("taken back"));
    assert_eq!(page(&shop, ticket).await.standing.build, Approval::Signed);
}

#[tokio::test]
async fn what_was_ticked_as_a_trial_does_not_become_permanent_work_by_being_added() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let hone = format!("/tickets/{ticket}/steps/MC-10");
    ticked(&shop, ticket, &["MC-10"]).await;
    says_why(&bench.post(&hone, &[("do", "add")]).await, "Take that tick back first");
    assert!(page(&shop, ticket).await.revision.contents.added.is_empty());
    assert!(tick(&shop, ticket, "MC-10", Act::Undone).await.expect("taken back"));
    assert_eq!(bench.post(&hone, &[("do", "add")]).await.status, StatusCode::SEE_OTHER);
    let added = page(&shop, ticket).await;
    assert_eq!(fact(&added, "order.bushing_hone"), None, "added, and still to come");
    says_why(&bench.post(&hone, &[("do", "done")]).await, "the customer signs before");
}

#[tokio::test]
async fn a_step_out_of_turn_is_warned_of_before_and_found_after() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let drum = format!("/tickets/{ticket}/steps/AS-03");
    bench
        .get(&format!("/tickets/{ticket}/steps"))
        .await
        .assert_says("First: Prove the intermediate one-way clutch (SA-02).");
    bench.get(&drum).await.assert_says("Do this first: Prove the intermediate one-way clutch");
    says_why(&bench.post(&drum, &[("do", "done")]).await, "Do this first: Prove the intermediate one-way clutch");
    assert!(page(&shop, ticket).await.log.is_empty());
    assert_eq!(bench.post(&drum, &[("do", "done"), ("knowing", "yes")]).await.status, StatusCode::SEE_OTHER);
    assert!(!codes(&page(&shop, ticket).await).contains(&"SEQ-06"), "not yet: the test may still be missing");

    let test = format!("/tickets/{ticket}/steps/SA-02");
    let fields = [("do", "done"), ("initials", "TT"), ("f.one_way.free", "clockwise")];
    says_why(&bench.post(&test, &fields).await, "It is too late for Prove the intermediate one-way clutch now.");
    let knowing = [fields.as_slice(), &[("knowing", "yes")]].concat();
    assert_eq!(bench.post(&test, &knowing).await.status, StatusCode::SEE_OTHER);
    assert!(codes(&page(&shop, ticket).await).contains(&"SEQ-06"));
    bench.get(&format!("/tickets/{ticket}/steps")).await.assert_says("Done out of order");
    // The drum comes out and goes in again: its later place puts the order right.
    ticked(&shop, ticket, &["AS-03"]).await;
    assert!(!codes(&page(&shop, ticket).await).contains(&"SEQ-06"));
}

#[tokio::test]
async fn a_slip_is_undone_by_one_tap_and_later_with_a_written_reason() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let wash = format!("/tickets/{ticket}/steps/WA-01");
    ticked(&shop, ticket, &["WA-01"]).await;
    let list = bench.get(&format!("/tickets/{ticket}/steps?did=WA-01")).await;
    assert_eq!(list.attributes(".saved input[name=over]", "value"), ["1"], "undo is offered");
    let undo = [("do", "undo"), ("over", "1")];
    assert_eq!(bench.post(&wash, &undo).await.status, StatusCode::SEE_OTHER);
    let undone = page(&shop, ticket).await;
    assert_eq!((undone.log.len(), fact(&undone, "order.final_wash")), (2, None), "a second line, none taken out");

    ticked(&shop, ticket, &["WA-01"]).await;
    shop.wait(SignedDuration::from_secs(31));
    let undo = [("do", "undo"), ("over", "3")];
    says_why(&bench.post(&wash, &undo).await, "Write down why this step counts as not done");
    let why = [undo.as_slice(), &[("reason", "One passage was still blocked")]].concat();
    assert_eq!(bench.post(&wash, &why).await.status, StatusCode::SEE_OTHER);
    let page = page(&shop, ticket).await;
    assert_eq!((page.log[3].act, page.log[3].reason.as_str()), (Act::Undone, "One passage was still blocked"));
    assert!(!tick(&shop, ticket, "WA-01", Act::Undone).await.expect("nothing to take back"));
}

#[tokio::test]
async fn a_step_of_which_nobody_knows_whether_it_is_needed_says_what_it_waits_for() {
    let shop = Shop::staffed().await;
    let ticket = jobs::take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let list = bench.get(&format!("/tickets/{ticket}/steps")).await;
    list.assert_says("Whether this job needs it waits for: Bell");
    let ways = list.attributes(".step-open a", "href");
    assert!(ways.contains(&format!("/tickets/{ticket}/facts/spec#f.bell.cut_planned")), "{ways:?}");
    let sent = bench.post(&format!("/tickets/{ticket}/steps/AS-08"), &[("do", "done")]).await;
    says_why(&sent, "It is not known yet whether this job needs the step.");
}

#[tokio::test]
async fn work_added_by_hand_goes_on_the_customers_page_and_is_signed_before_it_is_done() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    jobs::sign(&shop, ticket, Purpose::Build).await;
    let bench = shop.client(Role::Technician).await;
    let vent = format!("/tickets/{ticket}/steps/MC-04");
    says_why(&bench.post(&vent, &[("do", "done")]).await, "is no part of this job");
    assert_eq!(bench.post(&vent, &[("do", "add")]).await.status, StatusCode::SEE_OTHER);
    let added = page(&shop, ticket).await;
    assert_eq!(
        (added.standing.build, added.revision.contents.added.as_slice()),
        (Approval::Void, ["MC-04".to_owned()].as_slice())
    );
    let desk = jobs::caller(&shop, Role::Desk).await;
    let paper = shop.service.paper(&desk, ticket, Purpose::Build).await.expect("the paper");
    let text = serde_json::to_string(&paper).expect("JSON");
    assert!(text.contains("We cut a thread into the vent hole."), "{text}");
    says_why(&bench.post(&vent, &[("do", "done")]).await, "the customer signs before");
    jobs::sign(&shop, ticket, Purpose::Build).await;
    assert_eq!(bench.post(&vent, &[("do", "done")]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(fact(&page(&shop, ticket).await, "order.vent_tap"), Some((json!(1), Source::Log)));
    says_why(&bench.post(&vent, &[("do", "drop")]).await, "Take the step back first.");
}

#[tokio::test]
async fn what_the_program_fills_is_read_only_wherever_it_is_shown() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    ticked(&shop, ticket, &["WA-01"]).await;
    let desk = shop.client(Role::Desk).await;
    let sheet = format!("/tickets/{ticket}/facts/paper");
    let form = desk.get(&sheet).await;
    assert!(form.attributes("[name='f.order.final_wash'], [name='f.paper.spec_version']", "name").is_empty());
    form.assert_says("Filled by itself");
    let base = jobs::revision(&shop, ticket).await.to_string();
    for (field, words) in [("f.order.final_wash", "is not typed. Tick"), ("f.paper.signed_version", "is not typed.")] {
        let fields = [("base", base.as_str()), ("do", "save"), ("source", "looked"), (field, "9")];
        says_why(&desk.post(&sheet, &fields).await, words);
    }
    assert_eq!(fact(&page(&shop, ticket).await, "order.final_wash"), Some((json!(1), Source::Log)));
}

#[tokio::test]
async fn the_papers_are_right_on_the_job_and_on_the_board_the_moment_they_are_signed() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[("bell.cut_planned", json!(true))]).await;
    let owner = jobs::caller(&shop, Role::Owner).await;
    let stops = async || {
        let board = shop.service.board(&owner, None, None).await.expect("the board");
        (board[0].open_stops, page(&shop, ticket).await.revision.judgement.findings.len())
    };
    let (before, _) = stops().await;
    jobs::sign(&shop, ticket, Purpose::Build).await;
    let (after, _) = stops().await;
    assert_eq!(before - after, 1, "SEQ-11 is answered");
    let signed = page(&shop, ticket).await;
    let stored = shop.service.revision(&owner, ticket, signed.ticket.revision).await.expect("the revision");
    assert!(stored.judgement.findings.iter().any(|found| found.code == "SEQ-11"), "the judgement of the day stays");
    for (path, value) in [("paper.spec_version", 2), ("paper.signed_version", 2)] {
        assert_eq!(fact(&signed, path), Some((json!(value), Source::Papers)), "{path}");
    }
    jobs::write(&shop, Role::Desk, ticket, &[("use.road_driven", json!(false))]).await;
    let changed = page(&shop, ticket).await;
    assert_eq!(fact(&changed, "paper.spec_version"), Some((json!(3), Source::Papers)));
    assert!(codes(&changed).contains(&"COM-03"), "{:?}", codes(&changed));
}
