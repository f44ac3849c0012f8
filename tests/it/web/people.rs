//! The owner's pages, and everybody's own password.

use super::client::PASSWORD;
use super::client::Shop;
use axum::http::StatusCode;
use endplay::ticket::Role;
use uuid::Uuid;

#[tokio::test]
async fn somebody_added_can_sign_in_and_somebody_switched_off_is_out_at_once() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let added = [("name", "Robin Bench"), ("role", "technician"), ("password", "copper lantern mile oats")];
    let page = owner.follow(owner.post("/staff", &added).await).await;
    page.assert_says("Robin Bench can sign in now.");

    let mut robin = shop.nobody();
    robin.sign_in("Robin Bench", "copper lantern mile oats").await;
    assert_eq!(robin.get("/").await.status, StatusCode::OK);

    let off = page.attributes("tr form", "action");
    let names = page.texts("tr:has(form) th");
    let place = names.iter().position(|name| name == "Robin Bench").expect("Robin stands in the list");
    assert_eq!(owner.post(&off[place], &[]).await.status, StatusCode::SEE_OTHER);
    assert!(robin.get("/").await.location().is_some(), "the session is dead");
    assert_eq!(robin.sign_in("Robin Bench", "copper lantern mile oats").await.status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn adding_somebody_says_everything_that_is_wrong_and_adds_nobody() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let before = owner.get("/staff").await.texts("tbody tr").len();
    let page = owner.post("/staff", &[("name", ""), ("role", "king"), ("password", "")]).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.attributes("#summary a", "href"), ["#name", "#role", "#password"]);
    let taken = [("name", "dale desk"), ("role", "desk"), ("password", "copper lantern mile oats")];
    let page = owner.post("/staff", &taken).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#name"]);
    assert_eq!(page.value("name"), "dale desk");
    let weak = [("name", "Robin Bench"), ("role", "desk"), ("password", "Ferndale Gearbox")];
    let page = owner.post("/staff", &weak).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#password"], "the shop's name is no password");
    assert_eq!(page.attributes("input[name=role][checked]", "value"), ["desk"]);
    assert_eq!(owner.get("/staff").await.texts("tbody tr").len(), before);
}

#[tokio::test]
async fn the_owner_cannot_lock_themselves_out() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let page = owner.get("/staff").await;
    assert!(!page.texts("tr:has(form) th").contains(&"Olive Owner".to_owned()));
    let id: Uuid = sqlx::query_scalar("SELECT id FROM staff WHERE name = 'Olive Owner'")
        .fetch_one(&shop.database.owner_pool)
        .await
        .expect("the owner is there");
    let page = owner.post(&format!("/staff/{id}/off"), &[]).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(owner.get("/staff").await.status, StatusCode::OK);
}

#[tokio::test]
async fn the_same_form_sent_twice_adds_one_person() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let once = Uuid::now_v7();
    let added = [("name", "Robin Bench"), ("role", "technician"), ("password", "copper lantern mile oats")];
    for _ in 0..2 {
        assert_eq!(owner.post_once("/staff", once, &added).await.status, StatusCode::SEE_OTHER);
    }
    let rows = owner.get("/staff").await.texts("tbody th");
    assert_eq!(rows.iter().filter(|name| *name == "Robin Bench").count(), 1);
}

#[tokio::test]
async fn the_shops_name_changes_everywhere_at_once() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let wrong = [("shop", "Hollow Creek Gearbox"), ("phone", "555 0111"), ("zone", "Middle Earth")];
    let page = owner.post("/shop", &wrong).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.attributes("#summary a", "href"), ["#zone"]);
    assert_eq!(page.value("shop"), "Hollow Creek Gearbox");
    let right = [("shop", "Hollow Creek Gearbox"), ("phone", "555 0111"), ("zone", "America/Chicago")];
    owner.follow(owner.post("/shop", &right).await).await.assert_says("Saved.");
    shop.nobody().get("/sign-in").await.assert_says("Hollow Creek Gearbox");
}

#[tokio::test]
async fn a_new_password_ends_the_sessions_elsewhere_and_keeps_this_one() {
    let shop = Shop::staffed().await;
    let (here, elsewhere) = (shop.client(Role::Desk).await, shop.client(Role::Desk).await);
    let page =
        here.post("/me/password", &[("present", "wrong one entirely"), ("new", "copper lantern mile oats")]).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#present"]);
    let page = here.post("/me/password", &[("present", PASSWORD), ("new", "123456789012345")]).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#new"]);
    let page = here.post("/me/password", &[("present", PASSWORD), ("new", "copper lantern mile oats")]).await;
    page.assert_says("Your password is changed.");
    assert_eq!(here.get("/").await.status, StatusCode::OK);
    assert!(elsewhere.get("/").await.location().is_some());
}

#[tokio::test]
async fn names_are_shown_as_text_whatever_they_hold() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    for payload in PAYLOADS {
        let fields = [("shop", *payload), ("phone", *payload), ("zone", *payload)];
        let page = owner.post("/shop", &fields).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{payload}");
        assert_eq!(page.value("shop"), *payload, "what was typed comes back letter by letter");
        assert!(page.attributes("main script, main img, main svg[onload], main iframe", "src").is_empty(), "{payload}");
        assert_eq!(page.texts("main script, main img, main iframe, main object").len(), 0, "{payload}");
    }
}

const PAYLOADS: &[&str] = &[
    "<script>alert(1)</script>",
    "\"><script>alert(1)</script>",
    "'\"><img src=x onerror=alert(1)>",
    "</title><script>alert(1)</script>",
    "</textarea><iframe src=javascript:alert(1)>",
    "javascript:alert(1)",
    "{{7*7}}",
    "<svg onload=alert(1)>",
    "&lt;script&gt;",
    "' OR 1=1 --",
];
