//! Who holds the next move, and what is promised for when.

use super::change::open_ticket;
use super::write::Scene;
use super::{By, Command, Failure};
use crate::store::ticket;
use crate::ticket::{Action, Clash, Happening, WaitsFor};
use jiff::civil::Date;
use serde::Serialize;

/// Says who holds the next move.
#[derive(Clone, Debug, Serialize)]
pub struct ChangeWaits {
    /// The ticket.
    pub ticket: i64,
    /// Who the form showed.
    pub from: WaitsFor,
    /// Who it is.
    pub to: WaitsFor,
}

impl Command for ChangeWaits {
    type Answer = ();
    const NAME: &'static str = "change_waits";
    const BY: By = By::Staff(Action::ChangeWaits);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        if ticket.waits_for == self.to {
            return Ok(());
        }
        if ticket.waits_for != self.from {
            return Err(clash("waits_for", "Waits for", self.to.label(), ticket.waits_for.label()));
        }
        ticket::set_waits(scene.conn, scene.shop, ticket.id, self.to).await?;
        scene.happened(ticket.id, Happening::Waits { from: self.from, to: self.to }).await
    }
}

/// Promises a day, or takes a promise back.
#[derive(Clone, Debug, Serialize)]
pub struct ChangePromise {
    /// The ticket.
    pub ticket: i64,
    /// The day the form showed.
    pub from: Option<Date>,
    /// The day promised.
    pub to: Option<Date>,
}

impl Command for ChangePromise {
    type Answer = ();
    const NAME: &'static str = "change_promise";
    const BY: By = By::Staff(Action::ChangePromise);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        if ticket.promised == self.to {
            return Ok(());
        }
        if ticket.promised != self.from {
            return Err(clash("promised", "Promised for", &day(self.to), &day(ticket.promised)));
        }
        ticket::set_promise(scene.conn, scene.shop, ticket.id, self.to).await?;
        scene.happened(ticket.id, Happening::Promised { from: self.from, to: self.to }).await
    }
}

fn day(day: Option<Date>) -> String {
    day.map_or_else(|| "no day".to_owned(), |day| day.to_string())
}

/// A clash whose author stands in the ticket's history.
pub(super) fn clash(field: &str, label: &str, yours: &str, theirs: &str) -> Failure {
    let (field, label, yours, theirs) = (field.to_owned(), label.to_owned(), yours.to_owned(), theirs.to_owned());
    Failure::Conflict(vec![Clash { field, label, yours, theirs, by: None, at: None }])
}
