//! Sums: worked out for anybody, put on a ticket by those who work here.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, revision, take_in, write};
use axum::http::StatusCode;
use endplay::job::fact_named;
use endplay::sums::{Sum, address, all};
use endplay::ticket::{Entry, Role};
use serde_json::json;
use uuid::Uuid;

const DRIVEN: &str = "/sums/driven-gear";
const RADIUS: &str = "/sums/lining-radius";
/// Eight teeth, 3.73, 28.5 in: 21 would read true.
const GEARS: [(&str, &str); 4] = [("drive", "8"), ("axle", "3.73"), ("tire", "28.5"), ("shelf", "19 20 21")];
const LINING: [(&str, &str); 2] = [("outside", "5.5"), ("inside", "4-1/2")];

fn example(sum: &Sum) -> String {
    address(sum, |name| sum.input(name).map_or_else(String::new, |input| input.example.to_owned()))
}

/// A fact of a ticket as it stands.
async fn fact(shop: &Shop, ticket: i64, path: &str) -> Option<Entry> {
    let desk = caller(shop, Role::Desk).await;
    let page = shop.service.ticket(&desk, ticket).await.expect("the ticket");
    page.revision.contents.facts.entry(fact_named(path).expect("a fact"))
}

/// Sends a sum to a ticket, as the page's own form does.
async fn put(client: &Client, path: &str, ticket: &str, typed: &[(&str, &str)], more: &[(&str, &str)]) -> Page {
    client.post(path, &[&[("ticket", ticket)], typed, more].concat()).await
}

#[tokio::test]
async fn anybody_opens_every_sum_and_reads_its_working() {
    let shop = Shop::staffed().await;
    let nobody = shop.nobody();
    let list = nobody.get("/sums").await;
    assert_eq!(list.attributes(".sums-open", "href").len(), all().count());
    nobody.get("/sums?q=TRANS+brake").await.assert_says("Heat on the trans brake");
    nobody.get("/sums?q=xyzzy").await.assert_says("No sum speaks of “xyzzy”. Try one word less.");
    for (_, sum) in all() {
        let page = nobody.get(&example(sum)).await;
        assert_eq!(page.status, StatusCode::OK, "{}", sum.name);
        let outcome = sum.answer(
            |name| sum.input(name).map_or_else(String::new, |input| input.example.to_owned()),
            &endplay::rules::Limits::default(),
        );
        for line in outcome.outcome.expect("the example computes").lines {
            page.assert_says(&line.worked.split_whitespace().collect::<Vec<_>>().join(" "));
        }
        assert_eq!(page.attributes("#sum-link", "href"), [example(sum)], "the link carries the inputs");
        assert_eq!(page.texts("#sum-link"), [format!("https://shop.example{}", example(sum))]);
        assert!(page.texts("form[method=post]").is_empty(), "nobody puts anything anywhere");
        page.assert_says("Sign in to put it on a ticket");
    }
    assert_eq!(nobody.get("/sums/no-such-sum").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn what_is_missing_or_cannot_be_is_said_and_everything_typed_stays() {
    let shop = Shop::staffed().await;
    let nobody = shop.nobody();
    let empty = nobody.get(DRIVEN).await;
    assert_eq!(empty.texts("#needs-heading ~ ul li").len(), 4);
    assert!(empty.texts("#result-heading").is_empty(), "nothing is guessed");
    let wrong = nobody.get(&format!("{DRIVEN}?drive=8.5&axle=3,73&tire=F70-14&shelf=%3Cb%3E&else=1")).await;
    assert_eq!(wrong.status, StatusCode::OK);
    assert_eq!(wrong.texts(".problem").len(), 4);
    wrong.assert_says("Drive gear teeth cannot be “8.5”: it must be a whole number from 4 to 40.");
    wrong.assert_says("write the decimal with a point");
    wrong.assert_says("letter size");
    for (name, typed) in [("drive", "8.5"), ("axle", "3,73"), ("tire", "F70-14"), ("shelf", "<b>")] {
        assert_eq!(wrong.value(name), typed);
    }
    assert_eq!(wrong.attributes("#wrong-heading ~ ul a", "href"), ["#drive", "#axle", "#tire", "#shelf"]);
}

#[tokio::test]
async fn a_sum_is_held_against_the_shops_own_limit_for_everybody() {
    let shop = Shop::staffed().await;
    let owner = shop.client(Role::Owner).await;
    let gap = "/sums/cruise?road=65&axle=3.73&tire=28.5";
    shop.nobody().get(gap).await.assert_says("Limit: engine speed at cruise 3,200 rpm (shop setting).");
    let moved = [("turn", "0"), ("number", "2800"), ("reason", "Quiet cars")];
    assert_eq!(owner.post("/limits/cruise_rpm_most", &moved).await.status, StatusCode::SEE_OTHER);
    for client in [&shop.nobody(), &owner] {
        let page = client.get(gap).await;
        page.assert_says("Outside. Engine speed at cruise is 2,859 rpm: above the limit of 2,800 rpm.");
        page.assert_says("2,800 rpm (set by this shop; 3,200 rpm as supplied: shop setting)");
    }
}

#[tokio::test]
async fn a_part_to_fit_goes_on_the_ticket_as_planned_with_its_working() {
    let shop = Shop::staffed().await;
    let bench = shop.client(Role::Technician).await;
    let ticket = take_in(&shop).await;
    let sent = put(&bench, DRIVEN, &ticket.to_string(), &GEARS, &[("keep", "speedometer.driven_teeth")]).await;
    let page = bench.follow(sent).await;
    page.assert_says("the sum, with its working in the history.");
    let kept = fact(&shop, ticket, "speedometer.driven_teeth").await.expect("kept");
    assert_eq!((kept.value, kept.origin.source.code(), kept.origin.by.as_str()), (json!(21), "planned", "Terry Tech"));
    let history = bench.get(&format!("/tickets/{ticket}/history")).await;
    history.assert_says("Sum put on the job: Driven gear to choose");
    history.assert_says("8 × 3.73 × 20,168 / 28.5 in / 1,000 = 21.12");
    history.assert_says("Limit: speedometer error 4 % (common practice)");
    let link = history.attributes(".entry a[href^='/sums/']", "href");
    bench.get(&link[0]).await.assert_says("21 teeth");
}

#[tokio::test]
async fn a_table_is_read_row_by_row_and_goes_into_the_history_so() {
    let shop = Shop::staffed().await;
    let bench = shop.client(Role::Technician).await;
    let typed = [("table", "0 140 2; 0.5 150 1.5; 0.9 200 1"), ("sheet", "inch")];
    let page = bench.get("/sums/converter-table?table=0+140+2%3B+0.5+150+1.5%3B+0.9+200+1&sheet=inch").await;
    assert_eq!(page.texts(".sum-table thead th"), ["Speed ratio", "K", "Torque ratio", "Efficiency"]);
    assert_eq!(page.texts(".sum-table tbody tr:nth-child(2) td"), ["150.0", "1.500", "75.0 %"]);
    let refused = bench.get("/sums/converter-table?table=0.5+150+1.5%3B+0+140+2&sheet=inch").await;
    refused.assert_says("Converter table cannot be that: row 2 has a speed ratio of 0, not above the 0.5 before it.");
    let ticket = take_in(&shop).await;
    let sent = put(&bench, "/sums/converter-table", &ticket.to_string(), &typed, &[]).await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER);
    let history = bench.get(&format!("/tickets/{ticket}/history")).await;
    history.assert_says("How that sheet counts K: In rpm / √lb-ft");
    history.assert_says("Speed ratio 0.5: K 150.0, Torque ratio 1.500, Efficiency 75.0 %");
}

#[tokio::test]
async fn a_choice_is_told_by_its_name_and_the_answer_is_where_the_form_leads() {
    let shop = Shop::staffed().await;
    let page = shop.nobody().get("/sums/one-way-load").await;
    page.assert_says("For example Street and strip.");
    assert_eq!(page.attributes("form.sum-form", "action"), ["/sums/one-way-load#sum-summary"]);
    assert_eq!(page.attributes("#sum-summary", "role"), ["status"]);
    shop.nobody().get("/sums/brake-time?from=180").await.assert_says("F or C");
}

#[tokio::test]
async fn what_follows_from_measurements_is_kept_as_computed_and_a_result_without_a_fact_in_the_history() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let ticket = take_in(&shop).await;
    let number = ticket.to_string();
    let once = Uuid::now_v7();
    let fields = [&[("ticket", number.as_str()), ("keep", "direct.mean_radius_in")], &LINING[..]].concat();
    for _ in 0..2 {
        assert_eq!(desk.post_once(RADIUS, once, &fields).await.status, StatusCode::SEE_OTHER);
    }
    let kept = fact(&shop, ticket, "direct.mean_radius_in").await.expect("kept");
    assert_eq!((kept.value, kept.origin.source.code()), (json!(2.5), "computed"));
    let version = revision(&shop, ticket).await;
    let cruise = [("road", "65"), ("axle", "3.73"), ("tire", "28.5")];
    assert_eq!(put(&desk, "/sums/cruise", &number, &cruise, &[]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(revision(&shop, ticket).await, version, "no fact, no new version");
    let history = desk.get(&format!("/tickets/{ticket}/history")).await;
    let entries = history.texts(".entry-what");
    let sums: Vec<_> = entries.iter().filter(|what| what.starts_with("Sum put on the job")).collect();
    assert_eq!(sums.len(), 2, "sent twice, it counts once: {entries:?}");
}

#[tokio::test]
async fn a_number_that_is_known_is_written_over_only_by_who_has_seen_it() {
    let shop = Shop::staffed().await;
    let bench = shop.client(Role::Technician).await;
    let ticket = take_in(&shop).await;
    let number = ticket.to_string();
    write(&shop, Role::Technician, ticket, &[("direct.mean_radius_in", json!(2.6))]).await;
    let keep = ("keep", "direct.mean_radius_in");
    let refused = put(&bench, RADIUS, &number, &LINING, &[keep]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    refused.assert_says("is known already: 2.6 in (looked, Terry Tech). To write 2.5 in over it, tick that");
    assert_eq!((refused.value("ticket"), refused.value("inside")), (number.clone(), "4-1/2".to_owned()));
    assert_eq!(refused.attributes("input[name='over.direct.mean_radius_in']", "value"), ["2.6"]);
    assert_eq!(refused.attributes("input[name=keep][checked]", "value"), ["direct.mean_radius_in"]);
    // Somebody measured again meanwhile: the tick was for another number.
    write(&shop, Role::Technician, ticket, &[("direct.mean_radius_in", json!(2.7))]).await;
    let over = ("over.direct.mean_radius_in", "2.6");
    assert_eq!(put(&bench, RADIUS, &number, &LINING, &[keep, over]).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(fact(&shop, ticket, "direct.mean_radius_in").await.expect("known").value, json!(2.7));
    let seen = ("over.direct.mean_radius_in", "2.7");
    assert_eq!(put(&bench, RADIUS, &number, &LINING, &[keep, seen]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(fact(&shop, ticket, "direct.mean_radius_in").await.expect("known").value, json!(2.5));
}

#[tokio::test]
async fn nothing_goes_on_a_ticket_that_the_sum_does_not_give() {
    let shop = Shop::staffed().await;
    let bench = shop.client(Role::Technician).await;
    let ticket = take_in(&shop).await;
    let number = ticket.to_string();
    let before = shop.fingerprint().await;
    for (job, typed, more, words) in [
        (number.as_str(), &LINING[..], &[("keep", "engine.torque_lbft")][..], "gives no such fact"),
        (&number, &LINING[..1], &[], "Lining inside diameter is still needed."),
        (&number, &[("outside", "4"), ("inside", "5")], &[], "has to be less than the outside"),
        ("", &LINING, &[], "Which job? Write its number, such as 1042."),
        ("12a", &LINING, &[], "The job cannot be “12a”"),
        ("99999", &LINING, &[], "There is no job 99999 in this shop."),
    ] {
        let page = put(&bench, RADIUS, job, typed, more).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{words}");
        page.assert_says(words);
    }
    assert_eq!(shop.fingerprint().await, before);
    assert_eq!(put(&shop.nobody(), RADIUS, &number, &LINING, &[]).await.status, StatusCode::UNAUTHORIZED);
}

#[tokio::test]
async fn a_jobs_own_numbers_are_filled_in_and_named_for_staff_only() {
    let shop = Shop::staffed().await;
    let bench = shop.client(Role::Technician).await;
    let ticket = take_in(&shop).await;
    let facts = [("vehicle.axle_ratio", json!(4.11)), ("speedometer.drive_teeth", json!(9))];
    write(&shop, Role::Technician, ticket, &facts).await;
    let list = format!("/tickets/{ticket}/sums");
    bench.get(&format!("/tickets/{ticket}")).await.assert_says("Sums with this job's numbers");
    bench.get(&list).await.assert_says("This job knows 2 of 4 numbers");
    let one = bench.get(&format!("{list}/driven-gear")).await;
    assert_eq!((one.value("axle"), one.value("drive"), one.value("tire")), ("4.11".into(), "9".into(), String::new()));
    assert_eq!(one.texts(".sum-taken li"), ["Drive gear teeth: 9 (looked)", "Axle ratio: 4.11 (looked)"]);
    let typed = bench.get(&format!("{list}/driven-gear?axle=3.73&drive=&tire=28.5&shelf=21")).await;
    assert_eq!((typed.value("axle"), typed.value("drive")), ("3.73".into(), String::new()), "what was typed stays");
    assert!(typed.texts(".sum-taken li").is_empty());
    let whole = bench.get(&format!("{list}/driven-gear?tire=28.5&shelf=19+21")).await;
    assert_eq!(whole.value("ticket"), ticket.to_string());
    let link = whole.attributes("#sum-link", "href");
    assert_eq!(link, ["/sums/driven-gear?drive=9&axle=4.11&tire=28.5&shelf=19+21"]);
    let seen = shop.nobody().get(&link[0]).await;
    seen.assert_says("21 teeth");
    for private in ["Rosa", "Fielding", "QX 4417", &ticket.to_string(), "coupe"] {
        assert!(!seen.text.contains(private), "{private} is the job's own");
    }
    for path in [&list, &format!("{list}/driven-gear")] {
        assert!(shop.nobody().get(path).await.location().is_some_and(|to| to.starts_with("/sign-in?next=")));
    }
    assert_eq!(bench.get("/tickets/99999/sums").await.status, StatusCode::NOT_FOUND);
}
