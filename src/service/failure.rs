//! Why something was not done.

use crate::ticket::{Action, Clash, Problem, Refusal, Unmerged};
use std::io::ErrorKind;

/// Why something was not done. Nothing of it was, whichever it is.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// Nobody is signed in, or the session has ended.
    #[error("Please sign in.")]
    SignedOut,
    /// Signing in did not work; the sentence gives away nothing about who exists.
    #[error("{0}")]
    NotLetIn(String),
    /// The person's role may not do this.
    #[error("You cannot {} here. Ask: {}.", .0.label(), .0.whose())]
    NotAllowed(Action),
    /// There is no such thing, or it is another shop's.
    #[error("There is no {0}.")]
    NotFound(&'static str),
    /// Fields that cannot be taken.
    #[error("{}", sentences(.0.iter().map(|problem| &problem.message)))]
    Problems(Vec<Problem>),
    /// The stage cannot be entered.
    #[error("{}", sentences(.0.iter().map(|refusal| &refusal.message)))]
    Gates(Vec<Refusal>),
    /// Somebody else changed the same things meanwhile.
    #[error("Somebody else changed this while you were writing. Compare both and send it again.")]
    Conflict(Vec<Clash>),
    /// A customer's link no longer takes an answer; the link's page says why.
    #[error("This page can no longer be signed.")]
    LinkClosed,
    /// The same form is being saved right now.
    #[error("This is being saved right now. Wait a moment, then look again.")]
    Running,
    /// The same key came with something else.
    #[error("This form was already sent with other answers. Open it again to change something.")]
    OtherPayload,
    /// The database could not be reached in time.
    #[error("The shop's database is not answering just now. Nothing was saved. Please try again in a moment.")]
    Busy(#[source] sqlx::Error),
    /// Something is wrong with the program or the database; the cause is for the log.
    #[error("Something went wrong on our side. Nothing was saved.")]
    Broken(#[source] Box<dyn std::error::Error + Send + Sync>),
}

impl Failure {
    /// One field that cannot be taken.
    pub(super) fn problem(field: &str, message: impl Into<String>) -> Self {
        Self::Problems(vec![Problem::new(field, message)])
    }

    /// May the same thing work a moment later?
    pub(super) const fn passes(&self) -> bool {
        matches!(self, Self::Busy(_))
    }
}

fn sentences<'a>(all: impl Iterator<Item = &'a String>) -> String {
    all.map(String::as_str).collect::<Vec<_>>().join(" ")
}

impl From<Unmerged> for Failure {
    fn from(unmerged: Unmerged) -> Self {
        match unmerged {
            Unmerged::Problems(problems) => Self::Problems(problems),
            Unmerged::Clashes(clashes) => Self::Conflict(clashes),
        }
    }
}

impl From<sqlx::Error> for Failure {
    fn from(error: sqlx::Error) -> Self {
        match error.as_database_error().and_then(|error| error.constraint()) {
            Some("staff_name_once") => {
                return Self::problem("name", "Somebody here has that name already. Add a letter of the last name.");
            }
            Some("limit_change_pkey") => {
                return Self::problem("number", "Somebody else moved this limit just now. Look at what stands now.");
            }
            Some("class_table_once" | "class_table_pkey") => {
                let message = "There is already a table for this class of this year. Open it and save a new version.";
                return Self::problem("class", message);
            }
            Some("signature_once_a_link") => return Self::LinkClosed,
            _ => {}
        }
        if passes(&error) { Self::Busy(error) } else { Self::Broken(Box::new(error)) }
    }
}

/// Is this an error that a second try may not meet?
fn passes(error: &sqlx::Error) -> bool {
    match error {
        sqlx::Error::Io(cause) => cause.kind() != ErrorKind::PermissionDenied,
        // A server that goes down in the middle of the handshake or of an answer.
        sqlx::Error::Protocol(_) | sqlx::Error::PoolTimedOut | sqlx::Error::BeginFailed => true,
        sqlx::Error::Database(error) => {
            let code = error.code().unwrap_or_default();
            // Two transactions in each other's way; connections lost; a server stopping (which cancels what runs),
            // starting, full, or still read-only.
            code.starts_with("08")
                || matches!(&*code, "40001" | "40P01" | "57014" | "57P01" | "57P02" | "57P03" | "53300" | "25006")
                || error.constraint() == Some("idempotency_pkey")
        }
        _ => false,
    }
}
