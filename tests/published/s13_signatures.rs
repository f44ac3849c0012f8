//! Signatures and repair orders: what the law wants on record, held against what is kept.
//!
//! No legal advice, and no promise that a record will stand. Each row names a rule and asks whether the record can say
//! what that rule wants known.

use crate::check::{Check, Source, Trust};
use endplay::quantity::Cents;
use endplay::ticket::{Answer, Approval, Block, Channel, Paper, Price, Purpose, Signature, SignatureRecord};
use serde_json::Value;
use uuid::Uuid;

const ESIGN: Source =
    Source("15 USC 7001(d)(1), in the words of W. Va. Code 39A-2-7: accurate, and able to be reproduced", Trust::Read);
const UETA_2: Source =
    Source("UETA § 2, Cal. Civ. 1633.2(h): attached to the record, with intent to sign", Trust::Read);
const UETA_9: Source = Source("UETA § 9, Cal. Civ. 1633.9(a): the act of the person, shown in any manner", Trust::Read);
const CCR_3353: Source = Source("16 CCR 3353: authorized before any work", Trust::Read);
const CCR_3354: Source = Source("16 CCR 3354: more work wants a new authorization", Trust::Read);
const CCR_3358: Source = Source("16 CCR 3358: legible, under a unique identifier", Trust::Read);

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
            ticks: Vec::new(),
            price: "Price: 1850.00".into(),
            priced: Price::single("rebuild", Cents(185_000)),
            promise: "By typing my name I agree.".into(),
            refusal: "If you say no, the work stops.".into(),
        },
        findings: Vec::new(),
        accepted: Vec::new(),
        price_cents: Some(Cents(185_000)),
        name: "Rosa Fielding".into(),
        why: None,
        at: "2026-03-04T10:20:30-06:00[America/Chicago]".into(),
        address: "203.0.113.9".into(),
        agent: "A browser".into(),
        witness: Some("Ada".into()),
        link: Some(Uuid::from_u128(9)),
    }
}

/// The sealed text, read back by a reader that knows nothing of the program.
fn kept() -> Value {
    serde_json::from_str(&Signature::seal(&record()).text).expect("the kept text is plain JSON")
}

fn says(path: &str) -> String {
    let kept = kept();
    kept.pointer(path).map_or("nothing".into(), |found| found.as_str().map_or(found.to_string(), str::to_owned))
}

/// Whether two records that differ in one thing are sealed apart.
fn sealed_apart(change: impl Fn(&mut SignatureRecord)) -> &'static str {
    let mut other = record();
    change(&mut other);
    let (one, other) = (Signature::seal(&record()), Signature::seal(&other));
    if one.digest != other.digest && one.reference != other.reference { "told apart" } else { "the same" }
}

fn read_back() -> &'static str {
    let again: Result<SignatureRecord, _> = serde_json::from_str(&Signature::seal(&record()).text);
    if again.is_ok_and(|again| again == record()) { "word for word" } else { "changed" }
}

fn standing(latest: Option<(Answer, &str)>) -> &'static str {
    match Approval::of_build(latest, "as it stands now") {
        Approval::Missing => "not authorized",
        Approval::Signed => "authorized",
        Approval::Void => "to be authorized again",
        Approval::Declined => "declined",
    }
}

pub fn checks() -> Vec<Check> {
    vec![
        ESIGN.words("the record, read back", read_back(), "word for word"),
        ESIGN.words("the text that was shown", says("/paper/blocks/0/lines/0"), "Firm shifts"),
        ESIGN.words("another text", sealed_apart(|record| record.paper.opening[0].push('.')), "told apart"),
        UETA_2.words("who signed", says("/name"), "Rosa Fielding"),
        UETA_2.words("what signing meant", says("/paper/promise"), "By typing my name I agree."),
        UETA_2.words("another meaning", sealed_apart(|record| record.paper.promise.push('.')), "told apart"),
        UETA_2.words("which version", says("/revision"), "3"),
        UETA_2.words("another version", sealed_apart(|record| record.revision = 4), "told apart"),
        UETA_9.words("by which way", says("/channel"), "link"),
        UETA_9.words("from where", says("/address"), "203.0.113.9"),
        UETA_9.words("with what", says("/agent"), "A browser"),
        UETA_9.words("before whom", says("/witness"), "Ada"),
        UETA_9.words("when, with offset and zone", says("/at"), "2026-03-04T10:20:30-06:00[America/Chicago]"),
        CCR_3353.words("before any answer", standing(None), "not authorized"),
        CCR_3353.words("signed as it stands", standing(Some((Answer::Signed, "as it stands now"))), "authorized"),
        CCR_3353.words("the price shown, in cents", says("/price_cents"), "185000"),
        CCR_3354.words(
            "signed before it changed",
            standing(Some((Answer::Signed, "as it stood"))),
            "to be authorized again",
        ),
        CCR_3354.words("declined as it stands", standing(Some((Answer::Declined, "as it stands now"))), "declined"),
        CCR_3358.words("another job of the same shop", sealed_apart(|record| record.ticket += 1), "told apart"),
    ]
}
