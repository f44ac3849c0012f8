//! Signing in with name and password.

use super::form::{clean, name_key};
use super::session::{ABSOLUTE, caller};
use super::write::Scene;
use super::{By, Command, Failure, Key, Pass, Service, SignedIn, Who, password};
use crate::store::{session, sign_in, staff};
use crate::ticket::{Happening, SignInRefusal};
use jiff::{SignedDuration, Timestamp};
use serde::Serialize;
use uuid::Uuid;

/// This many tries are free.
const FREE_TRIES: i32 = 5;
/// The first lock; each further failed try doubles it.
const FIRST_LOCK: SignedDuration = SignedDuration::from_secs(30);
const LONGEST_LOCK: SignedDuration = SignedDuration::from_mins(15);
/// Failed tries older than this no longer count.
const FORGET: SignedDuration = SignedDuration::from_hours(24);
const NOT_LET_IN: &str = "The name and the password do not fit together. Check both and try again.";

impl Service {
    /// Signs somebody in on a device. The session is new at every sign-in.
    ///
    /// # Errors
    /// [`Failure::NotLetIn`] with the same words whether the name or the password is wrong.
    pub async fn sign_in(&self, shop: Uuid, name: &str, password: &str, device: &str) -> Result<SignedIn, Failure> {
        let name_key: String = name_key(name).chars().take(100).filter(|letter| !letter.is_control()).collect();
        let key = name_key.as_str();
        let (locked_until, known) = self
            .read(|conn| {
                let key = key.to_owned();
                Box::pin(async move {
                    let locked_until = sign_in::locked_until(conn, shop, &key).await?;
                    Ok((locked_until, staff::credentials(conn, shop, &key).await?))
                })
            })
            .await?;
        let now = self.now();
        let device = clean(device, 200);
        let who = Who::AtTheDoor { shop, name: key.to_owned(), device: device.clone() };
        if let Some(until) = locked_until.filter(|until| *until > now) {
            self.write(who, Key::fresh(), Refuse { name_key: key.to_owned(), because: SignInRefusal::Locked }).await?;
            return Err(Failure::NotLetIn(wait_sentence(until.duration_since(now))));
        }
        let kept = known.as_ref().map(|known| known.password_hash.clone());
        let given: String = password.chars().take(password::LONGEST + 1).collect();
        let checked = password::check(given.clone(), kept).await?;
        let because = match &known {
            None => Some(SignInRefusal::NoSuchName),
            Some(_) if !checked.fits => Some(SignInRefusal::WrongPassword),
            Some(known) if known.staff.disabled => Some(SignInRefusal::Disabled),
            Some(_) => None,
        };
        let (None, Some(known)) = (because, known) else {
            let because = because.unwrap_or(SignInRefusal::NoSuchName);
            self.write(who, Key::fresh(), Refuse { name_key: key.to_owned(), because }).await?;
            return Err(Failure::NotLetIn(NOT_LET_IN.to_owned()));
        };
        let new_hash = if checked.weak { Some(password::hash(given).await?) } else { None };
        let pass = Pass::fresh(shop)?;
        let caller = caller(shop, known.staff, device, pass.hash());
        let command = SignIn { name_key: key.to_owned(), new_hash };
        self.write(Who::Staff(caller.clone()), Key::fresh(), command).await?;
        Ok(SignedIn { pass, caller })
    }
}

fn wait_sentence(left: SignedDuration) -> String {
    let minutes = (left.as_secs() + 59) / 60;
    let wait = if minutes <= 1 { "a minute".to_owned() } else { format!("{minutes} minutes") };
    format!("There were too many tries with this name. Please wait {wait} and try again.")
}

#[derive(Serialize)]
struct SignIn {
    name_key: String,
    #[serde(skip)]
    new_hash: Option<String>,
}

impl Command for SignIn {
    type Answer = ();
    const NAME: &'static str = "sign_in";
    const BY: By = By::Staff(crate::ticket::Action::OwnAccount);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let caller = scene.caller()?.clone();
        // Disabled between the check and now: the lock on the row makes the order certain.
        let person = staff::lock(scene.conn, scene.shop, caller.staff).await?;
        if person.is_none_or(|person| person.disabled) {
            return Err(Failure::NotLetIn(NOT_LET_IN.to_owned()));
        }
        // Many guesses sent at once all find the name free at first; whichever ends after the lock counts for nothing.
        let locked_until = sign_in::locked_until(scene.conn, scene.shop, &self.name_key).await?;
        if let Some(until) = locked_until.filter(|until| *until > scene.now) {
            return Err(Failure::NotLetIn(wait_sentence(until.duration_since(scene.now))));
        }
        let expires = later(scene.now, ABSOLUTE);
        session::insert(scene.conn, scene.shop, &caller.session, caller.staff, &caller.device, scene.now, expires)
            .await?;
        sign_in::forget(scene.conn, scene.shop, &self.name_key).await?;
        if let Some(hash) = &self.new_hash {
            staff::set_password(scene.conn, scene.shop, caller.staff, hash).await?;
        }
        scene.happened_in_shop(Happening::SignedIn).await
    }
}

#[derive(Serialize)]
struct Refuse {
    name_key: String,
    because: SignInRefusal,
}

impl Command for Refuse {
    type Answer = ();
    const NAME: &'static str = "refuse_sign_in";
    const BY: By = By::TokenHolder;

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        if self.because != SignInRefusal::Locked {
            let forget = scene.now - FORGET;
            let failures = sign_in::count(scene.conn, scene.shop, &self.name_key, scene.now, forget).await?;
            if failures >= FREE_TRIES {
                let doublings = u32::try_from(failures - FREE_TRIES).unwrap_or(0).min(10);
                let lock = (FIRST_LOCK * 2_i32.pow(doublings)).min(LONGEST_LOCK);
                sign_in::lock(scene.conn, scene.shop, &self.name_key, later(scene.now, lock)).await?;
            }
        }
        scene.happened_in_shop(Happening::SignInRefused { because: self.because }).await
    }
}

pub(super) fn later(now: Timestamp, by: SignedDuration) -> Timestamp {
    now.checked_add(by).unwrap_or(Timestamp::MAX)
}
