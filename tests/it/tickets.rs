//! Taking in, finding again, changing together, reading the history.

use crate::shop::{self, fact};
use endplay::quantity::Cents;
use endplay::service::{
    ChangeContact, ChangePromise, ChangeWaits, Failure, Key, MoveStage, Person, TakeIn, VehicleWords, WhichVehicle,
    Who, WhoseUnit, WriteNote,
};
use endplay::ticket::{Edit, Happening, Price, Source, Stage, WaitsFor};
use serde_json::json;

fn problem_fields(failure: &Failure) -> Vec<&str> {
    match failure {
        Failure::Problems(problems) => problems.iter().map(|problem| problem.field.as_str()).collect(),
        other => panic!("problems were expected, not {other:?}"),
    }
}

#[tokio::test]
async fn a_unit_taken_in_is_on_the_board_with_its_first_version() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    assert_eq!(ticket, 1001);
    let page = shop.service.ticket(&shop.technician, ticket).await.expect("the ticket");
    assert_eq!((page.ticket.stage, page.ticket.waits_for, page.revision.number), (Stage::Intake, WaitsFor::Us, 1));
    assert_eq!(page.customer.name, "Rosa Fielding");
    assert_eq!(page.revision.made_by, "Dana Frost");
    assert_eq!(page.history[0].by_name, "Dana Frost");
    assert_eq!(page.history[0].device, "Desk computer");
    let board = shop.service.board(&shop.technician, None, None).await.expect("the board");
    assert_eq!((board[0].number, board[0].plate.as_str(), board[0].open_questions), (ticket, "QX 4417", 0));
}

#[tokio::test]
async fn everything_wrong_with_an_intake_is_said_at_once_and_no_number_is_used_up() {
    let shop = shop::open().await;
    let bad = TakeIn {
        customer: WhoseUnit::New(Person { name: " ".into(), phone: "12".into(), email: "nowhere".into() }),
        vehicle: WhichVehicle::New(VehicleWords { words: String::new(), plate: "X".repeat(30) }),
        edit: Edit { wants: Some("x\u{0}".into()), ..fact("vehicle.tire_diameter_in", json!(0)) },
        promised: None,
        comeback_of: Some(4),
    };
    let refused = shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), bad).await.expect_err("refused");
    assert_eq!(
        problem_fields(&refused),
        ["name", "phone", "email", "vehicle", "plate", "comeback_of", "vehicle.tire_diameter_in", "wants"]
    );
    assert_eq!(shop.take_in().await, 1001);
}

#[tokio::test]
async fn a_returning_customer_is_found_and_a_comeback_names_its_earlier_job() {
    let shop = shop::open().await;
    let first = shop.take_in().await;
    let found = shop.service.returning(&shop.desk, "4477").await.expect("a search");
    assert_eq!((found.len(), found[0].tickets.as_slice()), (1, [first].as_slice()));
    let by_name = shop.service.returning(&shop.desk, "field ros").await.expect("a search");
    assert_eq!(by_name, found);

    let again = TakeIn {
        customer: WhoseUnit::Known(found[0].customer.id),
        vehicle: WhichVehicle::Known(found[0].vehicle_id),
        comeback_of: Some(first),
        ..shop::take_in_form()
    };
    let who = || Who::Staff(shop.desk.clone());
    let second = shop.service.write(who(), Key::fresh(), again.clone()).await.expect("taken in").ticket;
    let page = shop.service.ticket(&shop.desk, second).await.expect("the ticket");
    assert_eq!((page.comeback_of, page.same_vehicle.as_slice()), (Some(first), [first].as_slice()));
    assert_eq!(shop.service.returning(&shop.desk, "4477").await.expect("a search")[0].tickets, [second, first]);

    let other_car = TakeIn { vehicle: shop::take_in_form().vehicle, ..again };
    let refused = shop.service.write(who(), Key::fresh(), other_car).await.expect_err("another vehicle");
    assert_eq!(problem_fields(&refused), ["comeback_of"]);
}

#[tokio::test]
async fn a_job_is_found_by_number_name_phone_and_plate_and_not_by_half_of_something_else() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    for text in ["1001", "#1001", "fielding", "ROSA f", "555-010-4477", "4477", "qx44", "QX-4417"] {
        let found = shop.service.search(&shop.technician, text).await.expect("a search");
        assert_eq!(found.iter().map(|line| line.number).collect::<Vec<_>>(), [ticket], "{text}");
    }
    for text in ["1002", "rosalind", "rosa smith", "9999", "XQ4417", "", "%", "_", "'; drop table ticket"] {
        assert!(shop.service.search(&shop.technician, text).await.expect("a search").is_empty(), "{text}");
    }
}

#[tokio::test]
async fn corrected_particulars_are_found_and_the_old_ones_no_more() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let change = ChangeContact {
        ticket,
        person: Person { name: "Rosa Lindgren".into(), phone: "555 010 9876".into(), email: String::new() },
        vehicle: VehicleWords { words: "Blue two-door coupe".into(), plate: "QX 4417".into() },
    };
    shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), change).await.expect("changed");
    assert!(shop.service.search(&shop.desk, "fielding").await.expect("a search").is_empty());
    assert_eq!(shop.service.search(&shop.desk, "9876").await.expect("a search").len(), 1);
    let page = shop.service.ticket(&shop.desk, ticket).await.expect("the ticket");
    let Happening::ContactChanged { changes } = &page.history[0].happened else { panic!("{:?}", page.history[0]) };
    let fields: Vec<_> = changes.iter().map(|change| (change.field.as_str(), change.from.as_str())).collect();
    assert_eq!(fields, [("name", "Rosa Fielding"), ("phone", "(555) 010-4477"), ("email", "rosa@example.org")]);
}

#[tokio::test]
async fn two_people_who_change_different_facts_from_the_same_form_both_get_theirs() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let desk = shop.change_from(&shop.desk, ticket, 1, fact("bell.ring_holes", json!(7))).await.expect("changed");
    let bench = shop.change_from(&shop.technician, ticket, 1, fact("use.raced", json!(true))).await.expect("merged");
    assert_eq!((desk.revision, bench.revision), (2, 3));
    let page = shop.service.ticket(&shop.desk, ticket).await.expect("the ticket");
    let facts = serde_json::to_value(&page.revision.contents.facts).expect("facts");
    assert_eq!(
        (&facts["bell.ring_holes"]["value"], &facts["bell.ring_holes"]["by"]),
        (&json!(7), &json!("Dana Frost"))
    );
    assert_eq!((&facts["use.raced"]["value"], &facts["use.raced"]["by"]), (&json!(true), &json!("Tomas Reed")));
}

#[tokio::test]
async fn two_people_who_change_the_same_fact_see_both_values_and_nothing_is_overwritten() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.change_from(&shop.desk, ticket, 1, fact("bell.ring_holes", json!(7))).await.expect("changed");
    let edit = Edit { wants: Some("Soft shifts".into()), ..fact("bell.ring_holes", json!(8)) };
    let clash = shop.change_from(&shop.technician, ticket, 1, edit.clone()).await.expect_err("a clash");
    let Failure::Conflict(clashes) = clash else { panic!("{clash:?}") };
    assert_eq!(clashes.len(), 1);
    assert_eq!((clashes[0].yours.as_str(), clashes[0].theirs.as_str()), ("8", "7"));
    assert_eq!((clashes[0].by.as_deref(), clashes[0].at), (Some("Dana Frost"), Some(shop.now())));
    let page = shop.service.ticket(&shop.desk, ticket).await.expect("the ticket");
    assert_eq!(page.ticket.revision, 2, "nothing of it was written, not even what nobody disputes");
    // Having seen both, the technician insists.
    let settled = shop.change_from(&shop.technician, ticket, 2, edit).await.expect("settled");
    assert_eq!((settled.revision, settled.changes.len()), (3, 2));
}

#[tokio::test]
async fn edits_at_the_same_moment_are_all_kept() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let paths = ["bell.ring_holes", "use.raced", "use.road_driven", "bell.cut_planned", "paper.customer_parts"];
    let edits = paths.map(|path| {
        let value = if path == "bell.ring_holes" { json!(7) } else { json!(true) };
        shop.change_from(&shop.technician, ticket, 1, fact(path, value))
    });
    let [a, b, c, d, e] = edits;
    let done = tokio::join!(a, b, c, d, e);
    let mut revisions = [done.0, done.1, done.2, done.3, done.4].map(|one| one.expect("merged").revision);
    revisions.sort_unstable();
    assert_eq!(revisions, [2, 3, 4, 5, 6]);
    let page = shop.service.ticket(&shop.desk, ticket).await.expect("the ticket");
    let written = page.revision.contents.facts.known().filter(|(.., origin)| origin.source != Source::Papers);
    assert_eq!(written.count(), paths.len());
}

#[tokio::test]
async fn sending_a_form_unchanged_makes_no_version() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.change(ticket, fact("bell.ring_holes", json!(7))).await;
    let same = shop.change(ticket, fact("bell.ring_holes", json!(7.0))).await;
    assert_eq!((same.revision, same.changes.len()), (2, 0));
    let refused = shop.change_from(&shop.desk, ticket, 9, fact("bell.ring_holes", json!(8))).await;
    assert!(matches!(refused, Err(Failure::NotFound(_))), "a form made from a version that never was: {refused:?}");
}

#[tokio::test]
async fn the_history_can_be_read_and_two_versions_compared() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.change(ticket, fact("bell.ring_holes", json!(6))).await;
    let priced = Edit { price: Some(Price::single("Rebuild", Cents(185_000))), ..fact("bell.ring_holes", json!(8)) };
    shop.change(ticket, priced).await;
    let compared = shop.service.compare(&shop.technician, ticket, 2, 3).await.expect("two versions");
    let told: Vec<_> = compared.changes.iter().map(|c| (c.field.as_str(), c.from.as_str(), c.to.as_str())).collect();
    assert_eq!(told, [("bell.ring_holes", "6", "8"), ("price", "not named yet", "1850.00")]);
    assert_eq!((compared.from.judgement.findings.len(), compared.to.judgement.findings.len()), (1, 0));
    let page = shop.service.ticket(&shop.desk, ticket).await.expect("the ticket");
    assert_eq!(page.revisions.iter().map(|heading| heading.number).collect::<Vec<_>>(), [3, 2, 1]);
    let sentences: Vec<_> = page.history.iter().map(|event| event.happened.sentence()).collect();
    assert_eq!(sentences, ["Version 3: 2 changes", "Version 2: 1 change", "Taken in"]);
}

#[tokio::test]
async fn the_board_counts_what_is_open_and_narrows_by_stage_and_by_who_is_waited_for() {
    let shop = shop::open().await;
    let (one, other) = (shop.take_in().await, shop.take_in().await);
    shop.change(one, fact("bell.ring_holes", json!(6))).await;
    shop.change(one, fact("use.raced", json!(true))).await;
    let who = || Who::Staff(shop.desk.clone());
    let waits = ChangeWaits { ticket: one, from: WaitsFor::Us, to: WaitsFor::Machinist };
    shop.service.write(who(), Key::fresh(), waits).await.expect("noted");
    let promise = ChangePromise { ticket: other, from: None, to: Some("2026-04-01".parse().expect("a day")) };
    shop.service.write(who(), Key::fresh(), promise).await.expect("promised");
    let to_spec =
        MoveStage { ticket: one, from: Stage::Intake, to: Stage::Spec, reason: String::new(), overrides: vec![] };
    shop.service.write(who(), Key::fresh(), to_spec).await.expect("moved");

    let board = shop.service.board(&shop.desk, None, None).await.expect("the board");
    assert_eq!(board.iter().map(|line| line.number).collect::<Vec<_>>(), [other, one], "what is promised comes first");
    assert_eq!((board[1].open_stops, board[1].open_cautions, board[1].open_questions), (1, 1, 1));
    assert_eq!(board[0].open_questions, 0, "the question is due from the spec on");
    let narrowed = |stage, waits| shop.service.board(&shop.desk, stage, waits);
    assert_eq!(narrowed(Some(Stage::Spec), None).await.expect("the board")[0].number, one);
    assert_eq!(narrowed(None, Some(WaitsFor::Machinist)).await.expect("the board")[0].number, one);
    assert!(narrowed(Some(Stage::Intake), Some(WaitsFor::Machinist)).await.expect("the board").is_empty());
}

#[tokio::test]
async fn a_promise_somebody_else_changed_meanwhile_is_shown_not_overwritten() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let day = |text: &str| Some(text.parse().expect("a day"));
    let promise = |from, to| {
        let change = ChangePromise { ticket, from, to };
        shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), change)
    };
    promise(None, day("2026-04-01")).await.expect("promised");
    let clash = promise(None, day("2026-05-01")).await.expect_err("a clash");
    assert!(matches!(clash, Failure::Conflict(clashes) if clashes[0].theirs == "2026-04-01"));
    promise(day("2026-04-01"), None).await.expect("taken back");
}

#[tokio::test]
async fn where_a_fact_comes_from_is_part_of_it() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let mut told = fact("vehicle.axle_ratio", json!(3.73));
    told.facts[0].source = Source::CustomerSaid;
    shop.change(ticket, told.clone()).await;
    told.facts[0].source = Source::Measured;
    let measured = shop.change(ticket, told).await;
    assert_eq!(measured.changes[0].from, "3.73 (customer said)");
}

#[tokio::test]
async fn another_shops_ticket_is_not_there() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let mut stranger = shop.owner.clone();
    stranger.shop = uuid::Uuid::now_v7();
    assert!(matches!(shop.service.ticket(&stranger, ticket).await, Err(Failure::NotFound(_))));
    let note = WriteNote { ticket, text: "hello".into() };
    let refused = shop.service.write(Who::Staff(stranger.clone()), Key::fresh(), note).await;
    assert!(matches!(refused, Err(Failure::NotFound(_))), "{refused:?}");
    assert!(shop.service.board(&stranger, None, None).await.expect("an empty board").is_empty());
    assert!(shop.service.search(&stranger, "fielding").await.expect("nothing").is_empty());
}
