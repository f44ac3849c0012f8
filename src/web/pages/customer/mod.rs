//! The customer's pages behind a link: read, sign, say no, keep the receipt. Looking never changes anything.

mod answer;
mod gone;
mod view;

use answer::Choice;
pub use answer::{Declined, Outcome, Signed, declined, outcome, signed};
pub use view::{CustomerPage, PaperView, Place, dialled, when};

use super::receipt::ReceiptPage;
use crate::service::{self, CustomerAnswer, Key};
use crate::web::access::Device;
use crate::web::extract::{Address, At};
use crate::web::failure::Failure;
use crate::web::form::{FormState, Sent, problems_of};
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

/// `POST /c/{token}/choose`
pub async fn choose(
    State(state): State<AppState>,
    At(token): At<String>,
    Device(agent): Device,
    sent: Sent<Choice>,
) -> Answer {
    let choice = match sent.read {
        Ok(choice) => choice.choice(agent).ok_or(UNREADABLE)?,
        Err(problems) => return page_of(&state, token, Forms::choosing(FormState::back(sent.typed, problems))).await,
    };
    match state.service.choose_by_link(&token, Key(sent.once), choice).await {
        Err(service::Failure::Problems(of)) => {
            let form = FormState::back(sent.typed, problems_of(of));
            page_of(&state, token, Forms::choosing(form)).await
        }
        // A page that takes nothing any more says itself why.
        Ok(()) | Err(service::Failure::LinkClosed) => on_to(&format!("/c/{token}")),
        Err(failure) => Err(failure.into()),
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

/// The forms of the page.
struct Forms {
    sign: FormState,
    decline: FormState,
    choose: FormState,
}

impl Forms {
    fn choosing(choose: FormState) -> Self {
        Self { sign: FormState::empty(), decline: FormState::empty(), choose }
    }
}

async fn shown(state: &AppState, token: String, sign: FormState, decline: FormState) -> Answer {
    page_of(state, token, Forms { sign, decline, choose: FormState::empty() }).await
}

/// What the link shows now: the paper, or why it is closed.
async fn page_of(state: &AppState, token: String, Forms { sign, decline, choose }: Forms) -> Answer {
    let link = state.service.open_link(&token).await?;
    if let Some(gone) = GonePage::new(&link, &token) {
        return Ok((StatusCode::GONE, Html(askama::Template::render(&gone)?)).into_response());
    }
    let shown = link.shown.ok_or_else(|| Failure::Fault("an open link without its paper".to_owned()))?;
    let wrong = sign.is_wrong() || decline.is_wrong() || choose.is_wrong();
    let view = CustomerPage::new(link.shop, Place::Link { token }, shown, sign, decline);
    let view = view.offering(link.offers, choose);
    if wrong { again(&view) } else { page(&view) }
}
