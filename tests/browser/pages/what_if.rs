//! What if, on the tablet and on the customer's phone, with script and without.

use crate::driver::{PHONE, TABLET};
use crate::looks::Walk;
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::OWNER;
use endplay::service::{Key, MakeLink};
use endplay::ticket::Purpose;

#[tokio::test(flavor = "multi_thread")]
async fn variants_are_tried_kept_chosen_and_made_the_job() {
    let (shop, demo) = Shop::full().await;
    let job = format!("/tickets/{}", demo.tickets[12]);
    for script in [true, false] {
        let mut walk = Walk::of(Visitor::with(&shop, TABLET, script).await);
        walk.visitor.sign_in(OWNER).await;
        walk.visitor.goto(&format!("{job}/what-if")).await;
        walk.visitor.choose("group", "valve_body").await;
        walk.visitor.press("Show this part").await;
        walk.visitor.reads("Valve body").await;
        let kind = if script { "manual" } else { "auto" };
        walk.visitor.choose("f.valve_body.kind", kind).await;
        if script {
            walk.visitor.reads("1 change against the job").await;
        } else {
            walk.visitor.press("See what it does").await;
        }
        walk.visitor.reads("1 change against the job").await;
        walk.visitor.write("hours", "2.5").await;
        walk.visitor.write("what.1", "Rebuild").await;
        walk.visitor.write("amount.1", "2100").await;
        walk.visitor.press("Keep as variant").await;
        walk.visitor.reads("The variant's name is empty").await;
        if script {
            walk.look("what-if-wrong").await;
        }
        let name = format!("Shift {kind}");
        walk.visitor.write("name", &name).await;
        walk.visitor.press("Keep as variant").await;
        walk.visitor.reads("the variant.").await;
        if script {
            walk.look("job-variants").await;
        }
        let make = MakeLink { ticket: demo.tickets[12], purpose: Purpose::Build, days: None };
        let made = shop.service.make_link(&shop.desk().await, Key::fresh(), make).await.expect("made");
        let link = format!("/c/{}", made.pass.expect("shown once"));

        let mut phone = Walk::of(Visitor::with(&shop, PHONE, script).await);
        phone.visitor.goto(&link).await;
        phone.visitor.reads("You can choose").await;
        if script {
            phone.look("customer-variants").await;
        }
        phone.visitor.press("Send my choice").await;
        phone.visitor.reads("Check what you entered").await;
        phone.visitor.tap("[name='variant']").await;
        phone.visitor.write("chooser", "Fitch Larkmoor").await;
        phone.visitor.press("Send my choice").await;
        phone.visitor.reads(&format!("You chose: {name}")).await;
        if script {
            phone.look("customer-chosen").await;
        }
        phone.end();

        walk.visitor.goto(&job).await;
        walk.visitor.reads("Chosen by Fitch Larkmoor").await;
        walk.visitor.press("Make this the job").await;
        walk.visitor.reads("this is now version").await;
        walk.end();
    }
}
