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

/// The numbers of the newest tickets on which this rule has fired, newest first.
pub async fn newest(conn: &mut PgConnection, shop: Uuid, code: &str, most: i64) -> sqlx::Result<Vec<i64>> {
    sqlx::query_scalar!(
        "SELECT ticket.number FROM rule_fired
         JOIN ticket ON ticket.shop_id = rule_fired.shop_id AND ticket.id = rule_fired.ticket_id
         WHERE rule_fired.shop_id = $1 AND rule_fired.code = $2
         ORDER BY ticket.number DESC LIMIT $3",
        shop,
        code,
        most
    )
    .fetch_all(conn)
    .await
}
