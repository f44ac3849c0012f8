//! The shop's class tables: which there are, and each with all of its versions.

pub mod form;

use crate::service::KeptTable;
use crate::ticket::{Action, class_facts, in_words};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::frame::{Answer, Frame, page};
use crate::web::moment::{moment, zone};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use jiff::tz::TimeZone;
use uuid::Uuid;

#[derive(Template)]
#[template(path = "pages/class_tables.html")]
struct ClassTablesPage {
    frame: Frame,
    tables: Vec<TableView>,
}

#[derive(Template)]
#[template(path = "pages/class_table.html")]
struct ClassTablePage {
    frame: Frame,
    /// Every version, the newest first.
    versions: Vec<TableView>,
}

/// One version of a table as pages show it.
pub struct TableView {
    /// The table's key.
    pub id: Uuid,
    /// The version.
    pub version: i32,
    /// Year, body and class.
    pub name: String,
    /// By whom and when it was typed.
    pub typed: String,
    /// Is it offered on tickets?
    pub offered: bool,
    /// What it says: the question and the answer.
    pub says: Vec<(&'static str, String)>,
    /// What it leaves open.
    pub open: Vec<&'static str>,
}

impl TableView {
    /// This version, with times in the shop's zone.
    pub fn new(kept: &KeptTable, zone: &TimeZone) -> Self {
        let (mut says, mut open) = (Vec::new(), Vec::new());
        for declaration in class_facts().map(|fact| (fact, fact.declaration())) {
            match kept.table.value(declaration.0) {
                Some(value) => says.push((declaration.1.label, in_words(declaration.1, value))),
                None => open.push(declaration.1.label),
            }
        }
        Self {
            id: kept.id,
            version: kept.version,
            name: kept.table.name(),
            typed: format!("{}, {}", kept.made_by, moment(kept.made_at, zone)),
            offered: kept.offered,
            says,
            open,
        }
    }
}

impl ClassTablesPage {
    fn may_type(&self) -> bool {
        self.frame.may(Action::WriteClassTables)
    }
}

impl ClassTablePage {
    fn may_type(&self) -> bool {
        self.frame.may(Action::WriteClassTables)
    }
}

/// `GET /class-tables`
pub async fn list(State(state): State<AppState>, Staff(caller): Staff) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let zone = zone(&frame.shop.zone);
    let tables = state.service.class_tables(&caller).await?;
    let tables = tables.iter().map(|kept| TableView::new(kept, &zone)).collect();
    page(&ClassTablesPage { frame, tables })
}

/// `GET /class-tables/{id}`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(table): At<Uuid>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let zone = zone(&frame.shop.zone);
    let versions = state.service.class_table(&caller, table).await?;
    let versions = versions.iter().map(|kept| TableView::new(kept, &zone)).collect();
    page(&ClassTablePage { frame, versions })
}
