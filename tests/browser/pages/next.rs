//! What to ask next, on the tablet: answered by a tap, typed, put aside, with script and without.

use crate::driver::TABLET;
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::TECHNICIAN;

#[tokio::test(flavor = "multi_thread")]
async fn questions_are_answered_one_after_the_other() {
    let (shop, demo) = Shop::full().await;
    let next = format!("/tickets/{}/next", demo.tickets[15]);
    for (script, fact) in [(true, "bell.runout_in"), (false, "bench.front_end_play_in")] {
        let field = format!("f.{fact}");
        let mut walk = Walk::of(Visitor::with(&shop, TABLET, script).await);
        walk.visitor.sign_in(TECHNICIAN).await;
        walk.visitor.goto(&next).await;
        walk.visitor.reads("What to ask next").await;
        walk.visitor.press("Cannot be known yet").await;
        walk.visitor.reads("Put aside for now").await;
        walk.visitor.goto(&format!("{next}?first={fact}")).await;
        walk.visitor.write(&field, "a lot").await;
        walk.visitor.press("Save and ask the next").await;
        walk.visitor.reads("Check what you entered").await;
        if script {
            walk.look("next-wrong").await;
        }
        walk.visitor.write(&field, "0.004").await;
        walk.visitor.press("Save and ask the next").await;
        walk.visitor.reads("Choose how you know it (").await;
        walk.visitor.choose(&format!("s.{fact}"), "measured").await;
        walk.visitor.press("Save and ask the next").await;
        walk.visitor.reads("Saved ").await;
        if script {
            walk.look("next-saved").await;
        }
        walk.end();
    }
}
