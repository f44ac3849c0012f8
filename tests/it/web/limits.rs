//! The shop's limits: read by all, moved by the owner, and what that does to jobs.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, revision, sign, take_in, write};
use axum::http::StatusCode;
use endplay::rules::LimitId;
use endplay::ticket::{Approval, Purpose, Role};
use serde_json::json;

const RUNOUT: &str = "/limits/bell_runout";

async fn send(owner: &Client, turn: &str, number: &str, reason: &str) -> Page {
    owner.post(RUNOUT, &[("turn", turn), ("number", number), ("reason", reason)]).await
}

async fn now(shop: &Shop) -> f64 {
    let desk = caller(shop, Role::Desk).await;
    shop.service.limits(&desk, None).await.expect("the limits").book.limits.get(LimitId::bell_runout)
}

/// How the customer's signature stands, and the basis of the finding about the bell bore.
async fn stands(shop: &Shop, ticket: i64) -> (Approval, Option<String>) {
    let desk = caller(shop, Role::Desk).await;
    let page = shop.service.ticket(&desk, ticket).await.expect("the ticket");
    let found = page.revision.judgement.findings.into_iter().find(|found| found.code == "CSE-10");
    (page.standing.build, found.map(|found| found.basis))
}

#[tokio::test]
async fn the_owner_moves_a_limit_with_a_reason_and_everybody_reads_it() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let moved = owner.follow(send(&owner, "0", "8 thou", "Our indicator reads to a tenth").await).await;
    moved.assert_says("It is 0.008 in from now on.");
    assert_eq!(now(&shop).await, 0.008);

    let bench = shop.client(Role::Technician).await;
    let all = bench.get("/limits?q=bell+runout").await;
    all.assert_says("1 of ");
    all.assert_says("0.008 in set by this shop");
    all.assert_says("0.01 in memory, medium");
    all.assert_says("0.004 to 0.015 in");
    all.assert_says("CSE-10");
    let one = bench.get(RUNOUT).await;
    one.assert_says("Our indicator reads to a tenth Olive Owner,");
    assert_eq!(one.texts("main form").len(), 0, "the bench only reads");

    let back = [("turn", "1"), ("number", "unread"), ("reason", "A new indicator"), ("to", "supplied")];
    owner.follow(owner.post(RUNOUT, &back).await).await.assert_says("back to as supplied A new indicator");
    assert_eq!(now(&shop).await, 0.01);
    assert_eq!(owner.get(RUNOUT).await.texts(".limit-changes li").len(), 2, "both changes stay in the history");
}

#[tokio::test]
async fn what_cannot_be_is_refused_with_a_sentence_and_everything_typed_stays() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let refused = [
        ("0.01501", "because", "takes a number from 0.004 to 0.015 in; 0.01501 in was given."),
        ("0.00399", "because", "takes a number from 0.004 to 0.015 in; 0.00399 in was given."),
        ("much", "because", "cannot be read as a number"),
        ("", "because", "nothing was typed"),
        ("0.01", "because", "is 0.01 in already"),
        ("0.012", "  ", "Write down why the limit moves."),
        ("0.012", "\u{200b}", "The reason is empty."),
    ];
    for (number, reason, words) in refused {
        let page = send(&owner, "0", number, reason).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{number} {reason}");
        page.assert_says(words);
        assert_eq!((page.value("number").as_str(), page.value("reason").as_str()), (number, reason.trim()));
    }
    for number in ["much", "0.5"] {
        let both = send(&owner, "0", number, "").await;
        assert_eq!(both.attributes(".summary a", "href"), ["#number", "#reason"], "all that is wrong at once");
    }
    assert_eq!(now(&shop).await, 0.01, "nothing half done");
    for (turn, edge) in ["0.004", "0.015"].into_iter().enumerate() {
        assert_eq!(send(&owner, &turn.to_string(), edge, "at the edge").await.status, StatusCode::SEE_OTHER, "{edge}");
    }
    assert_eq!(owner.get("/limits/no_such_limit").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn nobody_moves_a_limit_over_a_change_they_have_not_seen() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    send(&owner, "0", "0.008", "first").await;
    let late = send(&owner, "0", "0.012", "from an old page").await;
    assert_eq!(late.status, StatusCode::UNPROCESSABLE_ENTITY);
    late.assert_says("Olive Owner moved this limit while you were writing: it is 0.008 in now.");
    assert_eq!((late.value("number"), late.value("turn")), ("0.012".into(), "1".into()), "sent again, it is taken");
    assert_eq!(now(&shop).await, 0.008);
}

#[tokio::test]
async fn a_job_keeps_the_limits_of_its_day_until_somebody_judges_it_again() {
    let shop = Shop::staffed().await;
    let (owner, bench) = (shop.client(Role::Owner).await, shop.client(Role::Technician).await);
    let ticket = take_in(&shop).await;
    write(&shop, Role::Technician, ticket, &[("bell.runout_in", json!(0.009))]).await;
    sign(&shop, ticket, Purpose::Build).await;
    let path = format!("/tickets/{ticket}");
    assert_eq!(bench.get(&path).await.texts(".book-since").len(), 0);

    send(&owner, "0", "0.008", "Our indicator reads to a tenth").await;
    assert_eq!(stands(&shop, ticket).await, (Approval::Signed, None), "a limit changes nothing by itself");
    let told = bench.get(&path).await;
    told.assert_says("bell bore runout: 0.01 in then, 0.008 in now");
    bench.follow(bench.post(&format!("{path}/judge"), &[]).await).await.assert_says("as version 3");
    let (approval, basis) = stands(&shop, ticket).await;
    assert_eq!(approval, Approval::Void, "the customer was not told of this");
    assert!(basis.expect("it is found now").contains("bell bore runout 0.008 in (set by this shop;"));
    let page = bench.get(&path).await;
    assert_eq!(page.texts(".book-since").len(), 0);
    let used: Vec<_> = page.texts("#CSE-10 > .finding-limit");
    assert_eq!(
        used,
        ["Limit used: bell bore runout 0.008 in (set by this shop; 0.01 in as supplied: memory, medium)."]
    );
    bench.get(&format!("{path}/history")).await.assert_says("Version 3: judged again");

    sign(&shop, ticket, Purpose::Build).await;
    send(&owner, "1", "0.015", "Too many dowels").await;
    let (approval, basis) = stands(&shop, ticket).await;
    assert_eq!(approval, Approval::Signed);
    assert!(basis.expect("the signed version keeps its finding").contains("0.008 in"));
    bench.post(&format!("{path}/judge"), &[]).await;
    bench.post(&format!("{path}/judge"), &[]).await;
    assert_eq!(revision(&shop, ticket).await, 4, "judging the same again makes no version");
    assert_eq!(stands(&shop, ticket).await, (Approval::Void, None));
}

#[tokio::test]
async fn a_signature_stands_when_the_new_limits_change_nothing_the_customer_is_told() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let ticket = take_in(&shop).await;
    write(&shop, Role::Technician, ticket, &[("bell.runout_in", json!(0.007))]).await;
    sign(&shop, ticket, Purpose::Build).await;
    send(&owner, "0", "0.008", "near, but not over").await;
    let path = format!("/tickets/{ticket}/judge");
    shop.client(Role::Desk).await.post(&path, &[]).await;
    assert_eq!(revision(&shop, ticket).await, 3, "a version that says by which limits it was judged");
    assert_eq!(stands(&shop, ticket).await, (Approval::Signed, None));
}
