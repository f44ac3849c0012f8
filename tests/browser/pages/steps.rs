//! The steps of a job on the tablet: one tap, a hold point, a warning, with and without script, by hand and by keys.

use crate::driver::TABLET;
use crate::keyboard::walk;
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::{Demo, TECHNICIAN};
use endplay::ticket::done;

/// Jobs of the invented shop that have a step log.
pub struct WorkedOn {
    /// Waits at a hold point, everything before it done in order.
    pub held: i64,
    /// Its drum went in before the one-way clutch was tried.
    pub out_of_order: i64,
    /// Its bell is sawn off.
    pub sawn: i64,
}

/// Finds them.
pub async fn worked_on(shop: &Shop, demo: &Demo) -> WorkedOn {
    let desk = shop.desk().await;
    let (mut held, mut out_of_order, mut sawn) = (None, None, None);
    for number in demo.tickets.iter().copied() {
        let page = shop.service.ticket(&desk, number).await.expect("a job");
        let is_done = |code| done(&page.log, code).is_some();
        if page.revision.judgement.findings.iter().any(|found| found.code == "SEQ-06") {
            out_of_order = Some(number);
        } else if is_done("AS-03") && !is_done("AS-04") {
            held = Some(number);
        } else if is_done("MC-02") {
            sawn = Some(number);
        }
    }
    let [held, out_of_order, sawn] =
        [held, out_of_order, sawn].map(|number| number.expect("a job of the invented shop"));
    WorkedOn { held, out_of_order, sawn }
}

#[tokio::test(flavor = "multi_thread")]
async fn the_steps_of_a_job() {
    let (shop, demo) = Shop::full().await;
    let jobs = worked_on(&shop, &demo).await;
    let mut walk = Walk::of(Visitor::with(&shop, TABLET, true).await);
    walk.visitor.sign_in(TECHNICIAN).await;
    walk.visit("steps-out-of-order", &format!("/tickets/{}/steps", jobs.out_of_order)).await;
    walk.visit("steps-sawn", &format!("/tickets/{}/steps", jobs.sawn)).await;
    let list = format!("/tickets/{}/steps", jobs.held);
    walk.visit("steps-held", &list).await;
    walk.visitor.unfold().await;
    walk.look("steps-held-open").await;

    walk.visit("step-warned", &format!("{list}/AS-05")).await;
    walk.visitor.reads("Do this first").await;
    walk.visit("step-held", &format!("{list}/AS-04")).await;
    walk.visitor.choose("f.bench.input_turns_free", "no").await;
    walk.visitor.reads("One finding about what is read here.").await;
    walk.look("step-verdict").await;
    walk.visitor.choose("f.bench.input_turns_free", "yes").await;
    walk.visitor.write("initials", "JT").await;
    walk.visitor.press("Done").await;
    walk.visitor.reads("Done: Pump on, torqued while the input turns").await;
    walk.look("steps-ticked").await;
    walk.visitor.press("Undo").await;
    walk.visitor.reads("Taken back: Pump on").await;

    walk.visit("step-done", &format!("{list}/WA-01")).await;
    walk.visitor.unfold().await;
    walk.visitor.press("Take it back").await;
    walk.visitor.reads("Write down why this step counts as not done").await;
    walk.look("step-why").await;
    walk.end();
}

#[tokio::test(flavor = "multi_thread")]
async fn steps_are_ticked_without_script_too() {
    let (shop, demo) = Shop::full().await;
    let list = format!("/tickets/{}/steps", worked_on(&shop, &demo).await.held);
    let visitor = Visitor::with(&shop, TABLET, false).await;
    visitor.sign_in(TECHNICIAN).await;
    visitor.goto(&format!("{list}/AS-04")).await;
    visitor.choose("f.bench.input_turns_free", "no").await;
    visitor.press("Check the reading").await;
    visitor.reads("One finding about what is read here.").await;
    visitor.choose("f.bench.input_turns_free", "yes").await;
    visitor.press("Done").await;
    visitor.reads("Done: Pump on, torqued while the input turns").await;
    visitor.press("Drill and tap the vent").await;
    visitor.reads("Added: Drill and tap the vent.").await;
}

#[tokio::test(flavor = "multi_thread")]
async fn the_steps_are_reached_with_keys() {
    let (shop, demo) = Shop::full().await;
    let list = format!("/tickets/{}/steps", worked_on(&shop, &demo).await.held);
    let visitor = Visitor::with(&shop, TABLET, true).await;
    visitor.sign_in(TECHNICIAN).await;
    for page in [list.clone(), format!("{list}/AS-04")] {
        visitor.goto(&page).await;
        walk(&visitor).await;
    }
}
