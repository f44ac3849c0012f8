//! Where a job stands and where it can go from there.

use crate::service::{Caller, TicketPage};
use crate::ticket::{Action, Gate, Stage, Way, may};

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
            may_decline: here.way_to(Stage::Declined).is_some() && may(caller.role, Action::GiveUp),
        }
    }
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
