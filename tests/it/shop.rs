//! An invented shop with an owner, a desk and a technician, and a rule book of three rules.

use crate::support::{self, TestDatabase};
use endplay::job::{Job, fact_named};
use endplay::postgres::ADMIN;
use endplay::service::{
    AddStaff, Book, Caller, ChangeTicket, CustomerAnswer, Failure, FirstStart, Key, MakeLink, Person, Revised, Service,
    SetUp, TakeIn, VehicleWords, WhichVehicle, Who, WhoseUnit,
};
use endplay::store;
use endplay::ticket::{
    Answer, Edit, FactChange, Found, Judgement, Purpose, Role, Severity, Silenced, Source, Undecided,
};
use jiff::{SignedDuration, Timestamp};
use serde_json::{Value, json};
use sqlx::PgPool;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

pub const PASSWORD: &str = "seven herons over the weir";

/// A shop that is set up, with one person of each role signed in.
pub struct TestShop {
    pub database: TestDatabase,
    pub service: Service,
    pub owner: Caller,
    pub desk: Caller,
    pub technician: Caller,
    /// As the role that may see what every connection does.
    pub admin: PgPool,
    clock: Arc<AtomicI64>,
}

/// The service on a fresh database, before anybody set it up, and its clock in microseconds.
pub async fn bare() -> (TestDatabase, Service, Arc<AtomicI64>) {
    let database = support::database().await;
    let start: Timestamp = "2026-03-02T15:00:00Z".parse().expect("a time");
    let clock = Arc::new(AtomicI64::new(start.as_microsecond()));
    let service = Service::new(database.service_pool.clone(), three_rules).with_clock({
        let clock = clock.clone();
        move || Timestamp::from_microsecond(clock.load(Ordering::Relaxed)).expect("a time")
    });
    (database, service, clock)
}

pub fn set_up_form() -> SetUp {
    SetUp {
        shop: "Harbor Lane Gearbox".into(),
        phone: "555-010-2200".into(),
        zone: "America/Denver".into(),
        name: "Olive Marsh".into(),
        password: PASSWORD.into(),
    }
}

/// A whole shop.
pub async fn open() -> TestShop {
    let (database, service, clock) = bare().await;
    let FirstStart::SetUpWith(pass) = service.first_start().await.expect("a first start") else {
        panic!("nobody has set this shop up")
    };
    service.set_up(&pass.to_string(), Key::fresh(), set_up_form(), "Desk computer").await.expect("set up");
    let shop = pass.shop();
    let owner = service.sign_in(shop, "Olive Marsh", PASSWORD, "Desk computer").await.expect("signed in").caller;
    for (name, role) in [("Dana Frost", Role::Desk), ("Tomas Reed", Role::Technician)] {
        let add = AddStaff { name: name.into(), role, password: PASSWORD.into() };
        service.add_staff(&owner, Key::fresh(), add).await.expect("added");
    }
    let desk = service.sign_in(shop, "dana  frost", PASSWORD, "Desk computer").await.expect("signed in").caller;
    let technician = service.sign_in(shop, "Tomas Reed", PASSWORD, "Bench tablet").await.expect("signed in").caller;
    let admin = store::pool::sized(1).connect_lazy_with(database.owner.clone().username(ADMIN));
    TestShop { database, service, owner, desk, technician, admin, clock }
}

impl TestShop {
    /// Lets time pass.
    pub fn pass_time(&self, by: SignedDuration) {
        self.clock.fetch_add(i64::try_from(by.as_micros()).expect("a short while"), Ordering::Relaxed);
    }

    pub fn now(&self) -> Timestamp {
        Timestamp::from_microsecond(self.clock.load(Ordering::Relaxed)).expect("a time")
    }

    /// Waits until the database says so.
    pub async fn until(&self, question: &'static str) {
        for _ in 0..400 {
            let yes = sqlx::query_scalar::<_, bool>(question).fetch_one(&self.admin).await;
            if yes.expect("an answer") {
                return;
            }
            tokio::time::sleep(std::time::Duration::from_millis(10)).await;
        }
        panic!("it never came to this: {question}");
    }

    /// A ticket for a new customer.
    pub async fn take_in(&self) -> i64 {
        let taken = self.service.write(Who::Staff(self.desk.clone()), Key::fresh(), take_in_form()).await;
        taken.expect("taken in").ticket
    }

    pub async fn revision(&self, ticket: i64) -> i32 {
        self.service.ticket(&self.desk, ticket).await.expect("the ticket").ticket.revision
    }

    /// Changes a ticket from what stands now.
    pub async fn change(&self, ticket: i64, edit: Edit) -> Revised {
        let made_from = self.revision(ticket).await;
        self.change_from(&self.desk, ticket, made_from, edit).await.expect("changed")
    }

    pub async fn change_from(
        &self,
        caller: &Caller,
        ticket: i64,
        made_from: i32,
        edit: Edit,
    ) -> Result<Revised, Failure> {
        let change = ChangeTicket { ticket, made_from, edit };
        self.service.write(Who::Staff(caller.clone()), Key::fresh(), change).await
    }

    /// A link's address part.
    pub async fn link(&self, ticket: i64, purpose: Purpose) -> String {
        let make = MakeLink { ticket, purpose, days: None };
        let made = self.service.make_link(&self.desk, Key::fresh(), make).await.expect("made");
        made.pass.expect("a fresh link shows its token").to_string()
    }

    /// Signs whatever the link shows, with all its ticks.
    pub async fn sign(&self, pass: &str) -> String {
        let shown = self.service.open_link(pass).await.expect("the page").shown.expect("an open link");
        let answer = CustomerAnswer {
            accepted: shown.paper.ticks.iter().map(|tick| tick.code.clone()).collect(),
            ..answer(&shown.digest)
        };
        self.service.answer_link(pass, Key::fresh(), answer).await.expect("signed").reference
    }

    /// Makes a link of this purpose and signs it.
    pub async fn signed(&self, ticket: i64, purpose: Purpose) -> String {
        let pass = self.link(ticket, purpose).await;
        self.sign(&pass).await
    }
}

/// A signature without ticks.
pub fn answer(shown: &str) -> CustomerAnswer {
    CustomerAnswer {
        answer: Answer::Signed,
        shown: shown.to_owned(),
        accepted: Vec::new(),
        name: "Rosa Fielding".into(),
        why: String::new(),
        address: "203.0.113.9".into(),
        agent: "Test browser 1.0".into(),
    }
}

pub fn take_in_form() -> TakeIn {
    TakeIn {
        customer: WhoseUnit::New(person()),
        vehicle: WhichVehicle::New(VehicleWords { words: "Blue two-door coupe".into(), plate: "QX 4417".into() }),
        edit: Edit {
            wants: Some("Firm shifts for the street".into()),
            symptom: Some("Slips into third when hot".into()),
            ..Edit::default()
        },
        promised: None,
        comeback_of: None,
    }
}

pub fn person() -> Person {
    Person { name: "Rosa Fielding".into(), phone: "(555) 010-4477".into(), email: "rosa@example.org".into() }
}

/// An edit of one fact.
pub fn fact(path: &str, value: Value) -> Edit {
    let change = FactChange { path: path.into(), value: Some(value), source: Source::Looked };
    Edit { facts: vec![change], ..Edit::default() }
}

/// Six ring holes: a stop. Raced: a caution to accept. Axle ratio unknown: cannot decide.
pub fn three_rules(job: &Job, _: &Book, silenced: &[Silenced]) -> Judgement {
    let value = |path: &str| job.slot(fact_named(path).expect("a fact of the job file")).json();
    let found = |code: &str, severity, title: &str, customer: &str, customer_accepts, fact: &str| Found {
        code: code.into(),
        severity,
        title: title.into(),
        shop: format!("{title}."),
        customer: customer.into(),
        fix: "See the bench book.".into(),
        basis: "for tests".into(),
        customer_accepts,
        facts: vec![fact.into()],
    };
    let mut judgement = Judgement::default();
    if value("bell.ring_holes") == Some(json!(6)) {
        let told = "The bell ring has too few bolt holes, so we fit another one.";
        judgement.findings.push(found("TST-01", Severity::Stop, "Ring has six holes", told, false, "bell.ring_holes"));
    }
    if value("use.raced") == Some(json!(true)) {
        let told = "Racing wears the unit faster than street use.";
        judgement.findings.push(found("TST-02", Severity::Caution, "Raced", told, true, "use.raced"));
    }
    if value("vehicle.axle_ratio").is_none() {
        judgement.undecided.push(Undecided {
            code: "TST-03".into(),
            due: "spec".into(),
            needs: vec!["vehicle.axle_ratio".into()],
            own_title: String::new(),
        });
    }
    judgement.silencing(silenced)
}
