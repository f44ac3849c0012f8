//! Striking a reading that was taken by mistake: it stays in the history with the reason, and counts for nothing.

use super::change::{ChangeTicket, current_revision, open_ticket};
use super::form::{self, Field, several_lines};
use super::measure::{GAUGE_IN_DATE, filled, latest, named, proposal, taking_of};
use super::selective_set::{Shelf, shelf};
use super::write::Scene;
use super::{Book, By, Command, Failure, Measured, Reading};
use crate::job::{FactId, fact_named};
use crate::plan::sheet::{Instrument, Measurement, measurement_named};
use crate::rules::Limits;
use crate::store::reading::{self, Struck};
use crate::ticket::{Action, Edit, FactChange, Happening, Problem, Source, TicketFacts};
use serde::Serialize;

const REASON: Field = Field { name: "reason", label: "The reason", most: 1000, needed: true };

/// A reading that was taken by mistake: of another unit, with the dial loose, typed into the wrong job.
#[derive(Clone, Debug, Serialize)]
pub struct StrikeReading {
    /// The ticket.
    pub ticket: i64,
    /// The revision the form showed.
    pub made_from: i32,
    /// The measurement's name.
    pub measurement: String,
    /// Which reading of it.
    pub reading: i32,
    /// Why.
    pub reason: String,
    /// Did somebody say so, who has seen what follows?
    pub sure: bool,
}

/// What stands once a reading is struck.
#[derive(Clone, Debug)]
pub struct Without<'a> {
    /// The reading that counts then; none when there is none left.
    pub counts: Option<&'a Reading>,
    /// What is written on the job: facts that came from the struck reading. Empty when none did.
    pub facts: Vec<FactChange>,
}

/// What stands once one of a job's readings is struck: the one before counts again, and the fact that came from the
/// struck one follows. A fact that somebody wrote otherwise since is that person's, and stays.
pub fn without<'a>(
    struck: &Reading,
    readings: &'a [Reading],
    facts: &TicketFacts,
    shelf: &Shelf,
    limits: &Limits,
) -> Without<'a> {
    let own = |reading: &&Reading| reading.measurement == struck.measurement;
    let is_struck = |reading: &Reading| own(&reading) && reading.turn == struck.turn;
    let left = || readings.iter().filter(|reading| reading.struck.is_none() && !is_struck(reading));
    let counts = left().filter(own).max_by_key(|reading| reading.turn);
    let mut changes = Vec::new();
    let Some(measurement) = measurement_named(&struck.measurement) else { return Without { counts, facts: changes } };
    let counted = latest(readings, measurement.name).is_some_and(is_struck);
    if let Some(fact) = measurement.fact().filter(|fact| counted && came_from(readings, own, facts, *fact)) {
        let back = counts.and_then(|reading| as_filled(measurement, reading, facts, shelf, limits));
        let path = fact.declaration().path.to_owned();
        changes.push(back.unwrap_or(FactChange { path, value: None, source: Source::Measured }));
    }
    // Whether the gauge was in date is known from whichever pressure was read last.
    let by_gauge = |reading: &&Reading| {
        let used = measurement_named(&reading.measurement).map(|measurement| measurement.instrument);
        used == Some(Instrument::PressureGauge) && reading.due.is_some()
    };
    let newest = |reading: &&Reading| reading.at;
    let last = readings.iter().filter(|reading| reading.struck.is_none()).filter(by_gauge).max_by_key(newest);
    let gauge = fact_named(GAUGE_IN_DATE).filter(|fact| came_from(readings, by_gauge, facts, *fact));
    if gauge.is_some() && last.is_some_and(is_struck) {
        let value = left().filter(by_gauge).max_by_key(newest).map(|reading| (!reading.past_due).into());
        changes.push(FactChange { path: GAUGE_IN_DATE.to_owned(), value, source: Source::Looked });
    }
    Without { counts, facts: changes }
}

/// Was this fact written by one of these readings, or by striking one? Then nobody wrote it by hand since.
fn came_from(readings: &[Reading], these: impl Fn(&&Reading) -> bool, facts: &TicketFacts, fact: FactId) -> bool {
    let Some(origin) = facts.origin(fact) else { return false };
    let struck_at = |reading: &Reading| reading.struck.as_ref().map(|struck| struck.at);
    readings.iter().filter(these).any(|reading| reading.at == origin.at || struck_at(reading) == Some(origin.at))
}

/// What a kept reading writes into its fact.
fn as_filled(
    measurement: &Measurement,
    reading: &Reading,
    facts: &TicketFacts,
    shelf: &Shelf,
    limits: &Limits,
) -> Option<FactChange> {
    let band = (measurement.band)(facts.job(), limits);
    let proposal = proposal(measurement, &taking_of(reading), &band, shelf, limits);
    filled(measurement, reading.number, &proposal, reading.past_due)
}

impl Command for StrikeReading {
    type Answer = Measured;
    const NAME: &'static str = "strike_reading";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Measured, Failure> {
        let measurement = named(&self.measurement)?;
        let ticket = open_ticket(scene, self.ticket).await?;
        let readings = reading::of_tickets(scene.conn, scene.shop, &[self.ticket], None).await?;
        let mut own = readings.iter().filter(|reading| reading.measurement == measurement.name);
        let struck = own.find(|reading| reading.turn == self.reading).ok_or(Failure::NotFound("such reading"))?;
        let mut problems = Vec::new();
        let reason = several_lines(REASON, &self.reason, &mut problems);
        if !self.sure {
            problems.push(Problem::new("sure", "Tick that this reading does not count, or leave it as it is."));
        }
        if let Some(before) = &struck.struck {
            let message = format!("{} struck this reading already: {}", before.made_by, before.reason);
            problems = vec![Problem::new("reason", message)];
        }
        form::none(problems)?;
        let current = current_revision(scene, &ticket).await?;
        let shelf = shelf(scene.conn, scene.shop).await?;
        let limits = Book::load(scene.conn, scene.shop).await?.limits;
        let facts = without(struck, &readings, &current.contents.facts, &shelf, &limits).facts;
        let revision = if facts.is_empty() {
            ticket.revision
        } else {
            let edit = Edit { facts, ..Edit::default() };
            let change = ChangeTicket { ticket: self.ticket, made_from: self.made_from, edit };
            change.carry_out(scene).await?.revision
        };
        let caller = scene.caller()?;
        let (staff, made_by) = (caller.staff, caller.name.clone());
        let place = (measurement.name, self.reading);
        let kept = Struck { reason: reason.clone(), made_by, at: scene.now };
        reading::insert_struck(scene.conn, scene.shop, (ticket.id, staff), place, &kept).await?;
        let (label, said) = (measurement.label.to_owned(), measurement.scale.say(struck.number));
        scene.happened(ticket.id, Happening::ReadingStruck { label, said, reason }).await?;
        Ok(Measured { turn: self.reading, revision })
    }
}
