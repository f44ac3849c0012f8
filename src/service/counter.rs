//! The customer's answer at the counter, before a member of staff: the same record as by link.

use super::change::open_ticket;
use super::link_answer::{Place, take};
use super::write::Scene;
use super::{Answered, By, Command, CustomerAnswer, Failure};
use crate::ticket::{Action, Purpose};
use serde::Serialize;

/// An answer given at the counter.
#[derive(Clone, Debug, Serialize)]
pub struct AnswerAtCounter {
    /// The ticket.
    pub ticket: i64,
    /// What the paper was for.
    pub purpose: Purpose,
    /// What the customer answered.
    pub answer: CustomerAnswer,
}

impl Command for AnswerAtCounter {
    type Answer = Answered;
    const NAME: &'static str = "answer_at_counter";
    const BY: By = By::Staff(Action::CounterSign);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Answered, Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        let witness = Some(scene.caller()?.name.clone());
        let place = Place { purpose: self.purpose, revision: ticket.revision, link: None, witness };
        take(scene, &ticket, &place, &self.answer).await
    }
}
