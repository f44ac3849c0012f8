//! A shop with its people, and browsers that ask it for pages.

use crate::support::{TestDatabase, database};
use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Method, Request, StatusCode, header};
use endplay::service::{self, AddStaff, FirstStart, Key, Service, SetUp};
use endplay::ticket::Role;
use endplay::web::{self, AppState};
use jiff::{SignedDuration, Timestamp};
use scraper::{Html, Selector};
use std::sync::atomic::{AtomicI64, Ordering};
use std::sync::{Arc, OnceLock};
use tower::ServiceExt;
use uuid::Uuid;

pub const PASSWORD: &str = "plum kettle window yard";
pub const HOST: &str = "shop.example";

/// A shop that is set up, with an owner, a desk and a technician.
pub struct Shop {
    pub database: TestDatabase,
    pub service: Service,
    pub app: Router,
    later: Arc<AtomicI64>,
    /// The moment at which the shop's clock stands still; it runs while there is none.
    still: Arc<OnceLock<Timestamp>>,
}

/// Somebody's browser.
#[derive(Clone)]
pub struct Client {
    app: Router,
    pub cookie: Option<String>,
}

/// What came back.
pub struct Page {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub text: String,
}

impl Shop {
    /// Opens a shop on a database of its own.
    pub async fn open() -> Self {
        let database = database().await;
        let later = Arc::new(AtomicI64::new(0));
        let ahead = Arc::clone(&later);
        let still = Arc::new(OnceLock::new());
        let stands = Arc::clone(&still);
        let clock = move || {
            let now = stands.get().copied().unwrap_or_else(Timestamp::now);
            now + SignedDuration::from_secs(ahead.load(Ordering::Relaxed))
        };
        let service = Service::new(database.service_pool.clone(), service::judge).with_clock(clock);
        let state = AppState::new(service.clone(), "https://shop.example");
        Self { database, app: web::router(state, Router::new()), service, later, still }
    }

    /// The same with an owner, a desk and a technician, who all have the same password.
    pub async fn staffed() -> Self {
        let shop = Self::open().await;
        let FirstStart::SetUpWith(pass) = shop.service.first_start().await.expect("the database answers") else {
            panic!("a new database holds no shop yet")
        };
        let set_up = SetUp {
            shop: "Ferndale Gearbox".into(),
            phone: "555 0100".into(),
            zone: "America/Denver".into(),
            name: "Olive Owner".into(),
            password: PASSWORD.into(),
        };
        shop.service.set_up(&pass.to_string(), Key::fresh(), set_up, "test").await.expect("the shop is set up");
        let id = pass.shop();
        let owner = shop.service.sign_in(id, "Olive Owner", PASSWORD, "test").await.expect("the owner signs in").caller;
        for (name, role) in [("Dale Desk", Role::Desk), ("Terry Tech", Role::Technician)] {
            let add = AddStaff { name: name.into(), role, password: PASSWORD.into() };
            shop.service.add_staff(&owner, Key::fresh(), add).await.expect("staff is added");
        }
        shop
    }

    /// Lets time pass.
    pub fn wait(&self, time: SignedDuration) {
        self.later.fetch_add(time.as_secs(), Ordering::Relaxed);
    }

    /// Somebody who is not signed in.
    pub fn nobody(&self) -> Client {
        Client { app: self.app.clone(), cookie: None }
    }

    /// Somebody of this role, signed in.
    pub async fn client(&self, role: Role) -> Client {
        let name = match role {
            Role::Owner => "Olive Owner",
            Role::Desk => "Dale Desk",
            Role::Technician => "Terry Tech",
        };
        let mut client = self.nobody();
        client.sign_in(name, PASSWORD).await;
        assert!(client.cookie.is_some(), "{name} is signed in");
        client
    }

    /// Stops the shop's clock, however long the test takes from here.
    pub fn stop_the_clock(&self) {
        self.still.get_or_init(Timestamp::now);
    }

    /// A digest of everything in the database.
    pub async fn fingerprint(&self) -> String {
        let tables: Vec<String> = sqlx::query_scalar(
            "SELECT table_name::text FROM information_schema.tables
             WHERE table_schema = 'public' AND table_type = 'BASE TABLE' AND table_name NOT LIKE '\\_sqlx%' ORDER BY 1",
        )
        .fetch_all(&self.database.owner_pool)
        .await
        .expect("the database answers");
        let mut all = String::new();
        for table in tables {
            let digest = format!("SELECT coalesce(md5(string_agg(t::text, '|' ORDER BY t::text)), '') FROM {table} t");
            let digest: String = sqlx::query_scalar(sqlx::AssertSqlSafe(digest))
                .fetch_one(&self.database.owner_pool)
                .await
                .expect("the database answers");
            all.push_str(&format!("{table} {digest}\n"));
        }
        all
    }
}

impl Client {
    /// Sends any request, with this browser's cookie and nothing added.
    pub async fn raw(&self, mut request: Request<Body>) -> Page {
        if let Some(cookie) = &self.cookie {
            request.headers_mut().insert(header::COOKIE, cookie.parse().expect("a header"));
        }
        let response = self.app.clone().oneshot(request).await.expect("the router always answers");
        let (parts, body) = response.into_parts();
        let body = to_bytes(body, 8 << 20).await.expect("the body ends");
        let text = String::from_utf8(body.to_vec()).expect("pages are text");
        Page { status: parts.status, headers: parts.headers, text }
    }

    /// Opens a page.
    pub async fn get(&self, path: &str) -> Page {
        let request = Request::get(path).header(header::HOST, HOST).body(Body::empty()).expect("a request");
        self.raw(request).await
    }

    /// Opens a page and whatever it leads on to.
    pub async fn follow(&self, page: Page) -> Page {
        let mut page = page;
        for _ in 0..5 {
            let Some(to) = page.location() else { return page };
            page = self.get(&to).await;
        }
        panic!("the pages send one round in a circle")
    }

    /// Sends a form as a browser does, with a number of its own.
    pub async fn post(&self, path: &str, fields: &[(&str, &str)]) -> Page {
        self.post_once(path, Uuid::now_v7(), fields).await
    }

    /// The same with this number.
    pub async fn post_once(&self, path: &str, once: Uuid, fields: &[(&str, &str)]) -> Page {
        let mut body = form_urlencoded::Serializer::new(String::new());
        body.append_pair("once", &once.to_string());
        body.extend_pairs(fields);
        self.raw(form(Method::POST, path, body.finish())).await
    }

    /// Signs in and keeps the cookie.
    pub async fn sign_in(&mut self, name: &str, password: &str) -> Page {
        let page = self.post("/sign-in", &[("name", name), ("password", password), ("next", "")]).await;
        if let Some(line) = page.headers.get(header::SET_COOKIE) {
            let line = line.to_str().expect("text");
            self.cookie = line.split(';').next().map(str::to_owned);
        }
        page
    }
}

/// A form's request as a browser sends it from one of our own pages.
pub fn form(method: Method, path: &str, body: String) -> Request<Body> {
    Request::builder()
        .method(method)
        .uri(path)
        .header(header::HOST, HOST)
        .header("sec-fetch-site", "same-origin")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(Body::from(body))
        .expect("a request")
}

impl Page {
    /// Where it leads on to.
    pub fn location(&self) -> Option<String> {
        self.headers.get(header::LOCATION).map(|to| to.to_str().expect("text").to_owned())
    }

    /// The texts of the elements a CSS selector finds, blanks folded.
    pub fn texts(&self, selector: &str) -> Vec<String> {
        let selector = Selector::parse(selector).expect("a selector");
        let folded = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
        Html::parse_document(&self.text).select(&selector).map(|found| folded(found.text().collect())).collect()
    }

    /// An attribute of each element a CSS selector finds.
    pub fn attributes(&self, selector: &str, name: &str) -> Vec<String> {
        let selector = Selector::parse(selector).expect("a selector");
        let document = Html::parse_document(&self.text);
        document.select(&selector).filter_map(|found| found.attr(name).map(str::to_owned)).collect()
    }

    /// The value that stands in a field.
    pub fn value(&self, name: &str) -> String {
        let value = self.attributes(&format!("input[name='{name}']"), "value");
        value.into_iter().next().unwrap_or_else(|| self.texts(&format!("[name='{name}']")).join(""))
    }

    #[track_caller]
    pub fn assert_says(&self, words: &str) {
        let seen = self.texts("body").join(" ");
        assert!(seen.contains(words), "the page does not say {words:?}; it says: {seen}");
    }
}
