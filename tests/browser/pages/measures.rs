//! The measurement sheet on the tablet: a number typed, its verdict, a doubtful one, with and without script.

use super::assert_all_visited;
use crate::driver::TABLET;
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::{Demo, OWNER, TECHNICIAN};

/// The raced job of the invented shop whose sheet is filled in.
async fn raced(shop: &Shop, demo: &Demo) -> i64 {
    let desk = shop.desk().await;
    for number in demo.tickets.iter().copied() {
        let sheet = shop.service.bench_sheet(&desk, number, None).await.expect("a sheet");
        if sheet.readings.len() > 10 {
            return number;
        }
    }
    panic!("the invented shop has measured a raced job");
}

#[tokio::test(flavor = "multi_thread")]
async fn the_sheet_of_a_job() {
    let (shop, demo) = Shop::full().await;
    let list = format!("/tickets/{}/sheet", raced(&shop, &demo).await);
    let mut walk = Walk::of(Visitor::with(&shop, TABLET, true).await);
    walk.visitor.sign_in(TECHNICIAN).await;
    walk.visit("sheet", &list).await;
    walk.visitor.unfold().await;
    walk.look("sheet-open").await;
    walk.visit("sheet-front", &format!("{list}/front-end-play")).await;
    walk.visit("sheet-pack", &format!("{list}/direct-clearance")).await;
    walk.visit("sheet-pressure", &format!("{list}/pressure-drive-idle")).await;
    walk.visit("sheet-open-limit", &format!("{list}/stall-speed")).await;
    walk.visit("sheet-rear", &format!("{list}/rear-end-play")).await;
    walk.visitor.write("r.1", "0.031").await;
    walk.visitor.reads("Out: 0.006 in above the most that is allowed.").await;
    walk.look("sheet-verdict").await;
    walk.visitor.write("r.1", "0.305").await;
    walk.visitor.press("Save the reading").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("sheet-doubtful").await;
    walk.visitor.press("Reading 1 was 0.305 mm").await;
    walk.visitor.reads("fine 0.012 in; read once of 3 times").await;
    walk.visitor.press("Save the reading").await;
    walk.visitor.reads("Saved. It stands on the job now.").await;
    walk.look("sheet-saved").await;
    let strike = "return [document.querySelector('.measure-history a[href*=strike]').pathname]";
    let strike = walk.visitor.browser.sentences(strike, vec![]).await.remove(0);
    walk.visit("strike", &strike).await;
    walk.visitor.write("reason", "The dial was loose").await;
    walk.visitor.press("Strike it out").await;
    walk.visitor.reads("Tick that this reading does not count").await;
    walk.look("strike-wrong").await;
    walk.visitor.tap("label:has(#sure)").await;
    walk.visitor.press("Strike it out").await;
    walk.visitor.reads("Struck out. It counts no more").await;
    walk.look("sheet-struck").await;
    assert_all_visited(&walk.visited, |path| path.starts_with("/tickets/{number}/sheet"));
    walk.end();
}

#[tokio::test(flavor = "multi_thread")]
async fn instruments_and_the_shelf() {
    let (shop, _) = Shop::full().await;
    let mut walk = Walk::of(Visitor::with(&shop, TABLET, true).await);
    walk.visitor.sign_in(OWNER).await;
    walk.visit("instruments", "/instruments").await;
    walk.visitor.press("Add it").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("instruments-wrong").await;
    walk.visit("instrument", "/instruments/2").await;
    walk.visit("sets", "/sets").await;
    walk.visit("set", "/sets/rear-washers").await;
    walk.visitor.write("size.1", "84").await;
    walk.visitor.press("Save the set").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("set-wrong").await;
    walk.visit("set-pins", "/sets/rear-band-pins").await;
    assert_all_visited(&walk.visited, |path| path.starts_with("/instruments") || path.starts_with("/sets"));
    walk.end();
}

#[tokio::test(flavor = "multi_thread")]
async fn a_reading_is_taken_without_script_too() {
    let (shop, demo) = Shop::full().await;
    let page = format!("/tickets/{}/sheet/carrier-float", raced(&shop, &demo).await);
    let visitor = Visitor::with(&shop, TABLET, false).await;
    visitor.sign_in(TECHNICIAN).await;
    visitor.goto(&page).await;
    visitor.write("r.1", "20 thou").await;
    visitor.press("Check the reading").await;
    visitor.reads("Written down. There is no limit here to hold it against.").await;
    visitor.press("Save the reading").await;
    visitor.reads("Saved. It stands on the job now.").await;
    visitor.press("Strike out 0.020 in").await;
    visitor.write("reason", "Of another unit").await;
    visitor.tap("label:has(#sure)").await;
    visitor.press("Strike it out").await;
    visitor.reads("Struck out. It counts no more").await;
    visitor.reads("Of another unit").await;
}
