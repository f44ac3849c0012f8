//! The shop's instruments with their calibration dates.

use super::measures::dated;
use crate::plan::sheet::Instrument;
use crate::service::{self, Caller, KeptInstrument, Key, Who, WriteInstrument, is_past};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::moment::day;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use jiff::civil::Date;

/// The page of all instruments.
#[derive(Template)]
#[template(path = "pages/instruments.html")]
struct InstrumentsPage {
    frame: Frame,
    in_use: Vec<Row>,
    retired: Vec<Row>,
    kinds: &'static [Instrument],
    form: FormState,
    done: bool,
}

/// The page of one instrument.
#[derive(Template)]
#[template(path = "pages/instrument.html")]
struct InstrumentPage {
    frame: Frame,
    row: Row,
    kinds: &'static [Instrument],
    form: FormState,
}

/// One instrument.
struct Row {
    nth: i32,
    version: i32,
    name: String,
    kind: &'static str,
    calibrated: String,
    dated: String,
    past: bool,
    retired: bool,
    who: String,
}

impl Row {
    fn of(kept: &KeptInstrument, today: Date) -> Self {
        Self {
            nth: kept.nth,
            version: kept.version,
            name: kept.name.clone(),
            kind: Instrument::from_code(&kept.kind).map_or("", Instrument::label),
            calibrated: kept.calibrated.map_or_else(|| "not known".to_owned(), day),
            dated: dated(kept, today),
            past: is_past(kept, today),
            retired: kept.retired,
            who: kept.made_by.clone(),
        }
    }
}

/// Was it just saved?
#[derive(serde::Deserialize)]
pub struct Done {
    saved: Option<String>,
}

/// An instrument as it is sent.
pub struct InstrumentSent {
    version: i32,
    name: String,
    kind: String,
    calibrated: Option<Date>,
    due: Option<Date>,
    retired: bool,
}

impl Entry for InstrumentSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "Give it a name that is written on it, such as Dial 2 or the serial number.";
        let name = reader.needed_line("name", "The name", 60, ask);
        let kind = reader.one_of("kind", "Choose what kind of instrument it is.", Instrument::from_code);
        Self {
            version: reader.number("version").and_then(|version| i32::try_from(version).ok()).unwrap_or_default(),
            name,
            kind: kind.map_or_else(String::new, |kind| kind.code().to_owned()),
            calibrated: reader.date("calibrated", "The day it was calibrated"),
            due: reader.date("due", "The last day it is good for"),
            retired: reader.fields().get("retired").is_some(),
        }
    }
}

impl InstrumentSent {
    fn command(self, nth: Option<i32>) -> WriteInstrument {
        WriteInstrument {
            follows: nth.map(|nth| (nth, self.version)),
            name: self.name,
            kind: self.kind,
            calibrated: self.calibrated,
            due: self.due,
            retired: self.retired,
        }
    }
}

/// `GET /instruments`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, Asked(done): Asked<Done>) -> Answer {
    page(&all(&state, &caller, FormState::empty(), done.saved.is_some()).await?)
}

/// `POST /instruments`
pub async fn add(State(state): State<AppState>, Staff(caller): Staff, sent: Sent<InstrumentSent>) -> Answer {
    let problems = match sent.read {
        Err(problems) => problems,
        Ok(read) => match state.service.write(Who::Staff(caller.clone()), Key(sent.once), read.command(None)).await {
            Ok(_) => return on_to("/instruments?saved=1"),
            Err(service::Failure::Problems(problems)) => problems_of(problems),
            Err(failure) => return Err(failure.into()),
        },
    };
    again(&all(&state, &caller, FormState::back(sent.typed, problems), false).await?)
}

/// `GET /instruments/{nth}`
pub async fn show_one(State(state): State<AppState>, Staff(caller): Staff, At(nth): At<i32>) -> Answer {
    page(&one(&state, &caller, nth, None).await?)
}

/// `POST /instruments/{nth}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(nth): At<i32>,
    sent: Sent<InstrumentSent>,
) -> Answer {
    let problems = match sent.read {
        Err(problems) => problems,
        Ok(read) => {
            match state.service.write(Who::Staff(caller.clone()), Key(sent.once), read.command(Some(nth))).await {
                Ok(_) => return on_to("/instruments?saved=1"),
                Err(service::Failure::Problems(problems)) => problems_of(problems),
                Err(failure) => return Err(failure.into()),
            }
        }
    };
    again(&one(&state, &caller, nth, Some((sent.typed, problems))).await?)
}

async fn all(state: &AppState, caller: &Caller, form: FormState, done: bool) -> Result<InstrumentsPage, Failure> {
    let frame = Frame::of(state, caller).await?;
    let kept = state.service.instruments(caller).await?;
    let rows = |retired: bool| {
        kept.iter().filter(|one| one.retired == retired).map(|one| Row::of(one, frame.today())).collect()
    };
    Ok(InstrumentsPage { in_use: rows(false), retired: rows(true), kinds: Instrument::ALL, form, done, frame })
}

async fn one(
    state: &AppState,
    caller: &Caller,
    nth: i32,
    sent: Option<(Fields, Vec<Problem>)>,
) -> Result<InstrumentPage, Failure> {
    let frame = Frame::of(state, caller).await?;
    let kept = state.service.instruments(caller).await?;
    let kept = kept.iter().find(|one| one.nth == nth).ok_or(Failure::NotFound)?;
    let form = match sent {
        Some((typed, problems)) => FormState::back(typed, problems),
        None => FormState::holding(held(kept)),
    };
    Ok(InstrumentPage { row: Row::of(kept, frame.today()), kinds: Instrument::ALL, form, frame })
}

fn held(kept: &KeptInstrument) -> Fields {
    let date = |date: Option<Date>| date.map_or_else(String::new, |date| date.to_string());
    let fields = Fields::default()
        .with("name", &kept.name)
        .with("kind", &kept.kind)
        .with("calibrated", date(kept.calibrated))
        .with("due", date(kept.due));
    if kept.retired { fields.with("retired", "yes") } else { fields }
}
