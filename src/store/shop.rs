//! The shop itself and the one-time link it is set up with.

use super::columns::At;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// A shop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shop {
    /// Its key.
    pub shop_id: Uuid,
    /// Its name; empty until it is set up.
    pub name: String,
    /// Its telephone number, for customers.
    pub phone: String,
    /// Its time zone, as the IANA names it.
    pub zone: String,
    /// Its terms for taking a unit apart, as customers read them; empty until it has some.
    pub teardown_terms: String,
    /// What it does not answer for, as customers read it; empty until it has said so.
    pub not_covered: String,
    /// Has an owner set it up?
    pub set_up: bool,
}

/// The shop with this key.
pub async fn find(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Option<Shop>> {
    sqlx::query_as!(
        Shop,
        r#"SELECT shop_id, name, phone, zone, teardown_terms, not_covered, set_up_at IS NOT NULL AS "set_up!"
           FROM shop WHERE shop_id = $1"#,
        shop
    )
    .fetch_optional(conn)
    .await
}

/// The oldest shop of the server: the only one, where a shop keeps its own.
pub async fn first(conn: &mut PgConnection) -> sqlx::Result<Option<Shop>> {
    sqlx::query_as!(
        Shop,
        r#"SELECT shop_id, name, phone, zone, teardown_terms, not_covered, set_up_at IS NOT NULL AS "set_up!"
           FROM shop ORDER BY made_at, shop_id LIMIT 1"#
    )
    .fetch_optional(conn)
    .await
}

/// Keeps others from opening a first shop until this transaction ends.
pub async fn hold_the_door(conn: &mut PgConnection) -> sqlx::Result<()> {
    sqlx::query!(r#"SELECT pg_advisory_xact_lock(1) AS "held: ()""#).execute(conn).await.map(drop)
}

/// Makes an empty shop.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, now: Timestamp) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO shop (shop_id, name, phone, zone, next_number, made_at) VALUES ($1, '', '', 'UTC', 1001, $2)",
        shop,
        now.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Writes the shop's particulars; the first time, notes when it was set up.
pub async fn write(conn: &mut PgConnection, shop: &Shop, now: Timestamp) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE shop SET name = $2, phone = $3, zone = $4, set_up_at = coalesce(set_up_at, $5), teardown_terms = $6,
                         not_covered = $7
         WHERE shop_id = $1",
        shop.shop_id,
        shop.name,
        shop.phone,
        shop.zone,
        now.to_sqlx() as _,
        shop.teardown_terms,
        shop.not_covered
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Takes the next ticket number.
pub async fn take_number(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<i64> {
    sqlx::query_scalar!(
        r#"UPDATE shop SET next_number = next_number + 1 WHERE shop_id = $1 RETURNING next_number - 1 AS "number!""#,
        shop
    )
    .fetch_one(conn)
    .await
}

/// Keeps a set-up link's hash and makes all earlier ones worthless.
pub async fn write_setup_link(
    conn: &mut PgConnection,
    shop: Uuid,
    token_hash: &[u8],
    now: Timestamp,
    expires: Timestamp,
) -> sqlx::Result<()> {
    sqlx::query!("UPDATE setup_link SET used_at = $2 WHERE shop_id = $1 AND used_at IS NULL", shop, now.to_sqlx() as _)
        .execute(&mut *conn)
        .await?;
    sqlx::query!(
        "INSERT INTO setup_link (shop_id, token_hash, made_at, expires_at) VALUES ($1, $2, $3, $4)",
        shop,
        token_hash,
        now.to_sqlx() as _,
        expires.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Until when the set-up link holds, if it is there and unused.
pub async fn setup_link(conn: &mut PgConnection, shop: Uuid, token_hash: &[u8]) -> sqlx::Result<Option<Timestamp>> {
    sqlx::query_scalar!(
        r#"SELECT expires_at AS "expires_at: At" FROM setup_link
           WHERE shop_id = $1 AND token_hash = $2 AND used_at IS NULL FOR UPDATE"#,
        shop,
        token_hash
    )
    .fetch_optional(conn)
    .await
    .map(|found| found.map(Into::into))
}

/// Marks the set-up link as used.
pub async fn use_setup_link(
    conn: &mut PgConnection,
    shop: Uuid,
    token_hash: &[u8],
    now: Timestamp,
) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE setup_link SET used_at = $3 WHERE shop_id = $1 AND token_hash = $2",
        shop,
        token_hash,
        now.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}
