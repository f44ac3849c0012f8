//! Setting a finding aside for one job, in writing, and bringing it back. Each makes a new version, judged anew.

use super::change::{current_revision, keep, open_ticket, revision};
use super::form::{self, Field, several_lines};
use super::weigh::by_now;
use super::write::Scene;
use super::{By, Command, Failure, Revised};
use crate::ticket::{Action, Hand, Happening, Silenced};
use serde::Serialize;

const REASON: Field = Field { name: "reason", label: "The reason", most: 1000, needed: true };

/// A finding to be set aside. Every rule stays in the book; on this job this one closes no gate and is counted
/// nowhere until it is brought back, until the facts change so that it is no longer found, or until what it tells the
/// customer or rests on changes.
#[derive(Clone, Debug, Serialize)]
pub struct SetAside {
    /// The ticket.
    pub ticket: i64,
    /// The version in which the finding was read.
    pub made_from: i32,
    /// The rule's code.
    pub code: String,
    /// Why. The customer reads it, where they would have been told of the finding.
    pub reason: String,
}

impl Command for SetAside {
    type Answer = Revised;
    const NAME: &'static str = "set_aside";
    const BY: By = By::Staff(Action::SetAside);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Revised, Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        let current = current_revision(scene, &ticket).await?;
        let gone = || Failure::problem("reason", "This is not found any more, so there is nothing to set aside.");
        let stands = by_now(scene, &ticket, current.clone()).await?.judgement;
        let found = stands.findings.iter().find(|found| found.code == self.code).cloned();
        let found = found.ok_or_else(gone)?;
        scene.must(found.set_aside_by())?;
        let mut problems = Vec::new();
        let reason = several_lines(REASON, &self.reason, &mut problems);
        form::none(problems)?;
        if self.made_from != ticket.revision {
            let message = "The job changed while you were writing. Read the finding again, then send this once more.";
            return Err(Failure::problem("reason", message));
        }
        let title = found.title.clone();
        let Hand { by, at } = scene.hand();
        let mut silenced = stands.silenced;
        silenced.push(Silenced { found, reason: reason.clone(), by, at });
        let next = revision(scene, Some(&ticket), current.contents, &silenced).await?;
        if next.judgement.findings.iter().any(|found| found.code == self.code) {
            let message = "What this rests on has changed since the job was judged. Judge the job again, read what it \
                           says now, then set that aside.";
            return Err(Failure::problem("reason", message));
        }
        if next.judgement.silenced.iter().all(|silenced| silenced.found.code != self.code) {
            return Err(gone());
        }
        keep(scene, &ticket, &next).await?;
        let happened = Happening::SetAside { revision: next.number, code: self.code.clone(), title, reason };
        scene.happened(ticket.id, happened).await?;
        Ok(Revised { revision: next.number, changes: Vec::new() })
    }
}

/// A finding to be counted again. One that is not set aside is left as it is.
#[derive(Clone, Debug, Serialize)]
pub struct BringBack {
    /// The ticket.
    pub ticket: i64,
    /// The rule's code.
    pub code: String,
}

impl Command for BringBack {
    type Answer = Revised;
    const NAME: &'static str = "bring_back";
    const BY: By = By::Staff(Action::SetAside);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Revised, Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        let current = current_revision(scene, &ticket).await?;
        let mut silenced = by_now(scene, &ticket, current.clone()).await?.judgement.silenced;
        let Some(place) = silenced.iter().position(|silenced| silenced.found.code == self.code) else {
            return Ok(Revised { revision: ticket.revision, changes: Vec::new() });
        };
        let title = silenced.remove(place).found.title;
        let next = revision(scene, Some(&ticket), current.contents, &silenced).await?;
        keep(scene, &ticket, &next).await?;
        let happened = Happening::BroughtBack { revision: next.number, code: self.code.clone(), title };
        scene.happened(ticket.id, happened).await?;
        Ok(Revised { revision: next.number, changes: Vec::new() })
    }
}
