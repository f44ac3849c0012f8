//! What the owner says changes cost here: every setting is kept, the latest stands.

use super::columns::At;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// One time the owner set what something costs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PriceSet {
    /// The lever's code, or `labour-hour`.
    pub name: String,
    /// Which setting of this name it is, from 1.
    pub turn: i32,
    /// The labour; none: back to as supplied.
    pub minutes: Option<i32>,
    /// The parts, or the rate; none: back to as supplied.
    pub cents: Option<i64>,
    /// Who.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// The latest setting of every name, or of one.
pub async fn latest(conn: &mut PgConnection, shop: Uuid, name: Option<&str>) -> sqlx::Result<Vec<PriceSet>> {
    sqlx::query_as!(
        PriceSet,
        r#"SELECT DISTINCT ON (name) name, turn, minutes, cents, made_by, at AS "at: At" FROM lever_price
           WHERE shop_id = $1 AND ($2::text IS NULL OR name = $2) ORDER BY name, turn DESC"#,
        shop,
        name
    )
    .fetch_all(conn)
    .await
}

/// The settings of one name, newest first.
pub async fn history(conn: &mut PgConnection, shop: Uuid, name: &str, most: i64) -> sqlx::Result<Vec<PriceSet>> {
    sqlx::query_as!(
        PriceSet,
        r#"SELECT name, turn, minutes, cents, made_by, at AS "at: At" FROM lever_price
           WHERE shop_id = $1 AND name = $2 ORDER BY turn DESC LIMIT $3"#,
        shop,
        name,
        most
    )
    .fetch_all(conn)
    .await
}

/// Keeps a setting. Two for the same turn of a name cannot be kept.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, staff: Uuid, set: &PriceSet) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO lever_price (shop_id, name, turn, minutes, cents, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        shop,
        set.name,
        set.turn,
        set.minutes,
        set.cents,
        staff,
        set.made_by,
        set.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}
