//! Who is signed in.

use super::{Failure, Key, Pass, Service, Who};
use crate::store::{self, staff::Staff};
use crate::ticket::Role;
use jiff::SignedDuration;
use uuid::Uuid;

/// A member of staff at a device, as every use case knows them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caller {
    /// The shop.
    pub shop: Uuid,
    /// The person's key.
    pub staff: Uuid,
    /// The person's name.
    pub name: String,
    /// What they are.
    pub role: Role,
    /// The device they use.
    pub device: String,
    /// SHA-256 of the session's token.
    pub(super) session: [u8; 32],
}

/// A new session.
#[derive(Clone, Debug)]
pub struct SignedIn {
    /// The cookie's value, once; it cannot be had again.
    pub pass: Pass,
    /// Who.
    pub caller: Caller,
}

/// However busy, a session ends after this.
pub(super) const ABSOLUTE: SignedDuration = SignedDuration::from_hours(12);
/// How exactly the last use is kept; a write for every page would be too dear.
const GRAIN: SignedDuration = SignedDuration::from_secs(60);

/// How long a session lives without being used. A tablet lies about on the bench; a desk is sat at.
const fn idle(role: Role) -> SignedDuration {
    match role {
        Role::Technician => SignedDuration::from_mins(15),
        Role::Desk | Role::Owner => SignedDuration::from_mins(30),
    }
}

impl Service {
    /// Whose session this cookie is.
    ///
    /// # Errors
    /// [`Failure::SignedOut`] when it is nobody's, has ended, or its person was disabled.
    pub async fn signed_in(&self, cookie: &str) -> Result<Caller, Failure> {
        let pass = Pass::read(cookie).ok_or(Failure::SignedOut)?;
        let (shop, hash) = (pass.shop(), pass.hash());
        let found = self
            .read(|conn| Box::pin(async move { Ok(store::session::find(conn, shop, &hash).await?) }))
            .await?
            .ok_or(Failure::SignedOut)?;
        let now = self.now();
        let unused = now.duration_since(found.seen_at);
        // The last use may be kept up to a grain too early; the person is not to lose by it.
        if found.staff.disabled || now >= found.expires_at || unused > idle(found.staff.role) + GRAIN {
            return Err(Failure::SignedOut);
        }
        if unused >= GRAIN {
            self.read(|conn| Box::pin(async move { Ok(store::session::touch(conn, shop, &hash, now).await?) })).await?;
        }
        Ok(caller(shop, found.staff, found.device, hash))
    }

    /// Ends the session.
    ///
    /// # Errors
    /// [`Failure::Busy`] when the database cannot be reached.
    pub async fn sign_out(&self, caller: &Caller) -> Result<(), Failure> {
        self.write(Who::Staff(caller.clone()), Key::fresh(), SignOut { session: caller.session }).await
    }
}

pub(super) fn caller(shop: Uuid, staff: Staff, device: String, session: [u8; 32]) -> Caller {
    Caller { shop, staff: staff.id, name: staff.name, role: staff.role, device, session }
}

#[derive(serde::Serialize)]
struct SignOut {
    session: [u8; 32],
}

impl super::Command for SignOut {
    type Answer = ();
    const NAME: &'static str = "sign_out";
    const BY: super::By = super::By::Staff(crate::ticket::Action::OwnAccount);

    async fn carry_out(&self, scene: &mut super::write::Scene<'_>) -> Result<(), Failure> {
        store::session::end(scene.conn, scene.shop, &self.session).await?;
        scene.happened_in_shop(crate::ticket::Happening::SignedOut).await
    }
}
