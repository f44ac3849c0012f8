//! Sums: worked out by the shop's limits, and put on a ticket with their working.

use super::change::{any_ticket, current_revision, open_ticket};
use super::form;
use super::write::Scene;
use super::{Book, By, Caller, ChangeTicket, Command, Failure, Service};
use crate::job::fact_named;
use crate::rules::Limits;
use crate::sums::{self, Filled, Outcome, Sum, Table};
use crate::ticket::{Action, Edit, FactChange, Happening, Problem, Source, TicketFacts, in_words};
use serde::{Deserialize, Serialize};

impl Service {
    /// The limits that sums are held against: those of the shop whose person asks, or of this server's shop.
    ///
    /// Anybody may ask: the sums are open to whoever holds the counter's tablet.
    ///
    /// # Errors
    /// [`Failure::Busy`] when the database cannot be reached.
    pub async fn limits_for_sums(&self, caller: Option<&Caller>) -> Result<Limits, Failure> {
        let shop = match caller {
            Some(caller) => Some(caller.shop),
            None => self.first_shop().await?.map(|shop| shop.shop_id),
        };
        let Some(shop) = shop else { return Ok(Limits::default()) };
        self.read(|conn| Box::pin(async move { Ok(Book::load(conn, shop).await?.limits) })).await
    }
}

/// A sum put on a ticket: worked out anew here, so that nobody can send a number it does not give.
#[derive(Clone, Debug, Serialize)]
pub struct PutSum {
    /// The ticket.
    pub ticket: i64,
    /// The sum's name.
    pub sum: String,
    /// What was typed, by the input's name.
    pub typed: Vec<(String, String)>,
    /// The facts that its results are to fill.
    pub fills: Vec<Fill>,
}

/// A fact that a result is to fill.
#[derive(Clone, Debug, Serialize)]
pub struct Fill {
    /// `group.leaf`.
    pub fact: String,
    /// The value that the person saw there and wants written over, as a job file writes it; none when they saw none.
    pub over: Option<String>,
}

/// What came of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SumPut {
    /// The version the facts made; none when no fact changed.
    pub revision: Option<i32>,
}

impl Command for PutSum {
    type Answer = SumPut;
    const NAME: &'static str = "put_sum";
    const BY: By = By::Staff(Action::WriteNote);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<SumPut, Failure> {
        let sum = sums::named(&self.sum).ok_or(Failure::NotFound("such sum"))?;
        let limits = Book::load(scene.conn, scene.shop).await?.limits;
        let outcome = self.worked(sum, &limits)?;
        let revision = if self.fills.is_empty() { None } else { self.fill(scene, &outcome).await? };
        let ticket = any_ticket(scene, self.ticket).await?;
        let happened = Happening::SumPut {
            title: sum.title.to_owned(),
            link: sums::address(sum, |name| self.text(name)),
            given: sum
                .inputs
                .iter()
                .filter_map(|input| said(input.label, input.said(&self.text(input.name))))
                .collect(),
            worked: outcome
                .lines
                .iter()
                .map(|line| format!("{}: {} ({})", line.label, line.worked, line.source))
                .chain(outcome.table.iter().flat_map(Table::in_lines))
                .collect(),
            verdicts: outcome
                .verdicts
                .iter()
                .map(|verdict| format!("{} Limit: {}.", verdict.said, verdict.limit))
                .collect(),
        };
        scene.happened(ticket.id, happened).await?;
        Ok(SumPut { revision })
    }
}

impl PutSum {
    fn text(&self, name: &str) -> String {
        let typed = self.typed.iter().rev().find(|(input, _)| input == name);
        typed.map_or_else(String::new, |(_, text)| text.trim().to_owned())
    }

    fn worked(&self, sum: &'static Sum, limits: &Limits) -> Result<Outcome, Failure> {
        let answer = sum.answer(|name| self.text(name), limits);
        let needs = answer.needs.iter().filter_map(|name| {
            let input = sum.input(name)?;
            Some(Problem::new(input.name, format!("{} is still needed.", input.label)))
        });
        let wrong = answer.wrong.iter().map(|wrong| Problem::new(wrong.input, wrong.message.clone()));
        form::none(wrong.chain(needs).collect())?;
        answer.outcome.ok_or(Failure::NotFound("result of that sum"))
    }

    /// Writes the facts, and says which version they made.
    async fn fill(&self, scene: &mut Scene<'_>, outcome: &Outcome) -> Result<Option<i32>, Failure> {
        scene.must(Action::ChangeFacts)?;
        let ticket = open_ticket(scene, self.ticket).await?;
        let current = current_revision(scene, &ticket).await?;
        let (mut facts, mut problems) = (Vec::new(), Vec::new());
        for fill in &self.fills {
            let result =
                outcome.lines.iter().filter_map(|line| line.fills.as_ref()).find(|filled| filled.fact == fill.fact);
            let Some(filled) = result else {
                problems.push(Problem::new("keep", "That sum gives no such fact any more. Look at it again."));
                continue;
            };
            match stands_in_the_way(&current.contents.facts, filled, fill.over.as_deref()) {
                Some(message) => problems.push(Problem::new("keep", format!("Job {}: {message}", self.ticket))),
                None => facts.push(change(filled)),
            }
        }
        form::none(problems)?;
        let edit = Edit { facts, ..Edit::default() };
        let revised = ChangeTicket { ticket: self.ticket, made_from: ticket.revision, edit }.carry_out(scene).await?;
        Ok((revised.revision != ticket.revision).then_some(revised.revision))
    }
}

/// The value with its label; none for a blank.
fn said(label: &str, text: &str) -> Option<String> {
    (!text.is_empty()).then(|| format!("{label}: {text}"))
}

fn change(filled: &Filled) -> FactChange {
    let source = if filled.planned { Source::Planned } else { Source::Computed };
    FactChange { path: filled.fact.to_owned(), value: Some(filled.value.clone()), source }
}

/// Another value that is known already and that the person has not said to write over.
fn stands_in_the_way(facts: &TicketFacts, filled: &Filled, over: Option<&str>) -> Option<String> {
    let fact = fact_named(filled.fact)?;
    let entry = facts.entry(fact)?;
    let known = entry.value.to_string();
    if entry.value == filled.value || over == Some(known.as_str()) {
        return None;
    }
    let declaration = fact.declaration();
    Some(format!(
        "{} is known already: {} ({}, {}). To write {} over it, tick that and send again.",
        declaration.label,
        in_words(declaration, &entry.value),
        entry.origin.source.label().to_lowercase(),
        entry.origin.by,
        in_words(declaration, &filled.value)
    ))
}
