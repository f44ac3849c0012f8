//! The numbers inside the rules, as this shop has them: read by all who work here, moved by the owner.

mod one;
mod row;

pub use one::{send, show_one};

use crate::rules::{Chapter, LimitId, Limits, chapters};
use crate::web::access::Staff;
use crate::web::extract::Asked;
use crate::web::frame::{Answer, Frame, page};
use crate::web::moment::zone;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use row::{ChangeLine, Row};

/// The page of all limits.
#[derive(Template)]
#[template(path = "pages/limits.html")]
struct LimitsPage {
    frame: Frame,
    /// What was looked for; empty when everything is shown.
    asked: String,
    groups: Vec<Group>,
    shown: usize,
    all: usize,
    latest: Vec<ChangeLine>,
}

/// The limits of one subject.
struct Group {
    heading: &'static str,
    rows: Vec<Row>,
}

/// What is looked for.
#[derive(serde::Deserialize)]
pub struct Search {
    #[serde(default)]
    q: String,
}

/// How many of the latest changes the page of all limits tells.
const LATEST: usize = 20;
/// Longer than anything worth looking for.
const LONGEST: usize = 100;

/// `GET /limits`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, Asked(search): Asked<Search>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let limits = state.service.limits(&caller, None).await?;
    let zone = zone(&frame.shop.zone);
    let asked: String = search.q.trim().chars().take(LONGEST).collect();
    let groups = groups(&limits.book.limits, &asked);
    page(&LimitsPage {
        shown: groups.iter().map(|group| group.rows.len()).sum(),
        all: LimitId::ALL.len(),
        latest: limits.changes.iter().take(LATEST).map(|change| ChangeLine::new(change, &zone)).collect(),
        frame,
        asked,
        groups,
    })
}

/// The limits by subject: a limit stands with the first chapter of the book that uses it.
fn groups(limits: &Limits, asked: &str) -> Vec<Group> {
    let words: Vec<String> = asked.split_whitespace().map(str::to_lowercase).collect();
    let mut rows: Vec<Row> = LimitId::ALL.iter().map(|limit| Row::new(*limit, limits)).collect();
    let chapter_of = |row: &Row| chapters().iter().position(|chapter: &Chapter| row.is_used_in(chapter));
    let headings = chapters().iter().map(|chapter| chapter.title).enumerate();
    let mut groups: Vec<Group> = headings
        .map(|(place, heading)| Group {
            heading,
            rows: rows.extract_if(.., |row| chapter_of(row) == Some(place)).collect(),
        })
        .collect();
    // A limit that no rule uses is one of the sheet's; the sheet's own tests see to that.
    groups.push(Group { heading: "Used on the measurement sheet alone", rows });
    for group in &mut groups {
        group
            .rows
            .retain(|row| words.iter().all(|word| row.tells_of(word) || group.heading.to_lowercase().contains(word)));
    }
    groups.retain(|group| !group.rows.is_empty());
    groups
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(asked: &str) -> Vec<&'static str> {
        let groups = groups(&Limits::default(), asked);
        groups.iter().flat_map(|group| &group.rows).map(|row| row.name).collect()
    }

    #[test]
    fn every_limit_stands_on_the_page_once() {
        let mut all = found("");
        all.sort_unstable();
        let mut names: Vec<_> = LimitId::ALL.iter().map(|limit| limit.declaration().name).collect();
        names.sort_unstable();
        assert_eq!(all, names);
    }

    #[test]
    fn a_limit_is_found_by_its_words_and_by_the_rules_that_use_it() {
        assert_eq!(found("bell RUNOUT"), ["bell_runout"]);
        assert!(found("cse-10").contains(&"bell_runout"));
        assert!(found("no such thing").is_empty());
    }
}
