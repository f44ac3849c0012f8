//! The invented shop shows everything a newcomer should see.

#[path = "../support/mod.rs"]
mod support;

use endplay::demo::{self, DESK, PASSWORD};
use endplay::service::{Service, judge};
use endplay::ticket::{Approval, Severity, Stage};
use std::collections::HashSet;

#[tokio::test]
async fn the_invented_shop_has_something_of_everything() {
    let database = support::database().await;
    let service = Service::new(database.service_pool.clone(), judge);
    let filled = demo::fill(service.clone(), jiff::Timestamp::now()).await.expect("every story can be told");
    assert!(filled.tickets.len() >= 15, "{} tickets", filled.tickets.len());

    let shop = service.first_shop().await.expect("a database").expect("a shop");
    let caller =
        service.sign_in(shop.shop_id, DESK, PASSWORD, "the counter").await.expect("the printed password").caller;
    let mut stages = HashSet::new();
    let mut uses = HashSet::new();
    let mut severities = HashSet::new();
    let mut approvals = HashSet::new();
    let mut classes = HashSet::new();
    let mut comebacks = 0;
    let mut overrides = 0;
    for number in filled.tickets.iter().copied() {
        let page = service.ticket(&caller, number).await.expect("a told ticket");
        stages.insert(page.ticket.stage);
        uses.extend(page.revision.contents.facts.job().usage.kind.value().map(|kind| format!("{kind:?}")));
        severities.extend(page.revision.judgement.findings.iter().map(|found| found.severity));
        approvals.insert(format!("{:?}", page.standing.build));
        classes.extend(page.class_table.map(|taken| taken.kept.table.class));
        comebacks += usize::from(page.comeback_of.is_some());
        overrides += page.passed.len();
    }
    let open: HashSet<Stage> = Stage::ALL.iter().copied().filter(|stage| stage.open()).collect();
    assert!(open.is_subset(&stages), "no ticket stands at {:?}", open.difference(&stages));
    assert_eq!(uses.len(), 6, "{uses:?}");
    assert_eq!(severities, HashSet::from([Severity::Stop, Severity::Caution, Severity::Note]));
    for approval in [Approval::Missing, Approval::Signed, Approval::Void, Approval::Declined] {
        assert!(approvals.contains(&format!("{approval:?}")), "no ticket is {approval:?}");
    }
    assert_eq!(classes, ["A", "B", "C"].map(str::to_owned).into(), "raced jobs take their class from a table");
    assert_eq!(comebacks, 1);
    assert!(overrides >= 1);
    for (_, _, pass) in filled.links {
        assert!(service.open_link(&pass).await.expect("a link of the demo").shown.is_some(), "the printed link opens");
    }
}
