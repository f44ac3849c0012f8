//! What would clear a job's findings: up to three plans side by side, each applied with one tap.

mod apply;
mod view;

pub use apply::send;

use super::ticket::{Head, load};
use crate::service::Caller;
use crate::ticket::{Action, Severity, may};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::failure::Failure;
use crate::web::findings::counted;
use crate::web::frame::{Answer, Frame, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use uuid::Uuid;
pub use view::hours;
use view::{Beside, PlanCard, Stuck};

/// The page of plans.
#[derive(Template)]
#[template(path = "pages/clearing.html")]
struct ClearingPage {
    frame: Frame,
    head: Head,
    /// The version the plans are made from.
    revision: i32,
    /// `2 stops, 1 caution`.
    stands: String,
    /// Is there a stop or a caution at all?
    troubled: bool,
    plans: Vec<PlanCard>,
    stuck: Vec<Stuck>,
    /// Was everything tried?
    proven: bool,
    /// Codes of rules of the shop's own that cannot be read.
    unreadable: Vec<String>,
    /// Why nothing was applied; empty when nothing was tried.
    refused: String,
    /// May facts still be changed?
    open: bool,
    /// May the person change the price as well?
    prices: bool,
}

impl ClearingPage {
    /// A key for each form on the page.
    fn once(&self) -> Uuid {
        Uuid::now_v7()
    }
}

/// `GET /tickets/{number}/clearing`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> Answer {
    page(&of(&state, &caller, number, String::new()).await?)
}

async fn of(state: &AppState, caller: &Caller, number: i64, refused: String) -> Result<ClearingPage, Failure> {
    let (frame, ticket, _) = load(state, caller, number).await?;
    let (clearing, prices) = state.service.clearing(caller, &ticket).await?;
    let judgement = &ticket.revision.judgement;
    let count = |severity| judgement.of(severity).count();
    let (stops, cautions) = (count(Severity::Stop), count(Severity::Caution));
    let contents = &ticket.revision.contents;
    let facts = &contents.facts;
    let beside = |at: usize| {
        let first = clearing.plans.first().filter(|_| at > 0);
        Beside { facts, price: contents.price(), prices: &prices, first }
    };
    Ok(ClearingPage {
        head: Head::new(&ticket),
        revision: ticket.revision.number,
        stands: format!("{}, {}", counted(stops, "stop"), counted(cautions, "caution")),
        troubled: stops + cautions > 0,
        plans: clearing.plans.iter().enumerate().map(|(at, plan)| PlanCard::new(plan, &beside(at))).collect(),
        stuck: clearing.impossible.iter().map(|stop| Stuck::new(stop, facts)).collect(),
        proven: clearing.proven,
        unreadable: ticket.book.unreadable.clone(),
        refused,
        open: ticket.ticket.stage.open(),
        prices: may(caller.role, Action::ChangePrice),
        frame,
    })
}
