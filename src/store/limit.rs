//! Limits the owner moved: every change is kept, the latest stands.

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
