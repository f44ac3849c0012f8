//! Applying a plan.

use super::of;
use crate::service::{ApplyPlan, Failure, Key, Who};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::form::{Entry, Reader, Sent};
use crate::web::frame::{Answer, again, on_to};
use crate::web::site::AppState;
use axum::extract::State;

/// A plan as it is sent back.
pub struct PlanSent {
    base: i32,
    /// Codes of levers.
    levers: Vec<String>,
    /// The price that was shown with it, when its lines are to be added.
    with_price: Option<String>,
}

impl Entry for PlanSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let levers = reader.fields().get("levers").unwrap_or_default();
        Self {
            base: reader.number("base").and_then(|base| i32::try_from(base).ok()).unwrap_or_default(),
            levers: levers.split_whitespace().map(str::to_owned).collect(),
            with_price: (reader.fields().get("price") == Some("add"))
                .then(|| reader.fields().get("total").unwrap_or("not known").to_owned()),
        }
    }
}

/// `POST /tickets/{number}/clearing`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<PlanSent>,
) -> Answer {
    let Ok(PlanSent { base, levers, with_price }) = sent.read else {
        return on_to(&format!("/tickets/{number}/clearing"));
    };
    let command = ApplyPlan { ticket: number, made_from: base, levers, with_price };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(revised) if revised.changes.is_empty() => on_to(&format!("/tickets/{number}?saved=same")),
        Ok(_) => on_to(&format!("/tickets/{number}?saved=plan")),
        Err(Failure::Problems(problems)) => {
            let refused: Vec<String> = problems.into_iter().map(|problem| problem.message).collect();
            again(&of(&state, &caller, number, refused.join(" ")).await?)
        }
        Err(failure) => Err(failure.into()),
    }
}
