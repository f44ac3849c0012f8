//! The pictures of the README, as `.screens` keeps them: what a screen of the invented shop shows.

use crate::driver::{DESK, PHONE, TABLET};
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::{OWNER, TECHNICIAN};
use endplay::ticket::Purpose;

#[tokio::test(flavor = "multi_thread")]
async fn the_pictures_show_the_board_a_ticket_and_the_customers_page() {
    let (shop, demo) = Shop::full().await;
    let desk = Visitor::with(&shop, DESK, true).await;
    desk.sign_in(OWNER).await;
    desk.reads("Teardown").await;
    desk.browser.snapshot("readme-board").await;

    let bench = Visitor::with(&shop, TABLET, true).await;
    bench.sign_in(TECHNICIAN).await;
    bench.goto("/?only=stops").await;
    bench.tap(".card-open").await;
    bench.reads("What to do:").await;
    bench.browser.ask("document.querySelector('.ticket-columns').scrollIntoView()", vec![]).await;
    bench.browser.snapshot("readme-ticket").await;

    let phone = Visitor::with(&shop, PHONE, true).await;
    let (_, _, pass) = demo.links.iter().find(|(_, of, _)| *of == Purpose::Build).expect("a link of the invented shop");
    phone.goto(&format!("/c/{pass}")).await;
    phone.reads("What we found").await;
    let down = "[...document.querySelectorAll('h2')].find((one) => one.innerText.startsWith('What we found')).scrollIntoView()";
    phone.browser.ask(down, vec![]).await;
    phone.browser.snapshot("readme-customer").await;
}
