//! How a customer's link stands.

use super::{Caller, Failure, Service};
use crate::store::link::Link;
use crate::store::{link, ticket};
use crate::ticket::{Action, Answer, Purpose};
use jiff::Timestamp;
use uuid::Uuid;

/// What a link still does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkState {
    /// It shows its paper and takes an answer.
    Open,
    /// It was answered; the reference is the receipt's.
    Used {
        /// What was answered.
        answer: Answer,
        /// The receipt's reference.
        reference: String,
    },
    /// The shop took it back.
    Revoked,
    /// What it shows no longer stands, or was signed another way.
    Superseded,
    /// The job is finished or declined.
    Finished,
    /// It is too old.
    Expired,
}

/// A link as the ticket's page lists it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CustomerLink {
    /// The key, to revoke it by.
    pub id: Uuid,
    /// What it is for.
    pub purpose: Purpose,
    /// The revision it shows.
    pub revision: i32,
    /// When it was made.
    pub made_at: Timestamp,
    /// Who made it.
    pub made_by: String,
    /// Until when it opens.
    pub expires_at: Timestamp,
    /// What it still does.
    pub state: LinkState,
}

/// What this link still does.
pub(super) fn state(link: &Link, now: Timestamp) -> LinkState {
    if let Some((answer, reference)) = &link.answered {
        return LinkState::Used { answer: *answer, reference: reference.clone() };
    }
    let replaced = match link.purpose {
        Purpose::Intake => link.intake_answer == Some(Answer::Signed),
        Purpose::Build => {
            let signed = link
                .build
                .as_ref()
                .is_some_and(|(answer, covers)| *answer == Answer::Signed && *covers == link.covers_now);
            signed || link.covers != link.covers_now
        }
    };
    if link.revoked_at.is_some() {
        LinkState::Revoked
    } else if !link.stage.open() {
        LinkState::Finished
    } else if replaced {
        LinkState::Superseded
    } else if link.expires_at <= now {
        LinkState::Expired
    } else {
        LinkState::Open
    }
}

/// Which revision an open link shows. What is built is signed in one version only. The leave to take the unit apart is
/// not bound to one, so it is given on what stands now: an older page would claim to be the latest.
pub(super) const fn shows(link: &Link, current: i32) -> i32 {
    match link.purpose {
        Purpose::Intake => current,
        Purpose::Build => link.revision,
    }
}

pub(super) fn listed(link: Link, now: Timestamp) -> CustomerLink {
    let state = state(&link, now);
    let Link { id, purpose, revision, made_at, made_by, expires_at, .. } = link;
    CustomerLink { id, purpose, revision, made_at, made_by, expires_at, state }
}

impl Service {
    /// A ticket's links, newest first.
    ///
    /// # Errors
    /// [`Failure::NotAllowed`] for those who do not handle links; [`Failure::NotFound`] without such a ticket.
    pub async fn links(&self, caller: &Caller, number: i64) -> Result<Vec<CustomerLink>, Failure> {
        self.admit(caller, Action::ManageLinks).await?;
        let shop = caller.shop;
        let found = self
            .read(|conn| {
                Box::pin(async move {
                    let ticket = ticket::find(conn, shop, number).await?.ok_or(Failure::NotFound("such ticket"))?;
                    Ok(link::of_ticket(conn, shop, ticket.id).await?)
                })
            })
            .await?;
        let now = self.now();
        Ok(found.into_iter().map(|link| listed(link, now)).collect())
    }
}
