//! The measurement sheet: what is typed at the bench, what is said of it, where it goes, and what is kept for ever.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, comes_back, take_in, write};
use axum::http::StatusCode;
use endplay::job::fact_named;
use endplay::ticket::{Purpose, Role, Source};
use serde_json::{Value, json};

/// A job, the bench, and what is fitted with it.
pub async fn bench() -> (Shop, Client, i64) {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let client = shop.client(Role::Technician).await;
    (shop, client, ticket)
}

pub async fn made_from(shop: &Shop, ticket: i64) -> String {
    super::jobs::revision(shop, ticket).await.to_string()
}

pub async fn read(shop: &Shop, bench: &Client, ticket: i64, name: &str, fields: &[(&str, &str)]) -> Page {
    let from = made_from(shop, ticket).await;
    let fields = [&[("made_from", from.as_str()), ("do", "save")][..], fields].concat();
    bench.post(&format!("/tickets/{ticket}/sheet/{name}"), &fields).await
}

/// A fact's value and how it was learnt.
pub async fn fact(shop: &Shop, ticket: i64, path: &str) -> Option<(Value, Source)> {
    let desk = caller(shop, Role::Desk).await;
    let page = shop.service.ticket(&desk, ticket).await.expect("the ticket");
    let entry = page.revision.contents.facts.entry(fact_named(path).expect("a fact"))?;
    Some((entry.value, entry.origin.source))
}

async fn add_dial(bench: &Client, name: &str, due: &str) {
    add_instrument(bench, name, "dial", due).await;
}

pub async fn add_instrument(bench: &Client, name: &str, kind: &str, due: &str) {
    let fields = [("name", name), ("kind", kind), ("calibrated", "2020-01-02"), ("due", due)];
    let page = bench.follow(bench.post("/instruments", &fields).await).await;
    page.assert_says("Saved.");
}

#[tokio::test]
async fn a_reading_gets_its_verdict_at_once_and_the_rules_see_it() {
    let (shop, bench, ticket) = bench().await;
    let list = bench.get(&format!("/tickets/{ticket}/sheet")).await;
    list.assert_says("Front end play");
    list.assert_says("not taken");
    let saved =
        read(&shop, &bench, ticket, "front-end-play", &[("r.1", "31 thou"), ("r.2", "0.031"), ("r.3", "")]).await;
    let page = bench.follow(saved).await;
    page.assert_says("Saved. It stands on the job now.");
    page.assert_says("out 0.031 in");
    page.assert_says("Out: 0.007 in above the most that is allowed.");
    page.assert_says("At most 0.024 in (memory, high)");
    page.assert_says("read 31 thou, 0.031 in; 0.000 in apart at the most; nobody wrote down with which instrument.");
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, Some((json!(0.031), Source::Measured)));
    let desk = caller(&shop, Role::Desk).await;
    let found = shop.service.ticket(&desk, ticket).await.expect("the ticket").revision.judgement.findings;
    assert!(found.iter().any(|found| found.code == "MEA-01"), "the rule about the front end play sees it");
    let list = bench.get(&format!("/tickets/{ticket}/sheet")).await;
    list.assert_says("1 of");
    list.assert_says("1 out");
    bench.get(&format!("/tickets/{ticket}/history")).await.assert_says("Measured: Front end play 0.031 in, out");
}

#[tokio::test]
async fn a_bad_reading_is_caught_with_a_sentence_and_everything_typed_stays() {
    let (shop, bench, ticket) = bench().await;
    let refused = [
        ("0.305", "Perhaps millimeters were read: 0.305 mm?"),
        ("0.12", "far more than there ever is"),
        ("0.0012", "far less than there ever is"),
        ("-0.012", "cannot be below nought"),
        ("12", "cannot be. It can be 0.000 in to 1.000 in."),
        ("0,012", "comma"),
        ("twelve", "cannot be read as a number"),
        ("12 psi", "does not measure this"),
        ("", "type what the instrument shows"),
    ];
    for (typed, words) in refused {
        let fields = [("r.1", typed), ("r.2", "0.013"), ("fitted", "0.0.73")];
        let fields = if typed.is_empty() { &fields[..1] } else { &fields[..] };
        let page = read(&shop, &bench, ticket, "front-end-play", fields).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{typed}");
        page.assert_says(words);
        assert_eq!(page.value("r.1"), typed);
        if !typed.is_empty() {
            assert_eq!((page.value("r.2"), page.value("fitted")), ("0.013".to_owned(), "0.0.73".to_owned()));
        }
    }
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, None, "nothing was written down");
}

#[tokio::test]
async fn an_unlikely_reading_is_asked_about_and_taken_when_it_really_is_so() {
    let (shop, bench, ticket) = bench().await;
    let page = read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.305")]).await;
    let meant = page.attributes("button[name=meant]", "value");
    assert!(meant.contains(&"r.1=0.305 mm".to_owned()), "{meant:?}");
    assert_eq!(page.texts("input[name=sure]").len(), 1);
    let put_in = read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.305"), ("meant", "r.1=0.305 mm")]).await;
    assert_eq!((put_in.status, put_in.value("r.1").as_str()), (StatusCode::OK, "0.305 mm"));
    put_in.assert_says("fine 0.012 in");
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, None, "it is looked at before it is kept");
    let sure = read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.305"), ("sure", "yes")]).await;
    assert!(sure.location().is_some());
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, Some((json!(0.305), Source::Measured)));
    let impossible = read(&shop, &bench, ticket, "front-end-play", &[("r.1", "30"), ("sure", "yes")]).await;
    assert_eq!(impossible.status, StatusCode::UNPROCESSABLE_ENTITY, "nobody can be sure of what cannot be");
}

#[tokio::test]
async fn readings_that_move_too_far_are_no_measurement() {
    let (shop, bench, ticket) = bench().await;
    let moving = [("r.1", "0.010"), ("r.2", "0.016"), ("r.3", "0.012")];
    let page = read(&shop, &bench, ticket, "front-end-play", &moving).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    page.assert_says("the readings go from 0.010 in to 0.016 in, and they may lie 0.002 in apart at the most");
    let steady = [("r.1", "0.012"), ("r.2", "0.013"), ("r.3", "0.012")];
    let page = bench.follow(read(&shop, &bench, ticket, "front-end-play", &steady).await).await;
    page.assert_says("0.0123 in");
    page.assert_says("0.001 in apart at the most");
}

#[tokio::test]
async fn the_part_is_chosen_from_the_shelf_and_nothing_fits_is_said_plainly() {
    let (shop, bench, ticket) = bench().await;
    let path = format!("/tickets/{ticket}/sheet/front-end-play");
    let fields = [("r.1", "0.031"), ("fitted", "0.073")];
    bench.follow(read(&shop, &bench, ticket, "front-end-play", &fields).await).await.assert_says("is not typed in yet");
    let set =
        [("version", "0"), ("size.1", "62 thou"), ("size.2", "0.095"), ("mark.2", "drawer 4"), ("size.4", "0.106")];
    bench
        .follow(bench.post("/sets/front-washers", &set).await)
        .await
        .assert_says("0.062 in; 0.095 in, drawer 4; 0.106 in");
    let page = bench.get(&path).await;
    page.assert_says("Fit 0.095 in, drawer 4. It will leave 0.009 in (± 0.001 in).");
    page.assert_says("new = old + reading - aim = 0.073 in + 0.031 in - 0.012 in = 0.092 in");
    assert_eq!(page.attributes("input[name=part][checked]", "value"), ["0.095 in, drawer 4"]);
    let choose = [("do", "choose"), ("reading", "1"), ("part", "0.095 in, drawer 4")];
    let page = bench.follow(bench.post(&path, &choose).await).await;
    page.assert_says("Chosen: 0.095 in, drawer 4. Measure again once it is in.");
    page.assert_says("0.095 in, drawer 4 was chosen, to leave 0.009 in (± 0.001 in) (Terry Tech)");
    let gone = bench.post(&path, &[("do", "choose"), ("reading", "1"), ("part", "0.5 in")]).await;
    assert_eq!(gone.status, StatusCode::UNPROCESSABLE_ENTITY);
    gone.assert_says("Choose one of the parts on the list.");
    let set = [("version", "1"), ("size.1", "0.128")];
    bench.follow(bench.post("/sets/front-washers", &set).await).await.assert_says("Saved.");
    bench.get(&path).await.assert_says("No part in the set fits. The nearest is 0.128 in");
}

#[tokio::test]
async fn a_set_that_cannot_be_is_refused_line_by_line() {
    let (_shop, bench, _) = bench().await;
    let set = [("version", "0"), ("size.1", "84"), ("size.2", "0.084"), ("other.2", "0.05"), ("mark.3", "blue")];
    let page = bench.post("/sets/rear-washers", &set).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    page.assert_says("Line 1, size:");
    page.assert_says("Line 2, how far it may be off:");
    page.assert_says("Line 3, size: nothing was typed");
    assert_eq!((page.value("size.1"), page.value("mark.3")), ("84".to_owned(), "blue".to_owned()));
    let stale = bench.post("/sets/rear-washers", &[("version", "4"), ("size.1", "0.084")]).await;
    assert_ne!(stale.status, StatusCode::INTERNAL_SERVER_ERROR);
    assert_eq!(bench.get("/sets/none").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_reading_with_an_instrument_past_its_date_says_so_for_ever() {
    let (shop, bench, ticket) = bench().await;
    add_dial(&bench, "Dial 1", "2020-12-31").await;
    let fields = [("r.1", "0.012"), ("instrument", "1")];
    let before = bench.post(&format!("/tickets/{ticket}/sheet/front-end-play/look"), &fields).await;
    before.assert_says("Dial 1 is past its calibration date: it was good through");
    let page = bench.follow(read(&shop, &bench, ticket, "front-end-play", &fields).await).await;
    let words = "Taken with an instrument past its calibration date: it was good through";
    page.assert_says(words);
    let learnt = fact(&shop, ticket, "bench.front_end_play_in").await;
    assert_eq!(learnt, Some((json!(0.012), Source::MeasuredPastDue)));
    bench.get(&format!("/tickets/{ticket}/sheet")).await.assert_says(words);
    let calibrated =
        [("version", "1"), ("name", "Dial 1"), ("kind", "dial"), ("calibrated", "2026-01-01"), ("due", "2999-12-31")];
    bench.follow(bench.post("/instruments/1", &calibrated).await).await.assert_says("good through");
    let page = bench.get(&format!("/tickets/{ticket}/sheet/front-end-play")).await;
    page.assert_says("it was good through");
    page.assert_says("2020");
    let owner = caller(&shop, Role::Owner).await;
    let paper = shop.service.counter_paper(&owner, ticket, Purpose::Build).await.expect("a paper").paper;
    let told = paper.blocks.iter().flat_map(|block| &block.lines).any(|line| line.contains("whose check was overdue"));
    assert!(told, "the customer reads it beside the number");
    let again = [("r.1", "0.012"), ("instrument", "1")];
    bench.follow(read(&shop, &bench, ticket, "front-end-play", &again).await).await;
    let learnt = fact(&shop, ticket, "bench.front_end_play_in").await;
    assert_eq!(learnt, Some((json!(0.012), Source::Measured)), "measured again with one in date");
    bench.get(&format!("/tickets/{ticket}/sheet/front-end-play")).await.assert_says(words);
}

#[tokio::test]
async fn an_instrument_is_kept_version_by_version() {
    let (_shop, bench, _) = bench().await;
    add_dial(&bench, "Dial 1", "2999-12-31").await;
    let twin = bench.post("/instruments", &[("name", " dial  1"), ("kind", "dial")]).await;
    twin.assert_says("There is an instrument called dial 1 already.");
    let backwards = [("name", "Dial 2"), ("kind", "dial"), ("calibrated", "2026-02-01"), ("due", "2026-01-01")];
    bench.post("/instruments", &backwards).await.assert_says("lies before the day it was calibrated");
    let nothing = bench.post("/instruments", &[("name", ""), ("kind", "spoon"), ("due", "31.1.")]).await;
    assert_eq!(nothing.texts("#summary li").len(), 3, "name, kind and day");
    let retire = [("version", "1"), ("name", "Dial 1"), ("kind", "dial"), ("retired", "yes")];
    bench.follow(bench.post("/instruments/1", &retire).await).await.assert_says("Out of use");
    let late = bench.post("/instruments/1", &retire).await;
    late.assert_says("changed Dial 1 while you were writing");
    assert_eq!(bench.get("/instruments/7").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn an_instrument_that_is_out_of_use_measures_nothing() {
    let (shop, bench, ticket) = bench().await;
    add_dial(&bench, "Dial 1", "2999-12-31").await;
    let retire = [("version", "1"), ("name", "Dial 1"), ("kind", "dial"), ("retired", "yes")];
    bench.follow(bench.post("/instruments/1", &retire).await).await;
    for instrument in ["1", "99"] {
        let fields = [("r.1", "0.012"), ("instrument", instrument)];
        let page = read(&shop, &bench, ticket, "front-end-play", &fields).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
        page.assert_says("That instrument is out of use.");
    }
}

#[tokio::test]
async fn the_shops_own_unit_is_meant_by_a_bare_number_and_what_was_typed_stays() {
    let (shop, bench, ticket) = bench().await;
    let owner = shop.client(Role::Owner).await;
    let metric = [("turn", "0"), ("length", "mm"), ("torque", "n-m"), ("pressure", "bar")];
    owner
        .follow(owner.post("/bench-units", &metric).await)
        .await
        .assert_says("What was typed before stays what it was.");
    let page = bench.follow(read(&shop, &bench, ticket, "front-end-play", &[("r.1", "0.30")]).await).await;
    page.assert_says("read 0.30 mm");
    page.assert_says("fine 0.0118 in");
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, Some((json!(0.011_811), Source::Measured)));
    bench.get(&format!("/tickets/{ticket}/steps/AS-05")).await.assert_says("Front end play: 0.011811 in");
    let page = bench.follow(read(&shop, &bench, ticket, "torque-pump", &[("r.1", "24")]).await).await;
    page.assert_says("read 24 N-m");
    page.assert_says("fine 17.7 lb-ft");
    let wrong = owner.post("/bench-units", &[("turn", "1"), ("length", "ell")]).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    wrong.assert_says("Choose how lengths are written.");
}

#[tokio::test]
async fn a_pack_waits_for_its_count_and_is_then_judged_by_it() {
    let (shop, bench, ticket) = bench().await;
    let page = bench.follow(read(&shop, &bench, ticket, "direct-clearance", &[("r.1", "0.140")]).await).await;
    page.assert_says("cannot be judged yet 0.140 in");
    page.assert_says("Friction plates in the direct pack");
    write(&shop, Role::Technician, ticket, &[("direct.frictions", json!(6))]).await;
    let page = bench.get(&format!("/tickets/{ticket}/sheet/direct-clearance")).await;
    page.assert_says("out 0.140 in");
    page.assert_says("0.120 in (6 frictions at 0.02 in: memory, low)");
}

#[tokio::test]
async fn the_sheet_remembers_the_unit_and_says_when_the_job_was_written_otherwise() {
    let (shop, bench, ticket) = bench().await;
    bench.follow(read(&shop, &bench, ticket, "rear-end-play", &[("r.1", "0.010")]).await).await;
    let again = comes_back(&shop, ticket).await;
    let page = bench.get(&format!("/tickets/{again}/sheet/rear-end-play")).await;
    page.assert_says(&format!("Job {ticket}, the same unit: 0.010 in, fine on that day."));
    write(&shop, Role::Desk, ticket, &[("bench.rear_end_play_in", json!(0.018))]).await;
    let page = bench.get(&format!("/tickets/{ticket}/sheet/rear-end-play")).await;
    page.assert_says("Dale Desk wrote 0.018 in on the job since; the last reading here was 0.010 in.");
}

#[tokio::test]
async fn somebody_elses_number_is_not_overwritten() {
    let (shop, bench, ticket) = bench().await;
    let from = made_from(&shop, ticket).await;
    write(&shop, Role::Desk, ticket, &[("bench.front_end_play_in", json!(0.018))]).await;
    let fields = [("made_from", from.as_str()), ("do", "save"), ("r.1", "0.012")];
    let page = bench.post(&format!("/tickets/{ticket}/sheet/front-end-play"), &fields).await;
    assert_eq!(page.status, StatusCode::CONFLICT);
    assert_eq!(fact(&shop, ticket, "bench.front_end_play_in").await, Some((json!(0.018), Source::Looked)));
}

#[tokio::test]
async fn the_live_verdict_changes_nothing() {
    let (shop, bench, ticket) = bench().await;
    let before = shop.fingerprint().await;
    let path = format!("/tickets/{ticket}/sheet/front-end-play/look");
    bench.post(&path, &[("r.1", "0.002")]).await.assert_says("Out: 0.001 in below the least that is allowed.");
    bench.post(&path, &[("r.1", "x")]).await.assert_says("Cannot be taken as it stands");
    bench.post(&path, &[]).await.assert_says("Nothing is typed yet.");
    bench.post(&path, &[("r.1", "0.012")]).await.assert_says("read once of 3 times, and one reading has no spread");
    let twice = bench.post(&path, &[("r.1", "0.012"), ("r.3", "0.012")]).await;
    twice.assert_says("read 2 of 3 times, 0.000 in apart");
    let moving = bench.post(&path, &[("r.1", "0.010"), ("r.2", "0.0121")]).await;
    moving
        .assert_says("0.010 in to 0.0121 in, and they may lie 0.002 in apart at the most. That is no measurement yet.");
    assert_eq!(shop.fingerprint().await, before);
    assert_eq!(bench.get(&format!("/tickets/{ticket}/sheet/none")).await.status, StatusCode::NOT_FOUND);
}
