//! The ticket: where the job stands, what is known and found, what is promised, priced, signed and written down.

pub mod aside;
mod class_table;
pub mod judge_again;
pub mod links;
pub mod moves;
pub mod notes;
pub mod plans;
pub mod price;
mod ruling;
mod safety;
mod stage;
mod view;

pub use class_table::{TableTakenView, age_warning};
pub use view::{Head, Now};

use crate::service::{self, Caller, TicketPage};
use crate::ticket::{Happening, Stage, Way};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::{Fields, FormState};
use crate::web::frame::{Answer, Frame, again, page};
use crate::web::moment::{clock, zone};
use crate::web::pages::steps::summary;
use crate::web::pages::what_if::{self, VariantCard};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use jiff::SignedDuration;
use price::PriceRow;
use serde::Deserialize;
use uuid::Uuid;
use view::TicketView;

/// The ticket's page.
#[derive(Template)]
#[template(path = "pages/ticket.html")]
struct TicketTemplate {
    frame: Frame,
    view: TicketView,
    /// What was just saved, in a sentence; empty when nothing was.
    saved: String,
    /// The stage that one tap takes the job back to, right after a move.
    undo: Option<Stage>,
    /// The small forms, when one of them comes back.
    form: FormState,
    price_rows: Vec<PriceRow>,
    /// How far the work is.
    steps: String,
    variants: Vec<VariantCard>,
}

impl TicketTemplate {
    /// A key for each form on the page: two forms must not be taken for the same sending.
    fn once(&self) -> Uuid {
        Uuid::now_v7()
    }
}

/// How long a move can be taken back by one tap.
const UNDO: SignedDuration = SignedDuration::from_secs(30);

/// What the address says was just done.
#[derive(Deserialize)]
pub struct Done {
    #[serde(default)]
    saved: String,
}

/// `GET /tickets/{number}`
pub async fn show(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    Asked(done): Asked<Done>,
) -> Answer {
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    let undo = undo(&ticket, &now).filter(|_| done.saved == "stage");
    let saved = saved(&done.saved, &ticket, &now);
    page(&template(frame, &ticket, &now, FormState::empty(), saved, undo))
}

/// The ticket's page with a small form that comes back to be put right.
pub async fn back(
    state: &AppState,
    caller: &Caller,
    number: i64,
    typed: Fields,
    problems: Vec<crate::web::form::Problem>,
) -> Answer {
    let (frame, ticket, now) = load(state, caller, number).await?;
    again(&template(frame, &ticket, &now, FormState::back(typed, problems), String::new(), None))
}

fn template(
    frame: Frame,
    ticket: &TicketPage,
    now: &Now,
    form: FormState,
    saved: String,
    undo: Option<Stage>,
) -> TicketTemplate {
    let view = TicketView::new(ticket, &frame.caller, now);
    let price_rows = price::rows(&form, ticket.revision.contents.price());
    let variants = what_if::cards(ticket, &now.zone);
    TicketTemplate { steps: summary(ticket), frame, view, saved, undo, form, price_rows, variants }
}

/// What every page about a ticket starts from.
///
/// # Errors
/// When there is no such ticket, or the database does not answer.
pub async fn load(state: &AppState, caller: &Caller, number: i64) -> Result<(Frame, TicketPage, Now), Failure> {
    let frame = Frame::of(state, caller).await?;
    let ticket = state.service.ticket(caller, number).await?;
    let now = Now { at: state.service.now(), zone: zone(&frame.shop.zone) };
    Ok((frame, ticket, now))
}

/// The service's problems at the form's own fields.
pub fn problems(of: Vec<crate::ticket::Problem>) -> Vec<crate::web::form::Problem> {
    of.into_iter().map(|one| crate::web::form::Problem { field: one.field, message: one.message }).collect()
}

/// A write that came back with problems shows the ticket again; anything else goes its own way.
pub async fn or_back(
    state: &AppState,
    caller: &Caller,
    number: i64,
    typed: Fields,
    failure: service::Failure,
) -> Answer {
    match failure {
        service::Failure::Problems(of) => back(state, caller, number, typed, problems(of)).await,
        other => Err(other.into()),
    }
}

fn saved(what: &str, ticket: &TicketPage, now: &Now) -> String {
    let did = match what {
        "stage" => format!("the job is now at {}.", ticket.ticket.stage.label()),
        "waits" => format!("the job waits for {}.", ticket.ticket.waits_for.label().to_lowercase()),
        "promise" => "the promise.".to_owned(),
        "price" => format!("the price, as version {}.", ticket.ticket.revision),
        "note" => "the note.".to_owned(),
        "sum" => "the sum, with its working in the history.".to_owned(),
        "contact" => "the customer and the vehicle.".to_owned(),
        "class" => format!("the class table, as version {}.", ticket.ticket.revision),
        "variant" => "the variant.".to_owned(),
        "withdrawn" => "the variant is no longer offered.".to_owned(),
        "facts" => format!("this is now version {}.", ticket.ticket.revision),
        "plan" => {
            format!("the plan, as version {}. What has to be measured or signed is blank.", ticket.ticket.revision)
        }
        "judged" => format!("judged by the book of today, as version {}.", ticket.ticket.revision),
        "aside" => format!("it is set aside for this job, as version {}.", ticket.ticket.revision),
        "back" => format!("it counts again, as version {}.", ticket.ticket.revision),
        "same" => return "Nothing was different, so nothing had to be saved.".to_owned(),
        "link" => "the link is taken back and opens no more.".to_owned(),
        _ => return String::new(),
    };
    format!("Saved {}: {did}", clock(ticket.ticket.changed_at, &now.zone))
}

fn undo(ticket: &TicketPage, now: &Now) -> Option<Stage> {
    let latest = ticket.history.first()?;
    let Happening::Moved { from, to, .. } = latest.happened else { return None };
    let fresh = now.at.duration_since(latest.at) <= UNDO;
    let forward = from.way_to(to) == Some(Way::Forward) && to.way_to(from) == Some(Way::Back);
    (fresh && forward && ticket.ticket.stage == to).then_some(from)
}
