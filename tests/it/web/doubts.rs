//! What can be but hardly ever is: asked about before it is believed, at the counter and on the sheets.

use super::client::Shop;
use super::intake::{ROSA, taken_in};
use super::jobs::{fact, take_in};
use axum::http::StatusCode;
use endplay::ticket::Role;
use serde_json::json;

const RPM: &str = "Was 6500 rpm meant?";

#[tokio::test]
async fn the_counter_asks_about_a_slip_before_it_believes_it() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let number = taken_in(&desk, ROSA).await;
    let path = format!("/tickets/{number}/intake");
    let answers = [
        ("base", "1"),
        ("f.engine.max_rpm", "65000"),
        ("f.vehicle.axle_ratio", "373"),
        ("f.vehicle.weight_lb", "3650"),
    ];
    let before = shop.fingerprint().await;
    let look = desk.post(&format!("/tickets/{number}/look"), &answers).await;
    assert_eq!(look.texts("#doubts a").len(), 2, "{:?}", look.texts("#doubts a"));
    look.assert_says(RPM);
    look.assert_says("Was 3.73 meant?");
    assert_eq!(look.attributes("#doubts [name=sure]", "value"), ["engine.max_rpm=65000", "vehicle.axle_ratio=373"]);
    let asked = desk.post(&path, &[&answers[..], &[("do", "save")]].concat()).await;
    assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(asked.attributes(".summary a", "href"), ["#f.engine.max_rpm", "#f.vehicle.axle_ratio"]);
    assert_eq!(asked.value("f.engine.max_rpm"), "65000");
    assert_eq!(shop.fingerprint().await, before, "nothing is believed yet");

    // The tick is for this number and no other.
    let sure = [&answers[..], &[("sure", "engine.max_rpm=65000"), ("do", "save")]].concat();
    let half = desk.post(&path, &sure).await;
    assert_eq!(half.attributes(".summary a", "href"), ["#f.vehicle.axle_ratio"]);
    assert_eq!(half.attributes("[name=sure][checked]", "value"), ["engine.max_rpm=65000"]);
    let other = [("base", "1"), ("f.engine.max_rpm", "75000"), ("sure", "engine.max_rpm=65000"), ("do", "save")];
    assert_eq!(desk.post(&path, &other).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    let both = [&sure[..], &[("sure", "vehicle.axle_ratio=373")]].concat();
    assert_eq!(desk.post(&path, &both).await.location(), Some(format!("{path}/done")));
    assert_eq!(fact(&shop, number, "engine.max_rpm").await.map(|(value, _)| value), Some(json!(65000)));

    // What is on record was believed before, and is not asked about again.
    let again = [("base", "2"), ("f.engine.max_rpm", "65000"), ("f.vehicle.weight_lb", "3700"), ("do", "save")];
    assert_eq!(desk.post(&path, &again).await.location(), Some(format!("{path}/done")));
}

#[tokio::test]
async fn a_sheet_asks_before_it_is_saved() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let path = format!("/tickets/{ticket}/facts/spec");
    let typed = [("base", "1"), ("source", "customer_said"), ("f.engine.max_rpm", "65000"), ("do", "show")];
    let shown = bench.post(&path, &typed).await;
    assert_eq!(shown.texts("h2")[0], "Is that right?");
    shown.assert_says(RPM);
    bench.post(&format!("{path}/look"), &typed).await.assert_says(RPM);
    let usual = [("base", "1"), ("source", "customer_said"), ("f.engine.max_rpm", "6500"), ("do", "show")];
    let shown = bench.post(&path, &usual).await;
    assert!(!shown.texts("main").join(" ").contains("Is that right?"));
    let measured = [("base", "1"), ("f.bench.front_end_play_in", "0.12"), ("do", "show")];
    let shown = bench.post(&format!("/tickets/{ticket}/facts/measured"), &measured).await;
    shown.assert_says("Front end play: 0.12 in is far more than is usual (0.002 in to 0.09 in). Was 0.012 in meant?");
}

/// A promise is written down late now and then. A slip of the year is seen at once.
#[tokio::test]
async fn a_promised_day_that_is_past_is_taken_and_said_to_be_overdue() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let ticket = taken_in(&desk, &[ROSA, &[("promised", "2020-02-03")]].concat()).await;
    desk.get(&format!("/tickets/{ticket}")).await.assert_says("Overdue.");
}
