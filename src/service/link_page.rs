//! What a customer sees: the paper, and what changed since they last signed. Looking changes nothing.

use super::choose::{Offers, offers};
use super::link::{LinkState, shows, state};
use super::variant::variants;
use super::weigh::Scales;
use super::{Caller, Failure, Pass, Receipt, Revision, Service, Shop, Ticket, receipt};
use crate::store::{customer, link, revision, shop, signature, ticket};
use crate::ticket::{
    Action, Answer, Change, Digest, Paper, Purpose, Reworded, Setting, SignatureRecord, TickStanding, changes, paper,
    reworded, tick_standing,
};
use jiff::Timestamp;
use sqlx::PgConnection;
use uuid::Uuid;

/// What a customer's link shows.
#[derive(Clone, Debug)]
pub struct LinkPage {
    /// The shop, with the number to call.
    pub shop: Shop,
    /// What the link still does.
    pub state: LinkState,
    /// What it is for.
    pub purpose: Purpose,
    /// The ticket's number.
    pub ticket: i64,
    /// What to read and sign; only while the link is open.
    pub shown: Option<Shown>,
    /// What the customer can choose instead of the build as it stands; only while the link is open.
    pub offers: Offers,
    /// The receipt; only when the link was answered.
    pub receipt: Option<Receipt>,
}

/// A paper as shown.
#[derive(Clone, Debug)]
pub struct Shown {
    /// The exact text.
    pub paper: Paper,
    /// Its digest, to be sent back with the answer: what was answered is what was shown.
    pub digest: String,
    /// The revision it shows.
    pub revision: i32,
    /// What has changed since the customer last signed a build summary, if they did.
    pub since: Option<SinceSigned>,
}

/// What happened to an earlier signature.
#[derive(Clone, Debug)]
pub struct SinceSigned {
    /// The revision that was signed.
    pub revision: i32,
    /// When.
    pub at: Timestamp,
    /// What changed since.
    pub changes: Vec<Change>,
    /// What the paper says otherwise now, heading by heading.
    pub reworded: Vec<Reworded>,
    /// How each of the earlier ticks stands; those that are not the same are void.
    pub ticks: Vec<TickStanding>,
}

impl Service {
    /// What this link shows.
    ///
    /// # Errors
    /// [`Failure::NotFound`] when there is no such link; the words are the same whatever the reason.
    pub async fn open_link(&self, pass: &str) -> Result<LinkPage, Failure> {
        let pass = Pass::read(pass).ok_or(Failure::NotFound("such page"))?;
        let (shop_id, hash, now, judge) = (pass.shop(), pass.hash(), self.now(), self.judge);
        self.read(|conn| {
            Box::pin(async move {
                let link = link::find(conn, shop_id, &hash).await?.ok_or(Failure::NotFound("such page"))?;
                let shop = shop::find(conn, shop_id).await?.ok_or(Failure::NotFound("such page"))?;
                let state = state(&link, now);
                let ticket = ticket::find(conn, shop_id, link.ticket).await?.ok_or(Failure::NotFound("such page"))?;
                let mut offered = Offers::default();
                let shown = match state {
                    LinkState::Open => {
                        let number = shows(&link, ticket.revision);
                        if link.purpose == Purpose::Build {
                            let revision = of(conn, shop_id, ticket.id, number).await?;
                            let scales = Scales::of(conn, shop_id, judge, &ticket).await?;
                            let kept = variants(conn, (shop_id, ticket.id), &revision, &scales).await?;
                            offered = offers(conn, &shop, &ticket, &revision, kept, link.id).await?;
                        }
                        Some(show(conn, &shop, &ticket, link.purpose, number).await?)
                    }
                    _ => None,
                };
                let receipt = match &state {
                    LinkState::Used { reference, .. } => receipt::find(conn, shop_id, reference).await?,
                    _ => None,
                };
                let (purpose, ticket) = (link.purpose, link.ticket);
                Ok(LinkPage { shop, state, purpose, ticket, shown, offers: offered, receipt })
            })
        })
        .await
    }

    /// The paper of this purpose as it stands now, to be signed at the counter.
    ///
    /// # Errors
    /// [`Failure::NotAllowed`] for those who take no signatures; [`Failure::NotFound`] without such a ticket.
    pub async fn counter_paper(&self, caller: &Caller, number: i64, purpose: Purpose) -> Result<Shown, Failure> {
        self.paper_for(caller, Action::CounterSign, number, purpose).await
    }

    /// The paper of this purpose as it stands now, to be read and printed.
    ///
    /// # Errors
    /// [`Failure::NotFound`] without such a ticket.
    pub async fn paper(&self, caller: &Caller, number: i64, purpose: Purpose) -> Result<Paper, Failure> {
        Ok(self.paper_for(caller, Action::ReadTickets, number, purpose).await?.paper)
    }

    async fn paper_for(
        &self,
        caller: &Caller,
        action: Action,
        number: i64,
        purpose: Purpose,
    ) -> Result<Shown, Failure> {
        self.admit(caller, action).await?;
        let shop_id = caller.shop;
        self.read(|conn| {
            Box::pin(async move {
                let shop = shop::find(conn, shop_id).await?.ok_or(Failure::NotFound("shop"))?;
                let ticket = ticket::find(conn, shop_id, number).await?.ok_or(Failure::NotFound("such ticket"))?;
                show(conn, &shop, &ticket, purpose, ticket.revision).await
            })
        })
        .await
    }
}

/// The paper of a revision and what changed since the last signature.
pub(super) async fn show(
    conn: &mut PgConnection,
    shop: &Shop,
    ticket: &Ticket,
    purpose: Purpose,
    number: i32,
) -> Result<Shown, Failure> {
    let revision = of(conn, shop.shop_id, ticket.id, number).await?;
    let paper = written(conn, shop, ticket, purpose, &revision).await?;
    let signed = signature::of_ticket(conn, shop.shop_id, ticket.id).await?;
    let signed = signed.into_iter().find(|kept| kept.purpose == Purpose::Build && kept.answer == Answer::Signed);
    let since = match signed {
        Some(kept) if purpose == Purpose::Build => {
            let then = of(conn, shop.shop_id, ticket.id, kept.revision).await?;
            let record: SignatureRecord =
                serde_json::from_str(&kept.record).map_err(|error| Failure::Broken(Box::new(error)))?;
            let ticks = tick_standing(&record.paper.ticks, &paper.ticks);
            (then.covers != revision.covers).then(|| SinceSigned {
                revision: kept.revision,
                at: kept.at,
                changes: changes(&then.contents, &revision.contents),
                reworded: reworded(&record.paper, &paper),
                ticks,
            })
        }
        _ => None,
    };
    let digest = Digest::of_value(&paper).to_string();
    Ok(Shown { paper, digest, revision: number, since })
}

/// The exact text of a paper.
pub(super) async fn written(
    conn: &mut PgConnection,
    shop: &Shop,
    ticket: &Ticket,
    purpose: Purpose,
    revision: &Revision,
) -> Result<Paper, Failure> {
    let (customer, vehicle) = customer::of_ticket(conn, shop.shop_id, ticket.id).await?;
    let setting = Setting {
        shop: &shop.name,
        customer: &customer.name,
        vehicle: &vehicle.words,
        ticket: ticket.number,
        revision: revision.number,
        contents: &revision.contents,
        judgement: &revision.judgement,
        terms: match purpose {
            Purpose::Intake => &shop.teardown_terms,
            Purpose::Build => &shop.not_covered,
        },
    };
    Ok(paper(purpose, &setting))
}

pub(super) async fn of(conn: &mut PgConnection, shop: Uuid, ticket: Uuid, number: i32) -> Result<Revision, Failure> {
    revision::find(conn, shop, ticket, number).await?.ok_or(Failure::NotFound("such version of this job"))
}
