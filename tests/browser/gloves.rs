//! On the shop floor everything is tapped with gloves on.

use crate::driver::{DESK, PHONE, TABLET};
use crate::pages::worked_on;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::{OWNER, TECHNICIAN};
use endplay::ticket::Purpose;
use serde_json::json;

/// Least sizes and gap, in CSS pixels: what moves a job, everything else, between two things.
const FLOOR: [u32; 3] = [96, 64, 16];
/// Where nobody wears gloves.
const ELSEWHERE: [u32; 3] = [48, 48, 0];

async fn measure(visitor: &Visitor, name: &str, least: [u32; 3], wrong: &mut Vec<String>) {
    let arguments = least.map(|number| json!(number)).to_vec();
    let found = visitor.browser.sentences(include_str!("script/targets.js"), arguments).await;
    let width = visitor.browser.screen.width;
    wrong.extend(found.into_iter().map(|what| format!("{name} at {width}: {what}")));
}

#[tokio::test(flavor = "multi_thread")]
async fn whatever_is_tapped_on_the_shop_floor_is_big_enough_and_apart() {
    let (shop, demo) = Shop::full().await;
    let mut wrong = Vec::new();
    let mut visitor = Visitor::with(&shop, TABLET, true).await;
    visitor.sign_in(TECHNICIAN).await;
    let jobs = demo.tickets.iter().map(|number| format!("/tickets/{number}"));
    let mut pages: Vec<String> = ["/", "/?q=Oakhollow"].map(str::to_owned).into();
    pages.extend(jobs);
    let job = format!("/tickets/{}", demo.tickets[12]);
    for page in ["facts/spec", "facts/outside", "facts/measured", "history", "intake", "intake/done", "next", "what-if"]
    {
        pages.push(format!("{job}/{page}"));
    }
    let typed = "drive=8&axle=3.73&tire=28.5&shelf=19+20+21";
    pages.extend(["/sums".to_owned(), format!("/sums/driven-gear?{typed}"), "/sums/cruise?road=x&axle=0".to_owned()]);
    pages.extend(["sums", "sums/converter-spacer"].map(|page| format!("{job}/{page}")));
    // At a hold point, out of order, and before the first step.
    let worked = worked_on(&shop, &demo).await;
    for number in [worked.held, worked.out_of_order, demo.tickets[12]] {
        let job = format!("/tickets/{number}");
        pages.extend(["steps", "steps/AS-04", "steps/SA-02"].map(|page| format!("{job}/{page}")));
    }
    for screen in [TABLET, DESK] {
        visitor.browser.resize(screen).await;
        for page in &pages {
            visitor.goto(page).await;
            measure(&visitor, page, FLOOR, &mut wrong).await;
        }
        visitor.goto(&job).await;
        visitor.unfold().await;
        measure(&visitor, "everything on a job", FLOOR, &mut wrong).await;
    }
    visitor.sign_in(OWNER).await;
    for page in ["/intake", "/", &job] {
        visitor.goto(page).await;
        measure(&visitor, page, FLOOR, &mut wrong).await;
    }
    visitor.tap(".finding-aside a").await;
    visitor.reads("Set aside for this job?").await;
    measure(&visitor, "setting aside", FLOOR, &mut wrong).await;
    wrong.dedup();
    assert!(wrong.is_empty(), "{} are too small or too near:\n{}", wrong.len(), wrong.join("\n"));
}

#[tokio::test(flavor = "multi_thread")]
async fn whatever_a_customer_taps_is_big_enough_for_a_thumb() {
    let (shop, demo) = Shop::full().await;
    let mut wrong = Vec::new();
    let visitor = Visitor::with(&shop, PHONE, true).await;
    visitor.goto("/sign-in").await;
    measure(&visitor, "sign-in", ELSEWHERE, &mut wrong).await;
    for (_, purpose, pass) in &demo.links {
        visitor.goto(&format!("/c/{pass}")).await;
        measure(&visitor, purpose.code(), ELSEWHERE, &mut wrong).await;
        visitor.unfold().await;
        measure(&visitor, purpose.code(), ELSEWHERE, &mut wrong).await;
    }
    let (_, _, pass) = demo.links.iter().find(|(_, of, _)| *of == Purpose::Build).expect("a link");
    visitor.goto(&format!("/c/{pass}")).await;
    visitor.sign_all("Somebody Else").await;
    measure(&visitor, "receipt", ELSEWHERE, &mut wrong).await;
    assert!(wrong.is_empty(), "{} are too small:\n{}", wrong.len(), wrong.join("\n"));
}
