//! Finding tickets and customers by number, name, telephone and plate.

use super::board::{Line, lines};
use super::columns::{At, Day};
use super::customer::Customer;
use crate::ticket::{Answer, Stage, WaitsFor};
use sqlx::PgConnection;
use uuid::Uuid;

/// What is looked for: the ticket must begin with every one of the terms, each of its kind.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sought {
    /// A ticket number.
    pub number: Option<i64>,
    /// The kinds of the terms: `name`, `phone`, `plate`.
    pub kinds: Vec<String>,
    /// What the terms begin with.
    pub starts: Vec<String>,
    /// The first possible term that no longer begins so, in the same order. A range is what an index can walk.
    pub ends: Vec<String>,
}

/// Notes the terms a ticket is found by; the old ones go.
pub async fn write(
    conn: &mut PgConnection,
    shop: Uuid,
    ticket: Uuid,
    kinds: &[String],
    terms: &[String],
) -> sqlx::Result<()> {
    sqlx::query!("DELETE FROM ticket_search WHERE shop_id = $1 AND ticket_id = $2", shop, ticket)
        .execute(&mut *conn)
        .await?;
    sqlx::query!(
        "INSERT INTO ticket_search (shop_id, kind, term, ticket_id)
         SELECT DISTINCT $1::uuid, given.kind, given.term, $2::uuid
         FROM unnest($3::text[], $4::text[]) AS given (kind, term)",
        shop,
        ticket,
        kinds,
        terms
    )
    .execute(conn)
    .await
    .map(drop)
}

/// The tickets that fit, newest first, open or not.
pub async fn tickets(conn: &mut PgConnection, shop: Uuid, sought: &Sought, limit: i64) -> sqlx::Result<Vec<Line>> {
    lines!(
        r#"SELECT t.number, t.stage AS "stage: Stage", t.waits_for AS "waits_for: WaitsFor",
                  t.promised AS "promised: Day", c.name AS customer, c.phone, v.words AS vehicle, v.plate, t.revision,
                  t.open_stops, t.open_cautions, t.open_questions, t.intake_answer AS "intake_answer: Answer",
                  t.build_answer AS "build_answer: Answer", (t.build_covers IS NOT DISTINCT FROM t.covers) AS "build_current!",
                  t.comeback_of IS NOT NULL AS "comeback!", t.changed_at AS "changed_at: At"
           FROM ticket t
           JOIN customer c ON c.shop_id = t.shop_id AND c.id = t.customer_id
           JOIN vehicle v ON v.shop_id = t.shop_id AND v.id = t.vehicle_id
           WHERE t.shop_id = $1 AND (t.number = $2 OR t.id IN (
               SELECT s.ticket_id FROM unnest($3::text[], $4::text[], $5::text[]) AS sought (kind, start, stop)
               JOIN ticket_search s ON s.shop_id = $1 AND s.kind = sought.kind
                                   AND s.term >= sought.start AND s.term < sought.stop
               GROUP BY s.ticket_id HAVING count(DISTINCT (sought.kind, sought.start)) = cardinality($3::text[])))
           ORDER BY t.number = $2 DESC NULLS LAST, t.number DESC LIMIT $6"#,
        shop,
        sought.number,
        &sought.kinds,
        &sought.starts,
        &sought.ends,
        limit
    )
    .fetch_all(conn)
    .await
}

/// A customer who has been here before, with one vehicle of theirs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Returning {
    /// The customer.
    pub customer: Customer,
    /// The vehicle's key.
    pub vehicle_id: Uuid,
    /// The vehicle in words.
    pub vehicle: String,
    /// Its plate.
    pub plate: String,
    /// The numbers of its tickets, newest first.
    pub tickets: Vec<i64>,
}

/// The customers whose tickets fit, each with their vehicles, latest first.
pub async fn customers(
    conn: &mut PgConnection,
    shop: Uuid,
    sought: &Sought,
    limit: i64,
) -> sqlx::Result<Vec<Returning>> {
    let rows = sqlx::query!(
        r#"SELECT c.id, c.name, c.phone, c.email, v.id AS vehicle_id, v.words, v.plate,
                  array_agg(o.number ORDER BY o.number DESC) AS "tickets!"
           FROM customer c
           JOIN vehicle v ON v.shop_id = c.shop_id AND v.customer_id = c.id
           JOIN ticket o ON o.shop_id = v.shop_id AND o.vehicle_id = v.id
           WHERE c.shop_id = $1 AND c.id IN (
               SELECT t.customer_id FROM unnest($2::text[], $3::text[], $4::text[]) AS sought (kind, start, stop)
               JOIN ticket_search s ON s.shop_id = $1 AND s.kind = sought.kind
                                   AND s.term >= sought.start AND s.term < sought.stop
               JOIN ticket t ON t.shop_id = s.shop_id AND t.id = s.ticket_id
               GROUP BY t.customer_id HAVING count(DISTINCT (sought.kind, sought.start)) = cardinality($2::text[]))
           GROUP BY c.id, c.name, c.phone, c.email, v.id, v.words, v.plate
           ORDER BY max(o.number) DESC LIMIT $5"#,
        shop,
        &sought.kinds,
        &sought.starts,
        &sought.ends,
        limit
    )
    .fetch_all(conn)
    .await?;
    Ok(rows
        .into_iter()
        .map(|row| Returning {
            customer: Customer { id: row.id, name: row.name, phone: row.phone, email: row.email },
            vehicle_id: row.vehicle_id,
            vehicle: row.words,
            plate: row.plate,
            tickets: row.tickets,
        })
        .collect())
}
