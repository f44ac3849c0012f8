//! What every page has to be, whoever looks at it: whole at every width, readable, alone with the shop.

use crate::driver::{DESK, NARROW, PHONE, Screen, TABLET};
use crate::visitor::Visitor;
use serde_json::{Value, json};

/// Text against its ground.
const CONTRAST: f64 = 7.0;

/// A walk through pages, with what was wrong with them.
pub struct Walk {
    /// Who walks.
    pub visitor: Visitor,
    /// The addresses that were asked for.
    pub visited: Vec<String>,
    wrong: Vec<String>,
}

impl Walk {
    /// A walk that begins.
    pub fn of(visitor: Visitor) -> Self {
        Self { visitor, visited: Vec::new(), wrong: Vec::new() }
    }

    /// Opens a page and looks it over.
    pub async fn visit(&mut self, name: &str, path: &str) {
        self.visitor.goto(path).await;
        self.visited.push(path.split('?').next().unwrap_or_default().to_owned());
        self.look(name).await;
    }

    /// Opens a page like another one that was looked over, and looks at it where there is the least room.
    pub async fn glance(&mut self, name: &str, path: &str) {
        self.visitor.goto(path).await;
        look_over(&mut self.visitor, name, &[NARROW], &mut self.wrong).await;
    }

    /// Looks the open page over.
    pub async fn look(&mut self, name: &str) {
        look_over(&mut self.visitor, name, &[DESK, TABLET, PHONE, NARROW], &mut self.wrong).await;
    }

    /// The end: nothing may have been wrong.
    pub fn end(self) {
        assert!(self.wrong.is_empty(), "{} things are wrong:\n{}", self.wrong.len(), self.wrong.join("\n"));
    }
}

/// Looks the open page over at every width, keeps pictures of it, and adds what is wrong.
async fn look_over(visitor: &mut Visitor, name: &str, screens: &[Screen], wrong: &mut Vec<String>) {
    let before = visitor.browser.screen;
    for screen in screens.iter().copied() {
        visitor.browser.resize(screen).await;
        let mut found = visitor.browser.violations().await;
        found.extend(visitor.browser.sentences(include_str!("script/overflow.js"), vec![]).await);
        wrong.extend(found.into_iter().map(|what| format!("{name} at {}: {what}", screen.width)));
        if screen.width > NARROW.width {
            visitor.browser.picture(name).await;
        }
    }
    visitor.browser.resize(before).await;
    let faint = visitor.browser.sentences(include_str!("script/contrast.js"), vec![json!(CONTRAST)]).await;
    wrong.extend(faint.into_iter().map(|what| format!("{name}: {what}")));
    wrong.extend(complaints(visitor).await.into_iter().map(|what| format!("{name}: {what}")));
}

/// What the browser complained about since this was last asked: refused by the page's own policy, script that
/// failed, a request to another host. The status of a page itself is no complaint.
pub async fn complaints(visitor: &Visitor) -> Vec<String> {
    let console = visitor.browser.log("browser").await.into_iter().filter_map(|entry| {
        let message = entry["message"].as_str().unwrap_or_default().to_owned();
        let is_advice = !["SEVERE", "WARNING"].contains(&entry["level"].as_str().unwrap_or_default());
        let is_status = message.contains("the server responded with a status of 4");
        (!is_advice && !is_status).then_some(message)
    });
    let mut found: Vec<String> = console.collect();
    for entry in visitor.browser.log("performance").await {
        let message: Value = serde_json::from_str(entry["message"].as_str().unwrap_or_default()).unwrap_or_default();
        if message["message"]["method"] != "Network.requestWillBeSent" {
            continue;
        }
        let url = message["message"]["params"]["request"]["url"].as_str().unwrap_or_default().to_owned();
        // The browser makes these itself, out of what it has.
        let inside = ["data:", "about:", "chrome:", "devtools:"].iter().any(|scheme| url.starts_with(scheme));
        if !inside && !url.starts_with(&format!("{}/", visitor.origin)) {
            found.push(format!("asked another host: {url}"));
        }
    }
    found
}
