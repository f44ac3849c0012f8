//! The signature record: everything that was shown and answered, sealed by its digest.

use super::canonical::{Digest, canonical};
use super::coded::coded;
use super::judgement::Found;
use super::paper::Paper;
use super::reference::Reference;
use crate::quantity::Cents;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

coded! {
    /// What the customer answered.
    Answer {
        /// Signed.
        Signed = "signed", "Signed";
        /// Declined, with a reason.
        Declined = "declined", "Declined";
    }
}

coded! {
    /// Where the customer answered.
    Channel {
        /// On their own device, by link.
        Link = "link", "By link";
        /// At the shop's counter, before a member of staff.
        Counter = "counter", "At the counter";
    }
}

/// The name of this form of record. A changed form gets a new name.
const FORM: &str = "endplay signature 1";

/// Everything a signature stands for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SignatureRecord {
    /// The form of the record.
    pub form: String,
    /// The shop.
    pub shop: Uuid,
    /// The shop's name as shown.
    pub shop_name: String,
    /// The ticket's number.
    pub ticket: i64,
    /// The revision that was shown.
    pub revision: i32,
    /// What was answered.
    pub answer: Answer,
    /// Where.
    pub channel: Channel,
    /// The exact text shown.
    pub paper: Paper,
    /// Every finding of the revision, shown or not.
    pub findings: Vec<Found>,
    /// The codes that were ticked.
    pub accepted: Vec<String>,
    /// The price shown, in cents.
    pub price_cents: Option<Cents>,
    /// The name as typed.
    pub name: String,
    /// Why it was declined.
    pub why: Option<String>,
    /// When, with the shop's offset and zone, as RFC 9557 writes it.
    pub at: String,
    /// The network address it came from.
    pub address: String,
    /// What the browser called itself.
    pub agent: String,
    /// The member of staff at the counter.
    pub witness: Option<String>,
    /// The link it was answered through.
    pub link: Option<Uuid>,
}

impl SignatureRecord {
    /// The form's name, for a new record.
    pub fn form() -> String {
        FORM.to_owned()
    }
}

/// A record as it is kept: its canonical text, the digest over that, the reference for people.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signature {
    /// The canonical form of the record.
    pub text: String,
    /// SHA-256 over the text's bytes.
    pub digest: Digest,
    /// For the receipt.
    pub reference: Reference,
}

impl Signature {
    /// Seals a record.
    pub fn seal(record: &SignatureRecord) -> Self {
        let text = canonical(record);
        let digest = Digest::of(text.as_bytes());
        Self { text, digest, reference: Reference::of(&digest) }
    }
}

#[cfg(test)]
mod tests;
