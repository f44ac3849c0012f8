//! What if: changes on a copy, variants kept, the customer's choice, the choice made the job.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, fact, revision, stopped, take_in, write};
use axum::http::StatusCode;
use endplay::quantity::Cents;
use endplay::service::{ChangeTicket, Failure, KeepVariant, Key, MakeLink, RevokeLink, Who};
use endplay::ticket::{Edit, FactChange, Price, PriceLine, Purpose, Role, Source};
use serde_json::json;

/// Sends the copy's form with these changes.
pub async fn send(client: &Client, ticket: i64, fields: &[(&str, &str)]) -> Page {
    let page = client.get(&format!("/tickets/{ticket}/what-if")).await;
    let base = page.value("base");
    let all = [&[("base", base.as_str())], fields].concat();
    client.post(&format!("/tickets/{ticket}/what-if"), &all).await
}

pub async fn keep(client: &Client, ticket: i64, name: &str, fields: &[(&str, &str)]) -> Page {
    send(client, ticket, &[&[("name", name), ("do", "keep")], fields].concat()).await
}

/// The address of the customer's page.
async fn link(shop: &Shop, ticket: i64, purpose: Purpose) -> String {
    let desk = caller(shop, Role::Desk).await;
    let make = MakeLink { ticket, purpose, days: None };
    let made = shop.service.make_link(&desk, Key::fresh(), make).await.expect("made");
    format!("/c/{}", made.pass.expect("shown once"))
}

/// What the page sends when this offer is picked.
pub fn offer(page: &Page, at: usize) -> String {
    page.attributes("input[name=variant]", "value").remove(at)
}

pub async fn source(shop: &Shop, ticket: i64, path: &str) -> Source {
    let page = shop.service.ticket(&caller(shop, Role::Desk).await, ticket).await.expect("the ticket");
    let fact = endplay::job::fact_named(path).expect("a fact");
    page.revision.contents.facts.origin(fact).expect("known").source
}

/// Makes a variant the job, as the page sends it.
pub async fn make_it_the_job(client: &Client, ticket: i64, nth: i32) -> Page {
    let page = client.get(&format!("/tickets/{ticket}")).await;
    let to = format!("/tickets/{ticket}/variants/{nth}/apply");
    let field = |name: &str| page.attributes(&format!("form[action='{to}'] [name={name}]"), "value").remove(0);
    let (version, total) = (field("version"), field("total"));
    client.post(&to, &[("version", &version), ("total", &total)]).await
}

pub const BY_HAND: (&str, &str) = ("f.valve_body.kind", "manual");

#[tokio::test]
async fn a_change_shows_what_it_does_before_anything_is_saved() {
    let shop = Shop::staffed().await;
    let ticket = stopped(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let base = revision(&shop, ticket).await.to_string();
    let before = shop.fingerprint().await;
    let put_right = [("group", "converter"), ("f.threads.mount_bolt", "metric"), ("hours", "1.5"), ("do", "look")];
    let page = send(&bench, ticket, &put_right).await;
    assert_eq!(page.status, StatusCode::OK);
    page.assert_says("Findings that go");
    page.assert_says("THR-02");
    page.assert_says("Work: 1.5 hours.");
    // It is carried on while another part of the unit is shown, and can be taken back.
    assert_eq!(page.value("f.threads.mount_bolt"), "metric");
    let back = send(&bench, ticket, &[("f.threads.mount_bolt", "metric"), ("do", "drop.threads.mount_bolt")]).await;
    back.assert_says("Nothing is changed yet.");
    // The script gets the same without the rest of the page.
    let path = format!("/tickets/{ticket}/what-if/look");
    let live = bench.post(&path, &[("base", &base), ("f.threads.mount_bolt", "metric")]).await;
    live.assert_says("THR-02");
    assert!(live.texts("header").is_empty());
    assert_eq!(shop.fingerprint().await, before, "nothing is saved by trying");
}

#[tokio::test]
async fn worked_out_numbers_move_with_their_units() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let known = [
        ("converter.stall_rpm", json!(2400)),
        ("engine.torque_lbft", json!(400)),
        ("converter.rated_torque_lbft", json!(400)),
    ];
    write(&shop, Role::Desk, ticket, &known).await;
    let desk = shop.client(Role::Desk).await;
    let page = send(&desk, ticket, &[("f.converter.stall_rpm", "3000")]).await;
    let numbers = page.texts(".numbers").join(" ");
    assert!(numbers.contains("2400 rpm → 3000 rpm"), "{numbers}");
}

#[tokio::test]
async fn what_cannot_be_kept_is_named_and_everything_typed_stays() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let before = shop.fingerprint().await;
    let wrong = [("f.converter.stall_rpm", "fast"), ("hours", "long"), BY_HAND];
    let page = keep(&desk, ticket, "Softer", &wrong).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.attributes(".summary a", "href"), ["#hours", "#f.converter.stall_rpm"]);
    assert_eq!((page.value("f.converter.stall_rpm"), page.value("hours")), ("fast".into(), "long".into()));
    assert_eq!((page.value("name"), page.value("f.valve_body.kind")), ("Softer".into(), "manual".into()));
    for (name, fields, word) in [("", vec![BY_HAND], "name"), ("Same", vec![], "Nothing is different")] {
        let page = keep(&desk, ticket, name, &fields).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
        page.assert_says(word);
    }
    assert_eq!(shop.fingerprint().await, before, "nothing half done");
}

#[tokio::test]
async fn three_variants_stand_side_by_side_and_a_fourth_is_refused_in_a_sentence() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    for name in ["By hand", "Deep pan", "Both"] {
        let kept = desk.follow(keep(&desk, ticket, name, &[BY_HAND]).await).await;
        assert!(kept.texts(".variant h3").contains(&name.to_owned()));
    }
    let fourth = keep(&desk, ticket, "One more", &[BY_HAND]).await;
    fourth.assert_says("Three variants are kept already: By hand, Deep pan, Both. Withdraw one, then keep this one.");
    keep(&desk, ticket, "by hand", &[BY_HAND]).await.assert_says("Three variants");
    desk.post(&format!("/tickets/{ticket}/variants/2/withdraw"), &[]).await;
    let left = desk.follow(keep(&desk, ticket, "One more", &[BY_HAND]).await).await;
    assert_eq!(left.texts(".variant h3"), ["By hand", "Both", "One more"]);
    assert_eq!(revision(&shop, ticket).await, 1, "the job itself is as it was");
    // A changed variant is a new version of the same one.
    let page = desk.get(&format!("/tickets/{ticket}/what-if?variant=1")).await;
    assert_eq!(page.attributes("[name='f.valve_body.kind'][checked]", "value"), ["manual"]);
    let changed = [("variant", "1"), ("f.pan.depth", "deep")];
    let job = desk.follow(keep(&desk, ticket, "By hand", &[&changed[..], &[BY_HAND]].concat()).await).await;
    assert_eq!(job.texts(".variant h3"), ["By hand", "Both", "One more"]);
    assert!(job.texts(".variant").remove(0).contains("Deep"), "{:?}", job.texts(".variant"));
}

#[tokio::test]
async fn a_technician_tries_things_but_names_no_price() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let page = bench.get(&format!("/tickets/{ticket}/what-if")).await;
    assert!(page.attributes("[name='what.1']", "id").is_empty());
    let price = [BY_HAND, ("priced", "yes"), ("what.1", "Work"), ("amount.1", "100")];
    assert_eq!(keep(&bench, ticket, "By hand", &price).await.status, StatusCode::FORBIDDEN);
    assert_eq!(keep(&bench, ticket, "By hand", &[BY_HAND]).await.status, StatusCode::SEE_OTHER);
}

/// A job with a price, and two variants of it; the customer's page.
pub async fn offered(shop: &Shop) -> (i64, String) {
    let ticket = take_in(shop).await;
    write(shop, Role::Desk, ticket, &[("valve_body.kind", json!("auto")), ("pan.depth", json!("shallow"))]).await;
    let owner = caller(shop, Role::Desk).await;
    let price = Price { lines: vec![PriceLine { what: "Rebuild".into(), cents: Cents(185_000) }] };
    let edit = Edit { price: Some(price), ..Edit::default() };
    let made_from = revision(shop, ticket).await;
    let change = ChangeTicket { ticket, made_from, edit };
    shop.service.write(Who::Staff(owner), Key::fresh(), change).await.expect("priced");
    let desk = shop.client(Role::Desk).await;
    let lines = [("priced", "yes"), ("what.1", "Rebuild"), ("amount.1", "2100")];
    keep(&desk, ticket, "Shift by hand", &[&lines[..], &[BY_HAND, ("hours", "9.25")]].concat()).await;
    keep(&desk, ticket, "Deep pan", &[("f.pan.depth", "deep"), ("f.threads.mount_bolt", "metric")]).await;
    let path = link(shop, ticket, Purpose::Build).await;
    (ticket, path)
}

#[tokio::test]
async fn the_customer_reads_the_variants_in_plain_words_and_chooses_once() {
    let shop = Shop::staffed().await;
    let (ticket, path) = offered(&shop).await;
    let phone = shop.nobody();
    let before = shop.fingerprint().await;
    let page = phone.get(&path).await;
    assert_eq!(page.texts(".variant h3"), ["Shift by hand", "Deep pan"]);
    assert_eq!(page.texts(".variant .price"), ["Price: 2100.00", "Price: 1850.00"]);
    let read = page.texts(".variant").join(" ");
    assert!(
        read.contains("You shift by hand each time.") && read.contains("No longer: It shifts by itself."),
        "{read}"
    );
    for inside in ["9.25", "mount bolt", "THR-", "valve_body", "Dale", "stop"] {
        assert!(!read.contains(inside), "{inside} is the shop's own: {read}");
    }
    assert_eq!(shop.fingerprint().await, before, "looking changes nothing");

    assert!(read.contains("With this choice:"), "{read}");
    assert!(read.contains("That is 250.00 more than the build as it stands."), "{read}");
    assert!(read.contains("Nobody has named one for this choice yet"), "{read}");

    let to = format!("{path}/choose");
    let (by_hand, deep_pan) = (offer(&page, 0), offer(&page, 1));
    let nameless = phone.post(&to, &[("variant", &by_hand), ("chooser", " ")]).await;
    assert_eq!(nameless.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(nameless.attributes(".summary a", "href"), ["#chooser"]);
    assert_eq!(nameless.attributes("input[name=variant][checked]", "value"), [by_hand.as_str()]);
    let nothing = phone.post(&to, &[("chooser", "Rosa Fielding")]).await;
    assert_eq!(nothing.value("chooser"), "Rosa Fielding");
    let told_of_another = by_hand.replacen("1.1.", "2.1.", 1);
    for wrong in ["1.7", "9.1", "1.1", "1.1.0000", told_of_another.as_str()] {
        let refused = phone.post(&to, &[("variant", wrong), ("chooser", "Rosa")]).await;
        refused.assert_says("read it again");
        assert_eq!((refused.status, refused.value("chooser")), (StatusCode::UNPROCESSABLE_ENTITY, "Rosa".into()));
    }
    assert!(phone.post(&to, &[("variant", "one"), ("chooser", "Rosa")]).await.status.is_client_error());
    assert_eq!(shop.fingerprint().await, before, "nothing half done");

    let choice = [("variant", by_hand.as_str()), ("chooser", "Rosa Fielding")];
    for _ in 0..2 {
        let chosen = phone.follow(phone.post(&to, &choice).await).await;
        chosen.assert_says("You chose: Shift by hand.");
        assert!(chosen.attributes("input[name=variant]", "value").is_empty());
        assert_eq!(chosen.texts(".variant-taken h3"), ["Shift by hand"]);
        chosen.assert_says("This is your choice.");
    }
    let other = phone.post(&to, &[("variant", &deep_pan), ("chooser", "Rosa Fielding")]).await;
    other.assert_says("You have chosen already.");
    let count = "SELECT count(*) FROM event WHERE happened->>'kind' = 'variant_chosen'";
    let count: i64 = sqlx::query_scalar(count).fetch_one(&shop.database.owner_pool).await.expect("a count");
    assert_eq!(count, 1);

    let desk = shop.client(Role::Desk).await;
    let job = desk.get(&format!("/tickets/{ticket}")).await;
    assert!(job.texts(".variant-chosen")[0].starts_with("Chosen by Rosa Fielding"));
    let job = desk.follow(make_it_the_job(&desk, ticket, 1).await).await;
    job.assert_says("this is now version 4.");
    assert_eq!(fact(&shop, ticket, "valve_body.kind").await.map(|(value, _)| value), Some(json!("manual")));
    assert_eq!(source(&shop, ticket, "valve_body.kind").await, Source::CustomerSaid, "they chose it themselves");
    assert_eq!(job.texts(".price-total"), ["2100.00"]);
    assert_eq!(job.texts(".variant h3"), ["Deep pan"], "what is now the job is no variant of it");
    assert_eq!(phone.get(&path).await.status, StatusCode::GONE, "the new version is signed by a new link");
}

#[tokio::test]
async fn a_link_that_is_taken_back_or_for_the_teardown_takes_no_choice() {
    let shop = Shop::staffed().await;
    let (ticket, path) = offered(&shop).await;
    let phone = shop.nobody();
    let choice = [("variant", "1.1"), ("chooser", "Rosa Fielding")];
    let intake = link(&shop, ticket, Purpose::Intake).await;
    assert!(phone.get(&intake).await.texts(".variant").is_empty());
    phone.post(&format!("{intake}/choose"), &choice).await;
    let desk = caller(&shop, Role::Desk).await;
    for link in shop.service.ticket(&desk, ticket).await.expect("the ticket").links {
        let revoke = RevokeLink { ticket, link: link.id };
        shop.service.write(Who::Staff(desk.clone()), Key::fresh(), revoke).await.expect("taken back");
    }
    let gone = phone.follow(phone.post(&format!("{path}/choose"), &choice).await).await;
    assert_eq!(gone.status, StatusCode::GONE);
    assert_eq!(phone.post("/c/no-such-link/choose", &choice).await.status, StatusCode::NOT_FOUND);
    let count = sqlx::query_scalar::<_, i64>("SELECT count(*) FROM variant_choice");
    assert_eq!(count.fetch_one(&shop.database.owner_pool).await.expect("a count"), 0);
}

#[tokio::test]
async fn a_variant_follows_the_job_or_says_plainly_what_changed_since() {
    let shop = Shop::staffed().await;
    let (ticket, _) = offered(&shop).await;
    let desk = shop.client(Role::Desk).await;
    // Something else changed: the variant is laid over it.
    write(&shop, Role::Technician, ticket, &[("bell.kind", json!("bolt_on"))]).await;
    let job = desk.get(&format!("/tickets/{ticket}")).await;
    assert!(!job.texts(".variant").join(" ").contains("no longer fits"));
    // The same thing changed: it says so, is offered to nobody and cannot be applied.
    write(&shop, Role::Technician, ticket, &[("valve_body.kind", json!("manual")), ("pan.depth", json!("deep"))]).await;
    write(&shop, Role::Technician, ticket, &[("threads.mount_bolt", json!("inch"))]).await;
    let path = link(&shop, ticket, Purpose::Build).await;
    let job = desk.get(&format!("/tickets/{ticket}")).await;
    let deep = job.texts(".variant").remove(1);
    assert!(
        deep.contains("It no longer fits the job.") && deep.contains("Terry Tech has since written down"),
        "{deep}"
    );
    assert!(!shop.nobody().get(&path).await.texts(".variant h3").contains(&"Deep pan".to_owned()));
    let before = shop.fingerprint().await;
    let refused = desk.post(&format!("/tickets/{ticket}/variants/2/apply"), &[("version", "1")]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    refused.assert_says("Terry Tech has since written down");
    assert_eq!(shop.fingerprint().await, before);
    let nowhere = desk.post(&format!("/tickets/{ticket}/variants/8/apply"), &[("version", "1")]).await;
    assert_eq!(nowhere.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_variant_that_nobody_can_read_any_more_closes_no_page() {
    let shop = Shop::staffed().await;
    let (ticket, path) = offered(&shop).await;
    let retired = r#"UPDATE variant SET edit = '{"facts": [{"path": "yoke.colour", "value": "red", "source": "planned"}]}'
                     WHERE nth = 2"#;
    sqlx::query(retired).execute(&shop.database.owner_pool).await.expect("as an older program kept it");
    let desk = shop.client(Role::Desk).await;
    let job = desk.get(&format!("/tickets/{ticket}")).await;
    assert_eq!(job.status, StatusCode::OK);
    let deep = job.texts(".variant").remove(1);
    assert!(deep.contains("It no longer fits the job.") && deep.contains("no fact called yoke.colour"), "{deep}");
    assert_eq!(shop.nobody().get(&path).await.texts(".variant h3"), ["Shift by hand"]);
}

#[tokio::test]
async fn what_the_log_and_the_papers_fill_in_is_kept_in_no_variant() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let fact = FactChange { path: "order.final_wash".into(), value: Some(json!(3)), source: Source::Planned };
    let edit = Edit { facts: vec![fact], ..Edit::default() };
    let keep = KeepVariant { ticket, nth: None, made_from: 1, name: "Washed".into(), minutes: None, edit };
    let refused = shop.service.write(Who::Staff(caller(&shop, Role::Desk).await), Key::fresh(), keep).await;
    assert!(matches!(refused, Err(Failure::Problems(_))), "{refused:?}");
}
