//! From the counter to the customer's signature, as three people at three screens.

use crate::driver::{DESK, PHONE, TABLET};
use crate::looks::complaints;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo;

#[tokio::test(flavor = "multi_thread")]
async fn from_the_counter_to_the_signature() {
    walk_through(true).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn from_the_counter_to_the_signature_without_script() {
    walk_through(false).await;
}

const CUSTOMER: &str = "Tamsin Heatherley";
/// What the counter learns makes this a caution to accept: the bell is to be cut off for good.
const CAUTION: &str = "CSE-11";
/// Bolt and hole of different thread systems.
const STOP: &str = "THR-02";

async fn walk_through(script: bool) {
    let (shop, _) = Shop::full().await;
    let desk = Visitor::with(&shop, DESK, script).await;
    let bench = Visitor::with(&shop, TABLET, script).await;
    let phone = Visitor::with(&shop, PHONE, script).await;
    desk.sign_in(demo::DESK).await;
    bench.sign_in(demo::TECHNICIAN).await;

    let job = take_in(&desk, script).await;
    hand_off(&desk, &job).await;
    desk.goto(&format!("{job}/intake/done")).await;
    desk.press("Make a link to send").await;
    let teardown = address(&desk, script).await;

    bench.goto("/").await;
    bench.tap(&format!("a[href='{job}']")).await;
    move_on(&bench, "Spec").await;
    is_stopped(&bench, &job, "Teardown", "Teardown authorised").await;
    reads_and_signs(&phone, &teardown, script).await;
    says_it_is_used(&phone, &teardown).await;
    bench.goto(&job).await;
    for stage in ["Teardown", "Quote", "Parts"] {
        move_on(&bench, stage).await;
    }

    names_a_price(&desk, &job).await;
    let first = build_link(&desk, &job, script).await;
    finds_a_stop(&bench, &job, script).await;
    is_stopped(&bench, &job, "Machining", "No open stop").await;
    // The job changed after the link was made; what it showed no longer counts.
    phone.goto(&first).await;
    phone.reads("There is a newer version").await;
    puts_it_right(&bench, &job).await;
    is_stopped(&bench, &job, "Machining", "Current version signed").await;

    let second = build_link(&desk, &job, script).await;
    reads_and_signs(&phone, &second, script).await;
    says_it_is_used(&phone, &second).await;
    learns_more(&bench, &job).await;
    desk.goto(&job).await;
    desk.reads("That signature no longer holds").await;
    is_stopped(&bench, &job, "Machining", "Current version signed").await;

    let third = build_link(&desk, &job, script).await;
    phone.goto(&third).await;
    phone.reads("This is a new version").await;
    phone.reads("That signature no longer counts").await;
    phone.browser.picture(&named("customer-changed", script)).await;
    reads_and_signs(&phone, &third, script).await;
    bench.goto(&job).await;
    move_on(&bench, "Machining").await;
    bench.browser.picture(&named("job-machining", script)).await;
    for visitor in [&desk, &bench, &phone] {
        assert_eq!(complaints(visitor).await, Vec::<String>::new());
    }
}

fn named(name: &str, script: bool) -> String {
    format!("journey-{name}{}", if script { "" } else { "-plain" })
}

/// From the board to the counter set, with what the rules say beside it; gives the job's address.
async fn take_in(desk: &Visitor, script: bool) -> String {
    desk.press("Take a unit in").await;
    desk.write("name", CUSTOMER).await;
    desk.write("phone", "555-0177").await;
    desk.write("vehicle", "maroon pickup, older, on its own wheels").await;
    desk.write("plate", "HTH 20").await;
    desk.write("wants", "Drive it to work all year.").await;
    desk.write("symptom", "Slips into third when it is hot.").await;
    desk.choose("part", "converter").await;
    desk.press("Open the ticket and go on").await;
    desk.reads("The unit as it stands").await;
    let job = desk.path().await.trim_end_matches("/intake").to_owned();

    desk.does_not_read("official measures").await;
    for (fact, answer) in
        [("use.kind", "street"), ("use.raced", "no"), ("use.road_driven", "yes"), ("bell.kind", "integral")]
    {
        desk.choose(&format!("f.{fact}"), answer).await;
    }
    // Only a bell of one piece with its case can be cut off, so only now is it asked.
    if !script {
        desk.press("Check so far").await;
    }
    desk.choose("f.bell.cut_planned", "yes").await;
    desk.write("f.engine.torque_lbft", "330").await;
    if !script {
        desk.press("Check so far").await;
    }
    desk.reads(CAUTION).await;
    desk.browser.snapshot(&named("counter-set", script)).await;
    desk.press("Save and go on").await;
    desk.reads("is taken in").await;
    job
}

/// The tag and the receipt stand ready to be printed.
async fn hand_off(desk: &Visitor, job: &str) {
    let number = job.trim_start_matches("/tickets/").to_owned();
    desk.press("Print the tag").await;
    desk.reads(&number).await;
    desk.reads(&format!("{}{job}", desk.origin)).await;
    desk.goto(&format!("{job}/intake/done")).await;
    desk.press("Print the receipt").await;
    desk.reads(&format!("Intake receipt, job {number}")).await;
    desk.reads("converter").await;
}

/// The link on the page that shows it once, without the shop's part.
async fn address(desk: &Visitor, script: bool) -> String {
    desk.reads("It is shown this once").await;
    desk.browser.picture(&named("link", script)).await;
    let shown = desk.browser.ask("return document.getElementById('address').value", vec![]).await;
    let shown = shown.as_str().expect("a link").to_owned();
    shown.strip_prefix(&desk.origin).expect("a page of the shop").to_owned()
}

async fn build_link(desk: &Visitor, job: &str, script: bool) -> String {
    desk.goto(job).await;
    desk.tap("#customer [name='purpose'][value='build'] ~ button").await;
    address(desk, script).await
}

async fn move_on(bench: &Visitor, stage: &str) {
    bench.press(&format!("Next {stage}")).await;
    bench.reads(&format!("the job is now at {stage}.")).await;
}

/// The job does not move, and the page says what is missing.
async fn is_stopped(bench: &Visitor, job: &str, stage: &str, gate: &str) {
    bench.goto(job).await;
    bench.press(if stage == "Teardown" { "Next Teardown" } else { "Next Machining" }).await;
    bench.reads(&format!("Not yet: {stage}")).await;
    bench.reads(gate).await;
    bench.reads("Only an owner can pass a closed gate").await;
    bench.goto(job).await;
}

async fn names_a_price(desk: &Visitor, job: &str) {
    desk.goto(job).await;
    desk.press("Change the price").await;
    desk.write("what.1", "Rebuild, labor and parts").await;
    desk.write("amount.1", "1450").await;
    desk.press("Save the price").await;
    desk.reads("450.00").await;
}

/// The technician writes down what the rule book stops, and sees that before it is saved.
async fn finds_a_stop(bench: &Visitor, job: &str, script: bool) {
    bench.goto(job).await;
    bench.press("Change: Outside, unit closed").await;
    bench.unfold().await;
    bench.choose("f.threads.mount_bolt", "inch").await;
    bench.choose("f.threads.mount_hole", "metric").await;
    if !script {
        bench.press("Check so far").await;
    }
    bench.reads(STOP).await;
    bench.browser.snapshot(&named("facts", script)).await;
    bench.press("Show what changes").await;
    bench.reads("Nothing is saved yet").await;
    bench.reads(STOP).await;
    bench.browser.picture(&named("diff", script)).await;
    bench.press("Save as a new version").await;
    bench.reads(STOP).await;
}

async fn puts_it_right(bench: &Visitor, job: &str) {
    bench.goto(&format!("{job}/facts/outside")).await;
    bench.unfold().await;
    bench.choose("f.threads.mount_bolt", "metric").await;
    bench.press("Show what changes").await;
    bench.reads("cleared").await;
    bench.press("Save as a new version").await;
    bench.reads("this is now version").await;
}

/// A fact more after the signature: the page says what that costs before it is saved.
async fn learns_more(bench: &Visitor, job: &str) {
    bench.goto(&format!("{job}/facts/spec")).await;
    bench.unfold().await;
    bench.choose("f.use.kind", "tow").await;
    bench.write("f.vehicle.tow_weight_lb", "6000").await;
    bench.press("Show what changes").await;
    bench.reads("The customer's signature will no longer hold").await;
    bench.press("Save as a new version").await;
    bench.reads("this is now version").await;
}

/// The customer is asked for each tick, gives them, signs, and holds a receipt.
async fn reads_and_signs(phone: &Visitor, link: &str, script: bool) {
    phone.goto(link).await;
    phone.press("Sign this version").await;
    phone.reads("Check what you entered").await;
    phone.browser.picture(&named("customer-asked", script)).await;
    phone.sign_all(CUSTOMER).await;
    phone.reads(CUSTOMER).await;
    phone.browser.picture(&named("customer-receipt", script)).await;
}

async fn says_it_is_used(phone: &Visitor, link: &str) {
    phone.goto(link).await;
    phone.reads("You have signed this").await;
    phone.reads("Receipt number").await;
}
