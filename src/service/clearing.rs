//! The plans that would clear a job's findings, and applying one.

use super::change::{current_revision, open_ticket};
use super::weigh::by_now;
use super::write::Scene;
use super::{Book, By, Caller, ChangeTicket, Command, Failure, Revised, Service, TicketPage, lever_price};
use crate::job::{FactId, Job};
use crate::plan::clearing::{Clearing, Terms, clearing, edits_of};
use crate::plan::levers::{Prices, lever_named};
use crate::ticket::{Action, Edit, FactChange, Price, PriceLine, Source};
use serde::Serialize;
use serde_json::Value;
use tokio::sync::Semaphore;

/// How many plans are worked out at once: each takes a core for up to a moment.
static SEATS: Semaphore = Semaphore::const_new(2);

impl Service {
    /// What would clear this ticket's findings by the shop's book of today, and the prices it goes by.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn clearing(&self, caller: &Caller, page: &TicketPage) -> Result<(Clearing, Prices), Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        let prices = self.read(|conn| Box::pin(lever_price::load(conn, shop))).await?;
        let by = prices.clone();
        let (job, book) = (page.revision.contents.facts.job().clone(), page.book.clone());
        let aside: Vec<String> =
            page.revision.judgement.silenced.iter().map(|silenced| silenced.found.code.clone()).collect();
        let seat = SEATS.acquire().await.map_err(|closed| Failure::Broken(Box::new(closed)))?;
        let worked = tokio::task::spawn_blocking(move || {
            let _seat = seat;
            work_out(&job, &book, &by, &aside)
        });
        let worked = worked.await.map_err(|lost| Failure::Broken(Box::new(lost)))?;
        Ok((worked, prices))
    }
}

fn work_out(job: &Job, book: &Book, prices: &Prices, aside: &[String]) -> Clearing {
    let aside: Vec<&str> = aside.iter().map(String::as_str).collect();
    let terms = Terms { limits: &book.limits, house: &book.house, prices, aside: &aside, effort: Terms::EFFORT };
    clearing(job, &terms)
}

/// A plan applied to the version it was made from: an edit like any other, made by the levers instead of a form.
#[derive(Clone, Debug, Serialize)]
pub struct ApplyPlan {
    /// The ticket.
    pub ticket: i64,
    /// The revision the plan was made from.
    pub made_from: i32,
    /// The codes of its levers.
    pub levers: Vec<String>,
    /// The price the page showed, in words, when a line for each lever that costs something is to be added to it.
    pub with_price: Option<String>,
}

/// The price a job would have with lines for these levers.
pub fn price_with(price: Option<&Price>, levers: &[&str], prices: &Prices) -> Price {
    let mut price = price.cloned().unwrap_or_default();
    let levers = levers.iter().filter_map(|code| lever_named(code));
    let lines = levers.map(|lever| PriceLine { what: lever.name.to_owned(), cents: prices.cost(lever) });
    price.lines.extend(lines.filter(|line| line.cents.0 > 0));
    price
}

impl Command for ApplyPlan {
    type Answer = Revised;
    const NAME: &'static str = "apply_plan";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Revised, Failure> {
        if self.with_price.is_some() {
            scene.must(Action::ChangePrice)?;
        }
        let ticket = open_ticket(scene, self.ticket).await?;
        if ticket.revision != self.made_from {
            let message = "The job was changed since these plans were made, so nothing was applied. They are worked out \
                           anew below.";
            return Err(Failure::problem("plan", message));
        }
        let stored = current_revision(scene, &ticket).await?;
        let base = by_now(scene, &ticket, stored).await?;
        let codes: Vec<&str> = self.levers.iter().map(String::as_str).collect();
        let Some(facts) = edits_of(base.contents.facts.job(), &codes) else {
            let message = "That plan does not fit this job, so nothing was applied. Below are the plans that do.";
            return Err(Failure::problem("plan", message));
        };
        if facts.is_empty() {
            let message = "There is nothing to write down ahead for that plan. Do what it says on the unit, then write \
                           down what came of it.";
            return Err(Failure::problem("plan", message));
        }
        let price = match &self.with_price {
            None => None,
            Some(shown) => {
                let prices = lever_price::load(scene.conn, scene.shop).await?;
                let price = price_with(base.contents.price(), &codes, &prices);
                let total = price.total_in_words();
                if total != *shown {
                    let message = format!(
                        "The price with this plan was {shown} on the page and would be {total} by now: what changes \
                         cost in this shop was moved meanwhile. Nothing was applied. The plans below go by the new prices."
                    );
                    return Err(Failure::problem("plan", message));
                }
                Some(price)
            }
        };
        let edit = Edit { facts: facts.into_iter().map(planned).collect(), price, ..Edit::default() };
        ChangeTicket { ticket: self.ticket, made_from: self.made_from, edit }.carry_out(scene).await
    }
}

fn planned((fact, value): (FactId, Option<Value>)) -> FactChange {
    FactChange { path: fact.declaration().path.to_owned(), value, source: Source::Planned }
}
