//! One limit: what it is for, what was changed about it, and the form that moves it.

use super::row::{ChangeLine, Row};
use crate::rules::{LimitId, Limits};
use crate::service::{self, Caller, ChangeLimit, Key, Who};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::moment::zone;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

/// The page of one limit.
#[derive(Template)]
#[template(path = "pages/limit.html")]
struct LimitPage {
    frame: Frame,
    row: Row,
    unit: &'static str,
    form: FormState,
    /// May the person move it?
    may_move: bool,
    /// The turn of the latest change; 0 without one.
    turn: i32,
    changes: Vec<ChangeLine>,
    done: bool,
}

/// Was it just moved?
#[derive(serde::Deserialize)]
pub struct Done {
    saved: Option<String>,
}

/// A move as it is sent. The number is read by the limit itself.
pub struct MoveSent {
    made_from: i32,
    reason: String,
}

impl Entry for MoveSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "Write down why the limit moves. It stands in the history of the limit for good.";
        Self {
            made_from: reader.number("turn").and_then(|turn| i32::try_from(turn).ok()).unwrap_or_default(),
            reason: reader.needed_words("reason", "The reason", 1000, ask),
        }
    }
}

/// `GET /limits/{name}`
pub async fn show_one(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(name): At<String>,
    Asked(done): Asked<Done>,
) -> Answer {
    let limit = LimitId::named(&name).ok_or(Failure::NotFound)?;
    page(&of(&state, &caller, limit, None, done.saved.is_some()).await?)
}

/// `POST /limits/{name}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(name): At<String>,
    sent: Sent<MoveSent>,
) -> Answer {
    let limit = LimitId::named(&name).ok_or(Failure::NotFound)?;
    let supplied = sent.typed.get("to") == Some("supplied");
    let typed_number = sent.typed.get("number").unwrap_or_default();
    let number = if supplied { Ok(None) } else { limit.read(typed_number).map(Some) };
    let mut problems = Vec::new();
    let number = number.unwrap_or_else(|unread| {
        let label = limit.declaration().label;
        problems.push(Problem { field: "number".into(), message: format!("The limit \"{label}\": {unread}.") });
        None
    });
    // Told together with a missing reason; the write asks again.
    if let Some(refused) = number.and_then(|number| Limits::default().set(limit, number).err()) {
        problems.push(Problem { field: "number".into(), message: refused.to_string() });
    }
    let sent_move = match sent.read {
        Ok(sent_move) if problems.is_empty() => sent_move,
        read => {
            problems.extend(read.err().unwrap_or_default());
            return ask_again(&state, &caller, limit, sent.typed, problems).await;
        }
    };
    let MoveSent { made_from, reason } = sent_move;
    let change = ChangeLimit { limit: name, made_from, number, reason };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), change).await {
        Ok(()) => on_to(&format!("/limits/{}?saved=1", limit.declaration().name)),
        Err(service::Failure::Problems(problems)) => {
            ask_again(&state, &caller, limit, sent.typed, problems_of(problems)).await
        }
        Err(failure) => Err(failure.into()),
    }
}

async fn ask_again(state: &AppState, caller: &Caller, limit: LimitId, typed: Fields, problems: Vec<Problem>) -> Answer {
    again(&of(state, caller, limit, Some(FormState::back(typed, problems)), false).await?)
}

async fn of(
    state: &AppState,
    caller: &Caller,
    limit: LimitId,
    form: Option<FormState>,
    done: bool,
) -> Result<LimitPage, Failure> {
    let frame = Frame::of(state, caller).await?;
    let limits = state.service.limits(caller, Some(limit)).await?;
    let zone = zone(&frame.shop.zone);
    let row = Row::new(limit, &limits.book.limits);
    let stands = limits.book.limits.get(limit).to_string();
    Ok(LimitPage {
        may_move: row.movable && frame.moves_limits(),
        unit: limit.declaration().unit,
        form: form.unwrap_or_else(|| FormState::holding(Fields::default().with("number", &stands))),
        turn: limits.changes.first().map_or(0, |latest| latest.turn),
        changes: limits.changes.iter().map(|change| ChangeLine::new(change, &zone)).collect(),
        frame,
        row,
        done,
    })
}
