//! Choosing a class table for one ticket instead of typing what the class asks for.

use super::class_tables::TableView;
use crate::service::{self, Caller, Key, TableVersion, UseClassTable, Who};
use crate::ticket::{Clash, ClassTable};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::pages::ticket::{Head, TableTakenView, age_warning, load};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

#[derive(Template)]
#[template(path = "pages/class_choice.html")]
struct ChoicePage {
    frame: Frame,
    head: Head,
    form: FormState,
    /// The revision the choice is made upon.
    base: i32,
    /// Where the person came from and goes back to: a code of [`back`].
    from: String,
    /// Is the vehicle raced, as far as anybody knows?
    raced: bool,
    /// What the facts were taken from last.
    taken: Option<TableTakenView>,
    offers: Vec<Offer>,
}

/// A table that can be taken.
struct Offer {
    table: TableView,
    /// Why it may be too old; empty when it is not.
    warning: String,
    /// Is it the version that the job took last?
    taken: bool,
}

/// Where the person came from.
#[derive(serde::Deserialize)]
pub struct From {
    #[serde(default)]
    from: String,
}

/// A table as it was chosen.
pub struct Chosen {
    base: i32,
    table: Option<TableVersion>,
}

impl Entry for Chosen {
    fn read(reader: &mut Reader<'_>) -> Self {
        let number = |name| reader.number(name).and_then(|number| i32::try_from(number).ok());
        let table = reader.key("table").zip(number("version"));
        let table = table.map(|(table, version)| TableVersion { table, version });
        Self { base: number("base").unwrap_or_default(), table }
    }
}

/// Back to where the person came from.
fn back(number: i64, from: &str) -> String {
    match from {
        "intake" => format!("/tickets/{number}/intake"),
        "spec" => format!("/tickets/{number}/facts/spec"),
        _ => format!("/tickets/{number}?saved=class"),
    }
}

/// `GET /tickets/{number}/class-table`
pub async fn show(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    Asked(asked): Asked<From>,
) -> Answer {
    let form = FormState::holding(Fields::default().with("from", asked.from));
    let shown = ChoicePage::of(&state, &caller, number, form).await?;
    match shown {
        Some(shown) => page(&shown),
        None => on_to(&format!("/tickets/{number}")),
    }
}

/// `POST /tickets/{number}/class-table`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<Chosen>,
) -> Answer {
    let chosen = sent.read.ok().and_then(|chosen| Some((chosen.base, chosen.table?)));
    let problems = match chosen {
        None => vec![Problem { field: "tables".into(), message: "Choose one of the tables below.".into() }],
        Some((made_from, table)) => {
            let command = UseClassTable { ticket: number, made_from, table };
            match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
                Ok(_) => return on_to(&back(number, sent.typed.get("from").unwrap_or_default())),
                Err(service::Failure::Problems(of)) => problems_of(of),
                Err(service::Failure::Conflict(clashes)) => clashes.iter().map(overtaken).collect(),
                Err(failure) => return Err(failure.into()),
            }
        }
    };
    match ChoicePage::of(&state, &caller, number, FormState::back(sent.typed, problems)).await? {
        Some(shown) => again(&shown),
        None => on_to(&format!("/tickets/{number}")),
    }
}

/// A table is taken whole or not at all, so a clash asks for another look and not for one of two values.
fn overtaken(clash: &Clash) -> Problem {
    let Clash { label, yours, theirs, by, .. } = clash;
    let by = by.as_deref().unwrap_or("Somebody");
    let message = format!(
        "{by} changed \"{label}\" meanwhile: it is {theirs} now, and the table says {yours}. If the table is right, take \
         it again."
    );
    Problem { field: "tables".into(), message }
}

impl ChoicePage {
    /// The page as things stand; none when the job can no longer be changed.
    async fn of(
        state: &AppState,
        caller: &Caller,
        number: i64,
        form: FormState,
    ) -> Result<Option<Self>, crate::web::failure::Failure> {
        let (frame, ticket, now) = load(state, caller, number).await?;
        if !ticket.ticket.stage.open() {
            return Ok(None);
        }
        let job = ticket.revision.contents.facts.job();
        let warning = |table: &ClassTable| age_warning(table, job.event.date.value().copied());
        let last = ticket.class_table.as_ref().map(|taken| (taken.kept.id, taken.kept.version));
        let tables = state.service.class_tables(caller).await?;
        let offers = tables
            .iter()
            .filter(|kept| kept.offered)
            .map(|kept| Offer {
                table: TableView::new(kept, &now.zone),
                warning: warning(&kept.table),
                taken: last == Some((kept.id, kept.version)),
            })
            .collect();
        Ok(Some(Self {
            head: Head::new(&ticket),
            base: ticket.revision.number,
            from: form.value("from").to_owned(),
            raced: job.usage.raced.value() == Some(&true),
            taken: TableTakenView::of(&ticket, &now.zone),
            offers,
            form,
            frame,
        }))
    }
}
