//! Customers' and vehicles' particulars.

use super::form::{self, Field, name_words, one_line, phone_backwards, plate_key};
use super::shop::differing;
use super::write::Scene;
use super::{By, Command, Customer, Failure, Vehicle};
use crate::store::{customer, search, ticket};
use crate::ticket::{Action, Happening, Problem};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

const NAME: Field = Field { name: "name", label: "The customer's name", most: 100, needed: true };
const PHONE: Field = Field { name: "phone", label: "The telephone number", most: 40, needed: true };
const EMAIL: Field = Field { name: "email", label: "The mail address", most: 200, needed: false };
const WORDS: Field = Field { name: "vehicle", label: "The vehicle", most: 200, needed: true };
const PLATE: Field = Field { name: "plate", label: "The plate", most: 20, needed: false };

/// A person as a form gives them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Person {
    /// The name.
    pub name: String,
    /// The telephone number.
    pub phone: String,
    /// The mail address, or nothing.
    pub email: String,
}

/// A vehicle as a form gives it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct VehicleWords {
    /// What it is, in plain words; "unit on a pallet" is one.
    pub words: String,
    /// The number plate, or nothing.
    pub plate: String,
}

impl Person {
    pub(super) fn checked(&self, id: Uuid, problems: &mut Vec<Problem>) -> Customer {
        let customer = Customer {
            id,
            name: one_line(NAME, &self.name, problems),
            phone: one_line(PHONE, &self.phone, problems),
            email: one_line(EMAIL, &self.email, problems),
        };
        problems.extend(self.slips());
        customer
    }

    /// What was written and can be no telephone number or mail address.
    pub fn slips(&self) -> Vec<Problem> {
        let (phone, email) = (self.phone.trim(), self.email.trim());
        let mut slips = Vec::new();
        let digits = phone_backwards(phone).len();
        if !phone.is_empty() && !(4..=20).contains(&digits) {
            let message = format!("\"{phone}\" holds {digits} digits; a telephone number has 4 to 20.");
            slips.push(Problem::new("phone", message));
        }
        if !email.is_empty() && !email.contains('@') {
            slips.push(Problem::new("email", format!("\"{email}\" is no mail address; it lacks the @.")));
        }
        slips
    }
}

impl VehicleWords {
    pub(super) fn checked(&self, id: Uuid, customer_id: Uuid, problems: &mut Vec<Problem>) -> Vehicle {
        let words = one_line(WORDS, &self.words, problems);
        Vehicle { id, customer_id, words, plate: one_line(PLATE, &self.plate, problems) }
    }
}

/// The terms a ticket of this customer and vehicle is found by: kinds and terms, in step.
pub(super) fn search_terms(customer: &Customer, vehicle: &Vehicle) -> (Vec<String>, Vec<String>) {
    let mut terms: Vec<(&str, String)> = name_words(&customer.name).into_iter().map(|word| ("name", word)).collect();
    terms.push(("phone", phone_backwards(&customer.phone)));
    terms.push(("plate", plate_key(&vehicle.plate)));
    terms.into_iter().filter(|(_, term)| !term.is_empty()).map(|(kind, term)| (kind.to_owned(), term)).unzip()
}

/// Corrects the particulars of a ticket's customer and vehicle.
#[derive(Clone, Debug, Serialize)]
pub struct ChangeContact {
    /// The ticket.
    pub ticket: i64,
    /// The customer.
    pub person: Person,
    /// The vehicle.
    pub vehicle: VehicleWords,
}

impl Command for ChangeContact {
    type Answer = ();
    const NAME: &'static str = "change_contact";
    const BY: By = By::Staff(Action::ChangeContact);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let (conn, shop) = (&mut *scene.conn, scene.shop);
        let ticket = ticket::lock(conn, shop, self.ticket).await?.ok_or(Failure::NotFound("such ticket"))?;
        let was = customer::find(conn, shop, ticket.customer_id).await?.ok_or(Failure::NotFound("such customer"))?;
        let was_in = customer::find_vehicle(conn, shop, ticket.vehicle_id).await?;
        let was_in = was_in.ok_or(Failure::NotFound("such vehicle"))?;
        let mut problems = Vec::new();
        let now = self.person.checked(was.id, &mut problems);
        let now_in = self.vehicle.checked(was_in.id, was_in.customer_id, &mut problems);
        form::none(problems)?;
        let changes = differing(&[
            ("name", "Customer", &was.name, &now.name),
            ("phone", "Telephone", &was.phone, &now.phone),
            ("email", "Mail", &was.email, &now.email),
            ("vehicle", "Vehicle", &was_in.words, &now_in.words),
            ("plate", "Plate", &was_in.plate, &now_in.plate),
        ]);
        if changes.is_empty() {
            return Ok(());
        }
        customer::write(conn, shop, &now).await?;
        customer::write_vehicle(conn, shop, &now_in).await?;
        for (id, vehicle) in customer::tickets(conn, shop, now.id).await? {
            let (kinds, terms) = search_terms(&now, &vehicle);
            search::write(conn, shop, id, &kinds, &terms).await?;
        }
        scene.happened(ticket.id, Happening::ContactChanged { changes }).await
    }
}
