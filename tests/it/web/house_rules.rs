//! Rules of the shop's own: written, tried, switched on, heard on tickets.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, take_in, write};
use axum::http::StatusCode;
use endplay::ticket::{Judgement, Role};
use serde_json::json;
use uuid::Uuid;

const RULE: [(&str, &str); 8] = [
    ("title", "Heavy puller on rollers"),
    ("condition", "use.kind == 'pull' && engine.torque_lbft > 450"),
    ("severity", "caution"),
    ("due", "intake"),
    ("told_shop", "We have seen these come back. Talk to the customer about the stronger clutch."),
    ("fix", "Offer the stronger clutch."),
    ("told_customer", "Your engine pulls harder than this part likes. We would like to talk about it."),
    ("customer_accepts", "yes"),
];

fn with<'a>(changed: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let kept = RULE.iter().filter(|(name, _)| changed.iter().all(|(other, _)| other != name));
    kept.copied().chain(changed.iter().copied()).collect()
}

async fn written(owner: &Client) -> Page {
    let page = owner.post("/house-rules", &RULE).await;
    assert_eq!(page.location().as_deref(), Some("/house-rules/1"), "{}", page.text);
    owner.follow(page).await
}

/// Puts a rule of the shop's own in force, as an owner does.
pub async fn in_force(shop: &Shop) {
    let owner = shop.client(Role::Owner).await;
    written(&owner).await;
    switch(&owner, "1", "yes").await;
}

async fn job(shop: &Shop, usage: &str, torque: Option<f64>) -> i64 {
    let number = take_in(shop).await;
    let mut facts = vec![("use.kind", json!(usage))];
    facts.extend(torque.map(|torque| ("engine.torque_lbft", json!(torque))));
    write(shop, Role::Technician, number, &facts).await;
    number
}

async fn judgement(shop: &Shop, number: i64) -> Judgement {
    let desk = caller(shop, Role::Desk).await;
    shop.service.ticket(&desk, number).await.expect("the ticket").revision.judgement
}

#[tokio::test]
async fn a_rule_says_nothing_until_it_was_tried_and_switched_on() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let fires = job(&shop, "pull", Some(500.0)).await;
    job(&shop, "pull", Some(450.0)).await;
    let open = job(&shop, "pull", None).await;
    job(&shop, "street", None).await;
    written(&owner).await.assert_says("Not in force; version 1 is written");

    let early = owner.post("/house-rules/1/switch", &[("version", "1"), ("on", "yes")]).await;
    assert_eq!(early.status, StatusCode::UNPROCESSABLE_ENTITY);
    early.assert_says("Try this version on the jobs there are before you switch it on.");

    let tried = owner.follow(owner.post("/house-rules/1/try", &[("version", "1")]).await).await;
    tried.assert_says("It would have fired on 1 of 4 jobs of this shop. On 1 it could not have decided.");
    tried.assert_says(&format!("job {fires}"));
    let waits = tried.attributes(".waiting a", "href");
    let torque = format!("/tickets/{open}/facts/spec#f.engine.torque_lbft");
    assert_eq!(waits, [format!("/tickets/{open}"), torque], "where it cannot be decided, and for want of what");
    assert!(judgement(&shop, fires).await.findings.iter().all(|found| found.code != "HR-01"), "still silent");

    let on = owner.follow(owner.post("/house-rules/1/switch", &[("version", "1"), ("on", "yes")]).await).await;
    on.assert_says("In force, version 1");
    let later = job(&shop, "pull", Some(451.0)).await;
    let found = judgement(&shop, later).await.findings.into_iter().find(|found| found.code == "HR-01");
    let found = found.expect("it fires now");
    assert!(found.customer_accepts && found.basis.contains("version 1: use.kind == 'pull'"), "{found:?}");
    assert_eq!(found.facts, ["use.kind", "engine.torque_lbft"]);
    let waits = job(&shop, "pull", None).await;
    let open = judgement(&shop, waits).await.undecided.into_iter().find(|open| open.code == "HR-01");
    assert_eq!(open.expect("it cannot decide").needs, ["engine.torque_lbft"]);
    let waiting = owner.get(&format!("/tickets/{waits}")).await.texts(".waiting li").join(" ");
    assert!(waiting.contains("Heavy puller on rollers"), "by its title: {waiting}");
    owner.get(&format!("/tickets/{later}")).await.assert_says("Heavy puller on rollers");

    owner.post("/house-rules/1/switch", &[("version", "1"), ("on", "no")]).await;
    let silent = job(&shop, "pull", Some(500.0)).await;
    assert!(judgement(&shop, silent).await.findings.iter().all(|found| found.code != "HR-01"));
    assert!(judgement(&shop, later).await.findings.iter().any(|found| found.code == "HR-01"), "said on its day");
}

#[tokio::test]
async fn a_new_version_waits_while_the_old_one_stays_in_force() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    written(&owner).await;
    owner.post("/house-rules/1/try", &[("version", "1")]).await;
    owner.post("/house-rules/1/switch", &[("version", "1"), ("on", "yes")]).await;
    let stricter = with(&[("condition", "use.kind == 'pull'"), ("from", "1")]);
    let page = owner.follow(owner.post("/house-rules/1", &stricter).await).await;
    page.assert_says("Version 1 is in force; version 2 is written and not in force yet");
    let old = job(&shop, "pull", Some(400.0)).await;
    assert!(judgement(&shop, old).await.findings.iter().all(|found| found.code != "HR-01"));

    let stale = owner.post("/house-rules/1", &with(&[("title", "Another"), ("from", "1")])).await;
    assert_eq!(stale.status, StatusCode::UNPROCESSABLE_ENTITY);
    stale.assert_says("Version 2 of this rule was written by Olive Owner meanwhile.");

    owner.post("/house-rules/1/try", &[("version", "2")]).await;
    owner.post("/house-rules/1/switch", &[("version", "2"), ("on", "yes")]).await;
    let new = job(&shop, "pull", Some(400.0)).await;
    let found = judgement(&shop, new).await.findings.into_iter().find(|found| found.code == "HR-01");
    assert!(found.expect("it fires").basis.contains("version 2"));
    owner.get("/house-rules").await.assert_says("In force, version 2");
}

async fn switch(owner: &Client, version: &str, on: &str) {
    owner.post("/house-rules/1/try", &[("version", version)]).await;
    let page = owner.post("/house-rules/1/switch", &[("version", version), ("on", on)]).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn an_open_job_tells_which_rules_have_changed_since_it_was_judged_and_can_be_judged_again() {
    let shop = Shop::staffed().await;
    let (owner, bench) = (shop.client(Role::Owner).await, shop.client(Role::Technician).await);
    let path = format!("/tickets/{}", job(&shop, "pull", Some(500.0)).await);
    written(&owner).await;
    owner.post("/house-rules/1", &with(&[("fix", "Fit the stronger clutch."), ("from", "1")])).await;
    assert!(bench.get(&path).await.texts(".book-since").is_empty(), "what is only written decides nothing");

    let turns = [
        ("1", "yes", "not in force then, version 1 now", true),
        ("2", "yes", "version 1 then, version 2 now", true),
        ("2", "no", "version 2 then, not in force now", false),
    ];
    for (version, on, difference, speaks) in turns {
        switch(&owner, version, on).await;
        let told = bench.get(&path).await.texts(".book-since li");
        assert_eq!(told, [format!("HR-01, a rule of this shop's own: {difference}")]);
        bench.follow(bench.post(&format!("{path}/judge"), &[]).await).await.assert_says("judged by the book of today");
        let page = bench.get(&path).await;
        assert!(page.texts(".book-since").is_empty(), "{difference}");
        assert_eq!(page.text.contains("Heavy puller on rollers"), speaks, "{difference}");
    }
}

#[tokio::test]
async fn a_finding_set_aside_counts_again_when_another_version_of_its_rule_finds_it() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let quiet: Vec<_> = RULE.into_iter().filter(|(name, _)| *name != "customer_accepts").collect();
    owner.post("/house-rules", &quiet).await;
    switch(&owner, "1", "yes").await;
    let number = job(&shop, "pull", Some(500.0)).await;
    let aside = format!("/tickets/{number}/aside/HR-01");
    let base = owner.get(&aside).await.value("base");
    owner.post(&aside, &[("base", &base), ("reason", "The stronger clutch is in already.")]).await;
    let silenced = async || judgement(&shop, number).await.silenced.len();
    assert_eq!(silenced().await, 1);
    write(&shop, Role::Technician, number, &[("use.raced", json!(false))]).await;
    assert_eq!(silenced().await, 1, "the same rule stays set aside");

    owner.post("/house-rules/1", &with(&[("from", "1")])).await;
    switch(&owner, "2", "yes").await;
    write(&shop, Role::Technician, number, &[("bell.runout_in", json!(0.003))]).await;
    assert_eq!(silenced().await, 0);
    let found = judgement(&shop, number).await.findings.into_iter().find(|found| found.code == "HR-01");
    assert!(found.expect("it counts again").customer_accepts, "the customer has to tick it");
}

#[tokio::test]
async fn what_is_set_aside_from_an_old_version_of_its_rule_has_to_be_read_anew() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    written(&owner).await;
    switch(&owner, "1", "yes").await;
    let number = job(&shop, "pull", Some(500.0)).await;
    owner.post("/house-rules/1", &with(&[("told_customer", "Something else."), ("from", "1")])).await;
    switch(&owner, "2", "yes").await;
    let aside = format!("/tickets/{number}/aside/HR-01");
    let base = owner.get(&aside).await.value("base");
    let refused = owner.post(&aside, &[("base", &base), ("reason", "It is in already.")]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    refused.assert_says("What this rests on has changed since the job was judged. Judge the job again");
    assert_eq!(refused.value("reason"), "It is in already.");
}

#[tokio::test]
async fn a_rule_cannot_rest_on_what_the_jobs_own_papers_fill() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let hidden = "use.raced || (paper.signed_version > 1 && false)";
    let page = owner.post("/house-rules", &with(&[("condition", hidden)])).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    let why = ") is filled from the job's own papers; a rule of the shop's own cannot rest on it.";
    let told = page.texts("#summary a").join(" ");
    assert!(told.contains("paper.signed_version (") && told.contains(why), "{told}");
    let looked = owner.post("/house-rules/look", &with(&[("condition", hidden)])).await;
    looked.assert_says(why);
    let names = owner.get("/house-rules/new").await.texts(".names code");
    assert!(names.iter().all(|name| name != "paper.signed_version") && names.iter().any(|name| name == "order.plug"));
    owner.get("/house-rules").await.assert_says("There is none yet.");
    let log = owner.post("/house-rules", &with(&[("condition", "order.plug > 1 || use.raced")])).await;
    assert_eq!(log.status, StatusCode::SEE_OTHER, "the log of the work is fine");
}

#[tokio::test]
async fn everything_amiss_is_said_at_its_field_and_everything_typed_stays() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let bad = [("title", ""), ("condition", "use.knd == 'pull' && use.raced > 3"), ("told_shop", "Look."), ("fix", "")];
    let page = owner.post("/house-rules", &bad).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(page.attributes("#summary a", "href"), ["#severity", "#due"], "what a form can see by itself");
    assert_eq!(page.texts("textarea#condition"), ["use.knd == 'pull' && use.raced > 3"]);
    page.assert_says("There is no fact called use.knd. Did you mean use.kind?");

    let bad = with(&[("condition", "use.knd == 'pull' && use.raced > 3"), ("fix", ""), ("told_customer", "")]);
    let page = owner.post("/house-rules", &bad).await;
    assert_eq!(page.attributes("#summary a", "href"), ["#told_customer", "#fix", "#condition", "#condition"]);
    page.assert_says("cannot hold true or false against a number");
    assert_eq!(page.value("title"), "Heavy puller on rollers");
    owner.get("/house-rules").await.assert_says("There is none yet.");

    let looked = owner.post("/house-rules", &with(&[("do", "look"), ("title", "")])).await;
    assert_eq!(looked.status, StatusCode::OK);
    looked.assert_says("It can be read.");
    let part = owner.post("/house-rules/look", &with(&[("condition", "bell.insert_fitted &&")])).await;
    part.assert_says("It cannot be read yet.");
    assert_eq!(
        owner.post("/house-rules/look", &with(&[("condition", &"(".repeat(5000))])).await.status,
        StatusCode::OK
    );
}

#[tokio::test]
async fn a_form_sent_twice_writes_one_rule() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let once = Uuid::now_v7();
    for _ in 0..2 {
        assert_eq!(owner.post_once("/house-rules", once, &RULE).await.status, StatusCode::SEE_OTHER);
    }
    assert_eq!(owner.get("/house-rules").await.texts(".rule-list li").len(), 1);
}

#[tokio::test]
async fn the_search_of_the_rule_book_finds_the_shops_own_rules_and_leads_to_them() {
    let shop = Shop::staffed().await;
    let (owner, bench) = (shop.client(Role::Owner).await, shop.client(Role::Technician).await);
    written(&owner).await;
    let found = async |query: &str| bench.get(&format!("/rules?{query}")).await;
    for query in
        ["q=puller+ROLLERS", "q=hr-01", "q=%22come+back%22", "family=hr", "q=puller&severity=caution&part=engine"]
    {
        let page = found(query).await;
        let own = page.attributes(".rule-name", "href").into_iter().filter(|href| href == "/house-rules/1");
        assert_eq!(own.count(), 1, "{query}");
        page.assert_says("and 1 of this shop's own.");
    }
    found("q=rollers").await.assert_says("not in force, not fired yet");
    switch(&owner, "1", "yes").await;
    job(&shop, "pull", Some(500.0)).await;
    found("q=rollers").await.assert_says("in force, fired on 1 job");
    for query in ["q=puller&severity=stop", "q=puller&family=CSE", "q=rollers&part=bell"] {
        let hrefs = found(query).await.attributes(".rule-name", "href");
        assert!(!hrefs.contains(&"/house-rules/1".to_owned()), "{query}");
    }
}
