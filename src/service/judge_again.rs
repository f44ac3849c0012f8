//! Judging a job again by the shop's book as it stands now. Facts, words and price stay as they are.

use super::change::{current_revision, keep, open_ticket, revision};
use super::write::Scene;
use super::{By, Command, Failure, Revised};
use crate::ticket::{Action, Happening, Judgement};
use serde::Serialize;

/// A job to be judged again. A version that the book of today judges no differently is left as it is.
#[derive(Clone, Debug, Serialize)]
pub struct JudgeAgain {
    /// The ticket.
    pub ticket: i64,
}

impl Command for JudgeAgain {
    type Answer = Revised;
    const NAME: &'static str = "judge_again";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Revised, Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        let current = current_revision(scene, &ticket).await?;
        let silenced = current.judgement.silenced.clone();
        let next = revision(scene, Some(&ticket), current.contents, &silenced).await?;
        // What the job's own papers say is judged anew with every look and is no reason for a new version.
        let by_now = |judgement: Judgement| judgement.by_now(next.judgement.clone());
        if by_now(next.judgement.clone()) == by_now(current.judgement) {
            return Ok(Revised { revision: ticket.revision, changes: Vec::new() });
        }
        keep(scene, &ticket, &next).await?;
        scene.happened(ticket.id, Happening::JudgedAgain { revision: next.number }).await?;
        Ok(Revised { revision: next.number, changes: Vec::new() })
    }
}
