//! What changed between two revisions, in plain words.

use super::contents::{Contents, Topic};
use super::facts::NOT_KNOWN;
use crate::job::fact_ids;
use crate::plan::steps::step_named;
use serde::{Deserialize, Serialize};

/// One thing that changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Change {
    /// `group.leaf`, or `wants`, `symptom`, `brought`, `added`, `price`.
    pub field: String,
    /// What it is called.
    pub label: String,
    /// What stood there.
    pub from: String,
    /// What stands there now.
    pub to: String,
}

/// Everything that differs, facts in registry order, then texts, then the price.
pub fn changes(from: &Contents, to: &Contents) -> Vec<Change> {
    let mut changes = Vec::new();
    for fact in fact_ids() {
        let (old, new) = (from.facts.entry(fact), to.facts.entry(fact));
        let declaration = fact.declaration();
        let same_value = old.as_ref().map(|entry| &entry.value) == new.as_ref().map(|entry| &entry.value);
        let (old_words, new_words) = if !same_value {
            (from.facts.words(fact), to.facts.words(fact))
        } else if let (Some(old), Some(new)) = (&old, &new)
            && old.origin.source != new.origin.source
        {
            let told = |source: super::Source| format!("{} ({})", to.facts.words(fact), source.label().to_lowercase());
            (told(old.origin.source), told(new.origin.source))
        } else {
            continue;
        };
        changes.push(Change {
            field: declaration.path.to_owned(),
            label: declaration.label.to_owned(),
            from: old_words,
            to: new_words,
        });
    }
    for topic in Topic::ALL {
        let (old, new) = (from.words.text(topic), to.words.text(topic));
        if old != new {
            let told = |text: Option<&str>| text.unwrap_or(NOT_KNOWN).to_owned();
            changes.push(Change {
                field: topic.code().to_owned(),
                label: topic.label().to_owned(),
                from: told(old),
                to: told(new),
            });
        }
    }
    if from.added != to.added {
        let told = |contents: &Contents| match contents.added.as_slice() {
            [] => "nothing".to_owned(),
            codes => codes.iter().map(|code| added_as(code)).collect::<Vec<_>>().join("; "),
        };
        changes.push(Change { field: "added".into(), label: "Work added".into(), from: told(from), to: told(to) });
    }
    if from.price() != to.price() {
        let told = |contents: &Contents| contents.price().cloned().unwrap_or_default().in_words();
        changes.push(Change { field: "price".into(), label: "Price".into(), from: told(from), to: told(to) });
    }
    changes
}

/// What added work is called; its code where a later program no longer knows it.
fn added_as(code: &str) -> String {
    step_named(code).and_then(|step| step.added_as).unwrap_or(code).to_owned()
}
