//! The people of a shop.

use crate::ticket::Role;
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// A member of staff.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Staff {
    /// The key.
    pub id: Uuid,
    /// The name; stands for one person for ever.
    pub name: String,
    /// What they are.
    pub role: Role,
    /// May they no longer sign in?
    pub disabled: bool,
}

/// What a sign-in is checked against.
pub struct Credentials {
    /// Who.
    pub staff: Staff,
    /// The password's hash in PHC form.
    pub password_hash: String,
}

/// Everybody, by name.
pub async fn list(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Vec<Staff>> {
    sqlx::query_as!(
        Staff,
        r#"SELECT id, name, role AS "role: Role", disabled_at IS NOT NULL AS "disabled!"
           FROM staff WHERE shop_id = $1 ORDER BY disabled_at IS NOT NULL, name_key"#,
        shop
    )
    .fetch_all(conn)
    .await
}

/// The person with this name, with what a sign-in is checked against.
pub async fn credentials(conn: &mut PgConnection, shop: Uuid, name_key: &str) -> sqlx::Result<Option<Credentials>> {
    let found = sqlx::query!(
        r#"SELECT id, name, role AS "role: Role", disabled_at IS NOT NULL AS "disabled!", password_hash
           FROM staff WHERE shop_id = $1 AND name_key = $2"#,
        shop,
        name_key
    )
    .fetch_optional(conn)
    .await?;
    Ok(found.map(|row| Credentials {
        staff: Staff { id: row.id, name: row.name, role: row.role, disabled: row.disabled },
        password_hash: row.password_hash,
    }))
}

/// The person with this key; the row stays locked until the transaction ends.
pub async fn lock(conn: &mut PgConnection, shop: Uuid, id: Uuid) -> sqlx::Result<Option<Staff>> {
    sqlx::query_as!(
        Staff,
        r#"SELECT id, name, role AS "role: Role", disabled_at IS NOT NULL AS "disabled!"
           FROM staff WHERE shop_id = $1 AND id = $2 FOR UPDATE"#,
        shop,
        id
    )
    .fetch_optional(conn)
    .await
}

/// How many owners can sign in. Their rows stay locked until the transaction ends, so that two cannot go at once.
pub async fn active_owners(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<usize> {
    sqlx::query_scalar!(
        "SELECT id FROM staff WHERE shop_id = $1 AND role = 'owner' AND disabled_at IS NULL ORDER BY id FOR UPDATE",
        shop
    )
    .fetch_all(conn)
    .await
    .map(|owners| owners.len())
}

/// Adds a person.
pub async fn insert(
    conn: &mut PgConnection,
    shop: Uuid,
    staff: &Staff,
    name_key: &str,
    password_hash: &str,
    now: Timestamp,
) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO staff (shop_id, id, name, name_key, role, password_hash, added_at)
         VALUES ($1, $2, $3, $4, $5, $6, $7)",
        shop,
        staff.id,
        staff.name,
        name_key,
        staff.role.code(),
        password_hash,
        now.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Shuts a person out and ends all their sessions.
pub async fn disable(conn: &mut PgConnection, shop: Uuid, id: Uuid, now: Timestamp) -> sqlx::Result<()> {
    sqlx::query!(
        "UPDATE staff SET disabled_at = $3 WHERE shop_id = $1 AND id = $2 AND disabled_at IS NULL",
        shop,
        id,
        now.to_sqlx() as _
    )
    .execute(&mut *conn)
    .await?;
    super::session::end_all(conn, shop, id, None).await
}

/// Gives a person a new password hash.
pub async fn set_password(conn: &mut PgConnection, shop: Uuid, id: Uuid, password_hash: &str) -> sqlx::Result<()> {
    sqlx::query!("UPDATE staff SET password_hash = $3 WHERE shop_id = $1 AND id = $2", shop, id, password_hash)
        .execute(conn)
        .await
        .map(drop)
}
