//! The files every page needs, inside the program, each under an address that changes with its content.

use super::extract::At;
use super::failure::Failure;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use sha2::{Digest, Sha256};
use std::sync::LazyLock;

/// One file as it is sent.
struct Asset {
    name: String,
    kind: &'static str,
    content: String,
}

static STYLE: LazyLock<Asset> = LazyLock::new(|| {
    let sheets = [
        include_str!("../../static/css/base.css"),
        include_str!("../../static/css/form.css"),
        include_str!("../../static/css/shop.css"),
        include_str!("../../static/css/bench.css"),
        include_str!("../../static/css/ticket.css"),
        include_str!("../../static/css/next.css"),
        include_str!("../../static/css/steps.css"),
        include_str!("../../static/css/measures.css"),
        include_str!("../../static/css/plans.css"),
        include_str!("../../static/css/rules.css"),
        include_str!("../../static/css/what_if.css"),
        include_str!("../../static/css/sums.css"),
        include_str!("../../static/css/picture.css"),
        include_str!("../../static/css/paper.css"),
    ];
    Asset::new("endplay", "css", "text/css; charset=utf-8", sheets.concat())
});

static SCRIPT: LazyLock<Asset> = LazyLock::new(|| {
    let scripts = [
        include_str!("../../static/app.js"),
        include_str!("../../static/js/live.js"),
        include_str!("../../static/js/condition.js"),
        include_str!("../../static/js/pad.js"),
        include_str!("../../static/js/print.js"),
        include_str!("../../static/js/questions.js"),
        include_str!("../../static/js/sheet.js"),
        include_str!("../../static/js/sums.js"),
    ];
    Asset::new("endplay", "js", "text/javascript; charset=utf-8", scripts.concat())
});

static ICON: LazyLock<Asset> =
    LazyLock::new(|| Asset::new("mark", "svg", "image/svg+xml", include_str!("../../static/mark.svg").to_owned()));

impl Asset {
    fn new(name: &str, ending: &str, kind: &'static str, content: String) -> Self {
        let hash = Sha256::digest(content.as_bytes());
        let short: String = hash.iter().take(6).map(|byte| format!("{byte:02x}")).collect();
        Self { name: format!("{name}-{short}.{ending}"), kind, content }
    }

    fn address(&self) -> String {
        format!("/static/{}", self.name)
    }
}

/// The address of the style sheet.
pub fn style() -> String {
    STYLE.address()
}

/// The address of the script.
pub fn script() -> String {
    SCRIPT.address()
}

/// The address of the icon.
pub fn icon() -> String {
    ICON.address()
}

/// `GET /static/{name}`: may be kept for a year, since another content has another address.
pub async fn serve(At(name): At<String>) -> Result<Response, Failure> {
    let asset = [&*STYLE, &*SCRIPT, &*ICON].into_iter().find(|asset| asset.name == name).ok_or(Failure::NotFound)?;
    let headers = [(header::CONTENT_TYPE, asset.kind), (header::CACHE_CONTROL, "public, max-age=31536000, immutable")];
    Ok((headers, asset.content.as_str()).into_response())
}
