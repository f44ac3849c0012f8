//! What if: any choice changed on a copy of the job, with what that does to findings, numbers, hours and price.
//! Nothing of the job itself changes here; what is worth showing is kept as a variant.

mod form;
mod view;

pub use view::VariantCard;

use crate::service::{
    self, ApplyVariant, Caller, KeepVariant, Key, Revision, TicketPage, Variant, Who, WithdrawVariant,
};
use crate::ticket::Clash;
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::{Fields, FormState, Nothing, Problem, Sent, problems_of};
use crate::web::frame::{Answer, again, on_to, page};
use crate::web::pages::ticket::{back, load, or_back};
use crate::web::site::AppState;
use axum::extract::State;
use form::{Step, Trial, held};
use serde::Deserialize;
use view::{Look, WhatIfPage};

/// What the address asks for.
#[derive(Deserialize)]
pub struct Wish {
    /// The variant to go on from.
    #[serde(default)]
    variant: Option<i32>,
}

/// `GET /tickets/{number}/what-if`
pub async fn show(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    Asked(wish): Asked<Wish>,
) -> Answer {
    let (frame, ticket, _) = load(&state, &caller, number).await?;
    if !ticket.ticket.stage.open() {
        return on_to(&format!("/tickets/{number}"));
    }
    let variant = ticket.variants.iter().find(|variant| Some(variant.nth) == wish.variant);
    let typed = held(&ticket, variant);
    let trial = Trial::read(&typed, &ticket.revision.contents);
    let (look, _) = tried(&state, &caller, number, &trial).await?;
    page(&WhatIfPage::new(frame, (&ticket, &ticket.revision.contents), FormState::holding(typed), &trial, look))
}

/// `POST /tickets/{number}/what-if`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<Nothing>,
) -> Answer {
    let (typed, trial) = read(&state, &caller, number, sent.typed).await?;
    if trial.step != Step::Keep || !trial.problems.is_empty() {
        return shown(&state, &caller, number, typed, trial).await;
    }
    let command = KeepVariant {
        ticket: number,
        nth: trial.variant,
        made_from: trial.base,
        name: trial.name.clone(),
        minutes: trial.minutes,
        edit: trial.edit.clone(),
    };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(_) => on_to(&format!("/tickets/{number}?saved=variant#variants")),
        Err(service::Failure::Problems(of)) => shown(&state, &caller, number, typed, trial.with(problems_of(of))).await,
        Err(service::Failure::Conflict(clashes)) => {
            // Only what is tried is laid over what stands now; what the form merely showed is not.
            let now = state.service.ticket(&caller, number).await?.revision;
            let typed = trial.alone(&typed, now.number);
            let trial = Trial::read(&typed, &now.contents).with(told(&clashes));
            shown(&state, &caller, number, typed, trial).await
        }
        Err(failure) => Err(failure.into()),
    }
}

/// `POST /tickets/{number}/what-if/look`: what the changes come to, for the script. Changes nothing.
pub async fn look(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<Nothing>,
) -> Answer {
    let (_, trial) = read(&state, &caller, number, sent.typed).await?;
    let (look, _) = tried(&state, &caller, number, &trial).await?;
    page(&look.with(trial.problems))
}

/// `POST /tickets/{number}/variants/{nth}/withdraw`
pub async fn withdraw(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, nth)): At<(i64, i32)>,
    sent: Sent<Nothing>,
) -> Answer {
    let command = WithdrawVariant { ticket: number, nth };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(()) => on_to(&format!("/tickets/{number}?saved=withdrawn#variants")),
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}

/// `POST /tickets/{number}/variants/{nth}/apply`
pub async fn apply(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, nth)): At<(i64, i32)>,
    sent: Sent<Nothing>,
) -> Answer {
    let version = sent.typed.get("version").and_then(|version| version.parse().ok()).unwrap_or_default();
    let shown_total = sent.typed.get("total").unwrap_or_default().to_owned();
    let command = ApplyVariant { ticket: number, nth, version, shown_total };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(_) => on_to(&format!("/tickets/{number}?saved=facts")),
        Err(service::Failure::Conflict(clashes)) => back(&state, &caller, number, sent.typed, told(&clashes)).await,
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}

/// What somebody else changed meanwhile, plainly.
fn told(clashes: &[Clash]) -> Vec<Problem> {
    clashes.iter().map(|clash| Problem { field: "variants".to_owned(), message: view::since(clash) }).collect()
}

async fn read(state: &AppState, caller: &Caller, number: i64, typed: Fields) -> Result<(Fields, Trial), Failure> {
    let base = typed.get("base").and_then(|base| base.parse().ok());
    let base: i32 = base.ok_or(Failure::Unreadable("the form's own fields were changed on the way"))?;
    let recorded = state.service.revision(caller, number, base).await?;
    let trial = Trial::read(&typed, &recorded.contents);
    Ok((trial.kept(typed), trial))
}

/// The page again, with everything typed.
async fn shown(state: &AppState, caller: &Caller, number: i64, typed: Fields, trial: Trial) -> Answer {
    let (frame, ticket, _) = load(state, caller, number).await?;
    let (look, base) = tried(state, caller, number, &trial).await?;
    let asked = trial.step == Step::Keep && !trial.problems.is_empty();
    let form = if asked { FormState::back(typed, trial.problems.clone()) } else { FormState::holding(typed) };
    let look = look.with(if asked { Vec::new() } else { trial.problems.clone() });
    let view = WhatIfPage::new(frame, (&ticket, &base.contents), form, &trial, look);
    if asked { again(&view) } else { page(&view) }
}

/// What the changes come to, over the version the form was made from.
async fn tried(state: &AppState, caller: &Caller, number: i64, trial: &Trial) -> Result<(Look, Revision), Failure> {
    let ticket = state.service.ticket(caller, number).await?;
    let preview = state.service.look(caller, number, trial.base, &trial.edit).await?;
    let prices = state.service.lever_prices(caller, None).await?.prices;
    Ok((Look::new(&preview, &ticket.book.limits, &prices, trial), preview.base))
}

/// The variants of a ticket as cards.
pub fn cards(ticket: &TicketPage, zone: &jiff::tz::TimeZone) -> Vec<VariantCard> {
    let card = |variant: &Variant| VariantCard::new(variant, &ticket.revision, zone);
    ticket.variants.iter().map(card).collect()
}
