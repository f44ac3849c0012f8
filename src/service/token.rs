//! Secrets that are handed out: session cookies, set-up links, customer links.
//!
//! Each is the shop's key and 256 random bits. The database keeps only the SHA-256 of the bits.

use super::Failure;
use crate::ticket::Digest;
use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use std::fmt;
use uuid::Uuid;

/// A secret with the shop it belongs to; prints as `<shop>.<token>`, safe in a URL and in a cookie.
#[derive(Clone, PartialEq, Eq)]
pub struct Pass {
    shop: Uuid,
    token: [u8; 32],
}

impl Pass {
    /// A new one.
    pub(super) fn fresh(shop: Uuid) -> Result<Self, Failure> {
        let mut token = [0; 32];
        getrandom::fill(&mut token).map_err(|error| Failure::Broken(error.to_string().into()))?;
        Ok(Self { shop, token })
    }

    /// Reads one back; nothing when it cannot be one.
    pub fn read(text: &str) -> Option<Self> {
        let (shop, token) = text.split_once('.')?;
        let token = URL_SAFE_NO_PAD.decode(token).ok()?.try_into().ok()?;
        Some(Self { shop: Uuid::try_parse(shop).ok()?, token })
    }

    /// The shop it belongs to.
    pub const fn shop(&self) -> Uuid {
        self.shop
    }

    /// What the database keeps of it.
    pub(super) fn hash(&self) -> [u8; 32] {
        Digest::of(&self.token).0
    }
}

impl fmt::Display for Pass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.shop.simple(), URL_SAFE_NO_PAD.encode(self.token))
    }
}

/// A secret does not belong in a log.
impl fmt::Debug for Pass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Pass(hidden)")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_reads_back_and_no_two_are_alike() {
        let shop = Uuid::now_v7();
        let (one, other) = (Pass::fresh(shop).expect("random bits"), Pass::fresh(shop).expect("random bits"));
        assert_eq!(Pass::read(&one.to_string()), Some(one.clone()));
        assert_eq!(one.shop(), shop);
        assert_ne!(one.hash(), other.hash());
        assert!(one.to_string().chars().all(|letter| letter.is_ascii_alphanumeric() || "-_.".contains(letter)));
        assert!(!format!("{one:?}").contains(&one.to_string()[40..]));
    }

    #[test]
    fn what_is_no_pass_is_not_read() {
        let whole = Pass::fresh(Uuid::now_v7()).expect("random bits").to_string();
        for text in ["", ".", "a.b", &whole[..whole.len() - 1], &whole[1..], &format!("{whole}A")] {
            assert!(Pass::read(text).is_none(), "{text}");
        }
    }
}
