//! The step log: what was done on a job, in the order it was done.

use super::columns::At;
use crate::ticket::{Act, Logged};
use jiff_sqlx::ToSqlx;
use serde_json::Value;
use sqlx::PgConnection;
use uuid::Uuid;

/// A ticket's log, in order.
pub async fn log(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Vec<Logged>> {
    sqlx::query!(
        r#"SELECT place, step, act AS "act: Act", initials, typed, reason, fills, made_by, at AS "at: At"
           FROM step_log WHERE shop_id = $1 AND ticket_id = $2 ORDER BY place"#,
        shop,
        ticket
    )
    .map(|row| Logged {
        place: row.place,
        step: row.step,
        act: row.act,
        initials: row.initials,
        typed: match row.typed {
            Value::Object(typed) => typed,
            _ => serde_json::Map::new(),
        },
        reason: row.reason,
        fills: row.fills,
        by: row.made_by,
        at: row.at.into(),
    })
    .fetch_all(conn)
    .await
}

/// Writes a line.
pub async fn insert(
    conn: &mut PgConnection,
    shop: Uuid,
    ticket: Uuid,
    staff: Uuid,
    entry: &Logged,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO step_log (shop_id, ticket_id, place, step, act, initials, typed, reason, fills, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
        shop,
        ticket,
        entry.place,
        entry.step,
        entry.act.code(),
        entry.initials,
        Value::Object(entry.typed.clone()),
        entry.reason,
        entry.fills,
        staff,
        entry.by,
        entry.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}
