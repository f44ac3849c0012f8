//! Reading a tire size as it is written on the sidewall.

use super::Size;
use super::size::USUAL_RADIAL;
use crate::quantity::{Inch, Quantity, cut};

/// Why a size was not taken; prints as a sentence for the person who typed it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Unread {
    /// No notation known here.
    #[error(
        "“{given}” is not a tire size known here; write it as 275/60R15, 31x10.50R15 or 7.00-15, or measure the diameter"
    )]
    Notation {
        /// As typed, cut when it is long.
        given: String,
    },
    /// A letter size, `F70-14`.
    #[error(
        "“{given}” is a letter size: the letter tells the load and not the width, so no diameter follows; measure it"
    )]
    LetterSize {
        /// As typed, cut when it is long.
        given: String,
    },
    /// The numbers read, but no such tire can be.
    #[error("“{given}” cannot be a tire: {reason}")]
    Impossible {
        /// As typed, cut when it is long.
        given: String,
        /// Which number, and what is possible.
        reason: &'static str,
    },
}

impl std::str::FromStr for Size {
    type Err = Unread;

    fn from_str(typed: &str) -> Result<Self, Unread> {
        let given = cut(typed.trim(), 60);
        let upper = typed.trim().to_uppercase().replace('×', "X");
        if is_letter_size(&upper) {
            return Err(Unread::LetterSize { given });
        }
        let Some(written) = Written::read(&upper) else { return Err(Unread::Notation { given }) };
        match possible(&written) {
            Ok(size) => Ok(size),
            Err(reason) => Err(Unread::Impossible { given, reason }),
        }
    }
}

/// One letter from A to N, perhaps R for radial, then profile and rim: `F70-14`, `GR78-15`.
fn is_letter_size(upper: &str) -> bool {
    let mut signs = upper.chars();
    let letter = signs.next().is_some_and(|sign| ('A'..='N').contains(&sign));
    let rest = signs.as_str();
    let mut text = Text(rest.strip_prefix('R').unwrap_or(rest));
    letter && text.number().is_some() && text.one_of(&['-', 'R']).is_some() && text.number().is_some()
}

/// The numbers of a size in the order they stand.
struct Written {
    first: f64,
    /// The mark after the first number and the number after that.
    second: Option<(char, f64)>,
    rim: f64,
}

impl Written {
    fn read(upper: &str) -> Option<Self> {
        let bare = ["LT", "ST", "P", "T"].iter().find_map(|class| upper.strip_prefix(class)).unwrap_or(upper);
        let mut text = Text(bare);
        let first = text.number()?;
        let second = match text.one_of(&['/', 'X']) {
            Some(mark) => Some((mark, text.number()?)),
            None => None,
        };
        // A speed letter may stand before the R of a radial.
        if text.one_of(&['Z', 'H', 'V', 'S', 'Q', 'T', 'W', 'Y']).is_some() && !text.0.starts_with('R') {
            return None;
        }
        text.one_of(&['-', 'R', 'B', 'D'])?;
        let rim = text.number()?;
        // What follows is the service description: LT, C, 112S, XL.
        let service = text.0.trim();
        let plain =
            service.len() <= 12 && service.chars().all(|sign| sign.is_ascii_alphanumeric() || " /".contains(sign));
        plain.then_some(Self { first, second, rim })
    }
}

fn possible(written: &Written) -> Result<Size, &'static str> {
    let rim: Quantity<Inch> = Quantity::new(written.rim);
    if !(8.0..=30.0).contains(&written.rim) {
        return Err("the last number is the rim, 8 to 30 inches");
    }
    match written.second {
        Some(('/', profile)) if written.first >= 100.0 => {
            if written.first > 500.0 {
                return Err("the first number is the width, 100 to 500 mm");
            }
            if !(20.0..=100.0).contains(&profile) {
                return Err("the number after the stroke is the profile, 20 to 100 per cent");
            }
            Ok(Size::Metric { width: Quantity::new(written.first), profile, rim })
        }
        Some((_, width)) => {
            if written.first <= written.rim || written.first > 60.0 {
                return Err("the first number is the diameter in inches, larger than the rim and up to 60");
            }
            if !(2.0..=25.0).contains(&width) {
                return Err("the second number is the width, 2 to 25 inches");
            }
            Ok(Size::Flotation { diameter: Quantity::new(written.first), width: Quantity::new(width), rim })
        }
        None if (100.0..=300.0).contains(&written.first) => {
            Ok(Size::MetricWithoutProfile { width: Quantity::new(written.first), rim })
        }
        None if (3.0..=14.0).contains(&written.first) => {
            let usual_profile = if (written.first * 2.0).fract() == 0.0 { 92.0 } else { USUAL_RADIAL };
            Ok(Size::WithoutProfile { width: Quantity::new(written.first), usual_profile, rim })
        }
        None => Err("the first number is the width, 3 to 14 inches or 100 to 300 mm"),
    }
}

/// What is still to be read; spaces between the parts do not matter.
struct Text<'a>(&'a str);

impl Text<'_> {
    fn number(&mut self) -> Option<f64> {
        let text = self.0.trim_start();
        let end = text.find(|sign: char| !sign.is_ascii_digit() && sign != '.').unwrap_or(text.len());
        let (digits, rest) = text.split_at(end);
        let number = digits.parse().ok().filter(|_| digits.len() <= 6)?;
        self.0 = rest;
        Some(number)
    }

    fn one_of(&mut self, signs: &[char]) -> Option<char> {
        let text = self.0.trim_start();
        let sign = text.chars().next().filter(|sign| signs.contains(sign))?;
        self.0 = &text[sign.len_utf8()..];
        Some(sign)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn size(typed: &str) -> Size {
        typed.parse().unwrap_or_else(|unread| panic!("{unread}"))
    }

    fn diameter(typed: &str) -> f64 {
        size(typed).diameter().0.value()
    }

    fn refusal(typed: &str) -> Unread {
        typed.parse::<Size>().expect_err(typed)
    }

    #[test]
    fn the_same_tire_is_read_from_every_way_of_writing_it() {
        for typed in [
            "275/60R15",
            "P275/60R15",
            "275/60 R 15",
            "275/60-15",
            "275/60ZR15",
            "275/60WR15",
            "275/60R15 112S",
            "LT275/60R15C",
            " 275/60r15 ",
        ] {
            assert_eq!(size(typed), size("275/60R15"), "{typed}");
        }
        for typed in ["31x10.50R15", "31X10.5R15LT", "31×10.50-15", "31 x 10.50 R15", "31/10.5-15"] {
            assert_eq!(size(typed), size("31x10.50R15"), "{typed}");
        }
        assert_eq!(size("100/60R15").to_string(), "100/60R15", "the narrowest that is read as millimeters");
        assert_eq!(size("500/60R15").to_string(), "500/60R15", "and the widest");
        assert_eq!(size("275/60R15 LT 112/109QX"), size("275/60R15"), "a service description of 12 signs");
        assert_eq!(size("275/60R015.00"), size("275/60R15"), "a number of six signs");
        assert_eq!(diameter("28.0/9.0-15"), 28.0, "a slick gives its diameter first");
    }

    #[test]
    fn a_size_is_printed_as_the_tire_it_is() {
        for (typed, printed) in [
            ("P275/60ZR15", "275/60R15"),
            ("31x10.5-15", "31x10.50R15"),
            ("7-15", "7.00-15"),
            ("7.75-14C", "7.75-14"),
            // In inches it would be 6.50, which is an inch and a half higher.
            ("165R14", "165R14"),
            ("7.004-15", "7.004-15"),
        ] {
            assert_eq!(size(typed).to_string(), printed);
            assert_eq!(size(printed), size(typed), "{typed}");
        }
    }

    #[test]
    fn what_is_no_size_says_why() {
        for typed in ["F70-14", "GR78-15", "L60-15", "e70-14"] {
            let unread = refusal(typed);
            assert!(matches!(unread, Unread::LetterSize { .. }), "{typed}: {unread}");
            assert!(unread.to_string().contains("measure"), "{unread}");
        }
        for typed in
            ["", "28", "round", "275/60", "275//60R15", "275/60Z15", "275/60R15;x", "1.2.3-15", "275/60R", "/60R15"]
        {
            assert!(matches!(refusal(typed), Unread::Notation { .. }), "{typed}");
        }
        for (typed, reason) in [
            ("275/60R55", "rim"),
            ("275/60R7", "rim"),
            ("275/10R15", "profile"),
            ("550/60R15", "width"),
            ("12x10R15", "diameter"),
            ("15x10R15", "diameter"),
            ("31x105R15", "width"),
            ("60R15", "width"),
        ] {
            let unread = refusal(typed);
            assert!(matches!(unread, Unread::Impossible { .. }), "{typed}: {unread}");
            assert!(unread.to_string().contains(reason), "{typed}: {unread}");
        }
        let long = refusal(&"275/60R15 ".repeat(100)).to_string();
        assert!(long.chars().count() < 200 && long.contains('…'), "{long}");
        assert_eq!(diameter("16x10R15"), 16.0, "just larger than its rim");
    }

    proptest! {
        #[test]
        fn what_is_printed_reads_back(width in 100u32..=500, profile in 20u32..=100, rim in 8u32..=30, inches in 31u32..=60) {
            let metric = size(&format!("{width}/{profile}R{rim}"));
            prop_assert_eq!(size(&metric.to_string()), metric);
            let flotation = size(&format!("{inches}x10.50R{rim}"));
            prop_assert_eq!(size(&flotation.to_string()), flotation);
        }

        #[test]
        fn no_text_brings_it_down_and_a_tire_is_larger_than_its_rim(typed in "[0-9PLTFRZX/x. -]{0,14}") {
            if let Ok(read) = typed.parse::<Size>() {
                let (Size::Metric { rim, .. }
                | Size::Flotation { rim, .. }
                | Size::WithoutProfile { rim, .. }
                | Size::MetricWithoutProfile { rim, .. }) = read;
                prop_assert!(read.diameter().0 > rim);
                prop_assert_eq!(read.to_string().parse(), Ok(read));
            }
        }
    }
}
