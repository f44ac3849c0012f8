//! The page of everything that could not be done.

use crate::web::failure::{Failure, Told};
use askama::Template;
use axum::response::{Html, IntoResponse, Response};

#[derive(Template)]
#[template(path = "pages/failed.html")]
struct Failed {
    told: Told,
    reference: String,
    sign_in: bool,
}

/// The page of this failure, with its status.
pub fn page(failure: &Failure, reference: String) -> Response {
    let page = Failed { told: failure.told(), reference, sign_in: matches!(failure, Failure::SignInFirst) };
    match page.render() {
        Ok(text) => (failure.status(), Html(text)).into_response(),
        Err(error) => {
            tracing::error!(%error, "the page of a failure could not be written");
            failure.status().into_response()
        }
    }
}
