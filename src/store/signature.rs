//! Signatures and the gates an owner passed: written once.

use super::columns::At;
use crate::ticket::{Answer, Channel, Gate, Purpose};
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// A customer's answer as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// The key.
    pub id: Uuid,
    /// The ticket.
    pub ticket_id: Uuid,
    /// The revision that was shown.
    pub revision: i32,
    /// What it was for.
    pub purpose: Purpose,
    /// What was answered.
    pub answer: Answer,
    /// Where.
    pub channel: Channel,
    /// The link it came through.
    pub link_id: Option<Uuid>,
    /// The member of staff at the counter.
    pub witness: Option<String>,
    /// The name as typed.
    pub name: String,
    /// When.
    pub at: Timestamp,
    /// The canonical text of the whole record.
    pub record: String,
    /// SHA-256 over that text.
    pub digest: Vec<u8>,
    /// The receipt's reference.
    pub reference: String,
}

/// Keeps an answer.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, kept: &Kept) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO signature (shop_id, id, ticket_id, revision, purpose, answer, channel, link_id, witness, name, at,
                                record, digest, reference)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)",
        shop,
        kept.id,
        kept.ticket_id,
        kept.revision,
        kept.purpose.code(),
        kept.answer.code(),
        kept.channel.code(),
        kept.link_id,
        kept.witness,
        kept.name,
        kept.at.to_sqlx() as _,
        kept.record,
        kept.digest,
        kept.reference
    )
    .execute(conn)
    .await
    .map(drop)
}

/// A ticket's answers, newest first.
pub async fn of_ticket(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Vec<Kept>> {
    sqlx::query_as!(
        Kept,
        r#"SELECT id, ticket_id, revision, purpose AS "purpose: Purpose", answer AS "answer: Answer",
                  channel AS "channel: Channel", link_id, witness, name, at AS "at: At", record, digest, reference
           FROM signature WHERE shop_id = $1 AND ticket_id = $2 ORDER BY at DESC, id DESC"#,
        shop,
        ticket
    )
    .fetch_all(conn)
    .await
}

/// The revision that the customer last signed as a build summary, with its price in cents.
pub async fn last_build(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Option<(i32, Option<i64>)>> {
    sqlx::query!(
        "SELECT s.revision, r.price_cents
         FROM signature s
         JOIN revision r ON r.shop_id = s.shop_id AND r.ticket_id = s.ticket_id AND r.number = s.revision
         WHERE s.shop_id = $1 AND s.ticket_id = $2 AND s.purpose = 'build' AND s.answer = 'signed'
         ORDER BY s.at DESC, s.id DESC LIMIT 1",
        shop,
        ticket
    )
    .map(|row| (row.revision, row.price_cents))
    .fetch_optional(conn)
    .await
}

/// The answer with this reference.
pub async fn by_reference(conn: &mut PgConnection, shop: Uuid, reference: &str) -> sqlx::Result<Option<Kept>> {
    sqlx::query_as!(
        Kept,
        r#"SELECT id, ticket_id, revision, purpose AS "purpose: Purpose", answer AS "answer: Answer",
                  channel AS "channel: Channel", link_id, witness, name, at AS "at: At", record, digest, reference
           FROM signature WHERE shop_id = $1 AND reference = $2"#,
        shop,
        reference
    )
    .fetch_optional(conn)
    .await
}

/// A gate an owner passed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Passed {
    /// The key.
    pub id: Uuid,
    /// The revision it was decided on.
    pub revision: i32,
    /// The gate.
    pub gate: Gate,
    /// Why.
    pub reason: String,
    /// What a signature would have covered then.
    pub covers: String,
    /// The codes of the stops that stood then.
    pub stops: Vec<String>,
    /// Whose key.
    pub staff_id: Uuid,
    /// Whose name.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// Keeps an owner's decision.
pub async fn insert_passed(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, passed: &Passed) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO gate_override (shop_id, id, ticket_id, revision, gate, reason, covers, stops, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
        shop,
        passed.id,
        ticket,
        passed.revision,
        passed.gate.code(),
        passed.reason,
        passed.covers,
        &passed.stops,
        passed.staff_id,
        passed.made_by,
        passed.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Every gate an owner passed on a ticket, newest first.
pub async fn passed(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Vec<Passed>> {
    sqlx::query_as!(
        Passed,
        r#"SELECT id, revision, gate AS "gate: Gate", reason, covers, stops, staff_id, made_by, at AS "at: At"
           FROM gate_override WHERE shop_id = $1 AND ticket_id = $2 ORDER BY at DESC, id DESC"#,
        shop,
        ticket
    )
    .fetch_all(conn)
    .await
}
