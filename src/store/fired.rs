//! On how many tickets each rule has fired. Noted with each revision, see [`super::revision::insert`].

use sqlx::PgConnection;
use uuid::Uuid;

/// A rule that has fired in this shop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fired {
    /// The rule's code.
    pub code: String,
    /// On how many tickets, at whatever revision, set aside or not.
    pub tickets: i64,
}

/// Every rule that has fired on a ticket of this shop.
pub async fn counts(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Vec<Fired>> {
    sqlx::query_as!(
        Fired,
        r#"SELECT code, count(*) AS "tickets!" FROM rule_fired WHERE shop_id = $1 GROUP BY code ORDER BY code"#,
        shop
    )
    .fetch_all(conn)
    .await
}
