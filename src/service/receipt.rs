//! Receipts: what was signed, with its proof.

use super::{Caller, Failure, Service};
use crate::store::signature::{self, Kept};
use crate::ticket::{Action, Digest, Purpose, Reference, SignatureRecord};
use jiff::Timestamp;
use sqlx::PgConnection;
use uuid::Uuid;

/// A kept answer, read back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Receipt {
    /// The reference.
    pub reference: String,
    /// What it was for.
    pub purpose: Purpose,
    /// When.
    pub at: Timestamp,
    /// The whole record.
    pub record: SignatureRecord,
    /// The record's canonical text, over which the digest is taken.
    pub text: String,
    /// SHA-256 over the text, in hexadecimal digits.
    pub digest: String,
    /// Does the text still have that digest?
    pub intact: bool,
}

impl Service {
    /// The receipt with this reference, as people type it.
    ///
    /// # Errors
    /// [`Failure::Problems`] when it cannot be a reference; [`Failure::NotFound`] when there is none.
    pub async fn receipt(&self, caller: &Caller, reference: &str) -> Result<Receipt, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let Some(read) = Reference::read(reference) else {
            return Err(Failure::problem("reference", "This is no receipt number, or a letter of it is wrong."));
        };
        let (shop, read) = (caller.shop, read.to_string());
        let read = read.as_str();
        let found = self
            .read(|conn| {
                let read = read.to_owned();
                Box::pin(async move { find(conn, shop, &read).await })
            })
            .await?;
        found.ok_or(Failure::NotFound("such receipt"))
    }
}

pub(super) async fn find(conn: &mut PgConnection, shop: Uuid, reference: &str) -> Result<Option<Receipt>, Failure> {
    signature::by_reference(conn, shop, reference).await?.map(read_back).transpose()
}

pub(super) fn read_back(kept: Kept) -> Result<Receipt, Failure> {
    let record = serde_json::from_str(&kept.record).map_err(|error| Failure::Broken(Box::new(error)))?;
    let digest = Digest::of(kept.record.as_bytes());
    Ok(Receipt {
        reference: kept.reference,
        purpose: kept.purpose,
        at: kept.at,
        record,
        digest: digest.to_string(),
        intact: digest.0[..] == kept.digest[..],
        text: kept.record,
    })
}
