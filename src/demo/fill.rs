//! Tells the stories to the program, at the times at which they happened.

use super::bench;
use super::classes::{BODY, CLASSES, YEAR};
use super::story::{Step, Story};
use super::{DESK, OWNER, PASSWORD, TECHNICIAN, own_rules, stories};
use crate::job::{Declaration, Sheet, fact_ids};
use crate::plan::steps::{step_named, steps};
use crate::service::{
    AddStaff, AnswerAtCounter, Caller, ChangeShop, ChangeTicket, ChangeWaits, CustomerAnswer, Failure, FirstStart, Key,
    MakeLink, MoveStage, Person, Service, SetUp, TableVersion, TakeIn, TickStep, UseClassTable, VehicleWords,
    WhichVehicle, Who, WhoseUnit, WriteClassTable, WriteNote,
};
use crate::ticket::{
    Act, Answer, ClassTable, Edit, FactChange, Override, Price, PriceLine, Problem, Purpose, Role, Source, Stage,
    WaitsFor, done,
};
use jiff::{SignedDuration, Timestamp, civil::Date, tz::TimeZone};
use serde_json::{Map, Value};
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

const SHOP: &str = "Millrace Unit Bench";
const PHONE: &str = "555-0142";
/// Its own words on customers' papers.
const TEARDOWN_TERMS: &str = "Taking it apart costs 180.00. We take that off the price if you go ahead.
A unit that nobody fetches within 60 days costs 5.00 a day.";
const NOT_COVERED: &str = "We answer for our work for one year on the road.
We do not answer for racing, or for more power than you told us.
We do not answer for parts you bring, or for damage from heat, wrong fluid or a dirty cooler.
Safety labels and their dates are yours to look after.";
/// The shop's zone. Any would do; this one has summer time.
const ZONE: &str = "America/Chicago";
/// Between two steps of a story.
const PACE: SignedDuration = SignedDuration::from_mins(95);

/// What the person who starts the demo wants to know.
pub struct Demo {
    /// The numbers of its tickets, oldest first.
    pub tickets: Vec<i64>,
    /// Customer links that still open: ticket, purpose, secret part of the address.
    pub links: Vec<(i64, Purpose, String)>,
}

/// Fills an empty database with the invented shop, as it stands at `today`.
///
/// # Errors
/// [`Failure`] when the database cannot be written, or when there is a shop already.
pub async fn fill(service: Service, today: Timestamp) -> Result<Demo, Failure> {
    let clock = Arc::new(AtomicI64::new(today.as_microsecond()));
    let told = Arc::clone(&clock);
    let service = service.with_clock(move || Timestamp::from_microsecond(told.load(Ordering::SeqCst)).unwrap_or(today));
    let mut teller = Teller { service, clock, today, staff: Vec::new(), tables: Vec::new(), links: Vec::new() };
    teller.open_shop().await?;
    teller.type_class_tables().await?;
    bench::stock(&teller.service, &teller.staff[2], teller.day(0)).await?;
    let mut numbers: Vec<Told> = Vec::new();
    for story in stories() {
        let told = teller.tell(&story, &numbers).await?;
        numbers.push(told);
    }
    own_rules::write(&teller.service, &teller.owner()).await?;
    Ok(Demo { tickets: numbers.iter().map(|told| told.number).collect(), links: teller.links })
}

/// Where a told story is to be found.
struct Told {
    number: i64,
    phone: &'static str,
}

struct Teller {
    service: Service,
    clock: Arc<AtomicI64>,
    today: Timestamp,
    staff: Vec<Caller>,
    tables: Vec<(&'static str, TableVersion)>,
    links: Vec<(i64, Purpose, String)>,
}

impl Teller {
    fn at(&self, moment: Timestamp) {
        self.clock.store(moment.as_microsecond(), Ordering::SeqCst);
    }

    /// Time passes, but never beyond today.
    fn later(&self) {
        self.pass(PACE);
    }

    fn minutes_later(&self) {
        self.pass(SignedDuration::from_mins(11));
    }

    fn pass(&self, time: SignedDuration) {
        let next = self.clock.load(Ordering::SeqCst) + i64::try_from(time.as_micros()).unwrap_or_default();
        self.clock.store(next.min(self.today.as_microsecond()), Ordering::SeqCst);
    }

    async fn open_shop(&mut self) -> Result<(), Failure> {
        let FirstStart::SetUpWith(pass) = self.service.first_start().await? else {
            return Err(refused("shop", "There is a shop in this database already; the demo needs an empty one."));
        };
        let set_up = SetUp {
            shop: SHOP.into(),
            phone: PHONE.into(),
            zone: ZONE.into(),
            name: OWNER.into(),
            password: PASSWORD.into(),
        };
        self.service.set_up(&pass.to_string(), Key::fresh(), set_up, "the office desk").await?;
        let owner = self.service.sign_in(pass.shop(), OWNER, PASSWORD, "the office desk").await?.caller;
        for (name, role) in [(DESK, Role::Desk), (TECHNICIAN, Role::Technician)] {
            let add = AddStaff { name: name.into(), role, password: PASSWORD.into() };
            self.service.add_staff(&owner, Key::fresh(), add).await?;
        }
        let words = ChangeShop {
            shop: SHOP.into(),
            phone: PHONE.into(),
            zone: ZONE.into(),
            teardown_terms: TEARDOWN_TERMS.into(),
            not_covered: NOT_COVERED.into(),
        };
        self.service.write(Who::Staff(owner.clone()), Key::fresh(), words).await?;
        self.staff.push(owner);
        for (name, device) in [(DESK, "the counter"), (TECHNICIAN, "the bench tablet")] {
            self.staff.push(self.service.sign_in(pass.shop(), name, PASSWORD, device).await?.caller);
        }
        Ok(())
    }

    /// The desk typed them from the book before the season.
    async fn type_class_tables(&mut self) -> Result<(), Failure> {
        self.at(self.today - SignedDuration::from_hours(24 * 200));
        for (class, asks) in CLASSES {
            let asks = object(asks)?.into_iter().collect();
            let table = ClassTable { year: YEAR, body: BODY.into(), class: class.into(), asks };
            let write = WriteClassTable { follows: None, table, offered: true };
            let written = self.service.write(Who::Staff(self.desk()), Key::fresh(), write).await?;
            self.tables.push((class, written));
        }
        Ok(())
    }

    fn owner(&self) -> Caller {
        self.staff[0].clone()
    }

    fn desk(&self) -> Caller {
        self.staff[1].clone()
    }

    /// The bench writes down what it saw and measured; the desk what it was told.
    fn who_learns(&self, source: Source) -> Caller {
        match source {
            Source::Looked | Source::Measured => self.staff[2].clone(),
            _ => self.desk(),
        }
    }

    async fn tell(&mut self, story: &Story, before: &[Told]) -> Result<Told, Failure> {
        let opened = self.today - SignedDuration::from_hours(24 * i64::from(story.days_ago));
        self.at(opened);
        let earlier = story.comeback_of.and_then(|place| before.get(place));
        let (customer, vehicle) = match earlier {
            Some(earlier) => self.known(earlier).await?,
            None => {
                let person =
                    Person { name: story.person.name.into(), phone: story.person.phone.into(), email: String::new() };
                let vehicle = VehicleWords { words: story.vehicle.into(), plate: story.plate.into() };
                (WhoseUnit::New(person), WhichVehicle::New(vehicle))
            }
        };
        let edit = Edit {
            wants: Some(story.wants.into()),
            symptom: Some(story.symptom.into()),
            brought: Some(story.brought.into()),
            ..Edit::default()
        };
        let take_in = TakeIn {
            customer,
            vehicle,
            edit,
            promised: story.promised_in.map(|days| self.day(days)),
            comeback_of: earlier.map(|earlier| earlier.number),
        };
        let number = self.service.write(Who::Staff(self.desk()), Key::fresh(), take_in).await?.ticket;
        for (place, step) in story.steps.iter().enumerate() {
            self.later();
            self.step(number, story, step).await.map_err(|failure| {
                let person = story.person.name;
                refused("story", &format!("the story of {person} breaks at step {}: {failure:?}", place + 1))
            })?;
        }
        Ok(Told { number, phone: story.person.phone })
    }

    async fn known(&self, earlier: &Told) -> Result<(WhoseUnit, WhichVehicle), Failure> {
        let found = self.service.returning(&self.desk(), earlier.phone).await?;
        let found = found.into_iter().next().ok_or(Failure::NotFound("customer of the earlier job"))?;
        Ok((WhoseUnit::Known(found.customer.id), WhichVehicle::Known(found.vehicle_id)))
    }

    fn day(&self, days: i16) -> Date {
        let moment = self.today + SignedDuration::from_hours(24 * i64::from(days));
        moment.to_zoned(TimeZone::get(ZONE).unwrap_or(TimeZone::UTC)).date()
    }

    async fn step(&mut self, ticket: i64, story: &Story, step: &Step) -> Result<(), Failure> {
        match *step {
            Step::Know(source, facts) => self.learn(ticket, source, object(facts)?).await,
            Step::Sheet(sheet, source, but) => {
                let told = |path: &str| TOLD.iter().any(|group| path.starts_with(group));
                let (told, seen): (Map<_, _>, Map<_, _>) =
                    filled(sheet, but)?.into_iter().partition(|(path, _)| told(path));
                if !told.is_empty() {
                    self.learn(ticket, Source::CustomerSaid, told).await?;
                }
                self.learn(ticket, source, seen).await
            }
            Step::Class(class) => self.take_class(ticket, class).await,
            Step::Price(lines) => {
                let lines = lines.iter().map(|(what, cents)| PriceLine { what: (*what).into(), cents: *cents });
                let edit = Edit { price: Some(Price { lines: lines.collect() }), ..Edit::default() };
                self.change(ticket, self.desk(), edit).await
            }
            Step::Sign(purpose) => self.answer(ticket, story, purpose, None).await,
            Step::Decline(purpose, why) => self.answer(ticket, story, purpose, Some(why)).await,
            Step::SignHere(purpose) => self.sign_here(ticket, story, purpose).await,
            Step::Send(purpose) => {
                let pass = self.link(ticket, purpose).await?;
                self.links.push((ticket, purpose, pass));
                self.waits(ticket, WaitsFor::Customer).await
            }
            Step::To(stage) => self.go(ticket, stage, "", Vec::new()).await,
            Step::Past(stage, gate, reason) => {
                self.go(ticket, stage, "", vec![Override { gate, reason: reason.into() }]).await
            }
            Step::Back(stage, reason) => self.go(ticket, stage, reason, Vec::new()).await,
            Step::Waits(waits) => self.waits(ticket, waits).await,
            Step::Through(code) => self.through(ticket, code).await,
            Step::Tick(code) => self.tick(ticket, code).await,
            Step::Measure(name, readings, fitted, instrument) => {
                self.minutes_later();
                let taken = (name, readings, fitted, instrument);
                bench::measure(&self.service, &self.staff[2], ticket, taken).await
            }
            Step::Fit(name) => bench::choose_best(&self.service, &self.staff[2], ticket, name).await,
            Step::Note(text) => {
                let note = WriteNote { ticket, text: text.into() };
                self.service.write(Who::Staff(self.staff[2].clone()), Key::fresh(), note).await.map(drop)
            }
        }
    }

    async fn through(&self, ticket: i64, last: &str) -> Result<(), Failure> {
        let page = self.service.ticket(&self.staff[2], ticket).await?;
        let contents = &page.revision.contents;
        for step in steps() {
            let needed = step.needed(contents.facts.job(), &contents.added).value() == Some(&true);
            if needed && done(&page.log, step.code).is_none() {
                self.tick(ticket, step.code).await?;
            }
            if step.code == last {
                return Ok(());
            }
        }
        Err(Failure::NotFound("such step"))
    }

    async fn tick(&self, ticket: i64, code: &str) -> Result<(), Failure> {
        self.minutes_later();
        let step = step_named(code).ok_or(Failure::NotFound("such step"))?;
        let typed = step.facts_read().map(|fact| (fact.declaration().path.to_owned(), harmless(fact.declaration())));
        let tick = TickStep {
            ticket,
            step: code.into(),
            act: Act::Done,
            over: None,
            initials: if step.hold_point { "JT".into() } else { String::new() },
            typed: typed.collect(),
            reason: String::new(),
            knowing: true,
        };
        self.service.write(Who::Staff(self.staff[2].clone()), Key::fresh(), tick).await.and_then(|ticked| {
            // A story that goes on after a failed hold point would show a job that no shop has.
            if ticked.failed { Err(refused("step", &format!("{code} did not pass in job {ticket}"))) } else { Ok(()) }
        })
    }

    async fn learn(&self, ticket: i64, source: Source, facts: Map<String, Value>) -> Result<(), Failure> {
        let facts = facts
            .into_iter()
            .map(|(path, value)| FactChange { path, value: Some(value).filter(|value| !value.is_null()), source })
            .collect();
        self.change(ticket, self.who_learns(source), Edit { facts, ..Edit::default() }).await
    }

    async fn change(&self, ticket: i64, caller: Caller, edit: Edit) -> Result<(), Failure> {
        let made_from = self.service.ticket(&caller, ticket).await?.ticket.revision;
        let change = ChangeTicket { ticket, made_from, edit };
        self.service.write(Who::Staff(caller), Key::fresh(), change).await.map(drop)
    }

    async fn take_class(&self, ticket: i64, class: &str) -> Result<(), Failure> {
        let table = self.tables.iter().find(|(name, _)| *name == class).map(|(_, table)| *table);
        let table = table.ok_or(Failure::NotFound("class table of the stories"))?;
        let made_from = self.service.ticket(&self.desk(), ticket).await?.ticket.revision;
        let take = UseClassTable { ticket, made_from, table };
        self.service.write(Who::Staff(self.desk()), Key::fresh(), take).await.map(drop)
    }

    async fn go(&self, ticket: i64, to: Stage, reason: &str, overrides: Vec<Override>) -> Result<(), Failure> {
        let owner = self.owner();
        let from = self.service.ticket(&owner, ticket).await?.ticket.stage;
        let order = MoveStage { ticket, from, to, reason: reason.into(), overrides };
        self.service.write(Who::Staff(owner), Key::fresh(), order).await.map(drop)
    }

    async fn waits(&self, ticket: i64, to: WaitsFor) -> Result<(), Failure> {
        let from = self.service.ticket(&self.desk(), ticket).await?.ticket.waits_for;
        let waits = ChangeWaits { ticket, from, to };
        self.service.write(Who::Staff(self.desk()), Key::fresh(), waits).await.map(drop)
    }

    async fn link(&self, ticket: i64, purpose: Purpose) -> Result<String, Failure> {
        let made = self.service.make_link(&self.desk(), Key::fresh(), MakeLink { ticket, purpose, days: None }).await?;
        made.pass.map(|pass| pass.to_string()).ok_or(Failure::NotFound("link"))
    }

    async fn answer(&self, ticket: i64, story: &Story, purpose: Purpose, why_not: Option<&str>) -> Result<(), Failure> {
        let pass = self.link(ticket, purpose).await?;
        self.later();
        let shown = self.service.open_link(&pass).await?.shown.ok_or(Failure::LinkClosed)?;
        let ticks = shown.paper.ticks.iter().map(|tick| tick.code.clone()).collect();
        let answer = answer(story, shown.digest, ticks, why_not);
        self.service.answer_link(&pass, Key::fresh(), answer).await.map(drop)
    }

    async fn sign_here(&self, ticket: i64, story: &Story, purpose: Purpose) -> Result<(), Failure> {
        let shown = self.service.counter_paper(&self.desk(), ticket, purpose).await?;
        let ticks = shown.paper.ticks.iter().map(|tick| tick.code.clone()).collect();
        let answer = answer(story, shown.digest, ticks, None);
        let order = AnswerAtCounter { ticket, purpose, answer };
        self.service.write(Who::Staff(self.desk()), Key::fresh(), order).await.map(drop)
    }
}

fn answer(story: &Story, shown: String, accepted: Vec<String>, why_not: Option<&str>) -> CustomerAnswer {
    CustomerAnswer {
        answer: if why_not.is_some() { Answer::Declined } else { Answer::Signed },
        shown,
        accepted,
        name: story.person.name.into(),
        why: why_not.unwrap_or_default().into(),
        address: "192.0.2.17".into(),
        agent: "the demo".into(),
    }
}

/// What only the customer can know, whatever else stands on the same sheet.
const TOLD: [&str; 4] = ["use.", "vehicle.", "engine.", "event."];

/// The facts of a sheet at their harmless values, but for these. Order and papers fill themselves, so they stay out.
fn filled(sheet: Sheet, but: &str) -> Result<Map<String, Value>, Failure> {
    let mut facts: Map<String, Value> = fact_ids()
        .map(|fact| fact.declaration())
        .filter(|fact| fact.sheet == sheet && !fact.path.starts_with("order.") && !fact.path.starts_with("paper."))
        .map(|fact| (fact.path.to_owned(), fact.plain.json()))
        .filter(|(_, value)| !value.is_null())
        .collect();
    for fluid in ["fluid.required", "fluid.used"] {
        facts.entry(fluid).and_modify(|kind| *kind = Value::from("Type 1"));
    }
    facts.extend(object(but)?);
    Ok(facts)
}

/// The harmless value of a fact, as somebody types it.
fn harmless(fact: &Declaration) -> String {
    match fact.plain.json() {
        Value::Bool(yes) => if yes { "yes" } else { "no" }.to_owned(),
        Value::String(word) => word,
        Value::Null => String::new(),
        other => other.to_string(),
    }
}

fn refused(field: &str, message: &str) -> Failure {
    Failure::Problems(vec![Problem::new(field, message)])
}

/// Reads a step's facts; they are ours, so an error here is a slip in a story.
fn object(text: &str) -> Result<Map<String, Value>, Failure> {
    serde_json::from_str(text).map_err(|error| refused("facts", &format!("a story is told wrong: {error}: {text}")))
}
