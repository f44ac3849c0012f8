//! Limits the owner moved: every change is kept, the latest stands.

use super::columns::At;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// A limit that does not stand as supplied.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// The limit's name.
    pub name: String,
    /// Its number, in the limit's unit.
    pub number: f64,
}

/// Every limit that this shop has moved and not put back.
pub async fn moved(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Vec<Moved>> {
    sqlx::query_as!(
        Moved,
        r#"SELECT name, number AS "number!" FROM (
               SELECT DISTINCT ON (name) name, number FROM limit_change WHERE shop_id = $1 ORDER BY name, turn DESC
           ) AS latest WHERE number IS NOT NULL"#,
        shop
    )
    .fetch_all(conn)
    .await
}

/// One time the owner moved a limit.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitChange {
    /// The limit's name.
    pub name: String,
    /// Which change of this limit it is, from 1.
    pub turn: i32,
    /// The number it was moved to, in the limit's unit; none: back to as supplied.
    pub number: Option<f64>,
    /// Why.
    pub reason: String,
    /// Who.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// The latest changes, newest first: of one limit, or of all.
pub async fn changes(
    conn: &mut PgConnection,
    shop: Uuid,
    name: Option<&str>,
    most: i64,
) -> sqlx::Result<Vec<LimitChange>> {
    sqlx::query_as!(
        LimitChange,
        r#"SELECT name, turn, number, reason, made_by, at AS "at: At" FROM limit_change
           WHERE shop_id = $1 AND ($2::text IS NULL OR name = $2) ORDER BY at DESC, turn DESC LIMIT $3"#,
        shop,
        name,
        most
    )
    .fetch_all(conn)
    .await
}

/// Keeps a change. Two for the same turn of a limit cannot be kept.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, staff: Uuid, change: &LimitChange) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO limit_change (shop_id, name, turn, number, reason, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        shop,
        change.name,
        change.turn,
        change.number,
        change.reason,
        staff,
        change.made_by,
        change.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}
