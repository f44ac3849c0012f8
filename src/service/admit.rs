//! Letting in whom the table of roles lets in, and keeping who was refused what.

use super::write::Scene;
use super::{By, Caller, Command, Failure, Key, Service, Who};
use crate::ticket::{Action, Happening, may};
use serde::Serialize;

impl Service {
    /// Lets the caller on if their role may do this; a refusal is kept in the shop's history.
    ///
    /// # Errors
    /// [`Failure::NotAllowed`], with whom to ask.
    pub async fn admit(&self, caller: &Caller, action: Action) -> Result<(), Failure> {
        if may(caller.role, action) {
            return Ok(());
        }
        self.note_denied(&Who::Staff(caller.clone()), action).await;
        Err(Failure::NotAllowed(action))
    }

    /// Keeps that somebody tried what their role may not do. The refusal stands whether or not it can be kept.
    pub(super) async fn note_denied(&self, who: &Who, action: Action) {
        if let Err(failure) = self.see_through(who, Key::fresh(), &Denied { action }).await {
            tracing::warn!(action = action.code(), %failure, "a refusal could not be kept");
        }
    }
}

#[derive(Serialize)]
struct Denied {
    action: Action,
}

impl Command for Denied {
    type Answer = ();
    const NAME: &'static str = "denied";
    const BY: By = By::TokenHolder;

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        scene.happened_in_shop(Happening::Denied { what: self.action.label().to_owned() }).await
    }
}
