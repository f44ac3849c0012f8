//! The plans that would clear a job, on the invented shop's nastiest jobs, and what changes cost.

use crate::driver::{DESK, PHONE};
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::{Demo, OWNER, TECHNICIAN};
use endplay::ticket::Severity;

/// The open jobs with the most stops, the worst first.
async fn nastiest(shop: &Shop, demo: &Demo) -> Vec<i64> {
    let desk = shop.desk().await;
    let mut jobs = Vec::new();
    for number in demo.tickets.iter().copied() {
        let page = shop.service.ticket(&desk, number).await.expect("a job");
        let judgement = &page.revision.judgement;
        let (stops, cautions) = (judgement.of(Severity::Stop).count(), judgement.of(Severity::Caution).count());
        if page.ticket.stage.open() && stops > 0 {
            jobs.push((stops, cautions, number));
        }
    }
    jobs.sort_unstable();
    jobs.into_iter().rev().map(|(_, _, number)| number).collect()
}

#[tokio::test(flavor = "multi_thread")]
async fn plans_stand_side_by_side_and_one_tap_applies_one() {
    let (shop, demo) = Shop::full().await;
    let jobs = nastiest(&shop, &demo).await;
    let mut walk = Walk::of(Visitor::with(&shop, DESK, true).await);
    walk.visitor.sign_in(OWNER).await;
    for (place, number) in jobs.iter().take(3).enumerate() {
        walk.visit(&format!("clearing-{place}"), &format!("/tickets/{number}/clearing")).await;
    }
    let first = format!("/tickets/{}", jobs[0]);
    walk.visit("clearing-link", &first).await;
    walk.visitor.press("What would clear it").await;
    walk.visitor.reads("What would clear it").await;
    walk.visitor.unfold().await;
    walk.look("clearing-open").await;
    walk.visitor.press("Apply this plan").await;
    walk.visitor.reads("the plan, as version").await;
    walk.look("clearing-applied").await;
    walk.visit("levers", "/levers").await;
    walk.visit("lever", "/levers/output-32-short").await;
    walk.visitor.write("hours", "a day").await;
    walk.visitor.press("Save").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("lever-wrong").await;
    walk.visit("lever-hour", "/levers/labour-hour").await;
    walk.end();
}

#[tokio::test(flavor = "multi_thread")]
async fn without_script_and_by_keyboard_it_is_the_same() {
    let (shop, demo) = Shop::full().await;
    let jobs = nastiest(&shop, &demo).await;
    for (script, number) in [(false, jobs[0]), (true, jobs[1])] {
        let visitor = Visitor::with(&shop, PHONE, script).await;
        visitor.sign_in(TECHNICIAN).await;
        visitor.goto(&format!("/tickets/{number}/clearing")).await;
        for _ in 0..200 {
            if visitor.focus().await["words"].as_str().is_some_and(|text| text.contains("Apply this plan")) {
                break;
            }
            visitor.keys("\u{e004}").await;
        }
        visitor.keys("\u{e007}").await;
        visitor.reads("the plan, as version").await;
    }
}
