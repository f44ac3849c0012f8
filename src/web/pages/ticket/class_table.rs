//! Which class table a ticket's class facts were taken from, and whether it still holds.

use crate::service::TicketPage;
use crate::ticket::{Age, ClassTable};
use crate::web::moment::moment;
use jiff::civil::Date;
use jiff::tz::TimeZone;

/// The table as the ticket shows it.
pub struct TableTakenView {
    /// Year, body and class.
    pub name: String,
    /// Its version.
    pub version: i32,
    /// The table's own page.
    pub address: String,
    /// Who took it and when.
    pub taken: String,
    /// Why it may be too old for the event; empty when it is not.
    pub warning: String,
    /// The number of a newer version; none when this is the newest.
    pub newer: Option<i32>,
    /// The facts that were changed by hand since.
    pub by_hand: Vec<&'static str>,
}

impl TableTakenView {
    /// What this ticket's facts were taken from, if they were.
    pub fn of(page: &TicketPage, zone: &TimeZone) -> Option<Self> {
        let taken = page.class_table.as_ref()?;
        let facts = &page.revision.contents.facts;
        let table = &taken.kept.table;
        Some(Self {
            name: table.name(),
            version: taken.kept.version,
            address: format!("/class-tables/{}", taken.kept.id),
            taken: format!("{}, {}", taken.by, moment(taken.at, zone)),
            warning: age_warning(table, facts.job().event.date.value().copied()),
            newer: (taken.newest > taken.kept.version).then_some(taken.newest),
            by_hand: table.departures(facts).iter().map(|fact| fact.declaration().label).collect(),
        })
    }
}

/// Why a table may be too old for an event; empty when it is not.
pub fn age_warning(table: &ClassTable, event: Option<Date>) -> String {
    let year = table.year;
    match (table.age(event), event) {
        (Age::Older, Some(event)) => format!(
            "Older than the event: this table is from the book of {year}, and the event is in {}. Rules change every \
             year. Read the current book, ask the official, and type the table anew.",
            event.year()
        ),
        (Age::Current, _) => String::new(),
        _ => format!(
            "The day of the event is not known yet, so nobody can say whether the book of {year} is too old for it."
        ),
    }
}
