//! Variants of a job, and which of them the customer chose: written once, version by version.

use super::columns::At;
use crate::ticket::Edit;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// One version of a variant.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// Which variant of the ticket, counted from 1.
    pub nth: i32,
    /// Which version of it, counted from 1.
    pub version: i32,
    /// The revision it was made from.
    pub revision: i32,
    /// What people call it.
    pub name: String,
    /// What would be changed.
    pub edit: Edit,
    /// The labour in minutes, when somebody said.
    pub minutes: Option<i32>,
    /// Is it no longer offered?
    pub withdrawn: bool,
    /// Whose key.
    pub staff_id: Uuid,
    /// Whose name.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// What a customer chose.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chosen {
    /// The link it was chosen through.
    pub link_id: Uuid,
    /// Which variant.
    pub nth: i32,
    /// Which version of it.
    pub version: i32,
    /// What that version was called.
    pub variant: String,
    /// The digest of what the page told of it; empty for a choice from before this was kept.
    pub told: String,
    /// The name as typed.
    pub name: String,
    /// When.
    pub at: Timestamp,
}

/// Keeps one version.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, kept: &Kept) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO variant (shop_id, ticket_id, nth, version, revision, name, edit, minutes, withdrawn, staff_id,
                              made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
        shop,
        ticket,
        kept.nth,
        kept.version,
        kept.revision,
        kept.name,
        &kept.edit as _,
        kept.minutes,
        kept.withdrawn,
        kept.staff_id,
        kept.made_by,
        kept.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// The latest version of every variant a ticket ever had, withdrawn ones too, in the order they were made.
pub async fn latest(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Vec<Kept>> {
    sqlx::query_as!(
        Kept,
        r#"SELECT DISTINCT ON (nth) nth, version, revision, name, edit AS "edit: Edit", minutes, withdrawn, staff_id,
                  made_by, at AS "at: At"
           FROM variant WHERE shop_id = $1 AND ticket_id = $2 ORDER BY nth, version DESC"#,
        shop,
        ticket
    )
    .fetch_all(conn)
    .await
}

/// Keeps what a customer chose.
pub async fn insert_chosen(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, chosen: &Chosen) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO variant_choice (shop_id, link_id, ticket_id, nth, version, told, name, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        shop,
        chosen.link_id,
        ticket,
        chosen.nth,
        chosen.version,
        chosen.told,
        chosen.name,
        chosen.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Everything a ticket's customer chose, newest first.
pub async fn chosen(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Vec<Chosen>> {
    sqlx::query_as!(
        Chosen,
        r#"SELECT c.link_id, c.nth, c.version, v.name AS variant, c.told, c.name, c.at AS "at: At"
           FROM variant_choice c
           JOIN variant v ON v.shop_id = $1 AND v.ticket_id = $2 AND v.nth = c.nth AND v.version = c.version
           WHERE c.shop_id = $1 AND c.ticket_id = $2 ORDER BY c.at DESC, c.link_id DESC"#,
        shop,
        ticket
    )
    .fetch_all(conn)
    .await
}
