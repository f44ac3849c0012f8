//! One sum: its inputs, its answer, its link; and the same with one job's numbers in it.

use super::view::{Job, SumPage};
use crate::sums::{Sum, named, taken_from};
use crate::web::access::{Anybody, Staff};
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::Fields;
use crate::web::frame::{Answer, Frame, page};
use crate::web::pages::ticket::{Head, load};
use crate::web::site::AppState;
use axum::extract::State;

/// What stands behind the question mark, name by name.
pub type Typed = Vec<(String, String)>;

/// `GET /sums/{name}`
pub async fn show_one(
    State(state): State<AppState>,
    Anybody(caller): Anybody,
    At(name): At<String>,
    Asked(typed): Asked<Typed>,
) -> Answer {
    let sum = sum(&name)?;
    let frame = match &caller {
        Some(caller) => Some(Frame::of(&state, caller).await?),
        None => None,
    };
    let limits = state.service.limits_for_sums(caller.as_ref()).await?;
    page(&SumPage::new(&state, frame, sum, fields(sum, typed), &limits))
}

/// `GET /tickets/{number}/sums/{name}`
pub async fn of_job(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, name)): At<(i64, String)>,
    Asked(typed): Asked<Typed>,
) -> Answer {
    let sum = sum(&name)?;
    let (frame, ticket, _) = load(&state, &caller, number).await?;
    let facts = &ticket.revision.contents.facts;
    let mut fields = fields(sum, typed);
    let taken = taken_from(sum, facts.job());
    for taken in &taken {
        // What was typed, and be it nothing, is not written over.
        if fields.get(taken.input.name).is_none() {
            fields.set(taken.input.name, taken.text.clone());
        }
    }
    let limits = &ticket.book.limits;
    let job = Job::new(Head::new(&ticket), facts, &taken, &fields);
    page(&SumPage::new(&state, Some(frame), sum, fields, limits).of_job(job, facts))
}

/// The sum of this name, or no page.
pub fn sum(name: &str) -> Result<&'static Sum, Failure> {
    named(name).ok_or(Failure::NotFound)
}

/// What was typed into the sum's own fields.
fn fields(sum: &'static Sum, typed: Typed) -> Fields {
    let own = typed.into_iter().filter(|(name, _)| sum.input(name).is_some());
    own.fold(Fields::default(), |fields, (name, text)| fields.with(&name, text))
}
