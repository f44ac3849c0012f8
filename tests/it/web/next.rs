//! What to ask next: one answer at a time, the list anew after each.

use super::client::{Client, Page, Shop};
use super::jobs::{fact, revision, take_in, write};
use axum::http::StatusCode;
use endplay::job::fact_named;
use endplay::ticket::{Role, Stage, in_words};
use serde_json::json;

/// The question that is asked.
fn asked(page: &Page) -> String {
    page.value("ask")
}

/// Answers what is asked, as its control would.
async fn answer(client: &Client, ticket: i64, page: &Page, typed: &str) -> Page {
    let (field, source) = (format!("f.{}", asked(page)), format!("s.{}", asked(page)));
    let (base, ask, skip) = (page.value("base"), asked(page), page.value("skip"));
    let fields = [("base", base.as_str()), ("ask", &ask), ("skip", &skip), (&field, typed), (&source, "looked")];
    client.post(&format!("/tickets/{ticket}/next"), &fields).await
}

async fn next(client: &Client, ticket: i64, query: &str) -> Page {
    let page = client.get(&format!("/tickets/{ticket}/next{query}")).await;
    assert_eq!(page.status, StatusCode::OK);
    page
}

#[tokio::test]
async fn an_answer_is_saved_and_the_list_moves_on_at_once() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let job = bench.get(&format!("/tickets/{ticket}")).await;
    let count: Vec<_> = job.texts(".ticket-main a").into_iter().filter(|text| text.starts_with("Ask next: ")).collect();
    assert_eq!(count.len(), 1, "the job leads to its questions");

    let page = next(&bench, ticket, "?first=bell.kind").await;
    assert_eq!(asked(&page), "bell.kind");
    assert!(!page.texts(".next-first .hint").join("").is_empty(), "with how to find out");
    let saved = answer(&bench, ticket, &page, "bolt_on").await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER);
    let after = bench.follow(saved).await;
    let declaration = fact_named("bell.kind").expect("a fact").declaration();
    after.assert_says(&format!("{}: {}.", declaration.label, in_words(declaration, &json!("bolt_on"))));
    assert_eq!(fact(&shop, ticket, "bell.kind").await, Some((json!("bolt_on"), "Terry Tech".into())));
    assert_ne!(asked(&after), "bell.kind");
    let links = after.attributes(".next-list a", "href").join(" ");
    assert!(!links.contains("first=bell.kind"), "what is answered is asked no more");
    assert!(links.contains("first=pump.holes"), "what hung on it comes up");
}

#[tokio::test]
async fn what_cannot_be_known_yet_goes_to_the_end_and_nothing_is_stored() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let before = shop.fingerprint().await;
    let first = next(&bench, ticket, "").await;
    let skip = first.attributes(".next-skip a", "href").remove(0);
    let second = bench.get(&skip).await;
    assert_ne!(asked(&second), asked(&first));
    let aside = second.attributes("section[aria-labelledby='aside-heading'] .next-line a", "href").join("");
    assert!(aside.ends_with(&format!("first={}", asked(&first))), "{aside}");
    assert_eq!(shop.fingerprint().await, before);
    // It is still put aside after the next answer.
    let third = next(&bench, ticket, &format!("?first=bell.kind&skip={}", asked(&first))).await;
    let saved = answer(&bench, ticket, &third, "bolt_on").await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.follow(saved).await.value("skip"), asked(&first));
}

#[tokio::test]
async fn what_cannot_be_read_stays_in_its_field_and_nothing_is_saved() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    for typed in ["plenty", "-3", ""] {
        let page = next(&desk, ticket, "?first=engine.torque_lbft").await;
        let wrong = answer(&desk, ticket, &page, typed).await;
        assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert_eq!(wrong.value("f.engine.torque_lbft"), typed);
        assert_eq!(wrong.attributes(".summary a", "href"), ["#f.engine.torque_lbft"]);
        assert!(wrong.texts("title")[0].starts_with("Check what you entered: "));
    }
    assert_eq!(revision(&shop, ticket).await, 1);
    let path = format!("/tickets/{ticket}/next");
    let foreign = desk.post(&path, &[("base", "1"), ("ask", "no.such"), ("f.no.such", "1")]).await;
    assert!(foreign.status.is_client_error(), "{}", foreign.status);
    let nowhere = desk.post("/tickets/999/next", &[("base", "1"), ("ask", "use.raced"), ("f.use.raced", "yes")]).await;
    assert_eq!(nowhere.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn two_answers_to_the_same_question_are_both_shown() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let page = next(&desk, ticket, "?first=bell.kind").await;
    write(&shop, Role::Technician, ticket, &[("bell.kind", json!("integral"))]).await;
    let clash = answer(&desk, ticket, &page, "bolt_on").await;
    assert_eq!(clash.status, StatusCode::CONFLICT);
    clash.assert_says("Terry Tech");
    let mut fields: Vec<(String, String)> = clash
        .attributes("main form input[type='hidden']", "name")
        .into_iter()
        .zip(clash.attributes("main form input[type='hidden']", "value"))
        .filter(|(name, _)| name != "once")
        .collect();
    fields.push(("keep.bell.kind".into(), "mine".into()));
    let fields: Vec<_> = fields.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect();
    let chosen = desk.post(&format!("/tickets/{ticket}/next"), &fields).await;
    assert_eq!(chosen.status, StatusCode::SEE_OTHER);
    assert_eq!(fact(&shop, ticket, "bell.kind").await, Some((json!("bolt_on"), "Dale Desk".into())));
    // Another fact changed meanwhile is in nobody's way.
    let page = next(&desk, ticket, "?first=use.raced").await;
    write(&shop, Role::Technician, ticket, &[("vehicle.axle_ratio", json!(3.7))]).await;
    assert_eq!(answer(&desk, ticket, &page, "no").await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn a_finished_job_asks_nothing() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let fields = [("from", Stage::Intake.code()), ("to", "declined"), ("reason", "too dear for him")];
    desk.post(&format!("/tickets/{ticket}/stage"), &fields).await;
    let page = desk.get(&format!("/tickets/{ticket}/next")).await;
    assert_eq!(page.location(), Some(format!("/tickets/{ticket}")));
}

#[tokio::test]
async fn how_it_is_known_is_never_chosen_for_anybody() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let stays = [
        ("bell.kind", "bolt_on", "[id='f.bell.kind'] [selected], [name='f.bell.kind'][checked], [aria-pressed=true]"),
        ("use.raced", "no", "[aria-pressed=true]"),
        ("engine.torque_lbft", "450", "[name='f.engine.torque_lbft']"),
    ];
    for (path, typed, kept) in stays {
        let page = next(&bench, ticket, &format!("?first={path}")).await;
        let chosen = page.attributes(&format!("select[name='s.{path}'] option[selected]"), "value");
        assert_eq!(chosen, [""], "{path}: nothing is preselected");
        let (base, field) = (page.value("base"), format!("f.{path}"));
        let fields = [("base", base.as_str()), ("ask", path), ("skip", ""), (&field, typed)];
        let wrong = bench.post(&format!("/tickets/{ticket}/next"), &fields).await;
        assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert_eq!(wrong.attributes(".summary a", "href"), [format!("#s.{path}")]);
        wrong.assert_says("Choose how you know it");
        assert_eq!(wrong.attributes(kept, "value"), [typed], "{path}: the answer stays");
        assert_eq!(fact(&shop, ticket, path).await, None, "nothing is saved");
    }
}
