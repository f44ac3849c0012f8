//! What a text in a condition may be: a word of a choice, a day, or free words.

use super::read::SAID_BACK;
use crate::job::{FactId, Kind, Word as Choice, nearest_word};
use crate::quantity::cut;

/// What a text stands for.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Vocabulary {
    /// Written in quotes in the condition; fits whatever it is compared with, if that allows it.
    Quoted(String),
    /// A word of this fact's list.
    Choice(FactId, &'static [Choice]),
    /// A day.
    Day(FactId),
    /// Free words of this fact.
    Free(FactId),
}

impl Vocabulary {
    /// What the fact takes, when it takes a text at all.
    pub(super) fn of(fact: FactId) -> Option<Self> {
        match fact.declaration().kind {
            Kind::Choice(words) => Some(Self::Choice(fact, words)),
            Kind::Date => Some(Self::Day(fact)),
            Kind::Text => Some(Self::Free(fact)),
            Kind::YesNo | Kind::Count | Kind::Number(_) | Kind::Year => None,
        }
    }

    /// May the two be compared? If not, why.
    pub(super) fn fits(&self, other: &Self, by_order: bool) -> Result<(), String> {
        let days =
            matches!((self, other), (Self::Day(_), Self::Day(_) | Self::Quoted(_)) | (Self::Quoted(_), Self::Day(_)));
        if by_order && !days {
            return Err("Only numbers and days can be more or less than each other.".to_owned());
        }
        match (self, other) {
            (Self::Quoted(a), Self::Quoted(b)) => {
                Err(format!("{} and {} are both fixed texts: one side has to be a fact.", quoted(a), quoted(b)))
            }
            (Self::Quoted(text), fact) | (fact, Self::Quoted(text)) => fact.takes(text),
            (Self::Choice(a, these), Self::Choice(b, those)) if !share_a_word(these, those) => {
                Err(format!("{} and {} have no word in common, so they are never the same.", path(*a), path(*b)))
            }
            (Self::Choice(..), Self::Choice(..)) | (Self::Day(_), Self::Day(_)) | (Self::Free(_), Self::Free(_)) => {
                Ok(())
            }
            (a, b) => Err(format!("{} is {} and {} is {}.", a.name(), a.what(), b.name(), b.what())),
        }
    }

    /// May the fact be this text?
    fn takes(&self, text: &str) -> Result<(), String> {
        match self {
            Self::Choice(fact, words) if !words.iter().any(|word| word.code == text) => {
                let all: Vec<String> = words.iter().map(|word| format!("\"{}\"", word.code)).collect();
                let nearest = nearest_word(text, words.iter().map(|word| word.code));
                let meant = nearest.map_or_else(String::new, |word| format!(" Did you mean \"{word}\"?"));
                Err(format!("{} is never {}; it is one of {}.{meant}", path(*fact), quoted(text), all.join(", ")))
            }
            Self::Day(fact) if text.parse::<jiff::civil::Date>().map_or(true, |day| day.to_string() != text) => {
                Err(format!("{} is a day; {} is not. Write it as \"2026-05-31\".", path(*fact), quoted(text)))
            }
            _ => Ok(()),
        }
    }

    fn name(&self) -> String {
        match self {
            Self::Quoted(text) => quoted(text),
            Self::Choice(fact, _) | Self::Day(fact) | Self::Free(fact) => path(*fact).to_owned(),
        }
    }

    const fn what(&self) -> &'static str {
        match self {
            Self::Quoted(_) => "a fixed text",
            Self::Choice(..) => "a word of a list",
            Self::Day(_) => "a day",
            Self::Free(_) => "free words",
        }
    }
}

fn share_a_word(these: &[Choice], those: &[Choice]) -> bool {
    these.iter().any(|word| those.iter().any(|other| other.code == word.code))
}

fn quoted(text: &str) -> String {
    format!("\"{}\"", cut(text, SAID_BACK))
}

fn path(fact: FactId) -> &'static str {
    fact.declaration().path
}
