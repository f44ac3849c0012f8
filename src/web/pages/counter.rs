//! The customer's page on the shop's own screen: a member of staff opens it for a customer who stands there.

use super::customer::{CustomerPage, Declined, Outcome, Place, Signed, declined, outcome, signed};
use crate::service::{AnswerAtCounter, Caller, CustomerAnswer, Key, Who};
use crate::ticket::Purpose;
use crate::web::access::{Device, Staff};
use crate::web::extract::{Address, At};
use crate::web::failure::Failure;
use crate::web::form::{FormState, Sent};
use crate::web::frame::{Answer, again, on_to, page};
use crate::web::site::AppState;
use axum::extract::State;
use uuid::Uuid;

/// The ticket's number and what is signed.
type What = (i64, String);

/// `GET /tickets/{number}/sign/{purpose}`
pub async fn read(State(state): State<AppState>, Staff(caller): Staff, At((ticket, what)): At<What>) -> Answer {
    let purpose = Purpose::from_code(&what).ok_or(Failure::NotFound)?;
    shown(&state, &caller, ticket, purpose, FormState::empty(), FormState::empty()).await
}

/// `POST /tickets/{number}/sign/{purpose}`
pub async fn sign(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((ticket, what)): At<What>,
    Address(address): Address,
    Device(agent): Device,
    sent: Sent<Signed>,
) -> Answer {
    let purpose = Purpose::from_code(&what).ok_or(Failure::NotFound)?;
    let form = sent.read.map_err(|_| Failure::Unreadable("a part of it is missing"))?;
    match answered(&state, &caller, sent.once, ticket, purpose, form.answer(address, agent)).await? {
        Outcome::Wrong(problems) => {
            let form = FormState::back(sent.typed, signed(problems));
            shown(&state, &caller, ticket, purpose, form, FormState::empty()).await
        }
        outcome => go_on(ticket, &outcome),
    }
}

/// `POST /tickets/{number}/decline/{purpose}`
pub async fn decline(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((ticket, what)): At<What>,
    Address(address): Address,
    Device(agent): Device,
    sent: Sent<Declined>,
) -> Answer {
    let purpose = Purpose::from_code(&what).ok_or(Failure::NotFound)?;
    let form = sent.read.map_err(|_| Failure::Unreadable("a part of it is missing"))?;
    match answered(&state, &caller, sent.once, ticket, purpose, form.answer(address, agent)).await? {
        Outcome::Wrong(problems) => {
            let decline = FormState::back(sent.typed, declined(problems));
            shown(&state, &caller, ticket, purpose, FormState::empty(), decline).await
        }
        outcome => go_on(ticket, &outcome),
    }
}

async fn answered(
    state: &AppState,
    caller: &Caller,
    once: Uuid,
    ticket: i64,
    purpose: Purpose,
    answer: CustomerAnswer,
) -> Result<Outcome, Failure> {
    let command = AnswerAtCounter { ticket, purpose, answer };
    Ok(outcome(state.service.write(Who::Staff(caller.clone()), Key(once), command).await)?)
}

fn go_on(ticket: i64, outcome: &Outcome) -> Answer {
    match outcome {
        Outcome::Kept(reference) => on_to(&format!("/receipts/{reference}")),
        _ => on_to(&format!("/tickets/{ticket}")),
    }
}

async fn shown(
    state: &AppState,
    caller: &Caller,
    ticket: i64,
    purpose: Purpose,
    form: FormState,
    decline: FormState,
) -> Answer {
    let shown = state.service.counter_paper(caller, ticket, purpose).await?;
    let shop = state.service.shop(caller.shop).await?;
    let wrong = form.is_wrong() || decline.is_wrong();
    let view = CustomerPage::new(shop, Place::Counter { ticket, purpose }, shown, form, decline);
    if wrong { again(&view) } else { page(&view) }
}
