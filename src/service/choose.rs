//! What a customer is offered beside the build as it stands, and what they choose: once a link.

use super::change::any_ticket;
use super::form::{self, Field, clean, one_line};
use super::link::{LinkState, shows, state};
use super::link_page::{of, written};
use super::variant::{Variant, variants};
use super::weigh::Scales;
use super::write::Scene;
use super::{By, Command, Failure, Key, Pass, Revision, Service, Shop, Ticket, Who};
use crate::quantity::Cents;
use crate::store::link::Link;
use crate::store::variant::{self, Chosen};
use crate::store::{link, shop, ticket};
use crate::ticket::{Digest, Happening, Paper, Price, Purpose, Reworded, WaitsFor, reworded};
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
    /// How that differs from the price of the build as it stands, in words.
    pub price_change: String,
    /// The digest of all that the page tells of it, sent back with the choice.
    pub told: String,
    /// Was it chosen through this link?
    pub chosen: bool,
}

/// What a customer is offered, and what they chose.
#[derive(Clone, Debug, Default)]
pub struct Offers {
    /// What is offered.
    pub offers: Vec<Offer>,
    /// What was chosen through this link.
    pub chosen: Option<ChosenOffer>,
}

/// What was chosen.
#[derive(Clone, Debug)]
pub struct ChosenOffer {
    /// What it was called.
    pub name: String,
    /// Did it, or what the page tells of it, change after it was chosen?
    pub changed_since: bool,
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
    let chosen = variant::chosen(conn, shop.shop_id, ticket.id).await?;
    let chosen = chosen.into_iter().find(|chosen| chosen.link_id == link);
    let mut offers = Vec::new();
    for variant in variants {
        let own_price = variant.edit.price.is_some();
        let Ok(would) = variant.would else { continue };
        if would.changes.is_empty() {
            continue;
        }
        let then = Revision { contents: would.contents, judgement: would.judgement, ..revision.clone() };
        let then = written(conn, shop, ticket, Purpose::Build, &then).await?;
        let mut offer = offer((variant.nth, variant.version, variant.name), own_price, &now, &then);
        offer.chosen = chosen.as_ref().is_some_and(|one| (one.nth, one.version) == (offer.nth, offer.version));
        offers.push(offer);
    }
    // What was told of a choice from before that was kept nobody knows; that its version stands is known.
    let told = |one: &Chosen, offer: &Offer| one.told.is_empty() || one.told == offer.told;
    let same = |one: &Chosen| offers.iter().any(|offer| offer.chosen && told(one, offer));
    let chosen = chosen.map(|one| ChosenOffer { changed_since: !same(&one), name: one.variant });
    Ok(Offers { offers, chosen })
}

fn offer((nth, version, name): (i32, i32, String), own_price: bool, now: &Paper, then: &Paper) -> Offer {
    let texts = |of: &Paper, other: &Paper| {
        let new = of.ticks.iter().filter(|tick| other.ticks.iter().all(|one| one.text != tick.text));
        new.map(|tick| tick.text.clone()).collect::<Vec<_>>()
    };
    Offer {
        reworded: reworded(now, then).into_iter().filter(|change| change.heading != "Price").collect(),
        accept_more: texts(then, now),
        accept_less: texts(now, then),
        price: then.price.clone(),
        price_change: price_change(&now.priced, &then.priced, own_price),
        // Both sides count: what is chosen is the difference between them.
        told: Digest::of_value(&(nth, version, &name, now, then)).to_string(),
        chosen: false,
        nth,
        version,
        name,
    }
}

/// `own_price`: did somebody name a price for this variant? Otherwise it shows the price of the build as it stands, which
/// nobody has said of the variant.
fn price_change(now: &Price, then: &Price, own_price: bool) -> String {
    match (now.total(), then.total()) {
        (None, None) => String::new(),
        (Some(_), Some(_)) if !own_price => {
            "This is the price of the build as it stands. Nobody has named one for this \
                                             choice yet: we do so before you sign."
                .to_owned()
        }
        (Some(_), None) => "There is no price for this yet.".to_owned(),
        (None, Some(_)) => "There is no price yet for the build as it stands.".to_owned(),
        (Some(now), Some(then)) => match then.0.saturating_sub(now.0) {
            0 => "The price stays the same.".to_owned(),
            more @ 1.. => format!("That is {} more than the build as it stands.", Cents(more)),
            less => format!("That is {} less than the build as it stands.", Cents(less.saturating_neg())),
        },
    }
}

/// What a customer sends.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct CustomerChoice {
    /// Which variant.
    pub nth: i32,
    /// The version that was shown.
    pub version: i32,
    /// The digest of what the page told of it.
    pub told: String,
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
        let offer = offered(scene, &ticket, &link).await?;
        let shown = (self.choice.nth, self.choice.version, self.choice.told.as_str());
        let Some(offer) = offer.into_iter().find(|offer| (offer.nth, offer.version, offer.told.as_str()) == shown)
        else {
            let message = "This choice changed while you were reading, so nothing was sent. Please read it again and \
                           choose.";
            return Err(Failure::problem("variant", message));
        };
        let chosen = Chosen {
            link_id: link.id,
            nth: offer.nth,
            version: offer.version,
            variant: offer.name.clone(),
            told: offer.told,
            name: name.clone(),
            at: scene.now,
        };
        variant::insert_chosen(scene.conn, scene.shop, ticket.id, &chosen).await?;
        if ticket.waits_for == WaitsFor::Customer {
            ticket::set_waits(scene.conn, scene.shop, ticket.id, WaitsFor::Us).await?;
        }
        scene.happened(ticket.id, Happening::VariantChosen { name: offer.name, by: name }).await
    }
}

/// What the link's page offers now.
async fn offered(scene: &mut Scene<'_>, ticket: &Ticket, link: &Link) -> Result<Vec<Offer>, Failure> {
    let shop = shop::find(scene.conn, scene.shop).await?.ok_or(Failure::NotFound("such page"))?;
    let revision = of(scene.conn, scene.shop, ticket.id, shows(link, ticket.revision)).await?;
    let scales = Scales::of(scene.conn, scene.shop, scene.judge, ticket).await?;
    let kept = variants(scene.conn, (scene.shop, ticket.id), &revision, &scales).await?;
    Ok(offers(scene.conn, &shop, ticket, &revision, kept, link.id).await?.offers)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_price_that_nobody_named_for_a_choice_is_not_told_as_its_own() {
        let of = |cents: Option<i64>| cents.map_or_else(Price::default, |cents| Price::single("work", Cents(cents)));
        let told = |now, then, own| price_change(&of(now), &of(then), own);
        assert_eq!(told(Some(100), Some(100), true), "The price stays the same.");
        assert!(told(Some(100), Some(100), false).contains("Nobody has named one for this choice yet"));
        assert!(told(Some(100), Some(350), true).starts_with("That is 2.50 more"));
        assert!(told(Some(350), Some(100), true).starts_with("That is 2.50 less"));
        assert!(told(Some(100), None, true).contains("no price for this yet"));
        assert!(told(None, Some(100), true).contains("no price yet for the build as it stands"));
        assert_eq!(told(None, None, false), "");
    }
}
