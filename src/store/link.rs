//! Customer links. Only the SHA-256 of a link's token is kept.

use super::columns::At;
use crate::ticket::{Answer, Purpose, Stage};
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// A customer link with what decides whether it still opens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// The key.
    pub id: Uuid,
    /// The ticket.
    pub ticket_id: Uuid,
    /// The ticket's number.
    pub ticket: i64,
    /// The revision it shows.
    pub revision: i32,
    /// What it is for.
    pub purpose: Purpose,
    /// When it was made.
    pub made_at: Timestamp,
    /// Who made it.
    pub made_by: String,
    /// Until when it opens.
    pub expires_at: Timestamp,
    /// When it was taken back.
    pub revoked_at: Option<Timestamp>,
    /// What was answered through it, with the receipt's reference.
    pub answered: Option<(Answer, String)>,
    /// The digest of what its revision covers.
    pub covers: String,
    /// The same of the ticket's current revision.
    pub covers_now: String,
    /// Where the ticket stands now.
    pub stage: Stage,
    /// The ticket's teardown authorisation now.
    pub intake_answer: Option<Answer>,
    /// The ticket's answer to a build summary now, and what it covers.
    pub build: Option<(Answer, String)>,
}

macro_rules! links {
    ($sql:literal, $($argument:expr),+) => {
        sqlx::query!($sql, $($argument),+).map(|row| Link {
            id: row.id,
            ticket_id: row.ticket_id,
            ticket: row.ticket,
            revision: row.revision,
            purpose: row.purpose,
            made_at: row.made_at.into(),
            made_by: row.made_by,
            expires_at: row.expires_at.into(),
            revoked_at: row.revoked_at.map(Into::into),
            answered: row.answer.zip(row.reference),
            covers: row.covers,
            covers_now: row.covers_now,
            stage: row.stage,
            intake_answer: row.intake_answer,
            build: row.build_answer.zip(row.build_covers),
        })
    };
}

/// The link with this token hash.
pub async fn find(conn: &mut PgConnection, shop: Uuid, token_hash: &[u8]) -> sqlx::Result<Option<Link>> {
    links!(
        r#"SELECT l.id, l.ticket_id, t.number AS ticket, l.revision, l.purpose AS "purpose: Purpose",
                  l.made_at AS "made_at: At", l.made_by, l.expires_at AS "expires_at: At",
                  l.revoked_at AS "revoked_at: At", s.answer AS "answer?: Answer", s.reference AS "reference?",
                  r.covers, t.covers AS covers_now, t.stage AS "stage: Stage", t.intake_answer AS "intake_answer: Answer",
                  t.build_answer AS "build_answer: Answer", t.build_covers
           FROM customer_link l
           JOIN ticket t ON t.shop_id = l.shop_id AND t.id = l.ticket_id
           JOIN revision r ON r.shop_id = l.shop_id AND r.ticket_id = l.ticket_id AND r.number = l.revision
           LEFT JOIN signature s ON s.shop_id = l.shop_id AND s.link_id = l.id
           WHERE l.shop_id = $1 AND l.token_hash = $2"#,
        shop,
        token_hash
    )
    .fetch_optional(conn)
    .await
}

/// A ticket's links, newest first.
pub async fn of_ticket(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Vec<Link>> {
    links!(
        r#"SELECT l.id, l.ticket_id, t.number AS ticket, l.revision, l.purpose AS "purpose: Purpose",
                  l.made_at AS "made_at: At", l.made_by, l.expires_at AS "expires_at: At",
                  l.revoked_at AS "revoked_at: At", s.answer AS "answer?: Answer", s.reference AS "reference?",
                  r.covers, t.covers AS covers_now, t.stage AS "stage: Stage", t.intake_answer AS "intake_answer: Answer",
                  t.build_answer AS "build_answer: Answer", t.build_covers
           FROM customer_link l
           JOIN ticket t ON t.shop_id = l.shop_id AND t.id = l.ticket_id
           JOIN revision r ON r.shop_id = l.shop_id AND r.ticket_id = l.ticket_id AND r.number = l.revision
           LEFT JOIN signature s ON s.shop_id = l.shop_id AND s.link_id = l.id
           WHERE l.shop_id = $1 AND l.ticket_id = $2 ORDER BY l.made_at DESC, l.id DESC"#,
        shop,
        ticket
    )
    .fetch_all(conn)
    .await
}

/// What a new link is.
pub struct NewLink<'a> {
    /// The key.
    pub id: Uuid,
    /// SHA-256 of its token.
    pub token_hash: &'a [u8],
    /// The ticket.
    pub ticket_id: Uuid,
    /// The revision it shows.
    pub revision: i32,
    /// What it is for.
    pub purpose: Purpose,
    /// When it is made.
    pub made_at: Timestamp,
    /// Who makes it.
    pub made_by: &'a str,
    /// Until when it opens.
    pub expires_at: Timestamp,
}

/// Keeps a new link.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, link: &NewLink<'_>) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO customer_link (shop_id, id, token_hash, ticket_id, revision, purpose, made_at, made_by, expires_at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
        shop,
        link.id,
        link.token_hash,
        link.ticket_id,
        link.revision,
        link.purpose.code(),
        link.made_at.to_sqlx() as _,
        link.made_by,
        link.expires_at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Takes a link of a ticket back; says what it was for, if there was one to take back.
pub async fn revoke(
    conn: &mut PgConnection,
    shop: Uuid,
    ticket: Uuid,
    id: Uuid,
    by: &str,
    now: Timestamp,
) -> sqlx::Result<Option<Purpose>> {
    sqlx::query_scalar!(
        r#"UPDATE customer_link SET revoked_at = coalesce(revoked_at, $5), revoked_by = coalesce(revoked_by, $4)
           WHERE shop_id = $1 AND ticket_id = $2 AND id = $3 RETURNING purpose AS "purpose: Purpose""#,
        shop,
        ticket,
        id,
        by,
        now.to_sqlx() as _
    )
    .fetch_optional(conn)
    .await
}
