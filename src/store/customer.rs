//! Customers and their vehicles.

use sqlx::PgConnection;
use uuid::Uuid;

/// A customer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Customer {
    /// The key.
    pub id: Uuid,
    /// The name.
    pub name: String,
    /// The telephone number as written.
    pub phone: String,
    /// The mail address, or nothing.
    pub email: String,
}

/// A vehicle, or whatever the unit came in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Vehicle {
    /// The key.
    pub id: Uuid,
    /// Whose it is.
    pub customer_id: Uuid,
    /// What it is, in plain words.
    pub words: String,
    /// Its number plate, or nothing.
    pub plate: String,
}

/// The customer with this key.
pub async fn find(conn: &mut PgConnection, shop: Uuid, id: Uuid) -> sqlx::Result<Option<Customer>> {
    sqlx::query_as!(
        Customer,
        "SELECT id, name, phone, email FROM customer WHERE shop_id = $1 AND id = $2 FOR UPDATE",
        shop,
        id
    )
    .fetch_optional(conn)
    .await
}

/// The vehicle with this key.
pub async fn find_vehicle(conn: &mut PgConnection, shop: Uuid, id: Uuid) -> sqlx::Result<Option<Vehicle>> {
    sqlx::query_as!(
        Vehicle,
        "SELECT id, customer_id, words, plate FROM vehicle WHERE shop_id = $1 AND id = $2 FOR UPDATE",
        shop,
        id
    )
    .fetch_optional(conn)
    .await
}

/// Adds a customer, or writes over what is known of one.
pub async fn write(conn: &mut PgConnection, shop: Uuid, customer: &Customer) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO customer (shop_id, id, name, phone, email) VALUES ($1, $2, $3, $4, $5)
         ON CONFLICT (shop_id, id) DO UPDATE SET name = $3, phone = $4, email = $5",
        shop,
        customer.id,
        customer.name,
        customer.phone,
        customer.email
    )
    .execute(conn)
    .await
    .map(drop)
}

/// Adds a vehicle, or writes over what is known of one.
pub async fn write_vehicle(conn: &mut PgConnection, shop: Uuid, vehicle: &Vehicle) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO vehicle (shop_id, id, customer_id, words, plate) VALUES ($1, $2, $3, $4, $5)
         ON CONFLICT (shop_id, id) DO UPDATE SET words = $4, plate = $5",
        shop,
        vehicle.id,
        vehicle.customer_id,
        vehicle.words,
        vehicle.plate
    )
    .execute(conn)
    .await
    .map(drop)
}

/// A customer's tickets by key, each with its vehicle.
pub async fn tickets(conn: &mut PgConnection, shop: Uuid, customer: Uuid) -> sqlx::Result<Vec<(Uuid, Vehicle)>> {
    let rows = sqlx::query!(
        "SELECT t.id AS ticket, v.id, v.customer_id, v.words, v.plate
         FROM ticket t JOIN vehicle v ON v.shop_id = t.shop_id AND v.id = t.vehicle_id
         WHERE t.shop_id = $1 AND t.customer_id = $2",
        shop,
        customer
    )
    .fetch_all(conn)
    .await?;
    Ok(rows
        .into_iter()
        .map(|row| {
            (row.ticket, Vehicle { id: row.id, customer_id: row.customer_id, words: row.words, plate: row.plate })
        })
        .collect())
}

/// A ticket's customer and vehicle.
pub async fn of_ticket(conn: &mut PgConnection, shop: Uuid, ticket: Uuid) -> sqlx::Result<(Customer, Vehicle)> {
    let row = sqlx::query!(
        "SELECT c.id AS customer_id, c.name, c.phone, c.email, v.id, v.customer_id AS owner, v.words, v.plate
         FROM ticket t
         JOIN customer c ON c.shop_id = t.shop_id AND c.id = t.customer_id
         JOIN vehicle v ON v.shop_id = t.shop_id AND v.id = t.vehicle_id
         WHERE t.shop_id = $1 AND t.id = $2",
        shop,
        ticket
    )
    .fetch_one(conn)
    .await?;
    let customer = Customer { id: row.customer_id, name: row.name, phone: row.phone, email: row.email };
    Ok((customer, Vehicle { id: row.id, customer_id: row.owner, words: row.words, plate: row.plate }))
}
