//! The pictures of a job: drawn as far as its facts go, with the same numbers beside them, and nothing guessed.

use super::client::{Client, Page, Shop};
use super::jobs::{take_in, write};
use axum::http::StatusCode;
use endplay::demo::{self, Demo, PASSWORD, TECHNICIAN};
use endplay::ticket::Role;
use jiff::Timestamp;
use serde_json::json;
use std::collections::BTreeSet;

/// The invented shop, looked at by its technician.
async fn invented() -> (Shop, Demo, Client) {
    let shop = Shop::open().await;
    let filled = demo::fill(shop.service.clone(), Timestamp::now()).await.expect("every story can be told");
    let mut client = shop.nobody();
    client.sign_in(TECHNICIAN, PASSWORD).await;
    (shop, filled, client)
}

/// Every drawing of a page, as it stands in it.
fn drawings(page: &Page) -> Vec<&str> {
    let starts = page.text.match_indices("<svg role=\"img\"").map(|(at, _)| at);
    starts.map(|at| &page.text[at..at + page.text[at..].find("</svg>").expect("it ends") + "</svg>".len()]).collect()
}

/// Well-formed, named for those who hear it, every id once on the page; gives all words of each drawing.
fn read(page: &Page) -> Vec<String> {
    let mut ids = BTreeSet::new();
    let all = drawings(page);
    all.iter()
        .map(|svg| {
            let document = roxmltree::Document::parse(svg).unwrap_or_else(|error| panic!("{error}: {svg}"));
            for id in document.descendants().filter_map(|node| node.attribute("id")) {
                assert!(ids.insert(id.to_owned()), "the id {id} is on the page twice");
            }
            let labelled = document.root_element().attribute("aria-labelledby").expect("a name");
            assert!(labelled.split(' ').all(|id| ids.contains(id)), "{labelled}");
            let texts = document.descendants().filter(|node| node.has_tag_name("text"));
            texts.filter_map(|node| node.text()).collect::<Vec<_>>().join("\n")
        })
        .collect()
}

#[tokio::test]
async fn every_picture_of_a_job_that_is_known_is_drawn_with_its_numbers_beside_it() {
    let (_shop, demo, client) = invented().await;
    let page = client.get(&format!("/tickets/{}/pictures", demo.tickets[2])).await;
    assert_eq!(page.status, StatusCode::OK);
    assert_eq!(page.texts(".pictures-waiting"), [""; 0], "the bracket car waits for nothing");
    let titles = page.texts(".picture h2");
    for wanted in
        ["Road speed", "first", "second", "third", "reverse", "Load", "Front end", "Rear end", "Stall", "Driveshaft"]
    {
        assert!(titles.iter().any(|title| title.contains(wanted)), "{wanted} among {titles:?}");
    }
    let words = read(&page);
    assert_eq!(words.len(), titles.len());
    for (nth, words) in words.iter().enumerate() {
        let numbers = page.texts(&format!(".pictures > .picture:nth-child({}) td.number", nth + 1));
        assert!(!numbers.is_empty(), "{}", titles[nth]);
        for number in numbers {
            assert!(words.contains(&number), "{}: {number} is not in the drawing: {words}", titles[nth]);
        }
    }
}

#[tokio::test]
async fn the_race_car_shows_what_is_known_of_it_and_says_what_the_rest_waits_for() {
    let (_shop, demo, client) = invented().await;
    let number = demo.tickets[7];
    let page = client.get(&format!("/tickets/{number}/pictures")).await;
    let titles = page.texts(".picture h2");
    for wanted in ["trans brake", "Load", "Stall", "Road speed"] {
        assert!(titles.iter().any(|title| title.contains(wanted)), "{wanted} among {titles:?}");
    }
    read(&page);
    page.assert_says("not known: waits for");
    let waits = page.attributes(".pictures-waiting a", "href");
    let ask = format!("/tickets/{number}/facts/measured#f.bench.front_end_play_in");
    assert!(waits.contains(&ask), "{waits:?}");
    let ticket = client.get(&format!("/tickets/{number}")).await;
    assert!(ticket.attributes("main a", "href").contains(&format!("/tickets/{number}/pictures")));
}

#[tokio::test]
async fn of_a_job_of_which_nothing_is_known_nothing_is_drawn() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let client = shop.client(Role::Technician).await;
    let path = format!("/tickets/{ticket}/pictures");
    let page = client.get(&path).await;
    assert!(drawings(&page).is_empty());
    page.assert_says("Nothing is guessed.");
    page.assert_says("can be drawn yet");
    let titles = page.texts(".pictures-waiting h3");
    let together = "Power flow: first; Power flow: second; Power flow: third; Power flow: reverse";
    assert!(titles.iter().any(|title| title == together), "what waits for the same is told once: {titles:?}");
    write(&shop, Role::Technician, ticket, &[("bench.rear_end_play_in", json!(0.021))]).await;
    let page = client.get(&path).await;
    assert_eq!(page.texts(".picture h2"), ["Rear end play and the washer to choose"]);
    let words = read(&page).swap_remove(0);
    assert!(words.contains("0.021 in") && words.contains("washer: not known"), "{words}");
}
