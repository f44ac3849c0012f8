//! Who holds the next move, and what is promised for when.

use super::{Head, back, load, or_back};
use crate::service::{Caller, ChangePromise, ChangeWaits, Failure, Key, Who};
use crate::ticket::{Clash, WaitsFor};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::form::{Entry, Fields, Reader, Sent};
use crate::web::frame::{Answer, on_to};
use crate::web::pages::conflict::{ConflictPage, theirs};
use crate::web::site::AppState;
use axum::extract::State;
use jiff::civil::Date;

/// Who holds the next move, as it is sent.
pub struct WaitsSent {
    from: WaitsFor,
    to: WaitsFor,
}

impl Entry for WaitsSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "Choose who the job waits for: us, the customer, parts or the machinist.";
        let from = reader.one_of("from", ask, WaitsFor::from_code).unwrap_or(WaitsFor::Us);
        Self { from, to: reader.one_of("to", ask, WaitsFor::from_code).unwrap_or(WaitsFor::Us) }
    }
}

/// A promise as it is sent.
pub struct PromiseSent {
    from: Option<Date>,
    to: Option<Date>,
}

impl Entry for PromiseSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        Self { from: reader.date("from", "The day on the page"), to: reader.date("day", "The promised day") }
    }
}

/// `POST /tickets/{number}/waits`
pub async fn waits(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<WaitsSent>,
) -> Answer {
    let WaitsSent { from, to } = match sent.read {
        Ok(wanted) => wanted,
        Err(problems) => return back(&state, &caller, number, sent.typed, problems).await,
    };
    if !theirs(&sent.typed).is_empty() {
        return on_to(&format!("/tickets/{number}"));
    }
    let command = ChangeWaits { ticket: number, from, to };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(()) => on_to(&format!("/tickets/{number}?saved=waits")),
        Err(Failure::Conflict(clashes)) => conflict(&state, &caller, number, "waits", clashes, sent.typed).await,
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}

/// `POST /tickets/{number}/promise`
pub async fn promise(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<PromiseSent>,
) -> Answer {
    let PromiseSent { from, to } = match sent.read {
        Ok(wanted) => wanted,
        Err(problems) => return back(&state, &caller, number, sent.typed, problems).await,
    };
    if !theirs(&sent.typed).is_empty() {
        return on_to(&format!("/tickets/{number}"));
    }
    let command = ChangePromise { ticket: number, from, to };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(()) => on_to(&format!("/tickets/{number}?saved=promise")),
        Err(Failure::Conflict(clashes)) => conflict(&state, &caller, number, "promise", clashes, sent.typed).await,
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}

/// The choice between what was sent and what stands there now; what is chosen is sent over what stands.
async fn conflict(
    state: &AppState,
    caller: &Caller,
    number: i64,
    what: &str,
    clashes: Vec<Clash>,
    typed: Fields,
) -> Answer {
    let (frame, page, now) = load(state, caller, number).await?;
    let stands = match what {
        "waits" => page.ticket.waits_for.code().to_owned(),
        _ => page.ticket.promised.map_or_else(String::new, |day| day.to_string()),
    };
    let action = format!("/tickets/{number}/{what}");
    let carried = typed.with("from", stands);
    ConflictPage::new(frame, Head::new(&page), action, clashes, &carried, &now.zone).answer()
}
