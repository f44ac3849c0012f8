//! Bringing an edit into a ticket that may have changed since the form was made.
//!
//! Three contents meet: the *base* the form was made from, the *current* ones, and what the person
//! sent. A thing that only one side changed takes that side's value. A thing both changed
//! differently is a clash: both values are shown and nothing at all is written.

use super::contents::{Contents, Quoted, Topic, WORDS_LIMIT, Wording};
use super::facts::{Entry, NOT_KNOWN, in_words};
use super::origin::{Origin, Source};
use super::price::Price;
use crate::job::{FactId, fact_named, facts};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// One fact as a form sends it. Sending a fact unchanged is not an edit, so a form may send all it shows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FactChange {
    /// `group.leaf`.
    pub path: String,
    /// The value as a job file writes it; none makes it unknown.
    pub value: Option<Value>,
    /// How it was learnt.
    pub source: Source,
}

/// What a person sent. What is absent is left alone.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Edit {
    /// Facts and choices.
    pub facts: Vec<FactChange>,
    /// What the customer wants; empty takes the text away.
    pub wants: Option<String>,
    /// What is wrong; empty takes the text away.
    pub symptom: Option<String>,
    /// The parts that came with the unit; empty takes the text away.
    pub brought: Option<String>,
    /// The price; no lines takes it away.
    pub price: Option<Price>,
}

/// Whose edit it is and when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hand {
    /// The person's name in the shop.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

/// A thing that somebody else changed meanwhile.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Clash {
    /// `group.leaf`, or `wants`, `symptom`, `brought`, `price`.
    pub field: String,
    /// What it is called.
    pub label: String,
    /// What you sent, in words.
    pub yours: String,
    /// What stands there now, in words.
    pub theirs: String,
    /// Who wrote that; unknown when it was taken away.
    pub by: Option<String>,
    /// When.
    pub at: Option<Timestamp>,
}

/// A field that cannot be taken, and why, in a sentence for the person.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Problem {
    /// The form's field.
    pub field: String,
    /// The sentence.
    pub message: String,
}

impl Problem {
    /// A problem with one field.
    pub fn new(field: impl Into<String>, message: impl Into<String>) -> Self {
        Self { field: field.into(), message: message.into() }
    }
}

/// Why an edit was not taken. Nothing of it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unmerged {
    /// Some of it cannot be, whoever writes it.
    Problems(Vec<Problem>),
    /// Somebody else changed the same things.
    Clashes(Vec<Clash>),
}

/// What the current contents become.
///
/// # Errors
/// [`Unmerged`], all problems or all clashes at once.
pub fn merge(base: &Contents, current: &Contents, edit: &Edit, hand: &Hand) -> Result<Contents, Unmerged> {
    let mut merged = current.clone();
    let mut problems = Vec::new();
    let mut clashes = Vec::new();
    for change in &edit.facts {
        match fact_named(&change.path) {
            None => problems.push(unknown_name(&change.path)),
            Some(fact) => merge_fact(fact, change, (base, current), hand, &mut merged, &mut problems, &mut clashes),
        }
    }
    for topic in Topic::ALL {
        let sent = match topic {
            Topic::Wants => &edit.wants,
            Topic::Symptom => &edit.symptom,
            Topic::Brought => &edit.brought,
        };
        if let Some(sent) = sent {
            merge_words(topic, sent, (base, current), hand, &mut merged, &mut problems, &mut clashes);
        }
    }
    if let Some(price) = &edit.price {
        merge_price(price, (base, current), hand, &mut merged, &mut problems, &mut clashes);
    }
    if !problems.is_empty() {
        return Err(Unmerged::Problems(problems));
    }
    if clashes.is_empty() { Ok(merged) } else { Err(Unmerged::Clashes(clashes)) }
}

/// Whose value stands.
enum Stands {
    Current,
    Mine,
    Neither,
}

fn decide<T: PartialEq>(base: &T, current: &T, mine: &T) -> Stands {
    if mine == base || mine == current {
        Stands::Current
    } else if current == base {
        Stands::Mine
    } else {
        Stands::Neither
    }
}

type BaseAndCurrent<'a> = (&'a Contents, &'a Contents);

fn merge_fact(
    fact: FactId,
    change: &FactChange,
    (base, current): BaseAndCurrent<'_>,
    hand: &Hand,
    merged: &mut Contents,
    problems: &mut Vec<Problem>,
    clashes: &mut Vec<Clash>,
) {
    let declaration = fact.declaration();
    let origin = Origin { source: change.source, by: hand.by.clone(), at: hand.at };
    let given = change.value.as_ref().filter(|value| !value.is_null());
    if let Some(Value::String(text)) = given
        && let Some(complaint) = unreadable(text)
    {
        problems.push(Problem::new(declaration.path, format!("{}: {complaint}", declaration.label)));
        return;
    }
    let mut trial = merged.facts.clone();
    if let Err(refused) = trial.write(fact, given, origin) {
        let given = given.map_or_else(String::new, ToString::to_string);
        let message = format!("{}: {given} was given. It has to be {}.", declaration.label, refused.allowed);
        problems.push(Problem::new(declaration.path, message));
        return;
    }
    // A value counts as read, so that 28 and 28.0 are the same.
    let mine = trial.entry(fact).map(said);
    let now = current.facts.entry(fact);
    match decide(&base.facts.entry(fact).map(said), &now.clone().map(said), &mine) {
        Stands::Current => {}
        Stands::Mine => merged.facts = trial,
        // The same value learnt in two ways is no quarrel.
        Stands::Neither if now.as_ref().map(|entry| &entry.value) == mine.as_ref().map(|(value, _)| value) => {}
        Stands::Neither => clashes.push(Clash {
            field: declaration.path.to_owned(),
            label: declaration.label.to_owned(),
            yours: trial.words(fact),
            theirs: now.as_ref().map_or_else(|| NOT_KNOWN.to_owned(), |entry| in_words(declaration, &entry.value)),
            by: now.as_ref().map(|entry| entry.origin.by.clone()),
            at: now.as_ref().map(|entry| entry.origin.at),
        }),
    }
}

fn said(entry: Entry) -> (Value, Source) {
    (entry.value, entry.origin.source)
}

fn merge_words(
    topic: Topic,
    sent: &str,
    (base, current): BaseAndCurrent<'_>,
    hand: &Hand,
    merged: &mut Contents,
    problems: &mut Vec<Problem>,
    clashes: &mut Vec<Clash>,
) {
    // Browsers send line ends as two characters.
    let sent = sent.trim().replace("\r\n", "\n");
    if let Some(complaint) = unreadable(&sent) {
        problems.push(Problem::new(topic.code(), format!("{}: {complaint}", topic.label())));
        return;
    }
    let mine = Some(sent.as_str()).filter(|text| !text.is_empty());
    match decide(&base.words.text(topic), &current.words.text(topic), &mine) {
        Stands::Current => {}
        Stands::Mine => {
            *merged.words.place(topic) =
                mine.map(|text| Wording { text: text.to_owned(), by: hand.by.clone(), at: hand.at });
        }
        Stands::Neither => {
            let now = current.words.on(topic);
            clashes.push(Clash {
                field: topic.code().to_owned(),
                label: topic.label().to_owned(),
                yours: mine.unwrap_or("nothing").to_owned(),
                theirs: now.map_or_else(|| "nothing".to_owned(), |wording| wording.text.clone()),
                by: now.map(|wording| wording.by.clone()),
                at: now.map(|wording| wording.at),
            });
        }
    }
}

fn merge_price(
    price: &Price,
    (base, current): BaseAndCurrent<'_>,
    hand: &Hand,
    merged: &mut Contents,
    problems: &mut Vec<Problem>,
    clashes: &mut Vec<Clash>,
) {
    if let Some(complaint) = price.complaint() {
        problems.push(Problem::new("price", complaint));
        return;
    }
    let mine = Some(price).filter(|price| !price.lines.is_empty());
    match decide(&base.price(), &current.price(), &mine) {
        Stands::Current => {}
        Stands::Mine => {
            merged.price = mine.map(|price| Quoted { price: price.clone(), by: hand.by.clone(), at: hand.at });
        }
        Stands::Neither => clashes.push(Clash {
            field: "price".to_owned(),
            label: "Price".to_owned(),
            yours: price.in_words(),
            theirs: current.price().cloned().unwrap_or_default().in_words(),
            by: current.price.as_ref().map(|quoted| quoted.by.clone()),
            at: current.price.as_ref().map(|quoted| quoted.at),
        }),
    }
}

/// Why a text cannot be kept, if it cannot.
fn unreadable(text: &str) -> Option<String> {
    if text.chars().count() > WORDS_LIMIT {
        return Some(format!("this is {} characters long; {WORDS_LIMIT} is the most.", text.chars().count()));
    }
    let odd = text.chars().any(|letter| letter.is_control() && letter != '\n' && letter != '\t');
    odd.then(|| "there is a character in it that cannot be printed. Type the text again.".to_owned())
}

fn unknown_name(path: &str) -> Problem {
    let nearest = facts()
        .iter()
        .map(|known| known.path)
        .max_by(|a, b| strsim::jaro_winkler(a, path).total_cmp(&strsim::jaro_winkler(b, path)));
    let hint = nearest.map(|name| format!(" The nearest known name is {name}.")).unwrap_or_default();
    Problem::new(path, format!("There is no fact called {path}.{hint}"))
}

#[cfg(test)]
mod tests;
