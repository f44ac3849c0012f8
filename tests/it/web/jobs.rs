//! Jobs to ask pages about, made as the counter makes them.

use super::client::{PASSWORD, Shop};
use endplay::job::fact_named;
use endplay::service::{
    Caller, ChangeTicket, CustomerAnswer, Key, MakeLink, MoveStage, Person, TakeIn, VehicleWords, WhichVehicle, Who,
    WhoseUnit,
};
use endplay::ticket::{Answer, Edit, FactChange, Purpose, Role, Source, Stage};
use serde_json::{Value, json};

/// A member of staff, as use cases know them.
pub async fn caller(shop: &Shop, role: Role) -> Caller {
    let name = match role {
        Role::Owner => "Olive Owner",
        Role::Desk => "Dale Desk",
        Role::Technician => "Terry Tech",
    };
    let id = shop.service.first_shop().await.expect("the database answers").expect("a shop").shop_id;
    shop.service.sign_in(id, name, PASSWORD, "Bench tablet").await.expect("signed in").caller
}

/// A unit over the counter, with nothing known of it.
pub async fn take_in(shop: &Shop) -> i64 {
    let form = TakeIn {
        customer: WhoseUnit::New(Person {
            name: "Rosa Fielding".into(),
            phone: "(555) 010-4477".into(),
            email: "rosa@example.org".into(),
        }),
        vehicle: WhichVehicle::New(VehicleWords { words: "Blue two-door coupe".into(), plate: "QX 4417".into() }),
        edit: Edit { symptom: Some("Slips into third when hot".into()), ..Edit::default() },
        promised: None,
        comeback_of: None,
    };
    let desk = caller(shop, Role::Desk).await;
    shop.service.write(Who::Staff(desk), Key::fresh(), form).await.expect("taken in").ticket
}

/// Another unit of the same vehicle, back again.
pub async fn comes_back(shop: &Shop, earlier: i64) -> i64 {
    let desk = caller(shop, Role::Desk).await;
    let page = shop.service.ticket(&desk, earlier).await.expect("the ticket");
    let form = TakeIn {
        customer: WhoseUnit::Known(page.customer.id),
        vehicle: WhichVehicle::Known(page.vehicle.id),
        edit: Edit::default(),
        promised: None,
        comeback_of: Some(earlier),
    };
    shop.service.write(Who::Staff(desk), Key::fresh(), form).await.expect("taken in").ticket
}

/// Writes facts down, as seen.
pub async fn write(shop: &Shop, role: Role, ticket: i64, facts: &[(&str, Value)]) {
    let who = caller(shop, role).await;
    let changes = facts.iter().map(|(path, value)| FactChange {
        path: (*path).to_owned(),
        value: Some(value.clone()),
        source: Source::Looked,
    });
    let edit = Edit { facts: changes.collect(), ..Edit::default() };
    let change = ChangeTicket { ticket, made_from: revision(shop, ticket).await, edit };
    shop.service.write(Who::Staff(who), Key::fresh(), change).await.expect("written down");
}

/// Bolt and hole of different thread systems: a stop of the rule book.
pub const MIXED_THREADS: [(&str, &str); 2] = [("threads.mount_bolt", "inch"), ("threads.mount_hole", "metric")];

/// A job with a stop.
pub async fn stopped(shop: &Shop) -> i64 {
    let ticket = take_in(shop).await;
    let facts = MIXED_THREADS.map(|(path, word)| (path, json!(word)));
    write(shop, Role::Technician, ticket, &facts).await;
    ticket
}

/// The number of the current revision.
pub async fn revision(shop: &Shop, ticket: i64) -> i32 {
    let desk = caller(shop, Role::Desk).await;
    shop.service.ticket(&desk, ticket).await.expect("the ticket").ticket.revision
}

/// What stands in a fact, with who wrote it down.
pub async fn fact(shop: &Shop, ticket: i64, path: &str) -> Option<(Value, String)> {
    let desk = caller(shop, Role::Desk).await;
    let page = shop.service.ticket(&desk, ticket).await.expect("the ticket");
    let fact = fact_named(path).expect("a fact of the job file");
    page.revision.contents.facts.entry(fact).map(|entry| (entry.value, entry.origin.by))
}

/// The customer signs this paper of the job as it stands.
pub async fn sign(shop: &Shop, ticket: i64, purpose: Purpose) {
    let desk = caller(shop, Role::Desk).await;
    let make = MakeLink { ticket, purpose, days: None };
    let pass = shop.service.make_link(&desk, Key::fresh(), make).await.expect("made").pass.expect("shown once");
    let pass = pass.to_string();
    let shown = shop.service.open_link(&pass).await.expect("the page").shown.expect("an open link");
    let answer = CustomerAnswer {
        answer: Answer::Signed,
        accepted: shown.paper.ticks.iter().map(|tick| tick.code.clone()).collect(),
        shown: shown.digest,
        name: "Rosa Fielding".into(),
        why: String::new(),
        address: "203.0.113.9".into(),
        agent: "Phone".into(),
    };
    shop.service.answer_link(&pass, Key::fresh(), answer).await.expect("signed");
}

/// Moves a job along this road.
pub async fn move_along(shop: &Shop, ticket: i64, road: &[Stage]) {
    let owner = caller(shop, Role::Owner).await;
    for pair in road.windows(2) {
        let step = MoveStage { ticket, from: pair[0], to: pair[1], reason: String::new(), overrides: Vec::new() };
        shop.service.write(Who::Staff(owner.clone()), Key::fresh(), step).await.expect("moved");
    }
}
