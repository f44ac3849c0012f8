//! Rules of the shop's own: every version, its trials, and which one is in force.

use super::columns::At;
use crate::ticket::TicketFacts;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use serde::{Deserialize, Serialize};
use sqlx::PgConnection;
use sqlx::types::Json;
use uuid::Uuid;

/// One version of a rule, as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Version {
    /// Which rule of the shop, counted from 1.
    pub nth: i32,
    /// Which version of it, counted from 1.
    pub version: i32,
    /// The severity's code.
    pub severity: String,
    /// The code of the stage from which it is asked about.
    pub due: String,
    /// Does the customer have to accept it?
    pub customer_accepts: bool,
    /// A few words.
    pub title: String,
    /// What the shop is told.
    pub told_shop: String,
    /// What the customer is told; empty for nothing.
    pub told_customer: String,
    /// What puts it right.
    pub fix: String,
    /// The condition, as it was written.
    pub condition: String,
    /// Who wrote it.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
    /// Is this version in force?
    pub in_force: bool,
}

/// Every version of every rule of the shop, newest first within a rule.
pub async fn versions(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Vec<Version>> {
    sqlx::query_as!(
        Version,
        r#"SELECT r.nth, r.version, r.severity, r.due, r.customer_accepts, r.title, r.told_shop, r.told_customer,
                  r.fix, r.condition, r.made_by, r.at AS "at: At",
                  coalesce(s.in_force AND s.version = r.version, false) AS "in_force!"
           FROM house_rule r
           LEFT JOIN (SELECT DISTINCT ON (nth) nth, version, in_force FROM house_rule_switch
                      WHERE shop_id = $1 ORDER BY nth, turn DESC) s ON s.nth = r.nth
           WHERE r.shop_id = $1 ORDER BY r.nth, r.version DESC"#,
        shop
    )
    .fetch_all(conn)
    .await
}

/// The versions in force, by rule.
pub async fn in_force(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Vec<Version>> {
    sqlx::query_as!(
        Version,
        r#"SELECT r.nth, r.version, r.severity, r.due, r.customer_accepts, r.title, r.told_shop, r.told_customer,
                  r.fix, r.condition, r.made_by, r.at AS "at: At", s.in_force AS "in_force!"
           FROM (SELECT DISTINCT ON (nth) nth, version, in_force FROM house_rule_switch
                 WHERE shop_id = $1 ORDER BY nth, turn DESC) s
           JOIN house_rule r ON r.shop_id = $1 AND r.nth = s.nth AND r.version = s.version
           WHERE s.in_force ORDER BY r.nth"#,
        shop
    )
    .fetch_all(conn)
    .await
}

/// Keeps a version. Two writers of the same one meet at its key.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, staff: Uuid, rule: &Version) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO house_rule (shop_id, nth, version, severity, due, customer_accepts, title, told_shop,
                                 told_customer, fix, condition, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)",
        shop,
        rule.nth,
        rule.version,
        rule.severity,
        rule.due,
        rule.customer_accepts,
        rule.title,
        rule.told_shop,
        rule.told_customer,
        rule.fix,
        rule.condition,
        staff,
        rule.made_by,
        rule.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Who wrote a row, and when.
pub struct Hand<'a> {
    /// The person's key.
    pub staff: Uuid,
    /// The person's name.
    pub name: &'a str,
    /// When.
    pub at: Timestamp,
}

/// Switches a version on, or the rule off.
pub async fn switch(
    conn: &mut PgConnection,
    shop: Uuid,
    (nth, version): (i32, i32),
    in_force: bool,
    hand: &Hand<'_>,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO house_rule_switch (shop_id, nth, turn, version, in_force, staff_id, made_by, at)
         SELECT $1, $2, coalesce(max(turn), 0) + 1, $3, $4, $5, $6, $7
         FROM house_rule_switch WHERE shop_id = $1 AND nth = $2",
        shop,
        nth,
        version,
        in_force,
        hand.staff,
        hand.name,
        hand.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// A job on which a rule could not decide.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct OpenJob {
    /// Its number.
    pub job: i64,
    /// The facts it waits for there, as `group.leaf`.
    pub waits: Vec<String>,
}

/// What a version would have said of the jobs there were.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trial {
    /// How many jobs it was held against.
    pub jobs: i32,
    /// On how many it would have fired.
    pub fired: i32,
    /// On how many it could not decide.
    pub open: i32,
    /// Were those all the jobs of the shop?
    pub whole: bool,
    /// Some jobs on which it would have fired, newest first.
    pub on_jobs: Vec<i64>,
    /// Some jobs on which it could not decide, newest first.
    pub open_on: Json<Vec<OpenJob>>,
    /// Who tried it.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// The latest trial of a version, if there was one.
pub async fn trial(conn: &mut PgConnection, shop: Uuid, nth: i32, version: i32) -> sqlx::Result<Option<Trial>> {
    sqlx::query_as!(
        Trial,
        r#"SELECT jobs, fired, open, whole, on_jobs, open_on AS "open_on: Json<Vec<OpenJob>>", made_by, at AS "at: At"
           FROM house_rule_trial WHERE shop_id = $1 AND nth = $2 AND version = $3 ORDER BY turn DESC LIMIT 1"#,
        shop,
        nth,
        version
    )
    .fetch_optional(conn)
    .await
}

/// Keeps a trial.
pub async fn insert_trial(
    conn: &mut PgConnection,
    shop: Uuid,
    staff: Uuid,
    (nth, version): (i32, i32),
    trial: &Trial,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO house_rule_trial (shop_id, nth, version, turn, jobs, fired, open, whole, on_jobs, open_on, staff_id,
                                       made_by, at)
         SELECT $1, $2, $3, coalesce(max(turn), 0) + 1, $4, $5, $6, $7, $8, $9, $10, $11, $12
         FROM house_rule_trial WHERE shop_id = $1 AND nth = $2 AND version = $3",
        shop,
        nth,
        version,
        trial.jobs,
        trial.fired,
        trial.open,
        trial.whole,
        &trial.on_jobs,
        &trial.open_on as _,
        staff,
        trial.made_by,
        trial.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// The facts of jobs as they stand now, newest job first, from below this number on.
pub async fn facts_of_jobs(
    conn: &mut PgConnection,
    shop: Uuid,
    below: i64,
    most: i64,
) -> sqlx::Result<Vec<(i64, TicketFacts)>> {
    let rows = sqlx::query!(
        r#"SELECT t.number, r.facts AS "facts: TicketFacts"
           FROM ticket t JOIN revision r ON r.shop_id = t.shop_id AND r.ticket_id = t.id AND r.number = t.revision
           WHERE t.shop_id = $1 AND t.number < $2 ORDER BY t.number DESC LIMIT $3"#,
        shop,
        below,
        most
    )
    .fetch_all(conn)
    .await?;
    Ok(rows.into_iter().map(|row| (row.number, row.facts)).collect())
}
