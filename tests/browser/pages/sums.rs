//! Sums, for whoever holds the tablet.

use super::assert_all_visited;
use crate::driver::{PHONE, TABLET};
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::TECHNICIAN;

const GEARS: &str = "drive=8&axle=3.73&tire=28.5&shelf=19+20+21";

#[tokio::test(flavor = "multi_thread")]
async fn sums() {
    let (shop, demo) = Shop::full().await;
    let mut walk = Walk::of(Visitor::with(&shop, TABLET, true).await);
    walk.visit("sums", "/sums").await;
    walk.visit("sum-empty", "/sums/clutch-capacity").await;
    walk.visit("sum-public", &format!("/sums/driven-gear?{GEARS}")).await;
    walk.visit("sum-wrong", "/sums/driven-gear?drive=99&axle=3,73&tire=F70-14").await;
    walk.visitor.sign_in(TECHNICIAN).await;
    walk.visit("sum-signed-in", &format!("/sums/driven-gear?{GEARS}")).await;
    let job = demo.tickets[12];
    walk.visit("sums-of-job", &format!("/tickets/{job}/sums")).await;
    walk.visit("sum-of-job", &format!("/tickets/{job}/sums/converter-spacer")).await;
    for (_, sum) in endplay::sums::all() {
        let typed = |name: &str| sum.input(name).map_or_else(String::new, |input| input.example.to_owned());
        walk.glance(sum.name, &endplay::sums::address(sum, typed)).await;
    }
    assert_all_visited(&walk.visited, |path| path.contains("/sums"));
    walk.end();
}

#[tokio::test(flavor = "multi_thread")]
async fn the_answer_follows_what_is_typed_and_the_address_carries_it() {
    let (shop, _) = Shop::full().await;
    let visitor = Visitor::with(&shop, PHONE, true).await;
    visitor.goto("/sums/turns-a-mile").await;
    visitor.reads("Nothing is guessed").await;
    visitor.write("tire", "28.5").await;
    visitor.reads("707.6 turns/mile").await;
    visitor.write("tire", "28.5 qt").await;
    visitor.reads("Check this:").await;
    visitor.does_not_read("707.6").await;
    visitor.write("tire", "275/60R15").await;
    visitor.reads("27.99 in unloaded").await;
    assert_eq!(visitor.path().await, "/sums/turns-a-mile?tire=275%2F60R15");
}

#[tokio::test(flavor = "multi_thread")]
async fn without_script_a_button_works_it_out_and_the_link_is_there_to_copy() {
    let (shop, _) = Shop::full().await;
    let visitor = Visitor::with(&shop, PHONE, false).await;
    visitor.goto("/sums/turns-a-mile").await;
    visitor.write("tire", "28-1/2").await;
    visitor.press("Work it out").await;
    visitor.reads("707.6 turns/mile").await;
    visitor.reads("/sums/turns-a-mile?tire=28-1%2F2").await;
    visitor.does_not_read("Copy the link").await;
}
