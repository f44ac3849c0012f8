//! What the work costs: lines and their sum, in whole cents.

use crate::quantity::Cents;
use serde::{Deserialize, Serialize};

/// One line of a price.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PriceLine {
    /// What it is for.
    pub what: String,
    /// What it costs; below zero for a discount.
    pub cents: Cents,
}

/// A price made of lines. No lines means nobody has named a price yet, which is not the same as zero.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Price {
    /// The lines in the order they are shown.
    pub lines: Vec<PriceLine>,
}

/// The largest amount a line may name: ten million of the shop's currency, which guards against slips of the hand.
const LARGEST: i64 = 1_000_000_000;
const MOST_LINES: usize = 60;
const LONGEST: usize = 200;

impl Price {
    /// A price of one line.
    pub fn single(what: impl Into<String>, cents: Cents) -> Self {
        Self { lines: vec![PriceLine { what: what.into(), cents }] }
    }

    /// The sum of the lines; nothing while no price has been named.
    pub fn total(&self) -> Option<Cents> {
        let first = self.lines.first()?.cents;
        Some(self.lines[1..].iter().fold(first, |sum, line| sum + line.cents))
    }

    /// The sum as a page tells it.
    pub fn total_in_words(&self) -> String {
        self.total().map_or_else(|| "not named".to_owned(), |total| total.to_string())
    }

    /// What stands in the way of this price, in words; nothing when it can stand.
    pub fn complaint(&self) -> Option<String> {
        if self.lines.len() > MOST_LINES {
            return Some(format!("The price has {} lines; {MOST_LINES} is the most.", self.lines.len()));
        }
        for line in &self.lines {
            if line.what.trim().is_empty() {
                return Some(format!("Say what the {} is for.", line.cents));
            }
            if line.what.chars().count() > LONGEST || line.what.chars().any(char::is_control) {
                return Some(format!("Keep each price line to one line of at most {LONGEST} characters."));
            }
            if line.cents.0.abs() > LARGEST {
                return Some(format!(
                    "{} for \"{}\" is more than a line can hold; the most is {}.",
                    line.cents,
                    line.what,
                    Cents(LARGEST)
                ));
            }
        }
        match self.total() {
            Some(total) if total.0 < 0 => Some(format!("The lines add up to {total}; a price cannot be below zero.")),
            _ => None,
        }
    }

    /// In one line of words.
    pub fn in_words(&self) -> String {
        match self.total() {
            None => "not named yet".to_owned(),
            Some(total) if self.lines.len() == 1 => total.to_string(),
            Some(total) => {
                let lines: Vec<_> = self.lines.iter().map(|line| format!("{} {}", line.what, line.cents)).collect();
                format!("{total} ({})", lines.join("; "))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(what: &str, cents: i64) -> PriceLine {
        PriceLine { what: what.into(), cents: Cents(cents) }
    }

    #[test]
    fn no_price_is_not_a_price_of_zero() {
        assert_eq!(Price::default().total(), None);
        assert_eq!(Price::single("warranty work", Cents(0)).total(), Some(Cents(0)));
    }

    #[test]
    fn lines_add_up_to_the_cent_and_discounts_count() {
        let price =
            Price { lines: vec![line("rebuild", 185_000), line("billet shaft", 62_499), line("returning", -10_000)] };
        assert_eq!(price.total(), Some(Cents(237_499)));
        assert_eq!(price.complaint(), None);
        assert_eq!(price.in_words(), "2374.99 (rebuild 1850.00; billet shaft 624.99; returning -100.00)");
    }

    #[test]
    fn slips_of_the_hand_are_named() {
        for (price, word) in [
            (Price { lines: vec![line(" ", 100)] }, "Say what"),
            (Price { lines: vec![line("a\u{0}b", 100)] }, "one line"),
            (Price { lines: vec![line("rebuild", LARGEST + 1)] }, "more than a line"),
            (Price { lines: vec![line("discount", -1)] }, "below zero"),
            (Price { lines: vec![line("bolt", 1); MOST_LINES + 1] }, "61 lines"),
        ] {
            let complaint = price.complaint().expect("this price cannot stand");
            assert!(complaint.contains(word), "{complaint}");
        }
        assert_eq!(Price { lines: vec![line("rebuild", LARGEST)] }.complaint(), None);
    }
}
