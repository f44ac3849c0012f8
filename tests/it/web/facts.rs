//! Writing facts down: live findings, the plain list of changes, two people at once.

use super::client::{Client, Page, Shop};
use super::jobs::{MIXED_THREADS, fact, revision, sign, stopped, take_in, write};
use axum::http::StatusCode;
use endplay::ticket::{Purpose, Role};
use serde_json::json;

/// Everything a page's form would send, in its order, with some of it typed over.
fn filled(page: &Page, typed: &[(&str, &str)]) -> Vec<(String, String)> {
    let of = |selector: &str| {
        let names = page.attributes(selector, "name");
        let values = page.attributes(selector, "value");
        names.into_iter().zip(values).collect::<Vec<_>>()
    };
    let mut fields = of("main form input[type='hidden'][name][value]");
    fields.extend(of("main form input[type='radio'][name][value][checked]"));
    fields.extend(of("main form input[type='text'][name][value], main form input[type='date'][name][value]"));
    fields.retain(|(name, _)| name != "once" && typed.iter().all(|(typed, _)| typed != name));
    for name in page.attributes("main form select[name]", "name") {
        if let Some(value) = page.attributes(&format!("select[name='{name}'] option[selected]"), "value").pop() {
            fields.push((name, value));
        }
    }
    fields.retain(|(name, _)| typed.iter().all(|(typed, _)| typed != name));
    fields.extend(typed.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())));
    fields
}

async fn send(client: &Client, path: &str, fields: &[(String, String)]) -> Page {
    let fields: Vec<_> = fields.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect();
    client.post(path, &fields).await
}

#[tokio::test]
async fn a_fact_is_written_down_looked_over_and_saved_as_a_new_version() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let path = format!("/tickets/{ticket}/facts/outside");
    let form = bench.get(&path).await;
    assert_eq!(form.attributes("input[name='source'][checked]", "value"), ["looked"], "what the sheet is for");
    let typed: Vec<_> = [("f.threads.mount_bolt", "inch"), ("f.threads.mount_hole", "metric"), ("do", "show")].into();
    let before = shop.fingerprint().await;
    let diff = send(&bench, &path, &filled(&form, &typed)).await;
    assert_eq!(diff.status, StatusCode::OK);
    assert_eq!(diff.texts("h1"), ["What changes"]);
    assert_eq!(diff.texts(".changes tbody th"), ["Thread of the mount hole", "Thread of the mount bolt"]);
    assert_eq!(diff.texts(".changes .was"), ["not known yet", "not known yet"]);
    assert!(diff.texts(".diff-found li").iter().any(|found| found.contains("THR-02")), "the new stop is named");
    assert_eq!(shop.fingerprint().await, before, "looking saves nothing");

    let again = send(&bench, &path, &filled(&diff, &[("do", "edit")])).await;
    assert_eq!(again.attributes("input[name='f.threads.mount_bolt'][checked]", "value"), ["inch"]);
    let saved = bench.follow(send(&bench, &path, &filled(&diff, &[("do", "save")])).await).await;
    saved.assert_says("this is now version 2.");
    assert_eq!(fact(&shop, ticket, "threads.mount_bolt").await, Some((json!("inch"), "Terry Tech".into())));
    let same = bench.follow(send(&bench, &path, &filled(&bench.get(&path).await, &[("do", "save")])).await).await;
    same.assert_says("Nothing was different");
    assert_eq!(revision(&shop, ticket).await, 2);
}

#[tokio::test]
async fn what_cannot_be_read_is_named_and_everything_typed_stays() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let path = format!("/tickets/{ticket}/facts/measured");
    let typed = [("base", "1"), ("f.bell.runout_in", "-1"), ("f.bench.rear_end_play_in", "0.012"), ("do", "save")];
    let wrong = bench.post(&path, &typed).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(wrong.texts("title")[0].starts_with("Check what you entered: "));
    assert_eq!(wrong.attributes(".summary a", "href"), ["#f.bell.runout_in"]);
    assert_eq!(
        wrong.texts(".summary a"),
        wrong.texts("[id='f.bell.runout_in-problem']"),
        "the same words at the field"
    );
    assert_eq!(wrong.value("f.bell.runout_in"), "-1");
    assert_eq!(wrong.value("f.bench.rear_end_play_in"), "0.012");
    assert_eq!(revision(&shop, ticket).await, 1, "nothing half done");
}

#[tokio::test]
async fn the_findings_follow_the_form_and_nothing_is_saved_by_looking() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let path = format!("/tickets/{ticket}/facts/outside");
    let before = shop.fingerprint().await;
    let mut typed: Vec<_> =
        MIXED_THREADS.iter().map(|(path, word)| (format!("f.{path}"), (*word).to_owned())).collect();
    typed.push(("base".into(), "1".into()));
    let live = send(&bench, &format!("{path}/look"), &typed).await;
    assert_eq!(live.status, StatusCode::OK);
    live.assert_says("1 stop");
    assert_eq!(live.texts("header"), Vec::<String>::new(), "the findings alone");
    typed.push(("do".into(), "look".into()));
    let whole = send(&bench, &path, &typed).await;
    assert_eq!(live.texts("#look h4"), whole.texts("#look h4"), "with script and without, the same");
    typed.push(("f.cooling.line_id_in".into(), "narrow".into()));
    let unread = send(&bench, &format!("{path}/look"), &typed).await;
    assert_eq!(unread.attributes(".look-problems a", "href"), ["#f.cooling.line_id_in"]);
    unread.assert_says("1 stop");
    assert_eq!(shop.fingerprint().await, before);
}

#[tokio::test]
async fn two_people_change_the_same_fact_and_both_values_are_shown() {
    let shop = Shop::staffed().await;
    let ticket = stopped(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{ticket}/facts/outside");
    let form = desk.get(&path).await;
    // Meanwhile the bench finds metric bolts and counts the ring.
    write(&shop, Role::Technician, ticket, &[("threads.mount_bolt", json!("metric")), ("bell.ring_holes", json!(7))])
        .await;

    let typed = [("f.threads.mount_bolt", ""), ("f.threads.mount_hole", "inch"), ("do", "save")];
    let clash = send(&desk, &path, &filled(&form, &typed)).await;
    assert_eq!(clash.status, StatusCode::CONFLICT);
    assert_eq!(clash.texts(".clash legend"), ["Thread of the mount bolt"]);
    assert_eq!(clash.texts(".clash-value"), ["not known yet", "Metric"]);
    assert!(clash.texts(".clash-who")[1].starts_with("Terry Tech, "));
    clash.assert_says("Kept besides: Thread of the mount hole.");
    assert_eq!(fact(&shop, ticket, "threads.mount_hole").await.expect("known").0, json!("metric"), "nothing half done");

    let theirs = filled(&clash, &[("keep.threads.mount_bolt", "theirs")]);
    desk.follow(send(&desk, &path, &theirs).await).await.assert_says("this is now version 4.");
    assert_eq!(fact(&shop, ticket, "threads.mount_bolt").await, Some((json!("metric"), "Terry Tech".into())));
    assert_eq!(fact(&shop, ticket, "threads.mount_hole").await, Some((json!("inch"), "Dale Desk".into())));
    let kept = fact(&shop, ticket, "bell.ring_holes").await;
    assert_eq!(kept, Some((json!(7), "Terry Tech".into())), "a blank that was only shown is not written back");
}

#[tokio::test]
async fn mine_can_be_chosen_over_theirs_and_different_facts_merge_unasked() {
    let shop = Shop::staffed().await;
    let ticket = stopped(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let path = format!("/tickets/{ticket}/facts/outside");
    let form = desk.get(&path).await;
    write(&shop, Role::Technician, ticket, &[("bell.ring_holes", json!(7))]).await;
    let other = send(&desk, &path, &filled(&form, &[("f.threads.mount_hole", "inch"), ("do", "save")])).await;
    assert_eq!(other.status, StatusCode::SEE_OTHER, "different facts are no quarrel");
    assert_eq!(fact(&shop, ticket, "bell.ring_holes").await, Some((json!(7), "Terry Tech".into())));

    let clash = send(&desk, &path, &filled(&form, &[("f.bell.ring_holes", "8"), ("do", "show")])).await;
    assert_eq!(clash.status, StatusCode::CONFLICT);
    let mine = filled(&clash, &[("keep.bell.ring_holes", "mine")]);
    desk.follow(send(&desk, &path, &mine).await).await.assert_says("this is now version 5.");
    assert_eq!(fact(&shop, ticket, "bell.ring_holes").await, Some((json!(8), "Dale Desk".into())));
}

#[tokio::test]
async fn before_saving_the_page_says_which_signature_will_end() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    write(&shop, Role::Desk, ticket, &[("use.raced", json!(true))]).await;
    sign(&shop, ticket, Purpose::Build).await;
    let desk = shop.client(Role::Desk).await;
    let spec = [("base", "2"), ("f.use.raced", "no"), ("do", "show")];
    let diff = desk.post(&format!("/tickets/{ticket}/facts/spec"), &spec).await;
    diff.assert_says("The customer's signature will no longer hold");
    diff.assert_says("Rosa Fielding signed version 2.");
    // What the bench measures is no part of what the customer signed.
    let measured = [("base", "2"), ("f.bell.runout_in", "0.004"), ("do", "show")];
    let diff = desk.post(&format!("/tickets/{ticket}/facts/measured"), &measured).await;
    assert!(diff.texts("h2").iter().all(|heading| !heading.contains("signature")), "{:?}", diff.texts("h2"));
}

#[tokio::test]
async fn a_finished_job_has_no_form_and_takes_no_facts() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let gone = [("from", "intake"), ("to", "declined"), ("reason", "Too dear")];
    desk.post(&format!("/tickets/{ticket}/stage"), &gone).await;
    let path = format!("/tickets/{ticket}/facts/outside");
    assert_eq!(desk.get(&path).await.location(), Some(format!("/tickets/{ticket}")));
    let sent = desk.post(&path, &[("base", "1"), ("f.bell.ring_holes", "8"), ("do", "save")]).await;
    assert_eq!(sent.status, StatusCode::UNPROCESSABLE_ENTITY);
    sent.assert_says("can no longer be changed");
}
