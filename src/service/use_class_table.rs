//! Taking a ticket's class facts from a table instead of typing them.

use super::change::any_ticket;
use super::class_table::newest;
use super::write::Scene;
use super::{By, ChangeTicket, Command, Failure, KeptTable, Revised, TableVersion};
use crate::store::class_table::{self, TableUse};
use crate::ticket::{Action, Happening};
use jiff::Timestamp;
use serde::Serialize;
use sqlx::PgConnection;
use uuid::Uuid;

/// All class facts of a ticket from one table: an edit like any other, with the table noted beside it.
#[derive(Clone, Debug, Serialize)]
pub struct UseClassTable {
    /// The ticket.
    pub ticket: i64,
    /// The revision the choice was made upon.
    pub made_from: i32,
    /// The table as it was shown.
    pub table: TableVersion,
}

impl Command for UseClassTable {
    type Answer = Revised;
    const NAME: &'static str = "use_class_table";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Revised, Failure> {
        let TableVersion { table, version } = self.table;
        let newest = newest(scene, table).await?;
        if newest.version != version || !newest.offered {
            let message = "This table was changed since the page was opened. Look at it as it is now, then choose.";
            return Err(Failure::problem("table", message));
        }
        let change = ChangeTicket { ticket: self.ticket, made_from: self.made_from, edit: newest.table.edit() };
        let revised = change.carry_out(scene).await?;
        let ticket = any_ticket(scene, self.ticket).await?;
        let hand = scene.hand();
        let taken = TableUse { table, version, by: hand.by, at: hand.at };
        class_table::insert_use(scene.conn, scene.shop, ticket.id, revised.revision, &taken).await?;
        scene.happened(ticket.id, Happening::ClassTableTaken { name: newest.table.name(), version }).await?;
        Ok(revised)
    }
}

/// The table a ticket's class facts were taken from.
#[derive(Clone, Debug, PartialEq)]
pub struct TableTaken {
    /// The table as it was then.
    pub kept: KeptTable,
    /// The number of its newest version now.
    pub newest: i32,
    /// Who took it.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

/// The table this ticket's class facts were taken from last, if they ever were.
pub(super) async fn taken(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> Result<Option<TableTaken>, Failure> {
    let Some(taken) = class_table::used(conn, shop, ticket).await? else { return Ok(None) };
    let versions = class_table::versions(conn, shop, taken.table).await?;
    let newest = versions.first().map_or(taken.version, |first| first.version);
    let kept = versions.into_iter().find(|kept| kept.version == taken.version);
    Ok(kept.map(|kept| TableTaken { kept, newest, by: taken.by, at: taken.at }))
}
