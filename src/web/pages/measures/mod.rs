//! The measurement sheet of a job, for the tablet at the bench: what was read and what that means, one measurement at a
//! time with its instrument, its limit and its verdict, and the part to fit.

mod line;
mod list;
mod look;
mod one;
pub mod strike;

use crate::plan::sheet::{Measurement, measurement_named, reading_field, take};
use crate::service::{self, BenchSheet, Caller, ChoosePart, Key, TakeReading, TicketPage, Who};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, again, on_to, page};
use crate::web::moment::today;
use crate::web::pages::ticket::load;
use crate::web::site::AppState;
use axum::extract::State;
use list::ListPage;
use look::Look;
use one::OnePage;
use serde::Deserialize;

pub use one::dated;

/// What the address says was just done.
#[derive(Deserialize)]
pub struct Did {
    #[serde(default)]
    saved: String,
}

/// `GET /tickets/{number}/sheet`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> Answer {
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    let sheet = state.service.bench_sheet(&caller, number, None).await?;
    page(&ListPage::new(frame, &ticket, &sheet, &now))
}

/// `GET /tickets/{number}/sheet/{name}`
pub async fn show_one(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, name)): At<(i64, String)>,
    Asked(did): Asked<Did>,
) -> Answer {
    let measurement = measurement_named(&name).ok_or(Failure::NotFound)?;
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    let sheet = state.service.bench_sheet(&caller, number, Some(measurement.name)).await?;
    let form = FormState::holding(one::held(measurement, &sheet));
    page(&OnePage::new(frame, &ticket, &sheet, &now, measurement, form, &did.saved))
}

/// What is wanted with a measurement.
enum Wish {
    Save,
    Look,
    Choose { reading: i32, part: String },
}

/// A measurement's form as it is sent.
pub struct MeasureSent {
    wish: Wish,
    made_from: i32,
    instrument: Option<i32>,
}

impl Entry for MeasureSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let small = |name| reader.number(name).and_then(|number| i32::try_from(number).ok());
        let (made_from, instrument, reading) = (small("made_from"), small("instrument"), small("reading"));
        let wish = match reader.fields().get("do") {
            Some("choose") => {
                let part = reader.fields().get("part").unwrap_or_default().to_owned();
                if part.is_empty() {
                    reader.wrong("part", "Choose the part that goes in.");
                }
                Wish::Choose { reading: reading.unwrap_or_default(), part }
            }
            Some("look") => Wish::Look,
            _ => Wish::Save,
        };
        Self { wish, made_from: made_from.unwrap_or_default(), instrument }
    }
}

/// The readings as they stand in the form.
fn typed_readings(measurement: &Measurement, typed: &Fields) -> Vec<String> {
    (1..=measurement.readings).map(|nth| typed.get(&reading_field(nth)).unwrap_or_default().to_owned()).collect()
}

/// A button that takes what was perhaps meant puts it where the doubtful number stood: `r.1=0.305 mm`.
fn with_meant(measurement: &Measurement, mut typed: Fields) -> (Fields, bool) {
    let meant = typed.get("meant").and_then(|meant| meant.split_once('='));
    let fields: Vec<_> = (1..=measurement.readings).map(reading_field).collect();
    match meant.map(|(field, number)| (field.to_owned(), number.to_owned())) {
        Some((field, number)) if fields.contains(&field) => {
            typed.set(field, number);
            (typed, true)
        }
        _ => (typed, false),
    }
}

/// `POST /tickets/{number}/sheet/{name}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, name)): At<(i64, String)>,
    sent: Sent<MeasureSent>,
) -> Answer {
    let measurement = measurement_named(&name).ok_or(Failure::NotFound)?;
    let (typed, is_meant) = with_meant(measurement, sent.typed);
    let MeasureSent { wish, made_from, instrument } = match sent.read {
        Ok(read) => read,
        Err(wrong) => return back(&state, &caller, number, measurement, typed, wrong).await,
    };
    let (who, key) = (Who::Staff(caller.clone()), Key(sent.once));
    let done = match wish {
        // What was put in for a doubtful number is looked at before it is kept.
        Wish::Save if is_meant => return back(&state, &caller, number, measurement, typed, Vec::new()).await,
        Wish::Look => return back(&state, &caller, number, measurement, typed, Vec::new()).await,
        Wish::Save => {
            let command = TakeReading {
                ticket: number,
                made_from,
                measurement: measurement.name.to_owned(),
                readings: typed_readings(measurement, &typed),
                fitted: typed.get("fitted").unwrap_or_default().to_owned(),
                instrument,
                sure: typed.get("sure").is_some(),
            };
            state.service.write(who, key, command).await.map(|_| "reading")
        }
        Wish::Choose { reading, part } => {
            let command = ChoosePart { ticket: number, measurement: measurement.name.to_owned(), reading, part };
            state.service.write(who, key, command).await.map(|()| "part")
        }
    };
    match done {
        Ok(saved) => on_to(&format!("/tickets/{number}/sheet/{}?saved={saved}", measurement.name)),
        Err(service::Failure::Problems(of)) => back(&state, &caller, number, measurement, typed, problems_of(of)).await,
        Err(failure) => Err(failure.into()),
    }
}

/// `POST /tickets/{number}/sheet/{name}/look`: what is said of what stands in the form, for the script. Changes nothing.
pub async fn look(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, name)): At<(i64, String)>,
    sent: Sent<MeasureSent>,
) -> Answer {
    let measurement = measurement_named(&name).ok_or(Failure::NotFound)?;
    let (_, ticket, now) = load(&state, &caller, number).await?;
    let sheet = state.service.bench_sheet(&caller, number, Some(measurement.name)).await?;
    page(&Look::of_form(measurement, &ticket, &sheet, &sent.typed, today(now.at, &now.zone)))
}

/// The measurement's page again, with everything typed and what to put right.
async fn back(
    state: &AppState,
    caller: &Caller,
    number: i64,
    measurement: &'static Measurement,
    typed: Fields,
    wrong: Vec<Problem>,
) -> Answer {
    let (frame, ticket, now) = load(state, caller, number).await?;
    let sheet = state.service.bench_sheet(caller, number, Some(measurement.name)).await?;
    let is_wrong = !wrong.is_empty();
    let shown = OnePage::new(frame, &ticket, &sheet, &now, measurement, FormState::back(typed, wrong), "");
    if is_wrong { again(&shown) } else { page(&shown) }
}

/// What stands in the form, read; nothing while nothing is typed.
fn taken(
    measurement: &Measurement,
    sheet: &BenchSheet,
    typed: &Fields,
) -> Option<Result<crate::plan::sheet::Taking, Vec<crate::plan::sheet::Wrong>>> {
    let readings = typed_readings(measurement, typed);
    let fitted = typed.get("fitted").unwrap_or_default();
    let any = readings.iter().any(|reading| !reading.trim().is_empty());
    any.then(|| take(measurement, &readings, fitted, sheet.shelf.habit, typed.get("sure").is_some()))
}

/// The band of a measurement on this job, as the shop's limits stand.
fn band(measurement: &Measurement, page: &TicketPage) -> crate::rules::Known<crate::plan::sheet::Band> {
    (measurement.band)(page.revision.contents.facts.job(), &page.book.limits)
}
