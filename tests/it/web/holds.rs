//! What keeps a step from counting as done: a missing signature, words that are no reading, a reading that did not pass.

use super::client::Shop;
use super::jobs::{caller, move_along, revision, sign, take_in};
use super::steps::{fact, known_job, page, says_why};
use axum::http::StatusCode;
use endplay::plan::steps::{Phase, steps};
use endplay::service::{ChangeTicket, Key, Who};
use endplay::ticket::{Act, Edit, FactChange, Purpose, Role, Source, Stage, done};
use serde_json::json;

#[tokio::test]
async fn nothing_of_the_teardown_is_ticked_before_the_customer_allows_it() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let list = format!("/tickets/{ticket}/steps");
    let teardown = steps().filter(|step| step.phase == Phase::Teardown && step.when.is_none());
    let waits: Vec<&str> = ["IN-08"].into_iter().chain(teardown.map(|step| step.code)).collect();
    let fields = [("do", "done"), ("initials", "TT"), ("knowing", "yes")];
    for code in &waits {
        let refused = bench.post(&format!("{list}/{code}"), &fields).await;
        says_why(&refused, "has not signed the teardown authorisation");
        refused.assert_says("To the customer's signature");
    }
    assert!(page(&shop, ticket).await.log.is_empty());
    let shown = bench.get(&list).await;
    shown.assert_says("The customer allows it in writing before the unit comes apart.");
    assert!(shown.attributes("#s-TD-01 button", "value").is_empty(), "no button that would be refused");

    sign(&shop, ticket, Purpose::Intake).await;
    for code in &waits {
        assert_eq!(bench.post(&format!("{list}/{code}"), &fields).await.status, StatusCode::SEE_OTHER, "{code}");
    }
    assert_eq!(page(&shop, ticket).await.log.len(), waits.len());
}

#[tokio::test]
async fn a_signature_is_seen_only_while_it_stands() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[("bell.cut_planned", json!(true))]).await;
    let bench = shop.client(Role::Technician).await;
    let see = format!("/tickets/{ticket}/steps/MC-01");
    let fields = [("do", "done"), ("initials", "TT"), ("knowing", "yes")];
    says_why(&bench.post(&see, &fields).await, "The customer has not signed the current version.");
    bench.get(&see).await.assert_says("To the customer's signature");
    sign(&shop, ticket, Purpose::Build).await;
    super::jobs::write(&shop, Role::Desk, ticket, &[("use.road_driven", json!(false))]).await;
    says_why(&bench.post(&see, &fields).await, "that signature no longer holds");
    assert!(page(&shop, ticket).await.log.is_empty());
    sign(&shop, ticket, Purpose::Build).await;
    assert_eq!(bench.post(&see, &fields).await.status, StatusCode::SEE_OTHER);
    assert!(done(&page(&shop, ticket).await.log, "MC-01").is_some());
}

#[tokio::test]
async fn that_nobody_has_tried_it_is_no_reading_at_a_hold_point() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let words = [
        ("SA-02", "f.one_way.free", "unchecked", "Not tried yet"),
        ("AS-06", "f.bench.air_checks", "not_done", "Not done yet"),
        ("SA-01", "f.pump.drive_gear", "unchecked", "Not looked at yet"),
    ];
    for (code, field, word, said) in words {
        let step = format!("/tickets/{ticket}/steps/{code}");
        let sent = bench.post(&step, &[("do", "done"), ("initials", "TT"), ("knowing", "yes"), (field, word)]).await;
        says_why(&sent, &format!("\u{201c}{said}\u{201d} is no reading"));
        let stays = format!("[name='{field}'][value={word}][checked], [name='{field}'] [value={word}][selected]");
        assert_eq!(sent.attributes(&stays, "value"), [word], "what was typed stays");
    }
    assert!(page(&shop, ticket).await.log.is_empty());
}

#[tokio::test]
async fn a_hold_point_that_did_not_pass_keeps_its_reading_and_is_not_done() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let step = format!("/tickets/{ticket}/steps/SA-02");
    let read = async |word: &str, more: &[(&str, &str)]| {
        let fields = [&[("do", "done"), ("initials", "TT"), ("knowing", "yes"), ("f.one_way.free", word)], more];
        bench.post(&step, &fields.concat()).await
    };
    for _ in 0..2 {
        let sent = read("both", &[]).await;
        assert_eq!(sent.location().as_deref(), Some(format!("{step}#not-passed").as_str()));
        let kept = page(&shop, ticket).await;
        assert!(kept.log.is_empty(), "the same wrong reading once more is no pass either");
        assert_eq!(fact(&kept, "one_way.free"), Some((json!("both"), Source::Looked)));
        assert!(kept.revision.judgement.findings.iter().any(|found| found.code == "OWC-03"), "the rules see it");
    }
    let shown = bench.get(&step).await;
    shown.assert_says("It did not pass, so it is not done");
    shown.assert_says("One-way clutch of the direct drum is in backwards.");
    shown.assert_says("Turn the cage over and repeat the test.");
    bench.get(&format!("/tickets/{ticket}/steps")).await.assert_says("Did not pass.");

    assert_eq!(read("clockwise", &[]).await.status, StatusCode::SEE_OTHER);
    assert!(done(&page(&shop, ticket).await.log, "SA-02").is_some());
    assert!(bench.get(&step).await.texts("#not-passed").is_empty());
    // Tried again later it fails: what stood as done stands so no more.
    read("neither", &[("over", "1")]).await;
    let failed = page(&shop, ticket).await;
    assert!(done(&failed.log, "SA-02").is_none());
    assert_eq!((failed.log[1].act, failed.log[1].reason.as_str()), (Act::Undone, "Tried again, and it did not pass."));
}

#[tokio::test]
async fn what_cannot_be_read_gets_no_verdict_beside_it() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let step = format!("/tickets/{ticket}/steps/SA-07");
    for odd in ["abc", "-3"] {
        let sent = bench.post(&step, &[("do", "done"), ("f.bench.friction_soak_min", odd)]).await;
        says_why(&sent, odd);
        sent.assert_says("Not everything is read yet.");
        sent.assert_says("not read yet");
        assert!(!sent.text.contains("Nothing in the rule book speaks against"), "{odd}");
    }
}

#[tokio::test]
async fn before_it_is_tried_or_goes_out_the_job_says_what_is_only_planned() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let plan = async |source: Source| {
        let path = "cooling.inline_filter".to_owned();
        let edit = Edit { facts: vec![FactChange { path, value: Some(json!(true)), source }], ..Edit::default() };
        let change = ChangeTicket { ticket, made_from: revision(&shop, ticket).await, edit };
        let who = Who::Staff(caller(&shop, Role::Technician).await);
        shop.service.write(who, Key::fresh(), change).await.expect("written down");
    };
    plan(Source::Planned).await;
    let job = format!("/tickets/{ticket}");
    assert!(bench.get(&job).await.texts("#planned").is_empty(), "at the counter a plan is no news");
    sign(&shop, ticket, Purpose::Intake).await;
    sign(&shop, ticket, Purpose::Build).await;
    let road = [Stage::Intake, Stage::Spec, Stage::Teardown, Stage::Quote, Stage::Parts, Stage::Assembly];
    move_along(&shop, ticket, &road).await;
    let shown = bench.get(&job).await;
    assert_eq!(shown.texts("#planned strong"), ["One fact of this job is only planned."]);
    let sheet = endplay::job::fact_named("cooling.inline_filter").expect("a fact").declaration().sheet.code();
    assert_eq!(shown.attributes("#planned a", "href"), [format!("{job}/facts/{sheet}")]);
    plan(Source::Looked).await;
    assert!(bench.get(&job).await.texts("#planned").is_empty());
}
