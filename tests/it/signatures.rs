//! The signature record: everything that was shown, and a digest anybody can recompute.

use crate::shop::{self, answer, fact};
use endplay::quantity::Cents;
use endplay::service::{AnswerAtCounter, CustomerAnswer, Failure, Key, Who};
use endplay::ticket::{Channel, Edit, Price, PriceLine, Purpose};
use serde_json::{Value, json};
use sha2::{Digest, Sha256};

#[tokio::test]
async fn the_record_holds_what_was_shown_and_its_digest_can_be_recomputed_without_this_program() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let lines = vec![
        PriceLine { what: "Rebuild".into(), cents: Cents(185_000) },
        PriceLine { what: "Returning".into(), cents: Cents(-10_000) },
    ];
    let edit = Edit { price: Some(Price { lines }), ..fact("use.raced", json!(true)) };
    shop.change(ticket, edit).await;
    let pass = shop.link(ticket, Purpose::Build).await;
    let shown = shop.service.open_link(&pass).await.expect("a page").shown.expect("open");
    let reference = shop.sign(&pass).await;

    // Straight from the database, with nothing of the program between.
    let (text, digest, kept): (String, Vec<u8>, String) =
        sqlx::query_as("SELECT record, digest, reference FROM signature")
            .fetch_one(&shop.database.owner_pool)
            .await
            .expect("the signature");
    assert_eq!(Sha256::digest(text.as_bytes())[..], digest[..]);
    assert_eq!(kept, reference);
    let record: Value = serde_json::from_str(&text).expect("the text is JSON");
    assert_eq!(sorted_json(&record), text, "keys sorted, no white space: the canonical form");

    assert_eq!(record["paper"], serde_json::to_value(&shown.paper).expect("JSON"), "the exact text shown");
    assert_eq!(record["revision"], 2);
    assert_eq!(record["accepted"], json!(["TST-02"]));
    assert_eq!(record["findings"][0]["code"], "TST-02");
    assert_eq!(record["price_cents"], 175_000);
    assert_eq!(record["name"], "Rosa Fielding");
    assert_eq!(record["at"], "2026-03-02T08:00:00-07:00[America/Denver]");
    assert_eq!((&record["address"], &record["agent"]), (&json!("203.0.113.9"), &json!("Test browser 1.0")));
    assert_eq!(record["channel"], "link");

    let receipt = shop.service.receipt(&shop.technician, &reference.to_lowercase()).await.expect("the receipt");
    assert!(receipt.intact);
    assert_eq!(
        receipt.digest,
        Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect::<String>()
    );
    assert_eq!(receipt.purpose, Purpose::Build);
}

/// JSON with sorted keys and no white space. Enough of RFC 8785 for records, which hold no fractions.
fn sorted_json(value: &Value) -> String {
    match value {
        Value::Object(map) => {
            let mut keys: Vec<_> = map.keys().collect();
            keys.sort();
            let members: Vec<_> =
                keys.iter().map(|key| format!("{}:{}", json!(key), sorted_json(&map[*key]))).collect();
            format!("{{{}}}", members.join(","))
        }
        Value::Array(list) => format!("[{}]", list.iter().map(sorted_json).collect::<Vec<_>>().join(",")),
        leaf => leaf.to_string(),
    }
}

#[tokio::test]
async fn a_record_that_was_touched_shows_as_such() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let reference = shop.signed(ticket, Purpose::Intake).await;
    sqlx::query("UPDATE signature SET record = replace(record, 'Rosa Fielding', 'Rosa Fieldinx')")
        .execute(&shop.database.owner_pool)
        .await
        .expect("the owner of the tables can");
    assert!(!shop.service.receipt(&shop.desk, &reference).await.expect("the receipt").intact);
}

#[tokio::test]
async fn at_the_counter_it_is_the_same_record_with_a_witness() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let shown = shop.service.counter_paper(&shop.desk, ticket, Purpose::Intake).await.expect("the paper");
    let given = CustomerAnswer { accepted: vec!["TEARDOWN".into()], ..answer(&shown.digest) };
    let sent = AnswerAtCounter { ticket, purpose: Purpose::Intake, answer: given };
    let told = shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), sent).await.expect("signed");
    let receipt = shop.service.receipt(&shop.desk, &told.reference).await.expect("the receipt");
    assert_eq!((receipt.record.channel, receipt.record.witness.as_deref()), (Channel::Counter, Some("Dana Frost")));
    assert_eq!(receipt.record.paper, shown.paper);
    assert_eq!(receipt.record.link, None);
}

#[tokio::test]
async fn a_paper_that_changed_between_reading_and_signing_is_read_again() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let shown = shop.service.counter_paper(&shop.desk, ticket, Purpose::Build).await.expect("the paper");
    shop.change(ticket, fact("bell.ring_holes", json!(7))).await;
    let sent = AnswerAtCounter { ticket, purpose: Purpose::Build, answer: answer(&shown.digest) };
    let refused = shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), sent).await;
    assert!(matches!(&refused, Err(Failure::Problems(problems)) if problems[0].field == "shown"), "{refused:?}");
}

#[tokio::test]
async fn a_receipt_number_with_a_wrong_letter_is_told_from_one_that_is_not_there() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let reference = shop.signed(ticket, Purpose::Intake).await;
    let last = if reference.ends_with('7') { "8" } else { "7" };
    let wrong = format!("{}{last}", &reference[..reference.len() - 1]);
    assert!(matches!(shop.service.receipt(&shop.desk, &wrong).await, Err(Failure::Problems(_))));
    assert!(matches!(shop.service.receipt(&shop.desk, "2222-2222-2").await, Err(Failure::NotFound(_))));
}

#[tokio::test]
async fn the_customers_page_tells_nothing_the_shop_keeps_to_itself() {
    let shop = shop::open().await;
    let ticket = shop.take_in().await;
    let note = endplay::service::WriteNote { ticket, text: "Pays late, take a deposit".into() };
    shop.service.write(Who::Staff(shop.desk.clone()), Key::fresh(), note).await.expect("noted");
    shop.change(ticket, fact("bell.ring_holes", json!(6))).await;
    for purpose in [Purpose::Intake, Purpose::Build] {
        let pass = shop.link(ticket, purpose).await;
        let shown = shop.service.open_link(&pass).await.expect("a page").shown.expect("open");
        let text = serde_json::to_string(&shown.paper).expect("JSON");
        for secret in ["Pays late", "Dana", "Tomas", "4477", "rosa@", "TST-01", "Ring has six holes"] {
            assert!(!text.contains(secret), "{secret} on {purpose:?}");
        }
    }
}
