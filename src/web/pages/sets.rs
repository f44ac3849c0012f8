//! What is on the shelf: the selective sets as the shop typed them, and the units it writes numbers in.

use crate::plan::sheet::{Habit, LengthHabit, MOST_PARTS, PressureHabit, SetKind, TorqueHabit, Written};
use crate::service::{self, Caller, ChooseUnits, Key, Shelf, TypedPart, Who, WriteSet};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::moment::{moment, zone};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

/// The page of all sets.
#[derive(Template)]
#[template(path = "pages/sets.html")]
struct SetsPage {
    frame: Frame,
    sets: Vec<SetView>,
    units: Vec<UnitField>,
    turn: i32,
    form: FormState,
    saved: &'static str,
}

/// The page of one set.
#[derive(Template)]
#[template(path = "pages/set.html")]
struct SetPage {
    frame: Frame,
    view: SetView,
    version: i32,
    unit: Written,
    lines: usize,
    form: FormState,
}

/// One set.
struct SetView {
    kind: SetKind,
    parts: Vec<String>,
    typed: String,
}

impl SetView {
    fn of(kind: SetKind, shelf: &Shelf, frame: &Frame) -> Self {
        let zone = zone(&frame.shop.zone);
        Self {
            kind,
            parts: shelf.parts(kind).iter().map(|part| part.say(kind)).collect(),
            typed: shelf.kept(kind).map_or_else(String::new, |kept| {
                format!("version {}, typed by {}, {}", kept.version, kept.made_by, moment(kept.at, &zone))
            }),
        }
    }
}

/// A quantity with the units it may be written in: code, name.
struct UnitField {
    name: &'static str,
    label: &'static str,
    options: Vec<(&'static str, &'static str)>,
}

fn unit_fields() -> Vec<UnitField> {
    vec![
        UnitField {
            name: "length",
            label: "Lengths",
            options: LengthHabit::ALL.iter().map(|one| (one.code(), one.unit().name)).collect(),
        },
        UnitField {
            name: "torque",
            label: "Torques",
            options: TorqueHabit::ALL.iter().map(|one| (one.code(), one.unit().name)).collect(),
        },
        UnitField {
            name: "pressure",
            label: "Pressures",
            options: PressureHabit::ALL.iter().map(|one| (one.code(), one.unit().name)).collect(),
        },
    ]
}

/// Was it just saved?
#[derive(serde::Deserialize)]
pub struct Done {
    #[serde(default)]
    saved: String,
}

/// `GET /sets`
pub async fn list(State(state): State<AppState>, Staff(caller): Staff, Asked(done): Asked<Done>) -> Answer {
    let saved = match done.saved.as_str() {
        "set" => "Saved. Readings from now on choose from it.",
        "units" => "Saved. What was typed before stays what it was.",
        _ => "",
    };
    page(&all(&state, &caller, None, saved).await?)
}

/// `GET /sets/{code}`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(code): At<String>) -> Answer {
    page(&one(&state, &caller, &code, None).await?)
}

/// A set as it is sent.
pub struct SetSent {
    version: i32,
    parts: Vec<TypedPart>,
}

impl Entry for SetSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let field =
            |name: &str, nth: usize| reader.fields().get(&format!("{name}.{nth}")).unwrap_or_default().to_owned();
        let parts = (1..=MOST_PARTS).map(|nth| TypedPart {
            size: field("size", nth),
            other: field("other", nth),
            mark: field("mark", nth),
        });
        Self {
            parts: parts.collect(),
            version: reader.number("version").and_then(|version| i32::try_from(version).ok()).unwrap_or_default(),
        }
    }
}

/// `POST /sets/{code}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(code): At<String>,
    sent: Sent<SetSent>,
) -> Answer {
    SetKind::from_code(&code).ok_or(Failure::NotFound)?;
    let problems = match sent.read {
        Err(problems) => problems,
        Ok(SetSent { version, parts }) => {
            let command = WriteSet { code: code.clone(), made_from: version, parts };
            match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
                Ok(_) => return on_to("/sets?saved=set"),
                Err(service::Failure::Problems(problems)) => problems_of(problems),
                Err(failure) => return Err(failure.into()),
            }
        }
    };
    again(&one(&state, &caller, &code, Some((sent.typed, problems))).await?)
}

/// The units as they are sent.
pub struct UnitsSent {
    turn: i32,
    habit: Option<Habit>,
}

impl Entry for UnitsSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let length = reader.one_of("length", "Choose how lengths are written.", LengthHabit::from_code);
        let torque = reader.one_of("torque", "Choose how torques are written.", TorqueHabit::from_code);
        let pressure = reader.one_of("pressure", "Choose how pressures are written.", PressureHabit::from_code);
        let habit = length.zip(torque).zip(pressure);
        Self {
            turn: reader.number("turn").and_then(|turn| i32::try_from(turn).ok()).unwrap_or_default(),
            habit: habit.map(|((length, torque), pressure)| Habit { length, torque, pressure }),
        }
    }
}

/// `POST /bench-units`
pub async fn units(State(state): State<AppState>, Staff(caller): Staff, sent: Sent<UnitsSent>) -> Answer {
    let problems = match sent.read {
        Ok(UnitsSent { turn, habit: Some(habit) }) => {
            let command = ChooseUnits { made_from: turn, habit };
            match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
                Ok(()) => return on_to("/sets?saved=units"),
                Err(service::Failure::Problems(problems)) => problems_of(problems),
                Err(failure) => return Err(failure.into()),
            }
        }
        Ok(_) => Vec::new(),
        Err(problems) => problems,
    };
    again(&all(&state, &caller, Some((sent.typed, problems)), "").await?)
}

async fn all(
    state: &AppState,
    caller: &Caller,
    sent: Option<(Fields, Vec<Problem>)>,
    saved: &'static str,
) -> Result<SetsPage, Failure> {
    let frame = Frame::of(state, caller).await?;
    let shelf = state.service.shelf(caller).await?;
    let habit = shelf.habit;
    let held = Fields::default()
        .with("length", habit.length.code())
        .with("torque", habit.torque.code())
        .with("pressure", habit.pressure.code());
    let form = match sent {
        Some((typed, problems)) => FormState::back(typed, problems),
        None => FormState::holding(held),
    };
    let sets = SetKind::ALL.iter().map(|kind| SetView::of(*kind, &shelf, &frame)).collect();
    Ok(SetsPage { sets, units: unit_fields(), turn: shelf.habit_turn, form, saved, frame })
}

async fn one(
    state: &AppState,
    caller: &Caller,
    code: &str,
    sent: Option<(Fields, Vec<Problem>)>,
) -> Result<SetPage, Failure> {
    let kind = SetKind::from_code(code).ok_or(Failure::NotFound)?;
    let frame = Frame::of(state, caller).await?;
    let shelf = state.service.shelf(caller).await?;
    let form = match sent {
        Some((typed, problems)) => FormState::back(typed, problems),
        None => FormState::holding(held(kind, &shelf)),
    };
    Ok(SetPage {
        view: SetView::of(kind, &shelf, &frame),
        version: shelf.kept(kind).map_or(0, |kept| kept.version),
        unit: shelf.habit.length.unit(),
        lines: MOST_PARTS,
        form,
        frame,
    })
}

/// The set as it stands, with its sizes as numbers that mean the same whatever unit is the shop's own.
fn held(kind: SetKind, shelf: &Shelf) -> Fields {
    let mut fields = Fields::default();
    let say = |value: f64| crate::plan::sheet::Scale::Length.say(value);
    for (nth, part) in (1..).zip(shelf.parts(kind)) {
        fields.set(format!("size.{nth}"), say(part.size));
        if part.other > 0.0 {
            fields.set(format!("other.{nth}"), say(part.other));
        }
        fields.set(format!("mark.{nth}"), &part.mark);
    }
    fields
}
