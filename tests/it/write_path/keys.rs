//! One key, one effect, whatever is sent how often.

use crate::shop;
use endplay::service::{Event, Failure, Key, Who, WriteNote};
use endplay::ticket::Happening;

fn note(ticket: i64, text: &str) -> WriteNote {
    WriteNote { ticket, text: text.into() }
}

async fn notes(shop: &shop::TestShop, ticket: i64) -> Vec<Event> {
    let page = shop.service.ticket(&shop.desk, ticket).await.expect("the ticket");
    page.history.into_iter().filter(|event| matches!(event.happened, Happening::Noted { .. })).collect()
}

#[tokio::test]
async fn the_same_form_sent_again_gets_the_same_answer_and_does_nothing_more() {
    let shop = shop::open().await;
    let key = Key::fresh();
    let send = || shop.service.write(Who::Staff(shop.desk.clone()), key, shop::take_in_form());
    let first = send().await.expect("taken in");
    for _ in 0..3 {
        assert_eq!(send().await.expect("the same answer"), first);
    }
    let found = shop.service.search(&shop.desk, "fielding").await.expect("a search");
    assert_eq!(found.len(), 1, "one ticket only");
}

#[tokio::test]
async fn the_key_is_the_events_own() {
    let shop = shop::open().await;
    let (ticket, key) = (shop.take_in().await, Key::fresh());
    shop.service.write(Who::Staff(shop.desk.clone()), key, note(ticket, "called back")).await.expect("noted");
    assert_eq!(notes(&shop, ticket).await[0].id, key.0);
}

#[tokio::test]
async fn the_same_key_with_something_else_is_refused() {
    let shop = shop::open().await;
    let (ticket, key) = (shop.take_in().await, Key::fresh());
    let who = || Who::Staff(shop.desk.clone());
    shop.service.write(who(), key, note(ticket, "called back")).await.expect("noted");
    let other = shop.service.write(who(), key, note(ticket, "did not call back")).await;
    assert!(matches!(other, Err(Failure::OtherPayload)), "{other:?}");
    let other_command = shop.service.write(who(), key, shop::take_in_form()).await;
    assert!(matches!(other_command, Err(Failure::OtherPayload)), "{other_command:?}");
    assert_eq!(notes(&shop, ticket).await.len(), 1);
}

#[tokio::test]
async fn a_refused_form_can_be_corrected_and_sent_with_its_key() {
    let shop = shop::open().await;
    let (ticket, key) = (shop.take_in().await, Key::fresh());
    let who = || Who::Staff(shop.desk.clone());
    let refused = shop.service.write(who(), key, note(ticket, "  ")).await;
    assert!(matches!(refused, Err(Failure::Problems(_))), "{refused:?}");
    shop.service.write(who(), key, note(ticket, "now with words")).await.expect("noted");
    assert_eq!(notes(&shop, ticket).await.len(), 1);
}

#[tokio::test]
async fn while_a_key_is_being_worked_on_it_is_refused() {
    let shop = shop::open().await;
    let (ticket, key) = (shop.take_in().await, Key::fresh());
    // Somebody holds the ticket's row, so the first sending cannot finish.
    let mut holder = shop.database.owner_pool.begin().await.expect("a transaction");
    sqlx::query("SELECT FROM ticket WHERE number = $1 FOR UPDATE")
        .bind(ticket)
        .execute(&mut *holder)
        .await
        .expect("held");
    let first = tokio::spawn({
        let (service, who) = (shop.service.clone(), Who::Staff(shop.desk.clone()));
        async move { service.write(who, key, note(ticket, "called back")).await }
    });
    shop.until("SELECT EXISTS (SELECT FROM pg_stat_activity WHERE wait_event_type = 'Lock' AND query LIKE '%FOR UPDATE%' AND datname = current_database())").await;
    let running = shop.service.write(Who::Staff(shop.desk.clone()), key, note(ticket, "called back")).await;
    assert!(matches!(running, Err(Failure::Running)), "{running:?}");
    holder.rollback().await.expect("let go");
    first.await.expect("it ran").expect("done once the row is free");
    shop.service.write(Who::Staff(shop.desk.clone()), key, note(ticket, "called back")).await.expect("done by now");
    assert_eq!(notes(&shop, ticket).await.len(), 1);
}

#[tokio::test]
async fn many_sendings_at_once_have_one_effect() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    for round in 0..40 {
        let key = Key::fresh();
        let sendings: Vec<_> = (0..5)
            .map(|_| {
                let (service, who) = (shop.service.clone(), Who::Staff(shop.desk.clone()));
                tokio::spawn(async move { service.write(who, key, note(ticket, "sent five times")).await })
            })
            .collect();
        let mut done = 0;
        for sending in sendings {
            match sending.await.expect("it ran") {
                Ok(()) => done += 1,
                Err(Failure::Running) => {}
                other => panic!("neither done nor running: {other:?}"),
            }
        }
        assert!(done >= 1, "round {round}: somebody must have been served");
    }
    assert_eq!(notes(&shop, ticket).await.len(), 40);
}

#[tokio::test]
async fn a_key_of_one_shop_means_nothing_in_another() {
    let shop = shop::open().await;
    let other = shop::open().await;
    let key = Key::fresh();
    let here = shop.service.write(Who::Staff(shop.desk.clone()), key, shop::take_in_form()).await.expect("taken in");
    let there = other.service.write(Who::Staff(other.desk.clone()), key, shop::take_in_form()).await;
    assert_eq!(there.expect("taken in"), here, "both are their shop's first ticket");
}
