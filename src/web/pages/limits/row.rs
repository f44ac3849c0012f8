//! One limit as a page shows it, and one change of it.

use crate::rules::{Chapter, LimitDeclaration, LimitId, Limits, Rule, rules};
use crate::service::LimitChange;
use crate::web::moment::moment;
use jiff::tz::TimeZone;

/// A limit with everything that is said about it.
pub struct Row {
    /// Its name in addresses.
    pub name: &'static str,
    /// What it is called.
    pub label: &'static str,
    /// What it means.
    pub means: &'static str,
    /// The number that stands, with its unit.
    pub now: String,
    /// Has the shop moved it?
    pub moved: bool,
    /// The number as supplied.
    pub supplied: String,
    /// How far that number can be trusted.
    pub mark: String,
    /// What an owner may set.
    pub range: String,
    /// May it be moved at all?
    pub movable: bool,
    /// The rules that use it.
    pub rules: Vec<&'static Rule>,
}

impl Row {
    /// This limit as the shop has it.
    pub fn new(limit: LimitId, limits: &Limits) -> Self {
        let LimitDeclaration { name, label, doc, default, mark, .. } = *limit.declaration();
        let stands = limits.get(limit);
        let range = limit.range_in_words();
        Self {
            name,
            label,
            means: doc.trim(),
            now: limit.say(stands),
            moved: stands != default,
            supplied: limit.say(default),
            mark: mark.to_string(),
            movable: range.is_some(),
            range: range.unwrap_or_else(|| "cannot be moved".to_owned()),
            rules: rules().filter(|rule| rule.all_limits().contains(&limit)).collect(),
        }
    }

    /// Does a rule of this chapter use it?
    pub fn is_used_in(&self, chapter: &Chapter) -> bool {
        self.rules.iter().any(|rule| chapter.rules.iter().any(|own| own.code == rule.code))
    }

    /// Does this word, in small letters, stand in what is said about it?
    pub fn tells_of(&self, word: &str) -> bool {
        let says = |text: &str| text.to_lowercase().contains(word);
        [self.name, self.label, self.means].into_iter().any(says)
            || self.rules.iter().any(|rule| says(rule.code) || says(rule.title))
    }
}

/// One change of a limit, in words.
pub struct ChangeLine {
    /// Which limit.
    pub label: String,
    /// What it was moved to.
    pub to: String,
    /// Why.
    pub reason: String,
    /// Who and when.
    pub who: String,
}

impl ChangeLine {
    /// This change. A limit that a later version of the program no longer knows keeps its bare name.
    pub fn new(change: &LimitChange, zone: &TimeZone) -> Self {
        let known = LimitId::named(&change.name);
        let label = known.map_or(change.name.as_str(), |limit| limit.declaration().label);
        let number = change.number.map(|number| known.map_or_else(|| number.to_string(), |limit| limit.say(number)));
        Self {
            label: label.to_owned(),
            to: number.unwrap_or_else(|| "back to as supplied".to_owned()),
            reason: change.reason.clone(),
            who: format!("{}, {}", change.made_by, moment(change.at, zone)),
        }
    }
}
