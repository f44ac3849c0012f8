//! Revisions: written once.

use super::columns::At;
use super::step;
use crate::ticket::{Contents, Judgement, Quoted, TicketFacts, Words, done_here};
use jiff::Timestamp;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// One revision of a ticket.
#[derive(Clone, Debug, PartialEq)]
pub struct Revision {
    /// Its number, from 1.
    pub number: i32,
    /// When it was made.
    pub made_at: Timestamp,
    /// Whose key.
    pub staff_id: Uuid,
    /// Whose name.
    pub made_by: String,
    /// What it fixes.
    pub contents: Contents,
    /// What the rules said when it was made.
    pub judgement: Judgement,
    /// The digest of what a signature on it covers.
    pub covers: String,
}

/// Writes a revision, and which rules have now fired on its ticket.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, revision: &Revision) -> sqlx::Result<()> {
    let contents = &revision.contents;
    sqlx::query!(
        "WITH kept AS (
             INSERT INTO revision (shop_id, ticket_id, number, made_at, staff_id, made_by, facts, words, price,
                                   price_cents, judgement, covers, added)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13)
         )
         INSERT INTO rule_fired (shop_id, code, ticket_id)
         SELECT $1, code, $2 FROM unnest($14::text[]) AS code ON CONFLICT DO NOTHING",
        shop,
        ticket,
        revision.number,
        revision.made_at.to_sqlx() as _,
        revision.staff_id,
        revision.made_by,
        &contents.facts as _,
        &contents.words as _,
        contents.price.as_ref() as _,
        contents.price().and_then(crate::ticket::Price::total).map(|cents| cents.0),
        &revision.judgement as _,
        revision.covers,
        &contents.added,
        &revision.judgement.fired() as _
    )
    .execute(conn)
    .await
    .map(drop)
}

/// One revision of a ticket, with what the log says by now of work that cannot be undone.
pub async fn find(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, number: i32) -> sqlx::Result<Option<Revision>> {
    let found = sqlx::query!(
        r#"SELECT number, made_at AS "made_at: At", staff_id, made_by, facts AS "facts: TicketFacts",
                  words AS "words: Words", price AS "price: Quoted", judgement AS "judgement: Judgement", covers,
                  added
           FROM revision WHERE shop_id = $1 AND ticket_id = $2 AND number = $3"#,
        shop,
        ticket,
        number
    )
    .fetch_optional(&mut *conn)
    .await?;
    let Some(row) = found else { return Ok(None) };
    let done_here = done_here(&step::log(conn, shop, ticket).await?);
    Ok(Some(Revision {
        number: row.number,
        made_at: row.made_at.into(),
        staff_id: row.staff_id,
        made_by: row.made_by,
        contents: Contents { facts: row.facts, words: row.words, price: row.price, added: row.added, done_here },
        judgement: row.judgement,
        covers: row.covers,
    }))
}

/// Each revision's number and the digest of what a signature on it covers, in order.
pub async fn covers(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Vec<(i32, String)>> {
    sqlx::query!(
        "SELECT number, covers FROM revision WHERE shop_id = $1 AND ticket_id = $2 ORDER BY number",
        shop,
        ticket
    )
    .map(|row| (row.number, row.covers))
    .fetch_all(conn)
    .await
}

/// A revision without what it fixes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// Its number.
    pub number: i32,
    /// When it was made.
    pub made_at: Timestamp,
    /// By whom.
    pub made_by: String,
}

/// A ticket's revisions, newest first.
pub async fn headings(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<Vec<Heading>> {
    sqlx::query_as!(
        Heading,
        r#"SELECT number, made_at AS "made_at: At", made_by
           FROM revision WHERE shop_id = $1 AND ticket_id = $2 ORDER BY number DESC"#,
        shop,
        ticket
    )
    .fetch_all(conn)
    .await
}
