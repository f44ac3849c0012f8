//! The customer's answer through a link: signed or declined, once.

use super::change::any_ticket;
use super::form::{self, Field, clean, one_line, several_lines};
use super::link::{LinkState, shows, state};
use super::link_page::{of, written};
use super::weigh::count_again;
use super::write::Scene;
use super::{By, Command, Failure, Key, Pass, Service, Ticket, Who};
use crate::store::signature::Kept;
use crate::store::{link, shop, signature, ticket};
use crate::ticket::{
    Answer, Channel, Digest, Happening, Price, Problem, Purpose, Signature, SignatureRecord, WaitsFor, check_ticks,
};
use jiff::tz::TimeZone;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

const NAME: Field = Field { name: "name", label: "Your name", most: 100, needed: true };
const WHY: Field = Field { name: "why", label: "The reason", most: 1000, needed: true };

/// What a customer sends.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct CustomerAnswer {
    /// Signed or declined.
    pub answer: Answer,
    /// The digest of the paper that was shown.
    pub shown: String,
    /// The codes that were ticked.
    pub accepted: Vec<String>,
    /// The name as typed.
    pub name: String,
    /// Why not, when declined.
    pub why: String,
    /// The network address it came from. Phones change theirs between two sendings of one form.
    #[serde(skip)]
    pub address: String,
    /// What the browser calls itself.
    #[serde(skip)]
    pub agent: String,
}

/// What the customer is told.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Answered {
    /// The receipt's reference.
    pub reference: String,
    /// What was answered.
    pub answer: Answer,
}

impl Service {
    /// Takes the customer's answer through a link.
    ///
    /// # Errors
    /// [`Failure::LinkClosed`] when the link takes none any more; [`Failure::Problems`] for a missing tick or name.
    pub async fn answer_link(&self, pass: &str, key: Key, answer: CustomerAnswer) -> Result<Answered, Failure> {
        let pass = Pass::read(pass).ok_or(Failure::NotFound("such page"))?;
        let who = Who::AtTheDoor {
            shop: pass.shop(),
            name: format!("{} (customer)", clean(answer.name.trim(), NAME.most)),
            device: clean(&answer.agent, 200),
        };
        self.write(who, key, AnswerByLink { token_hash: pass.hash(), answer }).await
    }
}

#[derive(Serialize)]
struct AnswerByLink {
    token_hash: [u8; 32],
    answer: CustomerAnswer,
}

impl Command for AnswerByLink {
    type Answer = Answered;
    const NAME: &'static str = "answer_link";
    const BY: By = By::TokenHolder;

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Answered, Failure> {
        let first = link::find(scene.conn, scene.shop, &self.token_hash).await?;
        let first = first.ok_or(Failure::NotFound("such page"))?;
        let ticket = any_ticket(scene, first.ticket).await?;
        // Looked at again under the ticket's lock: this is what stands.
        let link = link::find(scene.conn, scene.shop, &self.token_hash).await?;
        let link = link.ok_or(Failure::NotFound("such page"))?;
        if state(&link, scene.now) != LinkState::Open {
            return Err(Failure::LinkClosed);
        }
        let revision = shows(&link, ticket.revision);
        let place = Place { purpose: link.purpose, revision, link: Some(link.id), witness: None };
        take(scene, &ticket, &place, &self.answer).await
    }
}

/// Where and on what an answer is given.
pub(super) struct Place {
    pub(super) purpose: Purpose,
    pub(super) revision: i32,
    pub(super) link: Option<Uuid>,
    pub(super) witness: Option<String>,
}

/// Checks an answer against the paper, seals and keeps it, and notes it on the ticket.
pub(super) async fn take(
    scene: &mut Scene<'_>,
    ticket: &Ticket,
    place: &Place,
    answer: &CustomerAnswer,
) -> Result<Answered, Failure> {
    let shop = shop::find(scene.conn, scene.shop).await?.ok_or(Failure::NotFound("shop"))?;
    let revision = of(scene.conn, scene.shop, ticket.id, place.revision).await?;
    let paper = written(scene.conn, &shop, ticket, place.purpose, &revision).await?;
    let mut problems = Vec::new();
    let name = one_line(NAME, &answer.name, &mut problems);
    let declined = answer.answer == Answer::Declined;
    let why = declined.then(|| several_lines(WHY, &answer.why, &mut problems));
    if answer.shown != Digest::of_value(&paper).to_string() {
        problems.push(Problem::new("shown", "The page changed while you were reading. Please read it again."));
    } else if !declined && let Err(missing) = check_ticks(&paper.ticks, &answer.accepted) {
        problems.extend(missing);
    }
    form::none(problems)?;

    let zone = TimeZone::get(&shop.zone).unwrap_or(TimeZone::UTC);
    let channel = if place.link.is_some() { Channel::Link } else { Channel::Counter };
    let ticked = |code: &String| !declined && answer.accepted.contains(code);
    let record = SignatureRecord {
        form: SignatureRecord::form(),
        shop: shop.shop_id,
        shop_name: shop.name,
        ticket: ticket.number,
        revision: revision.number,
        answer: answer.answer,
        channel,
        accepted: paper.ticks.iter().map(|tick| tick.code.clone()).filter(ticked).collect(),
        price_cents: revision.contents.price().and_then(Price::total),
        paper,
        findings: revision.judgement.findings,
        name: name.clone(),
        why: why.clone(),
        at: scene.now.to_zoned(zone).to_string(),
        address: clean(&answer.address, 100),
        agent: clean(&answer.agent, 300),
        witness: place.witness.clone(),
        link: place.link,
    };
    let sealed = Signature::seal(&record);
    let kept = Kept {
        id: Uuid::now_v7(),
        ticket_id: ticket.id,
        revision: revision.number,
        purpose: place.purpose,
        answer: answer.answer,
        channel,
        link_id: place.link,
        witness: place.witness.clone(),
        name: name.clone(),
        at: scene.now,
        record: sealed.text,
        digest: sealed.digest.0.to_vec(),
        reference: sealed.reference.to_string(),
    };
    signature::insert(scene.conn, scene.shop, &kept).await?;
    match place.purpose {
        Purpose::Intake => ticket::set_intake_answer(scene.conn, scene.shop, ticket.id, answer.answer).await?,
        Purpose::Build => {
            ticket::set_build_answer(scene.conn, scene.shop, ticket.id, answer.answer, &revision.covers).await?;
        }
    }
    count_again(scene, ticket.number).await?;
    if ticket.waits_for == WaitsFor::Customer {
        ticket::set_waits(scene.conn, scene.shop, ticket.id, WaitsFor::Us).await?;
    }
    let happened = Happening::Answered {
        purpose: place.purpose,
        revision: revision.number,
        answer: answer.answer,
        channel,
        name,
        reference: sealed.reference,
        why,
    };
    scene.happened(ticket.id, happened).await?;
    Ok(Answered { reference: kept.reference, answer: answer.answer })
}
