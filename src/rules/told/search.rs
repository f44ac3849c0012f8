//! Looking for a rule by a word, its family, how bad it is, or a part.

use super::{Part, Told, told};
use crate::rules::book::Chapter;
use crate::rules::rule::{Rule, Severity};
use std::collections::BTreeSet;
use std::sync::LazyLock;

/// What is looked for. Nothing named: everything.
#[derive(Clone, Debug, Default)]
pub struct Wanted {
    /// Words that all have to stand in what is said of the rule; see [`words_of`].
    pub words: Vec<String>,
    /// The letters of its family.
    pub family: Option<&'static str>,
    /// How bad it is.
    pub severity: Option<Severity>,
    /// The group of a fact it touches.
    pub part: Option<&'static str>,
}

/// How many near words are offered.
const OFFERED: usize = 3;

/// The rules that are wanted, in the book's order.
pub fn find(wanted: &Wanted) -> Vec<&'static Told> {
    let fits = |told: &&Told| {
        wanted.family.is_none_or(|family| told.rule.family() == family)
            && wanted.severity.is_none_or(|severity| told.rule.severity == severity)
            && wanted.part.is_none_or(|part| told.parts.iter().any(|own| own.group == part))
            && wanted.words.iter().all(|word| told.words.contains(word))
    };
    told().iter().filter(fits).collect()
}

/// The words of what somebody typed: in small letters, without what stands around them.
pub fn words_of(typed: &str) -> Vec<String> {
    let bare = |word: &str| word.trim_matches(|c: char| !c.is_alphanumeric()).to_lowercase();
    typed.split_whitespace().map(bare).filter(|word| !word.is_empty()).collect()
}

/// The words of the book most like one that stands nowhere in it, best first.
pub fn nearest_words(word: &str) -> Vec<&'static str> {
    static BOOK: LazyLock<BTreeSet<&'static str>> = LazyLock::new(|| {
        let split = |c: char| !c.is_alphanumeric() && c != '-';
        told().iter().flat_map(|told| told.words.split(split)).filter(|word| word.len() > 2).collect()
    });
    let most = if word.chars().count() <= 4 { 1 } else { 2 };
    let distance = |near: &'static str| (strsim::damerau_levenshtein(word, near), near);
    let mut near: Vec<_> = BOOK.iter().map(|near| distance(near)).filter(|(far, _)| *far <= most).collect();
    near.sort_unstable();
    near.into_iter().map(|(_, near)| near).take(OFFERED).collect()
}

/// All of it in one text, in small letters.
pub(super) fn everything_said(chapter: &Chapter, rule: &Rule, parts: &[Part]) -> String {
    let paragraphs = rule.paragraphs();
    let facts = parts.iter().flat_map(|part| &part.facts).map(|fact| fact.declaration());
    let mut said = vec![rule.code, rule.title, chapter.title, rule.shop, rule.fix, rule.basis];
    said.extend(rule.customer);
    said.extend(paragraphs.iter().map(String::as_str));
    said.extend(parts.iter().map(|part| part.label));
    said.extend(facts.flat_map(|fact| [fact.label, fact.path]));
    said.extend(rule.all_limits().iter().map(|limit| limit.declaration().label));
    said.join("\n").to_lowercase()
}
