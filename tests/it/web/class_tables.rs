//! Class tables: typed once from the rulebook, taken on a ticket as one edit, told apart by version and age.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, fact, revision, take_in, write};
use axum::http::StatusCode;
use endplay::service::{Failure, Key, TableVersion, UseClassTable, Who, WriteClassTable};
use endplay::ticket::{ClassTable, Role, Source, Stage};
use serde_json::{Value, json};

const TYPED: [(&str, &str); 7] = [
    ("year", "2027"),
    ("body", "Tin Bridge Timing"),
    ("class", "A"),
    ("f.class_table.shield_s", "10.99"),
    ("f.class_table.shield_always", "no"),
    ("f.class_table.stick_s", ""),
    ("offered", "yes"),
];

/// A table of this year and class, typed by the desk.
async fn typed(shop: &Shop, year: i16, class: &str, asks: &[(&str, Value)]) -> TableVersion {
    let asks = asks.iter().map(|(path, value)| (format!("class_table.{path}"), value.clone())).collect();
    let table = ClassTable { year, body: "Tin Bridge Timing".into(), class: class.into(), asks };
    let write = WriteClassTable { follows: None, table, offered: true };
    let desk = Who::Staff(caller(shop, Role::Desk).await);
    shop.service.write(desk, Key::fresh(), write).await.expect("typed")
}

/// The same table with something else in it.
async fn typed_anew(shop: &Shop, follows: TableVersion, offered: bool, asks: &[(&str, Value)]) -> TableVersion {
    let asks = asks.iter().map(|(path, value)| (format!("class_table.{path}"), value.clone())).collect();
    let table = ClassTable { asks, ..ClassTable::default() };
    let write = WriteClassTable { follows: Some(follows), table, offered };
    let owner = Who::Staff(caller(shop, Role::Owner).await);
    shop.service.write(owner, Key::fresh(), write).await.expect("typed anew")
}

async fn raced(shop: &Shop, event: &str) -> i64 {
    let ticket = take_in(shop).await;
    write(shop, Role::Desk, ticket, &[("use.raced", json!(true)), ("event.date", json!(event))]).await;
    ticket
}

/// Presses the button of the first table on the choice page.
async fn take(client: &Client, page: &Page, ticket: i64) -> Page {
    let base = page.value("base");
    let (version, table) = (page.value("version"), page.attributes("button[name=table]", "value"));
    let fields = [("base", base.as_str()), ("version", &version), ("table", &table[0]), ("from", "")];
    client.post(&format!("/tickets/{ticket}/class-table"), &fields).await
}

#[tokio::test]
async fn the_desk_types_a_table_and_a_field_left_empty_stays_open() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let page = desk.follow(desk.post("/class-tables", &TYPED).await).await;
    assert_eq!(page.texts("h1"), ["2027, Tin Bridge Timing, class A"]);
    assert_eq!(page.texts(".facts-known dt"), ["Shield always asked for", "Shield asked for at this time or quicker"]);
    assert_eq!(page.texts(".facts-known dd"), ["no", "10.99 s"], "nothing is made up for what was left empty");
    page.assert_says("Left open, so not known on jobs either: Shield asked for at this speed or faster");
    let bench = shop.client(Role::Technician).await;
    let list = bench.get("/class-tables").await;
    list.assert_says("Version 1, typed by Dale Desk");
    list.assert_says("2 answers, 8 left open");
    assert!(!list.attributes("a", "href").contains(&"/class-tables/new".to_owned()), "the bench does not type tables");
}

#[tokio::test]
async fn everything_wrong_with_a_table_is_named_and_stays_as_typed() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let before = shop.fingerprint().await;
    let wrong = [("year", "soon"), ("body", " "), ("class", "A"), ("f.class_table.shield_s", "-1"), ("offered", "yes")];
    let page = desk.post("/class-tables", &wrong).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.attributes("#summary a", "href"), ["#year", "#body", "#f.class_table.shield_s"]);
    assert_eq!((page.value("year"), page.value("f.class_table.shield_s")), ("soon".to_owned(), "-1".to_owned()));
    for year in ["27", "1949", "20270"] {
        let short = [("year", year), ("body", "Tin Bridge Timing"), ("class", "A"), ("f.class_table.shield_s", "9")];
        let page = desk.post("/class-tables", &short).await;
        assert_eq!(page.attributes("#summary a", "href"), ["#year"], "{year}");
        page.assert_says("it must be a year in four figures, from 1950 to 2099, such as 2027.");
        assert_eq!(page.value("year"), year, "what was typed stays");
    }
    let nothing = [("year", "2027"), ("body", "Tin Bridge Timing"), ("class", "A"), ("offered", "yes")];
    let page = desk.post("/class-tables", &nothing).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#asks"]);
    let nought = [nothing[0], nothing[1], nothing[2], ("f.class_table.shield_s", "0"), nothing[3]];
    let page = desk.post("/class-tables", &nought).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#f.class_table.shield_s"], "a nought is no blank");
    assert_eq!(shop.fingerprint().await, before);
}

#[tokio::test]
async fn one_class_of_one_year_has_one_table() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    assert_eq!(desk.post("/class-tables", &TYPED).await.status, StatusCode::SEE_OTHER);
    let mut again = TYPED;
    again[1] = ("body", "tin  bridge TIMING");
    let page = desk.post("/class-tables", &again).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#class"]);
    page.assert_says("There is already a table for this class of this year.");
    again[0] = ("year", "2028");
    assert_eq!(desk.post("/class-tables", &again).await.status, StatusCode::SEE_OTHER, "another year is another table");
}

#[tokio::test]
async fn a_correction_is_a_new_version_and_nobody_writes_over_anothers() {
    let shop = Shop::staffed().await;
    let first = typed(&shop, 2027, "A", &[("shield_s", json!(10.99))]).await;
    let desk = shop.client(Role::Desk).await;
    let form = desk.get(&format!("/class-tables/new?of={}", first.table)).await;
    assert_eq!(form.value("f.class_table.shield_s"), "10.99");
    assert!(form.attributes("input[name=year]", "name").is_empty(), "a version keeps its year, body and class");
    let (of, version) = (form.value("of"), form.value("version"));
    let fields =
        [("of", of.as_str()), ("version", version.as_str()), ("f.class_table.shield_s", "9.99"), ("offered", "yes")];
    let page = desk.follow(desk.post("/class-tables", &fields).await).await;
    assert_eq!(page.texts("h2"), ["Version 2, the newest", "Version 1"]);
    assert_eq!(page.texts(".facts-known dd"), ["9.99 s", "10.99 s"]);

    let late = [fields[0], fields[1], ("f.class_table.shield_s", "8.5"), fields[3]];
    let page = desk.post("/class-tables", &late).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    page.assert_says("Dale Desk saved version 2 of this table meanwhile. Look at that one first.");
    assert_eq!(page.value("f.class_table.shield_s"), "8.5", "what was typed stays");
    assert_eq!(page.value("version"), "2", "and can be saved once it was looked at");
}

#[tokio::test]
async fn taking_a_table_writes_all_class_facts_at_once_and_the_ticket_says_which() {
    let shop = Shop::staffed().await;
    let ticket = raced(&shop, "2027-05-01").await;
    write(&shop, Role::Desk, ticket, &[("class_table.stick_s", json!(9.0))]).await;
    typed(&shop, 2027, "A", &[("shield_s", json!(10.99)), ("brake_allowed", json!(true))]).await;
    let bench = shop.client(Role::Technician).await;
    let before = revision(&shop, ticket).await;
    let choice = bench.get(&format!("/tickets/{ticket}/class-table")).await;
    let shown = bench.follow(take(&bench, &choice, ticket).await).await;
    shown.assert_says("Saved");
    shown.assert_says("Class table: 2027, Tin Bridge Timing, class A, version 1. Taken by Terry Tech");
    assert_eq!(revision(&shop, ticket).await, before + 1, "one edit");
    let by = "Terry Tech".to_owned();
    assert_eq!(fact(&shop, ticket, "class_table.shield_s").await, Some((json!(10.99), by.clone())));
    assert_eq!(fact(&shop, ticket, "class_table.year").await, Some((json!(2027), by)));
    assert_eq!(fact(&shop, ticket, "class_table.stick_s").await, None, "what the table leaves open is not known");
    let page = shop.service.ticket(&caller(&shop, Role::Desk).await, ticket).await.expect("the ticket");
    let facts = &page.revision.contents.facts;
    let of_table: Vec<_> =
        facts.known().filter(|known| known.0.declaration().path.starts_with("class_table.")).collect();
    assert_eq!(of_table.len(), 3);
    assert!(of_table.iter().all(|(_, _, origin)| origin.source == Source::ShopSetting));

    let desk = shop.client(Role::Desk).await;
    let paper = desk.get(&format!("/tickets/{ticket}/sign/build")).await;
    paper.assert_says("We checked against the class rules of 2027, as we copied them from the book.");
}

#[tokio::test]
async fn a_table_older_than_the_event_warns_where_it_is_chosen_and_on_the_ticket() {
    let shop = Shop::staffed().await;
    typed(&shop, 2027, "A", &[("shield_s", json!(10.99))]).await;
    let desk = shop.client(Role::Desk).await;
    for (event, warns) in [("2027-12-31", false), ("2028-01-01", true)] {
        let ticket = raced(&shop, event).await;
        let choice = desk.get(&format!("/tickets/{ticket}/class-table")).await;
        let job = desk.follow(take(&desk, &choice, ticket).await).await;
        for page in [&choice, &job] {
            let said = page.texts("main").join(" ");
            assert_eq!(
                said.contains("Caution Older than the event: this table is from the book of 2027"),
                warns,
                "{event}"
            );
        }
        assert_eq!(job.texts("main").join(" ").contains("SFT-15"), warns, "{event}: the rule says so, too");
    }
    let ticket = take_in(&shop).await;
    let choice = desk.get(&format!("/tickets/{ticket}/class-table")).await;
    choice.assert_says("The day of the event is not known yet");
    choice.assert_says("Nobody has written down yet that this vehicle is raced.");
}

#[tokio::test]
async fn the_ticket_says_what_was_changed_by_hand_and_that_there_is_a_newer_version() {
    let shop = Shop::staffed().await;
    let ticket = raced(&shop, "2027-05-01").await;
    let first = typed(&shop, 2027, "A", &[("shield_s", json!(10.99))]).await;
    let desk = shop.client(Role::Desk).await;
    let choice = desk.get(&format!("/tickets/{ticket}/class-table")).await;
    take(&desk, &choice, ticket).await;
    write(&shop, Role::Desk, ticket, &[("class_table.shield_s", json!(9.99))]).await;
    let page = desk.get(&format!("/tickets/{ticket}")).await;
    page.assert_says("Changed by hand since: Shield asked for at this time or quicker.");
    typed_anew(&shop, first, true, &[("shield_s", json!(9.99))]).await;
    let page = desk.get(&format!("/tickets/{ticket}")).await;
    page.assert_says("class A, version 1. Taken by");
    page.assert_says("There is a version 2 of this table by now.");
    assert_eq!(fact(&shop, ticket, "class_table.shield_s").await.map(|fact| fact.0), Some(json!(9.99)));
}

#[tokio::test]
async fn a_table_changed_or_taken_out_since_the_page_was_opened_is_not_taken() {
    let shop = Shop::staffed().await;
    let ticket = raced(&shop, "2027-05-01").await;
    let first = typed(&shop, 2027, "A", &[("shield_s", json!(10.99))]).await;
    let desk = shop.client(Role::Desk).await;
    let choice = desk.get(&format!("/tickets/{ticket}/class-table")).await;
    let second = typed_anew(&shop, first, true, &[("shield_s", json!(9.99))]).await;
    let before = shop.fingerprint().await;
    let page = take(&desk, &choice, ticket).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    page.assert_says("This table was changed since the page was opened.");
    assert_eq!(shop.fingerprint().await, before);
    assert_eq!(take(&desk, &page, ticket).await.status, StatusCode::SEE_OTHER, "the page shows the new one");
    typed_anew(&shop, second, false, &[("shield_s", json!(9.99))]).await;
    let choice = desk.get(&format!("/tickets/{ticket}/class-table")).await;
    assert!(choice.attributes("button[name=table]", "value").is_empty(), "no longer offered");
    desk.get(&format!("/tickets/{ticket}")).await.assert_says("class A, version 2. Taken by Dale Desk");
}

#[tokio::test]
async fn a_class_fact_changed_meanwhile_asks_for_another_look_and_other_facts_merge() {
    let shop = Shop::staffed().await;
    let ticket = raced(&shop, "2027-05-01").await;
    typed(&shop, 2027, "A", &[("shield_s", json!(10.99))]).await;
    let desk = shop.client(Role::Desk).await;
    let choice = desk.get(&format!("/tickets/{ticket}/class-table")).await;
    write(&shop, Role::Technician, ticket, &[("bell.kind", json!("integral")), ("class_table.shield_s", json!(8.5))])
        .await;
    let before = shop.fingerprint().await;
    let page = take(&desk, &choice, ticket).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    page.assert_says("Terry Tech changed \"Shield asked for at this time or quicker\" meanwhile: it is 8.5 s now");
    assert_eq!(shop.fingerprint().await, before, "nothing half done");
    write(&shop, Role::Technician, ticket, &[("bell.kind", json!("bolt_on"))]).await;
    assert_eq!(take(&desk, &page, ticket).await.status, StatusCode::SEE_OTHER);
    assert_eq!(fact(&shop, ticket, "class_table.shield_s").await.map(|fact| fact.0), Some(json!(10.99)));
    assert_eq!(fact(&shop, ticket, "bell.kind").await.map(|fact| fact.0), Some(json!("bolt_on")));
}

#[tokio::test]
async fn sent_twice_it_is_taken_once() {
    let shop = Shop::staffed().await;
    let ticket = raced(&shop, "2027-05-01").await;
    let table = typed(&shop, 2027, "A", &[("shield_s", json!(10.99))]).await;
    let who = Who::Staff(caller(&shop, Role::Desk).await);
    let (key, made_from) = (Key::fresh(), revision(&shop, ticket).await);
    let order = UseClassTable { ticket, made_from, table };
    let first = shop.service.write(who.clone(), key, order.clone()).await.expect("taken");
    let before = shop.fingerprint().await;
    assert_eq!(shop.service.write(who, key, order).await.expect("the same answer"), first);
    assert_eq!(shop.fingerprint().await, before);
}

#[tokio::test]
async fn the_counter_leads_to_the_tables_and_back_with_everything_answered_kept() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    typed(&shop, 2027, "A", &[("shield_s", json!(10.99))]).await;
    let desk = shop.client(Role::Desk).await;
    let fields = [("base", "1"), ("f.use.raced", "yes"), ("f.engine.torque_lbft", "510"), ("do", "class_table")];
    let sent = desk.post(&format!("/tickets/{ticket}/intake"), &fields).await;
    assert_eq!(sent.location(), Some(format!("/tickets/{ticket}/class-table?from=intake")));
    let choice = desk.follow(sent).await;
    assert_eq!(choice.value("from"), "intake");
    let (base, version, table) =
        (choice.value("base"), choice.value("version"), choice.attributes("button[name=table]", "value").remove(0));
    let fields = [("base", base.as_str()), ("version", &version), ("table", &table), ("from", "intake")];
    let taken = desk.post(&format!("/tickets/{ticket}/class-table"), &fields).await;
    assert_eq!(taken.location(), Some(format!("/tickets/{ticket}/intake")));
    let form = desk.follow(taken).await;
    assert_eq!(form.value("f.engine.torque_lbft"), "510");
    assert_eq!(form.value("f.class_table.shield_s"), "10.99");
    let sheet = desk.get(&format!("/tickets/{ticket}/facts/spec")).await;
    desk.get(&format!("/tickets/{ticket}/class-table")).await.assert_says("This job took this version last.");
    assert!(sheet.attributes("a", "href").contains(&format!("/tickets/{ticket}/class-table?from=spec")));
}

#[tokio::test]
async fn a_closed_job_and_another_shops_table_are_left_alone() {
    let shop = Shop::staffed().await;
    let (other, here) = (Shop::staffed().await, raced(&shop, "2027-05-01").await);
    let foreign = typed(&other, 2027, "A", &[("shield_s", json!(10.99))]).await;
    let desk = caller(&shop, Role::Desk).await;
    let made_from = revision(&shop, here).await;
    let order = UseClassTable { ticket: here, made_from, table: foreign };
    let refused = shop.service.write(Who::Staff(desk), Key::fresh(), order).await;
    assert!(matches!(refused, Err(Failure::NotFound("such class table"))), "{refused:?}");
    let client = shop.client(Role::Owner).await;
    let give_up = [("from", Stage::Intake.code()), ("to", "declined"), ("reason", "Too far away.")];
    assert_eq!(client.post(&format!("/tickets/{here}/stage"), &give_up).await.status, StatusCode::SEE_OTHER);
    let page = client.get(&format!("/tickets/{here}/class-table")).await;
    assert_eq!(page.location(), Some(format!("/tickets/{here}")));
}
