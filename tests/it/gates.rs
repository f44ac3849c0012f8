//! No teardown without the authorisation; nothing irreversible and no assembly while unsigned or stopped.

use crate::shop::{self, TestShop, fact};
use endplay::service::{Caller, Failure, Key, MoveStage, Who};
use endplay::ticket::{Gate, Happening, Override, Purpose, Stage};
use serde_json::json;

async fn go(
    shop: &TestShop,
    caller: &Caller,
    ticket: i64,
    to: Stage,
    reason: &str,
    overrides: &[(Gate, &str)],
) -> Result<Stage, Failure> {
    let from = shop.service.ticket(caller, ticket).await.expect("the ticket").ticket.stage;
    let overrides =
        overrides.iter().map(|(gate, reason)| Override { gate: *gate, reason: (*reason).to_owned() }).collect();
    let command = MoveStage { ticket, from, to, reason: reason.into(), overrides };
    shop.service.write(Who::Staff(caller.clone()), Key::fresh(), command).await.map(|moved| moved.stage)
}

async fn on(shop: &TestShop, ticket: i64, stages: &[Stage]) {
    for to in stages {
        go(shop, &shop.technician, ticket, *to, "", &[]).await.expect("the way is free");
    }
}

fn closed(answer: Result<Stage, Failure>) -> Vec<Gate> {
    match answer {
        Err(Failure::Gates(refusals)) => refusals.into_iter().filter_map(|refusal| refusal.gate).collect(),
        other => panic!("a closed gate was expected, not {other:?}"),
    }
}

#[tokio::test]
async fn the_unit_stays_whole_until_the_customer_has_signed_for_the_teardown() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    on(&shop, ticket, &[Stage::Spec]).await;
    assert_eq!(closed(go(&shop, &shop.technician, ticket, Stage::Teardown, "", &[]).await), [Gate::IntakeAuthorised]);
    shop.signed(ticket, Purpose::Intake).await;
    on(&shop, ticket, &[Stage::Teardown, Stage::Quote, Stage::Parts]).await;
}

#[tokio::test]
async fn machining_and_assembly_wait_for_the_signature_and_for_every_stop() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.signed(ticket, Purpose::Intake).await;
    shop.change(ticket, fact("bell.ring_holes", json!(6))).await;
    on(&shop, ticket, &[Stage::Spec, Stage::Teardown, Stage::Quote, Stage::Parts]).await;
    for to in [Stage::Machining, Stage::Assembly] {
        let gates = closed(go(&shop, &shop.technician, ticket, to, "", &[]).await);
        assert_eq!(gates, [Gate::RevisionSigned, Gate::NoOpenStop], "{to:?}");
    }
    shop.signed(ticket, Purpose::Build).await;
    assert_eq!(closed(go(&shop, &shop.technician, ticket, Stage::Machining, "", &[]).await), [Gate::NoOpenStop]);
    // Put right: the stop is gone, and so is the signature on what stood before.
    shop.change(ticket, fact("bell.ring_holes", json!(8))).await;
    assert_eq!(closed(go(&shop, &shop.technician, ticket, Stage::Machining, "", &[]).await), [Gate::RevisionSigned]);
    shop.signed(ticket, Purpose::Build).await;
    on(&shop, ticket, &[Stage::Machining, Stage::Assembly]).await;
    // A reading at the bench that changes no finding is no reason to ask the customer again.
    shop.change(ticket, fact("bench.front_end_play_in", json!(0.011))).await;
    on(&shop, ticket, &[Stage::Test, Stage::Delivery, Stage::AfterCare, Stage::Closed]).await;
}

#[tokio::test]
async fn only_an_owner_passes_a_gate_and_the_reason_stays_visible() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.signed(ticket, Purpose::Intake).await;
    shop.change(ticket, fact("bell.ring_holes", json!(6))).await;
    on(&shop, ticket, &[Stage::Spec, Stage::Teardown, Stage::Quote, Stage::Parts]).await;
    let pass = [(Gate::RevisionSigned, "Signed on paper today"), (Gate::NoOpenStop, "New ring arrives tomorrow")];
    for caller in [&shop.technician, &shop.desk] {
        let refused = go(&shop, caller, ticket, Stage::Machining, "", &pass).await;
        assert!(matches!(refused, Err(Failure::NotAllowed(_))), "{refused:?}");
    }
    let one = go(&shop, &shop.owner, ticket, Stage::Machining, "", &pass[..1]).await;
    assert_eq!(closed(one), [Gate::NoOpenStop], "each gate has its own reason");
    let page = shop.service.ticket(&shop.desk, ticket).await.expect("the ticket");
    assert!(page.passed.is_empty(), "a refused move leaves nothing behind");

    go(&shop, &shop.owner, ticket, Stage::Machining, "", &pass).await.expect("passed");
    let page = shop.service.ticket(&shop.technician, ticket).await.expect("the ticket");
    let mut kept: Vec<_> =
        page.passed.iter().map(|passed| (passed.gate, passed.reason.as_str(), passed.made_by.as_str())).collect();
    kept.sort_unstable();
    assert_eq!(
        kept,
        [
            (Gate::RevisionSigned, "Signed on paper today", "Olive Marsh"),
            (Gate::NoOpenStop, "New ring arrives tomorrow", "Olive Marsh")
        ]
    );
    assert!(matches!(&page.history[0].happened, Happening::Moved { overrides, .. } if overrides.len() == 2));
    // It holds for what stood then, and no longer when something else is to be built.
    on(&shop, ticket, &[Stage::Assembly]).await;
    shop.change(ticket, fact("use.raced", json!(true))).await;
    assert_eq!(closed(go(&shop, &shop.technician, ticket, Stage::Test, "", &[]).await), [Gate::RevisionSigned]);
}

#[tokio::test]
async fn going_back_and_declining_want_a_reason_and_declined_is_the_end() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    shop.signed(ticket, Purpose::Intake).await;
    on(&shop, ticket, &[Stage::Spec, Stage::Teardown]).await;
    let bare = go(&shop, &shop.technician, ticket, Stage::Intake, " ", &[]).await;
    assert!(
        matches!(bare, Err(Failure::Gates(ref refusals)) if refusals[0].message.contains("Write down why")),
        "{bare:?}"
    );
    go(&shop, &shop.technician, ticket, Stage::Spec, "Wrong unit on the tag", &[]).await.expect("back");
    let skip = go(&shop, &shop.technician, ticket, Stage::Parts, "", &[]).await;
    assert!(
        matches!(skip, Err(Failure::Gates(ref refusals)) if refusals[0].message.contains("next stage is Teardown"))
    );
    let not_theirs = go(&shop, &shop.technician, ticket, Stage::Declined, "Too dear", &[]).await;
    assert!(matches!(not_theirs, Err(Failure::NotAllowed(_))), "{not_theirs:?}");
    go(&shop, &shop.desk, ticket, Stage::Declined, "Too dear", &[]).await.expect("declined");
    let after = go(&shop, &shop.owner, ticket, Stage::Spec, "Changed their mind", &[]).await;
    assert!(matches!(after, Err(Failure::Gates(ref refusals)) if refusals[0].message.contains("Open a new ticket")));
    let changed = shop.change_from(&shop.desk, ticket, 1, fact("use.raced", json!(true))).await;
    assert!(matches!(changed, Err(Failure::Problems(_))), "{changed:?}");
    assert!(shop.service.board(&shop.desk, None, None).await.expect("the board").is_empty());
}

#[tokio::test]
async fn a_tap_on_an_old_board_moves_nothing() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    on(&shop, ticket, &[Stage::Spec]).await;
    let stale = MoveStage { ticket, from: Stage::Intake, to: Stage::Spec, reason: String::new(), overrides: vec![] };
    let refused = shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), stale).await;
    assert!(matches!(refused, Err(Failure::Conflict(_))), "{refused:?}");
}
