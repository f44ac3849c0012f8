//! Failed tries to sign in, counted by the name that was typed.

use super::columns::At;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// Until when this name may not be tried.
pub async fn locked_until(conn: &mut PgConnection, shop: Uuid, name_key: &str) -> sqlx::Result<Option<Timestamp>> {
    let found = sqlx::query_scalar!(
        r#"SELECT locked_until AS "until: At" FROM sign_in_failure WHERE shop_id = $1 AND name_key = $2"#,
        shop,
        name_key
    )
    .fetch_optional(conn)
    .await?;
    Ok(found.flatten().map(Into::into))
}

/// Counts a failed try and says how many there are now; tries older than `forget` no longer count.
pub async fn count(
    conn: &mut PgConnection,
    shop: Uuid,
    name_key: &str,
    now: Timestamp,
    forget: Timestamp,
) -> sqlx::Result<i32> {
    sqlx::query_scalar!(
        "INSERT INTO sign_in_failure AS f (shop_id, name_key, failures, failed_at) VALUES ($1, $2, 1, $3)
         ON CONFLICT (shop_id, name_key) DO UPDATE
         SET failures = CASE WHEN f.failed_at < $4 THEN 1 ELSE f.failures + 1 END, failed_at = $3
         RETURNING failures",
        shop,
        name_key,
        now.to_sqlx() as _,
        forget.to_sqlx() as _
    )
    .fetch_one(conn)
    .await
}

/// Locks a name until a moment.
pub async fn lock(conn: &mut PgConnection, shop: Uuid, name_key: &str, until: Timestamp) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE sign_in_failure SET locked_until = $3 WHERE shop_id = $1 AND name_key = $2",
        shop,
        name_key,
        until.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Forgets a name's failed tries.
pub async fn forget(conn: &mut PgConnection, shop: Uuid, name_key: &str) -> sqlx::Result<()> {
    sqlx::query!("DELETE FROM sign_in_failure WHERE shop_id = $1 AND name_key = $2", shop, name_key)
        .execute(conn)
        .await
        .map(drop)
}
