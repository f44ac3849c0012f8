//! Changing what a ticket says: facts, words, price. Every change is a new revision.

use super::weigh::{Scales, Weighed};
use super::write::Scene;
use super::{By, Command, Failure, Revision, Ticket, form};
use crate::plan::steps::not_typed;
use crate::store::ticket::Counts;
use crate::store::{self, ticket};
use crate::ticket::{
    Action, Change, Contents, Edit, FactChange, Hand, Happening, Judgement, Logged, Origin, Problem, Severity,
    Silenced, Source, Stage, changes, done_here, merge, order,
};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// An edit of a ticket, with the revision its form was made from.
#[derive(Clone, Debug, Serialize)]
pub struct ChangeTicket {
    /// The ticket.
    pub ticket: i64,
    /// The revision the form showed.
    pub made_from: i32,
    /// What was sent.
    pub edit: Edit,
}

/// What an edit came to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Revised {
    /// The current revision now; the same as before when nothing really changed.
    pub revision: i32,
    /// What changed, in words.
    pub changes: Vec<Change>,
}

impl Command for ChangeTicket {
    type Answer = Revised;
    const NAME: &'static str = "change_ticket";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Revised, Failure> {
        if self.edit.price.is_some() {
            scene.must(Action::ChangePrice)?;
        }
        if self.edit.wants.is_some() || self.edit.symptom.is_some() || self.edit.brought.is_some() {
            scene.must(Action::ChangeWords)?;
        }
        nothing_filled(&self.edit)?;
        let ticket = open_ticket(scene, self.ticket).await?;
        let current = current_revision(scene, &ticket).await?;
        let base = if self.made_from == ticket.revision {
            current.clone()
        } else {
            let base = store::revision::find(scene.conn, scene.shop, ticket.id, self.made_from).await?;
            base.ok_or(Failure::NotFound("such version of this job"))?
        };
        let mut merged = merge(&base.contents, &current.contents, &self.edit, &scene.hand())?;
        let log = store::step::log(scene.conn, scene.shop, ticket.id).await?;
        fill_order(&mut merged, &log, &scene.hand());
        let changes = changes(&current.contents, &merged);
        if changes.is_empty() {
            return Ok(Revised { revision: ticket.revision, changes });
        }
        let next = revision(scene, Some(&ticket), merged, &current.judgement.silenced).await?;
        keep(scene, &ticket, &next).await?;
        scene.happened(ticket.id, Happening::Revised { revision: next.number, changes: changes.clone() }).await?;
        Ok(Revised { revision: next.number, changes })
    }
}

/// Facts that are filled from the step log and from the job's own papers are not typed.
pub(super) fn nothing_filled(edit: &Edit) -> Result<(), Failure> {
    let problem = |change: &FactChange| Some(Problem::new(&change.path, not_typed(&change.path)?));
    form::none(edit.facts.iter().filter_map(problem).collect())
}

/// Writes down the places that steps have in the log, and what was changed for good.
pub(super) fn fill_order(contents: &mut Contents, log: &[Logged], hand: &Hand) {
    contents.done_here = done_here(log);
    let origin = Origin { source: Source::Log, by: hand.by.clone(), at: hand.at };
    for (fact, place) in order(log, contents.facts.job(), &contents.added, contents.facts.planned()) {
        let place = place.map(Value::from);
        if contents.facts.value(fact) != place {
            // Every such fact takes any count, and may be unknown.
            contents.facts.write(fact, place.as_ref(), origin.clone()).ok();
        }
    }
}

/// The next revision of a ticket, or the first of a new one, judged now by the shop's book.
pub(super) async fn revision(
    scene: &mut Scene<'_>,
    ticket: Option<&Ticket>,
    contents: Contents,
    silenced: &[Silenced],
) -> Result<Revision, Failure> {
    let (scales, number) = match ticket {
        Some(ticket) => (Scales::of(scene.conn, scene.shop, scene.judge, ticket).await?, ticket.revision + 1),
        None => (Scales::new(scene.conn, scene.shop, scene.judge).await?, 1),
    };
    let caller = scene.caller()?;
    let Weighed { judgement, covers, .. } = scales.weigh(&contents, number, silenced, scene.now);
    let (staff_id, made_by) = (caller.staff, caller.name.clone());
    Ok(Revision { number, made_at: scene.now, staff_id, made_by, contents, judgement, covers })
}

/// Keeps a revision as the ticket's current one.
pub(super) async fn keep(scene: &mut Scene<'_>, ticket: &Ticket, next: &Revision) -> Result<(), Failure> {
    let counts = counts(&next.judgement, ticket.stage);
    store::revision::insert(scene.conn, scene.shop, ticket.id, next).await?;
    Ok(ticket::set_revision(scene.conn, scene.shop, ticket.id, next.number, &next.covers, counts).await?)
}

/// What the board counts.
pub(super) fn counts(judgement: &Judgement, stage: Stage) -> Counts {
    let size = |count: usize| i32::try_from(count).unwrap_or(i32::MAX);
    Counts {
        stops: size(judgement.of(Severity::Stop).count()),
        cautions: size(judgement.of(Severity::Caution).count()),
        questions: size(judgement.undecided.iter().filter(|open| stage.asks_for(&open.due)).count()),
    }
}

/// The ticket, locked.
pub(super) async fn any_ticket(scene: &mut Scene<'_>, number: i64) -> Result<Ticket, Failure> {
    ticket::lock(scene.conn, scene.shop, number).await?.ok_or(Failure::NotFound("such ticket"))
}

/// The ticket, locked, if work may still happen on it.
pub(super) async fn open_ticket(scene: &mut Scene<'_>, number: i64) -> Result<Ticket, Failure> {
    let ticket = any_ticket(scene, number).await?;
    if ticket.stage.open() {
        return Ok(ticket);
    }
    let message = format!("Job {number} is {} and can no longer be changed.", ticket.stage.label().to_lowercase());
    Err(Failure::problem("ticket", message))
}

/// The ticket's current revision.
pub(super) async fn current_revision(scene: &mut Scene<'_>, ticket: &Ticket) -> Result<Revision, Failure> {
    let found = store::revision::find(scene.conn, scene.shop, ticket.id, ticket.revision).await?;
    found.ok_or(Failure::NotFound("such version of this job"))
}
