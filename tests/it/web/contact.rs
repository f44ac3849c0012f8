//! Correcting whose unit it is.

use super::client::Shop;
use super::jobs::take_in;
use axum::http::StatusCode;
use endplay::ticket::Role;

#[tokio::test]
async fn a_mistyped_number_is_put_right_found_again_and_kept_in_the_history() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{ticket}/contact");
    let form = desk.get(&path).await;
    assert_eq!(form.value("name"), "Rosa Fielding");

    let wrong = [("name", "Rosa Fielding-Marsh"), ("phone", "12"), ("vehicle", ""), ("plate", "QX 4417")];
    let page = desk.post(&path, &wrong).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.value("name"), "Rosa Fielding-Marsh", "what was typed stays");
    desk.get(&format!("/tickets/{ticket}")).await.assert_says("Rosa Fielding");

    let right = [("name", "Rosa Fielding-Marsh"), ("phone", "555-0177"), ("vehicle", "blue coupe"), ("plate", "")];
    desk.follow(desk.post(&path, &right).await).await.assert_says("the customer and the vehicle.");
    desk.get("/?q=0177").await.assert_says("Rosa Fielding-Marsh");
    desk.get(&format!("/tickets/{ticket}/history")).await.assert_says("555-0177");
}
