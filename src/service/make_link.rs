//! Making customer links and taking them back.

use super::change::open_ticket;
use super::sign_in::later;
use super::write::Scene;
use super::{By, Caller, Command, Failure, Key, Pass, Service, Who};
use crate::store::link::{self, NewLink};
use crate::ticket::{Action, Happening, Purpose};
use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

const USUAL_DAYS: u16 = 30;
const MOST_DAYS: u16 = 365;

/// A new link of a ticket, showing its current revision.
#[derive(Clone, Debug)]
pub struct MakeLink {
    /// The ticket.
    pub ticket: i64,
    /// What it is for.
    pub purpose: Purpose,
    /// How many days it opens; 30 when nothing else is said.
    pub days: Option<u16>,
}

/// A new link.
#[derive(Clone, Debug)]
pub struct LinkMade {
    /// Its key.
    pub id: Uuid,
    /// Until when it opens.
    pub expires_at: Timestamp,
    /// What goes into the customer's address, shown once. Absent when the same form was sent before:
    /// the token of the link it made was shown then and is kept nowhere.
    pub pass: Option<Pass>,
}

impl Service {
    /// Makes a link for the customer.
    ///
    /// # Errors
    /// [`Failure`], as for every write.
    pub async fn make_link(&self, caller: &Caller, key: Key, make: MakeLink) -> Result<LinkMade, Failure> {
        let days = make.days.unwrap_or(USUAL_DAYS);
        if !(1..=MOST_DAYS).contains(&days) {
            let message = format!("{days} days were given; a link opens for 1 to {MOST_DAYS} days.");
            return Err(Failure::problem("days", message));
        }
        let pass = Pass::fresh(caller.shop)?;
        let command = Make { ticket: make.ticket, purpose: make.purpose, days, token_hash: pass.hash() };
        let made = self.write(Who::Staff(caller.clone()), key, command).await?;
        let pass = (made.token_hash == pass.hash()).then_some(pass);
        Ok(LinkMade { id: made.id, expires_at: made.expires_at, pass })
    }
}

#[derive(Serialize)]
struct Make {
    ticket: i64,
    purpose: Purpose,
    days: u16,
    /// Made anew for each sending, so no part of what a key stands for.
    #[serde(skip)]
    token_hash: [u8; 32],
}

#[derive(Serialize, Deserialize)]
struct Made {
    id: Uuid,
    expires_at: Timestamp,
    token_hash: [u8; 32],
}

impl Command for Make {
    type Answer = Made;
    const NAME: &'static str = "make_link";
    const BY: By = By::Staff(Action::ManageLinks);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Made, Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        let id = Uuid::now_v7();
        let expires_at = later(scene.now, SignedDuration::from_hours(24 * i64::from(self.days)));
        let by = scene.hand().by;
        let new = NewLink {
            id,
            token_hash: &self.token_hash,
            ticket_id: ticket.id,
            revision: ticket.revision,
            purpose: self.purpose,
            made_at: scene.now,
            made_by: &by,
            expires_at,
        };
        link::insert(scene.conn, scene.shop, &new).await?;
        let made = Happening::LinkMade { purpose: self.purpose, revision: ticket.revision, expires: expires_at };
        scene.happened(ticket.id, made).await?;
        Ok(Made { id, expires_at, token_hash: self.token_hash })
    }
}

/// Takes a link back, at once.
#[derive(Clone, Debug, Serialize)]
pub struct RevokeLink {
    /// The ticket.
    pub ticket: i64,
    /// The link's key.
    pub link: Uuid,
}

impl Command for RevokeLink {
    type Answer = ();
    const NAME: &'static str = "revoke_link";
    const BY: By = By::Staff(Action::ManageLinks);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let ticket = super::change::any_ticket(scene, self.ticket).await?;
        let by = scene.hand().by;
        let purpose = link::revoke(scene.conn, scene.shop, ticket.id, self.link, &by, scene.now).await?;
        let purpose = purpose.ok_or(Failure::NotFound("such link"))?;
        scene.happened(ticket.id, Happening::LinkRevoked { purpose }).await
    }
}
