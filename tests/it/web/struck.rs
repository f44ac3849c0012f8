//! Readings taken by mistake: struck with a reason, kept in sight, and counted no more.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, write};
use super::sheet::{add_instrument, bench, fact, made_from, read};
use axum::http::StatusCode;
use endplay::ticket::{Role, Source};
use serde_json::json;
use uuid::Uuid;

fn place(ticket: i64, name: &str, turn: i32) -> String {
    format!("/tickets/{ticket}/sheet/{name}/strike/{turn}")
}

async fn strike(shop: &Shop, bench: &Client, ticket: i64, name: &str, turn: i32) -> Page {
    let base = made_from(shop, ticket).await;
    let fields = [("base", base.as_str()), ("reason", "The dial was loose"), ("sure", "yes")];
    bench.follow(bench.post(&place(ticket, name, turn), &fields).await).await
}

async fn fires(shop: &Shop, ticket: i64, code: &str) -> bool {
    let desk = caller(shop, Role::Desk).await;
    let judged = shop.service.ticket(&desk, ticket).await.expect("the ticket").revision.judgement;
    judged.findings.iter().any(|found| found.code == code)
}

#[tokio::test]
async fn a_struck_reading_stays_in_sight_and_the_one_before_counts_again() {
    let (shop, bench, ticket) = bench().await;
    read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.012")]).await;
    read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.031")]).await;
    assert!(fires(&shop, ticket, "MEA-01").await);
    let asked = bench.get(&place(ticket, "front-end-play", 2)).await;
    asked.assert_says("Then 0.012 in counts, read by Terry Tech");
    asked.assert_says("Front end play on this job: 0.031 in becomes 0.012 in");
    let struck = strike(&shop, &bench, ticket, "front-end-play", 2).await;
    struck.assert_says("Struck out. It counts no more, and stays in the history below.");
    struck.assert_says("fine 0.012 in");
    struck.assert_says("Struck out by Terry Tech,");
    struck.assert_says(": The dial was loose");
    let through = struck.texts("del").join(" ");
    assert!(through.contains("0.031 in, out on that day") && !through.contains("0.012 in, fine"), "{through}");
    let learnt = fact(&shop, ticket, "bench.front_end_play_in").await;
    assert_eq!(learnt, Some((json!(0.012), Source::Measured)));
    assert!(!fires(&shop, ticket, "MEA-01").await, "the rules see the one that counts");
    let history = bench.get(&format!("/tickets/{ticket}/history")).await;
    history.assert_says("Reading struck out: Front end play 0.031 in");
    history.assert_says("The dial was loose");
    read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.013")]).await;
    let third = bench.get(&format!("/tickets/{ticket}/sheet/front-end-play")).await;
    assert_eq!(third.texts(".measure-history > li").len(), 3, "a struck turn is not given again");
}

#[tokio::test]
async fn without_any_reading_left_the_fact_is_unknown_again() {
    let (shop, bench, ticket) = bench().await;
    read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.031")]).await;
    let asked = bench.get(&place(ticket, "front-end-play", 1)).await;
    asked.assert_says("0.031 in becomes not known yet");
    asked.assert_says("Then no reading is left here");
    let page = strike(&shop, &bench, ticket, "front-end-play", 1).await;
    page.assert_says("not taken");
    page.assert_says("Nobody has taken it yet.");
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, None);
    assert!(!fires(&shop, ticket, "MEA-01").await);
    bench.get(&format!("/tickets/{ticket}/sheet")).await.assert_says("0 of");
}

#[tokio::test]
async fn one_by_one_every_reading_can_be_struck() {
    let (shop, bench, ticket) = bench().await;
    for typed in ["0.010", "0.012", "0.014"] {
        read(&shop, &bench, ticket, "front-end-play", &[("r.1", typed)]).await;
    }
    strike(&shop, &bench, ticket, "front-end-play", 2).await.assert_says("fine 0.014 in");
    strike(&shop, &bench, ticket, "front-end-play", 3).await.assert_says("fine 0.010 in");
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, Some((json!(0.01), Source::Measured)));
    strike(&shop, &bench, ticket, "front-end-play", 1).await.assert_says("not taken");
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, None);
}

#[tokio::test]
async fn a_number_that_somebody_wrote_since_is_theirs_and_stays() {
    let (shop, bench, ticket) = bench().await;
    read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.031")]).await;
    write(&shop, Role::Desk, ticket, &[("bench.front_end_play_in", json!(0.018))]).await;
    let asked = bench.get(&place(ticket, "front-end-play", 1)).await;
    asked.assert_says("The facts of the job stay as they are");
    strike(&shop, &bench, ticket, "front-end-play", 1).await;
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, Some((json!(0.018), Source::Looked)));
}

#[tokio::test]
async fn it_takes_a_reason_and_a_tick_and_happens_once() {
    let (shop, bench, ticket) = bench().await;
    read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.031")]).await;
    let (base, path) = (made_from(&shop, ticket).await, place(ticket, "front-end-play", 1));
    let before = shop.fingerprint().await;
    bench.get(&path).await.assert_says("What follows");
    let unsure = bench.post(&path, &[("base", &base), ("reason", "The dial was loose")]).await;
    assert_eq!(unsure.status, StatusCode::UNPROCESSABLE_ENTITY);
    unsure.assert_says("Tick that this reading does not count, or leave it as it is.");
    assert_eq!(unsure.value("reason"), "The dial was loose");
    let dumb = bench.post(&path, &[("base", &base), ("reason", "  "), ("sure", "yes")]).await;
    dumb.assert_says("Write down what went wrong with this reading.");
    assert_eq!(dumb.attributes("#sure[checked]", "value"), ["yes"]);
    assert_eq!(shop.fingerprint().await, before, "nothing half done");
    let fields = [("base", base.as_str()), ("reason", "The dial was loose"), ("sure", "yes")];
    let once = Uuid::now_v7();
    for _ in 0..2 {
        let sent = bench.post_once(&path, once, &fields).await;
        assert!(sent.location().is_some_and(|to| to.ends_with("?saved=struck")));
    }
    let after = shop.fingerprint().await;
    for page in [bench.get(&path).await, bench.post(&path, &fields).await] {
        assert_eq!(page.location(), Some(format!("/tickets/{ticket}/sheet/front-end-play")), "it is struck already");
    }
    assert_eq!(shop.fingerprint().await, after);
    assert_eq!(bench.get(&place(ticket, "front-end-play", 2)).await.status, StatusCode::NOT_FOUND);
    assert_eq!(bench.get(&place(ticket, "rear-end-play", 1)).await.status, StatusCode::NOT_FOUND);
    assert_eq!(bench.get(&place(ticket, "none", 1)).await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_part_chosen_by_a_struck_reading_is_chosen_no_more() {
    let (shop, bench, ticket) = bench().await;
    let set = [("version", "0"), ("size.1", "0.062"), ("size.2", "0.095")];
    bench.post("/sets/front-washers", &set).await;
    read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.031"), ("fitted", "0.073")]).await;
    let choose = [("do", "choose"), ("reading", "1"), ("part", "0.095 in")];
    let path = format!("/tickets/{ticket}/sheet/front-end-play");
    bench.follow(bench.post(&path, &choose).await).await.assert_says("Chosen: 0.095 in");
    bench.get(&place(ticket, "front-end-play", 1)).await.assert_says("That choice no longer stands either.");
    let struck = strike(&shop, &bench, ticket, "front-end-play", 1).await;
    assert!(!struck.texts("main").join(" ").contains("Chosen:"));
    let late = bench.post(&path, &choose).await;
    assert_eq!(late.status, StatusCode::NOT_FOUND, "there is nothing to choose a part by");
}

#[tokio::test]
async fn whether_the_gauge_was_in_date_follows_the_pressures_that_count() {
    let (shop, bench, ticket) = bench().await;
    add_instrument(&bench, "Gauge 1", "pressure-gauge", "2999-12-31").await;
    add_instrument(&bench, "Gauge 2", "pressure-gauge", "2020-12-31").await;
    let gauge = async || fact(&shop, ticket, "bench.gauge_cal_ok").await.map(|(value, _)| value);
    let pressure = async |name: &str, instrument: &str| {
        read(&shop, &bench, ticket, name, &[("r.1", "75"), ("instrument", instrument)]).await;
    };
    pressure("pressure-drive-idle", "1").await;
    pressure("pressure-reverse-idle", "2").await;
    assert_eq!(gauge().await, Some(json!(false)));
    strike(&shop, &bench, ticket, "pressure-reverse-idle", 1).await;
    assert_eq!(gauge().await, Some(json!(true)), "the other gauge's reading counts");
    assert_eq!(fact(&shop, ticket, "bench.line_reverse_idle_psi").await, None);
    strike(&shop, &bench, ticket, "pressure-drive-idle", 1).await;
    assert_eq!(gauge().await, None, "nobody knows it any more");
}
