//! Taking a unit in: customer, vehicle, ticket and its first revision in one go.

use super::change::{counts, nothing_filled, revision};
use super::contact::search_terms;
use super::form;
use super::write::Scene;
use super::{By, Command, Customer, Failure, Person, Ticket, Vehicle, VehicleWords};
use crate::store::{self, customer, search, shop};
use crate::ticket::{Action, Contents, Edit, Happening, Problem, Stage, Unmerged, WaitsFor, merge};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Whose unit it is.
#[derive(Clone, Debug, Serialize)]
pub enum WhoseUnit {
    /// Somebody new.
    New(Person),
    /// A customer who has been here before.
    Known(Uuid),
}

/// What it comes in.
#[derive(Clone, Debug, Serialize)]
pub enum WhichVehicle {
    /// Something new.
    New(VehicleWords),
    /// A vehicle of that customer.
    Known(Uuid),
}

/// A unit over the counter.
#[derive(Clone, Debug, Serialize)]
pub struct TakeIn {
    /// Whose it is.
    pub customer: WhoseUnit,
    /// What it comes in.
    pub vehicle: WhichVehicle,
    /// Facts, the customer's words, a first price.
    pub edit: Edit,
    /// The day it is promised for, if any.
    pub promised: Option<Date>,
    /// The number of the earlier job it comes back from.
    pub comeback_of: Option<i64>,
}

/// The new ticket.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TakenIn {
    /// Its number.
    pub ticket: i64,
}

impl Command for TakeIn {
    type Answer = TakenIn;
    const NAME: &'static str = "take_in";
    const BY: By = By::Staff(Action::TakeIn);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<TakenIn, Failure> {
        if self.edit.price.is_some() {
            scene.must(Action::ChangePrice)?;
        }
        if self.promised.is_some() {
            scene.must(Action::ChangePromise)?;
        }
        let mut problems = Vec::new();
        let customer = self.customer(scene, &mut problems).await?;
        let vehicle = self.vehicle(scene, &customer, &mut problems).await?;
        let comeback_of = self.comeback(scene, &vehicle, &mut problems).await?;
        nothing_filled(&self.edit)?;
        let nothing = Contents::default();
        let contents = match merge(&nothing, &nothing, &self.edit, &scene.hand()) {
            Ok(contents) => contents,
            Err(Unmerged::Problems(more)) => {
                problems.extend(more);
                return Err(Failure::Problems(problems));
            }
            Err(clashes) => return Err(clashes.into()),
        };
        form::none(problems)?;

        let revision = revision(scene, None, contents, &[]).await?;
        customer::write(scene.conn, scene.shop, &customer).await?;
        customer::write_vehicle(scene.conn, scene.shop, &vehicle).await?;
        let ticket = Ticket {
            id: Uuid::now_v7(),
            number: shop::take_number(scene.conn, scene.shop).await?,
            customer_id: customer.id,
            vehicle_id: vehicle.id,
            comeback_of,
            stage: Stage::Intake,
            waits_for: WaitsFor::Us,
            promised: self.promised,
            revision: 1,
            covers: revision.covers.clone(),
            intake_answer: None,
            build_answer: None,
            build_covers: None,
            opened_at: scene.now,
            changed_at: scene.now,
        };
        let counts = counts(&revision.judgement, ticket.stage);
        store::ticket::insert(scene.conn, scene.shop, &ticket, counts).await?;
        store::revision::insert(scene.conn, scene.shop, ticket.id, &revision).await?;
        let (kinds, terms) = search_terms(&customer, &vehicle);
        search::write(scene.conn, scene.shop, ticket.id, &kinds, &terms).await?;
        scene.happened(ticket.id, Happening::TakenIn { comeback_of: self.comeback_of }).await?;
        Ok(TakenIn { ticket: ticket.number })
    }
}

impl TakeIn {
    async fn customer(&self, scene: &mut Scene<'_>, problems: &mut Vec<Problem>) -> Result<Customer, Failure> {
        match &self.customer {
            WhoseUnit::New(person) => Ok(person.checked(Uuid::now_v7(), problems)),
            WhoseUnit::Known(id) => {
                customer::find(scene.conn, scene.shop, *id).await?.ok_or(Failure::NotFound("such customer"))
            }
        }
    }

    async fn vehicle(
        &self,
        scene: &mut Scene<'_>,
        customer: &Customer,
        problems: &mut Vec<Problem>,
    ) -> Result<Vehicle, Failure> {
        match &self.vehicle {
            WhichVehicle::New(words) => Ok(words.checked(Uuid::now_v7(), customer.id, problems)),
            WhichVehicle::Known(id) => customer::find_vehicle(scene.conn, scene.shop, *id)
                .await?
                .filter(|vehicle| vehicle.customer_id == customer.id)
                .ok_or(Failure::NotFound("such vehicle of this customer")),
        }
    }

    async fn comeback(
        &self,
        scene: &mut Scene<'_>,
        vehicle: &Vehicle,
        problems: &mut Vec<Problem>,
    ) -> Result<Option<Uuid>, Failure> {
        let Some(number) = self.comeback_of else { return Ok(None) };
        let earlier = store::ticket::lock(scene.conn, scene.shop, number).await?;
        match earlier {
            Some(earlier) if earlier.vehicle_id == vehicle.id => Ok(Some(earlier.id)),
            Some(_) => {
                let message = format!("Job {number} was for another vehicle. A comeback belongs to the same one.");
                problems.push(Problem::new("comeback_of", message));
                Ok(None)
            }
            None => {
                problems.push(Problem::new("comeback_of", format!("There is no job {number}.")));
                Ok(None)
            }
        }
    }
}
