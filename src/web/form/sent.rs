//! A form that was sent: typed, validated, with everything typed kept.
#![allow(clippy::disallowed_types)]

use super::{Entry, Fields, Problem, Reader};
use crate::web::failure::Failure;
use axum::body::Bytes;
use axum::extract::{FromRequest, Request};
use axum::http::{StatusCode, header};
use uuid::Uuid;

/// A form as it came: what was typed, and what it means or what is wrong with it.
pub struct Sent<E> {
    /// Names this sending; made with the form.
    pub once: Uuid,
    /// Everything typed.
    pub typed: Fields,
    /// What it means, or every problem.
    pub read: Result<E, Vec<Problem>>,
}

impl<E: Entry, S: Send + Sync> FromRequest<S> for Sent<E> {
    type Rejection = Failure;

    async fn from_request(request: Request, state: &S) -> Result<Self, Failure> {
        let kind = request.headers().get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or_default();
        if !kind.starts_with("application/x-www-form-urlencoded") {
            return Err(Failure::Unreadable("it was not a plain form"));
        }
        let body = Bytes::from_request(request, state).await.map_err(|error| {
            use axum::response::IntoResponse;
            match error.into_response().status() {
                StatusCode::PAYLOAD_TOO_LARGE => Failure::TooLarge,
                _ => Failure::Unreadable("the connection broke off"),
            }
        })?;
        let typed = Fields::parse(&body);
        let mut reader = Reader::new(&typed);
        let once = reader.key("once").ok_or(Failure::Unreadable("the form's own number is missing"))?;
        let entry = E::read(&mut reader);
        let problems = reader.problems();
        let read = if problems.is_empty() { Ok(entry) } else { Err(problems) };
        Ok(Self { once, typed, read })
    }
}
