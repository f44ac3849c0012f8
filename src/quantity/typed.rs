//! Numbers as people type them: `0.031`, `5/32`, `1-1/2 in`, `31 thou`, `4 mm`, `1,900 rpm`.
//!
//! Nothing is guessed: what could be read two ways is refused with the reason
//! and the way to write it. A unit that is written out is converted; a number
//! without one is in the unit of the field.

use super::spelling::{self, Spelling};
use super::{Quantity, Unit};

/// How much of what was typed is said back: more than any number has.
const SAID_BACK: usize = 60;

/// The first so many characters of a text, with a mark when there were more.
pub fn cut(text: &str, at_most: usize) -> String {
    match text.char_indices().nth(at_most) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

/// Why a typed number was not taken; prints as a sentence for the person who typed it.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Unread {
    /// Only spaces, or nothing.
    #[error("nothing was typed; write {wanted}")]
    Empty {
        /// How to write it.
        wanted: String,
    },
    /// Not a number in any form known here.
    #[error("“{given}” cannot be read as a number; write {wanted}")]
    NotANumber {
        /// As typed, cut when it is long.
        given: String,
        /// How to write it.
        wanted: String,
    },
    /// A comma that may be a decimal or a thousand.
    #[error(
        "“{given}” has a comma that can be read two ways; write the decimal with a point, thousands without a mark"
    )]
    Comma {
        /// As typed, cut when it is long.
        given: String,
    },
    /// A unit that does not belong here.
    #[error("“{given}” ends in “{unit}”, which does not measure this; write {wanted}")]
    OtherUnit {
        /// As typed, cut when it is long.
        given: String,
        /// The unit as typed.
        unit: String,
        /// How to write it.
        wanted: String,
    },
    /// A fraction over nought.
    #[error("“{given}” has 0 under the line; the lower number of a fraction is 1 or more")]
    OverNought {
        /// As typed, cut when it is long.
        given: String,
    },
    /// A whole number followed by a fraction of one or more.
    #[error("“{given}” has a fraction of 1 or more after the whole number; write it as one fraction or as a decimal")]
    FractionTooLarge {
        /// As typed, cut when it is long.
        given: String,
    },
    /// More digits than a number here can hold.
    #[error("“{given}” has too many digits")]
    TooLong {
        /// As typed, cut when it is long.
        given: String,
    },
}

impl<U: Unit> Quantity<U> {
    /// Reads a number as typed into a field of the unit `U`.
    ///
    /// # Errors
    /// [`Unread`], whose text tells what was typed and how to write it. The
    /// field's name is for the caller to put in front.
    pub fn from_typed(typed: &str) -> Result<Self, Unread> {
        let plain = plain_signs(typed);
        let given = || cut(typed.trim(), SAID_BACK);
        let (number, unit) = split_unit(&plain);
        if number.is_empty() && unit.is_empty() {
            return Err(Unread::Empty { wanted: spelling::how_to_write::<U>() });
        }
        let Some(Spelling { times, over }) = spelling::find::<U>(unit) else {
            // Without a number before it, the text is a word and not a unit.
            return Err(if number.is_empty() {
                Unread::NotANumber { given: given(), wanted: spelling::how_to_write::<U>() }
            } else {
                let unit = cut(unit, SAID_BACK);
                Unread::OtherUnit { given: given(), unit, wanted: spelling::how_to_write::<U>() }
            });
        };
        let value = read(number, spelling::groups_thousands(U::SYMBOL))
            .map_err(|trouble| trouble.with(typed, spelling::how_to_write::<U>()))?;
        let converted = value * times / over;
        if converted.is_finite() { Ok(Self::new(converted)) } else { Err(Unread::TooLong { given: given() }) }
    }
}

/// The number and the unit behind it as typed, lower case, nothing converted; `symbol` is the field's own unit.
///
/// # Errors
/// [`Unread`] when it does not start with a number; `wanted` is what the field takes.
pub fn number_and_unit(typed: &str, symbol: &str, wanted: &str) -> Result<(f64, String), Unread> {
    let plain = plain_signs(typed);
    let (number, unit) = split_unit(&plain);
    let value =
        read(number, spelling::groups_thousands(symbol)).map_err(|trouble| trouble.with(typed, wanted.into()))?;
    if value.is_finite() {
        Ok((value, unit.to_owned()))
    } else {
        Err(Unread::TooLong { given: cut(typed.trim(), SAID_BACK) })
    }
}

/// What is wrong with the number itself.
enum Trouble {
    NotANumber,
    Comma,
    OverNought,
    FractionTooLarge,
    TooLong,
}

impl Trouble {
    fn with(self, typed: &str, wanted: String) -> Unread {
        let given = cut(typed.trim(), SAID_BACK);
        match self {
            Self::NotANumber => Unread::NotANumber { given, wanted },
            Self::Comma => Unread::Comma { given },
            Self::OverNought => Unread::OverNought { given },
            Self::FractionTooLarge => Unread::FractionTooLarge { given },
            Self::TooLong => Unread::TooLong { given },
        }
    }
}

/// Keyboards and phones write one sign in several ways; this is the plain one.
fn plain_signs(typed: &str) -> String {
    let mut plain = String::with_capacity(typed.len());
    for sign in typed.chars() {
        let vulgar = match sign {
            '½' => "1/2",
            '¼' => "1/4",
            '¾' => "3/4",
            '⅛' => "1/8",
            '⅜' => "3/8",
            '⅝' => "5/8",
            '⅞' => "7/8",
            '−' | '–' => "-",
            '⁄' => "/",
            '″' | '”' => "\"",
            '\u{a0}' | '\u{202f}' => " ",
            other => {
                plain.extend(other.to_lowercase());
                continue;
            }
        };
        // 1½ is one and a half, not eleven halves.
        if vulgar.len() == 3 && plain.ends_with(|before: char| before.is_ascii_digit()) {
            plain.push('-');
        }
        plain.push_str(vulgar);
    }
    plain.trim().to_owned()
}

/// The number in front and the unit behind it.
fn split_unit(plain: &str) -> (&str, &str) {
    let unit_starts = |sign: char| sign.is_alphabetic() || matches!(sign, '"' | '\'' | '°' | '%' | ':');
    let (number, unit) = plain.split_at(plain.find(unit_starts).unwrap_or(plain.len()));
    let unit = unit.trim();
    (number.trim(), unit.strip_suffix('.').unwrap_or(unit))
}

fn read(number: &str, groups_thousands: bool) -> Result<f64, Trouble> {
    let (sign, size) = match number.strip_prefix('-') {
        Some(rest) => (-1.0, rest),
        None => (1.0, number.strip_prefix('+').unwrap_or(number)),
    };
    let size = if size.contains(',') { ungrouped(size, groups_thousands)? } else { size.to_owned() };
    let value = match size.split_once('/') {
        Some((above, below)) => fraction(above, below)?,
        None => decimal(&size)?,
    };
    Ok(if value == 0.0 { 0.0 } else { sign * value })
}

/// `1,900` without its comma, where thousands are usual and nothing else could be meant.
fn ungrouped(size: &str, groups_thousands: bool) -> Result<String, Trouble> {
    let mut groups = size.split('.').next().unwrap_or_default().split(',');
    let first = groups.next().unwrap_or_default();
    let sound = groups_thousands
        && !first.starts_with('0')
        && (1..=3).contains(&first.len())
        && groups.all(|group| group.len() == 3)
        && !size.contains('/')
        && !size.split_once('.').is_some_and(|(_, decimals)| decimals.contains(','));
    if sound { Ok(size.replace(',', "")) } else { Err(Trouble::Comma) }
}

/// `5/32`, or `1-1/2` and `1 1/2` with the whole number still in front.
fn fraction(above: &str, below: &str) -> Result<f64, Trouble> {
    let (whole, above) = match above.split_once(['-', ' ']) {
        Some((whole, above)) => (Some(count(whole)?), above),
        None => (None, above),
    };
    let (above, below) = (count(above)?, count(below)?);
    match (whole, above, below) {
        (_, _, 0) => Err(Trouble::OverNought),
        (Some(_), above, below) if above >= below => Err(Trouble::FractionTooLarge),
        (whole, above, below) => {
            // Over one common line, so that the result is rounded once.
            let all = u64::from(whole.unwrap_or(0)) * u64::from(below) + u64::from(above);
            Ok(all as f64 / f64::from(below))
        }
    }
}

fn count(digits: &str) -> Result<u32, Trouble> {
    if digits.is_empty() || !digits.bytes().all(|digit| digit.is_ascii_digit()) {
        return Err(Trouble::NotANumber);
    }
    // Five digits keep a whole number and its fraction exact.
    if digits.len() > 5 { Err(Trouble::TooLong) } else { digits.parse().map_err(|_| Trouble::TooLong) }
}

fn decimal(digits: &str) -> Result<f64, Trouble> {
    let shaped = digits.bytes().all(|sign| sign.is_ascii_digit() || sign == b'.')
        && digits.bytes().any(|sign| sign.is_ascii_digit());
    if shaped { digits.parse().map_err(|_| Trouble::NotANumber) } else { Err(Trouble::NotANumber) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Inch, Millimetre, One, PoundFoot, Quart, Rpm};
    use proptest::prelude::*;

    fn inches(typed: &str) -> Result<f64, String> {
        Quantity::<Inch>::from_typed(typed).map(Quantity::value).map_err(|unread| unread.to_string())
    }

    fn refusal<U: Unit>(typed: &str) -> Unread {
        Quantity::<U>::from_typed(typed).expect_err(typed)
    }

    #[test]
    fn inches_are_read_the_way_they_are_written_on_the_bench() {
        for (typed, value) in [
            ("0.031", 0.031),
            (".031", 0.031),
            ("0.031 in", 0.031),
            ("0.031\"", 0.031),
            ("0.031”", 0.031),
            ("31 thou", 0.031),
            ("31 thousandths", 0.031),
            ("5/32", 0.15625),
            ("5/32 in.", 0.15625),
            ("1-1/2", 1.5),
            ("1 1/2 inches", 1.5),
            ("1½", 1.5),
            ("½", 0.5),
            ("-1-1/2", -1.5),
            ("−0.004", -0.004),
            ("+0.004", 0.004),
            ("25.4 mm", 1.0),
            ("4mm", 4.0 / 25.4),
            ("17/64", 0.265_625),
            ("3/2", 1.5),
            ("0", 0.0),
            ("-0", 0.0),
            ("  28.5  ", 28.5),
            ("3.", 3.0),
        ] {
            assert_eq!(inches(typed), Ok(value), "{typed}");
        }
    }

    #[test]
    fn what_can_be_read_two_ways_is_refused_with_the_way_to_write_it() {
        let comma = refusal::<Inch>("0,031");
        assert_eq!(comma, Unread::Comma { given: "0,031".into() });
        assert!(comma.to_string().contains("write the decimal with a point"), "{comma}");
        // A length of one thousand five hundred inches does not exist; one and a half does.
        assert!(matches!(refusal::<Inch>("1,500"), Unread::Comma { .. }));
        assert!(matches!(refusal::<Rpm>("0,900"), Unread::Comma { .. }));
        assert!(matches!(refusal::<Rpm>("19,00"), Unread::Comma { .. }));
        assert!(matches!(refusal::<Rpm>("1,900,5"), Unread::Comma { .. }));
        assert!(matches!(refusal::<Rpm>("1900.0,5"), Unread::Comma { .. }));
        assert!(matches!(refusal::<Inch>("1-9/8"), Unread::FractionTooLarge { .. }));
        assert!(matches!(refusal::<Inch>("1-8/8"), Unread::FractionTooLarge { .. }));
        assert_eq!(inches("1-7/8"), Ok(1.875));
        assert!(matches!(refusal::<Inch>("5/0"), Unread::OverNought { .. }));
        assert!(matches!(refusal::<Inch>("9".repeat(400).as_str()), Unread::TooLong { .. }));
    }

    #[test]
    fn what_is_no_number_says_what_to_write() {
        for typed in
            ["abc", "1/4-20", "1.2.3", "1e5 5", "--1", "1 - 1/2", "1/2/3", ".", "-", "/2", "5/", "1 2", "NaN", "inf"]
        {
            let unread = refusal::<Inch>(typed);
            assert!(unread.to_string().contains(typed) && unread.to_string().contains("write"), "{typed}: {unread}");
        }
        assert!(matches!(refusal::<Inch>("   "), Unread::Empty { .. }));
        let other = refusal::<Inch>("4 qt").to_string();
        assert!(other.contains("“4 qt” ends in “qt”") && other.contains("5/32"), "{other}");
        assert!(matches!(refusal::<One>("2 %"), Unread::OtherUnit { .. }), "per cent is not a ratio");
    }

    #[test]
    fn whatever_is_pasted_into_a_field_the_refusal_stays_short_enough_to_read() {
        let page = "a page of text 12 ".repeat(100);
        for typed in [page.clone(), format!("12 {page}"), "9".repeat(1000), format!("1/{}", "9".repeat(1000))] {
            let unread = refusal::<Inch>(&typed).to_string();
            assert!(unread.chars().count() < 300, "{unread}");
            assert!(unread.contains('…') && unread.contains(&typed[..50]), "{unread}");
        }
    }

    #[test]
    fn a_written_unit_is_converted_and_a_bare_number_is_the_fields_own() {
        assert_eq!(Quantity::<Millimetre>::from_typed("8.5"), Ok(Quantity::new(8.5)));
        assert_eq!(Quantity::<Millimetre>::from_typed("5/16 in"), Ok(Quantity::new(7.9375)));
        assert_eq!(Quantity::<Rpm>::from_typed("1,900 rpm"), Ok(Quantity::new(1900.0)));
        assert_eq!(Quantity::<Rpm>::from_typed("12,500"), Ok(Quantity::new(12_500.0)));
        assert_eq!(Quantity::<One>::from_typed("3.73:1"), Ok(Quantity::new(3.73)));
        assert_eq!(Quantity::<PoundFoot>::from_typed("96 in-lb"), Ok(Quantity::new(8.0)));
        assert_eq!(Quantity::<PoundFoot>::from_typed("35 ft lbs"), Ok(Quantity::new(35.0)));
        assert_eq!(Quantity::<Quart>::from_typed("5-1/2 qts"), Ok(Quantity::new(5.5)));
    }

    proptest! {
        #[test]
        fn every_number_printed_reads_back(value in -1e6..1e6f64) {
            prop_assert_eq!(inches(&value.to_string()), Ok(value));
        }

        #[test]
        fn a_fraction_is_the_nearest_number_to_it(whole in 0u32..100, above in 0u32..64, below in 1u32..65) {
            prop_assume!(above < below);
            prop_assert_eq!(inches(&format!("{whole}-{above}/{below}")), Ok(f64::from(whole * below + above) / f64::from(below)));
        }

        #[test]
        fn thousandths_are_the_same_as_the_decimal(thousandths in 0u32..100_000) {
            let decimal = format!("{}.{:03}", thousandths / 1000, thousandths % 1000);
            prop_assert_eq!(inches(&format!("{thousandths} thou")), inches(&decimal));
        }

        #[test]
        fn no_text_brings_it_down_and_none_becomes_a_number_that_is_none(typed in "\\PC{0,12}") {
            if let Ok(value) = inches(&typed) {
                prop_assert!(value.is_finite() && typed.chars().any(|sign| sign.is_numeric()));
            }
        }

        #[test]
        fn near_numbers_are_read_or_refused_but_never_bring_it_down(typed in "[-+0-9./, ½\"inm]{0,10}") {
            if let Ok(value) = inches(&typed) {
                prop_assert!(value.is_finite());
            }
        }
    }
}
