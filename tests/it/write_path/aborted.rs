//! Browsers that hang up at any moment: nothing acknowledged is lost, nothing is done twice.

use crate::shop;
use endplay::service::{Failure, Key, Who, WriteNote};
use sqlx::Row;
use std::collections::HashMap;
use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};
use std::time::Duration;
use tokio::task::JoinSet;
use uuid::Uuid;

const REQUESTS: u64 = 5_000;
const AT_ONCE: usize = 24;

/// A pseudo-random sequence, so that a failing run can be had again.
fn random(seed: u64) -> u64 {
    let mut x = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x2545_f491_4f6c_dd1d;
    x ^= x >> 30;
    x = x.wrapping_mul(0xbf58_476d_1ce4_e5b9);
    x ^ (x >> 27)
}

/// Sends one note and hangs up after a random while; says whether it was acknowledged before that.
async fn send(shop: &shop::TestShop, ticket: i64, number: u64) -> (Uuid, bool) {
    let key = Key::fresh();
    let who = Who::Staff(shop.technician.clone());
    let write = shop.service.write(who, key, WriteNote { ticket, text: format!("note {number}") });
    let patience = random(number);
    let answer = match patience % 10 {
        // At the very first step: the task has been started and nobody waits for it.
        0 => {
            let mut write = pin!(write);
            match write.as_mut().poll(&mut Context::from_waker(Waker::noop())) {
                Poll::Ready(answer) => Some(answer),
                Poll::Pending => None,
            }
        }
        1..=8 => tokio::time::timeout(Duration::from_micros((patience >> 8) % 12_000), write).await.ok(),
        _ => Some(write.await),
    };
    match answer {
        Some(Ok(())) => (key.0, true),
        Some(Err(failure)) => panic!("request {number} failed: {failure:?}"),
        None => (key.0, false),
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn five_thousand_requests_dropped_at_random_lose_and_double_nothing() {
    let shop = std::sync::Arc::new(shop::open().await);
    let mut tickets = Vec::new();
    for _ in 0..8 {
        tickets.push(shop.take_in().await);
    }
    let mut running = JoinSet::new();
    let mut acknowledged: HashMap<Uuid, bool> = HashMap::new();
    for number in 0..REQUESTS {
        if running.len() >= AT_ONCE {
            let (key, done) = running.join_next().await.expect("some run").expect("no request panics");
            acknowledged.insert(key, done);
        }
        let (shop, ticket) = (shop.clone(), tickets[(number % 8) as usize]);
        running.spawn(async move { send(&shop, ticket, number).await });
    }
    while let Some(one) = running.join_next().await {
        let (key, done) = one.expect("no request panics");
        acknowledged.insert(key, done);
    }
    assert_eq!(acknowledged.len() as u64, REQUESTS);
    let kept = acknowledged.values().filter(|done| **done).count();
    let dropped = acknowledged.len() - kept;
    assert!(kept > 500 && dropped > 500, "both must happen often: {kept} acknowledged, {dropped} dropped");

    nobody_is_inside_a_transaction(&shop).await;
    let written = notes(&shop).await;
    for (key, done) in &acknowledged {
        assert!(!done || written.contains_key(key), "an acknowledged write is lost: {key}");
    }
    assert!(written.values().all(|count| *count == 1), "a write was done twice");
    assert!(written.keys().all(|key| acknowledged.contains_key(key)), "a write nobody sent");

    // A dropped request went on by itself; sent again with its key, it still has one effect.
    let mut again = 0;
    for (number, (key, _)) in acknowledged.iter().filter(|(_, done)| !**done).take(200).enumerate() {
        let who = Who::Staff(shop.technician.clone());
        let command = WriteNote { ticket: tickets[0], text: format!("again {number}") };
        match shop.service.write(who, Key(*key), command).await {
            Err(Failure::OtherPayload) => again += 1,
            other => panic!("a dropped request was not carried out: {other:?}"),
        }
    }
    assert!(again > 0);
    every_ticket_counts_without_a_gap(&shop).await;
}

/// How often each note was written, by key; and that each is in the outbox and answered once.
async fn notes(shop: &shop::TestShop) -> HashMap<Uuid, i64> {
    let rows = sqlx::query(
        "SELECT e.id, count(*) AS times, bool_and(o.event_id IS NOT NULL AND i.key IS NOT NULL) AS whole
         FROM event e
         LEFT JOIN outbox o ON o.shop_id = e.shop_id AND o.event_id = e.id
         LEFT JOIN idempotency i ON i.shop_id = e.shop_id AND i.key = e.id
         WHERE e.shop_id = $1 AND e.happened->>'kind' = 'noted' GROUP BY e.id",
    )
    .bind(shop.desk.shop)
    .fetch_all(&shop.database.owner_pool)
    .await
    .expect("the events");
    assert!(rows.iter().all(|row| row.get::<bool, _>("whole")), "an event without its outbox row or its answer");
    rows.iter().map(|row| (row.get("id"), row.get("times"))).collect()
}

async fn nobody_is_inside_a_transaction(shop: &shop::TestShop) {
    let inside = "SELECT count(*) FROM pg_stat_activity
                  WHERE datname = current_database() AND pid <> pg_backend_pid() AND state LIKE 'idle in transaction%'";
    let busy = "SELECT count(*) FROM pg_stat_activity
                WHERE datname = current_database() AND pid <> pg_backend_pid() AND state <> 'idle'";
    let count = async |sql: &'static str| -> i64 {
        sqlx::query_scalar(sql).fetch_one(&shop.admin).await.expect("the server's own list")
    };
    let seen =
        "SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND usename = 'endplay_service'
                AND state IS NOT NULL";
    assert!(count(seen).await > 0, "the service's connections must be seen for this to mean anything");
    // The dropped requests' tasks go on to their end by themselves.
    for _ in 0..200 {
        if count(busy).await == 0 {
            break;
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
    for _ in 0..20 {
        assert_eq!(count(inside).await, 0, "a connection was left inside a transaction");
        tokio::time::sleep(Duration::from_millis(10)).await;
    }
}

async fn every_ticket_counts_without_a_gap(shop: &shop::TestShop) {
    let gaps: i64 = sqlx::query_scalar(
        "SELECT count(*) FROM (
             SELECT t.last_seq, count(*) AS events, max(e.seq) AS highest, min(e.seq) AS lowest
             FROM ticket t JOIN event e ON e.shop_id = t.shop_id AND e.ticket_id = t.id
             WHERE t.shop_id = $1 GROUP BY t.id, t.last_seq
         ) AS counted WHERE last_seq <> events OR highest <> events OR lowest <> 1",
    )
    .bind(shop.desk.shop)
    .fetch_one(&shop.database.owner_pool)
    .await
    .expect("a count");
    assert_eq!(gaps, 0, "a ticket's own sequence has a gap");
}
