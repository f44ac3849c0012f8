//! A plan that writes down what will be there: until it is done, it is work to be told, signed for and ticked.

use super::clearing::apply;
use super::client::Shop;
use super::jobs::{sign, take_in, write};
use super::steps::{bolt_on, codes, on_the_paper, page, says_why};
use axum::http::StatusCode;
use endplay::ticket::{Approval, Purpose, Role};
use serde_json::json;

#[tokio::test]
async fn a_planned_change_for_good_is_named_signed_for_and_only_then_done() {
    let shop = Shop::staffed().await;
    let ticket = bolt_on(&shop, 6).await;
    let bench = shop.client(Role::Technician).await;
    let before = page(&shop, ticket).await;
    let applied = apply(&bench, ticket, before.revision.number, "boss-tap", &[]).await;
    assert_eq!(applied.status, StatusCode::SEE_OTHER, "{}", applied.text);
    let planned = page(&shop, ticket).await;
    assert_eq!(planned.revision.number, before.revision.number + 1);
    let told = on_the_paper(&shop, ticket).await;
    assert!(told.contains("We drill and thread spare bolt places"), "{told}");
    assert_eq!(planned.standing.build, Approval::Signed, "the same change was signed for before it was planned");

    // Seen on the unit with every place threaded, nothing is left to be done, and nothing is announced.
    write(&shop, Role::Technician, ticket, &[("case.pump_tapped", json!(7))]).await;
    assert!(!on_the_paper(&shop, ticket).await.contains("We drill and thread spare bolt places"));
    assert_eq!(page(&shop, ticket).await.standing.build, Approval::Void);
}

#[tokio::test]
async fn nobody_cuts_metal_on_a_plan_that_no_customer_has_seen() {
    let shop = Shop::staffed().await;
    let ticket = bolt_on(&shop, 7).await;
    let bench = shop.client(Role::Technician).await;
    // One boss turns out to be solid, and a plan says to thread it.
    write(&shop, Role::Technician, ticket, &[("case.pump_tapped", json!(6))]).await;
    let base = page(&shop, ticket).await.revision.number;
    assert_eq!(apply(&bench, ticket, base, "boss-tap", &[]).await.status, StatusCode::SEE_OTHER);
    let planned = page(&shop, ticket).await;
    assert_eq!(planned.standing.build, Approval::Void);
    assert!(codes(&planned).contains(&"SEQ-11"), "{:?}", codes(&planned));
    let drill = format!("/tickets/{ticket}/steps/MC-03");
    let fields = [("do", "done"), ("knowing", "yes"), ("f.case.pump_tapped", "7")];
    says_why(&bench.post(&drill, &fields).await, "What the customer signed has changed since");
    sign(&shop, ticket, Purpose::Build).await;
    assert_eq!(bench.post(&drill, &fields).await.status, StatusCode::SEE_OTHER);
    let done = page(&shop, ticket).await;
    assert_eq!(done.standing.build, Approval::Signed, "doing what was signed voids nothing");
    assert!(on_the_paper(&shop, ticket).await.contains("We have drilled and threaded spare bolt places"));
}

#[tokio::test]
async fn a_plan_that_changes_what_was_asked_for_says_so_before_it_is_applied() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let facts = [("use.kind", json!("street")), ("valve_body.brake", json!("internal"))];
    write(&shop, Role::Desk, ticket, &facts).await;
    write(&shop, Role::Desk, ticket, &[("valve_body.kind", json!("auto"))]).await;
    let bench = shop.client(Role::Technician).await;
    let page = bench.get(&format!("/tickets/{ticket}/clearing")).await;
    let asked = page.texts(".plan-asked").join(" ");
    assert!(asked.contains("It changes what was asked for") && asked.contains("Trans brake"), "{asked}");
}
