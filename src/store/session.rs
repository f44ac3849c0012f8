//! Who is signed in where. Only the SHA-256 of a session's token is kept.

use super::columns::At;
use super::staff::Staff;
use crate::ticket::Role;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// A session with whose it is.
pub struct Session {
    /// Whose.
    pub staff: Staff,
    /// The device it was made on.
    pub device: String,
    /// When it was last used.
    pub seen_at: Timestamp,
    /// When it ends whatever happens.
    pub expires_at: Timestamp,
}

/// The session with this token hash.
pub async fn find(conn: &mut PgConnection, shop: Uuid, token_hash: &[u8]) -> sqlx::Result<Option<Session>> {
    let found = sqlx::query!(
        r#"SELECT s.device, s.seen_at AS "seen_at: At", s.expires_at AS "expires_at: At",
                  p.id, p.name, p.role AS "role: Role", p.disabled_at IS NOT NULL AS "disabled!"
           FROM session s JOIN staff p ON p.shop_id = s.shop_id AND p.id = s.staff_id
           WHERE s.shop_id = $1 AND s.token_hash = $2"#,
        shop,
        token_hash
    )
    .fetch_optional(conn)
    .await?;
    Ok(found.map(|row| Session {
        staff: Staff { id: row.id, name: row.name, role: row.role, disabled: row.disabled },
        device: row.device,
        seen_at: row.seen_at.into(),
        expires_at: row.expires_at.into(),
    }))
}

/// Keeps a new session; the same one twice is one.
pub async fn insert(
    conn: &mut PgConnection,
    shop: Uuid,
    token_hash: &[u8],
    staff: Uuid,
    device: &str,
    now: Timestamp,
    expires: Timestamp,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO session (shop_id, token_hash, staff_id, device, made_at, seen_at, expires_at)
         VALUES ($1, $2, $3, $4, $5, $5, $6) ON CONFLICT DO NOTHING",
        shop,
        token_hash,
        staff,
        device,
        now.to_sqlx() as _,
        expires.to_sqlx() as _
    )
    .execute(&mut *conn)
    .await?;
    sqlx::query!("DELETE FROM session WHERE shop_id = $1 AND expires_at < $2", shop, now.to_sqlx() as _)
        .execute(conn)
        .await
        .map(drop)
}

/// Notes that a session was used.
pub async fn touch(conn: &mut PgConnection, shop: Uuid, token_hash: &[u8], now: Timestamp) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE session SET seen_at = greatest(seen_at, $3) WHERE shop_id = $1 AND token_hash = $2",
        shop,
        token_hash,
        now.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Ends one session.
pub async fn end(conn: &mut PgConnection, shop: Uuid, token_hash: &[u8]) -> sqlx::Result<()> {
    sqlx::query!("DELETE FROM session WHERE shop_id = $1 AND token_hash = $2", shop, token_hash)
        .execute(conn)
        .await
        .map(drop)
}

/// Ends a person's sessions, except the one with this token hash.
pub async fn end_all(conn: &mut PgConnection, shop: Uuid, staff: Uuid, except: Option<&[u8]>) -> sqlx::Result<()> {
    sqlx::query!(
        "DELETE FROM session WHERE shop_id = $1 AND staff_id = $2 AND token_hash IS DISTINCT FROM $3",
        shop,
        staff,
        except
    )
    .execute(conn)
    .await
    .map(drop)
}
