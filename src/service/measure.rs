//! Measuring: a reading taken on a job, the part chosen by it, and the sheet with the unit's earlier readings.

use super::change::{ChangeTicket, current_revision, open_ticket};
use super::selective_set::{Shelf, shelf};
use super::write::Scene;
use super::{
    Book, By, Caller, Command, Failure, KeptInstrument, PartChosen as Chosen, Reading, Revision, Service, Ticket,
};
use crate::plan::sheet::{
    Fills, Fitted, Instrument, Measurement, Picked, Proposal, Taking, judge, measurement_named, pick, take,
};
use crate::rules::{Known, Limits};
use crate::store::{self, instrument, reading};
use crate::ticket::{Action, Edit, FactChange, Happening, Problem, Source};
use jiff::civil::Date;
use jiff::tz::TimeZone;
use serde::{Deserialize, Serialize};

/// The fact that says whether the pressure gauge was in date.
pub(super) const GAUGE_IN_DATE: &str = "bench.gauge_cal_ok";

/// Everything a sheet is shown from, besides the ticket itself.
#[derive(Clone, Debug)]
pub struct BenchSheet {
    /// The readings of this job, newest first.
    pub readings: Vec<Reading>,
    /// Those of the unit's earlier jobs, newest first.
    pub earlier: Vec<Reading>,
    /// The jobs this one comes back from, newest first: surely the same unit.
    pub same_unit: Vec<i64>,
    /// The shop's instruments.
    pub instruments: Vec<KeptInstrument>,
    /// Its sets and units.
    pub shelf: Shelf,
}

impl Service {
    /// What was measured on a ticket and on the unit's earlier tickets: one measurement, or all.
    ///
    /// # Errors
    /// [`Failure::NotFound`] when this shop has no such ticket.
    pub async fn bench_sheet(&self, caller: &Caller, number: i64, only: Option<&str>) -> Result<BenchSheet, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let (shop, only) = (caller.shop, only.map(str::to_owned));
        self.read(|conn| {
            let only = only.clone();
            Box::pin(async move {
                let ticket = store::ticket::find(conn, shop, number).await?.ok_or(Failure::NotFound("such ticket"))?;
                let life = reading::life(conn, shop, ticket.vehicle_id).await?;
                let mut same_unit = Vec::new();
                let mut before = ticket.comeback_of;
                while let Some((number, _, earlier)) = before.and_then(|key| life.iter().find(|(_, id, _)| *id == key))
                {
                    same_unit.push(*number);
                    before = earlier.filter(|_| same_unit.len() < life.len());
                }
                let others: Vec<i64> = life.iter().map(|(number, ..)| *number).filter(|one| *one < number).collect();
                Ok(BenchSheet {
                    readings: reading::of_tickets(conn, shop, &[number], only.as_deref()).await?,
                    earlier: reading::of_tickets(conn, shop, &others, only.as_deref()).await?,
                    instruments: instrument::latest(conn, shop).await?,
                    shelf: shelf(conn, shop).await?,
                    same_unit,
                })
            })
        })
        .await
    }
}

/// A reading, as it was typed.
#[derive(Clone, Debug, Serialize)]
pub struct TakeReading {
    /// The ticket.
    pub ticket: i64,
    /// The revision the form showed.
    pub made_from: i32,
    /// The measurement's name.
    pub measurement: String,
    /// What the instrument showed, each time.
    pub readings: Vec<String>,
    /// What is in the unit now, where a part is chosen by it.
    pub fitted: String,
    /// Which instrument; none when nobody says.
    pub instrument: Option<i32>,
    /// Did somebody say that an unlikely number is really so?
    pub sure: bool,
}

/// What a reading came to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Measured {
    /// Which time this was measured on the ticket.
    pub turn: i32,
    /// The revision that stands now.
    pub revision: i32,
}

impl Command for TakeReading {
    type Answer = Measured;
    const NAME: &'static str = "take_reading";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Measured, Failure> {
        let measurement = named(&self.measurement)?;
        let ticket = open_ticket(scene, self.ticket).await?;
        let shelf = shelf(scene.conn, scene.shop).await?;
        let taking = take(measurement, &self.readings, &self.fitted, shelf.habit, self.sure).map_err(|wrong| {
            Failure::Problems(wrong.into_iter().map(|one| Problem::new(one.field, one.message)).collect())
        })?;
        let used = self.used(scene).await?;
        let past_due = used.as_ref().is_some_and(|(used, today)| is_past(used, *today));
        let current = current_revision(scene, &ticket).await?;
        let limits = Book::load(scene.conn, scene.shop).await?.limits;
        let weighed = Weighed::of(measurement, &taking, &current, &shelf, &limits);
        let in_date = used.as_ref().and_then(|(used, today)| used.due.map(|due| due >= *today));
        let revision = self.fill(scene, &ticket, measurement, &taking, &weighed, in_date).await?;
        let turn = reading::turns(scene.conn, scene.shop, ticket.id, measurement.name).await? + 1;
        let caller = scene.caller()?;
        let (staff, made_by) = (caller.staff, caller.name.clone());
        let kept = Reading {
            ticket: self.ticket,
            measurement: measurement.name.to_owned(),
            turn,
            revision,
            number: taking.value,
            spread: taking.spread,
            taken: taking.taken,
            fitted: taking.fitted,
            verdict: weighed.verdict,
            held_against: weighed.held_against,
            instrument: used.as_ref().map(|(used, _)| (used.nth, used.version)),
            instrument_name: used.map_or_else(String::new, |(used, _)| used.name),
            due: None,
            past_due,
            made_by,
            at: scene.now,
            chosen: None,
            struck: None,
        };
        reading::insert(scene.conn, scene.shop, (ticket.id, staff), &kept).await?;
        let happened = Happening::Measured {
            label: measurement.label.to_owned(),
            said: measurement.scale.say(kept.number),
            verdict: kept.verdict,
            instrument: kept.instrument_name,
            past_due,
        };
        scene.happened(ticket.id, happened).await?;
        Ok(Measured { turn, revision })
    }
}

impl TakeReading {
    /// The instrument that was used, and today in the shop.
    async fn used(&self, scene: &mut Scene<'_>) -> Result<Option<(KeptInstrument, Date)>, Failure> {
        let Some(nth) = self.instrument else { return Ok(None) };
        let all = instrument::latest(scene.conn, scene.shop).await?;
        let used = all.into_iter().find(|kept| kept.nth == nth && !kept.retired).ok_or_else(|| {
            Failure::problem("instrument", "That instrument is out of use. Choose the one that was really used.")
        })?;
        let shop = store::shop::find(scene.conn, scene.shop).await?.ok_or(Failure::NotFound("shop"))?;
        let zone = TimeZone::get(&shop.zone).unwrap_or(TimeZone::UTC);
        Ok(Some((used, scene.now.to_zoned(zone).date())))
    }

    /// Writes the number into the fact it belongs to; the revision that stands then.
    async fn fill(
        &self,
        scene: &mut Scene<'_>,
        ticket: &Ticket,
        measurement: &Measurement,
        taking: &Taking,
        weighed: &Weighed,
        in_date: Option<bool>,
    ) -> Result<i32, Failure> {
        let past_due = in_date == Some(false);
        let Some(fact) = filled(measurement, taking.value, &weighed.proposal, past_due) else {
            return Ok(ticket.revision);
        };
        let mut facts = vec![fact];
        // The rules ask whether the gauge was in date; with a date on record, this reading knows.
        if measurement.instrument == Instrument::PressureGauge
            && let Some(in_date) = in_date
        {
            let (path, value) = (GAUGE_IN_DATE.to_owned(), Some(in_date.into()));
            facts.push(FactChange { path, value, source: Source::Looked });
        }
        let edit = Edit { facts, ..Edit::default() };
        let change = ChangeTicket { ticket: self.ticket, made_from: self.made_from, edit };
        Ok(change.carry_out(scene).await?.revision)
    }
}

/// What a taking writes into the fact it belongs to; none when it writes nothing.
pub(super) fn filled(measurement: &Measurement, value: f64, proposal: &Proposal, past_due: bool) -> Option<FactChange> {
    let (path, value) = match (measurement.fills, proposal) {
        (Fills::Number(path), _) => (path, value.into()),
        (Fills::Word(path, fits, _), Proposal::Found(Picked { fits: true, .. })) => (path, fits.into()),
        (Fills::Word(path, _, none), Proposal::Found(_)) => (path, none.into()),
        (Fills::Nothing | Fills::Word(..), _) => return None,
    };
    let source = if past_due { Source::MeasuredPastDue } else { Source::Measured };
    Some(FactChange { path: path.to_owned(), value: Some(value), source })
}

/// The reading of a measurement that counts: the latest that was not struck.
pub fn latest<'a>(readings: &'a [Reading], measurement: &str) -> Option<&'a Reading> {
    let counts = |reading: &&Reading| reading.measurement == measurement && reading.struck.is_none();
    readings.iter().filter(counts).max_by_key(|reading| reading.turn)
}

/// Was an instrument past its calibration date on this day?
pub fn is_past(instrument: &KeptInstrument, day: Date) -> bool {
    instrument.due.is_some_and(|due| due < day)
}

/// What is said of a taking.
struct Weighed {
    verdict: String,
    held_against: String,
    proposal: Proposal,
}

impl Weighed {
    fn of(measurement: &Measurement, taking: &Taking, current: &Revision, shelf: &Shelf, limits: &Limits) -> Self {
        let band = (measurement.band)(current.contents.facts.job(), limits);
        let told = match &band {
            Known::Yes(band, _) => band.told(measurement.scale),
            Known::Waits(_) => Vec::new(),
        };
        let told: Vec<_> = told.into_iter().map(|(name, value, mark)| format!("{name} {value} ({mark})")).collect();
        Self {
            verdict: judge(Some(taking.value), &band).word().to_owned(),
            held_against: told.join("; "),
            proposal: proposal(measurement, taking, &band, shelf, limits),
        }
    }
}

/// What follows from a taking.
pub fn proposal(
    measurement: &Measurement,
    taking: &Taking,
    band: &Known<crate::plan::sheet::Band>,
    shelf: &Shelf,
    limits: &Limits,
) -> Proposal {
    let set = measurement.fit.and_then(|fit| fit.set()).map_or(&[][..], |kind| shelf.parts(kind));
    let fitted = Fitted(taking.fitted.iter().map(|read| read.value).collect());
    pick(measurement, (taking.value, taking.unsure(measurement)), band, &fitted, set, limits)
}

/// A part chosen by the latest reading: one of those that were worked out from it.
#[derive(Clone, Debug, Serialize)]
pub struct ChoosePart {
    /// The ticket.
    pub ticket: i64,
    /// The measurement's name.
    pub measurement: String,
    /// The reading the page showed.
    pub reading: i32,
    /// The part, as the page offered it.
    pub part: String,
}

impl Command for ChoosePart {
    type Answer = ();
    const NAME: &'static str = "choose_part";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let measurement = named(&self.measurement)?;
        let ticket = open_ticket(scene, self.ticket).await?;
        let readings = reading::of_tickets(scene.conn, scene.shop, &[self.ticket], Some(measurement.name)).await?;
        let latest = latest(&readings, measurement.name).ok_or(Failure::NotFound("such reading"))?;
        if latest.turn != self.reading {
            let message = "It was measured again meanwhile. Look at the new reading, then choose the part by it.";
            return Err(Failure::problem("part", message));
        }
        let current = current_revision(scene, &ticket).await?;
        let shelf = shelf(scene.conn, scene.shop).await?;
        let limits = Book::load(scene.conn, scene.shop).await?.limits;
        let weighed = Weighed::of(measurement, &taking_of(latest), &current, &shelf, &limits);
        let offers = match weighed.proposal {
            Proposal::Found(found) => found.offers,
            Proposal::Nothing | Proposal::Missing(_) => Vec::new(),
        };
        let Some(offer) = offers.into_iter().find(|offer| offer.what == self.part) else {
            let message = "Choose one of the parts on the list. The set on the shelf may have been changed meanwhile.";
            return Err(Failure::problem("part", message));
        };
        let caller = scene.caller()?;
        let (staff, made_by) = (caller.staff, caller.name.clone());
        let chosen = Chosen { part: offer.what, leaves: offer.leaves, fits: offer.fits, made_by, at: scene.now };
        let place = (measurement.name, latest.turn);
        reading::insert_choice(scene.conn, scene.shop, (ticket.id, staff), place, &chosen).await?;
        let Chosen { part, leaves, .. } = chosen;
        scene.happened(ticket.id, Happening::PartChosen { label: measurement.label.to_owned(), part, leaves }).await
    }
}

/// A reading that was kept, as it was taken.
pub fn taking_of(reading: &Reading) -> Taking {
    Taking {
        taken: reading.taken.clone(),
        fitted: reading.fitted.clone(),
        value: reading.number,
        spread: reading.spread,
    }
}

pub(super) fn named(name: &str) -> Result<&'static Measurement, Failure> {
    measurement_named(name).ok_or(Failure::NotFound("such measurement"))
}
