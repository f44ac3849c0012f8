//! Everything can be done with a keyboard alone, and one sees where one is.

use crate::driver::{DESK, PHONE};
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::DESK as CLERK;
use endplay::ticket::Purpose;
use fantoccini::key::Key;
use serde_json::Value;

const FAR: usize = 400;

fn tab() -> String {
    char::from(Key::Tab).to_string()
}

fn enter() -> String {
    char::from(Key::Enter).to_string()
}

/// Goes on with Tab until `is_there`; every stop on the way is seen.
async fn tab_until(visitor: &Visitor, what: &str, is_there: impl Fn(&Value) -> bool) {
    for _ in 0..FAR {
        visitor.keys(&tab()).await;
        let focus = visitor.focus().await;
        if focus.is_null() {
            continue;
        }
        let seen = focus["seen"] == Value::Bool(true) && focus["onScreen"] == Value::Bool(true);
        assert!(seen, "where the focus is cannot be seen: {focus}");
        if is_there(&focus) {
            return;
        }
    }
    panic!("{what} is never reached with Tab on {}", visitor.path().await);
}

async fn tab_to_field(visitor: &Visitor, name: &str) {
    tab_until(visitor, name, |focus| focus["name"] == name).await;
}

async fn tab_to_words(visitor: &Visitor, words: &str) {
    tab_until(visitor, words, |focus| focus["words"].as_str().is_some_and(|found| found.starts_with(words))).await;
}

/// Tab goes down the page once and comes out at its end.
pub async fn walk(visitor: &Visitor) {
    let mut before = -1;
    for _ in 0..FAR {
        visitor.keys(&tab()).await;
        let focus = visitor.focus().await;
        let Some(at) = focus["at"].as_i64() else { return };
        assert!(focus["seen"] == Value::Bool(true), "where the focus is cannot be seen: {focus}");
        if at < before {
            return;
        }
        assert_ne!(at, before, "Tab is caught at {focus}");
        before = at;
    }
    panic!("Tab never comes to the end of {}", visitor.path().await);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_unit_is_taken_in_with_the_keyboard_alone() {
    let (shop, _) = Shop::full().await;
    let desk = Visitor::with(&shop, DESK, true).await;
    desk.sign_in(CLERK).await;
    walk(&desk).await;
    desk.goto("/").await;
    tab_to_words(&desk, "Take a unit in").await;
    desk.keys(&enter()).await;
    desk.reads("Who brings it").await;

    tab_to_words(&desk, "Open the ticket").await;
    desk.keys(&enter()).await;
    desk.reads("Check what you entered").await;
    assert_eq!(desk.focus().await["id"], "summary", "what is wrong has the focus");
    desk.keys(&tab()).await;
    desk.keys(&enter()).await;
    assert_eq!(desk.focus().await["id"], "name", "each problem leads to its field");
    desk.keys("Tamsin Heatherley").await;
    for (field, text) in [("phone", "555-0177"), ("wants", "Drive it to work."), ("vehicle", "maroon pickup")] {
        tab_to_field(&desk, field).await;
        desk.keys(text).await;
    }
    tab_to_words(&desk, "Open the ticket").await;
    desk.keys(&enter()).await;
    desk.reads("The unit as it stands").await;

    tab_to_field(&desk, "f.use.kind").await;
    desk.keys("Street").await;
    tab_to_field(&desk, "f.engine.torque_lbft").await;
    desk.keys("330").await;
    desk.reads("answered").await;
    tab_to_words(&desk, "Save and go on").await;
    desk.keys(&enter()).await;
    desk.reads("is taken in").await;
    walk(&desk).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_customer_signs_with_the_keyboard_alone() {
    let (shop, demo) = Shop::full().await;
    let customer = Visitor::with(&shop, PHONE, false).await;
    let (_, _, pass) = demo.links.iter().find(|(_, of, _)| *of == Purpose::Build).expect("a link of the invented shop");
    let page = format!("/c/{pass}");
    customer.goto(&page).await;
    walk(&customer).await;
    customer.goto(&page).await;
    let ticks = "return [...document.querySelectorAll('.signing [type=checkbox]')].map((tick) => tick.name)";
    let ticks = customer.browser.sentences(ticks, vec![]).await;
    assert!(!ticks.is_empty(), "there is something to accept");
    for tick in &ticks {
        tab_to_field(&customer, tick).await;
        customer.keys(" ").await;
    }
    tab_to_words(&customer, "Sign this version").await;
    customer.keys(&enter()).await;
    customer.reads("Check what you entered").await;
    assert_eq!(customer.focus().await["id"], "summary", "what is wrong has the focus");
    customer.keys(&tab()).await;
    customer.keys(&enter()).await;
    assert_eq!(customer.focus().await["id"], "name", "the problem leads to its field");
    customer.keys("Perrin Oakhollow").await;
    customer.keys(&enter()).await;
    customer.reads("Receipt number").await;
}
