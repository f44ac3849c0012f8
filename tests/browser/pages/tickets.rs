//! The pages of a job.

use super::assert_all_visited;
use crate::driver::TABLET;
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::{Demo, OWNER};
use endplay::job::Sheet;
use endplay::ticket::{Approval, Severity, Stage};

/// Jobs of the invented shop that show something.
struct Shown {
    /// With a stop, taken in and open.
    stopped: i64,
    /// Signed, then changed.
    void: i64,
    /// Signed, and it holds.
    signed: i64,
    /// Its receipt.
    receipt: String,
    /// Raced, by a class table older than its event.
    raced: i64,
    /// Each further one whose page looks different.
    others: Vec<i64>,
}

async fn shown(shop: &Shop, demo: &Demo) -> Shown {
    let desk = shop.desk().await;
    let (mut stopped, mut void, mut signed, mut receipt, mut raced) = (None, None, None, None, None);
    for number in demo.tickets.iter().copied() {
        let page = shop.service.ticket(&desk, number).await.expect("a job");
        let has_stop = page.revision.judgement.findings.iter().any(|found| found.severity == Severity::Stop);
        let open = page.ticket.stage.open();
        if open && has_stop && page.ticket.stage != Stage::Intake {
            stopped = Some(number);
        }
        if open && page.revision.judgement.findings.iter().any(|found| found.code == "SFT-15") {
            raced = Some(number);
        }
        if matches!(page.standing.build, Approval::Void) {
            void = Some(number);
        }
        if open && matches!(page.standing.build, Approval::Signed) {
            signed = Some(number);
            receipt = page.receipts.first().map(|receipt| receipt.reference.clone());
        }
    }
    let some = [stopped, void, signed].map(|number| number.expect("the invented shop has one of everything"));
    let raced = raced.expect("the invented shop races by an old table");
    let others = demo.tickets.iter().copied().filter(|number| !some.contains(number)).collect();
    let receipt = receipt.expect("a receipt");
    Shown { stopped: some[0], void: some[1], signed: some[2], receipt, raced, others }
}

#[tokio::test(flavor = "multi_thread")]
async fn the_pages_of_a_job() {
    let (shop, demo) = Shop::full().await;
    let jobs = shown(&shop, &demo).await;
    let mut walk = Walk::of(Visitor::with(&shop, TABLET, true).await);
    walk.visitor.sign_in(OWNER).await;

    let stopped = format!("/tickets/{}", jobs.stopped);
    walk.visit("job-stopped", &stopped).await;
    walk.visitor.unfold().await;
    walk.look("job-stopped-open").await;
    walk.visit("job-signed", &format!("/tickets/{}", jobs.signed)).await;
    walk.visit("job-void", &format!("/tickets/{}", jobs.void)).await;
    walk.visit("job-raced", &format!("/tickets/{}", jobs.raced)).await;
    walk.visit("class-choice", &format!("/tickets/{}/class-table", jobs.raced)).await;
    walk.visitor.unfold().await;
    walk.look("class-choice-open").await;
    walk.visit("pictures-raced", &format!("/tickets/{}/pictures", jobs.raced)).await;
    walk.visitor.unfold().await;
    walk.look("pictures-raced-open").await;
    for number in jobs.others {
        walk.glance(&format!("job-{number}"), &format!("/tickets/{number}")).await;
    }
    for sheet in Sheet::ALL {
        walk.visit(&format!("facts-{}", sheet.code()), &format!("{stopped}/facts/{}", sheet.code())).await;
    }
    walk.visitor.unfold().await;
    walk.look("facts-open").await;
    for page in [
        "intake",
        "intake/done",
        "contact",
        "history",
        "tag",
        "receipt",
        "sign/intake",
        "sign/build",
        "class-table",
        "clearing",
        "pictures",
        "steps",
        "steps/AS-04",
        "sheet",
        "sheet/rear-end-play",
        "sums",
        "sums/speed-in-gear",
    ] {
        walk.visit(&format!("job-{}", page.replace('/', "-")), &format!("{stopped}/{page}")).await;
    }
    walk.visitor.goto(&format!("{stopped}/intake")).await;
    walk.visitor.write("f.vehicle.axle_ratio", "373").await;
    walk.visitor.reads("Was 3.73 meant?").await;
    walk.look("job-intake-doubt").await;
    walk.visit("next", &format!("{stopped}/next")).await;
    walk.visit("next-typed", &format!("{stopped}/next?first=bell.runout_in&skip=use.raced")).await;
    walk.visitor.unfold().await;
    walk.look("next-open").await;
    walk.visitor.goto(&stopped).await;
    let aside = "return [document.querySelector('.finding-aside a').pathname]";
    let aside = walk.visitor.browser.sentences(aside, vec![]).await.remove(0);
    walk.visit("aside", &aside).await;
    walk.visit("what-if", &format!("{stopped}/what-if")).await;
    walk.visit("compare", &format!("{stopped}/compare?from=1&to=2")).await;
    walk.visit("receipt-shop", &format!("/receipts/{}", jobs.receipt)).await;
    // A reading is struck on the walk through the sheet.
    let here = |path: &str| path.starts_with("/tickets/") && !path.contains("/strike/");
    assert_all_visited(&walk.visited, |path| here(path) || path.starts_with("/receipts/"));
    walk.end();
}

#[tokio::test(flavor = "multi_thread")]
async fn the_answers_to_what_is_sent_from_a_job() {
    let (shop, demo) = Shop::full().await;
    let jobs = shown(&shop, &demo).await;
    let mut walk = Walk::of(Visitor::with(&shop, TABLET, true).await);
    walk.visitor.sign_in(OWNER).await;
    let stopped = format!("/tickets/{}", jobs.stopped);

    // It stands before the work that cannot be undone, and its signature no longer holds.
    walk.visitor.goto(&format!("/tickets/{}", jobs.void)).await;
    walk.visitor.tap(".moves button").await;
    walk.visitor.reads("Not yet:").await;
    walk.look("gate").await;
    walk.visitor.goto(&stopped).await;
    walk.visitor.tap(".finding-aside a").await;
    walk.visitor.press("Set it aside, as a new version").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("aside-wrong").await;
    walk.visitor.write("reason", "Seen on the bench: it was made to fit.").await;
    walk.visitor.press("Set it aside, as a new version").await;
    walk.visitor.reads("it is set aside for this job").await;
    walk.look("job-aside").await;
    walk.visitor.press("Bring it back").await;
    walk.visitor.reads("it counts again").await;

    walk.visitor.goto(&format!("{stopped}/facts/measured")).await;
    walk.visitor.unfold().await;
    walk.visitor.write("f.bell.runout_in", "a lot").await;
    walk.visitor.press("Show what changes").await;
    walk.visitor.reads("Check what you entered").await;
    walk.look("facts-wrong").await;

    let signed = format!("/tickets/{}", jobs.signed);
    walk.visitor.goto(&format!("{signed}/facts/outside")).await;
    walk.visitor.unfold().await;
    walk.visitor.choose("f.threads.mount_bolt", "inch").await;
    walk.visitor.choose("f.threads.mount_hole", "metric").await;
    walk.visitor.press("Show what changes").await;
    walk.visitor.reads("will no longer hold").await;
    walk.look("diff").await;
    walk.visitor.press("Save as a new version").await;
    walk.visitor.reads("this is now version").await;
    walk.look("job-saved").await;

    walk.visitor.press("Make a link to sign").await;
    walk.visitor.reads("It is shown this once").await;
    walk.look("link-made").await;

    let meanwhile = Visitor::with(&shop, TABLET, false).await;
    meanwhile.sign_in(endplay::demo::TECHNICIAN).await;
    for visitor in [&walk.visitor, &meanwhile] {
        visitor.goto(&format!("{stopped}/facts/measured")).await;
    }
    for (visitor, text) in [(&meanwhile, "0.004"), (&walk.visitor, "0.006")] {
        visitor.unfold().await;
        visitor.write("f.bell.runout_in", text).await;
        visitor.press("Show what changes").await;
        if text == "0.004" {
            visitor.press("Save as a new version").await;
            visitor.reads("this is now version").await;
        }
    }
    walk.visitor.reads("Somebody changed the same thing").await;
    walk.look("conflict").await;
    walk.end();
}
