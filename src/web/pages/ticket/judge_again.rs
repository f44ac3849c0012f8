//! Judging the job again by the shop's book of today.

use super::or_back;
use crate::service::{JudgeAgain, Key, Who};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::form::{Nothing, Sent};
use crate::web::frame::{Answer, on_to};
use crate::web::site::AppState;
use axum::extract::State;

/// `POST /tickets/{number}/judge`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<Nothing>,
) -> Answer {
    let command = JudgeAgain { ticket: number };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(_) => on_to(&format!("/tickets/{number}?saved=judged")),
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}
