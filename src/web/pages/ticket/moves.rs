//! Moving a job to another stage.

use super::load;
use crate::service::{Caller, Failure, Key, MoveStage, Who};
use crate::ticket::{Refusal, Stage};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::form::{Entry, Fields, Reader, Sent};
use crate::web::frame::{Answer, on_to};
use crate::web::pages::conflict::{ConflictPage, theirs};
use crate::web::pages::gate::{GatePage, overrides};
use crate::web::pages::ticket::{Head, back};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse};

/// A move as it is sent.
pub struct MoveSent {
    from: Stage,
    to: Stage,
    reason: String,
}

impl Entry for MoveSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "Choose the stage the job moves to.";
        let from = reader.one_of("from", ask, Stage::from_code).unwrap_or(Stage::Intake);
        let to = reader.one_of("to", ask, Stage::from_code).unwrap_or(Stage::Intake);
        Self { from, to, reason: reader.words("reason", "The reason", 1000) }
    }
}

/// `POST /tickets/{number}/stage`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<MoveSent>,
) -> Answer {
    let ticket = format!("/tickets/{number}");
    let typed = sent.typed;
    let wanted = match sent.read {
        Ok(wanted) => wanted,
        Err(problems) => return back(&state, &caller, number, typed, problems).await,
    };
    if !theirs(&typed).is_empty() {
        return on_to(&ticket);
    }
    let MoveSent { from, to, reason } = wanted;
    let command = MoveStage { ticket: number, from, to, reason, overrides: overrides(&typed) };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(_) => on_to(&format!("{ticket}?saved=stage")),
        Err(Failure::Gates(missing)) => refused(&state, &caller, number, (from, to), missing, typed).await,
        Err(Failure::Conflict(clashes)) => {
            let (frame, page, now) = load(&state, &caller, number).await?;
            if page.ticket.stage == to {
                return on_to(&ticket);
            }
            let carried = typed.with("from", page.ticket.stage.code());
            let head = Head::new(&page);
            let page = ConflictPage::new(frame, head, format!("{ticket}/stage"), clashes, &carried, &now.zone);
            page.answer()
        }
        Err(failure) => super::or_back(&state, &caller, number, typed, failure).await,
    }
}

/// What is missing, with the owner's way past it.
async fn refused(
    state: &AppState,
    caller: &Caller,
    number: i64,
    stages: (Stage, Stage),
    missing: Vec<Refusal>,
    typed: Fields,
) -> Answer {
    let (frame, page, _) = load(state, caller, number).await?;
    let page = GatePage::new(frame, Head::new(&page), stages, missing, typed);
    Ok((StatusCode::CONFLICT, Html(page.render()?)).into_response())
}
