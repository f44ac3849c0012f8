//! What is on the shelf of each selective set, and the units a shop writes numbers in: every version is kept.

use super::columns::At;
use crate::plan::sheet::{Habit, SetPart};
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use sqlx::types::Json;
use uuid::Uuid;

/// One version of a set.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptSet {
    /// The set's code.
    pub code: String,
    /// Which version of it, counted from 1.
    pub version: i32,
    /// The parts, as they were typed.
    pub parts: Vec<SetPart>,
    /// Who typed it.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// The latest version of every set that was ever typed.
pub async fn latest(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Vec<KeptSet>> {
    sqlx::query!(
        r#"SELECT DISTINCT ON (code) code, version, parts AS "parts: Json<Vec<SetPart>>", made_by, at AS "at: At"
           FROM selective_set WHERE shop_id = $1 ORDER BY code, version DESC"#,
        shop
    )
    .map(|row| KeptSet {
        code: row.code,
        version: row.version,
        parts: row.parts.0,
        made_by: row.made_by,
        at: row.at.into(),
    })
    .fetch_all(conn)
    .await
}

/// Keeps a version. Two for the same version of one set cannot be kept.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, staff: Uuid, kept: &KeptSet) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO selective_set (shop_id, code, version, parts, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7)",
        shop,
        kept.code,
        kept.version,
        Json(&kept.parts) as _,
        staff,
        kept.made_by,
        kept.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// The units that stand, and the turn they came with; as supplied and 0 when nobody ever chose.
pub async fn habit(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<(Habit, i32)> {
    let found = sqlx::query!(
        r#"SELECT habit AS "habit: Json<Habit>", turn FROM bench_unit WHERE shop_id = $1 ORDER BY turn DESC LIMIT 1"#,
        shop
    )
    .fetch_optional(conn)
    .await?;
    Ok(found.map_or((Habit::default(), 0), |row| (row.habit.0, row.turn)))
}

/// Keeps the units. Two for the same turn cannot be kept.
pub async fn insert_habit(
    conn: &mut PgConnection,
    shop: Uuid,
    (staff, by): (Uuid, &str),
    (habit, turn): (Habit, i32),
    at: Timestamp,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO bench_unit (shop_id, turn, habit, staff_id, made_by, at) VALUES ($1, $2, $3, $4, $5, $6)",
        shop,
        turn,
        Json(habit) as _,
        staff,
        by,
        at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}
