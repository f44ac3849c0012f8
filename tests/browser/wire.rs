//! What the driver can do beyond the standard: Chromium's own commands and its logs.

use axum::http::Method;
use fantoccini::wd::WebDriverCompatibleCommand;
use serde_json::{Value, json};
use url::{ParseError, Url};

/// A request to the driver beside the standard ones.
#[derive(Debug)]
pub struct Ask {
    path: &'static str,
    body: Value,
}

impl Ask {
    /// A command of the browser's own protocol.
    pub fn chromium(command: &str, parameters: Value) -> Self {
        Self { path: "goog/cdp/execute", body: json!({"cmd": command, "params": parameters}) }
    }

    /// What was logged since it was last asked for: `browser` for the console, `performance` for the network.
    pub fn log(kind: &str) -> Self {
        Self { path: "se/log", body: json!({"type": kind}) }
    }
}

impl WebDriverCompatibleCommand for Ask {
    fn endpoint(&self, base_url: &Url, session_id: Option<&str>) -> Result<Url, ParseError> {
        base_url.join(&format!("session/{}/{}", session_id.unwrap_or_default(), self.path))
    }

    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        (Method::POST, Some(self.body.to_string()))
    }
}
