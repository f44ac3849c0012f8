//! Every calculation on its own, open to anybody: the list, and the list with what one job knows.

mod one;
mod put;
mod view;

pub use one::{of_job, show_one};
pub use put::send;

use super::ticket::{Head, load};
use crate::sums::{Sum, all, find, taken_from, words_of};
use crate::web::access::{Anybody, Staff};
use crate::web::extract::{Asked, At};
use crate::web::findings::counted;
use crate::web::frame::{Answer, Frame, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

/// The list of sums.
#[derive(Template)]
#[template(path = "pages/sums.html")]
struct SumsPage {
    /// Around the page when somebody is signed in.
    frame: Option<Frame>,
    /// The job whose numbers are used.
    head: Option<Head>,
    /// The address of the list.
    here: String,
    /// What was looked for; empty when all are shown.
    asked: String,
    outcome: String,
    chapters: Vec<Lines>,
}

/// The sums of one subject.
struct Lines {
    title: &'static str,
    sums: Vec<Row>,
}

/// One sum in the list.
struct Row {
    sum: &'static Sum,
    href: String,
    /// How much of it the job knows; empty on the page that is open to all.
    knows: String,
}

/// What is looked for.
#[derive(serde::Deserialize)]
pub struct Search {
    #[serde(default)]
    q: String,
}

/// Longer than anything worth looking for.
const LONGEST: usize = 100;

/// `GET /sums`
pub async fn show(State(state): State<AppState>, Anybody(caller): Anybody, Asked(search): Asked<Search>) -> Answer {
    let frame = match &caller {
        Some(caller) => Some(Frame::of(&state, caller).await?),
        None => None,
    };
    page(&list(frame, None, &search, |_| String::new()))
}

/// `GET /tickets/{number}/sums`
pub async fn show_for_job(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    Asked(search): Asked<Search>,
) -> Answer {
    let (frame, ticket, _) = load(&state, &caller, number).await?;
    let job = ticket.revision.contents.facts.job();
    let knows = |sum: &'static Sum| match taken_from(sum, job).len() {
        0 if sum.inputs.iter().all(|input| input.fact.is_none()) => String::new(),
        0 => "This job knows none of its numbers yet".to_owned(),
        known => format!("This job knows {known} of {}", counted(sum.inputs.len(), "number")),
    };
    page(&list(Some(frame), Some(Head::new(&ticket)), &search, knows))
}

fn list(frame: Option<Frame>, head: Option<Head>, search: &Search, knows: impl Fn(&'static Sum) -> String) -> SumsPage {
    let asked: String = search.q.trim().chars().take(LONGEST).collect();
    let found = find(&words_of(&asked));
    let here = head.as_ref().map_or_else(|| "/sums".to_owned(), |head| format!("/tickets/{}/sums", head.number));
    let (shown, everything) = (found.iter().map(|(_, sums)| sums.len()).sum::<usize>(), all().count());
    let outcome = if asked.is_empty() {
        format!("{everything} sums.")
    } else if shown == 0 {
        format!("No sum speaks of “{asked}”. Try one word less.")
    } else {
        format!("{shown} of {everything} sums speak of “{asked}”.")
    };
    let row = |sum: &'static Sum| Row { sum, href: format!("{here}/{}", sum.name), knows: knows(sum) };
    let lines = found
        .into_iter()
        .map(|(chapter, sums)| Lines { title: chapter.title, sums: sums.into_iter().map(row).collect() });
    let chapters = lines.collect();
    SumsPage { frame, head, here, asked, outcome, chapters }
}
