//! The first page of the intake, as the counter sees it.

use super::form::LOOSE_PARTS;
use crate::service::Returning;
use crate::web::form::FormState;
use uuid::Uuid;

/// Somebody who has been here before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Known {
    /// What the button sends for them with another vehicle.
    pub other_vehicle: String,
    /// Their name.
    pub name: String,
    /// Their telephone number.
    pub phone: String,
    /// Their vehicles.
    pub vehicles: Vec<KnownVehicle>,
}

/// A vehicle that has been here before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KnownVehicle {
    /// What the button sends for it.
    pub this: String,
    /// In plain words.
    pub words: String,
    /// The plate, or nothing.
    pub plate: String,
    /// Its jobs: `1042, 1007`.
    pub jobs: String,
}

/// A part that often comes with a unit.
pub struct LoosePart {
    /// What it is called.
    pub name: &'static str,
    /// Is it ticked?
    pub ticked: bool,
}

impl Known {
    /// The people found, each with their vehicles, in the order found.
    pub fn from_found(found: &[Returning]) -> Vec<Self> {
        let mut people: Vec<(Uuid, Self)> = Vec::new();
        for one in found {
            let customer = &one.customer;
            let vehicle = KnownVehicle {
                this: format!("this {} {}", customer.id, one.vehicle_id),
                words: one.vehicle.clone(),
                plate: one.plate.clone(),
                jobs: one.tickets.iter().map(ToString::to_string).collect::<Vec<_>>().join(", "),
            };
            match people.iter_mut().find(|(id, _)| *id == customer.id) {
                Some((_, known)) => known.vehicles.push(vehicle),
                None => people.push((
                    customer.id,
                    Self {
                        other_vehicle: format!("this {} other", customer.id),
                        name: customer.name.clone(),
                        phone: customer.phone.clone(),
                        vehicles: vec![vehicle],
                    },
                )),
            }
        }
        people.into_iter().map(|(_, known)| known).collect()
    }
}

/// The parts that often come along, as they are ticked.
pub fn loose_parts(form: &FormState) -> Vec<LoosePart> {
    LOOSE_PARTS.iter().map(|name| LoosePart { name, ticked: form.chosen("part", name) }).collect()
}

/// The numbers of the chosen vehicle's earlier jobs.
pub fn earlier(form: &FormState) -> Vec<String> {
    form.value("earlier").split(' ').filter(|number| number.parse::<i64>().is_ok()).map(str::to_owned).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::service::Customer;

    fn returning(customer: u128, vehicle: u128) -> Returning {
        Returning {
            customer: Customer {
                id: Uuid::from_u128(customer),
                name: "Rosa Lee".into(),
                phone: "555".into(),
                email: String::new(),
            },
            vehicle_id: Uuid::from_u128(vehicle),
            vehicle: format!("Vehicle {vehicle}"),
            plate: String::new(),
            tickets: vec![1042, 1007],
        }
    }

    #[test]
    fn people_stand_once_with_all_their_vehicles() {
        let known = Known::from_found(&[returning(1, 10), returning(2, 20), returning(1, 11)]);
        assert_eq!(known.len(), 2);
        assert_eq!(known[0].vehicles.len(), 2);
        assert_eq!(known[0].vehicles[0].jobs, "1042, 1007");
        assert_eq!(known[0].vehicles[1].this, format!("this {} {}", Uuid::from_u128(1), Uuid::from_u128(11)));
    }
}
