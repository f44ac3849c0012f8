//! Setting a finding aside for one job, and bringing it back.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, move_along, revision, sign, stopped, take_in, write};
use axum::http::StatusCode;
use endplay::ticket::{Approval, Judgement, Purpose, Role, Severity, Stage};
use serde_json::json;

const WHY: &str = "The bolt was made for us with both threads.";

async fn judged(shop: &Shop, ticket: i64) -> (Judgement, Approval) {
    let desk = caller(shop, Role::Desk).await;
    let page = shop.service.ticket(&desk, ticket).await.expect("the ticket");
    (page.revision.judgement, page.standing.build)
}

fn codes(judgement: &Judgement) -> Vec<&str> {
    judgement.silenced.iter().map(|silenced| silenced.found.code.as_str()).collect()
}

async fn set_aside(client: &Client, ticket: i64, code: &str, reason: &str) -> Page {
    let path = format!("/tickets/{ticket}/aside/{code}");
    let base = client.get(&path).await.value("base");
    client.post(&path, &[("base", &base), ("reason", reason)]).await
}

#[tokio::test]
async fn a_stop_the_owner_sets_aside_counts_no_more_but_stays_in_sight_until_it_is_brought_back() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let ticket = stopped(&shop).await;
    let (before, _) = judged(&shop, ticket).await;
    let path = format!("/tickets/{ticket}");
    owner.get(&path).await.assert_says("Set aside for this job");

    let told = owner.follow(set_aside(&owner, ticket, "THR-02", WHY).await).await;
    told.assert_says("it is set aside for this job, as version 3.");
    let (after, _) = judged(&shop, ticket).await;
    assert_eq!(codes(&after), ["THR-02"]);
    assert_eq!(after.of(Severity::Stop).count(), before.of(Severity::Stop).count() - 1);
    let section = told.texts("section.aside").remove(0);
    assert!(section.contains("THR-02") && section.contains(WHY) && section.contains("Olive Owner"), "{section}");
    assert!(section.contains("The customer's paper says so."), "{section}");
    owner.get(&format!("{path}/history")).await.assert_says("Version 3: set aside for this job");
    let compare = owner.get(&format!("{path}/compare?from=2&to=3")).await.texts(".compare-findings li").join("\n");
    assert!(compare.contains("THR-02 set aside") && !compare.contains("THR-02 only"), "{compare}");

    let bench = shop.client(Role::Technician).await.get(&path).await;
    assert_eq!(bench.texts("section.aside form").len(), 0, "the bench reads it and leaves it");
    let back = owner.follow(owner.post(&format!("{path}/aside/THR-02/back"), &[]).await).await;
    back.assert_says("it counts again, as version 4.");
    assert_eq!(judged(&shop, ticket).await.0, before);
    owner.get(&format!("{path}/history")).await.assert_says("Version 4: brought back");
    owner.post(&format!("{path}/aside/THR-02/back"), &[]).await;
    assert_eq!(revision(&shop, ticket).await, 4, "what counts already is left as it is");
}

#[tokio::test]
async fn the_gate_opens_for_a_stop_that_is_set_aside_and_closes_when_it_is_back() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let ticket = stopped(&shop).await;
    sign(&shop, ticket, Purpose::Intake).await;
    let road = [Stage::Intake, Stage::Spec, Stage::Teardown, Stage::Quote, Stage::Parts];
    move_along(&shop, ticket, &road).await;
    set_aside(&owner, ticket, "THR-02", WHY).await;
    sign(&shop, ticket, Purpose::Build).await;
    let path = format!("/tickets/{ticket}/stage");
    let on = [("from", "parts"), ("to", "assembly")];
    owner.post(&format!("/tickets/{ticket}/aside/THR-02/back"), &[]).await;
    let closed = owner.post(&path, &on).await;
    assert_ne!(closed.status, StatusCode::SEE_OTHER);
    set_aside(&owner, ticket, "THR-02", WHY).await;
    assert_eq!(judged(&shop, ticket).await.1, Approval::Signed, "it is again what was signed, word for word");
    assert_eq!(owner.post(&path, &on).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn the_customer_reads_what_was_set_aside_and_why_and_signs_for_it() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let ticket = stopped(&shop).await;
    sign(&shop, ticket, Purpose::Build).await;
    set_aside(&owner, ticket, "THR-02", WHY).await;
    assert_eq!(judged(&shop, ticket).await.1, Approval::Void, "the paper says something else now");
    let desk = caller(&shop, Role::Desk).await;
    for purpose in [Purpose::Intake, Purpose::Build] {
        let shown = shop.service.counter_paper(&desk, ticket, purpose).await.expect("the paper");
        let block = shown.paper.blocks.iter().find(|block| block.heading == "What we have set aside");
        let lines = block.expect("it is told").lines.join("\n");
        assert!(lines.contains("set it aside for this job. Our reason: ") && lines.ends_with(WHY), "{lines}");
        let others = shown.paper.blocks.iter().filter(|other| other.heading != "What we have set aside");
        let told = judged(&shop, ticket).await.0.silenced.remove(0).found.customer;
        assert!(others.flat_map(|other| &other.lines).all(|line| !line.contains(&told)), "it is told once");
    }
    sign(&shop, ticket, Purpose::Build).await;
    assert_eq!(judged(&shop, ticket).await.1, Approval::Signed);
    owner.post(&format!("/tickets/{ticket}/aside/THR-02/back"), &[]).await;
    assert_eq!(judged(&shop, ticket).await.1, Approval::Void);
}

#[tokio::test]
async fn the_desk_sets_lesser_things_aside_and_a_stop_is_the_owners() {
    let shop = Shop::staffed().await;
    let (desk, bench) = (shop.client(Role::Desk).await, shop.client(Role::Technician).await);
    let ticket = stopped(&shop).await;
    write(&shop, Role::Technician, ticket, &[("bell.runout_in", json!(0.02))]).await;
    let page = desk.get(&format!("/tickets/{ticket}")).await;
    let offered = page.attributes(".finding-aside a", "href");
    assert!(offered.contains(&format!("/tickets/{ticket}/aside/CSE-10")), "{offered:?}");
    assert!(!offered.iter().any(|href| href.ends_with("THR-02")), "{offered:?}");
    assert!(bench.get(&format!("/tickets/{ticket}")).await.texts(".finding-aside").is_empty());

    let stop = format!("/tickets/{ticket}/aside/THR-02");
    assert_eq!(desk.get(&stop).await.status, StatusCode::FORBIDDEN);
    let refused = desk.post(&stop, &[("base", "3"), ("reason", WHY)]).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN);
    refused.assert_says("Ask: Owner.");
    let by_bench = bench.post(&format!("/tickets/{ticket}/aside/CSE-10"), &[("base", "3"), ("reason", WHY)]).await;
    assert_eq!(by_bench.status, StatusCode::FORBIDDEN);
    set_aside(&desk, ticket, "CSE-10", "Offset dowels are in the crate already.").await;
    assert_eq!(codes(&judged(&shop, ticket).await.0), ["CSE-10"]);
}

#[tokio::test]
async fn without_a_reason_or_from_an_old_page_nothing_is_set_aside_and_what_was_typed_stays() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let ticket = stopped(&shop).await;
    let path = format!("/tickets/{ticket}/aside/THR-02");
    for (base, reason, words) in [
        ("2", " ", "Write down why this does not count on this job."),
        ("2", "\u{200b}", "The reason is empty."),
        ("1", WHY, "The job changed while you were writing."),
    ] {
        let page = owner.post(&path, &[("base", base), ("reason", reason)]).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{words}");
        page.assert_says(words);
        assert_eq!((page.value("reason").as_str(), page.value("base").as_str()), (reason.trim(), "2"));
    }
    let other = owner.post(&format!("/tickets/{ticket}/aside/THR-01"), &[("base", "2"), ("reason", WHY)]).await;
    assert_eq!(other.status, StatusCode::UNPROCESSABLE_ENTITY);
    other.assert_says("This is not found any more");
    assert_eq!(owner.get(&format!("/tickets/{ticket}/aside/THR-01")).await.status, StatusCode::SEE_OTHER);
    assert_eq!(revision(&shop, ticket).await, 2, "nothing half done");
}

#[tokio::test]
async fn it_stays_set_aside_while_other_things_change_and_ends_with_the_finding() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let ticket = stopped(&shop).await;
    set_aside(&owner, ticket, "THR-02", WHY).await;
    write(&shop, Role::Technician, ticket, &[("bell.runout_in", json!(0.003))]).await;
    assert_eq!(codes(&judged(&shop, ticket).await.0), ["THR-02"]);
    write(&shop, Role::Technician, ticket, &[("threads.mount_hole", json!("inch"))]).await;
    assert!(judged(&shop, ticket).await.0.silenced.is_empty());
    write(&shop, Role::Technician, ticket, &[("threads.mount_hole", json!("metric"))]).await;
    let (again, _) = judged(&shop, ticket).await;
    assert!(again.silenced.is_empty() && again.findings.iter().any(|found| found.code == "THR-02"), "looked at anew");
}

#[tokio::test]
async fn it_counts_again_when_it_is_held_against_another_limit() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let ticket = stopped(&shop).await;
    write(&shop, Role::Technician, ticket, &[("bell.runout_in", json!(0.02))]).await;
    set_aside(&owner, ticket, "CSE-10", WHY).await;
    let limit = [("turn", "0"), ("number", "0.008"), ("reason", "Our indicator reads to a tenth")];
    owner.post("/limits/bell_runout", &limit).await;
    let late = set_aside(&owner, ticket, "THR-02", WHY).await;
    assert_eq!(late.status, StatusCode::SEE_OTHER, "the threads rest on no limit");
    let (after, _) = judged(&shop, ticket).await;
    assert_eq!(codes(&after), ["THR-02"]);
    let again = after.findings.iter().find(|found| found.code == "CSE-10").expect("somebody looks at it anew");
    assert!(again.basis.contains("0.008 in"), "{}", again.basis);
}

#[tokio::test]
async fn each_rule_is_counted_once_for_every_ticket_it_ever_fired_on_set_aside_or_not() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let bench = caller(&shop, Role::Technician).await;
    let count = async |code: &str| shop.service.fired(&bench).await.expect("the counts").get(code).copied();
    assert_eq!(count("THR-02").await, None);
    let first = stopped(&shop).await;
    take_in(&shop).await;
    assert_eq!(count("THR-02").await, Some(1));
    set_aside(&owner, first, "THR-02", WHY).await;
    write(&shop, Role::Technician, first, &[("threads.mount_hole", json!("inch"))]).await;
    assert_eq!(count("THR-02").await, Some(1), "it did fire, on one ticket");
    stopped(&shop).await;
    assert_eq!(count("THR-02").await, Some(2));
}
