//! The door, the board, the intake, and the shop's own pages.

use super::assert_all_visited;
use crate::driver::DESK;
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::{OWNER, PASSWORD, TECHNICIAN};

#[tokio::test(flavor = "multi_thread")]
async fn a_shop_with_nothing_in_it_yet() {
    let (shop, set_up) = Shop::new().await;
    let mut walk = Walk::of(Visitor::with(&shop, DESK, true).await);
    walk.visit("set-up", &set_up).await;
    walk.visitor.tap("main form button").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("set-up-wrong").await;
    for (name, text) in
        [("shop", "Corner Unit Works"), ("phone", "555-0100"), ("name", "Wilma Rook"), ("password", PASSWORD)]
    {
        walk.visitor.write(name, text).await;
    }
    walk.visitor.tap("main form button").await;
    walk.visitor.goto("/").await;
    walk.look("board-empty").await;
    walk.visit("set-up-used", &set_up).await;
    walk.end();
}

#[tokio::test(flavor = "multi_thread")]
async fn rules_of_the_shops_own() {
    let (shop, _) = Shop::full().await;
    let mut walk = Walk::of(Visitor::with(&shop, DESK, true).await);
    walk.visitor.sign_in(OWNER).await;
    walk.visit("own-rules", "/house-rules").await;
    walk.visit("own-rule", "/house-rules/1").await;
    walk.visit("own-rule-edit", "/house-rules/2/edit").await;
    walk.visit("own-rule-new", "/house-rules/new").await;
    walk.visitor.write("condition", "use.knd == 'tow'").await;
    walk.visitor.reads("Did you mean use.kind?").await;
    walk.look("own-rule-amiss").await;
    walk.visitor.press("Keep this version").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("own-rule-wrong").await;
    assert_all_visited(&walk.visited, |path| path.starts_with("/house-rules"));
    walk.end();
}

#[tokio::test(flavor = "multi_thread")]
async fn the_pages_of_the_shop_itself() {
    let (shop, demo) = Shop::full().await;
    let mut walk = Walk::of(Visitor::with(&shop, DESK, true).await);
    walk.visit("sign-in", "/sign-in").await;
    walk.visitor.press("Sign in").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("sign-in-wrong").await;
    walk.visitor.sign_in(OWNER).await;
    walk.visit("board", "/").await;
    walk.visit("board-waits", "/?only=customer").await;
    walk.visit("board-found", "/?q=Oakhollow").await;
    walk.visit("board-not-found", "/?q=nobody+of+this+name").await;
    walk.visitor.tap(".menu summary").await;
    walk.look("menu").await;

    walk.visit("intake", "/intake").await;
    walk.visitor.press("Open the ticket and go on").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("intake-wrong").await;
    walk.visitor.write("find", "555-0111").await;
    walk.visitor.press("Look up").await;
    walk.visitor.reads("Tap the one that stands at the counter").await;
    walk.look("intake-found").await;
    walk.visitor.tap(".found li button").await;
    walk.visitor.reads("has been here before").await;
    walk.look("intake-known").await;

    let desk = shop.desk().await;
    let tables = shop.service.class_tables(&desk).await.expect("the shop's tables");
    let table = tables.first().expect("the invented shop has some").id;
    walk.visit("class-table", &format!("/class-tables/{table}")).await;
    walk.visit("class-table-version", &format!("/class-tables/new?of={table}")).await;
    walk.visit("class-table-new", "/class-tables/new").await;
    walk.visitor.write("f.class_table.shield_s", "quick").await;
    walk.visitor.press("Save").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("class-table-wrong").await;

    let more = |path: &str| !path.contains("{") && path != "/static/{name}";
    for path in super::addresses(more) {
        if !walk.visited.iter().any(|visited| visited == path) {
            walk.visit(&format!("page{}", path.replace('/', "-")), path).await;
        }
    }
    assert_all_visited(&walk.visited, |path| more(path) || path.starts_with("/class-tables/"));
    walk.visit("limits-found", "/limits?q=runout").await;
    walk.visit("limit", "/limits/bell_runout").await;
    walk.visitor.write("number", "5").await;
    walk.visitor.press("Move the limit").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("limit-wrong").await;
    walk.visitor.write("number", "0.008").await;
    walk.visitor.write("reason", "Our indicator reads to a tenth.").await;
    walk.visitor.press("Move the limit").await;
    walk.visitor.reads("It is 0.008 in from now on.").await;
    walk.look("limit-moved").await;
    walk.visit("limits-moved", "/limits").await;
    walk.visitor.goto(&format!("/tickets/{}", demo.tickets[12])).await;
    walk.visitor.reads("limits or rules have changed since").await;
    walk.look("job-limits-since").await;
    walk.visitor.press("Judge again").await;
    walk.visitor.reads("judged by the book of today").await;

    walk.visit("not-found", "/nowhere").await;
    walk.visitor.sign_in(TECHNICIAN).await;
    walk.visit("not-allowed", "/intake").await;
    walk.end();
}
