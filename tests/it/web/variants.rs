//! Variants and what they claim: a plan stays a plan, a choice is of what was read, a price is the one that was shown.

use super::client::Shop;
use super::jobs::{caller, take_in, write};
use super::what_if::{BY_HAND, keep, make_it_the_job, offer, offered, send, source};
use axum::http::StatusCode;
use endplay::service::{Failure, KeepVariant, Key, Who};
use endplay::ticket::{Edit, FactChange, Role, Source};
use serde_json::json;

#[tokio::test]
async fn what_nobody_chose_stays_a_plan_and_what_is_found_on_the_unit_is_no_choice() {
    let shop = Shop::staffed().await;
    let (ticket, path) = offered(&shop).await;
    let desk = shop.client(Role::Desk).await;
    // The customer chose the one; the other is made the job all the same.
    let phone = shop.nobody();
    let by_hand = offer(&phone.get(&path).await, 0);
    phone.post(&format!("{path}/choose"), &[("variant", &by_hand), ("chooser", "Rosa Fielding")]).await;
    desk.follow(make_it_the_job(&desk, ticket, 2).await).await.assert_says("this is now version 4.");
    for path in ["pan.depth", "threads.mount_bolt"] {
        assert_eq!(source(&shop, ticket, path).await, Source::Planned, "{path}");
    }
    let page = desk.get(&format!("/tickets/{ticket}/what-if")).await;
    let groups = page.attributes("#group option", "value");
    assert!(groups.contains(&"one_way".to_owned()), "{groups:?}");
    for none in ["bench", "order", "paper", "class_table"] {
        assert!(!groups.contains(&none.to_owned()), "{none} in {groups:?}");
    }
    let one_way = send(&desk, ticket, &[("group", "one_way")]).await;
    assert!(one_way.attributes("[name='f.one_way.low']", "name").is_empty());
    for found in [("f.one_way.low", "correct"), ("f.bench.rear_end_play_in", "0.010")] {
        let refused = keep(&desk, ticket, "Good readings", &[found]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
        refused.assert_says("found out on the unit");
    }
    let fact = FactChange { path: "one_way.low".into(), value: Some(json!("correct")), source: Source::Measured };
    let edit = Edit { facts: vec![fact], ..Edit::default() };
    let keep = KeepVariant { ticket, nth: None, made_from: 4, name: "Tried".into(), minutes: None, edit };
    let refused = shop.service.write(Who::Staff(caller(&shop, Role::Desk).await), Key::fresh(), keep).await;
    assert!(matches!(refused, Err(Failure::Problems(_))), "{refused:?}");
}

#[tokio::test]
async fn a_choice_is_refused_when_what_the_page_told_has_changed() {
    let shop = Shop::staffed().await;
    let (ticket, path) = offered(&shop).await;
    let (phone, to) = (shop.nobody(), format!("{path}/choose"));
    let read = phone.get(&path).await;
    let (by_hand, deep_pan) = (offer(&read, 0), offer(&read, 1));
    // A new version of the variant, though it is called the same.
    let desk = shop.client(Role::Desk).await;
    let dearer = [("priced", "yes"), ("what.1", "Rebuild"), ("amount.1", "2300"), BY_HAND, ("variant", "1")];
    keep(&desk, ticket, "Shift by hand", &dearer).await;
    let before = shop.fingerprint().await;
    let refused = phone.post(&to, &[("variant", &by_hand), ("chooser", "Rosa Fielding")]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    refused.assert_says("This choice changed while you were reading, so nothing was sent.");
    assert_eq!(refused.value("chooser"), "Rosa Fielding");
    assert_eq!(shop.fingerprint().await, before, "nothing half done");
    // The other is as it was told.
    phone
        .follow(phone.post(&to, &[("variant", &deep_pan), ("chooser", "Rosa Fielding")]).await)
        .await
        .assert_says("You chose: Deep pan.");
    // Changed after it was chosen, it no longer counts as theirs, and the page says so.
    keep(&desk, ticket, "Deep pan", &[("f.pan.depth", "deep"), ("variant", "2")]).await;
    let later = phone.get(&path).await;
    later.assert_says("It has changed since you chose it.");
    assert!(later.texts(".variant-taken").is_empty());
}

#[tokio::test]
async fn a_variant_whose_price_moved_since_it_was_shown_is_not_made_the_job() {
    let shop = Shop::staffed().await;
    let (ticket, _) = offered(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let to = format!("/tickets/{ticket}/variants/2/apply");
    let before = shop.fingerprint().await;
    for total in ["1750.00", ""] {
        let refused = desk.post(&to, &[("version", "1"), ("total", total)]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
        refused.assert_says("would be 1850.00 by now, so nothing was changed");
    }
    assert_eq!(shop.fingerprint().await, before, "nothing half done");
    assert_eq!(make_it_the_job(&desk, ticket, 2).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn the_page_opens_on_what_the_stops_rest_on_and_the_findings_lead_to_it() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{ticket}/what-if");
    assert_eq!(desk.get(&path).await.attributes("#group option[selected]", "value"), ["valve_body"]);
    write(&shop, Role::Technician, ticket, &[("yoke.spline", json!(27)), ("output.spline", json!(32))]).await;
    let opened = desk.get(&path).await.attributes("#group option[selected]", "value").remove(0);
    assert!(["yoke", "output"].contains(&opened.as_str()), "{opened}");
    let job = desk.get(&format!("/tickets/{ticket}")).await;
    let links = job.attributes("section[aria-labelledby=findings-heading] a", "href");
    assert!(links.contains(&path), "{links:?}");
}
