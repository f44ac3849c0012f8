//! The board's page: the open jobs by stage, or what a search found.

use super::card::Card;
use crate::ticket::{Stage, WaitsFor};

/// What of the board is looked at.
#[derive(Clone, Debug, Default, PartialEq, Eq, serde::Deserialize)]
pub struct Query {
    /// A number, name, phone number or plate to look for.
    #[serde(default)]
    pub q: String,
    /// Only jobs of one kind: `us`, `customer`, `parts`, `machinist`, `late`, `stops`, `unsigned`.
    #[serde(default)]
    pub only: String,
}

/// One way to narrow the board.
#[derive(Clone, Debug)]
pub struct Filter {
    /// As the address spells it; empty for all.
    pub code: &'static str,
    /// As people read it.
    pub label: &'static str,
    /// How many jobs it leaves.
    pub count: usize,
    /// Is it the one that is on?
    pub on: bool,
}

/// The jobs of one stage.
#[derive(Clone, Debug)]
pub struct Lane {
    /// The stage.
    pub stage: Stage,
    /// Its jobs, the earliest promise first.
    pub cards: Vec<Card>,
}

/// What the board shows.
#[derive(Clone, Debug)]
pub struct Board {
    /// What was looked for; empty when nothing was.
    pub q: String,
    /// The ways to narrow it.
    pub filters: Vec<Filter>,
    /// The jobs by stage.
    pub lanes: Vec<Lane>,
    /// How many jobs are shown.
    pub shown: usize,
}

impl Board {
    /// The open jobs, narrowed as asked; a filter nobody knows narrows nothing.
    pub fn open(cards: Vec<Card>, only: &str) -> Self {
        let on = FILTERS.iter().find(|(code, _, _)| *code == only).map_or("", |(code, _, _)| *code);
        let filters = FILTERS
            .iter()
            .map(|(code, label, keeps)| Filter {
                code,
                label,
                count: cards.iter().filter(|card| keeps(card)).count(),
                on: *code == on,
            })
            .filter(|filter| filter.count > 0 || filter.on || filter.code.is_empty())
            .collect();
        let kept = FILTERS
            .iter()
            .find(|(code, _, _)| *code == on)
            .map_or_else(Vec::new, |(_, _, keeps)| cards.into_iter().filter(keeps).collect());
        Self { q: String::new(), filters, shown: kept.len(), lanes: lanes(kept) }
    }

    /// What a search found, finished jobs too.
    pub fn found(cards: Vec<Card>, q: String) -> Self {
        Self { q, filters: Vec::new(), shown: cards.len(), lanes: lanes(cards) }
    }
}

type Keeps = fn(&Card) -> bool;

const FILTERS: [(&str, &str, Keeps); 8] = [
    ("", "All open", |_| true),
    ("late", "Overdue", |card| card.late),
    ("stops", "With a stop", |card| card.stops > 0),
    ("us", "Waits for us", |card| card.waits_for == WaitsFor::Us),
    ("customer", "Waits for the customer", |card| card.waits_for == WaitsFor::Customer),
    ("parts", "Waits for parts", |card| card.waits_for == WaitsFor::Parts),
    ("machinist", "Waits for the machinist", |card| card.waits_for == WaitsFor::Machinist),
    ("unsigned", "Signature missing", |card| card.unsigned),
];

fn lanes(cards: Vec<Card>) -> Vec<Lane> {
    let mut lanes: Vec<Lane> = Stage::ALL.iter().map(|stage| Lane { stage: *stage, cards: Vec::new() }).collect();
    for card in cards {
        if let Some(lane) = lanes.iter_mut().find(|lane| lane.stage == card.stage) {
            lane.cards.push(card);
        }
    }
    lanes.retain(|lane| !lane.cards.is_empty());
    lanes
}

#[cfg(test)]
mod tests {
    use super::super::card::tests::line;
    use super::*;
    use crate::service::Line;
    use jiff::civil::date;

    fn cards() -> Vec<Card> {
        let today = date(2026, 11, 25);
        [
            Line { promised: Some(date(2026, 11, 24)), open_stops: 1, ..line(1) },
            Line { stage: Stage::Intake, waits_for: WaitsFor::Customer, ..line(2) },
            Line { promised: Some(date(2026, 12, 24)), waits_for: WaitsFor::Customer, ..line(3) },
        ]
        .map(|line| Card::new(line, today))
        .into()
    }

    fn numbers(board: &Board) -> Vec<i64> {
        board.lanes.iter().flat_map(|lane| &lane.cards).map(|card| card.number).collect()
    }

    #[test]
    fn jobs_stand_by_stage_in_the_order_of_the_work() {
        let board = Board::open(cards(), "");
        assert_eq!(numbers(&board), [2, 1, 3]);
        assert_eq!(board.lanes.iter().map(|lane| lane.stage).collect::<Vec<_>>(), [Stage::Intake, Stage::Teardown]);
    }

    #[test]
    fn every_filter_leaves_what_it_says_and_counts_all() {
        for (only, left) in [("late", vec![1]), ("customer", vec![2, 3]), ("stops", vec![1]), ("us", vec![1])] {
            let board = Board::open(cards(), only);
            assert_eq!(numbers(&board), left, "{only}");
            let filter = board.filters.iter().find(|filter| filter.on).expect("one is on");
            assert_eq!((filter.code, filter.count), (only, left.len()));
        }
        let all = Board::open(cards(), "nobody knows this");
        assert_eq!(all.shown, 3, "an unknown filter hides no job");
        assert!(all.filters.iter().all(|filter| filter.code != "parts"), "an empty filter is not offered");
    }
}
