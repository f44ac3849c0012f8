//! Setting the shop up, signing in, signing out.

use super::client::PASSWORD;
use super::client::Shop;
use axum::http::{StatusCode, header};
use endplay::service::FirstStart;
use endplay::ticket::Role;
use jiff::SignedDuration;

const SET_UP: [(&str, &str); 5] = [
    ("shop", "Ferndale Gearbox"),
    ("phone", "555 0100"),
    ("zone", "America/Denver"),
    ("name", "Olive Owner"),
    ("password", PASSWORD),
];

async fn setup_address(shop: &Shop) -> String {
    match shop.service.first_start().await.expect("the database answers") {
        FirstStart::SetUpWith(pass) => format!("/setup/{pass}"),
        FirstStart::Ready(_) => panic!("the shop is set up already"),
    }
}

#[tokio::test]
async fn the_first_link_sets_the_shop_up_once() {
    let shop = Shop::open().await;
    let address = setup_address(&shop).await;
    let mut owner = shop.nobody();
    assert_eq!(owner.get(&address).await.status, StatusCode::OK);
    let page = owner.post(&address, &SET_UP).await;
    assert_eq!(page.location().as_deref(), Some("/sign-in"));
    assert_eq!(owner.get(&address).await.status, StatusCode::NOT_FOUND, "the link is used up");
    assert_eq!(owner.post(&address, &SET_UP).await.status, StatusCode::NOT_FOUND);
    owner.sign_in("Olive Owner", PASSWORD).await;
    owner.get("/").await.assert_says("Ferndale Gearbox");
}

#[tokio::test]
async fn the_setup_form_keeps_what_was_typed_and_says_all_that_is_wrong() {
    let shop = Shop::open().await;
    let address = setup_address(&shop).await;
    let typed = [("shop", "Ferndale Gearbox"), ("phone", ""), ("zone", "Denver"), ("name", ""), ("password", "short")];
    let page = shop.nobody().post(&address, &typed).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(page.texts("title")[0].starts_with("Check what you entered: "), "{:?}", page.texts("title"));
    assert_eq!(page.value("shop"), "Ferndale Gearbox");
    assert_eq!(page.value("zone"), "Denver");
    assert!(!page.text.contains("short\""), "a password never comes back");
    // What is said on top is said at the field, and leads there.
    let ways = page.attributes("#summary a", "href");
    assert_eq!(ways, ["#phone", "#name"]);
    for (way, sentence) in ways.iter().zip(page.texts("#summary a")) {
        let at_field = page.texts(&format!("{way}-problem")).remove(0);
        assert_eq!(at_field, format!("Check this: {sentence}"));
        assert_eq!(page.attributes(way, "aria-invalid"), ["true"]);
        assert!(page.attributes(way, "aria-describedby")[0].contains(&format!("{}-problem", &way[1..])));
    }
    let then =
        [("shop", "Ferndale Gearbox"), ("phone", "1"), ("zone", "Denver"), ("name", "Olive"), ("password", "short")];
    let page = shop.nobody().post(&address, &then).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#zone", "#password"]);
}

#[tokio::test]
async fn a_wrong_name_and_a_wrong_password_read_the_same() {
    let shop = Shop::staffed().await;
    let mut client = shop.nobody();
    let wrong_password = client.sign_in("Olive Owner", "not the password at all").await;
    let wrong_name = client.sign_in("Nobody Here", PASSWORD).await;
    assert_eq!(wrong_password.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(wrong_password.texts("#summary a"), wrong_name.texts("#summary a"));
    assert_eq!(wrong_name.value("name"), "Nobody Here");
    assert!(client.cookie.is_none());
}

#[tokio::test]
async fn the_cookie_is_out_of_reach_and_new_at_every_sign_in() {
    let shop = Shop::staffed().await;
    let mut client = shop.nobody();
    let page = client.sign_in("dale  DESK", PASSWORD).await;
    let line = page.headers[header::SET_COOKIE].to_str().expect("text").to_owned();
    for part in ["__Host-endplay=", "HttpOnly", "Secure", "SameSite=Lax", "Path=/"] {
        assert!(line.contains(part), "{line} lacks {part}");
    }
    let first = client.cookie.clone();
    client.sign_in("Dale Desk", PASSWORD).await;
    assert_ne!(client.cookie, first);
}

#[tokio::test]
async fn signing_in_leads_to_the_page_that_was_asked_for_and_never_outside() {
    let shop = Shop::staffed().await;
    let nobody = shop.nobody();
    let asked = nobody.get("/staff?added=x").await;
    assert_eq!(asked.location().as_deref(), Some("/sign-in?next=%2Fstaff%3Fadded%3Dx"));
    let page = nobody.follow(asked).await;
    assert_eq!(page.value("next"), "/staff?added=x");
    for (next, leads_to) in
        [("/staff?added=x", "/staff?added=x"), ("//evil.example/", "/"), ("https://evil.example", "/")]
    {
        let fields = [("name", "Olive Owner"), ("password", PASSWORD), ("next", next)];
        assert_eq!(nobody.post("/sign-in", &fields).await.location().as_deref(), Some(leads_to), "{next}");
    }
}

#[tokio::test]
async fn signing_out_ends_the_session_on_the_server() {
    let shop = Shop::staffed().await;
    let client = shop.client(Role::Technician).await;
    let page = client.post("/sign-out", &[]).await;
    assert!(page.headers.contains_key("clear-site-data"));
    // The browser would have dropped its cookie; one that kept it gets no further.
    assert!(client.get("/").await.location().is_some_and(|to| to.starts_with("/sign-in")));
}

#[tokio::test]
async fn a_session_left_alone_ends_and_a_form_sent_then_says_so() {
    let shop = Shop::staffed().await;
    let tech = shop.client(Role::Technician).await;
    let owner = shop.client(Role::Owner).await;
    shop.wait(SignedDuration::from_mins(17));
    let page = tech.post("/me/password", &[("present", "a"), ("new", "b")]).await;
    assert_eq!(page.status, StatusCode::UNAUTHORIZED);
    page.assert_says("What you typed is still in the form");
    assert_eq!(owner.get("/").await.status, StatusCode::OK, "a desk is sat at for longer");
}
