//! Links: what opens, what does not any more, and that looking changes nothing.

use crate::shop::{self, TestShop, answer, fact};
use endplay::service::{CustomerAnswer, Failure, Key, LinkState, MakeLink, MoveStage, Pass, RevokeLink, Who};
use endplay::ticket::{Answer, Happening, Purpose, Stage, TickStanding};
use jiff::SignedDuration;
use serde_json::json;

async fn state(shop: &TestShop, pass: &str) -> LinkState {
    shop.service.open_link(pass).await.expect("a page, whatever it says").state
}

/// An answer through a link that no longer takes one.
async fn refused(shop: &TestShop, pass: &str) {
    let sent = shop.service.answer_link(pass, Key::fresh(), answer("whatever was shown")).await;
    assert!(matches!(sent, Err(Failure::LinkClosed)), "{sent:?}");
}

#[tokio::test]
async fn a_link_is_known_by_its_hash_only_and_a_guess_finds_nothing() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let pass = shop.link(ticket, Purpose::Intake).await;
    let dump: String = sqlx::query_scalar(
        "SELECT (SELECT string_agg(l::text, ' ') FROM customer_link l) || (SELECT string_agg(i::text, ' ') FROM idempotency i)
             || (SELECT string_agg(e::text, ' ') FROM event e)",
    )
    .fetch_one(&shop.database.owner_pool)
    .await
    .expect("the rows");
    assert!(!dump.contains(pass.split_once('.').expect("shop and token").1));
    let other = Pass::read(&pass).map(|pass| pass.to_string()).expect("a pass").replace(&pass[34..44], "AAAAAAAAAA");
    for guess in [other.as_str(), "", "a.b", &pass[..60]] {
        assert!(matches!(shop.service.open_link(guess).await, Err(Failure::NotFound("such page"))), "{guess}");
        let sent = shop.service.answer_link(guess, Key::fresh(), answer("")).await;
        assert!(matches!(sent, Err(Failure::NotFound("such page"))), "{sent:?}");
    }
}

#[tokio::test]
async fn looking_a_thousand_times_changes_nothing() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let pass = shop.link(ticket, Purpose::Intake).await;
    let rows = "SELECT md5(string_agg(all_rows, '' ORDER BY all_rows)) FROM (
                    SELECT t::text AS all_rows FROM ticket t UNION ALL SELECT l::text FROM customer_link l
                    UNION ALL SELECT e::text FROM event e UNION ALL SELECT s::text FROM signature s) AS everything";
    let before: String = sqlx::query_scalar(rows).fetch_one(&shop.database.owner_pool).await.expect("a digest");
    for _ in 0..1000 {
        shop.service.open_link(&pass).await.expect("a page");
    }
    let after: String = sqlx::query_scalar(rows).fetch_one(&shop.database.owner_pool).await.expect("a digest");
    assert_eq!(before, after);
    assert_eq!(state(&shop, &pass).await, LinkState::Open);
}

#[tokio::test]
async fn the_leave_to_take_apart_is_given_on_what_stands_now() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let pass = shop.link(ticket, Purpose::Intake).await;
    let read = async || shop.service.open_link(&pass).await.expect("a page").shown.expect("open");
    let before = read().await;
    assert_eq!(before.revision, 1);
    shop.change(ticket, fact("use.raced", json!(true))).await;
    let now = read().await;
    assert_eq!(now.revision, 2);
    assert!(now.paper.opening.iter().any(|line| line.starts_with("This is version 2.")), "{:?}", now.paper.opening);
    // What was read before the change is not what would be signed.
    let sent = CustomerAnswer { accepted: vec!["TEARDOWN".into()], ..answer(&before.digest) };
    let refused = shop.service.answer_link(&pass, Key::fresh(), sent.clone()).await.expect_err("another page");
    assert!(refused.to_string().contains("changed while you were reading"), "{refused}");
    let sent = CustomerAnswer { shown: now.digest, ..sent };
    shop.service.answer_link(&pass, Key::fresh(), sent).await.expect("signed");
    let kept: i32 = sqlx::query_scalar("SELECT revision FROM signature")
        .fetch_one(&shop.database.owner_pool)
        .await
        .expect("the signature");
    assert_eq!(kept, 2);
}

#[tokio::test]
async fn a_link_taken_back_or_too_old_is_closed_and_its_neighbour_is_not() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let (one, other) = (shop.link(ticket, Purpose::Intake).await, shop.link(ticket, Purpose::Intake).await);
    let links = shop.service.links(&shop.desk, ticket).await.expect("the links");
    let revoke = RevokeLink { ticket, link: links[1].id };
    shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), revoke).await.expect("taken back");
    let states = [state(&shop, &one).await, state(&shop, &other).await];
    assert_eq!(states.iter().filter(|state| **state == LinkState::Revoked).count(), 1);
    assert_eq!(states.iter().filter(|state| **state == LinkState::Open).count(), 1);
    let (closed, open) = if states[0] == LinkState::Open { (other, one) } else { (one, other) };
    refused(&shop, &closed).await;
    shop.pass_time(SignedDuration::from_hours(24 * 30) - SignedDuration::from_secs(1));
    assert_eq!(state(&shop, &open).await, LinkState::Open, "thirty days less a second");
    shop.pass_time(SignedDuration::from_secs(1));
    assert_eq!(state(&shop, &open).await, LinkState::Expired);
    refused(&shop, &open).await;
}

#[tokio::test]
async fn a_link_takes_one_answer_and_then_shows_the_receipt() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let pass = shop.link(ticket, Purpose::Intake).await;
    let reference = shop.sign(&pass).await;
    let page = shop.service.open_link(&pass).await.expect("a page");
    assert_eq!(page.state, LinkState::Used { answer: Answer::Signed, reference: reference.clone() });
    assert!(page.shown.is_none());
    assert_eq!(page.receipt.expect("a receipt").reference, reference);
    refused(&shop, &pass).await;
}

#[tokio::test]
async fn the_same_answer_sent_twice_is_one_signature_even_from_another_address() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let pass = shop.link(ticket, Purpose::Intake).await;
    let shown = shop.service.open_link(&pass).await.expect("a page").shown.expect("open");
    let sent = CustomerAnswer { accepted: vec!["TEARDOWN".into()], ..answer(&shown.digest) };
    let key = Key::fresh();
    let first = shop.service.answer_link(&pass, key, sent.clone()).await.expect("signed");
    let moved = CustomerAnswer { address: "198.51.100.7".into(), ..sent };
    assert_eq!(shop.service.answer_link(&pass, key, moved).await.expect("the same answer"), first);
    let kept: i64 = sqlx::query_scalar("SELECT count(*) FROM signature")
        .fetch_one(&shop.database.owner_pool)
        .await
        .expect("a count");
    assert_eq!(kept, 1);
}

#[tokio::test]
async fn a_changed_build_closes_the_link_that_shows_the_old_one() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let old = shop.link(ticket, Purpose::Build).await;
    shop.change(ticket, fact("bench.front_end_play_in", json!(0.011))).await;
    assert_eq!(state(&shop, &old).await, LinkState::Open, "a reading at the bench is nothing the customer signs for");
    shop.change(ticket, fact("use.raced", json!(true))).await;
    assert_eq!(state(&shop, &old).await, LinkState::Superseded);
    refused(&shop, &old).await;
    let (one, other) = (shop.link(ticket, Purpose::Build).await, shop.link(ticket, Purpose::Build).await);
    shop.sign(&one).await;
    assert_eq!(state(&shop, &other).await, LinkState::Superseded, "signed through the other link");
}

#[tokio::test]
async fn a_changed_build_says_what_changed_and_which_ticks_are_void() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.change(ticket, fact("use.raced", json!(true))).await;
    shop.signed(ticket, Purpose::Build).await;
    shop.change(ticket, fact("use.raced", json!(false))).await;
    let pass = shop.link(ticket, Purpose::Build).await;
    let since = shop.service.open_link(&pass).await.expect("a page").shown.expect("open").since.expect("it changed");
    assert_eq!((since.revision, since.at), (2, shop.now()));
    assert_eq!(since.changes.iter().map(|change| change.field.as_str()).collect::<Vec<_>>(), ["use.raced"]);
    assert!(matches!(&since.ticks[..], [TickStanding::Gone(tick)] if tick.code == "TST-02"), "{:?}", since.ticks);
}

#[tokio::test]
async fn nobody_signs_a_page_they_were_not_shown() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.change(ticket, fact("use.raced", json!(true))).await;
    let pass = shop.link(ticket, Purpose::Build).await;
    let shown = shop.service.open_link(&pass).await.expect("a page").shown.expect("open");
    let good = CustomerAnswer { accepted: vec!["TST-02".into()], ..answer(&shown.digest) };
    let cases = [
        (CustomerAnswer { shown: "0".repeat(64), ..good.clone() }, "shown"),
        (CustomerAnswer { accepted: vec![], ..good.clone() }, "tick.TST-02"),
        (CustomerAnswer { name: "  ".into(), ..good.clone() }, "name"),
        (CustomerAnswer { answer: Answer::Declined, ..good.clone() }, "why"),
    ];
    for (sent, field) in cases {
        let refused = shop.service.answer_link(&pass, Key::fresh(), sent).await;
        assert!(matches!(&refused, Err(Failure::Problems(problems)) if problems[0].field == field), "{refused:?}");
    }
    shop.service.answer_link(&pass, Key::fresh(), good).await.expect("signed");
}

#[tokio::test]
async fn a_customer_may_decline_and_the_job_stops_there() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let pass = shop.link(ticket, Purpose::Intake).await;
    let shown = shop.service.open_link(&pass).await.expect("a page").shown.expect("open");
    let declined = CustomerAnswer {
        answer: Answer::Declined,
        why: "I want to wait until spring.".into(),
        ..answer(&shown.digest)
    };
    let told = shop.service.answer_link(&pass, Key::fresh(), declined).await.expect("taken");
    assert_eq!(told.answer, Answer::Declined);
    let page = shop.service.ticket(&shop.technician, ticket).await.expect("the ticket");
    assert_eq!(page.receipts[0].record.why.as_deref(), Some("I want to wait until spring."));
    assert!(matches!(&page.history[0].happened, Happening::Answered { why: Some(_), .. }));
    let on = |from, to| {
        let command = MoveStage { ticket, from, to, reason: String::new(), overrides: vec![] };
        shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), command)
    };
    on(Stage::Intake, Stage::Spec).await.expect("nothing is taken apart yet");
    let stopped = on(Stage::Spec, Stage::Teardown).await.expect_err("declined");
    assert!(matches!(&stopped, Failure::Gates(refusals) if refusals[0].message.contains("declined")), "{stopped:?}");
    // They change their mind on a new link.
    shop.signed(ticket, Purpose::Intake).await;
    on(Stage::Spec, Stage::Teardown).await.expect("authorised");
}

#[tokio::test]
async fn a_link_form_sent_twice_makes_one_link_and_shows_its_token_once() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let key = Key::fresh();
    let make = || shop.service.make_link(&shop.desk, key, MakeLink { ticket, purpose: Purpose::Intake, days: Some(3) });
    let (first, second) = (make().await.expect("made"), make().await.expect("the same"));
    assert!(first.pass.is_some() && second.pass.is_none());
    assert_eq!((first.id, first.expires_at), (second.id, second.expires_at));
    assert_eq!(shop.service.links(&shop.desk, ticket).await.expect("the links").len(), 1);
    for days in [0, 366] {
        let make = MakeLink { ticket, purpose: Purpose::Intake, days: Some(days) };
        let refused = shop.service.make_link(&shop.desk, Key::fresh(), make).await;
        assert!(matches!(refused, Err(Failure::Problems(_))), "{refused:?}");
    }
}
