//! The first start: a shop, a one-time link, an owner.

use super::form::{self, clean, name_key, one_line};
use super::shop::{Particulars, particulars};
use super::sign_in::later;
use super::staff::NAME;
use super::write::Scene;
use super::{By, Command, Failure, Key, Pass, Service, Shop, Staff, Who, password};
use crate::store::{shop, staff};
use crate::ticket::{Happening, Problem, Role};
use jiff::SignedDuration;
use serde::Serialize;
use uuid::Uuid;

/// How long the set-up link opens. A start of the program makes a new one.
const LINK: SignedDuration = SignedDuration::from_hours(24);

/// What the start of the program finds.
#[derive(Debug)]
pub enum FirstStart {
    /// A shop that is set up.
    Ready(Shop),
    /// None yet: the owner sets it up with this pass, once.
    SetUpWith(Pass),
}

/// What the owner fills in.
#[derive(Clone)]
pub struct SetUp {
    /// The shop's name.
    pub shop: String,
    /// Its telephone number, for customers.
    pub phone: String,
    /// Its time zone, as the IANA names it.
    pub zone: String,
    /// The owner's name.
    pub name: String,
    /// The owner's password.
    pub password: String,
}

impl Service {
    /// Finds the shop of this server; makes it, and a set-up link, while nobody has set it up.
    ///
    /// # Errors
    /// [`Failure::Busy`] when the database cannot be reached.
    pub async fn first_start(&self) -> Result<FirstStart, Failure> {
        loop {
            let first = self.first_shop().await?;
            if let Some(shop) = first.as_ref().filter(|shop| shop.set_up) {
                return Ok(FirstStart::Ready(shop.clone()));
            }
            let pass = Pass::fresh(first.map_or_else(Uuid::now_v7, |shop| shop.shop_id))?;
            let who =
                Who::AtTheDoor { shop: pass.shop(), name: "Endplay".to_owned(), device: "first start".to_owned() };
            match self.write(who, Key::fresh(), OpenShop { token_hash: pass.hash() }).await {
                Ok(()) => return Ok(FirstStart::SetUpWith(pass)),
                // Another instance was first; the next look finds its shop.
                Err(Failure::LinkClosed) => {}
                Err(failure) => return Err(failure),
            }
        }
    }

    /// The shop of this server, where there is only one.
    ///
    /// # Errors
    /// [`Failure::Busy`] when the database cannot be reached.
    pub async fn first_shop(&self) -> Result<Option<Shop>, Failure> {
        self.read(|conn| Box::pin(async move { Ok(shop::first(conn).await?) })).await
    }

    /// Does this set-up link still open?
    ///
    /// # Errors
    /// [`Failure::Busy`] when the database cannot be reached.
    pub async fn setup_opens(&self, pass: &str) -> Result<bool, Failure> {
        let Some(pass) = Pass::read(pass) else { return Ok(false) };
        let (shop, hash) = (pass.shop(), pass.hash());
        let until = self.read(|conn| Box::pin(async move { Ok(shop::setup_link(conn, shop, &hash).await?) })).await?;
        Ok(until.is_some_and(|until| until > self.now()))
    }

    /// Sets the shop up and makes its owner, once.
    ///
    /// # Errors
    /// [`Failure::Problems`] for what cannot be taken; [`Failure::LinkClosed`] when the link was used or is too old.
    pub async fn set_up(&self, pass: &str, key: Key, set_up: SetUp, device: &str) -> Result<(), Failure> {
        let pass = Pass::read(pass).ok_or(Failure::LinkClosed)?;
        let mut problems = Vec::new();
        let particulars = particulars(&set_up.shop, &set_up.phone, &set_up.zone, &mut problems);
        let name = one_line(NAME, &set_up.name, &mut problems);
        if let Some(complaint) = password::complaint(&set_up.password, &particulars.name, &name) {
            problems.push(Problem::new("password", complaint));
        }
        form::none(problems)?;
        let password_hash = password::hash(set_up.password).await?;
        let device = clean(device, 200);
        let who = Who::AtTheDoor { shop: pass.shop(), name: name.clone(), device };
        self.write(who, key, SetUpShop { token_hash: pass.hash(), particulars, name, password_hash }).await
    }
}

#[derive(Serialize)]
struct OpenShop {
    token_hash: [u8; 32],
}

impl Command for OpenShop {
    type Answer = ();
    const NAME: &'static str = "open_shop";
    const BY: By = By::TokenHolder;

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        shop::hold_the_door(scene.conn).await?;
        match shop::first(scene.conn).await? {
            None => shop::insert(scene.conn, scene.shop, scene.now).await?,
            Some(first) if first.shop_id != scene.shop || first.set_up => return Err(Failure::LinkClosed),
            Some(_) => {}
        }
        let expires = later(scene.now, LINK);
        shop::write_setup_link(scene.conn, scene.shop, &self.token_hash, scene.now, expires).await?;
        Ok(())
    }
}

#[derive(Serialize)]
struct SetUpShop {
    token_hash: [u8; 32],
    particulars: Particulars,
    name: String,
    #[serde(skip)]
    password_hash: String,
}

impl Command for SetUpShop {
    type Answer = ();
    const NAME: &'static str = "set_up";
    const BY: By = By::TokenHolder;

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let until = shop::setup_link(scene.conn, scene.shop, &self.token_hash).await?;
        if until.is_none_or(|until| until <= scene.now) {
            return Err(Failure::LinkClosed);
        }
        shop::use_setup_link(scene.conn, scene.shop, &self.token_hash, scene.now).await?;
        shop::write(scene.conn, &self.particulars.of(scene.shop), scene.now).await?;
        let owner = Staff { id: Uuid::now_v7(), name: self.name.clone(), role: Role::Owner, disabled: false };
        let key = name_key(&self.name);
        staff::insert(scene.conn, scene.shop, &owner, &key, &self.password_hash, scene.now).await?;
        scene.happened_in_shop(Happening::ShopSetUp { name: self.particulars.name.clone() }).await
    }
}
