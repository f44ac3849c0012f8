//! The customer's pages behind a link: read, sign, say no, keep the receipt. Looking never changes anything.

mod answer;
mod gone;
mod view;

pub use answer::{Declined, Outcome, Signed, declined, outcome, signed};
pub use view::{CustomerPage, PaperView, Place, dialled, when};

use super::receipt::ReceiptPage;
use crate::service::{CustomerAnswer, Key};
use crate::web::access::Device;
use crate::web::extract::{Address, At};
use crate::web::failure::Failure;
use crate::web::form::{FormState, Sent};
use crate::web::frame::{Answer, again, on_to, page};
use crate::web::site::AppState;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse};
use gone::GonePage;
use uuid::Uuid;

/// `GET /c/{token}`
pub async fn read(State(state): State<AppState>, At(token): At<String>) -> Answer {
    shown(&state, token, FormState::empty(), FormState::empty()).await
}

/// `GET /c/{token}/receipt`
pub async fn receipt(State(state): State<AppState>, At(token): At<String>) -> Answer {
    let link = state.service.open_link(&token).await?;
    match link.receipt {
        Some(receipt) => page(&ReceiptPage::new(link.shop, receipt, None)),
        None => on_to(&format!("/c/{token}")),
    }
}

/// `POST /c/{token}/sign`
pub async fn sign(
    State(state): State<AppState>,
    At(token): At<String>,
    Address(address): Address,
    Device(agent): Device,
    sent: Sent<Signed>,
) -> Answer {
    let form = sent.read.map_err(|_| UNREADABLE)?;
    match answered(&state, &token, sent.once, form.answer(address, agent)).await? {
        Outcome::Wrong(problems) => {
            let form = FormState::back(sent.typed, signed(problems));
            shown(&state, token, form, FormState::empty()).await
        }
        outcome => go_on(&token, &outcome),
    }
}

/// `POST /c/{token}/decline`
pub async fn decline(
    State(state): State<AppState>,
    At(token): At<String>,
    Address(address): Address,
    Device(agent): Device,
    sent: Sent<Declined>,
) -> Answer {
    let form = sent.read.map_err(|_| UNREADABLE)?;
    match answered(&state, &token, sent.once, form.answer(address, agent)).await? {
        Outcome::Wrong(problems) => {
            let decline = FormState::back(sent.typed, declined(problems));
            shown(&state, token, FormState::empty(), decline).await
        }
        outcome => go_on(&token, &outcome),
    }
}

const UNREADABLE: Failure = Failure::Unreadable("a part of it is missing");

async fn answered(state: &AppState, token: &str, once: Uuid, answer: CustomerAnswer) -> Result<Outcome, Failure> {
    Ok(outcome(state.service.answer_link(token, Key(once), answer).await)?)
}

fn go_on(token: &str, outcome: &Outcome) -> Answer {
    match outcome {
        Outcome::Kept(_) => on_to(&format!("/c/{token}/receipt")),
        _ => on_to(&format!("/c/{token}")),
    }
}

/// What the link shows now: the paper, or why it is closed.
async fn shown(state: &AppState, token: String, form: FormState, decline: FormState) -> Answer {
    let link = state.service.open_link(&token).await?;
    if let Some(gone) = GonePage::new(&link, &token) {
        return Ok((StatusCode::GONE, Html(askama::Template::render(&gone)?)).into_response());
    }
    let shown = link.shown.ok_or_else(|| Failure::Fault("an open link without its paper".to_owned()))?;
    let wrong = form.is_wrong() || decline.is_wrong();
    let view = CustomerPage::new(link.shop, Place::Link { token }, shown, form, decline);
    if wrong { again(&view) } else { page(&view) }
}
