//! The shop's own rules among those that are looked for: found by the same words, leading to pages of their own.

use super::fired_on;
use crate::job::group_label;
use crate::rules::told::Wanted;
use crate::service::{Version, house_code, read_condition};
use crate::ticket::Severity;
use std::collections::{BTreeSet, HashMap};

/// What stands for the shop's own rules where a family is chosen.
pub const FAMILY: &str = "HR";

/// A rule of the shop's own in the list.
pub struct OwnRule {
    /// Which rule of the shop.
    pub nth: i32,
    /// Its code.
    pub code: String,
    /// Its title.
    pub title: String,
    /// How bad it is.
    pub severity: Severity,
    /// What it does at the moment, and on how many jobs it fired.
    pub state: String,
    /// The groups of the facts it asks about.
    parts: BTreeSet<&'static str>,
    /// Everything that is said of it, in small letters.
    words: String,
}

/// The rules of these versions (newest first within a rule), each as it is in force, or else as it was last written.
pub fn own_rules(versions: &[Version], fired: &HashMap<String, i64>) -> Vec<OwnRule> {
    let rules = versions.chunk_by(|a, b| a.nth == b.nth);
    rules.map(|rule| own_rule(rule.iter().find(|version| version.in_force).unwrap_or(&rule[0]), fired)).collect()
}

fn own_rule(version: &Version, fired: &HashMap<String, i64>) -> OwnRule {
    let code = house_code(version.nth);
    let facts = read_condition(&version.condition).map(|condition| condition.names().facts).unwrap_or_default();
    let declarations = || facts.iter().map(|fact| fact.declaration());
    let parts: BTreeSet<_> = declarations().filter_map(|fact| Some(fact.path.split_once('.')?.0)).collect();
    let mut said = vec![code.as_str(), "a rule of this shop's own"];
    said.extend(
        [&version.title, &version.told_shop, &version.told_customer, &version.fix, &version.condition]
            .map(String::as_str),
    );
    said.extend(declarations().flat_map(|fact| [fact.label, fact.path]));
    said.extend(parts.iter().map(|part| group_label(part)));
    let words = said.join("\n").to_lowercase();
    let state = if version.in_force { "in force" } else { "not in force" };
    OwnRule {
        nth: version.nth,
        title: version.title.clone(),
        severity: Severity::from_code(&version.severity).unwrap_or(Severity::Note),
        state: format!("{state}, {}", fired_on(fired.get(&code))),
        code,
        parts,
        words,
    }
}

impl OwnRule {
    /// Is it among what is looked for?
    pub fn fits(&self, wanted: &Wanted) -> bool {
        wanted.family.is_none_or(|family| family == FAMILY)
            && wanted.severity.is_none_or(|severity| severity.code() == self.severity.code())
            && wanted.part.is_none_or(|part| self.parts.contains(part))
            && wanted.words.iter().all(|word| self.says(word))
    }

    /// Does the word stand in what is said of it?
    pub fn says(&self, word: &str) -> bool {
        self.words.contains(word)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::told::words_of;
    use jiff::Timestamp;

    fn version(version: i32, title: &str, in_force: bool) -> Version {
        Version {
            nth: 3,
            version,
            severity: "caution".into(),
            due: "intake".into(),
            customer_accepts: false,
            title: title.into(),
            told_shop: "We have seen these come back.".into(),
            told_customer: String::new(),
            fix: "Offer the stronger one.".into(),
            condition: "use.kind == 'pull' && engine.torque_lbft > 450".into(),
            made_by: "Ada".into(),
            at: Timestamp::UNIX_EPOCH,
            in_force,
        }
    }

    #[test]
    fn a_rule_is_listed_as_it_is_in_force_and_found_by_title_word_part_and_severity() {
        let fired = HashMap::from([("HR-03".to_owned(), 2)]);
        let rules = own_rules(&[version(2, "Newer words", false), version(1, "Heavy puller", true)], &fired);
        assert_eq!(rules.len(), 1);
        let rule = &rules[0];
        assert_eq!((rule.title.as_str(), rule.code.as_str()), ("Heavy puller", "HR-03"));
        assert_eq!(rule.state, "in force, fired on 2 jobs");
        let words = |typed: &str| Wanted { words: words_of(typed), ..Wanted::default() };
        for typed in ["", "heavy PULLER", "hr-03", "come back", "torque", "engine"] {
            assert!(rule.fits(&words(typed)), "{typed}");
        }
        assert!(!rule.fits(&words("heavy trailer")));
        for (family, part, fits) in
            [(Some(FAMILY), Some("engine"), true), (Some("CSE"), None, false), (None, Some("bell"), false)]
        {
            assert_eq!(rule.fits(&Wanted { family, part, ..Wanted::default() }), fits, "{family:?} {part:?}");
        }
        let stop = Wanted { severity: Some(crate::rules::Severity::Stop), ..Wanted::default() };
        assert!(!rule.fits(&stop));
    }

    #[test]
    fn a_rule_that_is_only_written_is_listed_as_it_was_last_written() {
        let rules = own_rules(&[version(2, "Newer words", false), version(1, "Older words", false)], &HashMap::new());
        assert_eq!((rules[0].title.as_str(), rules[0].state.as_str()), ("Newer words", "not in force, not fired yet"));
    }
}
