//! Class tables and where they were used: written once.

use super::columns::At;
use crate::ticket::ClassTable;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use serde_json::Value;
use sqlx::PgConnection;
use sqlx::types::Json;
use std::collections::BTreeMap;
use uuid::Uuid;

/// One version of a class table.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptTable {
    /// The table, the same for all of its versions.
    pub id: Uuid,
    /// Counted from 1.
    pub version: i32,
    /// What it says.
    pub table: ClassTable,
    /// Is it offered on tickets?
    pub offered: bool,
    /// Who typed it.
    pub made_by: String,
    /// When.
    pub made_at: Timestamp,
}

/// That a ticket took its class facts from a table.
#[derive(Clone, Debug, PartialEq)]
pub struct TableUse {
    /// Which table.
    pub table: Uuid,
    /// Which of its versions.
    pub version: i32,
    /// Who took it.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

/// A version as its row has it.
struct Row {
    id: Uuid,
    version: i32,
    year: i16,
    body: String,
    class: String,
    asks: Json<Asks>,
    offered: bool,
    made_by: String,
    made_at: At,
}

type Asks = BTreeMap<String, Value>;

impl From<Row> for KeptTable {
    fn from(row: Row) -> Self {
        Self {
            id: row.id,
            version: row.version,
            table: ClassTable { year: row.year, body: row.body, class: row.class, asks: row.asks.0 },
            offered: row.offered,
            made_by: row.made_by,
            made_at: row.made_at.into(),
        }
    }
}

/// The latest version of every table: the newest year first, then by body and class.
pub async fn latest(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Vec<KeptTable>> {
    let rows = sqlx::query_as!(
        Row,
        r#"SELECT id, version, year, body, class, asks AS "asks: Json<Asks>", offered, made_by, made_at AS "made_at: At"
           FROM (SELECT DISTINCT ON (id) id, version, year, body, class, name_key, asks, offered, made_by, made_at
                 FROM class_table WHERE shop_id = $1 ORDER BY id, version DESC) AS newest
           ORDER BY year DESC, name_key"#,
        shop
    )
    .fetch_all(conn)
    .await?;
    Ok(rows.into_iter().map(KeptTable::from).collect())
}

/// Every version of one table, the newest first; none when there is no such table.
pub async fn versions(conn: &mut PgConnection, shop: Uuid, id: Uuid) -> sqlx::Result<Vec<KeptTable>> {
    let rows = sqlx::query_as!(
        Row,
        r#"SELECT id, version, year, body, class, asks AS "asks: Json<Asks>", offered, made_by, made_at AS "made_at: At"
           FROM class_table WHERE shop_id = $1 AND id = $2 ORDER BY version DESC"#,
        shop,
        id
    )
    .fetch_all(conn)
    .await?;
    Ok(rows.into_iter().map(KeptTable::from).collect())
}

/// Writes one version of a table. `name_key` is body and class as they are compared.
pub async fn insert(
    conn: &mut PgConnection,
    shop: Uuid,
    staff: Uuid,
    name_key: &str,
    kept: &KeptTable,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO class_table (shop_id, id, version, year, body, class, name_key, asks, offered, staff_id, made_by,
                                  made_at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
        shop,
        kept.id,
        kept.version,
        kept.table.year,
        kept.table.body,
        kept.table.class,
        name_key,
        Json(&kept.table.asks) as _,
        kept.offered,
        staff,
        kept.made_by,
        kept.made_at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// The table a ticket took its class facts from last, if it ever did.
pub async fn used(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Option<TableUse>> {
    let found = sqlx::query!(
        r#"SELECT table_id, version, made_by, at AS "at: At"
           FROM class_table_use WHERE shop_id = $1 AND ticket_id = $2 ORDER BY turn DESC LIMIT 1"#,
        shop,
        ticket
    )
    .fetch_optional(conn)
    .await?;
    Ok(found.map(|row| TableUse { table: row.table_id, version: row.version, by: row.made_by, at: row.at.into() }))
}

/// Notes that a ticket took its class facts from a table, into this revision. The ticket's row is locked meanwhile.
pub async fn insert_use(
    conn: &mut PgConnection,
    shop: Uuid,
    ticket: Uuid,
    revision: i32,
    taken: &TableUse,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO class_table_use (shop_id, ticket_id, turn, revision, table_id, version, made_by, at)
         SELECT $1, $2, coalesce(max(turn), 0) + 1, $3, $4, $5, $6, $7
         FROM class_table_use WHERE shop_id = $1 AND ticket_id = $2",
        shop,
        ticket,
        revision,
        taken.table,
        taken.version,
        taken.by,
        taken.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}
