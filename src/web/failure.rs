//! The one error of the edge: what a person is told when a request could not be done.

use crate::service;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use std::sync::Arc;

/// Why a request was not done.
///
/// Turned into a page in one place ([`super::guard`]), where it also gets its reference and its line in the log.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// No page has this address, or not for this person.
    #[error("no such page")]
    NotFound,
    /// The address is right, the way of asking is not.
    #[error("method not allowed")]
    WrongMethod,
    /// Signed in, but this is somebody else's work.
    #[error("not allowed: {0}")]
    NotYours(String),
    /// Not signed in, and the request would have changed something.
    #[error("not signed in")]
    SignInFirst,
    /// The request did not come from one of our own pages.
    #[error("request from elsewhere")]
    FromElsewhere,
    /// The request was made to a name that is not ours.
    #[error("unknown host")]
    UnknownHost,
    /// Somebody was faster, or the same form is still being worked on.
    #[error("conflict: {0}")]
    Conflict(String),
    /// Understood, but it cannot be done as things stand; the sentence says what to do.
    #[error("refused: {0}")]
    Refused(String),
    /// The form could not be read at all.
    #[error("unreadable form: {0}")]
    Unreadable(&'static str),
    /// More was sent than a form can hold.
    #[error("too large")]
    TooLarge,
    /// The database or the program is too busy, or gone for the moment.
    #[error("busy: {0}")]
    Busy(String),
    /// A fault of ours. The cause is for the log only.
    #[error("{0}")]
    Fault(String),
}

/// What the page of a failure says.
pub struct Told {
    /// The heading.
    pub title: &'static str,
    /// What happened.
    pub happened: String,
    /// What became of the person's answers.
    pub answers: &'static str,
    /// What to do now.
    pub next: &'static str,
}

const NOTHING_SAVED: &str = "Nothing was changed.";
const STILL_THERE: &str =
    "Nothing was saved. What you typed is still in the form: go back to it with your browser's back button.";

impl Failure {
    /// The status of the answer.
    pub const fn status(&self) -> StatusCode {
        match self {
            Self::NotFound => StatusCode::NOT_FOUND,
            Self::WrongMethod => StatusCode::METHOD_NOT_ALLOWED,
            Self::NotYours(_) | Self::FromElsewhere => StatusCode::FORBIDDEN,
            Self::SignInFirst => StatusCode::UNAUTHORIZED,
            Self::UnknownHost => StatusCode::MISDIRECTED_REQUEST,
            Self::Conflict(_) => StatusCode::CONFLICT,
            Self::Refused(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Self::Unreadable(_) => StatusCode::BAD_REQUEST,
            Self::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::Busy(_) => StatusCode::SERVICE_UNAVAILABLE,
            Self::Fault(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// One word for the log. What people wrote does not belong there.
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::NotFound => "not found",
            Self::WrongMethod => "wrong method",
            Self::NotYours(_) => "not allowed",
            Self::SignInFirst => "signed out",
            Self::FromElsewhere => "from elsewhere",
            Self::UnknownHost => "unknown host",
            Self::Conflict(_) => "conflict",
            Self::Refused(_) => "refused",
            Self::Unreadable(_) => "unreadable",
            Self::TooLarge => "too large",
            Self::Busy(_) => "busy",
            Self::Fault(_) => "fault",
        }
    }

    /// What a person is told; never the cause of a fault.
    pub fn told(&self) -> Told {
        let (title, happened, answers, next) = match self {
            Self::NotFound => (
                "There is nothing here",
                "This address belongs to no page, or to one that is not open to you.".to_owned(),
                NOTHING_SAVED,
                "Look whether the whole address arrived; a link can be cut on its way. If it was one from the shop, call \
                 the shop and ask for a new one. If you work here, start again from the board.",
            ),
            Self::WrongMethod => (
                "This page is opened another way",
                "The address exists, but it takes only what its own form sends.".to_owned(),
                NOTHING_SAVED,
                "Go back and use the button on the page.",
            ),
            Self::NotYours(why) => (
                "This is somebody else's work",
                why.clone(),
                "Nothing was changed.",
                "Ask one of them, or sign in as somebody who may.",
            ),
            Self::SignInFirst => (
                "You are signed out",
                "You were signed out before this was sent.".to_owned(),
                STILL_THERE,
                "Sign in on another page of this browser first, then go back to the form and send it again.",
            ),
            Self::FromElsewhere => (
                "This did not come from our own page",
                "The request did not carry the marks of a form of this shop, so it was not trusted.".to_owned(),
                NOTHING_SAVED,
                "Open the page here, fill in its form and send it again. An old browser may need an update.",
            ),
            Self::UnknownHost => (
                "This is not the address of the shop",
                "The page was asked for under a name that this shop does not use.".to_owned(),
                NOTHING_SAVED,
                "Use the address that the shop gave you.",
            ),
            Self::Conflict(what) => ("Somebody was faster", what.clone(), STILL_THERE, "Load the page again and look."),
            Self::Refused(what) => ("This cannot be done yet", what.clone(), NOTHING_SAVED, "Go back to the page."),
            Self::Unreadable(what) => (
                "The form did not arrive whole",
                format!("What was sent could not be read: {what}."),
                STILL_THERE,
                "Load the form again and send it once more.",
            ),
            Self::TooLarge => (
                "That is more than a form can hold",
                "More was sent than this page takes (256 KiB).".to_owned(),
                STILL_THERE,
                "Shorten the longest text and send it again.",
            ),
            Self::Busy(_) => (
                "The shop's computer is busy",
                "The answer took too long.".to_owned(),
                "What you sent may or may not have been saved. Sending the same form again is safe: it counts only once.",
                "Wait a moment, then go back and send it again.",
            ),
            Self::Fault(_) => (
                "Something went wrong here",
                "That was our fault, not yours.".to_owned(),
                STILL_THERE,
                "Send it again; the same form counts only once. If it stays, tell the owner the reference below.",
            ),
        };
        Told { title, happened, answers, next }
    }
}

impl From<service::Failure> for Failure {
    fn from(failure: service::Failure) -> Self {
        use service::Failure as Why;
        match failure {
            Why::SignedOut => Self::SignInFirst,
            Why::NotAllowed(_) => Self::NotYours(failure.to_string()),
            Why::NotFound(_) => Self::NotFound,
            Why::Conflict(_) | Why::Running => Self::Conflict(failure.to_string()),
            Why::NotLetIn(_) | Why::Problems(_) | Why::Gates(_) | Why::LinkClosed | Why::OtherPayload => {
                Self::Refused(failure.to_string())
            }
            Why::Busy(cause) => Self::Busy(cause.to_string()),
            Why::Broken(cause) => Self::Fault(cause.to_string()),
        }
    }
}

impl From<askama::Error> for Failure {
    fn from(error: askama::Error) -> Self {
        Self::Fault(format!("a page could not be written: {error}"))
    }
}

/// Carries the failure to the guard, which makes the page of it.
impl IntoResponse for Failure {
    fn into_response(self) -> Response {
        let mut response = self.status().into_response();
        response.extensions_mut().insert(Arc::new(self));
        response
    }
}
