//! The owner's list of staff.

use super::form::{self, Field, name_key, one_line};
use super::write::Scene;
use super::{By, Caller, Command, Failure, Key, Service, Staff, Who, password};
use crate::store::{self, staff};
use crate::ticket::{Action, Happening, Problem, Role};
use serde::Serialize;
use uuid::Uuid;

pub(super) const NAME: Field = Field { name: "name", label: "The name", most: 60, needed: true };

/// A new member of staff.
#[derive(Clone)]
pub struct AddStaff {
    /// The name they sign in with.
    pub name: String,
    /// What they are.
    pub role: Role,
    /// Their first password.
    pub password: String,
}

impl Service {
    /// Everybody who works here or did.
    ///
    /// # Errors
    /// [`Failure::NotAllowed`] for all but the owner.
    pub async fn staff(&self, caller: &Caller) -> Result<Vec<Staff>, Failure> {
        self.admit(caller, Action::ManageStaff).await?;
        let shop = caller.shop;
        self.read(|conn| Box::pin(async move { Ok(staff::list(conn, shop).await?) })).await
    }

    /// Adds a member of staff.
    ///
    /// # Errors
    /// [`Failure::Problems`] when the name is taken or the password will not do.
    pub async fn add_staff(&self, caller: &Caller, key: Key, add: AddStaff) -> Result<Uuid, Failure> {
        self.admit(caller, Action::ManageStaff).await?;
        let shop = caller.shop;
        let shop_row = self.read(|conn| Box::pin(async move { Ok(store::shop::find(conn, shop).await?) })).await?;
        let mut problems = Vec::new();
        let name = one_line(NAME, &add.name, &mut problems);
        let shop_name = shop_row.map(|shop| shop.name).unwrap_or_default();
        if let Some(complaint) = password::complaint(&add.password, &shop_name, &name) {
            problems.push(Problem::new("password", complaint));
        }
        form::none(problems)?;
        let hash = password::hash(add.password).await?;
        self.write(Who::Staff(caller.clone()), key, Add { name, role: add.role, hash }).await
    }
}

#[derive(Serialize)]
struct Add {
    name: String,
    role: Role,
    #[serde(skip)]
    hash: String,
}

impl Command for Add {
    type Answer = Uuid;
    const NAME: &'static str = "add_staff";
    const BY: By = By::Staff(Action::ManageStaff);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Uuid, Failure> {
        let person = Staff { id: Uuid::now_v7(), name: self.name.clone(), role: self.role, disabled: false };
        staff::insert(scene.conn, scene.shop, &person, &name_key(&self.name), &self.hash, scene.now).await?;
        scene.happened_in_shop(Happening::StaffAdded { name: self.name.clone(), role: self.role }).await?;
        Ok(person.id)
    }
}

/// Shuts a member of staff out, everywhere and at once.
#[derive(Clone, Debug, Serialize)]
pub struct DisableStaff {
    /// Whom.
    pub staff: Uuid,
}

impl Command for DisableStaff {
    type Answer = ();
    const NAME: &'static str = "disable_staff";
    const BY: By = By::Staff(Action::ManageStaff);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let owners = staff::active_owners(scene.conn, scene.shop).await?;
        let person = staff::lock(scene.conn, scene.shop, self.staff).await?;
        let person = person.ok_or(Failure::NotFound("such member of staff"))?;
        if person.disabled {
            return Ok(());
        }
        if person.role == Role::Owner && owners < 2 {
            return Err(Failure::problem("staff", "This is the last owner. Add another owner first."));
        }
        staff::disable(scene.conn, scene.shop, self.staff, scene.now).await?;
        scene.happened_in_shop(Happening::StaffDisabled { name: person.name }).await
    }
}
