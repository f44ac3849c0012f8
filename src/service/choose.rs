//! What a customer is offered beside the build as it stands, and what they choose: once a link.

use super::change::any_ticket;
use super::form::{self, Field, clean, one_line};
use super::link::{LinkState, state};
use super::link_page::written;
use super::variant::Variant;
use super::write::Scene;
use super::{By, Command, Failure, Key, Pass, Revision, Service, Shop, Ticket, Who};
use crate::store::variant::{self, Chosen};
use crate::store::{link, ticket};
use crate::ticket::{Happening, Paper, Purpose, Reworded, WaitsFor, reworded};
use serde::{Deserialize, Serialize};
use sqlx::PgConnection;
use uuid::Uuid;

const NAME: Field = Field { name: "chooser", label: "Your name", most: 100, needed: true };

/// One variant as the customer is offered it.
#[derive(Clone, Debug)]
pub struct Offer {
    /// Which variant of the ticket.
    pub nth: i32,
    /// Which version of it.
    pub version: i32,
    /// What it is called.
    pub name: String,
    /// What its paper says otherwise than the one shown, heading by heading; the price apart.
    pub reworded: Vec<Reworded>,
    /// What would have to be accepted besides.
    pub accept_more: Vec<String>,
    /// What would not have to be accepted any more.
    pub accept_less: Vec<String>,
    /// The price line.
    pub price: String,
}

/// What a customer is offered, and what they chose.
#[derive(Clone, Debug, Default)]
pub struct Offers {
    /// What is offered.
    pub offers: Vec<Offer>,
    /// The name of what was chosen through this link.
    pub chosen: Option<String>,
}

/// The variants that fit the job as it stands, as papers.
pub(super) async fn offers(
    conn: &mut PgConnection,
    shop: &Shop,
    ticket: &Ticket,
    revision: &Revision,
    variants: Vec<Variant>,
    link: Uuid,
) -> Result<Offers, Failure> {
    let now = written(conn, shop, ticket, Purpose::Build, revision).await?;
    let mut offers = Offers::default();
    let latest = variant::latest(conn, shop.shop_id, ticket.id).await?;
    let chosen = variant::chosen(conn, shop.shop_id, ticket.id).await?;
    let chosen = chosen.into_iter().find(|chosen| chosen.link_id == link);
    offers.chosen =
        chosen.and_then(|chosen| latest.into_iter().find(|kept| kept.nth == chosen.nth)).map(|kept| kept.name);
    for variant in variants {
        let Ok(would) = variant.would else { continue };
        if would.changes.is_empty() {
            continue;
        }
        let then = Revision { contents: would.contents, judgement: would.judgement, ..revision.clone() };
        let then = written(conn, shop, ticket, Purpose::Build, &then).await?;
        offers.offers.push(offer((variant.nth, variant.version, variant.name), &now, &then));
    }
    Ok(offers)
}

fn offer((nth, version, name): (i32, i32, String), now: &Paper, then: &Paper) -> Offer {
    let texts = |of: &Paper, other: &Paper| {
        let new = of.ticks.iter().filter(|tick| other.ticks.iter().all(|one| one.text != tick.text));
        new.map(|tick| tick.text.clone()).collect::<Vec<_>>()
    };
    Offer {
        reworded: reworded(now, then).into_iter().filter(|change| change.heading != "Price").collect(),
        accept_more: texts(then, now),
        accept_less: texts(now, then),
        price: then.price.clone(),
        nth,
        version,
        name,
    }
}

/// What a customer sends.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct CustomerChoice {
    /// Which variant.
    pub nth: i32,
    /// The version that was shown.
    pub version: i32,
    /// The name as typed.
    pub name: String,
    /// What the browser calls itself.
    #[serde(skip)]
    pub agent: String,
}

impl Service {
    /// Takes the customer's choice through a link.
    ///
    /// # Errors
    /// [`Failure::LinkClosed`] when the link takes nothing any more; [`Failure::Problems`] for a missing name, a
    /// variant that changed meanwhile, or another choice made before.
    pub async fn choose_by_link(&self, pass: &str, key: Key, choice: CustomerChoice) -> Result<(), Failure> {
        let pass = Pass::read(pass).ok_or(Failure::NotFound("such page"))?;
        let who = Who::AtTheDoor {
            shop: pass.shop(),
            name: format!("{} (customer)", clean(choice.name.trim(), NAME.most)),
            device: clean(&choice.agent, 200),
        };
        self.write(who, key, ChooseByLink { token_hash: pass.hash(), choice }).await
    }
}

#[derive(Serialize)]
struct ChooseByLink {
    token_hash: [u8; 32],
    choice: CustomerChoice,
}

impl Command for ChooseByLink {
    type Answer = ();
    const NAME: &'static str = "choose_by_link";
    const BY: By = By::TokenHolder;

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let first = link::find(scene.conn, scene.shop, &self.token_hash).await?;
        let first = first.ok_or(Failure::NotFound("such page"))?;
        let ticket = any_ticket(scene, first.ticket).await?;
        // Looked at again under the ticket's lock: this is what stands.
        let link = link::find(scene.conn, scene.shop, &self.token_hash).await?;
        let link = link.ok_or(Failure::NotFound("such page"))?;
        if state(&link, scene.now) != LinkState::Open || link.purpose != Purpose::Build {
            return Err(Failure::LinkClosed);
        }
        let latest = variant::latest(scene.conn, scene.shop, ticket.id).await?;
        let before = variant::chosen(scene.conn, scene.shop, ticket.id).await?;
        if let Some(before) = before.iter().find(|chosen| chosen.link_id == link.id) {
            if (before.nth, before.version) == (self.choice.nth, self.choice.version) {
                return Ok(());
            }
            return Err(Failure::problem(
                "variant",
                "You have chosen already. Please call us if you want another one.",
            ));
        }
        let mut problems = Vec::new();
        let name = one_line(NAME, &self.choice.name, &mut problems);
        form::none(problems)?;
        let kept = latest.iter().find(|kept| (kept.nth, kept.version) == (self.choice.nth, self.choice.version));
        let Some(kept) = kept.filter(|kept| !kept.withdrawn) else {
            let message = "This choice changed while you were reading. Please read it again and choose.";
            return Err(Failure::problem("variant", message));
        };
        let (nth, version) = (kept.nth, kept.version);
        let chosen = Chosen { link_id: link.id, nth, version, name: name.clone(), at: scene.now };
        variant::insert_chosen(scene.conn, scene.shop, ticket.id, &chosen).await?;
        if ticket.waits_for == WaitsFor::Customer {
            ticket::set_waits(scene.conn, scene.shop, ticket.id, WaitsFor::Us).await?;
        }
        scene.happened(ticket.id, Happening::VariantChosen { name: kept.name.clone(), by: name }).await
    }
}
