//! The history, and the outbox that tells live pages of it.

use super::columns::At;
use crate::ticket::Happening;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// One thing that happened, with who, when and from which device.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// The key the form was sent with.
    pub id: Uuid,
    /// When.
    pub at: Timestamp,
    /// The member of staff, if it was one.
    pub staff_id: Option<Uuid>,
    /// Who, by name.
    pub by_name: String,
    /// From which device.
    pub device: String,
    /// What.
    pub happened: Happening,
}

/// Writes an event of a ticket, in the ticket's own sequence, and tells the outbox.
pub async fn of_ticket(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, event: &Event) -> sqlx::Result<()> {
    sqlx::query!(
        "WITH turn AS (
             UPDATE ticket SET last_seq = last_seq + 1, changed_at = greatest(changed_at, $4)
             WHERE shop_id = $1 AND id = $2 RETURNING last_seq
         ), written AS (
             INSERT INTO event (shop_id, ticket_id, id, at, staff_id, by_name, device, happened, seq)
             SELECT $1, $2, $3, $4, $5, $6, $7, $8, last_seq FROM turn
         )
         INSERT INTO outbox (shop_id, ticket_id, event_id, at) VALUES ($1, $2, $3, $4)",
        shop,
        ticket,
        event.id,
        event.at.to_sqlx() as _,
        event.staff_id,
        event.by_name,
        event.device,
        &event.happened as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Writes an event of the shop itself.
pub async fn of_shop(conn: &mut PgConnection, shop: Uuid, event: &Event) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO event (shop_id, id, at, staff_id, by_name, device, happened)
         VALUES ($1, $2, $3, $4, $5, $6, $7)",
        shop,
        event.id,
        event.at.to_sqlx() as _,
        event.staff_id,
        event.by_name,
        event.device,
        &event.happened as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// A ticket's history, newest first.
pub async fn history(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, limit: i64) -> sqlx::Result<Vec<Event>> {
    sqlx::query_as!(
        Event,
        r#"SELECT id, at AS "at: At", staff_id, by_name, device, happened AS "happened: Happening"
           FROM event WHERE shop_id = $1 AND ticket_id = $2 ORDER BY seq DESC LIMIT $3"#,
        shop,
        ticket,
        limit
    )
    .fetch_all(conn)
    .await
}
