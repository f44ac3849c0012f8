//! Taking a unit in: who and what, the counter set with the findings beside it, the hand-off.

use super::client::{Client, Page, Shop};
use super::jobs::caller;
use axum::http::StatusCode;
use endplay::job::fact_named;
use endplay::ticket::{Role, Source};

pub const ROSA: &[(&str, &str)] = &[
    ("name", "Rosa Lee"),
    ("phone", "(555) 010-4477"),
    ("vehicle", "Blue pickup"),
    ("plate", "AB-12"),
    ("unit", "heavy three-speed"),
    ("part", "yoke"),
    ("part", "converter"),
    ("wants", "Quiet on the road"),
    ("symptom", "No second gear when hot"),
    ("do", "open"),
];

/// The number of the ticket this form opens.
pub async fn taken_in(client: &Client, fields: &[(&str, &str)]) -> i64 {
    let page = client.post("/intake", fields).await;
    let to = page.location().unwrap_or_else(|| panic!("no ticket was opened: {}", page.text));
    let number = to.strip_prefix("/tickets/").and_then(|rest| rest.strip_suffix("/intake"));
    number.and_then(|number| number.parse().ok()).unwrap_or_else(|| panic!("on to the questions, not {to}"))
}

fn with<'a>(fields: &[(&'a str, &'a str)], more: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let kept = fields.iter().filter(|(name, _)| more.iter().all(|(other, _)| other != name));
    kept.chain(more).copied().collect()
}

/// The questions on a page, by the fact they ask for.
fn questions(page: &Page) -> Vec<String> {
    page.attributes("[data-question]", "data-question")
}

fn has(page: &Page, path: &str) -> bool {
    questions(page).iter().any(|question| question == path)
}

#[tokio::test]
async fn a_unit_comes_in_from_the_door_to_the_hand_off() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    assert_eq!(desk.get("/intake").await.status, StatusCode::OK);
    let number = taken_in(&desk, ROSA).await;

    let page = desk.get(&format!("/tickets/{number}/intake")).await;
    page.assert_says("What does it do on most weekends?");
    page.assert_says("No second gear when hot");
    let answers = [
        ("base", "1"),
        ("f.use.kind", "street"),
        ("f.engine.torque_lbft", "380"),
        ("s.engine.torque_lbft", "customer_said"),
        ("f.bell.kind", "integral"),
        ("s.bell.kind", "looked"),
        ("do", "save"),
    ];
    let saved = desk.post(&format!("/tickets/{number}/intake"), &answers).await;
    assert_eq!(saved.location(), Some(format!("/tickets/{number}/intake/done")));

    let done = desk.follow(saved).await;
    let ways = [done.attributes("main a", "href"), done.attributes("main form", "action")].concat();
    for way in ["tag", "receipt", "links", "sign/intake"] {
        assert!(ways.contains(&format!("/tickets/{number}/{way}")), "{way} is offered: {ways:?}");
    }
    let caller = caller(&shop, Role::Desk).await;
    let ticket = shop.service.ticket(&caller, number).await.expect("the ticket");
    let facts = &ticket.revision.contents.facts;
    let origin =
        |path| facts.origin(fact_named(path).expect("a fact")).map(|origin| (origin.source, origin.by.clone()));
    assert_eq!(origin("bell.kind"), Some((Source::Looked, "Dale Desk".to_owned())));
    assert_eq!(origin("engine.torque_lbft"), Some((Source::CustomerSaid, "Dale Desk".to_owned())));
    let brought = ticket.revision.contents.words.brought.expect("what came in").text;
    assert_eq!(brought, "The unit: heavy three-speed\nWith it: yoke, converter");
}

#[tokio::test]
async fn what_is_missing_is_named_and_everything_typed_stays() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let before = shop.fingerprint().await;
    let page = desk.post("/intake", &with(ROSA, &[("phone", ""), ("promised", "next week"), ("do", "open")])).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.attributes(".summary a", "href"), ["#phone", "#promised"]);
    page.assert_says("next week");
    for (field, value) in [("name", "Rosa Lee"), ("plate", "AB-12"), ("unit", "heavy three-speed")] {
        assert_eq!(page.value(field), value);
    }
    assert_eq!(page.attributes("input[name=part][checked]", "value"), ["converter", "yoke"]);
    page.assert_says("No second gear when hot");
    assert!(page.texts("title")[0].starts_with("Check what you entered: "));
    assert_eq!(shop.fingerprint().await, before, "nothing was half done");
}

#[tokio::test]
async fn what_the_service_refuses_comes_back_at_its_field() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let page = desk.post("/intake", &with(ROSA, &[("phone", "call me")])).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.attributes(".summary a", "href"), ["#phone"]);
    page.assert_says("call me");
    assert_eq!(page.value("name"), "Rosa Lee");
}

#[tokio::test]
async fn a_form_sent_twice_opens_one_ticket() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let once = uuid::Uuid::now_v7();
    let first = desk.post_once("/intake", once, ROSA).await.location();
    assert_eq!(desk.post_once("/intake", once, ROSA).await.location(), first);
    assert_eq!(desk.get("/").await.texts(".card").len(), 1);
}

#[tokio::test]
async fn a_returning_customer_is_found_by_digits_or_name_and_nothing_typed_is_lost() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let earlier = taken_in(&desk, ROSA).await;
    for find in ["4477", "lee ro"] {
        let page = desk.post("/intake", &[("find", find), ("wants", "Again, please"), ("do", "look")]).await;
        assert_eq!(page.status, StatusCode::OK);
        page.assert_says("Rosa Lee, (555) 010-4477");
        page.assert_says(&format!("Jobs so far: {earlier}"));
        page.assert_says("Again, please");
    }
    let found = desk.post("/intake", &[("find", "4477"), ("do", "look")]).await;
    let this = found.attributes(".found button", "value").remove(0);
    let chosen = desk.post("/intake", &[("find", "4477"), ("wants", "Again, please"), ("do", &this)]).await;
    chosen.assert_says("Rosa Lee has been here before.");
    chosen.assert_says("Again, please");
    chosen.assert_says(&format!("Yes, job {earlier}"));
    let (customer, vehicle) = (chosen.value("customer"), chosen.value("known_vehicle"));
    let number = earlier.to_string();
    let fields = [
        ("customer", customer.as_str()),
        ("known_vehicle", vehicle.as_str()),
        ("wants", "Again, please"),
        ("comeback_of", number.as_str()),
        ("do", "open"),
    ];
    let again = taken_in(&desk, &fields).await;
    let caller = caller(&shop, Role::Desk).await;
    let ticket = shop.service.ticket(&caller, again).await.expect("the ticket");
    assert_eq!((ticket.comeback_of, ticket.same_vehicle), (Some(earlier), vec![earlier]));
    desk.get("/").await.assert_says("Comeback");
    let nobody = desk.post("/intake", &[("find", "0000"), ("do", "look")]).await;
    nobody.assert_says("Nobody found.");
}

#[tokio::test]
async fn a_technician_takes_in_but_promises_nothing() {
    let shop = Shop::staffed().await;
    let tech = shop.client(Role::Technician).await;
    assert!(tech.get("/intake").await.attributes("[name=promised]", "id").is_empty());
    let number = taken_in(&tech, ROSA).await;
    let done = tech.get(&format!("/tickets/{number}/intake/done")).await;
    done.assert_says("Who can take the signature: Front desk or Owner.");
    let refused = tech.post("/intake", &with(ROSA, &[("promised", "2031-01-01")])).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn only_what_applies_is_asked_and_a_look_changes_nothing() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{}/intake", taken_in(&desk, ROSA).await);
    let blank = desk.get(&path).await;
    for hidden in ["event.date", "class_table.year", "bell.ring_holes", "shield.expires"] {
        assert!(!has(&blank, hidden), "{hidden} is not asked of everybody");
    }
    let before = shop.fingerprint().await;
    let answers = [
        ("base", "1"),
        ("f.use.raced", "yes"),
        ("f.bell.kind", "bolt_on"),
        ("f.shield.kind", "rigid"),
        ("f.vehicle.weight_lb", "3650"),
        ("do", "look"),
    ];
    let page = desk.post(&path, &answers).await;
    assert_eq!(page.status, StatusCode::OK);
    for asked in ["event.date", "class_table.year", "bell.ring_holes", "pump.holes", "shield.expires"] {
        assert!(has(&page, asked), "{asked} applies now");
    }
    assert_eq!(page.value("f.vehicle.weight_lb"), "3650");
    assert_eq!(page.attributes("[name='f.use.raced'][checked]", "value"), ["yes"]);
    assert_eq!(shop.fingerprint().await, before, "looking writes nothing");
}

#[tokio::test]
async fn findings_stand_beside_the_form_with_what_to_do() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let number = taken_in(&desk, ROSA).await;
    let answers = [
        ("base", "1"),
        ("f.threads.mount_hole", "inch"),
        ("f.threads.mount_bolt", "metric"),
        ("f.engine.torque_lbft", "plenty"),
    ];
    let before = shop.fingerprint().await;
    let page = desk.post(&format!("/tickets/{number}/look"), &answers).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.texts("#look .finding h3")[0].contains("THR-02"), "{:?}", page.texts("#look .finding h3"));
    page.assert_says("What to do:");
    assert!(page.attributes("#look a", "href").contains(&"#f.threads.mount_hole".to_owned()));
    page.assert_says("Engine torque cannot be \"plenty\"");
    assert_eq!(shop.fingerprint().await, before, "looking writes nothing");
}

#[tokio::test]
async fn an_answer_that_cannot_be_is_named_and_the_others_stay() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{}/intake", taken_in(&desk, ROSA).await);
    let before = shop.fingerprint().await;
    let answers = [
        ("base", "1"),
        ("f.vehicle.tire_diameter_in", "0"),
        ("f.case.coolant_found", "no"),
        ("f.use.kind", "tow"),
        ("do", "save"),
    ];
    let page = desk.post(&path, &answers).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.attributes(".summary a", "href"), ["#f.vehicle.tire_diameter_in", "#f.case.coolant_found"]);
    page.assert_says("Tire diameter cannot be \"0\"");
    page.assert_says("cannot be ruled out with the unit closed");
    assert_eq!(page.value("f.vehicle.tire_diameter_in"), "0");
    assert_eq!(page.attributes("[name='f.use.kind'] option[selected]", "value"), ["tow"]);
    assert_eq!(page.texts(".question .problem").len(), 2);
    assert_eq!(shop.fingerprint().await, before, "nothing was half done");
}

#[tokio::test]
async fn two_people_at_one_ticket_overwrite_nothing_unseen() {
    let shop = Shop::staffed().await;
    let (desk, tech) = (shop.client(Role::Desk).await, shop.client(Role::Technician).await);
    let path = format!("/tickets/{}/intake", taken_in(&desk, ROSA).await);
    let tech_says = [("base", "1"), ("f.output.spline", "27"), ("s.output.spline", "looked"), ("do", "save")];
    assert_eq!(tech.post(&path, &tech_says).await.status, StatusCode::SEE_OTHER);
    let desk_says = [
        ("base", "1"),
        ("f.output.spline", "32"),
        ("s.output.spline", "customer_said"),
        ("f.pan.depth", "deep"),
        ("do", "save"),
    ];
    let clash = desk.post(&path, &desk_says).await;
    assert_eq!(clash.status, StatusCode::CONFLICT);
    clash.assert_says("32");
    clash.assert_says("27");
    clash.assert_says("Terry Tech");
    let mut kept: Vec<(String, String)> = Vec::new();
    for name in clash.attributes(&format!("form[action='{path}'] input[type=hidden]"), "name") {
        let value = clash.attributes(&format!("form[action='{path}'] input[type=hidden][name='{name}']"), "value");
        kept.push((name, value.into_iter().next().unwrap_or_default()));
    }
    kept.retain(|(name, _)| name != "once");
    kept.push(("keep.output.spline".into(), "theirs".into()));
    let fields: Vec<_> = kept.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect();
    assert_eq!(desk.post(&path, &fields).await.status, StatusCode::SEE_OTHER);
    let page = desk.get(&path).await;
    let spline =
        page.attributes("[name='f.output.spline'][checked], [name='f.output.spline'] option[selected]", "value");
    assert_eq!(spline, ["27"], "the technician's count stands");
    assert_eq!(page.attributes("[name='f.pan.depth'][checked]", "value"), ["deep"], "the rest is kept");
}

#[tokio::test]
async fn a_ticket_that_does_not_exist_is_not_asked_about() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    for path in ["/tickets/4711/intake", "/tickets/4711/intake/done", "/tickets/x/intake"] {
        assert_eq!(desk.get(path).await.status, StatusCode::NOT_FOUND, "{path}");
    }
    let number = taken_in(&desk, ROSA).await;
    let page = desk.post(&format!("/tickets/{number}/intake"), &[("base", "99"), ("do", "save")]).await;
    assert_eq!(page.status, StatusCode::NOT_FOUND, "a version that never was");
}
