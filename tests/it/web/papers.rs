//! What is printed: the tag, the intake receipt, the receipt of an answer.

use super::client::Shop;
use super::jobs::{caller, sign, take_in, write};
use axum::http::StatusCode;
use endplay::service::{ChangeTicket, Key, MakeLink, Who};
use endplay::ticket::{Edit, Purpose, Role};
use serde_json::json;

#[tokio::test]
async fn the_tag_shows_the_number_and_the_way_for_staff_and_no_secret() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = caller(&shop, Role::Desk).await;
    let make = MakeLink { ticket, purpose: Purpose::Intake, days: None };
    let secret = shop.service.make_link(&desk, Key::fresh(), make).await.expect("made").pass.expect("shown once");
    let page = shop.client(Role::Technician).await.get(&format!("/tickets/{ticket}/tag")).await;
    assert_eq!(page.status, StatusCode::OK);
    assert_eq!(page.texts("h1"), [ticket.to_string()]);
    page.assert_says(&format!("https://shop.example/tickets/{ticket}"));
    page.assert_says("Blue two-door coupe (QX 4417)");
    assert_eq!(page.attributes("svg.qr", "role"), ["img"]);
    assert!(!page.text.contains("/c/") && !page.text.contains(&secret.to_string()), "the tag hangs in the open");
    assert_eq!(
        shop.nobody().get(&format!("/tickets/{ticket}")).await.status,
        StatusCode::SEE_OTHER,
        "it asks who you are"
    );
}

#[tokio::test]
async fn the_intake_receipt_lists_what_came_and_has_room_for_both_signatures() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let edit = Edit { brought: Some("Converter\nDriveshaft yoke".into()), ..Edit::default() };
    let desk = caller(&shop, Role::Desk).await;
    let change = ChangeTicket { ticket, made_from: 1, edit };
    shop.service.write(Who::Staff(desk), Key::fresh(), change).await.expect("written down");
    write(&shop, Role::Desk, ticket, &[("case.crack", json!("suspected"))]).await;
    let tech = shop.client(Role::Technician).await;
    let path = format!("/tickets/{ticket}/receipt");
    let page = tech.get(&path).await;
    for words in
        ["Ferndale Gearbox", "Rosa Fielding", "Driveshaft yoke", "The case may be cracked", "may not go back together"]
    {
        page.assert_says(words);
    }
    assert_eq!(page.texts(".signature-line").len(), 2);
    sign(&shop, ticket, Purpose::Intake).await;
    tech.get(&path).await.assert_says("Signed by Rosa Fielding on");
}

#[tokio::test]
async fn a_receipt_is_found_however_its_number_is_typed_and_shows_its_proof() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    sign(&shop, ticket, Purpose::Intake).await;
    let desk = caller(&shop, Role::Desk).await;
    let receipt = shop.service.ticket(&desk, ticket).await.expect("the ticket").receipts.remove(0);
    let client = shop.client(Role::Desk).await;
    let typed = receipt.reference.to_lowercase().replace('-', "");
    let page = client.get(&format!("/receipts/{typed}")).await;
    page.assert_says(&receipt.reference);
    page.assert_says(&receipt.digest);
    page.assert_says("What you accepted");
    assert_eq!(shop.nobody().get(&format!("/receipts/{typed}")).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn the_shops_own_words_stand_on_the_paper_they_were_written_for() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let lines_to_write_on = desk.get(&format!("/tickets/{ticket}/receipt")).await.texts(".lines").len();
    assert_eq!(lines_to_write_on, 1, "without words there is room to write some by hand");

    let owner = shop.client(Role::Owner).await;
    let fields = [
        ("shop", "Ferndale Gearbox"),
        ("phone", "555 0100"),
        ("zone", "America/Denver"),
        ("teardown_terms", "The teardown costs 180.00.\nUnits wait 60 days."),
        ("not_covered", "We do not answer for racing."),
    ];
    assert_eq!(owner.follow(owner.post("/shop", &fields).await).await.value("not_covered"), fields[4].1);

    let receipt = desk.get(&format!("/tickets/{ticket}/receipt")).await;
    receipt.assert_says("Our terms for the teardown The teardown costs 180.00. Units wait 60 days.");
    assert!(receipt.texts(".lines").is_empty());
    let intake = desk.get(&format!("/tickets/{ticket}/sign/intake")).await;
    intake.assert_says("Units wait 60 days.");
    assert!(!intake.text.contains("racing"));
    let build = desk.get(&format!("/tickets/{ticket}/sign/build")).await;
    build.assert_says("What is not covered We do not answer for racing.");
    assert!(!build.text.contains("60 days"));
}
