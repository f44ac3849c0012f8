//! What is where: the open tickets, in one statement.

use super::columns::{At, Day};
use crate::ticket::{Answer, Stage, WaitsFor};
use jiff::Timestamp;
use jiff::civil::Date;
use sqlx::PgConnection;
use uuid::Uuid;

/// One ticket on a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// The number.
    pub number: i64,
    /// Where it stands.
    pub stage: Stage,
    /// Who holds the next move.
    pub waits_for: WaitsFor,
    /// When it is promised.
    pub promised: Option<Date>,
    /// Whose it is.
    pub customer: String,
    /// The customer's telephone number.
    pub phone: String,
    /// What it came in.
    pub vehicle: String,
    /// The number plate.
    pub plate: String,
    /// The current revision.
    pub revision: i32,
    /// Open stops.
    pub open_stops: i32,
    /// Open cautions.
    pub open_cautions: i32,
    /// What cannot be decided though the stage asks for it.
    pub open_questions: i32,
    /// The latest answer to the teardown authorisation.
    pub intake_answer: Option<Answer>,
    /// The latest answer to a build summary.
    pub build_answer: Option<Answer>,
    /// Does that answer cover what stands now?
    pub build_current: bool,
    /// Does it come back from an earlier job?
    pub comeback: bool,
    /// When anything last happened.
    pub changed_at: Timestamp,
}

macro_rules! lines {
    ($sql:literal, $($argument:expr),+) => {
        sqlx::query!($sql, $($argument),+).map(|row| Line {
            number: row.number,
            stage: row.stage,
            waits_for: row.waits_for,
            promised: row.promised.map(Into::into),
            customer: row.customer,
            phone: row.phone,
            vehicle: row.vehicle,
            plate: row.plate,
            revision: row.revision,
            open_stops: row.open_stops,
            open_cautions: row.open_cautions,
            open_questions: row.open_questions,
            intake_answer: row.intake_answer,
            build_answer: row.build_answer,
            build_current: row.build_current,
            comeback: row.comeback,
            changed_at: row.changed_at.into(),
        })
    };
}
pub(super) use lines;

/// Every open ticket, the earliest promise first; `stage` and `waits_for` narrow the list.
pub async fn open(
    conn: &mut PgConnection,
    shop: Uuid,
    stage: Option<Stage>,
    waits_for: Option<WaitsFor>,
    limit: i64,
) -> sqlx::Result<Vec<Line>> {
    lines!(
        r#"SELECT t.number, t.stage AS "stage: Stage", t.waits_for AS "waits_for: WaitsFor",
                  t.promised AS "promised: Day", c.name AS customer, c.phone, v.words AS vehicle, v.plate, t.revision,
                  t.open_stops, t.open_cautions, t.open_questions, t.intake_answer AS "intake_answer: Answer",
                  t.build_answer AS "build_answer: Answer", (t.build_covers IS NOT DISTINCT FROM t.covers) AS "build_current!",
                  t.comeback_of IS NOT NULL AS "comeback!", t.changed_at AS "changed_at: At"
           FROM ticket t
           JOIN customer c ON c.shop_id = t.shop_id AND c.id = t.customer_id
           JOIN vehicle v ON v.shop_id = t.shop_id AND v.id = t.vehicle_id
           WHERE t.shop_id = $1 AND t.stage NOT IN ('closed', 'declined')
             AND ($2::text IS NULL OR t.stage = $2) AND ($3::text IS NULL OR t.waits_for = $3)
           ORDER BY t.promised NULLS LAST, t.number LIMIT $4"#,
        shop,
        stage.map(Stage::code),
        waits_for.map(WaitsFor::code),
        limit
    )
    .fetch_all(conn)
    .await
}
