//! Striking a reading that was taken by mistake: what follows is shown first, then a reason and a tick.

use super::line::Line;
use crate::job::fact_named;
use crate::plan::sheet::{Measurement, measurement_named};
use crate::service::{self, Caller, Key, Reading, StrikeReading, TicketPage, Who, without};
use crate::ticket::{FactChange, NOT_KNOWN, in_words};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::failure::Failure;
use crate::web::form::{Entry, FormState, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::pages::ticket::{Head, load};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

/// The page that shows what follows and asks why.
#[derive(Template)]
#[template(path = "pages/strike.html")]
struct StrikePage {
    frame: Frame,
    head: Head,
    measurement: &'static Measurement,
    revision: i32,
    line: Line,
    /// What counts then, in a sentence.
    counts: String,
    /// Each fact of the job that changes with it: its label, what it says now, what it says then.
    facts: Vec<(&'static str, String, String)>,
    form: FormState,
}

/// A reading struck, as it is sent.
pub struct StrikeSent {
    made_from: i32,
    reason: String,
    sure: bool,
}

impl Entry for StrikeSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "Write down what went wrong with this reading. It stays in the history with your name.";
        let sent = Self {
            made_from: reader.number("base").and_then(|base| i32::try_from(base).ok()).unwrap_or_default(),
            reason: reader.needed_words("reason", "The reason", 1000, ask),
            sure: reader.fields().get("sure").is_some(),
        };
        if !sent.sure {
            reader.wrong("sure", "Tick that this reading does not count, or leave it as it is.");
        }
        sent
    }
}

type Place = (i64, String, i32);

/// `GET /tickets/{number}/sheet/{name}/strike/{turn}`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(place): At<Place>) -> Answer {
    match of(&state, &caller, &place, FormState::empty()).await? {
        Some(asking) => page(&asking),
        None => on_to(&format!("/tickets/{}/sheet/{}", place.0, place.1)),
    }
}

/// `POST /tickets/{number}/sheet/{name}/strike/{turn}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(place): At<Place>,
    sent: Sent<StrikeSent>,
) -> Answer {
    let (number, name, reading) = place.clone();
    let problems = match sent.read {
        Ok(StrikeSent { made_from, reason, sure }) => {
            let command = StrikeReading { ticket: number, made_from, measurement: name.clone(), reading, reason, sure };
            match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
                Ok(_) => return on_to(&format!("/tickets/{number}/sheet/{name}?saved=struck")),
                Err(service::Failure::Problems(problems)) => problems_of(problems),
                Err(failure) => return Err(failure.into()),
            }
        }
        Err(problems) => problems,
    };
    match of(&state, &caller, &place, FormState::back(sent.typed, problems)).await? {
        Some(asking) => again(&asking),
        None => on_to(&format!("/tickets/{number}/sheet/{name}")),
    }
}

/// The page for this reading; none when it is struck already or the job is closed.
async fn of(
    state: &AppState,
    caller: &Caller,
    (number, name, turn): &Place,
    form: FormState,
) -> Result<Option<StrikePage>, Failure> {
    let measurement = measurement_named(name).ok_or(Failure::NotFound)?;
    let (frame, ticket, now) = load(state, caller, *number).await?;
    let sheet = state.service.bench_sheet(caller, *number, None).await?;
    let is_it = |reading: &&Reading| reading.measurement == measurement.name && reading.turn == *turn;
    let reading = sheet.readings.iter().find(is_it).ok_or(Failure::NotFound)?;
    if reading.struck.is_some() || !ticket.ticket.stage.open() {
        return Ok(None);
    }
    let job = &ticket.revision.contents.facts;
    let left = without(reading, &sheet.readings, job, &sheet.shelf, &ticket.book.limits);
    let counts = match left.counts {
        Some(counts) => format!(
            "Then {} counts, read by {}.",
            measurement.scale.say(counts.number),
            Line::of(counts, &now.zone).who
        ),
        None => "Then no reading is left here: as long as nobody measures again, it is not taken.".to_owned(),
    };
    let facts = left.facts.iter().filter_map(|change| told(change, &ticket)).collect();
    let line = Line::of(reading, &now.zone);
    let (head, revision) = (Head::new(&ticket), ticket.ticket.revision);
    Ok(Some(StrikePage { frame, head, measurement, revision, line, counts, facts, form }))
}

fn told(change: &FactChange, ticket: &TicketPage) -> Option<(&'static str, String, String)> {
    let fact = fact_named(&change.path)?;
    let then = change.value.as_ref().map_or_else(|| NOT_KNOWN.to_owned(), |value| in_words(fact.declaration(), value));
    Some((fact.declaration().label, ticket.revision.contents.facts.words(fact), then))
}
