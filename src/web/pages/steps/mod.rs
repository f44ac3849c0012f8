//! The steps of a job, for the tablet on the shop floor: what is to be done by phase, ticked with one tap, hold points
//! with initials and their reading, and a warning before a step is done out of turn.

mod list;
mod one;
mod state;

use crate::plan::steps::step_named;
use crate::service::{self, AddWork, Caller, Key, TickStep, TicketPage, Who};
use crate::ticket::{Act, Edit};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::facts::name_of;
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent};
use crate::web::frame::{Answer, again, on_to, page};
use crate::web::pages::ticket::{load, problems};
use crate::web::site::AppState;
use axum::extract::State;
use list::ListPage;
pub use list::summary;
use one::{Look, OnePage, edit_of};
use serde::Deserialize;

/// What the address says was just done.
#[derive(Deserialize)]
pub struct Did {
    #[serde(default)]
    did: String,
}

/// `GET /tickets/{number}/steps`
pub async fn show(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    Asked(did): Asked<Did>,
) -> Answer {
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    page(&ListPage::new(frame, &ticket, &now, &did.did))
}

/// `GET /tickets/{number}/steps/{code}`
pub async fn show_one(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, code)): At<(i64, String)>,
) -> Answer {
    let step = step_named(&code).ok_or(Failure::NotFound)?;
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    let form = FormState::holding(one::held(step, &ticket, &caller));
    page(&OnePage::new(frame, &ticket, &now, step, form, &ticket.revision))
}

/// What is wanted with a step.
enum Wish {
    Tick(Act),
    Add(bool),
    Look,
}

/// A step's form as it is sent.
pub struct StepSent {
    wish: Wish,
    over: Option<i32>,
    initials: String,
    reason: String,
    knowing: bool,
}

impl Entry for StepSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let wish = match reader.fields().get("do") {
            Some("undo") => Wish::Tick(Act::Undone),
            Some("add") => Wish::Add(true),
            Some("drop") => Wish::Add(false),
            Some("look") => Wish::Look,
            _ => Wish::Tick(Act::Done),
        };
        let line = |name| reader.fields().get(name).unwrap_or_default().to_owned();
        Self {
            wish,
            over: reader.number("over").and_then(|place| i32::try_from(place).ok()),
            initials: line("initials"),
            reason: line("reason"),
            knowing: reader.fields().get("knowing").is_some(),
        }
    }
}

/// `POST /tickets/{number}/steps/{code}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, code)): At<(i64, String)>,
    sent: Sent<StepSent>,
) -> Answer {
    let step = step_named(&code).ok_or(Failure::NotFound)?;
    let list = format!("/tickets/{number}/steps");
    let (who, key) = (Who::Staff(caller.clone()), Key(sent.once));
    let StepSent { wish, over, initials, reason, knowing } = match sent.read {
        Ok(read) => read,
        Err(wrong) => return back(&state, &caller, number, &code, sent.typed, wrong).await,
    };
    let done = match wish {
        Wish::Look => return back(&state, &caller, number, &code, sent.typed, Vec::new()).await,
        Wish::Add(add) => {
            let command = AddWork { ticket: number, step: step.code.to_owned(), add };
            state.service.write(who, key, command).await.map(|_| false)
        }
        Wish::Tick(act) => {
            let typed = sent.typed.starting("f.").map(|(path, text)| (path.to_owned(), text.to_owned())).collect();
            let step = step.code.to_owned();
            let command = TickStep { ticket: number, step, act, over, initials, typed, reason, knowing };
            state.service.write(who, key, command).await.map(|ticked| ticked.failed)
        }
    };
    match done {
        Ok(true) => on_to(&format!("{list}/{}#not-passed", step.code)),
        Ok(false) => on_to(&format!("{list}?did={}#s-{}", step.code, step.code)),
        Err(service::Failure::Problems(of)) => {
            let wrong = problems(of).into_iter().map(at_its_field).collect();
            back(&state, &caller, number, &code, sent.typed, wrong).await
        }
        Err(failure) => Err(failure.into()),
    }
}

/// `POST /tickets/{number}/steps/{code}/look`: what the rules say of what was read, for the script. Changes nothing.
pub async fn look(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, code)): At<(i64, String)>,
    sent: Sent<StepSent>,
) -> Answer {
    let step = step_named(&code).ok_or(Failure::NotFound)?;
    let (_, ticket, _) = load(&state, &caller, number).await?;
    let (edit, wrong) = edit_of(step, &sent.typed);
    let looked = looked(&state, &caller, &ticket, &edit).await?;
    page(&Look::new(step, &looked, &sent.typed, wrong, &ticket))
}

/// The step's page again, with everything typed, what to put right, and what the rules say of what was read.
async fn back(
    state: &AppState,
    caller: &Caller,
    number: i64,
    code: &str,
    typed: Fields,
    mut wrong: Vec<Problem>,
) -> Answer {
    let step = step_named(code).ok_or(Failure::NotFound)?;
    let (frame, ticket, now) = load(state, caller, number).await?;
    let (edit, unreadable) = edit_of(step, &typed);
    let known = |problem: &Problem| wrong.iter().any(|other| other.field == problem.field);
    let more: Vec<_> = unreadable.into_iter().filter(|problem| !known(problem)).collect();
    wrong.extend(more);
    let looked = looked(state, caller, &ticket, &edit).await?;
    let is_wrong = !wrong.is_empty();
    let shown = OnePage::new(frame, &ticket, &now, step, FormState::back(typed, wrong), &looked);
    if is_wrong { again(&shown) } else { page(&shown) }
}

/// The revision as it would be with what was read.
async fn looked(
    state: &AppState,
    caller: &Caller,
    ticket: &TicketPage,
    edit: &Edit,
) -> Result<service::Revision, Failure> {
    let mut revision = ticket.revision.clone();
    if !edit.facts.is_empty() {
        match state.service.look(caller, ticket.ticket.number, revision.number, edit).await {
            Ok(preview) => {
                revision.contents = preview.contents;
                revision.judgement = preview.after;
            }
            Err(service::Failure::Problems(_)) => {}
            Err(failure) => return Err(failure.into()),
        }
    }
    Ok(revision)
}

/// A fact's problem stands at the fact's field.
fn at_its_field(problem: Problem) -> Problem {
    match crate::job::fact_named(&problem.field) {
        Some(fact) => Problem { field: name_of(fact.declaration()), ..problem },
        None => problem,
    }
}
