//! What every answer carries and what no request gets past.

use super::client::Shop;
use super::client::{HOST, form};
use axum::body::Body;
use axum::http::{Method, Request, StatusCode, header};
use endplay::ticket::Role;
use endplay::web::table;

const HEADERS: [(&str, &str); 8] = [
    (
        "content-security-policy",
        "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data:; font-src 'self'; \
         connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    ),
    ("x-content-type-options", "nosniff"),
    ("referrer-policy", "no-referrer"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("permissions-policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()"),
    ("strict-transport-security", "max-age=63072000"),
    ("x-robots-tag", "noindex, nofollow, noarchive"),
];

/// An address of the table with something in its variable parts.
pub fn filled(path: &str) -> String {
    let parts = path.split('/').map(|part| match part {
        "{number}" | "{nth}" => "1",
        "{sheet}" => "spec",
        "{purpose}" => "build",
        "{name}" => "none.css",
        "{pass}" => "no-such-pass",
        "{id}" => "01890000-0000-7000-8000-000000000000",
        part if part.starts_with('{') => "none",
        part => part,
    });
    parts.collect::<Vec<_>>().join("/")
}

#[tokio::test]
async fn every_answer_carries_the_guarding_headers_errors_too() {
    let shop = Shop::staffed().await;
    let (owner, nobody) = (shop.client(Role::Owner).await, shop.nobody());
    let mut answers = Vec::new();
    for route in table() {
        let path = filled(route.path);
        for client in [&owner, &nobody] {
            let page = match route.method {
                Method::GET => client.get(&path).await,
                _ => client.post(&path, &[]).await,
            };
            assert!(!page.status.is_server_error(), "{} {path}: {}", route.method, page.status);
            answers.push((format!("{} {path}", route.method), page));
        }
    }
    // One of the addresses was the way out.
    let owner = shop.client(Role::Owner).await;
    answers.push(("unknown page".into(), owner.get("/no/such/page").await));
    answers.push(("wrong method".into(), owner.raw(form(Method::DELETE, "/shop", String::new())).await));
    answers.push(("too large".into(), owner.post("/shop", &[("shop", &"x".repeat(300_000))]).await));
    answers.push(("from elsewhere".into(), owner.raw(from_elsewhere("cross-site")).await));
    for (what, page) in &answers {
        for (name, value) in HEADERS {
            let found = page.headers.get(name).and_then(|found| found.to_str().ok());
            assert_eq!(found, Some(value), "{what}: {name}");
        }
        assert!(!page.headers.contains_key(header::SERVER), "{what} names its server");
        assert!(page.headers.contains_key(header::CACHE_CONTROL), "{what} may be kept");
    }
    let statuses: Vec<_> = answers[answers.len() - 4..].iter().map(|(_, page)| page.status.as_u16()).collect();
    assert_eq!(statuses, [404, 405, 413, 403]);
}

#[tokio::test]
async fn only_the_files_of_the_program_may_be_kept() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let board = owner.get("/").await;
    assert_eq!(board.headers["cache-control"], "no-store");
    let style = board.attributes("link[rel=stylesheet]", "href").remove(0);
    let sheet = owner.get(&style).await;
    assert_eq!(sheet.status, StatusCode::OK);
    assert_eq!(sheet.headers["cache-control"], "public, max-age=31536000, immutable");
    assert_eq!(sheet.headers["content-type"], "text/css; charset=utf-8");
    assert_eq!(owner.get("/static/endplay-000000000000.css").await.status, StatusCode::NOT_FOUND);
    assert_eq!(owner.get("/static/..%2f..%2fCargo.toml").await.status, StatusCode::NOT_FOUND);
}

fn from_elsewhere(site: &str) -> Request<Body> {
    let mut request = form(Method::POST, "/sign-out", String::new());
    request.headers_mut().insert("sec-fetch-site", site.parse().expect("a header"));
    request
}

#[tokio::test]
async fn a_change_is_taken_only_from_our_own_pages() {
    let shop = Shop::staffed().await;
    let own = "https://shop.example";
    // What the browser says of the page's site, which page it names, is it believed?
    let rows = [
        (Some("same-origin"), None, true),
        (Some("same-origin"), Some(own), true),
        (None, Some(own), true),
        (Some("cross-site"), None, false),
        (Some("cross-site"), Some(own), false),
        (Some("same-site"), Some(own), false),
        (Some("none"), None, false),
        (Some("SAME-ORIGIN"), None, false),
        (None, Some("https://evil.example"), false),
        (None, Some("http://shop.example"), false),
        (None, Some("https://shop.example:444"), false),
        (None, Some("https://shop.example.evil.example"), false),
        (None, Some("null"), false),
        (None, None, false),
    ];
    for (fetched, origin, believed) in rows {
        let client = shop.client(Role::Desk).await;
        let mut request = form(Method::POST, "/sign-out", String::new());
        request.headers_mut().remove("sec-fetch-site");
        if let Some(site) = fetched {
            request.headers_mut().insert("sec-fetch-site", site.parse().expect("a header"));
        }
        if let Some(origin) = origin {
            request.headers_mut().insert(header::ORIGIN, origin.parse().expect("a header"));
        }
        let status = client.raw(request).await.status;
        let still_in = client.get("/me/password").await.status == StatusCode::OK;
        let expected = if believed { StatusCode::SEE_OTHER } else { StatusCode::FORBIDDEN };
        assert_eq!((status, still_in), (expected, !believed), "site {fetched:?}, origin {origin:?}");
    }
}

#[tokio::test]
async fn looking_from_another_page_is_no_change_and_stays_allowed() {
    let shop = Shop::staffed().await;
    let client = shop.client(Role::Desk).await;
    let request = Request::get("/me/password").header(header::HOST, HOST).header("sec-fetch-site", "cross-site");
    assert_eq!(client.raw(request.body(Body::empty()).expect("a request")).await.status, StatusCode::OK);
}

#[tokio::test]
async fn a_foreign_name_for_this_machine_is_not_answered() {
    let shop = Shop::staffed().await;
    let client = shop.client(Role::Owner).await;
    for (host, answered) in [
        ("shop.example", true),
        ("localhost:8080", true),
        ("192.168.7.20:8080", true),
        ("evil.example", false),
        ("shop.example.evil.example", false),
    ] {
        let request = Request::get("/me/password").header(header::HOST, host).body(Body::empty()).expect("a request");
        let status = client.raw(request).await.status;
        let expected = if answered { StatusCode::OK } else { StatusCode::MISDIRECTED_REQUEST };
        assert_eq!(status, expected, "{host}");
    }
    let nameless = Request::get("/me/password").body(Body::empty()).expect("a request");
    assert_eq!(client.raw(nameless).await.status, StatusCode::MISDIRECTED_REQUEST);
}

#[tokio::test]
async fn a_form_that_is_no_plain_form_is_refused_in_words() {
    let shop = Shop::staffed().await;
    let client = shop.client(Role::Owner).await;
    let mut request = form(Method::POST, "/shop", "{\"shop\": \"x\"}".into());
    request.headers_mut().insert(header::CONTENT_TYPE, "application/json".parse().expect("a header"));
    let page = client.raw(request).await;
    assert_eq!(page.status, StatusCode::BAD_REQUEST);
    page.assert_says("it was not a plain form");
    let page = client.raw(form(Method::POST, "/shop", "shop=x&phone=1&zone=UTC".into())).await;
    assert_eq!(page.status, StatusCode::BAD_REQUEST, "a form without its own number");
    page.assert_says("Reference:");
}

#[tokio::test]
async fn a_failure_says_what_happened_to_the_answers_and_what_to_do() {
    let shop = Shop::staffed().await;
    let page = shop.client(Role::Owner).await.get("/no/such/page").await;
    assert_eq!(page.texts("h2"), ["Your answers", "What to do now"]);
    let reference = page.texts(".number").remove(0);
    assert!(reference.len() == 8 && reference.bytes().all(|byte| byte.is_ascii_alphanumeric()), "{reference}");
}
