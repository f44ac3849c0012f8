//! Everything about one ticket, and two of its revisions side by side.

use super::link::listed;
use super::move_stage::{OpenStops, standing};
use super::receipt::read_back;
use super::use_class_table::taken;
use super::variant::{Variant, variants};
use super::weigh::Scales;
use super::{
    Book, Caller, Customer, CustomerLink, Event, Failure, Heading, Passed, Receipt, Revision, Service, TableTaken,
    Ticket, Vehicle,
};
use crate::store::{customer, event, link, revision, signature, step, ticket};
use crate::ticket::{Action, Change, Logged, Standing, changes, may};

/// How much of a history a page shows.
const HISTORY: i64 = 500;

/// A ticket with all that belongs to it.
#[derive(Clone, Debug)]
pub struct TicketPage {
    /// What stands now.
    pub ticket: Ticket,
    /// Whose unit it is.
    pub customer: Customer,
    /// What it came in.
    pub vehicle: Vehicle,
    /// The current revision as it stands by now: what the job's own papers say is laid over it.
    pub revision: Revision,
    /// What was done, in the order it was done.
    pub log: Vec<Logged>,
    /// What the shop judges by now; the revision was judged by the book of its day.
    pub book: Book,
    /// The table its class facts were taken from, if they were.
    pub class_table: Option<TableTaken>,
    /// How it stands before its gates.
    pub standing: Standing,
    /// The gates an owner passed, newest first.
    pub passed: Vec<Passed>,
    /// What the customer answered, newest first.
    pub receipts: Vec<Receipt>,
    /// The customer's links, newest first; none for those who do not handle them.
    pub links: Vec<CustomerLink>,
    /// The ticket's revisions, newest first.
    pub revisions: Vec<Heading>,
    /// What happened, newest first.
    pub history: Vec<Event>,
    /// The number of the job it comes back from.
    pub comeback_of: Option<i64>,
    /// What it could be instead, kept for the customer to choose from.
    pub variants: Vec<Variant>,
    /// The numbers of the same vehicle's other jobs, newest first.
    pub same_vehicle: Vec<i64>,
}

/// Two revisions and what differs.
#[derive(Clone, Debug)]
pub struct Compared {
    /// The one.
    pub from: Revision,
    /// The other.
    pub to: Revision,
    /// What differs, in words.
    pub changes: Vec<Change>,
}

impl Service {
    /// A ticket with all that belongs to it.
    ///
    /// # Errors
    /// [`Failure::NotFound`] when this shop has no such ticket.
    pub async fn ticket(&self, caller: &Caller, number: i64) -> Result<TicketPage, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let (shop, now, handles_links) = (caller.shop, self.now(), may(caller.role, Action::ManageLinks));
        let judge = self.judge;
        self.read(|conn| {
            Box::pin(async move {
                let ticket = ticket::find(conn, shop, number).await?.ok_or(Failure::NotFound("such ticket"))?;
                let (customer, vehicle) = customer::of_ticket(conn, shop, ticket.id).await?;
                let revision = revision::find(conn, shop, ticket.id, ticket.revision).await?;
                let scales = Scales::of(conn, shop, judge, &ticket).await?;
                let revision = scales.by_now(revision.ok_or(Failure::NotFound("such version of this job"))?);
                let passed = signature::passed(conn, shop, ticket.id).await?;
                let kept = signature::of_ticket(conn, shop, ticket.id).await?;
                let links = if handles_links { link::of_ticket(conn, shop, ticket.id).await? } else { Vec::new() };
                let comeback_of = match ticket.comeback_of {
                    Some(earlier) => ticket::number(conn, shop, earlier).await?,
                    None => None,
                };
                let others = ticket::of_vehicle(conn, shop, ticket.vehicle_id).await?;
                let variants = variants(conn, (shop, ticket.id), &revision, &scales).await?;
                Ok(TicketPage {
                    log: step::log(conn, shop, ticket.id).await?,
                    standing: standing(&ticket, &OpenStops::of(&ticket, &revision, &scales), &passed),
                    book: scales.book,
                    class_table: taken(conn, shop, ticket.id).await?,
                    variants,
                    receipts: kept.into_iter().map(read_back).collect::<Result<_, _>>()?,
                    links: links.into_iter().map(|link| listed(link, now)).collect(),
                    revisions: revision::headings(conn, shop, ticket.id).await?,
                    history: event::history(conn, shop, ticket.id, HISTORY).await?,
                    same_vehicle: others.into_iter().filter(|other| *other != number).collect(),
                    comeback_of,
                    passed,
                    revision,
                    customer,
                    vehicle,
                    ticket,
                })
            })
        })
        .await
    }

    /// One revision of a ticket.
    ///
    /// # Errors
    /// [`Failure::NotFound`] when there is no such ticket or revision.
    pub async fn revision(&self, caller: &Caller, number: i64, revision: i32) -> Result<Revision, Failure> {
        Ok(self.compare(caller, number, revision, revision).await?.to)
    }

    /// Two revisions of a ticket side by side.
    ///
    /// # Errors
    /// [`Failure::NotFound`] when there is no such ticket or revision.
    pub async fn compare(&self, caller: &Caller, number: i64, from: i32, to: i32) -> Result<Compared, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        self.read(|conn| {
            Box::pin(async move {
                let ticket = ticket::find(conn, shop, number).await?.ok_or(Failure::NotFound("such ticket"))?;
                let missing = || Failure::NotFound("such version of this job");
                let from = revision::find(conn, shop, ticket.id, from).await?.ok_or_else(missing)?;
                let to = revision::find(conn, shop, ticket.id, to).await?.ok_or_else(missing)?;
                let changes = changes(&from.contents, &to.contents);
                Ok(Compared { from, to, changes })
            })
        })
        .await
    }
}
