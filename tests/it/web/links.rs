//! Links the desk makes for the customer: shown once, listed, taken back.

use super::client::Shop;
use super::jobs::{sign, take_in};
use axum::http::StatusCode;
use endplay::ticket::{Purpose, Role};
use uuid::Uuid;

#[tokio::test]
async fn a_link_is_shown_once_opens_for_the_customer_and_can_be_taken_back() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let (path, once) = (format!("/tickets/{ticket}/links"), Uuid::now_v7());
    let made = desk.post_once(&path, once, &[("purpose", "intake")]).await;
    assert_eq!(made.status, StatusCode::OK);
    let address = made.texts("#address").remove(0);
    let pass = address.strip_prefix("https://shop.example").expect("made from the settings").to_owned();
    assert!(made.attributes(".link-code img", "src")[0].starts_with("data:image/svg+xml;base64,"));
    assert_eq!(shop.nobody().get(&pass).await.status, StatusCode::OK);

    let again = desk.post_once(&path, once, &[("purpose", "intake")]).await;
    again.assert_says("cannot be shown again");
    assert!(!again.text.contains(&pass), "the secret is kept nowhere");

    let ticket_page = desk.get(&format!("/tickets/{ticket}")).await;
    ticket_page.assert_says("Open: the customer can read and answer.");
    assert!(!ticket_page.text.contains(&pass));
    let revoke = ticket_page.attributes(".links form", "action").remove(0);
    desk.follow(desk.post(&revoke, &[]).await).await.assert_says("Taken back.");
    assert_eq!(shop.nobody().get(&pass).await.status, StatusCode::GONE);
}

#[tokio::test]
async fn what_the_customer_signed_is_on_record_with_its_receipt() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    sign(&shop, ticket, Purpose::Intake).await;
    let page = shop.client(Role::Desk).await.get(&format!("/tickets/{ticket}")).await;
    page.assert_says("Teardown authorisation: Signed, and it holds for what stands now.");
    page.assert_says("Teardown authorisation, version 1: signed");
    page.assert_says("Holds.");
    page.assert_says("Used: signed, receipt ");
    assert_eq!(page.texts(".digest")[0].len(), 64);
}

#[tokio::test]
async fn a_technician_neither_makes_nor_sees_links() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    shop.client(Role::Desk).await.post(&format!("/tickets/{ticket}/links"), &[("purpose", "build")]).await;
    let bench = shop.client(Role::Technician).await;
    let page = bench.get(&format!("/tickets/{ticket}")).await;
    assert!(page.texts(".links, .approval-do form, .approval-do a").is_empty());
    let made = bench.post(&format!("/tickets/{ticket}/links"), &[("purpose", "build")]).await;
    assert_eq!(made.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn a_link_for_nothing_we_know_is_asked_again() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let wrong = desk.post(&format!("/tickets/{ticket}/links"), &[("purpose", "everything")]).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    wrong.assert_says("Choose what the customer is to sign");
    let nobody = desk.post(&format!("/tickets/{ticket}/links/{}/revoke", Uuid::now_v7()), &[]).await;
    assert_eq!(nobody.status, StatusCode::NOT_FOUND);
}
