//! A request is for us, and what changes something came from one of our own pages.

use crate::web::failure::Failure;
use crate::web::site::Site;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use std::sync::Arc;

/// Lets through what is asked for under our name and, if it may change something, was sent by our own page.
pub async fn check(State(site): State<Arc<Site>>, request: Request, next: Next) -> Response {
    let headers = request.headers();
    let host = text(headers, &header::HOST).or_else(|| request.uri().authority().map(|name| name.as_str()));
    let Some(host) = host.filter(|host| site.answers_to(host)) else { return Failure::UnknownHost.into_response() };
    let only_looks = matches!(*request.method(), Method::GET | Method::HEAD | Method::OPTIONS);
    if only_looks || from_our_page(headers, host, &site) {
        next.run(request).await
    } else {
        Failure::FromElsewhere.into_response()
    }
}

/// The browser says so, or (an old one) names our own address as the page it comes from.
///
/// Without either word nothing is believed.
fn from_our_page(headers: &HeaderMap, host: &str, site: &Site) -> bool {
    match headers.get("sec-fetch-site") {
        Some(fetched) => fetched == "same-origin",
        None => text(headers, &header::ORIGIN).is_some_and(|origin| site.is_own_origin(origin, host)),
    }
}

fn text<'h>(headers: &'h HeaderMap, name: &HeaderName) -> Option<&'h str> {
    headers.get(name).and_then(|value| value.to_str().ok())
}
