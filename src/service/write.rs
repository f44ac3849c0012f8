//! The one way in which anything is changed.
//!
//! A write runs in a task of its own, because a browser that goes away must not stop it in the middle.
//! It carries the key its form was made with: a key that is not known is carried out; one that is done
//! gives the same answer again; one that is being worked on, or comes with something else, is
//! refused. Decision, change, event, outbox and answer are one transaction. What passes by itself
//! (two writes in each other's way, a lost connection, a server that restarts) is tried again.

use super::{Caller, Failure, Judge, Service};
use crate::store::event::{self, Event};
use crate::store::idempotency::{keep_answer, take_key};
use crate::ticket::{Action, Digest, Hand, Happening, may};
use jiff::Timestamp;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::json;
use sqlx::PgConnection;
use std::time::{Duration, Instant};
use uuid::Uuid;

/// The key a form is made with and sent with. It becomes the key of the event it causes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Key(pub Uuid);

impl Key {
    /// A new key, for a new form.
    pub fn fresh() -> Self {
        Self(Uuid::now_v7())
    }
}

/// Who wants something done.
#[derive(Clone, Debug)]
pub enum Who {
    /// A member of staff.
    Staff(Caller),
    /// Somebody at the door: a customer with a link, an owner with a set-up link, a person signing in.
    AtTheDoor {
        /// The shop whose door it is.
        shop: Uuid,
        /// What the history calls them.
        name: String,
        /// The device they use.
        device: String,
    },
}

/// Who may send a command.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Staff whose role may do this.
    Staff(Action),
    /// Whoever holds the token the command checks.
    TokenHolder,
}

/// Something that changes something. Sent by [`Service::write`] and nothing else.
pub trait Command: Serialize + Send + Sync + 'static {
    /// What the sender is told. Kept for ever with the key: it must hold no secret.
    type Answer: Serialize + DeserializeOwned + Send + 'static;
    /// Its name, part of what a key stands for.
    const NAME: &'static str;
    /// Who may send it.
    const BY: By;
    /// Decides and writes, inside the transaction.
    fn carry_out(&self, scene: &mut Scene<'_>) -> impl Future<Output = Result<Self::Answer, Failure>> + Send;
}

/// What a command works with.
pub struct Scene<'a> {
    /// The transaction.
    pub(super) conn: &'a mut PgConnection,
    /// The shop.
    pub(super) shop: Uuid,
    /// Who sent it.
    pub(super) who: &'a Who,
    /// When. One moment for the whole write.
    pub(super) now: Timestamp,
    /// The rule book.
    pub(super) judge: Judge,
    next_event: Uuid,
}

impl Scene<'_> {
    /// The member of staff who sent it.
    pub(super) const fn caller(&self) -> Result<&Caller, Failure> {
        match self.who {
            Who::Staff(caller) => Ok(caller),
            Who::AtTheDoor { .. } => Err(Failure::SignedOut),
        }
    }

    /// Stops whoever may not do this as well.
    pub(super) fn must(&self, action: Action) -> Result<(), Failure> {
        if may(self.caller()?.role, action) { Ok(()) } else { Err(Failure::NotAllowed(action)) }
    }

    /// Whose hand writes, and when.
    pub(super) fn hand(&self) -> Hand {
        Hand { by: self.who.name().to_owned(), at: self.now }
    }

    /// Notes something that happened to a ticket.
    pub(super) async fn happened(&mut self, ticket: Uuid, happened: Happening) -> Result<(), Failure> {
        let event = self.event(happened);
        Ok(event::of_ticket(self.conn, self.shop, ticket, &event).await?)
    }

    /// Notes something that happened in the shop.
    pub(super) async fn happened_in_shop(&mut self, happened: Happening) -> Result<(), Failure> {
        let event = self.event(happened);
        Ok(event::of_shop(self.conn, self.shop, &event).await?)
    }

    fn event(&mut self, happened: Happening) -> Event {
        let id = std::mem::replace(&mut self.next_event, Uuid::now_v7());
        let (staff_id, device) = match self.who {
            Who::Staff(caller) => (Some(caller.staff), caller.device.clone()),
            Who::AtTheDoor { device, .. } => (None, device.clone()),
        };
        Event { id, at: self.now, staff_id, by_name: self.who.name().to_owned(), device, happened }
    }
}

impl Who {
    pub(super) const fn shop(&self) -> Uuid {
        match self {
            Self::Staff(caller) => caller.shop,
            Self::AtTheDoor { shop, .. } => *shop,
        }
    }

    fn name(&self) -> &str {
        match self {
            Self::Staff(caller) => &caller.name,
            Self::AtTheDoor { name, .. } => name,
        }
    }
}

impl By {
    fn admits(self, who: &Who) -> Result<(), Failure> {
        match (self, who) {
            (Self::Staff(action), Who::Staff(caller)) if may(caller.role, action) => Ok(()),
            (Self::Staff(action), Who::Staff(_)) => Err(Failure::NotAllowed(action)),
            (Self::Staff(_), Who::AtTheDoor { .. }) => Err(Failure::SignedOut),
            (Self::TokenHolder, _) => Ok(()),
        }
    }
}

impl Service {
    /// Carries a command out, once for its key.
    ///
    /// # Errors
    /// [`Failure`]; nothing was changed then.
    pub async fn write<C: Command>(&self, who: Who, key: Key, command: C) -> Result<C::Answer, Failure> {
        let service = self.clone();
        let task = tokio::spawn(async move {
            let done = match C::BY.admits(&who) {
                Ok(()) => service.see_through(&who, key, &command).await,
                Err(refused) => Err(refused),
            };
            if let Err(Failure::NotAllowed(action)) = done {
                service.note_denied(&who, action).await;
            }
            done
        });
        task.await.unwrap_or_else(|panic| Err(Failure::Broken(Box::new(panic))))
    }

    pub(super) async fn see_through<C: Command>(&self, who: &Who, key: Key, command: &C) -> Result<C::Answer, Failure> {
        let payload = Digest::of_value(&json!([C::NAME, command]));
        let mut patience = Patience::lasting(FOR_A_WRITE);
        let mut tried = false;
        loop {
            match self.attempt(who, key, payload, command).await {
                Err(failure) if failure.passes() && patience.wait().await => tried = true,
                // A connection of ours was lost, and the server has not noticed yet.
                Err(Failure::Running) if tried && patience.wait().await => {}
                done => return done,
            }
        }
    }

    async fn attempt<C: Command>(
        &self,
        who: &Who,
        key: Key,
        payload: Digest,
        command: &C,
    ) -> Result<C::Answer, Failure> {
        let shop = who.shop();
        let mut transaction = self.pool.begin().await?;
        let known = take_key(&mut transaction, shop, key.0, lock_number(shop, key)).await?;
        if !known.free {
            transaction.rollback().await?;
            return Err(Failure::Running);
        }
        if let Some((done, answer)) = known.done {
            transaction.rollback().await?;
            if done != payload.0 {
                return Err(Failure::OtherPayload);
            }
            return serde_json::from_value(answer).map_err(|error| Failure::Broken(Box::new(error)));
        }
        let now = self.now();
        let mut scene = Scene { conn: &mut transaction, shop, who, now, judge: self.judge, next_event: key.0 };
        let answer = match command.carry_out(&mut scene).await {
            Ok(answer) => answer,
            Err(failure) => {
                // The refusal is what matters; a connection that cannot even roll back is thrown away.
                transaction.rollback().await.ok();
                return Err(failure);
            }
        };
        let kept = serde_json::to_value(&answer).map_err(|error| Failure::Broken(Box::new(error)))?;
        keep_answer(&mut transaction, shop, key.0, &payload.0, &kept, now).await?;
        transaction.commit().await?;
        Ok(answer)
    }
}

/// The number under which the database holds a key while it is worked on.
fn lock_number(shop: Uuid, key: Key) -> i64 {
    let digest = Digest::of(&[*shop.as_bytes(), *key.0.as_bytes()].concat());
    let mut first = [0; 8];
    first.copy_from_slice(&digest.0[..8]);
    i64::from_be_bytes(first)
}

/// How long something that passes is waited for.
pub(super) struct Patience {
    until: Instant,
    pause: Duration,
}

/// A write waits for a server that restarts: the person sees a wait, not an error.
pub(super) const FOR_A_WRITE: Duration = Duration::from_secs(12);
/// A page that cannot be shown is better said so soon; looking again is easy.
pub(super) const FOR_A_LOOK: Duration = Duration::from_secs(3);
const LONGEST_PAUSE: Duration = Duration::from_millis(400);

impl Patience {
    pub(super) fn lasting(patience: Duration) -> Self {
        Self { until: Instant::now() + patience, pause: Duration::from_millis(10) }
    }

    /// Waits a little, twice as long each time; false when the patience is at its end.
    pub(super) async fn wait(&mut self) -> bool {
        if Instant::now() + self.pause > self.until {
            return false;
        }
        tokio::time::sleep(self.pause).await;
        self.pause = (self.pause * 2).min(LONGEST_PAUSE);
        true
    }
}
