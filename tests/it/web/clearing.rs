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
    shop.service.clearing(&caller(shop, Role::Desk).await, &page).await.expect("the plans").0.plans
}

pub(super) async fn apply(client: &Client, ticket: i64, base: i32, levers: &str, more: &[(&str, &str)]) -> Page {
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
    page.assert_says("Plan 1: No stop, for the least");
    assert!(page.texts(".plan-differs")[0].starts_with("Against plan 1:"), "{:?}", page.texts(".plan-differs"));
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
    let shown = desk.get(&path).await.attributes(".plan-do [name=total]", "value").remove(0);
    let first = plans(&shop, ticket).await.remove(0);
    assert_eq!(shown, first.cost.to_string(), "there was no price before");
    let untold = apply(&desk, ticket, before, &first.codes().join(" "), &[("price", "add")]).await;
    assert_eq!(untold.status, StatusCode::UNPROCESSABLE_ENTITY);
    let sum = [("price", "add"), ("total", shown.as_str())];
    apply(&desk, ticket, before, &first.codes().join(" "), &sum).await;
    let after = ticket_page(&shop, ticket).await;
    let price = after.revision.contents.price().expect("a price").in_words();
    assert!(price.contains("Fit the nut that belongs on the shift shaft 13.00"), "{price}");
    assert_eq!(after.revision.number, before + 1);
    let (late, job) = ("Named before the latest plan", format!("/tickets/{ticket}"));
    assert!(!desk.get(&job).await.text.contains(late), "the price came with the plan");
    let more = plans(&shop, ticket).await.remove(0).codes().join(" ");
    let again = apply(&desk, ticket, before + 1, &more, &[]).await;
    assert_eq!(again.status, StatusCode::SEE_OTHER);
    desk.get(&job).await.assert_says(late);
}

#[tokio::test]
async fn a_price_that_moved_since_the_page_was_shown_is_not_written_down() {
    let shop = Shop::staffed().await;
    let (owner, ticket) = (shop.client(Role::Owner).await, troubled(&shop).await);
    let (before, path) = (revision(&shop, ticket).await, format!("/tickets/{ticket}/clearing"));
    let page = owner.get(&path).await;
    let field = |name: &str| page.attributes(&format!(".plan-do [name={name}]"), "value").remove(0);
    let (levers, total) = (field("levers"), field("total"));
    owner.post("/levers/labour-hour", &[("turn", "0"), ("parts", "250")]).await;
    let sent = [("price", "add"), ("total", total.as_str())];
    let refused = apply(&owner, ticket, before, &levers, &sent).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    refused.assert_says(&format!("was {total} on the page and would be"));
    assert_eq!(revision(&shop, ticket).await, before, "nothing half done");
    let dearer = refused.attributes(".plan-do [name=total]", "value").remove(0);
    assert_ne!(dearer, total, "the page that says so shows the new prices");
    let applied = apply(&owner, ticket, before, &levers, &[("price", "add"), ("total", &dearer)]).await;
    assert_eq!(applied.status, StatusCode::SEE_OTHER);
    let price = ticket_page(&shop, ticket).await.revision.contents.price().expect("a price").total_in_words();
    assert_eq!(price, dearer);
}

#[tokio::test]
async fn work_that_decides_nothing_ahead_is_told_and_not_applied() {
    let shop = Shop::staffed().await;
    let (bench, ticket) = (shop.client(Role::Technician).await, take_in(&shop).await);
    // A bell that is to be cut for good lacks the customer's word, and nobody at the bench can write that down.
    write(&shop, Role::Technician, ticket, &[("bell.cut_planned", json!(true))]).await;
    let base = revision(&shop, ticket).await;
    let all = plans(&shop, ticket).await;
    let bare: Vec<&Plan> = all.iter().filter(|plan| plan.edits.is_empty()).collect();
    assert!(!bare.is_empty(), "{all:?}");
    let page = bench.get(&format!("/tickets/{ticket}/clearing")).await;
    assert_eq!((page.texts(".plan").len(), page.texts(".plan-do").len()), (all.len(), all.len() - bare.len()));
    page.assert_says("Nothing to apply:");
    let refused = apply(&bench, ticket, base, &bare[0].codes().join(" "), &[]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    refused.assert_says("There is nothing to write down ahead for that plan.");
    assert_eq!(revision(&shop, ticket).await, base);
}

#[tokio::test]
async fn a_rule_of_the_shops_own_that_cannot_be_read_is_said_to_be_left_out() {
    let shop = Shop::staffed().await;
    let (bench, ticket) = (shop.client(Role::Technician).await, troubled(&shop).await);
    let path = format!("/tickets/{ticket}/clearing");
    assert!(bench.get(&path).await.texts("#unreadable").is_empty());
    super::house_rules::in_force(&shop).await;
    let older = "UPDATE house_rule SET condition = 'yoke.colour == (' WHERE nth = 1";
    sqlx::query(older).execute(&shop.database.owner_pool).await.expect("as an older program kept it");
    let page = bench.get(&path).await;
    let told = page.texts("#unreadable").join(" ");
    assert!(told.contains("cannot be read: HR-01") && told.contains("do not reckon with it"), "{told}");
    page.assert_says("by the rules that can be read");
}

#[tokio::test]
async fn what_is_planned_stands_on_the_customers_paper_in_plain_words() {
    let shop = Shop::staffed().await;
    let (bench, ticket) = (shop.client(Role::Technician).await, troubled(&shop).await);
    let plan = plans(&shop, ticket).await.remove(1);
    let paper = shop.service.paper(&caller(&shop, Role::Desk).await, ticket, Purpose::Build).await.expect("a paper");
    assert!(paper.blocks.iter().all(|block| block.heading != "What we plan to do"));
    apply(&bench, ticket, revision(&shop, ticket).await, &plan.codes().join(" "), &[]).await;
    let paper = shop.service.paper(&caller(&shop, Role::Desk).await, ticket, Purpose::Build).await.expect("a paper");
    let block = paper.blocks.iter().find(|block| block.heading == "What we plan to do").expect("the plan");
    for line in [
        "We plan to fit another yoke. It joins the driveshaft to the unit.",
        "We plan to fit nuts or bolts of the right thread.",
        "We will check the unit on the bench again. Until then we do not call it fine.",
        "None of this is done yet. We do it after you have signed.",
    ] {
        assert!(block.lines.iter().any(|one| one == line), "{line} not in {:?}", block.lines);
    }
    // Once somebody saw it done it is no plan any more.
    write(&shop, Role::Technician, ticket, &[("yoke.spline", json!(32)), ("yoke.kind", json!("slip"))]).await;
    let paper = shop.service.paper(&caller(&shop, Role::Desk).await, ticket, Purpose::Build).await.expect("a paper");
    assert!(paper.blocks.iter().all(|block| block.lines.iter().all(|line| !line.contains("another yoke"))));
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
