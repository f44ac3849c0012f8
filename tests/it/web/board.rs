//! The board: what is where, what waits for whom, what is late, and how a job is found.

use super::client::{Client, Page, Shop};
use super::intake::{ROSA, taken_in};
use axum::http::StatusCode;
use endplay::ticket::Role;
use jiff::{Timestamp, ToSpan};

async fn two_jobs(desk: &Client) -> (i64, i64) {
    let first = taken_in(desk, ROSA).await;
    let second = taken_in(
        desk,
        &[
            ("name", "Ola Berg"),
            ("phone", "555 010 9981"),
            ("vehicle", "Unit on a pallet"),
            ("wants", "Straight back to the strip"),
        ],
    )
    .await;
    (first, second)
}

fn numbers(page: &Page) -> Vec<String> {
    page.texts(".card-number")
}

#[tokio::test]
async fn a_new_shop_is_told_where_to_begin() {
    let shop = Shop::staffed().await;
    let page = shop.client(Role::Desk).await.get("/").await;
    assert_eq!(page.status, StatusCode::OK);
    page.assert_says("No open job yet. Take the first unit in");
    assert_eq!(page.attributes("main a.button-stage", "href"), ["/intake"]);
}

#[tokio::test]
async fn a_job_shows_whose_it_is_who_holds_it_and_what_is_missing() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let (first, _) = two_jobs(&desk).await;
    let page = desk.get("/").await;
    page.assert_says("Rosa Lee");
    page.assert_says("Blue pickup · AB-12");
    page.assert_says("Waits for: Us");
    page.assert_says("Nothing signed yet");
    assert!(page.attributes(".card a", "href").contains(&format!("/tickets/{first}")));
    assert_eq!(page.texts(".lane h2"), ["Intake 2"]);
    assert!(page.texts(".card-marks").iter().all(|marks| marks.contains("Not decided")), "unknown is said, not hidden");
}

#[tokio::test]
async fn a_job_is_found_by_number_name_last_digits_and_plate() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let (first, second) = two_jobs(&desk).await;
    for (sought, found) in [
        (first.to_string(), vec![first]),
        ("lee".to_owned(), vec![first]),
        ("4477".to_owned(), vec![first]),
        ("ab-12".to_owned(), vec![first]),
        ("ola+be".to_owned(), vec![second]),
        ("nobody".to_owned(), vec![]),
    ] {
        let page = desk.get(&format!("/?q={sought}")).await;
        assert_eq!(numbers(&page), found.iter().map(ToString::to_string).collect::<Vec<_>>(), "{sought}");
    }
    desk.get("/?q=nobody").await.assert_says("Nothing found for “nobody”");
}

#[tokio::test]
async fn a_broken_promise_is_said_in_words_and_can_be_looked_at_alone() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    two_jobs(&desk).await;
    let here = Timestamp::now().in_tz("America/Denver").expect("a zone").date();
    let yesterday = here.checked_sub(1.day()).expect("a day").to_string();
    let late = taken_in(&desk, &[ROSA, &[("promised", yesterday.as_str())]].concat()).await;
    let page = desk.get("/?only=late").await;
    assert_eq!(numbers(&page), [late.to_string()]);
    page.assert_says("1 day overdue");
    assert_eq!(desk.get("/?only=what").await.texts(".card").len(), 3, "a filter nobody knows hides no job");
}

#[tokio::test]
async fn one_tap_moves_a_job_on_and_two_taps_count_as_one() {
    let shop = Shop::staffed().await;
    let tech = shop.client(Role::Technician).await;
    let (first, _) = two_jobs(&shop.client(Role::Desk).await).await;
    let page = tech.get("/").await;
    let form = format!("form[action='/tickets/{first}/stage']");
    let field = |name: &str| page.attributes(&format!("{form} input[name={name}]"), "value").remove(0);
    let (once, from, to) = (field("once"), field("from"), field("to"));
    assert_eq!((from.as_str(), to.as_str()), ("intake", "spec"));
    for _ in 0..2 {
        let moved = tech
            .post_once(
                &format!("/tickets/{first}/stage"),
                once.parse().expect("a key"),
                &[("from", &from), ("to", &to)],
            )
            .await;
        assert_eq!(moved.status, StatusCode::SEE_OTHER, "{}", moved.text);
    }
    assert_eq!(tech.get("/").await.texts(".lane h2"), ["Intake 1", "Spec 1"]);
}

#[tokio::test]
async fn what_people_type_stays_text() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    taken_in(&desk, &[("name", "<script>x</script>"), ("phone", "5550101"), ("vehicle", "\"><b>"), ("wants", "Quiet")])
        .await;
    for path in ["/", "/?q=%3Cscript%3E"] {
        let page = desk.get(path).await;
        assert!(!page.text.contains("<script>x"), "{path}");
        assert_eq!(page.texts("main b").len(), 0, "{path}");
    }
}
