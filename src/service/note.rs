//! Notes on a ticket, for the shop only.

use super::change::any_ticket;
use super::form::{self, Field, several_lines};
use super::write::Scene;
use super::{By, Command, Failure};
use crate::ticket::{Action, Happening, WORDS_LIMIT};
use serde::Serialize;

const NOTE: Field = Field { name: "text", label: "The note", most: WORDS_LIMIT, needed: true };

/// A note.
#[derive(Clone, Debug, Serialize)]
pub struct WriteNote {
    /// The ticket.
    pub ticket: i64,
    /// What it says.
    pub text: String,
}

impl Command for WriteNote {
    type Answer = ();
    const NAME: &'static str = "write_note";
    const BY: By = By::Staff(Action::WriteNote);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let mut problems = Vec::new();
        let text = several_lines(NOTE, &self.text, &mut problems);
        form::none(problems)?;
        let ticket = any_ticket(scene, self.ticket).await?;
        scene.happened(ticket.id, Happening::Noted { text }).await
    }
}
