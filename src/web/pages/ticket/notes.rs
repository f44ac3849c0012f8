//! Notes on a ticket, for the shop only.

use super::{back, or_back};
use crate::service::{Key, Who, WriteNote};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::form::{Entry, Reader, Sent};
use crate::web::frame::{Answer, on_to};
use crate::web::site::AppState;
use axum::extract::State;

/// A note as it is sent.
pub struct NoteSent {
    text: String,
}

impl Entry for NoteSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "The note is empty. Write something, or leave it.";
        Self { text: reader.needed_words("text", "The note", crate::ticket::WORDS_LIMIT, ask) }
    }
}

/// `POST /tickets/{number}/notes`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<NoteSent>,
) -> Answer {
    let NoteSent { text } = match sent.read {
        Ok(note) => note,
        Err(problems) => return back(&state, &caller, number, sent.typed, problems).await,
    };
    let command = WriteNote { ticket: number, text };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(()) => on_to(&format!("/tickets/{number}?saved=note")),
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}
