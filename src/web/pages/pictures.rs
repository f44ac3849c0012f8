//! The pictures of a job: drawn as far as its facts go, each with its numbers; the others say what they wait for.

use super::ticket::{Head, load};
use crate::picture::{Picture, pictures};
use crate::rules::{Derived, Known};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::findings::{FactLink, From, counted, fact_link};
use crate::web::frame::{Answer, Frame, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

/// The page of pictures.
#[derive(Template)]
#[template(path = "pages/pictures.html")]
struct PicturesPage {
    frame: Frame,
    head: Head,
    /// The version they are drawn from.
    revision: i32,
    /// `9 pictures`.
    count: String,
    drawn: Vec<Picture>,
    waiting: Vec<Waiting>,
}

/// A picture that cannot be drawn yet.
struct Waiting {
    title: &'static str,
    /// What has to be known first, or put right.
    facts: Vec<FactLink>,
    /// Is all of it known, so that the numbers must be at odds?
    at_odds: bool,
}

/// `GET /tickets/{number}/pictures`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> Answer {
    let (frame, ticket, _) = load(&state, &caller, number).await?;
    let facts = &ticket.revision.contents.facts;
    let job = facts.job();
    let limits = &ticket.book.limits;
    let (mut drawn, mut waiting) = (Vec::new(), Vec::new());
    for slot in pictures(job, limits, &Derived::of(job, limits), &Default::default()) {
        match slot.picture {
            Known::Yes(picture, _) => drawn.push(picture),
            Known::Waits(needs) => {
                let link = |path| fact_link(path, facts, From::Ticket(number));
                let facts = needs.iter().map(|fact| link(fact.declaration().path)).collect();
                let at_odds = needs.iter().all(|fact| job.slot(fact).json().is_some());
                waiting.push(Waiting { title: slot.title, facts, at_odds });
            }
        }
    }
    page(&PicturesPage {
        head: Head::new(&ticket),
        revision: ticket.revision.number,
        count: counted(drawn.len(), "picture"),
        drawn,
        waiting,
        frame,
    })
}
