//! The book as a whole: its chapters, finding a rule by code, codes that are gone.

use super::families::{CHAPTERS, RETIRED};
use super::rule::Rule;

/// Rules of one family that stand in one file.
#[derive(Debug)]
pub struct Chapter {
    /// The letters its codes begin with.
    pub family: &'static str,
    /// What the chapter is about: the doc comment it is declared with.
    pub title: &'static str,
    /// The file it stands in, without the ending.
    pub file: &'static str,
    /// Its rules.
    pub rules: &'static [Rule],
}

/// A code that is not used any more, and never will be again.
#[derive(Debug)]
pub struct Retired {
    /// The code.
    pub code: &'static str,
    /// Why it went.
    pub reason: &'static str,
}

/// The letters of every family with its name, in the book's order.
pub const fn families() -> &'static [(&'static str, &'static str)] {
    FAMILIES
}

const FAMILIES: &[(&str, &str)] = &[
    ("THR", "Threads"),
    ("CSE", "Case and bell"),
    ("PMP", "Pump"),
    ("OWC", "One-way clutches"),
    ("CLT", "Clutches"),
    ("VLV", "Valve body and shift control"),
    ("OUT", "Output, yoke and driveshaft"),
    ("SPD", "Speedometer"),
    ("COL", "Cooling"),
    ("VNT", "Vent"),
    ("PAN", "Pan, filter and dipstick"),
    ("MNT", "Mounts and ground strap"),
    ("GER", "Gears"),
    ("CNV", "Converter"),
    ("SFT", "Safety gear"),
    ("MEA", "Measured at the bench"),
    ("FLD", "Fluid"),
    ("SEQ", "Order of the work"),
    ("COM", "Papers and signatures"),
];

/// The chapters in the book's order.
pub fn chapters() -> &'static [Chapter] {
    CHAPTERS
}

/// Every rule in the book's order.
pub fn rules() -> impl Iterator<Item = &'static Rule> {
    CHAPTERS.iter().flat_map(|chapter| chapter.rules)
}

/// The rule of this code, however it is spelled (`thr-01`).
pub fn rule_named(code: &str) -> Option<&'static Rule> {
    rules().find(|rule| rule.code.eq_ignore_ascii_case(code.trim()))
}

/// Codes that are not used any more, with the reason.
pub fn retired() -> &'static [Retired] {
    RETIRED
}

/// The codes most like what was typed, best first; at most five, none that are far off.
pub fn nearest_codes(typed: &str) -> Vec<&'static str> {
    let typed = typed.trim().to_ascii_uppercase();
    let mut near: Vec<(usize, &'static str)> = rules()
        .map(|rule| (strsim::damerau_levenshtein(&typed, rule.code), rule.code))
        .filter(|(distance, _)| *distance <= 3)
        .collect();
    near.sort_by_key(|(distance, _)| *distance);
    near.into_iter().map(|(_, code)| code).take(5).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mistyped_code_leads_to_the_near_ones() {
        assert_eq!(nearest_codes("thr01").first(), Some(&"THR-01"));
        assert_eq!(nearest_codes("THR-10").first(), Some(&"THR-01"), "two figures changed places");
        assert!(nearest_codes("something else").is_empty());
    }

    #[test]
    fn a_code_is_found_however_it_is_spelled() {
        assert_eq!(rule_named(" thr-01 ").map(|rule| rule.code), Some("THR-01"));
        assert!(rule_named("THR").is_none());
    }
}
