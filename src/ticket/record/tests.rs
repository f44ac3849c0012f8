//! A record has one digest, and no part of it can change unseen.

use super::*;
use crate::ticket::{Block, Price, Purpose, Severity, Tick};
use serde_json::Value;

fn record() -> SignatureRecord {
    SignatureRecord {
        form: SignatureRecord::form(),
        shop: Uuid::from_u128(7),
        shop_name: "Harbor Lane Gearbox".into(),
        ticket: 1042,
        revision: 3,
        answer: Answer::Signed,
        channel: Channel::Link,
        paper: Paper {
            purpose: Purpose::Build,
            title: "Build summary".into(),
            opening: vec!["This is version 3.".into()],
            blocks: vec![Block { heading: "What you asked for".into(), lines: vec!["Firm shifts".into()] }],
            ticks: vec![Tick {
                code: "SPD-01".into(),
                severity: Some(Severity::Caution),
                text: "Your dial reads 4 percent high.".into(),
            }],
            price: "Price: 1850.00".into(),
            priced: Price::single("rebuild", Cents(185_000)),
            promise: "By typing my name I agree.".into(),
            refusal: "If you say no, the work stops.".into(),
        },
        findings: vec![Found {
            code: "SPD-01".into(),
            severity: Severity::Caution,
            title: "Dial reads high".into(),
            shop: "Dial reads high.".into(),
            customer: "Your dial reads 4 percent high.".into(),
            fix: "Another gear".into(),
            basis: "arithmetic".into(),
            customer_accepts: true,
            facts: vec!["vehicle.axle_ratio".into()],
        }],
        accepted: vec!["SPD-01".into()],
        price_cents: Some(Cents(185_000)),
        name: "Rosa Fielding".into(),
        why: Some("none".into()),
        at: "2026-03-04T10:20:30-06:00[America/Chicago]".into(),
        address: "203.0.113.9".into(),
        agent: "A browser".into(),
        witness: Some("Ada".into()),
        link: Some(Uuid::from_u128(9)),
    }
}

/// Changes the n-th leaf of a JSON value; false when there is none.
fn change_leaf(value: &mut Value, at: &mut usize) -> bool {
    match value {
        Value::Object(map) => map.iter_mut().any(|(_, inner)| change_leaf(inner, at)),
        Value::Array(list) => list.iter_mut().any(|inner| change_leaf(inner, at)),
        leaf if *at == 0 => {
            *leaf = match leaf {
                Value::String(text) => Value::String(format!("{text}x")),
                Value::Number(number) => Value::from(number.as_i64().unwrap_or_default() + 1),
                Value::Bool(yes) => Value::Bool(!*yes),
                _ => Value::from("something"),
            };
            true
        }
        _ => {
            *at -= 1;
            false
        }
    }
}

#[test]
fn any_single_change_changes_the_digest() {
    let whole = serde_json::to_value(record()).expect("a record is JSON");
    let digest = Signature::seal(&record()).digest;
    assert_eq!(Digest::of_value(&whole), digest, "the digest does not depend on the order of fields");
    let mut seen = std::collections::HashSet::from([digest]);
    for leaf in 0.. {
        let mut changed = whole.clone();
        if !change_leaf(&mut changed, &mut leaf.clone()) {
            assert_eq!(leaf, 38, "every leaf of the record was tried");
            break;
        }
        assert!(seen.insert(Digest::of_value(&changed)), "leaf {leaf} could change unseen");
    }
}

#[test]
fn a_kept_text_reads_back_to_the_same_record_and_seal() {
    let sealed = Signature::seal(&record());
    let read: SignatureRecord = serde_json::from_str(&sealed.text).expect("the text is JSON");
    assert_eq!(read, record());
    assert_eq!(Signature::seal(&read), sealed);
}
