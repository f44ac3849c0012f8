//! The ticket's own row: what stands now.

use super::columns::{At, Day};
use crate::ticket::{Answer, Stage, WaitsFor};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// A ticket as it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ticket {
    /// The key.
    pub id: Uuid,
    /// The number people use.
    pub number: i64,
    /// Whose unit it is.
    pub customer_id: Uuid,
    /// What it came in.
    pub vehicle_id: Uuid,
    /// The earlier ticket of the same vehicle that this one comes back from.
    pub comeback_of: Option<Uuid>,
    /// Where the job stands.
    pub stage: Stage,
    /// Who holds the next move.
    pub waits_for: WaitsFor,
    /// The day it is promised for.
    pub promised: Option<Date>,
    /// The number of the current revision.
    pub revision: i32,
    /// The digest of what a signature on the current revision would cover.
    pub covers: String,
    /// The customer's latest answer to the teardown authorisation.
    pub intake_answer: Option<Answer>,
    /// The customer's latest answer to a build summary.
    pub build_answer: Option<Answer>,
    /// What that answer covered.
    pub build_covers: Option<String>,
    /// When it was opened.
    pub opened_at: Timestamp,
    /// When anything last happened to it.
    pub changed_at: Timestamp,
}

/// How many findings of the current revision are open, for the board.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Stops.
    pub stops: i32,
    /// Cautions.
    pub cautions: i32,
    /// Rules that cannot be decided though the stage asks for them.
    pub questions: i32,
}

macro_rules! ticket {
    ($sql:literal, $($argument:expr),+) => {
        sqlx::query!($sql, $($argument),+).map(|row| Ticket {
            id: row.id,
            number: row.number,
            customer_id: row.customer_id,
            vehicle_id: row.vehicle_id,
            comeback_of: row.comeback_of,
            stage: row.stage,
            waits_for: row.waits_for,
            promised: row.promised.map(Into::into),
            revision: row.revision,
            covers: row.covers,
            intake_answer: row.intake_answer,
            build_answer: row.build_answer,
            build_covers: row.build_covers,
            opened_at: row.opened_at.into(),
            changed_at: row.changed_at.into(),
        })
    };
}

/// The ticket with this number; its row stays locked until the transaction ends.
pub async fn lock(conn: &mut PgConnection, shop: Uuid, number: i64) -> sqlx::Result<Option<Ticket>> {
    ticket!(
        r#"SELECT id, number, customer_id, vehicle_id, comeback_of, stage AS "stage: Stage",
                  waits_for AS "waits_for: WaitsFor", promised AS "promised: Day", revision, covers,
                  intake_answer AS "intake_answer: Answer", build_answer AS "build_answer: Answer", build_covers,
                  opened_at AS "opened_at: At", changed_at AS "changed_at: At"
           FROM ticket WHERE shop_id = $1 AND number = $2 FOR UPDATE"#,
        shop,
        number
    )
    .fetch_optional(conn)
    .await
}

/// The ticket with this number, to look at.
pub async fn find(conn: &mut PgConnection, shop: Uuid, number: i64) -> sqlx::Result<Option<Ticket>> {
    ticket!(
        r#"SELECT id, number, customer_id, vehicle_id, comeback_of, stage AS "stage: Stage",
                  waits_for AS "waits_for: WaitsFor", promised AS "promised: Day", revision, covers,
                  intake_answer AS "intake_answer: Answer", build_answer AS "build_answer: Answer", build_covers,
                  opened_at AS "opened_at: At", changed_at AS "changed_at: At"
           FROM ticket WHERE shop_id = $1 AND number = $2"#,
        shop,
        number
    )
    .fetch_optional(conn)
    .await
}

/// The number of the ticket with this key.
pub async fn number(conn: &mut PgConnection, shop: Uuid, id: Uuid) -> sqlx::Result<Option<i64>> {
    sqlx::query_scalar!("SELECT number FROM ticket WHERE shop_id = $1 AND id = $2", shop, id).fetch_optional(conn).await
}

/// The numbers of the vehicle's other tickets, newest first.
pub async fn of_vehicle(conn: &mut PgConnection, shop: Uuid, vehicle: Uuid) -> sqlx::Result<Vec<i64>> {
    sqlx::query_scalar!(
        "SELECT number FROM ticket WHERE shop_id = $1 AND vehicle_id = $2 ORDER BY number DESC LIMIT 50",
        shop,
        vehicle
    )
    .fetch_all(conn)
    .await
}

/// Opens a ticket.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, ticket: &Ticket, counts: Counts) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO ticket (shop_id, id, number, customer_id, vehicle_id, comeback_of, stage, waits_for, promised,
                             revision, covers, open_stops, open_cautions, open_questions, last_seq, opened_at,
                             changed_at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, 0, $15, $15)",
        shop,
        ticket.id,
        ticket.number,
        ticket.customer_id,
        ticket.vehicle_id,
        ticket.comeback_of,
        ticket.stage.code(),
        ticket.waits_for.code(),
        ticket.promised.map(ToSqlx::to_sqlx) as _,
        ticket.revision,
        ticket.covers,
        counts.stops,
        counts.cautions,
        counts.questions,
        ticket.opened_at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Makes a revision the current one.
pub async fn set_revision(
    conn: &mut PgConnection,
    shop: Uuid,
    id: Uuid,
    revision: i32,
    covers: &str,
    counts: Counts,
) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE ticket SET revision = $3, covers = $4, open_stops = $5, open_cautions = $6, open_questions = $7
         WHERE shop_id = $1 AND id = $2",
        shop,
        id,
        revision,
        covers,
        counts.stops,
        counts.cautions,
        counts.questions
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Counts what stands open anew, after something but a revision changed it.
pub async fn set_counts(conn: &mut PgConnection, shop: Uuid, id: Uuid, counts: Counts) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE ticket SET open_stops = $3, open_cautions = $4, open_questions = $5 WHERE shop_id = $1 AND id = $2",
        shop,
        id,
        counts.stops,
        counts.cautions,
        counts.questions
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Moves a ticket to a stage, with the questions that stage asks.
pub async fn set_stage(
    conn: &mut PgConnection,
    shop: Uuid,
    id: Uuid,
    stage: Stage,
    questions: i32,
) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE ticket SET stage = $3, open_questions = $4 WHERE shop_id = $1 AND id = $2",
        shop,
        id,
        stage.code(),
        questions
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Says who holds the next move.
pub async fn set_waits(conn: &mut PgConnection, shop: Uuid, id: Uuid, waits_for: WaitsFor) -> sqlx::Result<()> {
    sqlx::query!("UPDATE ticket SET waits_for = $3 WHERE shop_id = $1 AND id = $2", shop, id, waits_for.code())
        .execute(conn)
        .await
        .map(drop)
}

/// Promises a day, or takes the promise back.
pub async fn set_promise(conn: &mut PgConnection, shop: Uuid, id: Uuid, promised: Option<Date>) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE ticket SET promised = $3 WHERE shop_id = $1 AND id = $2",
        shop,
        id,
        promised.map(ToSqlx::to_sqlx) as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Notes the customer's answer to the teardown authorisation.
pub async fn set_intake_answer(conn: &mut PgConnection, shop: Uuid, id: Uuid, answer: Answer) -> sqlx::Result<()> {
    sqlx::query!("UPDATE ticket SET intake_answer = $3 WHERE shop_id = $1 AND id = $2", shop, id, answer.code())
        .execute(conn)
        .await
        .map(drop)
}

/// Notes the customer's answer to a build summary and what it covered.
pub async fn set_build_answer(
    conn: &mut PgConnection,
    shop: Uuid,
    id: Uuid,
    answer: Answer,
    covers: &str,
) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE ticket SET build_answer = $3, build_covers = $4 WHERE shop_id = $1 AND id = $2",
        shop,
        id,
        answer.code(),
        covers
    )
    .execute(conn)
    .await
    .map(drop)
}
