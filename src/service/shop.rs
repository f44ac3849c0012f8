//! The shop's own particulars.

use super::form::{self, Field, one_line, several_lines};
use super::write::Scene;
use super::{By, Command, Failure, Service, Shop};
use crate::store;
use crate::ticket::{Action, Change, Happening, Problem};
use jiff::tz::TimeZone;
use serde::Serialize;
use uuid::Uuid;

const SHOP: Field = Field { name: "shop", label: "The shop's name", most: 100, needed: true };
const PHONE: Field = Field { name: "phone", label: "The shop's telephone number", most: 40, needed: true };

const TERMS: Field = Field { name: "teardown_terms", label: "The terms for the teardown", most: 4000, needed: false };
const NOT_COVERED: Field = Field { name: "not_covered", label: "What is not covered", most: 4000, needed: false };

/// A shop's name, telephone number and time zone, checked.
#[derive(Serialize)]
pub(super) struct Particulars {
    pub(super) name: String,
    phone: String,
    zone: String,
}

impl Particulars {
    /// The shop with these and with no words of its own yet.
    pub(super) fn of(&self, shop_id: Uuid) -> Shop {
        let (name, phone, zone) = (self.name.clone(), self.phone.clone(), self.zone.clone());
        let (teardown_terms, not_covered) = (String::new(), String::new());
        Shop { shop_id, name, phone, zone, teardown_terms, not_covered, set_up: true }
    }
}

pub(super) fn particulars(shop: &str, phone: &str, zone: &str, problems: &mut Vec<Problem>) -> Particulars {
    let zone = zone.trim();
    if TimeZone::get(zone).is_err() {
        let message = format!("\"{zone}\" is no time zone this program knows. Write it like America/Denver.");
        problems.push(Problem::new("zone", message));
    }
    Particulars { name: one_line(SHOP, shop, problems), phone: one_line(PHONE, phone, problems), zone: zone.to_owned() }
}

/// New particulars of the shop.
#[derive(Clone, Debug, Serialize)]
pub struct ChangeShop {
    /// Its name.
    pub shop: String,
    /// Its telephone number.
    pub phone: String,
    /// Its time zone, as the IANA names it.
    pub zone: String,
    /// Its terms for taking a unit apart; empty for none.
    pub teardown_terms: String,
    /// What it does not answer for; empty for nothing said.
    pub not_covered: String,
}

impl Command for ChangeShop {
    type Answer = ();
    const NAME: &'static str = "change_shop";
    const BY: By = By::Staff(Action::ManageShop);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let mut problems = Vec::new();
        let particulars = particulars(&self.shop, &self.phone, &self.zone, &mut problems);
        let teardown_terms = several_lines(TERMS, &self.teardown_terms, &mut problems);
        let not_covered = several_lines(NOT_COVERED, &self.not_covered, &mut problems);
        form::none(problems)?;
        let was = store::shop::find(scene.conn, scene.shop).await?.ok_or(Failure::NotFound("shop"))?;
        let now = Shop { teardown_terms, not_covered, ..particulars.of(scene.shop) };
        let changes = differing(&[
            ("shop", "Name", &was.name, &now.name),
            ("phone", "Telephone", &was.phone, &now.phone),
            ("zone", "Time zone", &was.zone, &now.zone),
            ("teardown_terms", "Terms for the teardown", &was.teardown_terms, &now.teardown_terms),
            ("not_covered", "What is not covered", &was.not_covered, &now.not_covered),
        ]);
        if changes.is_empty() {
            return Ok(());
        }
        store::shop::write(scene.conn, &now, scene.now).await?;
        scene.happened_in_shop(Happening::ShopChanged { changes }).await
    }
}

/// The fields that differ: name, label, before, after.
pub(super) fn differing(fields: &[(&str, &str, &str, &str)]) -> Vec<Change> {
    fields
        .iter()
        .filter(|(_, _, from, to)| from != to)
        .map(|(field, label, from, to)| Change {
            field: (*field).to_owned(),
            label: (*label).to_owned(),
            from: (*from).to_owned(),
            to: (*to).to_owned(),
        })
        .collect()
}

impl Service {
    /// The shop with this key.
    ///
    /// # Errors
    /// [`Failure::NotFound`] when there is none.
    pub async fn shop(&self, shop: Uuid) -> Result<Shop, Failure> {
        let found = self.read(|conn| Box::pin(async move { Ok(store::shop::find(conn, shop).await?) })).await?;
        found.ok_or(Failure::NotFound("shop"))
    }
}
