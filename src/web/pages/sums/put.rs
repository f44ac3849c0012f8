//! A sum put on a ticket.

use super::one::sum;
use super::view::SumPage;
use crate::service::{self, Caller, Fill, Key, PutSum, Who};
use crate::sums::Sum;
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::form::{Fields, Nothing, Problem, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to};
use crate::web::site::AppState;
use axum::extract::State;

/// `POST /sums/{name}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(name): At<String>,
    sent: Sent<Nothing>,
) -> Answer {
    let sum = sum(&name)?;
    let typed = sent.typed;
    let number = typed.get("ticket").unwrap_or_default().trim().to_owned();
    let Some(ticket) = number.parse::<i64>().ok().filter(|number| *number > 0) else {
        let message = if number.is_empty() {
            "Which job? Write its number, such as 1042.".to_owned()
        } else {
            let cut: String = number.chars().take(40).collect();
            format!("The job cannot be “{cut}”: write its number, such as 1042.")
        };
        return back(&state, &caller, sum, typed, vec![Problem { field: "ticket".to_owned(), message }]).await;
    };
    let over = |fact: &str| typed.get(&format!("over.{fact}")).map(str::to_owned);
    let command = PutSum {
        ticket,
        sum: sum.name.to_owned(),
        typed: sum.inputs.iter().map(|input| (input.name.to_owned(), text(&typed, input.name))).collect(),
        fills: typed.all("keep").map(|fact| Fill { fact: fact.to_owned(), over: over(fact) }).collect(),
    };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(_) => on_to(&format!("/tickets/{ticket}?saved=sum")),
        Err(service::Failure::Problems(of)) => back(&state, &caller, sum, typed, problems_of(of)).await,
        Err(service::Failure::NotFound("such ticket")) => {
            let message = format!("There is no job {ticket} in this shop. Look at its tag.");
            back(&state, &caller, sum, typed, vec![Problem { field: "ticket".to_owned(), message }]).await
        }
        Err(failure) => Err(failure.into()),
    }
}

fn text(typed: &Fields, name: &str) -> String {
    typed.get(name).unwrap_or_default().to_owned()
}

/// The page again, with everything typed and what stands in the way.
async fn back(state: &AppState, caller: &Caller, sum: &'static Sum, typed: Fields, problems: Vec<Problem>) -> Answer {
    let frame = Frame::of(state, caller).await?;
    let limits = state.service.limits_for_sums(Some(caller)).await?;
    let number = typed.get("ticket").and_then(|number| number.trim().parse::<i64>().ok());
    let facts = match number {
        Some(number) => match state.service.ticket(caller, number).await {
            Ok(page) => Some(page.revision.contents.facts),
            Err(service::Failure::NotFound(_)) => None,
            Err(failure) => return Err(failure.into()),
        },
        None => None,
    };
    again(&SumPage::new(state, Some(frame), sum, typed, &limits).back(problems, facts.as_ref()))
}
