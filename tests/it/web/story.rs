//! One story with the same numbers: what stands in a picture of a job, in a sum of it, on its sheet and among its
//! findings is printed alike wherever it stands.

use super::client::{Client, Page, Shop};
use endplay::demo::{self, OWNER, PASSWORD};
use jiff::Timestamp;
use scraper::{ElementRef, Html, Selector};
use std::collections::{BTreeMap, BTreeSet};

/// Where a number of a picture stands in a sum it leads to: picture, row and column; sum and result.
const SAME: &[(&str, &str, usize, &str, &str)] = &[
    ("capacity", "forward clutch", 1, "need-by-range", "The forward clutch"),
    ("capacity", "intermediate clutch", 1, "need-by-range", "The intermediate clutch"),
    ("capacity", "intermediate one-way clutch", 1, "need-by-range", "The intermediate one-way clutch"),
    ("capacity", "low one-way clutch", 1, "need-by-range", "The low one-way clutch"),
    ("capacity", "front band", 1, "need-by-range", "The front band"),
    ("capacity", "rear band", 1, "need-by-range", "The rear band"),
    ("capacity", "rear band, reverse", 1, "reactions", "Rear band in reverse"),
    ("capacity", "intermediate one-way clutch", 1, "one-way-load", "Torque on the outer race"),
    ("capacity", "direct clutch", 1, "direct-need", "Need, margin included"),
    ("capacity", "direct clutch", 3, "clutch-capacity", "The pack holds"),
    ("speeds", "third", 2, "speed-in-gear", "Road speed"),
    ("speeds", "cruise in third", 3, "cruise", "Engine speed"),
    ("stall", "Behind this engine", 1, "stall-elsewhere", "Stall here"),
    ("driveshaft", "Whips", 1, "driveshaft-critical", "Critical speed"),
    ("driveshaft", "Highest used", 3, "driveshaft-critical", "Share of it in use"),
    ("mount-thread", "As measured", 1, "thread-engagement", "Engaged"),
];

/// The pictures of a page: the cells of every row, and the sums they lead to.
struct Pictures {
    /// By picture and the row's name.
    rows: BTreeMap<(String, String), Vec<String>>,
    /// Picture and address.
    leads: Vec<(String, String)>,
}

fn chosen(selector: &str) -> Selector {
    Selector::parse(selector).expect("a selector")
}

/// All words of an element, with single blanks.
fn words(element: ElementRef<'_>) -> String {
    element.text().flat_map(str::split_whitespace).collect::<Vec<_>>().join(" ")
}

fn pictures(page: &Page) -> Pictures {
    let document = Html::parse_document(&page.text);
    let (mut rows, mut leads) = (BTreeMap::new(), Vec::new());
    for picture in document.select(&chosen("section.picture")) {
        let name = picture.attr("aria-labelledby").expect("a heading").trim_end_matches("-heading").to_owned();
        for row in picture.select(&chosen("tbody tr")) {
            let cells: Vec<String> = row.select(&chosen("th, td")).map(words).collect();
            rows.insert((name.clone(), cells[0].clone()), cells);
        }
        let link = chosen(".picture-sums a");
        let addresses = picture.select(&link).filter_map(|link| link.attr("href"));
        leads.extend(addresses.map(|href| (name.clone(), href.to_owned())));
    }
    Pictures { rows, leads }
}

/// Every sum that a picture leads to, worked out for the job: its results by label.
async fn sums(client: &Client, leads: &[(String, String)]) -> BTreeMap<(String, String), BTreeMap<String, String>> {
    let mut all = BTreeMap::new();
    for (picture, href) in leads {
        let sum = client.get(href).await;
        assert!(sum.status.is_success(), "{href}");
        let document = Html::parse_document(&sum.text);
        assert!(document.select(&chosen("#wrong-heading")).next().is_none(), "{href} carries what the sum refuses");
        let path = href.split('?').next().unwrap_or_default();
        let which = path.rsplit('/').next().unwrap_or_default().to_owned();
        let (labels, results) = (chosen(".sum-lines dt"), chosen(".sum-lines dd"));
        let results = document.select(&labels).map(words).zip(document.select(&results).map(words));
        all.insert((picture.clone(), which), results.collect());
    }
    all
}

/// The number in front, without its sign: a picture says backward with a sign, a sum says what is held.
fn number(text: &str) -> String {
    let start = text.find(|letter: char| letter.is_ascii_digit()).unwrap_or(text.len());
    text[start..].chars().take_while(|letter| letter.is_ascii_digit() || matches!(letter, ',' | '.')).collect()
}

#[tokio::test]
async fn the_race_tickets_tell_one_story_on_sheet_sums_and_pictures() {
    let shop = Shop::open().await;
    let demo = demo::fill(shop.service.clone(), Timestamp::now()).await.expect("every story can be told");
    let first = shop.service.first_shop().await.expect("a database").expect("a shop");
    let signed = shop.service.sign_in(first.shop_id, OWNER, PASSWORD, "the counter").await.expect("the password");
    let mut client = shop.nobody();
    client.sign_in(OWNER, PASSWORD).await;
    let mut seen = BTreeSet::new();
    let mut raced = 0;
    for ticket in demo.tickets.iter().copied() {
        let job = shop.service.ticket(&signed.caller, ticket).await.expect("a told ticket").revision;
        if job.contents.facts.job().usage.raced.value() != Some(&true) {
            continue;
        }
        raced += 1;
        let page = client.get(&format!("/tickets/{ticket}/pictures")).await;
        let Pictures { rows, leads } = pictures(&page);
        let sums = sums(&client, &leads).await;
        let cell = |picture: &str, row: &str, column: usize| {
            rows.get(&(picture.to_owned(), row.to_owned())).map(|cells| cells[column].clone())
        };
        let result = |picture: &str, sum: &str, label: &str| {
            sums.get(&(picture.to_owned(), sum.to_owned())).and_then(|results| results.get(label)).cloned()
        };
        for (picture, row, column, sum, label) in SAME {
            let Some(shown) = cell(picture, row, *column).filter(|shown| !shown.starts_with("not known")) else {
                continue;
            };
            match result(picture, sum, label) {
                Some(given) => {
                    assert_eq!(shown, given, "{ticket}: {picture}, {row} against {sum}, {label}");
                    seen.insert((*picture, *row, *sum));
                }
                // A sum that asks for more than the job knows says nothing, and nothing else.
                None => {
                    assert!(*sum == "thread-engagement", "{ticket}: {picture}, {row} is shown, {sum} gives nothing")
                }
            }
        }
        shifts(ticket, &cell, &result);
        let flows = flows(ticket, &rows, &sums);
        assert!(flows == 0 || flows >= 30, "{ticket}: {flows} numbers of the power flow");
        sheet(&client, ticket, &cell).await;
        found(&client, ticket, &cell).await;
    }
    assert!(raced >= 5, "{raced} raced tickets");
    for (picture, row, _, sum, _) in SAME {
        assert!(seen.contains(&(*picture, *row, *sum)), "no raced ticket shows {picture}, {row} beside {sum}");
    }
}

type Cell<'a> = dyn Fn(&str, &str, usize) -> Option<String> + 'a;
type Given<'a> = dyn Fn(&str, &str, &str) -> Option<String> + 'a;

/// The shifts: `3,103 rpm, at 49.2 mph`.
fn shifts(ticket: i64, cell: &Cell<'_>, result: &Given<'_>) {
    for (gear, label) in [("first", "From gear 1 to 2"), ("second", "From gear 2 to 3")] {
        let Some((road, after)) = cell("speeds", gear, 2).zip(cell("speeds", gear, 3)) else { continue };
        let given = result("speeds", "shift-recovery", label).expect("the job knows all of it");
        assert_eq!(given, format!("{after}, at {road}"), "{ticket}: the shift out of {gear}");
    }
}

/// What every element holds and how fast every shaft turns; gives how many numbers were held against each other.
fn flows(
    ticket: i64,
    rows: &BTreeMap<(String, String), Vec<String>>,
    sums: &BTreeMap<(String, String), BTreeMap<String, String>>,
) -> usize {
    let mut held = 0;
    for ((picture, sum), results) in sums.iter().filter(|((_, sum), _)| sum == "power-flow") {
        assert!(!results.is_empty(), "{ticket}: {picture} leads to {sum}, which gives nothing");
        for (label, given) in results {
            let row = |name: &str| &rows[&(picture.clone(), name.to_owned())];
            if let Some(shaft) = label.strip_prefix("Speed, ") {
                assert_eq!(&row(shaft)[2], given, "{ticket}: {picture}, {shaft}");
                held += 1;
            } else if let Some(element) = label.strip_prefix("The ").filter(|_| !given.starts_with("turns")) {
                let (shown, given) = (number(&row(element)[3]), number(given));
                let nothing = given.is_empty() && shown == "0";
                assert!(nothing || shown == given, "{ticket}: {picture}, {element}: {shown} and {given}");
                held += 1;
            }
        }
    }
    held
}

/// The end plays, and the washer to choose.
async fn sheet(client: &Client, ticket: i64, cell: &Cell<'_>) {
    let sheet = client.get(&format!("/tickets/{ticket}/sheet")).await;
    for name in ["front-end-play", "rear-end-play"] {
        let read = sheet.texts(&format!("li:has(> a[href$=\"/sheet/{name}\"]) .number"));
        let shown = cell(name, "Now", 2);
        assert_eq!(read.first(), shown.as_ref(), "{ticket}: {name} on the sheet and in the picture");
    }
}

/// The limit that the rule book has used is the one the picture draws.
async fn found(client: &Client, ticket: i64, cell: &Cell<'_>) {
    let page = client.get(&format!("/tickets/{ticket}")).await;
    let said = page.text.split("Limit used: ").find(|said| said.starts_with("one-way clutch limit"));
    if let Some((said, from)) = said.zip(cell("capacity", "intermediate one-way clutch", 5)) {
        assert!(said.starts_with(&from), "{ticket}: {from} in the picture, {}", &said[..80]);
    }
}
