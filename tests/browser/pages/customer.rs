//! What customers see by their link.

use super::assert_all_visited;
use crate::driver::PHONE;
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::ticket::Purpose;

#[tokio::test(flavor = "multi_thread")]
async fn the_pages_of_a_link() {
    let (shop, demo) = Shop::full().await;
    let mut walk = Walk::of(Visitor::with(&shop, PHONE, true).await);
    let link = |purpose| {
        let found = demo.links.iter().find(|(_, of, _)| *of == purpose).expect("the invented shop sent one");
        format!("/c/{}", found.2)
    };
    for (purpose, name) in [(Purpose::Intake, "teardown"), (Purpose::Build, "build")] {
        let path = link(purpose);
        walk.visit(&format!("customer-{name}"), &path).await;
        walk.visitor.press("Sign this version").await;
        walk.visitor.reads("Check what you entered").await;
        walk.look(&format!("customer-{name}-wrong")).await;
        walk.visitor.goto(&path).await;
        walk.visitor.press("I do not agree").await;
        walk.visitor.press("Say no").await;
        walk.visitor.reads("Check what you entered").await;
        walk.look(&format!("customer-{name}-no-wrong")).await;
    }

    let path = link(Purpose::Build);
    walk.visitor.goto(&path).await;
    walk.visitor.sign_all("Somebody Else").await;
    walk.visit("customer-receipt", &format!("{path}/receipt")).await;
    walk.visit("customer-used", &path).await;
    walk.visit("customer-unknown", "/c/nothing-like-a-link").await;
    assert_all_visited(&walk.visited, |path| path.starts_with("/c/"));
    walk.end();
}
