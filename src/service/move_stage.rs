//! Moving a job to another stage, through its gates.

use super::change::{any_ticket, counts, current_revision};
use super::form::{self, Field, several_lines};
use super::plan_ahead::clash;
use super::weigh::Scales;
use super::write::Scene;
use super::{By, Command, Failure, Passed, Revision, Ticket};
use crate::store::{signature, ticket};
use crate::ticket::{Action, Approval, Found, Gate, Happening, Override, Severity, Stage, Standing, Way, may_move};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

const REASON: Field = Field { name: "reason", label: "The reason", most: 1000, needed: false };

/// A move of a ticket to another stage.
#[derive(Clone, Debug, Serialize)]
pub struct MoveStage {
    /// The ticket.
    pub ticket: i64,
    /// The stage the form showed.
    pub from: Stage,
    /// The stage to enter.
    pub to: Stage,
    /// Why; needed to go back or to give up.
    pub reason: String,
    /// Gates the owner passes, each with its reason.
    pub overrides: Vec<Override>,
}

/// The stage entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Moved {
    /// Where the job stands now.
    pub stage: Stage,
}

impl Command for MoveStage {
    type Answer = Moved;
    const NAME: &'static str = "move_stage";
    const BY: By = By::Staff(Action::MoveStage);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Moved, Failure> {
        if self.to == Stage::Declined {
            scene.must(Action::GiveUp)?;
        }
        if !self.overrides.is_empty() {
            scene.must(Action::OverrideGate)?;
        }
        let (reason, overrides) = self.checked()?;
        let ticket = any_ticket(scene, self.ticket).await?;
        if ticket.stage != self.from {
            return Err(clash("stage", "Stage", self.to.label(), ticket.stage.label()));
        }
        let revision = current_revision(scene, &ticket).await?;
        let scales = Scales::of(scene.conn, scene.shop, scene.judge, &ticket).await?;
        let revision = scales.by_now(revision);
        let passed = signature::passed(scene.conn, scene.shop, ticket.id).await?;
        let stops = OpenStops::of(&ticket, &revision, &scales);
        let standing = standing(&ticket, &stops, &passed);
        let way = may_move(self.from, self.to, &reason, &standing, &overrides).map_err(Failure::Gates)?;

        // Only what was really in the way is kept as passed.
        let used: Vec<Override> = overrides
            .into_iter()
            .filter(|given| given.gate.guards(self.to) && given.gate.closed_because(&standing).is_some())
            .filter(|given| !standing.overridden.contains(&given.gate))
            .collect();
        for given in &used {
            self.pass(scene, &ticket, &stops, given).await?;
        }
        let questions = counts(&revision.judgement, self.to).questions;
        ticket::set_stage(scene.conn, scene.shop, ticket.id, self.to, questions).await?;
        let reason = if way == Way::Forward { String::new() } else { reason };
        let happened = Happening::Moved { from: self.from, to: self.to, reason, overrides: used };
        scene.happened(ticket.id, happened).await?;
        Ok(Moved { stage: self.to })
    }
}

impl MoveStage {
    fn checked(&self) -> Result<(String, Vec<Override>), Failure> {
        let mut problems = Vec::new();
        let reason = several_lines(REASON, &self.reason, &mut problems);
        let overrides = self
            .overrides
            .iter()
            .map(|given| Override { gate: given.gate, reason: several_lines(REASON, &given.reason, &mut problems) })
            .collect();
        form::none(problems)?;
        Ok((reason, overrides))
    }

    async fn pass(
        &self,
        scene: &mut Scene<'_>,
        ticket: &Ticket,
        stops: &OpenStops,
        given: &Override,
    ) -> Result<(), Failure> {
        let caller = scene.caller()?.clone();
        let passed = Passed {
            id: Uuid::now_v7(),
            revision: ticket.revision,
            gate: given.gate,
            reason: given.reason.clone(),
            covers: ticket.covers.clone(),
            stops: stops.codes.clone(),
            staff_id: caller.staff,
            made_by: caller.name,
            at: scene.now,
        };
        Ok(signature::insert_passed(scene.conn, scene.shop, ticket.id, &passed).await?)
    }
}

/// The stops in a ticket's way.
pub(super) struct OpenStops {
    /// Their codes.
    codes: Vec<String>,
    /// The titles of those that are found.
    found: Vec<String>,
    /// The titles of those that only a plan keeps from being found.
    planned: Vec<String>,
}

impl OpenStops {
    /// Those in the way of this revision as it stands by now.
    pub(super) fn of(ticket: &Ticket, revision: &Revision, scales: &Scales) -> Self {
        let found: Vec<&Found> = revision.judgement.of(Severity::Stop).collect();
        let mut planned = scales.only_planned(revision, ticket.stage);
        planned.retain(|open| found.iter().all(|found| found.code != open.code));
        let codes = found.iter().map(|found| &found.code).chain(planned.iter().map(|open| &open.code));
        Self {
            codes: codes.cloned().collect(),
            found: found.iter().map(|found| found.title.clone()).collect(),
            planned: planned.into_iter().map(|open| open.title).collect(),
        }
    }
}

/// How a ticket stands before its gates now.
pub(super) fn standing(ticket: &Ticket, stops: &OpenStops, passed: &[Passed]) -> Standing {
    let intake = Approval::of_intake(ticket.intake_answer);
    let latest = ticket.build_answer.zip(ticket.build_covers.as_deref());
    let build = Approval::of_build(latest, &ticket.covers);
    // An owner's word holds for what stood when it was given, and never against a customer's no.
    let holds = |passed: &Passed| match passed.gate {
        Gate::IntakeAuthorised => intake != Approval::Declined,
        Gate::RevisionSigned => passed.covers == ticket.covers && build != Approval::Declined,
        Gate::NoOpenStop => stops.codes.iter().all(|code| passed.stops.contains(code)),
    };
    let mut overridden: Vec<Gate> = passed.iter().filter(|passed| holds(passed)).map(|passed| passed.gate).collect();
    overridden.sort_unstable();
    overridden.dedup();
    let (open_stops, only_planned) = (stops.found.clone(), stops.planned.clone());
    Standing { intake, build, open_stops, only_planned, overridden }
}
