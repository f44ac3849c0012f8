//! The keys forms were sent with, and what was answered.

use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use serde_json::Value;
use sqlx::PgConnection;
use uuid::Uuid;

/// What is known of a key.
pub struct Known {
    /// Is nobody else working with this key right now?
    pub free: bool,
    /// The digest of what was sent with it, and what was answered, if it was done.
    pub done: Option<(Vec<u8>, Value)>,
}

/// Takes the key for this transaction, if nobody else has it, and says whether it was done before.
///
/// The lock is taken before the row is looked for in a statement of its own: whoever held it until just
/// now has committed by then, and the row is seen.
pub async fn take_key(conn: &mut PgConnection, shop: Uuid, key: Uuid, lock: i64) -> sqlx::Result<Known> {
    let free =
        sqlx::query_scalar!(r#"SELECT pg_try_advisory_xact_lock($1) AS "free!""#, lock).fetch_one(&mut *conn).await?;
    if !free {
        return Ok(Known { free, done: None });
    }
    let done = sqlx::query!("SELECT payload, answer FROM idempotency WHERE shop_id = $1 AND key = $2", shop, key)
        .fetch_optional(conn)
        .await?;
    Ok(Known { free, done: done.map(|row| (row.payload, row.answer)) })
}

/// Keeps what was answered to a key.
pub async fn keep_answer(
    conn: &mut PgConnection,
    shop: Uuid,
    key: Uuid,
    payload: &[u8],
    answer: &Value,
    now: Timestamp,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO idempotency (shop_id, key, payload, answer, at) VALUES ($1, $2, $3, $4, $5)",
        shop,
        key,
        payload,
        answer,
        now.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}
