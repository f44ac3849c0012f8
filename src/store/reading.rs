//! What was measured on a job, and what was chosen by it: written once.

use super::columns::{At, Day};
use crate::plan::sheet::Read;
use jiff::Timestamp;
use jiff::civil::Date;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use sqlx::types::Json;
use uuid::Uuid;

/// One time that something was measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The ticket's number.
    pub ticket: i64,
    /// The measurement's name.
    pub measurement: String,
    /// Which time, counted from 1 on this ticket.
    pub turn: i32,
    /// The revision that stood after it.
    pub revision: i32,
    /// Each number as it was typed.
    pub taken: Vec<Read>,
    /// What was in the unit while it was read, as it was typed.
    pub fitted: Vec<Read>,
    /// What they come to, in the scale's own unit.
    pub number: f64,
    /// How far apart they lay.
    pub spread: f64,
    /// What was said of it on that day.
    pub verdict: String,
    /// What it was held against on that day.
    pub held_against: String,
    /// The instrument and its version; none when nobody wrote it down.
    pub instrument: Option<(i32, i32)>,
    /// The instrument's name; empty when nobody wrote it down.
    pub instrument_name: String,
    /// The last day the instrument's calibration was good for, as known on that day.
    pub due: Option<Date>,
    /// Was it past that day?
    pub past_due: bool,
    /// Who.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
    /// The part that was chosen by it: what, what it leaves, does it fit; none yet for most.
    pub chosen: Option<Chosen>,
    /// That it was taken by mistake; none for most. A struck reading counts for nothing.
    pub struck: Option<Struck>,
}

/// That a reading was taken by mistake.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Struck {
    /// Why.
    pub reason: String,
    /// Who struck it.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// A part that was chosen by a reading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chosen {
    /// As a person picks it from the drawer.
    pub part: String,
    /// What it was to leave.
    pub leaves: String,
    /// Did it fit, by the sum?
    pub fits: bool,
    /// Who chose it.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// Every reading of these tickets, of one measurement or of all, newest first.
pub async fn of_tickets(
    conn: &mut PgConnection,
    shop: Uuid,
    tickets: &[i64],
    measurement: Option<&str>,
) -> sqlx::Result<Vec<Reading>> {
    sqlx::query!(
        r#"SELECT ticket.number AS ticket, reading.measurement, reading.turn, reading.revision,
                  taken AS "taken: Json<Vec<Read>>", fitted AS "fitted: Json<Vec<Read>>", reading.number, spread,
                  verdict, held_against, instrument, instrument_version, instrument.name AS "instrument_name?",
                  instrument.due AS "due?: Day", past_due, reading.made_by, reading.at AS "at: At",
                  choice.part AS "part?", choice.leaves AS "leaves?", choice.fits AS "fits?",
                  choice.made_by AS "chosen_by?", choice.at AS "chosen_at?: At",
                  struck.reason AS "struck_for?", struck.made_by AS "struck_by?", struck.at AS "struck_at?: At"
           FROM ticket
           JOIN reading ON reading.shop_id = ticket.shop_id AND reading.ticket_id = ticket.id
           LEFT JOIN instrument ON instrument.shop_id = reading.shop_id AND instrument.nth = reading.instrument
                                AND instrument.version = reading.instrument_version
           LEFT JOIN LATERAL (
               SELECT part, leaves, fits, made_by, at FROM part_choice
               WHERE part_choice.shop_id = reading.shop_id AND part_choice.ticket_id = reading.ticket_id
                 AND part_choice.measurement = reading.measurement AND part_choice.reading = reading.turn
               ORDER BY part_choice.turn DESC LIMIT 1
           ) AS choice ON true
           LEFT JOIN struck_reading AS struck
                  ON struck.shop_id = reading.shop_id AND struck.ticket_id = reading.ticket_id
                 AND struck.measurement = reading.measurement AND struck.turn = reading.turn
           WHERE ticket.shop_id = $1 AND ticket.number = ANY($2) AND ($3::text IS NULL OR reading.measurement = $3)
           ORDER BY reading.at DESC, reading.measurement, reading.turn DESC"#,
        shop,
        tickets,
        measurement
    )
    .map(|row| Reading {
        ticket: row.ticket,
        measurement: row.measurement,
        turn: row.turn,
        revision: row.revision,
        taken: row.taken.0,
        fitted: row.fitted.0,
        number: row.number,
        spread: row.spread,
        verdict: row.verdict,
        held_against: row.held_against,
        instrument: row.instrument.zip(row.instrument_version),
        instrument_name: row.instrument_name.unwrap_or_default(),
        due: row.due.map(Into::into),
        past_due: row.past_due,
        made_by: row.made_by,
        at: row.at.into(),
        chosen: row.part.map(|part| Chosen {
            part,
            leaves: row.leaves.unwrap_or_default(),
            fits: row.fits.unwrap_or_default(),
            made_by: row.chosen_by.unwrap_or_default(),
            at: row.chosen_at.map_or(Timestamp::UNIX_EPOCH, Into::into),
        }),
        struck: row.struck_for.map(|reason| Struck {
            reason,
            made_by: row.struck_by.unwrap_or_default(),
            at: row.struck_at.map_or(Timestamp::UNIX_EPOCH, Into::into),
        }),
    })
    .fetch_all(conn)
    .await
}

/// How often something was measured on a ticket.
pub async fn turns(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, measurement: &str) -> sqlx::Result<i32> {
    sqlx::query_scalar!(
        r#"SELECT coalesce(max(turn), 0) AS "turn!" FROM reading
           WHERE shop_id = $1 AND ticket_id = $2 AND measurement = $3"#,
        shop,
        ticket,
        measurement
    )
    .fetch_one(conn)
    .await
}

/// Keeps a reading of a ticket.
pub async fn insert(
    conn: &mut PgConnection,
    shop: Uuid,
    (ticket, staff): (Uuid, Uuid),
    reading: &Reading,
) -> sqlx::Result<()> {
    let (instrument, version) = reading.instrument.unzip();
    sqlx::query!(
        "INSERT INTO reading (shop_id, ticket_id, measurement, turn, revision, taken, fitted, number, spread, verdict,
                              held_against, instrument, instrument_version, past_due, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17)",
        shop,
        ticket,
        reading.measurement,
        reading.turn,
        reading.revision,
        Json(&reading.taken) as _,
        Json(&reading.fitted) as _,
        reading.number,
        reading.spread,
        reading.verdict,
        reading.held_against,
        instrument,
        version,
        reading.past_due,
        staff,
        reading.made_by,
        reading.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Keeps what was chosen by a reading, in its next turn.
pub async fn insert_choice(
    conn: &mut PgConnection,
    shop: Uuid,
    (ticket, staff): (Uuid, Uuid),
    (measurement, reading): (&str, i32),
    chosen: &Chosen,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO part_choice (shop_id, ticket_id, measurement, reading, turn, part, leaves, fits, staff_id, made_by,
                                  at)
         SELECT $1, $2, $3, $4, coalesce(max(turn), 0) + 1, $5, $6, $7, $8, $9, $10 FROM part_choice
         WHERE shop_id = $1 AND ticket_id = $2 AND measurement = $3 AND reading = $4",
        shop,
        ticket,
        measurement,
        reading,
        chosen.part,
        chosen.leaves,
        chosen.fits,
        staff,
        chosen.made_by,
        chosen.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Keeps that a reading was struck. One reading cannot be struck twice.
pub async fn insert_struck(
    conn: &mut PgConnection,
    shop: Uuid,
    (ticket, staff): (Uuid, Uuid),
    (measurement, turn): (&str, i32),
    struck: &Struck,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO struck_reading (shop_id, ticket_id, measurement, turn, reason, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        shop,
        ticket,
        measurement,
        turn,
        struck.reason,
        staff,
        struck.made_by,
        struck.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// The tickets of a vehicle: number, key, and the ticket each comes back from.
pub async fn life(conn: &mut PgConnection, shop: Uuid, vehicle: Uuid) -> sqlx::Result<Vec<(i64, Uuid, Option<Uuid>)>> {
    sqlx::query!(
        "SELECT number, id, comeback_of FROM ticket WHERE shop_id = $1 AND vehicle_id = $2 ORDER BY number DESC LIMIT 100",
        shop,
        vehicle
    )
    .map(|row| (row.number, row.id, row.comeback_of))
    .fetch_all(conn)
    .await
}
