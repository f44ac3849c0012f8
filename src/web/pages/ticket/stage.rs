//! Where a job stands and where it can go from there.

use crate::job::{FactId, Sheet};
use crate::service::{Caller, TicketPage};
use crate::ticket::{Action, Gate, Source, Stage, Way, may};
use std::collections::BTreeSet;

/// Where a job stands and where it can go.
pub struct StageView {
    /// Where it stands, as forms send it.
    pub code: &'static str,
    /// Where it stands, as people read it.
    pub label: &'static str,
    /// The road of the work, stage by stage.
    pub rail: Vec<Step>,
    /// The next stages; the first is the usual one.
    pub next: Vec<Move>,
    /// The earlier stages it can go back to, the latest first.
    pub back: Vec<Move>,
    /// May this person record that the customer declined?
    pub may_decline: bool,
    /// The sheets on which something is only planned, when the unit is about to be tried or to go out.
    pub planned: Vec<PlannedSheet>,
}

/// A sheet on which something is only planned.
pub struct PlannedSheet {
    /// As addresses spell it.
    pub code: &'static str,
    /// As people read it.
    pub label: &'static str,
    /// How many facts.
    pub facts: usize,
}

/// One stage of the road.
pub struct Step {
    /// Its name.
    pub label: &'static str,
    /// `done`, `here` or `ahead`.
    pub state: &'static str,
    /// The same in a word for whoever does not see it.
    pub word: &'static str,
}

/// One stage the job can move to.
pub struct Move {
    /// As forms send it.
    pub code: &'static str,
    /// As people read it.
    pub label: &'static str,
    /// What has to be done before, one sentence for each closed gate.
    pub missing: Vec<String>,
    /// Closed gates an owner has passed.
    pub passed: Vec<&'static str>,
}

impl StageView {
    /// Where this ticket stands, for this person.
    pub fn new(page: &TicketPage, caller: &Caller) -> Self {
        let here = page.ticket.stage;
        let moves = here.moves();
        let of = |wanted: Way| {
            let fitting = moves.iter().filter(move |(_, way)| *way == wanted);
            fitting.map(|(to, _)| one_move(*to, page)).collect::<Vec<_>>()
        };
        let mut back = of(Way::Back);
        back.reverse();
        Self {
            code: here.code(),
            label: here.label(),
            rail: rail(here),
            next: of(Way::Forward),
            back,
            planned: planned(page, &moves),
            may_decline: here.way_to(Stage::Declined).is_some() && may(caller.role, Action::GiveUp),
        }
    }
}

impl StageView {
    /// How much is only planned, in words.
    pub fn planned_words(&self) -> String {
        match self.planned.iter().map(|sheet| sheet.facts).sum() {
            1 => "One fact of this job is only planned.".to_owned(),
            facts => format!("{facts} facts of this job are only planned."),
        }
    }
}

fn planned(page: &TicketPage, moves: &[(Stage, Way)]) -> Vec<PlannedSheet> {
    let is_close = |(to, way): &(Stage, Way)| *way == Way::Forward && matches!(to, Stage::Test | Stage::Delivery);
    if !moves.iter().any(is_close) {
        return Vec::new();
    }
    let facts = &page.revision.contents.facts;
    let planned = facts.known().filter(|(.., origin)| origin.source == Source::Planned).map(|(fact, ..)| fact);
    let planned: BTreeSet<FactId> = planned.chain(facts.to_be_seen()).collect();
    let sheet = |sheet: Sheet| PlannedSheet {
        code: sheet.code(),
        label: sheet.label(),
        facts: planned.iter().filter(|fact| fact.declaration().sheet == sheet).count(),
    };
    Sheet::ALL.into_iter().map(sheet).filter(|sheet| sheet.facts > 0).collect()
}

fn rail(here: Stage) -> Vec<Step> {
    Stage::ALL
        .iter()
        .filter(|stage| **stage != Stage::Declined || here == Stage::Declined)
        .map(|stage| {
            let (state, word) = match stage {
                _ if *stage == here => ("here", "now"),
                _ if *stage < here && here != Stage::Declined => ("done", "done"),
                _ => ("ahead", "to come"),
            };
            Step { label: stage.label(), state, word }
        })
        .collect()
}

fn one_move(to: Stage, page: &TicketPage) -> Move {
    let closed = Gate::ALL.iter().copied().filter(|gate| gate.guards(to));
    let closed: Vec<_> = closed.filter_map(|gate| gate.closed_because(&page.standing).map(|why| (gate, why))).collect();
    let is_passed = |gate: &Gate| page.standing.overridden.contains(gate);
    Move {
        code: to.code(),
        label: to.label(),
        missing: closed.iter().filter(|(gate, _)| !is_passed(gate)).map(|(_, why)| why.clone()).collect(),
        passed: closed.iter().filter(|(gate, _)| is_passed(gate)).map(|(gate, _)| gate.label()).collect(),
    }
}
