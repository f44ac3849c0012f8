//! Every use case for every role, and for somebody who is not signed in.

use crate::shop::{self, PASSWORD, TestShop, answer, fact};
use endplay::quantity::Cents;
use endplay::service::{
    AddStaff, AnswerAtCounter, BringBack, Caller, ChangeContact, ChangeLimit, ChangePassword, ChangePromise,
    ChangeShop, ChangeTicket, ChangeWaits, Command, DisableStaff, Failure, JudgeAgain, Key, MakeLink, MoveStage,
    RevokeLink, SetAside, TakeIn, VehicleWords, Who, WriteNote,
};
use endplay::ticket::{Action, Edit, Gate, Override, Price, Purpose, Role, Stage, WaitsFor, may};
use serde_json::json;
use uuid::Uuid;

/// Does the answer refuse for the role's sake? Every other refusal is one the owner would meet as well.
fn barred<T>(answer: Result<T, Failure>) -> Option<Action> {
    match answer {
        Err(Failure::NotAllowed(action)) => Some(action),
        _ => None,
    }
}

/// Sends a command as this person and checks that exactly those who may are let through.
async fn send<C: Command>(shop: &TestShop, caller: &Caller, actions: &[Action], command: C) {
    let answer = shop.service.write(Who::Staff(caller.clone()), Key::fresh(), command).await;
    check(caller, actions, C::NAME, barred(answer));
}

fn check(caller: &Caller, actions: &[Action], what: &str, barred: Option<Action>) {
    let missing = actions.iter().copied().find(|action| !may(caller.role, *action));
    assert_eq!(barred, missing, "{what} as {}", caller.role.label());
}

#[tokio::test]
async fn every_use_case_is_refused_for_every_role_that_may_not() {
    use Action as A;
    let shop = shop::open().await;
    for caller in [&shop.technician, &shop.desk, &shop.owner] {
        let ticket = shop.take_in().await;
        let s = &shop;
        let edit = |edit| ChangeTicket { ticket, made_from: 1, edit };
        let price = || Some(Price::single("Rebuild", Cents(100)));
        let to = |to| MoveStage { ticket, from: Stage::Intake, to, reason: "for a test".into(), overrides: vec![] };

        send(s, caller, &[A::TakeIn], shop::take_in_form()).await;
        let with_price = TakeIn { edit: Edit { price: price(), ..Edit::default() }, ..shop::take_in_form() };
        send(s, caller, &[A::TakeIn, A::ChangePrice], with_price).await;
        let promised = TakeIn { promised: Some("2026-04-01".parse().expect("a day")), ..shop::take_in_form() };
        send(s, caller, &[A::TakeIn, A::ChangePromise], promised).await;
        send(s, caller, &[A::ChangeFacts], edit(fact("use.raced", json!(true)))).await;
        send(s, caller, &[A::ChangeFacts, A::ChangePrice], edit(Edit { price: price(), ..Edit::default() })).await;
        send(s, caller, &[A::ChangeFacts, A::ChangeWords], edit(Edit { wants: Some("x".into()), ..Edit::default() }))
            .await;
        let vehicle = VehicleWords { words: "Coupe".into(), plate: String::new() };
        send(s, caller, &[A::ChangeContact], ChangeContact { ticket, person: shop::person(), vehicle }).await;
        send(s, caller, &[A::ChangePromise], ChangePromise { ticket, from: None, to: None }).await;
        send(s, caller, &[A::ChangeWaits], ChangeWaits { ticket, from: WaitsFor::Us, to: WaitsFor::Parts }).await;
        send(s, caller, &[A::WriteNote], WriteNote { ticket, text: "hello".into() }).await;
        let over = vec![Override { gate: Gate::IntakeAuthorised, reason: "for a test".into() }];
        send(s, caller, &[A::MoveStage, A::OverrideGate], MoveStage { overrides: over, ..to(Stage::Teardown) }).await;
        send(s, caller, &[A::ManageLinks], RevokeLink { ticket, link: Uuid::now_v7() }).await;
        let at_counter = AnswerAtCounter { ticket, purpose: Purpose::Intake, answer: answer("") };
        send(s, caller, &[A::CounterSign], at_counter).await;
        send(s, caller, &[A::MoveStage, A::GiveUp], to(Stage::Declined)).await;
        send(s, caller, &[A::ManageStaff], DisableStaff { staff: Uuid::now_v7() }).await;
        let change = ChangeShop {
            shop: "Harbor Lane".into(),
            phone: "555-010-2200".into(),
            zone: "UTC".into(),
            teardown_terms: String::new(),
            not_covered: String::new(),
        };
        send(s, caller, &[A::ManageShop], change).await;
        let (limit, reason) = ("bell_runout".into(), "for a test".into());
        send(s, caller, &[A::ChangeLimits], ChangeLimit { limit, made_from: 0, number: Some(0.008), reason }).await;
        send(s, caller, &[A::ChangeFacts], JudgeAgain { ticket }).await;
        let raced = shop.take_in().await;
        shop.change(raced, fact("use.raced", json!(true))).await;
        let grave = SetAside { ticket: raced, made_from: 2, code: "TST-02".into(), reason: "for a test".into() };
        send(s, caller, &[A::SetAside, A::SetAsideGrave], grave).await;
        send(s, caller, &[A::SetAside], BringBack { ticket: raced, code: "TST-02".into() }).await;
        check(caller, &[A::ReadTickets], "fired", barred(s.service.fired(caller).await));
        check(caller, &[A::ReadTickets], "limits", barred(s.service.limits(caller, None).await));

        let make = MakeLink { ticket, purpose: Purpose::Intake, days: None };
        check(caller, &[A::ManageLinks], "make_link", barred(s.service.make_link(caller, Key::fresh(), make).await));
        check(caller, &[A::ManageLinks], "links", barred(s.service.links(caller, ticket).await));
        check(
            caller,
            &[A::CounterSign],
            "counter_paper",
            barred(s.service.counter_paper(caller, ticket, Purpose::Build).await),
        );
        let add = AddStaff { name: format!("Helper {}", caller.name), role: Role::Desk, password: PASSWORD.into() };
        check(caller, &[A::ManageStaff], "add_staff", barred(s.service.add_staff(caller, Key::fresh(), add).await));
        check(caller, &[A::ManageStaff], "staff", barred(s.service.staff(caller).await));
        let change = ChangePassword { present: "x".into(), new: "y".into() };
        check(
            caller,
            &[A::OwnAccount],
            "change_password",
            barred(s.service.change_password(caller, Key::fresh(), change).await),
        );
        check(caller, &[A::ReadTickets], "board", barred(s.service.board(caller, None, None).await));
        check(caller, &[A::ReadTickets], "ticket", barred(s.service.ticket(caller, ticket).await));
        check(caller, &[A::ReadTickets], "compare", barred(s.service.compare(caller, ticket, 1, 1).await));
        check(caller, &[A::ReadTickets], "search", barred(s.service.search(caller, "rosa").await));
        check(caller, &[A::ReadTickets], "receipt", barred(s.service.receipt(caller, "2222-2222-2").await));
        check(caller, &[A::TakeIn], "returning", barred(s.service.returning(caller, "rosa").await));
    }
}

#[tokio::test]
async fn what_somebody_was_refused_is_kept_with_who_and_where() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let tech = &shop.technician;
    shop.service.staff(tech).await.expect_err("the owner's list");
    shop.service.links(tech, ticket).await.expect_err("the desk's work");
    let price = Edit { price: Some(Price::single("Rebuild", Cents(100))), ..Edit::default() };
    shop.change_from(tech, ticket, 1, price).await.expect_err("the desk's work");
    let kept: Vec<(String, String, String)> = sqlx::query_as(
        "SELECT by_name, device, happened->>'what' FROM event WHERE happened->>'kind' = 'denied' ORDER BY id",
    )
    .fetch_all(&shop.database.owner_pool)
    .await
    .expect("the events");
    let row = |what: &str| ("Tomas Reed".to_owned(), "Bench tablet".to_owned(), what.to_owned());
    assert_eq!(kept, [row("manage staff"), row("make or revoke customer links"), row("change the price")]);
}

#[tokio::test]
async fn nobody_at_the_door_does_the_staffs_work() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let who = || Who::AtTheDoor { shop: shop.owner.shop, name: "Olive Marsh".into(), device: "Somewhere".into() };
    let note = shop.service.write(who(), Key::fresh(), WriteNote { ticket, text: "hello".into() }).await;
    assert!(matches!(note, Err(Failure::SignedOut)), "{note:?}");
    let disable = shop.service.write(who(), Key::fresh(), DisableStaff { staff: shop.owner.staff }).await;
    assert!(matches!(disable, Err(Failure::SignedOut)), "{disable:?}");
}

#[tokio::test]
async fn a_technician_sees_no_links_on_the_ticket() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.link(ticket, Purpose::Intake).await;
    assert_eq!(shop.service.ticket(&shop.desk, ticket).await.expect("the ticket").links.len(), 1);
    assert!(shop.service.ticket(&shop.technician, ticket).await.expect("the ticket").links.is_empty());
}
