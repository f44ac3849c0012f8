//! The customer's page: reading, signing, saying no, by link and at the counter.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, comes_back, revision, sign, take_in, write};
use axum::body::Body;
use axum::http::{Method, Request, StatusCode, header};
use endplay::job::fact_ids;
use endplay::plan::steps::filler;
use endplay::quantity::Cents;
use endplay::service::{AddStaff, ChangeTicket, Key, MakeLink, RevokeLink, Who, WriteNote};
use endplay::ticket::{Answer, Channel, Edit, Paper, Price, PriceLine, Purpose, Role};
use jiff::SignedDuration;
use serde_json::json;

async fn link(shop: &Shop, ticket: i64, purpose: Purpose) -> String {
    let desk = caller(shop, Role::Desk).await;
    let make = MakeLink { ticket, purpose, days: None };
    let made = shop.service.make_link(&desk, Key::fresh(), make).await.expect("made");
    format!("/c/{}", made.pass.expect("shown once"))
}

/// A job whose summary has something to accept, and the address of its page.
async fn with_ticks(shop: &Shop) -> (i64, String) {
    let ticket = take_in(shop).await;
    // A bell that is to be sawn off for good is something to accept.
    write(shop, Role::Desk, ticket, &[("bell.cut_planned", json!(true))]).await;
    (ticket, link(shop, ticket, Purpose::Build).await)
}

fn ticks(page: &Page) -> Vec<String> {
    page.attributes("input[type=checkbox]", "name")
}

/// Signs as a person does: every tick, the name, the button.
async fn sign_on_page(client: &Client, path: &str, page: &Page, send_to: &str) -> Page {
    let names = ticks(page);
    let shown = page.value("shown");
    let mut fields: Vec<(&str, &str)> = names.iter().map(|name| (name.as_str(), "yes")).collect();
    fields.extend([("shown", shown.as_str()), ("name", "Rosa Fielding")]);
    client.post(&format!("{path}{send_to}"), &fields).await
}

async fn record(shop: &Shop, ticket: i64) -> endplay::ticket::SignatureRecord {
    let desk = caller(shop, Role::Desk).await;
    shop.service.ticket(&desk, ticket).await.expect("the ticket").receipts.remove(0).record
}

fn every_line(paper: &Paper) -> Vec<String> {
    let mut lines = vec![paper.title.clone(), paper.price.clone(), paper.promise.clone(), paper.refusal.clone()];
    lines.extend(paper.opening.clone());
    lines.extend(paper.blocks.iter().flat_map(|block| [vec![block.heading.clone()], block.lines.clone()].concat()));
    lines.extend(paper.ticks.iter().map(|tick| tick.text.clone()));
    lines
}

#[tokio::test]
async fn a_customer_reads_ticks_signs_and_keeps_a_receipt() {
    let shop = Shop::staffed().await;
    let (ticket, path) = with_ticks(&shop).await;
    let phone = shop.nobody();
    let page = phone.get(&path).await;
    assert_eq!(page.status, StatusCode::OK);
    page.assert_says("Ferndale Gearbox");
    page.assert_says("555 0100");
    assert!(!ticks(&page).is_empty());
    assert!(page.attributes("input[type=checkbox][checked]", "name").is_empty(), "nothing is ticked for the customer");
    // One tap for each point, one for the name, one for the button: nothing else stands between.
    assert_eq!(page.texts("form.signing button").len(), 1);
    assert_eq!(page.attributes("form.signing input:not([type=hidden])", "name").len(), ticks(&page).len() + 1);

    let receipt = phone.follow(sign_on_page(&phone, &path, &page, "/sign").await).await;
    assert_eq!(receipt.status, StatusCode::OK);
    let record = record(&shop, ticket).await;
    assert_eq!((record.channel, record.name.as_str(), record.witness), (Channel::Link, "Rosa Fielding", None));
    assert_eq!(record.accepted.len(), ticks(&page).len());
    let seen = page.texts("body").join(" ");
    for line in every_line(&record.paper) {
        let line = line.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(seen.contains(&line), "signed but not shown: {line}");
    }
    let desk = caller(&shop, Role::Desk).await;
    let reference = shop.service.ticket(&desk, ticket).await.expect("the ticket").receipts[0].reference.clone();
    receipt.assert_says(&reference);
    receipt.assert_says("Rosa Fielding");
}

#[tokio::test]
async fn a_used_link_says_so_and_takes_nothing_more() {
    let shop = Shop::staffed().await;
    let (ticket, path) = with_ticks(&shop).await;
    let phone = shop.nobody();
    let page = phone.get(&path).await;
    sign_on_page(&phone, &path, &page, "/sign").await;
    let again = phone.get(&path).await;
    assert_eq!(again.status, StatusCode::GONE);
    again.assert_says("You have signed this");
    again.assert_says("555 0100");
    assert!(again.texts("form").is_empty());
    let second = phone.follow(sign_on_page(&phone, &path, &page, "/sign").await).await;
    assert_eq!(second.status, StatusCode::GONE);
    let desk = caller(&shop, Role::Desk).await;
    assert_eq!(shop.service.ticket(&desk, ticket).await.expect("the ticket").receipts.len(), 1);
}

#[tokio::test]
async fn what_is_missing_is_said_at_its_place_and_what_was_given_stays() {
    let shop = Shop::staffed().await;
    let (_, path) = with_ticks(&shop).await;
    let phone = shop.nobody();
    let page = phone.get(&path).await;
    let (shown, names) = (page.value("shown"), ticks(&page));
    let sent = phone.post(&format!("{path}/sign"), &[("shown", &shown), ("name", "Rosa F.")]).await;
    assert_eq!(sent.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(sent.texts("title")[0].starts_with("Check what you entered: "));
    assert_eq!(sent.value("name"), "Rosa F.");
    for name in &names {
        assert!(sent.attributes(".summary a", "href").contains(&format!("#{name}")), "{name}");
        assert_eq!(sent.attributes(&format!("input[name='{name}']"), "aria-invalid"), ["true"]);
    }
    let mut fields: Vec<(&str, &str)> = names.iter().map(|name| (name.as_str(), "yes")).collect();
    fields.push(("shown", &shown));
    let nameless = phone.post(&format!("{path}/sign"), &fields).await;
    assert_eq!(nameless.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(nameless.attributes(".summary a", "href"), ["#name"]);
    assert_eq!(nameless.attributes("input[type=checkbox][checked]", "name"), names, "ticks stay");
}

#[tokio::test]
async fn a_customer_says_no_with_the_reason_and_only_with_one() {
    let shop = Shop::staffed().await;
    let (ticket, path) = with_ticks(&shop).await;
    let phone = shop.nobody();
    let shown = phone.get(&path).await.value("shown");
    let to = format!("{path}/decline");
    let empty = phone.post(&to, &[("shown", &shown), ("who", "Rosa Fielding"), ("why", " ")]).await;
    assert_eq!(empty.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(empty.attributes(".summary a", "href"), ["#why"]);
    assert_eq!(empty.attributes("details.declining[open]", "class").len(), 1, "the form that is wrong stands open");
    assert_eq!(empty.value("who"), "Rosa Fielding");
    let nameless = phone.post(&to, &[("shown", &shown), ("why", "Too dear.")]).await;
    assert_eq!(nameless.attributes(".summary a", "href"), ["#who"]);
    nameless.assert_says("Too dear.");

    let sent = phone.post(&to, &[("shown", &shown), ("who", "Rosa Fielding"), ("why", "Too dear.")]).await;
    let receipt = phone.follow(sent).await;
    receipt.assert_says("You said no");
    receipt.assert_says("Too dear.");
    receipt.assert_says("Said no as: Rosa Fielding");
    assert!(!receipt.text.contains("Signed as"), "a no is no signature");
    let record = record(&shop, ticket).await;
    assert_eq!((record.answer, record.why.as_deref()), (Answer::Declined, Some("Too dear.")));
    assert!(record.accepted.is_empty());
}

#[tokio::test]
async fn a_link_that_is_closed_says_why_and_whom_to_call() {
    let shop = Shop::staffed().await;
    let (ticket, path) = with_ticks(&shop).await;
    let desk = caller(&shop, Role::Desk).await;
    let phone = shop.nobody();
    let closed = async |path: &str, words: &str| {
        let page = phone.get(path).await;
        assert_eq!(page.status, StatusCode::GONE, "{words}");
        page.assert_says(words);
        page.assert_says("555 0100");
        assert!(page.texts("form").is_empty());
        let sent = phone.post(&format!("{path}/sign"), &[("shown", "x"), ("name", "Rosa")]).await;
        assert_eq!(phone.follow(sent).await.status, StatusCode::GONE);
    };
    write(&shop, Role::Desk, ticket, &[("vehicle.weight_lb", json!(4100))]).await;
    closed(&path, "There is a newer version").await;

    let revoked = link(&shop, ticket, Purpose::Build).await;
    let id = shop.service.links(&desk, ticket).await.expect("the links")[0].id;
    shop.service.write(Who::Staff(desk), Key::fresh(), RevokeLink { ticket, link: id }).await.expect("taken back");
    closed(&revoked, "The shop took this link back").await;

    let intake = link(&shop, ticket, Purpose::Intake).await;
    sign(&shop, ticket, Purpose::Intake).await;
    closed(&intake, "The shop already has your yes").await;

    let old = link(&shop, ticket, Purpose::Build).await;
    shop.wait(SignedDuration::from_hours(24 * 30 + 1));
    closed(&old, "This link is too old").await;
}

#[tokio::test]
async fn a_link_nobody_made_is_a_page_like_any_other_that_is_not_there() {
    let shop = Shop::staffed().await;
    let (_, path) = with_ticks(&shop).await;
    let phone = shop.nobody();
    let (head, _) = path.split_at(path.len() - 10);
    let wrong = format!("{head}AAAAAAAAAA");
    let mut pages = Vec::new();
    for path in ["/c/x", "/c/a.b", wrong.as_str(), "/c/x/receipt", "/no/such/page"] {
        let page = phone.get(path).await;
        assert_eq!(page.status, StatusCode::NOT_FOUND, "{path}");
        let told: Vec<_> = page.texts("main p").into_iter().filter(|text| !text.starts_with("Reference")).collect();
        pages.push(told.join(" "));
    }
    assert!(pages.iter().all(|page| *page == pages[0]), "{pages:#?}");
    let sent = phone.post("/c/x/sign", &[("shown", "x"), ("name", "Rosa")]).await;
    assert_eq!(sent.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn looking_never_signs_and_never_leaves_a_trace() {
    let shop = Shop::staffed().await;
    let (_, path) = with_ticks(&shop).await;
    let phone = shop.nobody();
    let before = shop.fingerprint().await;
    for path in [path.clone(), format!("{path}/receipt"), format!("{path}/sign"), format!("{path}/decline")] {
        for method in [Method::GET, Method::HEAD] {
            let request = Request::builder()
                .method(method)
                .uri(&path)
                .header(header::HOST, super::client::HOST)
                .body(Body::empty());
            let page = phone.raw(request.expect("a request")).await;
            assert!(page.status.as_u16() < 500, "{path}");
        }
    }
    assert_eq!(shop.fingerprint().await, before);
    let page = phone.get(&path).await;
    let header = |name: &str| page.headers.get(name).map(|value| value.to_str().expect("text")).unwrap_or_default();
    assert_eq!(header("cache-control"), "no-store");
    assert_eq!(header("referrer-policy"), "no-referrer");
    assert!(header("x-robots-tag").contains("noindex"));
}

#[tokio::test]
async fn a_changed_build_tells_what_changed_and_which_ticks_no_longer_count() {
    let shop = Shop::staffed().await;
    let (ticket, _) = with_ticks(&shop).await;
    sign(&shop, ticket, Purpose::Build).await;
    write(&shop, Role::Desk, ticket, &[("bell.cut_planned", json!(false)), ("vehicle.weight_lb", json!(4100))]).await;
    let page = shop.nobody().get(&link(&shop, ticket, Purpose::Build).await).await;
    page.assert_says("You signed version 2");
    page.assert_says("That signature no longer counts");
    page.assert_says("Now: With driver and fuel it weighs 4,100 pounds");
    page.assert_says("Ticks you gave that no longer count");
    assert!(page.texts(".since del").iter().any(|text| text.contains("saw off")), "the lasting change is gone");
}

/// The page holds what the paper holds and what the page itself says, and nothing of the shop's own.
#[tokio::test]
async fn nothing_of_the_shops_own_reaches_the_customer() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let other = take_in(&shop).await;
    comes_back(&shop, other).await;
    let desk = caller(&shop, Role::Desk).await;
    let owner = caller(&shop, Role::Owner).await;
    let add =
        AddStaff { name: "Quill Zephyr".into(), role: Role::Technician, password: "four words in a row here".into() };
    shop.service.add_staff(&owner, Key::fresh(), add).await.expect("added");
    // Every fact the plain job knows, and mixed threads and a bad seal besides: plenty to say to the bench.
    let plain = endplay::job::Job::plain();
    let facts: Vec<_> = fact_ids()
        .filter(|fact| filler(*fact).is_none())
        .filter_map(|fact| Some((fact.declaration().path, plain.slot(fact).json()?)))
        .chain([
            ("threads.mount_hole", json!("metric")),
            ("output.spline", json!(27)),
            ("bell.cut_planned", json!(true)),
        ])
        .collect();
    write(&shop, Role::Desk, ticket, &facts).await;
    let lines = [("Zincwhisker special", 99_900), ("Under-the-bench rate", 12_300)];
    let lines = lines.map(|(what, cents)| PriceLine { what: what.into(), cents: Cents(cents) });
    let edit = Edit { price: Some(Price { lines: lines.into() }), ..Edit::default() };
    let change = ChangeTicket { ticket, made_from: revision(&shop, ticket).await, edit };
    shop.service.write(Who::Staff(desk.clone()), Key::fresh(), change).await.expect("priced");
    let note = WriteNote { ticket, text: "Haggles. Do not give in.".into() };
    shop.service.write(Who::Staff(desk.clone()), Key::fresh(), note).await.expect("noted");

    let found = shop.service.ticket(&desk, ticket).await.expect("the ticket").revision.judgement.findings;
    assert!(!found.is_empty());
    for purpose in [Purpose::Intake, Purpose::Build] {
        let page = shop.nobody().get(&link(&shop, ticket, purpose).await).await;
        page.assert_says(if purpose == Purpose::Build { "Price: 1122.00" } else { "What happens next" });
        let text = page.text.as_str();
        let internal = [
            "Zincwhisker",
            "Under-the-bench",
            "999.00",
            "123.00",
            "Haggles",
            "Dale Desk",
            "Terry Tech",
            "Olive",
            "Quill",
            "rosa@example.org",
            "010-4477",
            "QX 4417",
            "/tickets/",
            "/board",
            "SHA",
        ];
        for word in internal {
            assert!(!text.contains(word), "{word} stands on the {} page", purpose.code());
        }
        let seen = page.texts("body").join(" ");
        for finding in &found {
            for sentence in [&finding.shop, &finding.fix, &finding.basis] {
                assert!(sentence.len() < 12 || !seen.contains(sentence.as_str()), "{}: {sentence}", finding.code);
            }
        }
        for fact in fact_ids() {
            assert!(!text.contains(fact.declaration().path), "{}", fact.declaration().path);
        }
    }
}

#[tokio::test]
async fn the_same_page_is_signed_at_the_counter_before_a_witness() {
    let shop = Shop::staffed().await;
    let (ticket, _) = with_ticks(&shop).await;
    let path = format!("/tickets/{ticket}");
    let desk = shop.client(Role::Desk).await;
    let page = desk.get(&format!("{path}/sign/build")).await;
    assert_eq!(page.status, StatusCode::OK);
    page.assert_says("hand the screen to the customer");
    assert!(page.texts("header nav").is_empty(), "the customer does not hold the shop's menu in their hands");
    let sent = desk.post(&format!("{path}/sign/build"), &[("shown", &page.value("shown")), ("name", "")]).await;
    assert_eq!(sent.status, StatusCode::UNPROCESSABLE_ENTITY);

    let receipt = desk.follow(sign_on_page(&desk, &path, &page, "/sign/build").await).await;
    receipt.assert_says("At the counter, before Dale Desk");
    let record = record(&shop, ticket).await;
    assert_eq!((record.channel, record.witness.as_deref()), (Channel::Counter, Some("Dale Desk")));

    let tech = shop.client(Role::Technician).await;
    assert_eq!(tech.get(&format!("{path}/sign/build")).await.status, StatusCode::FORBIDDEN);
    assert_eq!(desk.get(&format!("{path}/sign/nonsense")).await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_customer_at_the_counter_may_say_no_as_well() {
    let shop = Shop::staffed().await;
    let ticket = take_in(&shop).await;
    let desk = shop.client(Role::Desk).await;
    let shown = desk.get(&format!("/tickets/{ticket}/sign/intake")).await.value("shown");
    let fields = [("shown", shown.as_str()), ("who", "Rosa Fielding"), ("why", "I want to think.")];
    let receipt = desk.follow(desk.post(&format!("/tickets/{ticket}/decline/intake"), &fields).await).await;
    receipt.assert_says("You said no");
    let record = record(&shop, ticket).await;
    assert_eq!((record.answer, record.channel), (Answer::Declined, Channel::Counter));
}
