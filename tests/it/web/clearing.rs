//! Plans that clear a job: shown to all, applied once, exactly as they said, and what the owner says they cost.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, move_along, revision, sign, take_in, write};
use axum::http::StatusCode;
use endplay::plan::clearing::Plan;
use endplay::service::{ChangeTicket, Failure, Key, MoveStage, TicketPage, Who};
use endplay::ticket::{Edit, FactChange, Gate, Override, Purpose, Role, Severity, Source, Stage};
use serde_json::json;
use std::collections::BTreeSet;

/// A yoke that does not fit, an O-ring that has to go, a nut of the wrong thread, an end play out of its limits.
async fn troubled(shop: &Shop) -> i64 {
    let ticket = take_in(shop).await;
    let facts = [
        ("output.spline", json!(32)),
        ("yoke.spline", json!(27)),
        ("yoke.kind", json!("slip")),
        ("output.tail", json!("slip")),
        ("output.o_ring", json!(true)),
        ("driveshaft.kind", json!("fixed")),
        ("threads.linkage_nut", json!("metric")),
        ("threads.linkage_shaft", json!("inch")),
        ("bench.rear_end_play_in", json!(0.030)),
    ];
    write(shop, Role::Technician, ticket, &facts).await;
    ticket
}

async fn ticket_page(shop: &Shop, ticket: i64) -> TicketPage {
    shop.service.ticket(&caller(shop, Role::Desk).await, ticket).await.expect("the ticket")
}

async fn plans(shop: &Shop, ticket: i64) -> Vec<Plan> {
    let page = ticket_page(shop, ticket).await;
    shop.service.clearing(&caller(shop, Role::Desk).await, &page).await.expect("the plans").plans
}

async fn apply(client: &Client, ticket: i64, base: i32, levers: &str, more: &[(&str, &str)]) -> Page {
    let base = base.to_string();
    let mut fields = vec![("base", base.as_str()), ("levers", levers)];
    fields.extend(more);
    client.post(&format!("/tickets/{ticket}/clearing"), &fields).await
}

#[tokio::test]
async fn the_ticket_leads_to_its_plans_and_a_clear_one_does_not() {
    let shop = Shop::staffed().await;
    let (bench, ticket) = (shop.client(Role::Technician).await, troubled(&shop).await);
    let path = format!("/tickets/{ticket}/clearing");
    assert!(bench.get(&format!("/tickets/{ticket}")).await.attributes("main a", "href").contains(&path));
    let page = bench.get(&path).await;
    page.assert_says("No stop, for the least");
    page.assert_says("No stop and no caution");
    page.assert_says("Fit a slip yoke for this output shaft");
    page.assert_says("Take the O-ring off the output shaft");
    page.assert_says("Clears");
    page.assert_says("OUT-01");
    page.assert_says("Rear end play");
    let clear = take_in(&shop).await;
    let none = bench.get(&format!("/tickets/{clear}/clearing")).await;
    none.assert_says("neither a stop nor a caution");
    assert!(none.texts(".plan").is_empty());
    assert!(!bench.get(&format!("/tickets/{clear}")).await.attributes("main a", "href").contains(&path));
}

#[tokio::test]
async fn applied_it_is_one_new_version_with_the_findings_the_plan_named() {
    let shop = Shop::staffed().await;
    let bench = shop.client(Role::Technician).await;
    for which in 0..2 {
        let ticket = troubled(&shop).await;
        let (before, plans) = (revision(&shop, ticket).await, plans(&shop, ticket).await);
        let plan = &plans[which];
        let sent = apply(&bench, ticket, before, &plan.codes().join(" "), &[]).await;
        bench.follow(sent).await.assert_says(&format!("the plan, as version {}", before + 1));
        let after = ticket_page(&shop, ticket).await;
        assert_eq!(after.revision.number, before + 1);
        let told: BTreeSet<&str> = plan.left.iter().chain(&plan.until).map(|rule| rule.code.as_str()).collect();
        let grave = |found: &&endplay::ticket::Found| found.severity != Severity::Note;
        let found = after.revision.judgement.findings.iter().filter(grave);
        assert_eq!(found.map(|found| found.code.as_str()).collect::<BTreeSet<_>>(), told);
        let opened: BTreeSet<&str> = plan.opened.iter().map(|open| open.rule.code.as_str()).collect();
        let open = after.revision.judgement.undecided.iter().map(|open| open.code.as_str()).collect::<BTreeSet<_>>();
        assert!(opened.is_subset(&open) && opened.contains("MEA-02"), "{opened:?}");
        let facts = &after.revision.contents.facts;
        let named = |path: &str| endplay::job::fact_named(path).expect("a fact");
        assert_eq!(facts.value(named("yoke.spline")), Some(json!(32)));
        assert_eq!(facts.origin(named("yoke.spline")).map(|origin| origin.source), Some(Source::Planned));
        assert_eq!(facts.value(named("bench.rear_end_play_in")), None, "what is not measured is not written down");
        assert_eq!(after.revision.contents.price, None, "the price is nobody's but theirs");
    }
}

#[tokio::test]
async fn sent_twice_it_is_applied_once_and_a_stale_plan_not_at_all() {
    let shop = Shop::staffed().await;
    let (bench, ticket) = (shop.client(Role::Technician).await, troubled(&shop).await);
    let before = revision(&shop, ticket).await;
    let once = uuid::Uuid::now_v7();
    for _ in 0..2 {
        let fields = [("base", &*before.to_string()), ("levers", "linkage-nut")];
        let sent = bench.post_once(&format!("/tickets/{ticket}/clearing"), once, &fields).await;
        assert_eq!(sent.status, StatusCode::SEE_OTHER);
    }
    assert_eq!(revision(&shop, ticket).await, before + 1);
    let stale = apply(&bench, ticket, before, "yoke-slip", &[]).await;
    assert_eq!(stale.status, StatusCode::UNPROCESSABLE_ENTITY);
    stale.assert_says("The job was changed since these plans were made");
    for nonsense in ["", "no-such-lever", "yoke-slip no-such-lever", "yoke-slip output-32-short", "vent-can"] {
        let refused = apply(&bench, ticket, before + 1, nonsense, &[]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{nonsense}");
        refused.assert_says("does not fit this job");
    }
    assert_eq!(revision(&shop, ticket).await, before + 1);
}

#[tokio::test]
async fn the_price_takes_the_plans_lines_only_when_asked_and_only_from_whom_it_may() {
    let shop = Shop::staffed().await;
    let (bench, desk, ticket) =
        (shop.client(Role::Technician).await, shop.client(Role::Desk).await, troubled(&shop).await);
    let before = revision(&shop, ticket).await;
    let path = format!("/tickets/{ticket}/clearing");
    assert!(bench.get(&path).await.texts("button[name=price]").is_empty());
    let refused = apply(&bench, ticket, before, "linkage-nut", &[("price", "add")]).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN);
    assert_eq!(revision(&shop, ticket).await, before, "nothing half done");
    assert!(!desk.get(&path).await.texts("button[name=price]").is_empty());
    apply(&desk, ticket, before, "linkage-nut output-o-ring-off", &[("price", "add")]).await;
    let after = ticket_page(&shop, ticket).await;
    let price = after.revision.contents.price().expect("a price").in_words();
    assert!(price.contains("Fit the nut that belongs on the shift shaft 13.00"), "{price}");
    assert_eq!(after.revision.number, before + 1);
}

#[tokio::test]
async fn the_owner_says_what_changes_cost_and_plans_follow() {
    let shop = Shop::staffed().await;
    let (owner, bench, ticket) =
        (shop.client(Role::Owner).await, shop.client(Role::Technician).await, troubled(&shop).await);
    bench.get("/levers").await.assert_says("as supplied, check it");
    let before = plans(&shop, ticket).await[0].cost;
    let rate = [("turn", "0"), ("parts", "60")];
    owner.follow(owner.post("/levers/labour-hour", &rate).await).await.assert_says("60.00 an hour");
    let nut = [("turn", "0"), ("hours", "0.5"), ("parts", "2.50")];
    owner.follow(owner.post("/levers/linkage-nut", &nut).await).await.assert_says("30 min of labour, parts 2.50");
    assert!(plans(&shop, ticket).await[0].cost < before);
    bench.get("/levers").await.assert_says("this shop's own");
    let one = bench.get("/levers/linkage-nut").await;
    one.assert_says("Olive Owner,");
    assert!(one.texts("main form").is_empty(), "the bench only reads");
    bench.get(&format!("/tickets/{ticket}/clearing")).await.assert_says("30 min, 32.50");

    let late = owner.post("/levers/linkage-nut", &nut).await;
    assert_eq!(late.status, StatusCode::UNPROCESSABLE_ENTITY);
    late.assert_says("set this while you were writing");
    for (hours, parts, words) in [
        ("an hour", "1", "write hours such as 0.5"),
        ("200", "1", "160 hours at most"),
        ("1", "much", "write an amount such as"),
        ("1", "", "Write the amount"),
        ("1", "5000000", "0 to 1000000.00"),
    ] {
        let page = owner.post("/levers/linkage-nut", &[("turn", "1"), ("hours", hours), ("parts", parts)]).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{hours} {parts}");
        page.assert_says(words);
        assert_eq!((page.value("hours").as_str(), page.value("parts").as_str()), (hours, parts));
    }
    let back = [("turn", "1"), ("to", "supplied")];
    owner.follow(owner.post("/levers/linkage-nut", &back).await).await.assert_says("back to as supplied");
    assert_eq!(owner.get("/levers/no-such-lever").await.status, StatusCode::NOT_FOUND);
    let none = owner.post("/levers/no-such-lever", &[("turn", "0"), ("hours", "1"), ("parts", "1")]).await;
    assert_eq!(none.status, StatusCode::NOT_FOUND);
}

/// A unit whose driveshaft would whip: a stop that rests on a measurement.
async fn whipping(shop: &Shop) -> i64 {
    let ticket = take_in(shop).await;
    let facts = [
        ("engine.max_rpm", json!(8000)),
        ("driveshaft.material", json!("steel")),
        ("driveshaft.length_in", json!(48)),
        ("driveshaft.od_in", json!(3)),
        ("driveshaft.wall_in", json!(0.083)),
    ];
    write(shop, Role::Technician, ticket, &facts).await;
    sign(shop, ticket, Purpose::Intake).await;
    move_along(shop, ticket, &[Stage::Intake, Stage::Spec, Stage::Teardown, Stage::Quote, Stage::Parts]).await;
    ticket
}

/// What stands in the way of the machining, besides the signature.
async fn in_the_way(shop: &Shop, ticket: i64) -> Option<String> {
    let page = ticket_page(shop, ticket).await;
    let shown = Gate::NoOpenStop.closed_because(&page.standing);
    let (from, to) = (page.ticket.stage, Stage::Machining);
    let signed = Override { gate: Gate::RevisionSigned, reason: "signed on paper".into() };
    let step = MoveStage { ticket, from, to, reason: String::new(), overrides: vec![signed] };
    match shop.service.write(Who::Staff(caller(shop, Role::Owner).await), Key::fresh(), step).await {
        Ok(_) => assert_eq!(shown, None),
        Err(Failure::Gates(refused)) => assert_eq!(Some(&refused[0].message), shown.as_ref()),
        Err(failure) => panic!("{failure}"),
    }
    shown
}

#[tokio::test]
async fn no_gate_opens_because_something_is_planned() {
    let shop = Shop::staffed().await;
    let (bench, ticket) = (shop.client(Role::Technician).await, whipping(&shop).await);
    let title = "Driveshaft would run at the speed at which it whips";
    assert!(in_the_way(&shop, ticket).await.is_some_and(|why| why.contains(title)));
    let base = revision(&shop, ticket).await;
    let sent = apply(&bench, ticket, base, "driveshaft-4", &[]).await;
    bench.follow(sent).await.assert_says("the plan, as version");
    let page = ticket_page(&shop, ticket).await;
    assert_eq!(page.revision.judgement.of(Severity::Stop).count(), 0, "the old tube is out of the reckoning");
    let why = in_the_way(&shop, ticket).await.expect("nothing was done yet");
    assert!(why.contains("cannot be ruled out on a plan") && why.contains(title), "{why}");

    // A number that is only planned is no better than a blank.
    let planned = |source| FactChange { path: "driveshaft.od_in".into(), value: Some(json!(6)), source };
    for (source, opens) in [(Source::Planned, false), (Source::Measured, true)] {
        let made_from = revision(&shop, ticket).await;
        let edit = Edit { facts: vec![planned(source)], ..Edit::default() };
        let change = ChangeTicket { ticket, made_from, edit };
        let who = Who::Staff(caller(&shop, Role::Technician).await);
        shop.service.write(who, Key::fresh(), change).await.expect("written down");
        assert_eq!(in_the_way(&shop, ticket).await.is_none(), opens, "{source:?}");
    }
}
