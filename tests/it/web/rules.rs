//! The rule book as pages: looked through by all who work here, with what it did in this shop.

use super::client::{Client, Page, Shop};
use super::jobs::{stopped, take_in, write};
use axum::http::StatusCode;
use endplay::rules::rules;
use endplay::ticket::Role;
use serde_json::json;

fn shown(page: &Page) -> Vec<String> {
    page.texts(".rule-rows .finding-code")
}

async fn fired(client: &Client, code: &str) -> (String, String) {
    let row = client.get(&format!("/rules?q={code}")).await.texts(".rule-rows li").join("");
    let whole = client.get(&format!("/rules/{code}")).await.texts(".rule-head + p").join("");
    (row, whole)
}

#[tokio::test]
async fn everybody_who_works_here_reads_the_whole_book() {
    let shop = Shop::staffed().await;
    for role in [Role::Owner, Role::Desk, Role::Technician] {
        let page = shop.client(role).await.get("/rules").await;
        assert_eq!(shown(&page), rules().map(|rule| rule.code.to_owned()).collect::<Vec<_>>(), "{role:?}");
        page.assert_says("not fired yet");
    }
    let board = shop.client(Role::Desk).await.get("/").await;
    let menu = board.attributes(".menu-list a", "href");
    assert_eq!(
        menu[1..4],
        ["/rules", "/limits", "/house-rules"],
        "after the sums the book, its limits, the shop's own"
    );
}

#[tokio::test]
async fn a_rule_is_found_by_word_family_severity_and_part() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let page = desk.get("/rules?q=Bell+RUNOUT&severity=caution&part=bell&family=CSE").await;
    assert!(shown(&page).contains(&"CSE-10".to_owned()), "{:?}", shown(&page));
    assert!(shown(&page).iter().all(|code| code.starts_with("CSE-")));
    assert_eq!(page.value("q"), "Bell RUNOUT");
    assert_eq!(page.attributes("option[selected]", "value"), ["CSE", "caution", "bell"], "what was chosen stays");
    let by_family = shown(&desk.get("/rules?family=spd").await);
    assert!(by_family.len() == 7 && by_family.iter().all(|code| code.starts_with("SPD-")), "{by_family:?}");

    let typo = desk.get("/rules?q=runuot&severity=caution").await;
    assert!(shown(&typo).is_empty());
    typo.assert_says("“runuot” stands nowhere in the book. Did you mean:");
    let href = typo.attributes(".rule-near a", "href").swap_remove(0);
    assert_eq!(href, "/rules?q=runout&severity=caution");
    assert!(!shown(&desk.get(&href).await).is_empty());
    desk.get("/rules?q=cse-10+spd-01").await.assert_says("no rule that fits has them all");
    desk.get("/rules?q=xyzzyxyzzy").await.assert_says("and no word like it does");
    let other = desk.get("/rules?severity=awful&part=%3Cb%3E").await;
    other.assert_says("There is no severity “awful” in the list, so it was left out.");
    assert_eq!(shown(&other).len(), rules().count());
}

#[tokio::test]
async fn a_rule_is_told_whole_with_the_limits_of_this_shop() {
    let shop = Shop::staffed().await;
    let move_it = [("turn", "0"), ("number", "0.008"), ("reason", "Our indicator reads to a tenth")];
    shop.client(Role::Owner).await.post("/limits/bell_runout", &move_it).await;
    let bench = shop.client(Role::Technician).await;
    let page = bench.get("/rules/cse-10").await;
    assert_eq!(page.status, StatusCode::OK);
    for words in [
        "CSE-10, asked about from",
        "What it checks",
        "Why it matters",
        "What puts it right",
        "The customer is told",
        "The limit bell bore runout: 0.008 in (set by this shop; 0.01 in as supplied: memory, medium).",
        "An owner may set 0.004 to 0.015 in.",
        "Fires on the plain job with Bell bore runout 0.014 in",
        "Does not fire on the plain job with",
    ] {
        page.assert_says(words);
    }
    let links = page.attributes("main a", "href");
    for link in ["/limits/bell_runout", "/rules?part=bell", "/rules?family=CSE", "/rules/CSE-09", "/rules/CSE-11"] {
        assert!(links.iter().any(|href| href == link), "{link} is not among {links:?}");
        assert_eq!(bench.get(link).await.status, StatusCode::OK, "{link}");
    }
}

#[tokio::test]
async fn a_code_that_is_no_rule_leads_to_the_near_ones_and_a_house_rule_to_its_page() {
    let shop = Shop::staffed().await;
    let desk = shop.client(Role::Desk).await;
    let page = desk.get("/rules/CSE-1O").await;
    assert_eq!(page.status, StatusCode::NOT_FOUND);
    page.assert_says("There is no rule “CSE-1O”");
    assert!(page.attributes(".rule-rows a", "href").contains(&"/rules/CSE-10".to_owned()));
    let far = desk.get("/rules/%3Cscript%3E").await;
    assert_eq!(far.status, StatusCode::NOT_FOUND);
    far.assert_says("No code is like it.");
    assert_eq!(desk.get("/rules/hr-03").await.location().as_deref(), Some("/house-rules/3"));
}

#[tokio::test]
async fn a_rule_says_on_how_many_jobs_of_this_shop_it_fired() {
    let shop = Shop::staffed().await;
    let bench = shop.client(Role::Technician).await;
    let (row, whole) = fired(&bench, "THR-02").await;
    assert!(row.ends_with("not fired yet") && whole.ends_with("not fired yet."), "{row} / {whole}");

    let first = stopped(&shop).await;
    assert_eq!(
        fired(&bench, "THR-02").await.1,
        format!("In this shop it has fired on 1 job, the newest: job {first}.")
    );
    let mixed = json!("metric");
    write(&shop, Role::Technician, first, &[("threads.mount_bolt", mixed.clone())]).await;
    let second = take_in(&shop).await;
    write(&shop, Role::Desk, second, &[("threads.mount_bolt", json!("inch")), ("threads.mount_hole", mixed)]).await;
    let (row, whole) = fired(&bench, "THR-02").await;
    assert!(row.ends_with("fired on 2 jobs"), "{row}");
    assert!(whole.ends_with(&format!("the newest: job {second}, job {first}.")), "{whole}");
}

#[tokio::test]
async fn a_finding_leads_to_its_rule_for_staff_alone() {
    let shop = Shop::staffed().await;
    let ticket = stopped(&shop).await;
    let bench = shop.client(Role::Technician).await;
    let path = format!("/tickets/{ticket}");
    let on_ticket = bench.get(&path).await;
    assert!(on_ticket.attributes("#THR-02 h4 a", "href").contains(&"/rules/THR-02".to_owned()));
    assert!(on_ticket.attributes("#THR-02 h4 a", "target").is_empty());
    for page in ["facts/outside", "intake"] {
        let page = bench.get(&format!("{path}/{page}")).await;
        let beside = page.attributes("a[href='/rules/THR-02']", "target");
        assert!(!beside.is_empty() && beside.iter().all(|target| target == "_blank"), "what is typed is not left");
    }
    let paper = shop.client(Role::Desk).await.get(&format!("{path}/sign/build")).await;
    assert!(paper.attributes("main a", "href").iter().all(|href| !href.starts_with("/rules")));
}
