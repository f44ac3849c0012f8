//! Changing one's own password.

use super::write::Scene;
use super::{By, Caller, Command, Failure, Key, Service, Who, form, password};
use crate::store::{self, session, staff};
use crate::ticket::{Action, Happening};
use serde::Serialize;

/// A new password for oneself.
#[derive(Clone)]
pub struct ChangePassword {
    /// The present one.
    pub present: String,
    /// The new one.
    pub new: String,
}

impl Service {
    /// Changes the caller's own password and ends their sessions on all other devices.
    ///
    /// # Errors
    /// [`Failure::Problems`] when the present password does not fit or the new one will not do.
    pub async fn change_password(&self, caller: &Caller, key: Key, change: ChangePassword) -> Result<(), Failure> {
        let (shop, name_key) = (caller.shop, form::name_key(&caller.name));
        let name_key = name_key.as_str();
        let (known, shop_row) = self
            .read(|conn| {
                let name_key = name_key.to_owned();
                Box::pin(async move {
                    let known = staff::credentials(conn, shop, &name_key).await?;
                    Ok((known, store::shop::find(conn, shop).await?))
                })
            })
            .await?;
        let present = change.present.chars().take(password::LONGEST + 1).collect();
        if !password::check(present, known.map(|known| known.password_hash)).await?.fits {
            return Err(Failure::problem("present", "This is not your present password."));
        }
        let shop_name = shop_row.map(|shop| shop.name).unwrap_or_default();
        if let Some(complaint) = password::complaint(&change.new, &shop_name, &caller.name) {
            return Err(Failure::problem("new", complaint));
        }
        let hash = password::hash(change.new).await?;
        self.write(Who::Staff(caller.clone()), key, SetPassword { hash }).await
    }
}

#[derive(Serialize)]
struct SetPassword {
    #[serde(skip)]
    hash: String,
}

impl Command for SetPassword {
    type Answer = ();
    const NAME: &'static str = "change_password";
    const BY: By = By::Staff(Action::OwnAccount);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let caller = scene.caller()?.clone();
        staff::set_password(scene.conn, scene.shop, caller.staff, &self.hash).await?;
        session::end_all(scene.conn, scene.shop, caller.staff, Some(&caller.session)).await?;
        scene.happened_in_shop(Happening::PasswordChanged).await
    }
}
