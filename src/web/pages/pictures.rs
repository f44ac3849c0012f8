//! The pictures of a job: drawn as far as its facts go, each with its numbers; the others say what they wait for.

use super::ticket::{Head, load};
use crate::job::{Fact, FactSet};
use crate::picture::{Bench, Beside, Picture, Put, pictures};
use crate::plan::sheet::{Fit, measurement_named};
use crate::quantity::{Inch, Quantity};
use crate::rules::{Derived, Known};
use crate::service::{BenchSheet, Event, latest, taking_of};
use crate::ticket::Happening;
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
    /// `/tickets/1042`: before a sum's address it fills in what the job knows.
    job: String,
    /// `9 pictures`.
    count: String,
    drawn: Vec<Picture>,
    waiting: Vec<Waiting>,
}

/// Pictures that cannot be drawn yet, all for the same reason.
struct Waiting {
    /// `Power flow: first; Power flow: second`.
    titles: String,
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
    let sheet = state.service.bench_sheet(&caller, number, None).await?;
    let play = |fact: &Fact<_>, name| bench(fact.value().copied(), name, &sheet);
    let front = play(&job.bench.front_end_play_in, "front-end-play");
    let rear = play(&job.bench.rear_end_play_in, "rear-end-play");
    let put = put(&ticket.history);
    let beside = Beside { front: Some(&front), rear: Some(&rear), put: Put(&put) };
    let (mut drawn, mut open) = (Vec::new(), Vec::<(FactSet, Waiting)>::new());
    for slot in pictures(job, limits, &Derived::of(job, limits), &beside) {
        match slot.picture {
            Known::Yes(picture, _) => drawn.push(picture),
            Known::Waits(needs) => {
                if let Some((_, same)) = open.iter_mut().find(|(facts, _)| *facts == needs) {
                    same.titles.push_str("; ");
                    same.titles.push_str(slot.title);
                    continue;
                }
                let link = |path| fact_link(path, facts, From::Ticket(number));
                let facts = needs.iter().map(|fact| link(fact.declaration().path)).collect();
                let at_odds = needs.iter().all(|fact| job.slot(fact).json().is_some());
                open.push((needs, Waiting { titles: slot.title.to_owned(), facts, at_odds }));
            }
        }
    }
    page(&PicturesPage {
        head: Head::new(&ticket),
        revision: ticket.revision.number,
        job: format!("/tickets/{number}"),
        count: counted(drawn.len(), "picture"),
        drawn,
        waiting: open.into_iter().map(|(_, waiting)| waiting).collect(),
        frame,
    })
}

/// What lay on the bench when this end play was read last, and what is on the shelf for it.
///
/// A number that was typed elsewhere since is not that reading, so its washer is not the one that is in.
fn bench(play: Option<Quantity<Inch>>, name: &str, sheet: &BenchSheet) -> Bench {
    let measurement = measurement_named(name);
    let kind = measurement.and_then(|measurement| measurement.fit).and_then(Fit::set);
    let latest = latest(&sheet.readings, name)
        .filter(|reading| play.is_some_and(|play| (play.value() - reading.number).abs() < 1e-9));
    Bench {
        washer: latest.and_then(|reading| reading.fitted.first()).map(|read| Quantity::new(read.value)),
        unsure: latest.zip(measurement).map(|(reading, of)| Quantity::new(taking_of(reading).unsure(of))),
        set: kind.map_or_else(Vec::new, |kind| sheet.shelf.parts(kind).to_vec()),
    }
}

/// The sums that were put on this job, the latest last.
fn put(history: &[Event]) -> Vec<String> {
    let link = |event: &Event| match &event.happened {
        Happening::SumPut { link, .. } => Some(link.clone()),
        _ => None,
    };
    history.iter().rev().filter_map(link).collect()
}
