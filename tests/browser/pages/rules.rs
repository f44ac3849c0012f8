//! The rule book.

use super::assert_all_visited;
use crate::driver::DESK;
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::TECHNICIAN;

#[tokio::test(flavor = "multi_thread")]
async fn the_rule_book() {
    let (shop, _) = Shop::full().await;
    let mut walk = Walk::of(Visitor::with(&shop, DESK, true).await);
    walk.visitor.sign_in(TECHNICIAN).await;
    walk.visit("rules", "/rules").await;
    walk.visitor.write("q", "bell runout").await;
    walk.visitor.choose("severity", "caution").await;
    walk.visitor.choose("part", "bell").await;
    walk.visitor.press("Look").await;
    walk.visitor.reads("Found: ").await;
    walk.look("rules-found").await;
    walk.visit("rules-near", "/rules?q=runuot&family=CSE").await;
    walk.visit("rules-none", "/rules?q=xyzzyxyzzy&severity=awful").await;
    for code in ["CSE-10", "SFT-01", "OWC-01", "THR-02"] {
        walk.visit(&format!("rule-{code}"), &format!("/rules/{code}")).await;
    }
    walk.visit("rule-near", "/rules/CSE-1O").await;
    walk.visit("rule-unknown", "/rules/whatever").await;
    assert_all_visited(&walk.visited, |path| path.starts_with("/rules"));
    walk.end();
}
