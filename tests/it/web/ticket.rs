//! The ticket's page and the small forms on it.

use super::client::{Page, Shop};
use super::jobs::{comes_back, move_along, revision, sign, stopped, take_in, write};
use axum::http::StatusCode;
use endplay::ticket::{Purpose, Role, Stage};
use jiff::SignedDuration;
use serde_json::json;
use uuid::Uuid;

fn led_on(page: &Page, to: &str) {
    assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text);
    assert_eq!(page.location().as_deref(), Some(to));
}

#[tokio::test]
async fn the_ticket_shows_what_stands_where_it_came_from_and_what_to_do() {
    let shop = Shop::staffed().await;
    let ticket = stopped(&shop).await;
    let page = shop.client(Role::Technician).await.get(&format!("/tickets/{ticket}")).await;
    assert_eq!(page.status, StatusCode::OK);
    for words in [
        "Rosa Fielding",
        "QX 4417",
        "Slips into third when hot",
        "Looked, Terry Tech,",
        "Teardown authorisation: Not signed.",
        "No day promised.",
        "Not named yet",
        "What to do:",
        "Common practice; standards ISO 261 and ASME B1.1",
    ] {
        page.assert_says(words);
    }
    assert_eq!(page.texts("h1"), ["Intake"]);
    assert_eq!(page.texts(".rail [aria-current='step']"), ["Intake now"]);
    let stops = page.texts(".severity-stop .finding h4");
    assert!(stops.iter().any(|stop| stop.starts_with("Stop ") && stop.ends_with("THR-02")), "{stops:?}");
    let waits = page.attributes("#THR-02 .fact-links a", "href");
    assert!(waits.contains(&format!("/tickets/{ticket}/facts/outside#f.threads.mount_bolt")), "{waits:?}");
    assert!(!page.texts(".waiting li").is_empty(), "what cannot be decided says what it waits for");
}

#[tokio::test]
async fn a_ticket_that_is_not_there_is_a_page_that_is_not_there() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    for path in ["/tickets/9", "/tickets/9/history", "/tickets/x", "/tickets/9/facts/outside", "/tickets/-1"] {
        assert_eq!(desk.get(path).await.status, StatusCode::NOT_FOUND, "{path}");
    }
    let ticket = take_in(&shop).await;
    for path in ["facts/nothing", "compare?from=1&to=7", "compare?from=x"] {
        assert_eq!(desk.get(&format!("/tickets/{ticket}/{path}")).await.status, StatusCode::NOT_FOUND, "{path}");
    }
}

#[tokio::test]
async fn one_tap_moves_a_job_and_another_takes_it_back_while_it_is_fresh() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let path = format!("/tickets/{ticket}");
    let sent = bench.post(&format!("{path}/stage"), &[("from", "intake"), ("to", "spec")]).await;
    led_on(&sent, &format!("{path}?saved=stage"));
    let page = bench.follow(sent).await;
    page.assert_says("the job is now at Spec.");
    assert_eq!(page.texts(".saved button"), ["Undo: back to Intake"]);

    shop.wait(SignedDuration::from_secs(40));
    let later = bench.get(&format!("{path}?saved=stage")).await;
    assert!(later.texts(".saved button").is_empty(), "after half a minute a move is no slip of the hand");

    let back = [("from", "spec"), ("to", "intake"), ("reason", "Taken back at once: moved by mistake.")];
    bench.follow(bench.post(&format!("{path}/stage"), &back).await).await.assert_says("the job is now at Intake.");
}

#[tokio::test]
async fn going_back_asks_why_and_keeps_what_was_typed() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    move_along(&shop, ticket, &[Stage::Intake, Stage::Spec]).await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{ticket}/stage");
    let page = desk.post(&path, &[("from", "spec"), ("to", "intake"), ("reason", "no")]).await;
    assert_eq!(page.status, StatusCode::CONFLICT);
    page.assert_says("Write down why the job goes back");
    assert_eq!(page.value("reason"), "no");
    desk.follow(desk.post(&path, &[("from", "spec"), ("to", "declined"), ("reason", "Sold the car")]).await)
        .await
        .assert_says("the job is now at Declined.");
    let closed = desk.post(&format!("/tickets/{ticket}/notes"), &[("text", "Core stays here")]).await;
    assert_eq!(closed.status, StatusCode::SEE_OTHER, "a note can still be written");
    let closed = desk.post(&format!("/tickets/{ticket}/promise"), &[("from", ""), ("day", "2027-01-04")]).await;
    assert_eq!(closed.status, StatusCode::UNPROCESSABLE_ENTITY);
    closed.assert_says("can no longer be changed");
}

#[tokio::test]
async fn a_closed_gate_says_what_is_missing_and_only_an_owner_passes_it_in_writing() {
    let shop = Shop::staffed().await;
    let ticket = stopped(&shop).await;
    sign(&shop, ticket, Purpose::Intake).await;
    move_along(&shop, ticket, &[Stage::Intake, Stage::Spec, Stage::Teardown, Stage::Quote, Stage::Parts]).await;
    let path = format!("/tickets/{ticket}/stage");
    let ahead = [("from", "parts"), ("to", "machining")];

    let bench = shop.client(Role::Technician).await;
    let page = bench.post(&path, &ahead).await;
    assert_eq!(page.status, StatusCode::CONFLICT);
    page.assert_says("The job is still at Parts. Nothing was changed.");
    page.assert_says("Current version signed: The customer has not signed the current version.");
    page.assert_says("No open stop: These must be put right first:");
    page.assert_says("Only an owner can pass a closed gate");
    assert!(page.attributes("textarea", "name").is_empty());

    let passing = [
        ("from", "parts"),
        ("to", "machining"),
        ("pass.revision_signed", "Signed on paper, sheet in the folder"),
        ("pass.no_open_stop", "ok"),
    ];
    assert_eq!(bench.post(&path, &passing).await.status, StatusCode::FORBIDDEN);

    let owner = shop.client(Role::Owner).await;
    let asked = owner.post(&path, &ahead).await;
    assert_eq!(asked.attributes("textarea", "name"), ["pass.revision_signed", "pass.no_open_stop"]);
    let short = owner.post(&path, &passing).await;
    assert_eq!(short.status, StatusCode::CONFLICT);
    short.assert_says("To pass this gate, write down why");
    assert_eq!(short.value("pass.revision_signed"), "Signed on paper, sheet in the folder");

    let passing = [passing[0], passing[1], passing[2], ("pass.no_open_stop", "Right bolts are on the bench")];
    let moved = owner.follow(owner.post(&path, &passing).await).await;
    moved.assert_says("the job is now at Machining.");
    let seen = bench.get(&format!("/tickets/{ticket}")).await;
    let notice = seen.texts(".notice-override").join(" ");
    assert!(notice.contains("Right bolts are on the bench") && notice.contains("Olive Owner"), "{notice}");
    assert!(!seen.texts(".severity-stop .finding").is_empty(), "a passed gate clears nothing");
}

#[tokio::test]
async fn who_holds_the_next_move_is_never_overwritten_unseen() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let (desk, bench) = (shop.client(Role::Desk).await, shop.client(Role::Technician).await);
    let path = format!("/tickets/{ticket}/waits");
    bench
        .follow(bench.post(&path, &[("from", "us"), ("to", "parts")]).await)
        .await
        .assert_says("the job waits for parts.");

    let clash = desk.post(&path, &[("from", "us"), ("to", "customer")]).await;
    assert_eq!(clash.status, StatusCode::CONFLICT);
    assert_eq!(clash.texts(".clash-value"), ["Customer", "Parts"]);
    let left =
        desk.follow(desk.post(&path, &[("from", "parts"), ("to", "customer"), ("keep.waits_for", "theirs")]).await);
    assert_eq!(left.await.texts("button[aria-pressed='true']"), ["Parts now"]);
    let mine = [("from", clash.value("from")), ("to", clash.value("to")), ("keep.waits_for", "mine".to_owned())];
    let mine: Vec<_> = mine.iter().map(|(name, value)| (*name, value.as_str())).collect();
    desk.follow(desk.post(&path, &mine).await).await.assert_says("the job waits for customer.");
}

#[tokio::test]
async fn a_promise_says_when_it_is_broken_and_a_day_that_is_none_is_asked_again() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{ticket}/promise");
    let wrong = desk.post(&path, &[("from", ""), ("day", "2026-02-30")]).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(wrong.texts("title")[0].starts_with("Check what you entered: "));
    assert_eq!(wrong.attributes(".summary a", "href"), ["#day"]);
    assert_eq!(wrong.value("day"), "2026-02-30");
    desk.follow(desk.post(&path, &[("from", ""), ("day", "2020-02-03")]).await).await.assert_says("Overdue.");
    let bench = shop.client(Role::Technician).await;
    assert_eq!(bench.post(&path, &[("from", ""), ("day", "2027-02-03")]).await.status, StatusCode::FORBIDDEN);
    assert!(bench.get(&format!("/tickets/{ticket}")).await.attributes("input[name='day']", "name").is_empty());
}

#[tokio::test]
async fn a_price_is_lines_to_the_cent_and_a_new_version() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    sign(&shop, ticket, Purpose::Build).await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{ticket}/price");
    let half = [("base", "1"), ("what.1", "Rebuild"), ("amount.1", "1850"), ("what.2", "Shaft"), ("amount.2", "lots")];
    let wrong = desk.post(&path, &half).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(wrong.attributes(".summary a", "href"), ["#amount.2"]);
    for (name, value) in &half[1..] {
        assert_eq!(&wrong.value(name), value);
    }
    assert_eq!(revision(&shop, ticket).await, 1, "nothing half done");

    let lines =
        [("base", "1"), ("what.1", "Rebuild"), ("amount.1", "1,850"), ("what.2", "Returning"), ("amount.2", "-50.5")];
    let page = desk.follow(desk.post(&path, &lines).await).await;
    page.assert_says("the price, as version 2.");
    assert_eq!(page.texts(".price-total"), ["1799.50"]);
    page.assert_says("Signed earlier, but what was signed has changed since. That signature no longer holds.");

    let clash = desk.post(&path, &[("base", "1"), ("what.1", "Rebuild"), ("amount.1", "1900")]).await;
    assert_eq!(clash.status, StatusCode::CONFLICT);
    assert!(clash.texts(".clash-who")[1].starts_with("Dale Desk, "));
    assert_eq!(clash.value("base"), "2", "the choice is made over what stands now");
}

#[tokio::test]
async fn the_same_form_sent_twice_counts_once() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let (path, once) = (format!("/tickets/{ticket}/notes"), Uuid::now_v7());
    for _ in 0..3 {
        let sent = desk.post_once(&path, once, &[("text", "Old weld at the upper left corner")]).await;
        led_on(&sent, &format!("/tickets/{ticket}?saved=note"));
    }
    let page = desk.get(&format!("/tickets/{ticket}")).await;
    let notes = page.texts(".entry-words");
    assert_eq!(notes, ["Old weld at the upper left corner"]);
    let keys = page.attributes("input[name='once']", "value");
    let different: std::collections::HashSet<_> = keys.iter().collect();
    assert_eq!(different.len(), keys.len(), "no two forms of a page can be taken for the same sending");
    let empty = desk.post(&path, &[("text", "  ")]).await;
    assert_eq!(empty.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(empty.attributes(".summary a", "href"), ["#text"]);
}

#[tokio::test]
async fn a_comeback_leads_to_the_earlier_job_and_back() {
    let shop = Shop::staffed().await;
    let earlier = take_in(&shop).await;
    let later = comes_back(&shop, earlier).await;
    let desk = shop.client(Role::Desk).await;
    let page = desk.get(&format!("/tickets/{later}")).await;
    page.assert_says(&format!("Comeback. This unit comes back from job {earlier}."));
    assert_eq!(page.attributes(".job-links a", "href"), [format!("/tickets/{earlier}")]);
    let page = desk.get(&format!("/tickets/{earlier}")).await;
    assert_eq!(page.attributes(".job-links a", "href"), [format!("/tickets/{later}")]);
}

#[tokio::test]
async fn history_tells_everything_and_two_versions_stand_side_by_side() {
    let shop = Shop::staffed().await;
    let ticket = stopped(&shop).await;
    write(&shop, Role::Desk, ticket, &[("threads.mount_bolt", json!("metric"))]).await;
    let desk = shop.client(Role::Desk).await;
    let history = desk.get(&format!("/tickets/{ticket}/history")).await;
    assert_eq!(history.texts(".entry-what"), ["Version 3: 1 change", "Version 2: 2 changes", "Taken in"]);
    history.assert_says("Bench tablet");
    let compared = desk.get(&format!("/tickets/{ticket}/compare?from=2&to=3")).await;
    assert_eq!(compared.texts(".changes tbody th"), ["Thread of the mount bolt"]);
    let cells = compared.texts(".changes tbody td");
    assert!(cells[0].starts_with("InchLooked, Terry Tech,"), "{cells:?}");
    assert!(cells[1].starts_with("MetricLooked, Dale Desk,"), "{cells:?}");
    let gone = compared.texts(".compare-findings section:first-child li");
    assert!(gone.iter().any(|found| found.contains("THR-02") && found.ends_with("only in this version")), "{gone:?}");
}
