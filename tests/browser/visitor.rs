//! What a person does with a page: opens it, reads, types, taps.

use crate::driver::{Browser, Screen};
use crate::server::Shop;
use endplay::demo::PASSWORD;
use serde_json::{Value, json};
use std::time::Duration;

/// Somebody with a browser, visiting the shop.
pub struct Visitor {
    /// What they look through.
    pub browser: Browser,
    /// Where the shop's pages start.
    pub origin: String,
}

impl Visitor {
    /// Somebody opens a browser.
    pub async fn with(shop: &Shop, screen: Screen, script: bool) -> Self {
        Self { browser: Browser::open(screen, script).await, origin: shop.origin.clone() }
    }

    /// Opens a page.
    pub async fn goto(&self, path: &str) {
        self.browser.client.goto(&format!("{}{path}", self.origin)).await.expect("a page");
    }

    /// Signs in with the password everybody in the invented shop has.
    pub async fn sign_in(&self, name: &str) {
        self.goto("/sign-in").await;
        self.write("name", name).await;
        self.write("password", PASSWORD).await;
        self.press("Sign in").await;
        self.reads("Board").await;
    }

    /// The address of the page without the shop's part.
    pub async fn path(&self) -> String {
        let url = self.browser.client.current_url().await.expect("an address").to_string();
        url.strip_prefix(&self.origin).expect("a page of the shop").to_owned()
    }

    /// Everything that can be read on the page.
    pub async fn text(&self) -> String {
        let text = self.browser.ask("return document.body?.innerText", vec![]).await;
        text.as_str().unwrap_or_default().split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// The page has to say this, at once or when it has come.
    pub async fn reads(&self, words: &str) {
        let said = soon(async || self.text().await.contains(words)).await;
        assert!(said, "{} does not say {words:?}; it says: {}", self.path().await, self.text().await);
    }

    /// The page must not say this.
    pub async fn does_not_read(&self, words: &str) {
        let text = self.text().await;
        assert!(!text.contains(words), "the page says {words:?}: {text}");
    }

    /// Folds everything open, as somebody does who wants to see it all.
    pub async fn unfold(&self) {
        let open = "document.querySelectorAll('main details').forEach((folded) => (folded.open = true))";
        self.browser.ask(open, vec![]).await;
    }

    /// Types into a field, instead of what stood there.
    pub async fn write(&self, name: &str, text: &str) {
        let ready = async || self.browser.ask(include_str!("script/field.js"), vec![json!(name)]).await == true;
        assert!(soon(ready).await, "no field {name} on {}", self.path().await);
        self.browser.chromium("Input.insertText", json!({"text": text})).await;
    }

    /// Chooses an answer: taps a choice, or takes it from a menu.
    pub async fn choose(&self, name: &str, value: &str) {
        let arguments = vec![json!(name), json!(value)];
        if self.browser.ask(include_str!("script/menu.js"), arguments).await != true {
            self.tap(&format!("[name='{name}'][value='{value}']")).await;
        }
    }

    /// Taps what a CSS selector finds.
    pub async fn tap(&self, selector: &str) {
        self.tap_on(selector, Value::Null).await;
    }

    /// Taps the button or link with these words.
    pub async fn press(&self, words: &str) {
        self.tap_on("button, a, summary", json!(words)).await;
    }

    /// Taps with the browser's own events, so that whatever lies over it takes the tap, and without help from the
    /// driver, whose own taps need a page with script.
    async fn tap_on(&self, selector: &str, words: Value) {
        let mut spot = Value::Null;
        let found = soon(async || {
            spot = self.browser.ask(include_str!("script/spot.js"), vec![json!(selector), words.clone()]).await;
            spot.is_object()
        });
        if !found.await {
            panic!("cannot tap {selector} {words} on {}: {spot}; it says: {}", self.path().await, self.text().await);
        }
        for event in ["mousePressed", "mouseReleased"] {
            let tap = json!({"type": event, "x": spot["x"], "y": spot["y"], "button": "left", "clickCount": 1});
            self.browser.chromium("Input.dispatchMouseEvent", tap).await;
        }
    }

    /// Ticks everything that is to be accepted, types the name and signs.
    pub async fn sign_all(&self, name: &str) {
        let ticks =
            "return [...document.querySelectorAll('.signing [type=checkbox]:not(:checked)')].map((tick) => tick.name)";
        for tick in self.browser.sentences(ticks, vec![]).await {
            self.tap(&format!("[name='{tick}']")).await;
        }
        self.write("name", name).await;
        self.press("Sign this version").await;
        self.reads("Receipt number").await;
    }

    /// Sends keys to whatever has the focus.
    pub async fn keys(&self, keys: &str) {
        let focused = self.browser.client.active_element().await.expect("something has the focus");
        focused.send_keys(keys).await.unwrap_or_else(|error| panic!("keys are not taken: {error}"));
    }

    /// What has the focus.
    pub async fn focus(&self) -> Value {
        self.browser.ask(include_str!("script/focus.js"), vec![]).await
    }
}

/// Does this become so within ten seconds?
async fn soon(mut is_so: impl AsyncFnMut() -> bool) -> bool {
    for _ in 0..100 {
        if is_so().await {
            return true;
        }
        tokio::time::sleep(Duration::from_millis(100)).await;
    }
    false
}
