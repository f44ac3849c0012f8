//! Setting a finding aside for this job, with a written reason, and bringing it back.

use super::{Head, load, or_back};
use crate::service::{self, BringBack, Caller, Key, SetAside, Who};
use crate::ticket::{Found, may};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Nothing, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

/// The page that asks why.
#[derive(Template)]
#[template(path = "pages/aside.html")]
struct AsidePage {
    frame: Frame,
    head: Head,
    /// The version in which it is found.
    revision: i32,
    found: Found,
    form: FormState,
}

/// A finding set aside, as it is sent.
pub struct AsideSent {
    made_from: i32,
    reason: String,
}

impl Entry for AsideSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "Write down why this does not count on this job. It stays on the ticket with your name.";
        Self {
            made_from: reader.number("base").and_then(|base| i32::try_from(base).ok()).unwrap_or_default(),
            reason: reader.needed_words("reason", "The reason", 1000, ask),
        }
    }
}

/// `GET /tickets/{number}/aside/{code}`
pub async fn show(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, code)): At<(i64, String)>,
) -> Answer {
    match of(&state, &caller, number, &code, FormState::empty()).await? {
        Some(asking) => page(&asking),
        None => on_to(&format!("/tickets/{number}")),
    }
}

/// `POST /tickets/{number}/aside/{code}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, code)): At<(i64, String)>,
    sent: Sent<AsideSent>,
) -> Answer {
    let AsideSent { made_from, reason } = match sent.read {
        Ok(aside) => aside,
        Err(problems) => return ask_again(&state, &caller, number, &code, sent.typed, problems).await,
    };
    let command = SetAside { ticket: number, made_from, code: code.clone(), reason };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(_) => on_to(&format!("/tickets/{number}?saved=aside")),
        Err(service::Failure::Problems(problems)) => {
            ask_again(&state, &caller, number, &code, sent.typed, problems_of(problems)).await
        }
        Err(failure) => Err(failure.into()),
    }
}

/// `POST /tickets/{number}/aside/{code}/back`
pub async fn bring_back(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, code)): At<(i64, String)>,
    sent: Sent<Nothing>,
) -> Answer {
    let command = BringBack { ticket: number, code };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(_) => on_to(&format!("/tickets/{number}?saved=back")),
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}

async fn ask_again(
    state: &AppState,
    caller: &Caller,
    number: i64,
    code: &str,
    typed: Fields,
    problems: Vec<Problem>,
) -> Answer {
    match of(state, caller, number, code, FormState::back(typed.clone(), problems.clone())).await? {
        Some(asking) => again(&asking),
        None => super::back(state, caller, number, typed, problems).await,
    }
}

/// The page for this finding; none when it is not found on an open job.
async fn of(
    state: &AppState,
    caller: &Caller,
    number: i64,
    code: &str,
    form: FormState,
) -> Result<Option<AsidePage>, Failure> {
    let (frame, ticket, _) = load(state, caller, number).await?;
    let found = ticket.revision.judgement.findings.iter().find(|found| found.code == code).cloned();
    let Some(found) = found.filter(|_| ticket.ticket.stage.open()) else { return Ok(None) };
    if !may(caller.role, found.set_aside_by()) {
        return Err(service::Failure::NotAllowed(found.set_aside_by()).into());
    }
    Ok(Some(AsidePage { head: Head::new(&ticket), revision: ticket.ticket.revision, frame, found, form }))
}
