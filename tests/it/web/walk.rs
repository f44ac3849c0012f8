//! Every page that links lead to, walked through in a shop full of hostile texts.

use super::client::{Client, Page, Shop};
use super::jobs::{caller, stopped};
use axum::http::StatusCode;
use endplay::service::{
    AddStaff, Key, MakeLink, Person, TakeIn, UseClassTable, VehicleWords, WhichVehicle, Who, WhoseUnit,
    WriteClassTable, WriteNote,
};
use endplay::ticket::{ClassTable, Edit, FactChange, Purpose, Role, Source};
use serde_json::json;
use std::collections::{BTreeMap, BTreeSet, HashSet};

/// What somebody might type to have it run on another's screen.
pub const HOSTILE: [&str; 12] = [
    "<script>alert(1)</script>",
    "\"><script>alert(1)</script>",
    "'\"><img src=x onerror=alert(1)>",
    "</title><script>alert(1)</script>",
    "</textarea><iframe src=javascript:alert(1)>",
    "javascript:alert(1)",
    "{{7*7}}${7*7}<%= 7*7 %>",
    "<svg/onload=alert(1)>",
    "&lt;script&gt;alert(1)&lt;/script&gt;",
    "' autofocus onfocus=alert(1) x='",
    "<a href=\"javascript:alert(1)\">x</a>",
    "<base href=//evil.example>",
];

/// A ticket with this text wherever a text can be kept. Gives the customer's links.
async fn fill(shop: &Shop, text: &str) -> Vec<String> {
    let owner = caller(shop, Role::Owner).await;
    let who = || Who::Staff(owner.clone());
    let short: String = text.chars().take(20).collect();
    let fact = |path: &str, value| FactChange { path: path.into(), value: Some(value), source: Source::CustomerSaid };
    let form = TakeIn {
        customer: WhoseUnit::New(Person {
            name: text.into(),
            phone: format!("555 0142 {short}"),
            email: format!("a@{text}"),
        }),
        vehicle: WhichVehicle::New(VehicleWords { words: text.into(), plate: short.clone() }),
        edit: Edit {
            wants: Some(text.into()),
            symptom: Some(text.into()),
            brought: Some(text.into()),
            facts: vec![
                fact("fluid.required", json!(text)),
                fact("threads.mount_bolt", json!("inch")),
                fact("threads.mount_hole", json!("metric")),
            ],
            ..Edit::default()
        },
        promised: None,
        comeback_of: None,
    };
    let ticket = shop.service.write(who(), Key::fresh(), form).await.expect("taken in").ticket;
    shop.service.write(who(), Key::fresh(), WriteNote { ticket, text: text.into() }).await.expect("noted");
    let asks = [("class_table.shield_always".to_owned(), json!(true))].into();
    let table = ClassTable { year: 2027, body: text.into(), class: text.into(), asks };
    let write = WriteClassTable { follows: None, table, offered: true };
    let table = shop.service.write(who(), Key::fresh(), write).await.expect("typed");
    let take = UseClassTable { ticket, made_from: 1, table };
    shop.service.write(who(), Key::fresh(), take).await.expect("taken");
    let mut links = vec![format!("/tickets/{ticket}/class-table")];
    for purpose in [Purpose::Intake, Purpose::Build] {
        let make = MakeLink { ticket, purpose, days: None };
        let made = shop.service.make_link(&owner, Key::fresh(), make).await.expect("made");
        links.push(format!("/c/{}", made.pass.expect("shown once")));
    }
    links
}

/// A ticket's number is as good as any other's: `/tickets/7/history` is walked once as `/tickets/#/history`.
fn kind(path: &str) -> String {
    let path = path.split('?').next().unwrap_or(path);
    let parts = path.split('/').map(|part| if part.parse::<i64>().is_ok() { "#" } else { part });
    let kind = parts.collect::<Vec<_>>().join("/");
    // One measurement's page is as good as any other's, and so is one sum's.
    ["/sheet/", "/sums/"].iter().fold(kind, |kind, part| match kind.split_once(part) {
        Some((before, _)) => format!("{before}{part}*"),
        None => kind,
    })
}

/// Opens every page that links lead to; of each kind at most so many.
async fn walk(client: &Client, from: &[String], most: usize) -> BTreeMap<String, Page> {
    let mut seen = BTreeMap::new();
    let mut kinds: BTreeMap<String, usize> = BTreeMap::new();
    let mut open: Vec<String> = from.to_vec();
    while let Some(path) = open.pop() {
        let count = kinds.entry(kind(&path)).or_default();
        if seen.contains_key(&path) || *count >= most {
            continue;
        }
        *count += 1;
        let page = client.get(&path).await;
        let links = page.attributes("a[href]", "href").into_iter().chain(page.location());
        open.extend(links.filter(|to| to.starts_with('/')).map(|to| to.split('#').next().unwrap_or("/").to_owned()));
        seen.insert(path, page);
    }
    seen
}

#[tokio::test]
async fn nothing_typed_ever_becomes_part_of_a_page() {
    let shop = Shop::staffed().await;
    let owner = caller(&shop, Role::Owner).await;
    let mut links = vec!["/".to_owned()];
    for text in HOSTILE {
        links.extend(fill(&shop, text).await);
        let add = AddStaff { name: text.into(), role: Role::Desk, password: "copper lantern mile oats".into() };
        shop.service.add_staff(&owner, Key::fresh(), add).await.expect("added");
    }
    let pages = walk(&shop.client(Role::Owner).await, &links, HOSTILE.len()).await;
    assert!(pages.len() > 8 * HOSTILE.len(), "only {} pages were walked", pages.len());
    for (path, page) in &pages {
        assert!(page.status.is_success() || page.status.is_redirection(), "{path}: {}", page.status);
        for source in page.attributes("script", "src") {
            assert!(source.starts_with("/static/"), "{path} runs {source}");
        }
        assert_eq!(page.texts("script").join(""), "", "{path} holds a script of its own");
        for foreign in ["iframe", "object", "embed", "base", "img", "svg[onload]", "[onerror]", "[onfocus]", "style"] {
            assert_eq!(page.attributes(foreign, "class").len() + page.texts(foreign).len(), 0, "{path}: {foreign}");
        }
        for to in page.attributes("[href]", "href") {
            assert!(to.starts_with('/') || to.starts_with('#') || to.starts_with("tel:"), "{path} leads to {to}");
        }
        assert!(!page.text.contains("49${"), "{path} was reckoned");
    }
    let everything: String = pages.values().flat_map(|page| page.texts("body")).collect();
    for text in HOSTILE {
        let folded = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(everything.contains(&folded), "{text} is shown letter by letter somewhere");
    }
}

#[tokio::test]
async fn looking_at_everything_changes_nothing() {
    let shop = Shop::staffed().await;
    stopped(&shop).await;
    let mut links = vec!["/".to_owned(), "/?q=Rosa".to_owned(), "/tickets/99".to_owned(), "/c/nothing".to_owned()];
    links.extend(fill(&shop, "Plain words").await);
    let mut browsers = vec![shop.nobody()];
    for role in [Role::Owner, Role::Desk, Role::Technician] {
        browsers.push(shop.client(role).await);
    }
    // A session notes after a while when it was used last; here no while passes.
    shop.stop_the_clock();
    let before = shop.fingerprint().await;
    let mut walked = 0;
    for browser in &browsers {
        for (path, page) in walk(browser, &links, 3).await {
            assert!(!page.status.is_server_error(), "{path}: {}", page.status);
            walked += 1;
        }
    }
    assert!(walked > 60, "only {walked} pages were walked");
    assert_eq!(shop.fingerprint().await, before);
}

#[tokio::test]
async fn every_page_is_sound() {
    let shop = Shop::staffed().await;
    stopped(&shop).await;
    let mut links = vec!["/".to_owned()];
    links.extend(fill(&shop, "Plain words").await);
    for (path, page) in walk(&shop.client(Role::Owner).await, &links, 2).await {
        if page.status != StatusCode::OK
            || !page.headers["content-type"].to_str().expect("text").starts_with("text/html")
        {
            continue;
        }
        assert_eq!(page.texts("h1").len(), 1, "{path}: one heading says what the page is");
        assert!(!page.texts("title")[0].is_empty(), "{path} has a title");
        assert_eq!(page.attributes("html", "lang"), ["en"], "{path}");
        let ids = page.attributes("[id]", "id");
        let distinct: HashSet<_> = ids.iter().collect();
        assert_eq!(ids.len(), distinct.len(), "{path} names two things the same: {:?}", twice(&ids));
        let named: BTreeSet<_> = page.attributes("label[for]", "for").into_iter().collect();
        for kind in
            ["input[type=text]", "input[type=tel]", "input[type=password]", "input[type=date]", "select", "textarea"]
        {
            for field in page.attributes(kind, "id") {
                let spoken =
                    page.attributes(&format!("[id='{field}'][aria-label],[id='{field}'][aria-labelledby]"), "id");
                assert!(named.contains(&field) || !spoken.is_empty(), "{path}: what is {field}?");
            }
        }
        for (attribute, described) in ["aria-describedby", "aria-labelledby", "for"]
            .iter()
            .flat_map(|name| page.attributes(&format!("[{name}]"), name).into_iter().map(move |value| (name, value)))
        {
            for id in described.split_whitespace() {
                assert!(ids.iter().any(|known| known == id), "{path}: {attribute} points to {id}, which is not there");
            }
        }
    }
}

fn twice(ids: &[String]) -> Vec<&String> {
    ids.iter().enumerate().filter(|(at, id)| ids[..*at].contains(id)).map(|(_, id)| id).collect()
}
