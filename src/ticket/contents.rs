//! What one revision of a ticket holds.

use super::facts::TicketFacts;
use super::origin::Source;
use super::price::Price;
use crate::plan::summary::{Lasting, for_good};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The most characters one of the ticket's texts may have.
pub const WORDS_LIMIT: usize = 4000;

/// Everything a revision fixes: the facts, the customer's words, the price.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Contents {
    /// Facts and choices with their origins.
    pub facts: TicketFacts,
    /// What was asked for, in words.
    pub words: Words,
    /// The price with who named it and when; absent until somebody has.
    pub price: Option<Quoted>,
    /// The codes of the steps that the shop added to the job by hand, in the order of the work.
    #[serde(default)]
    pub added: Vec<String>,
    /// What this shop changed for good, as the step log says by now; see [`super::done_here`]. It is read from
    /// the log and not kept with the revision.
    #[serde(skip)]
    pub done_here: BTreeMap<String, bool>,
}

/// The texts of a ticket.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Words {
    /// What the customer wants.
    pub wants: Option<Wording>,
    /// What is wrong, in the customer's words.
    pub symptom: Option<Wording>,
    /// The parts that came with the unit.
    pub brought: Option<Wording>,
}

/// A text with who wrote it and when.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Wording {
    /// The text.
    pub text: String,
    /// Who wrote it down.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

/// A price with who named it and when.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Quoted {
    /// The price.
    pub price: Price,
    /// Who named it.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

/// The three texts, by the name a form gives them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Topic {
    /// What the customer wants.
    Wants,
    /// What is wrong.
    Symptom,
    /// What came with the unit.
    Brought,
}

impl Topic {
    pub(super) const ALL: [Self; 3] = [Self::Wants, Self::Symptom, Self::Brought];

    /// The field's name in forms.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Wants => "wants",
            Self::Symptom => "symptom",
            Self::Brought => "brought",
        }
    }

    /// As people read it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Wants => "What the customer wants",
            Self::Symptom => "What is wrong",
            Self::Brought => "Parts that came with it",
        }
    }
}

impl Words {
    /// The text on this topic, when there is one.
    pub const fn on(&self, topic: Topic) -> Option<&Wording> {
        match topic {
            Topic::Wants => self.wants.as_ref(),
            Topic::Symptom => self.symptom.as_ref(),
            Topic::Brought => self.brought.as_ref(),
        }
    }

    pub(super) const fn place(&mut self, topic: Topic) -> &mut Option<Wording> {
        match topic {
            Topic::Wants => &mut self.wants,
            Topic::Symptom => &mut self.symptom,
            Topic::Brought => &mut self.brought,
        }
    }

    pub(super) fn text(&self, topic: Topic) -> Option<&str> {
        self.on(topic).map(|wording| wording.text.as_str())
    }
}

impl Contents {
    /// The price, when one has been named.
    pub fn price(&self) -> Option<&Price> {
        self.price.as_ref().map(|quoted| &quoted.price)
    }

    /// Was something planned after the price was named? Then the price may not reckon with it.
    pub fn planned_after_price(&self) -> bool {
        let planned_since = |named: Timestamp| {
            self.facts.known().any(|(.., origin)| origin.source == Source::Planned && origin.at > named)
        };
        self.price.as_ref().is_some_and(|quoted| planned_since(quoted.at))
    }

    /// What it changes for good: what is planned, and what this shop has done.
    pub fn for_good(&self) -> Vec<Lasting> {
        for_good(self.facts.job(), &self.added, &self.done_here, self.facts.planned())
    }
}
