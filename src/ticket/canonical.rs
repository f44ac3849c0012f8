//! One way of writing a record down, so that one record has one digest.
//!
//! The form is RFC 8785 (JSON Canonicalization Scheme): UTF-8, no white space, object keys sorted by
//! their UTF-16 code units, numbers as ECMAScript prints them, strings with the shortest escapes.
//! Anybody with that RFC and SHA-256 can recompute a digest from the stored text.

use serde::Serialize;
use sha2::{Digest as _, Sha256};
use std::fmt;

/// A SHA-256 digest; prints as 64 hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Digest(pub [u8; 32]);

impl Digest {
    /// The digest of some bytes.
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// The digest of a value's canonical form.
    pub fn of_value(value: &impl Serialize) -> Self {
        Self::of(canonical(value).as_bytes())
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

/// The canonical form of a value.
pub fn canonical(value: &impl Serialize) -> String {
    serde_json_canonicalizer::to_string(value).expect("records hold finite numbers and string keys only")
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    /// The example of RFC 8785, section 3.2.2 and 3.2.3.
    #[test]
    fn the_form_is_that_of_rfc_8785() {
        let given: serde_json::Value = serde_json::from_str(
            r#"{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
                "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
                "literals": [null, true, false]}"#,
        )
        .expect("the example is JSON");
        assert_eq!(
            canonical(&given),
            "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],\
             \"string\":\"\u{20ac}$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}"
        );
    }

    #[test]
    fn keys_sort_by_utf_16_code_units() {
        let given = json!({"\u{20ac}": 1, "\r": 2, "\u{fb33}": 3, "1": 4, "\u{1f600}": 5, "\u{80}": 6, "\u{f6}": 7});
        let form = canonical(&given);
        let order: Vec<_> = form.chars().filter(char::is_ascii_digit).collect();
        // The key "1" itself is among the digits, just before its value.
        assert_eq!(order.into_iter().collect::<String>(), "21467153");
    }

    /// FIPS 180-2, appendix B.1.
    #[test]
    fn the_digest_is_sha_256() {
        let digest = Digest::of(b"abc").to_string();
        assert_eq!(digest, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }
}
