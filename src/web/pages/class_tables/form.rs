//! Typing a class table from the rulebook, or a new version of one.

use crate::job::{Declaration, fact_named, read_text};
use crate::service::{self, Caller, KeptTable, Key, TableVersion, Who, WriteClassTable};
use crate::ticket::{ClassTable, class_facts};
use crate::web::access::Staff;
use crate::web::extract::Asked;
use crate::web::facts::{Control, FactField, as_typed, name_of};
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use serde_json::Value;
use std::collections::BTreeMap;
use uuid::Uuid;

#[derive(Template)]
#[template(path = "pages/class_table_form.html")]
struct TypingPage {
    frame: Frame,
    form: FormState,
    /// The version that the new one follows; none for a new table.
    follows: Option<KeptTable>,
    fields: Vec<FactField>,
}

impl TypingPage {
    fn new(frame: Frame, form: FormState, follows: Option<KeptTable>) -> Self {
        let fields = class_facts().map(|fact| FactField::new(fact, &form, None, 0)).collect();
        Self { frame, form, follows, fields }
    }
}

/// Which table a new version is wanted of.
#[derive(serde::Deserialize)]
pub struct Wanted {
    of: Option<Uuid>,
}

/// A table as it was typed.
pub struct Typed(WriteClassTable);

impl Entry for Typed {
    fn read(reader: &mut Reader<'_>) -> Self {
        let version = reader.number("version").and_then(|version| i32::try_from(version).ok());
        let follows = reader.key("of").zip(version).map(|(table, version)| TableVersion { table, version });
        let mut table = ClassTable::default();
        if follows.is_none() {
            table.year = year(reader);
            table.body = reader.needed_line("body", "The name", 60, "Enter whose rulebook it is.");
            table.class = reader.needed_line("class", "The class", 60, "Enter the class, as the rulebook calls it.");
        }
        table.asks = asks(reader);
        Self(WriteClassTable { follows, table, offered: reader.fields().get("offered") != Some("no") })
    }
}

fn year(reader: &mut Reader<'_>) -> i16 {
    let typed = reader.fields().get("year").unwrap_or_default();
    let read = fact_named("class_table.year").map(|fact| read_text(typed, fact.declaration()));
    let message = match read {
        Some(Ok(Some(value))) => match value.as_i64().and_then(|year| i16::try_from(year).ok()) {
            Some(year) => return year,
            None => "Enter the year on the rulebook's cover in four figures.".to_owned(),
        },
        Some(Err(error)) => error.message,
        _ => "Enter the year on the rulebook's cover.".to_owned(),
    };
    reader.wrong("year", message);
    0
}

fn asks(reader: &mut Reader<'_>) -> BTreeMap<String, Value> {
    let mut asks = BTreeMap::new();
    for declaration in class_facts().map(|fact| fact.declaration()) {
        let name = name_of(declaration);
        match read_text(reader.fields().get(&name).unwrap_or_default(), declaration) {
            Ok(Some(value)) => drop(asks.insert(declaration.path.to_owned(), value)),
            Ok(None) => {}
            Err(error) => reader.wrong(name, error.message),
        }
    }
    asks
}

/// `GET /class-tables/new`: an empty table, or with `?of=` the newest version of that one.
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, Asked(wanted): Asked<Wanted>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let follows = newest(&state, &caller, wanted.of).await?;
    let mut held = Fields::default().with("offered", "yes");
    if let Some(kept) = &follows {
        held.set("offered", if kept.offered { "yes" } else { "no" });
        for fact in class_facts() {
            let declaration: &Declaration = fact.declaration();
            held.set(name_of(declaration), as_typed(kept.table.value(fact)));
        }
    }
    page(&TypingPage::new(frame, FormState::holding(held), follows))
}

/// `POST /class-tables`
pub async fn send(State(state): State<AppState>, Staff(caller): Staff, sent: Sent<Typed>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let of = sent.typed.get("of").and_then(|of| of.parse().ok());
    let problems = match sent.read {
        Ok(Typed(table)) => match state.service.write(Who::Staff(caller.clone()), Key(sent.once), table).await {
            Ok(written) => return on_to(&format!("/class-tables/{}", written.table)),
            Err(service::Failure::Problems(problems)) => problems_of(problems),
            Err(failure) => return Err(failure.into()),
        },
        Err(problems) => problems,
    };
    let follows = newest(&state, &caller, of).await?;
    again(&TypingPage::new(frame, FormState::back(sent.typed, problems), follows))
}

async fn newest(state: &AppState, caller: &Caller, of: Option<Uuid>) -> Result<Option<KeptTable>, Failure> {
    match of {
        Some(table) => Ok(state.service.class_table(caller, table).await?.into_iter().next()),
        None => Ok(None),
    }
}
