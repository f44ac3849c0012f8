//! What every request passes on its way in and every answer on its way out.

mod headers;
mod origin;
mod report;

use super::failure::Failure;
use super::site::Site;
use axum::Router;
use axum::extract::{DefaultBodyLimit, Request};
use axum::middleware::{Next, from_fn, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use std::any::Any;
use std::sync::Arc;
use std::time::Duration;
use tower_http::catch_panic::CatchPanicLayer;

/// The most a form can hold. All facts of a ticket with the longest texts are a fifth of it.
const LARGEST_BODY: usize = 256 * 1024;
/// Longer than the write path's own patience.
const PATIENCE: Duration = Duration::from_secs(20);

/// The routes behind everything that guards them. Layers written later stand further out.
pub fn guarded(routes: Router, site: Arc<Site>) -> Router {
    routes
        .fallback(|| async { Failure::NotFound })
        .method_not_allowed_fallback(|| async { Failure::WrongMethod })
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(from_fn_with_state(Arc::clone(&site), origin::check))
        .layer(from_fn(in_time))
        .layer(CatchPanicLayer::custom(panicked))
        .layer(from_fn(report::report))
        .layer(from_fn_with_state(site, headers::add))
}

async fn in_time(request: Request, next: Next) -> Response {
    match tokio::time::timeout(PATIENCE, next.run(request)).await {
        Ok(response) => response,
        Err(_) => Failure::Busy(format!("no answer within {} s", PATIENCE.as_secs())).into_response(),
    }
}

fn panicked(cause: Box<dyn Any + Send>) -> Response {
    let words = cause.downcast_ref::<String>().map(String::as_str).or_else(|| cause.downcast_ref::<&str>().copied());
    Failure::Fault(format!("panic: {}", words.unwrap_or("no words"))).into_response()
}
