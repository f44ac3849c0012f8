//! What the rule book said about a revision, in the shape a ticket keeps it.

use super::coded::coded;
use serde::{Deserialize, Serialize};

coded! {
    /// How bad a finding is.
    Severity {
        /// Must be put right before the work goes on.
        Stop = "stop", "Stop";
        /// Can be lived with by somebody who knows it.
        Caution = "caution", "Caution";
        /// Good to know.
        Note = "note", "Note";
    }
}

/// One finding, with the words it was told in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Found {
    /// The rule's code.
    pub code: String,
    /// How bad it is.
    pub severity: Severity,
    /// A few words.
    pub title: String,
    /// What the shop is told.
    pub shop: String,
    /// What the customer is told.
    pub customer: String,
    /// What to do about it.
    pub fix: String,
    /// Where the knowledge comes from.
    pub basis: String,
    /// Must the customer accept it with a tick of its own?
    pub customer_accepts: bool,
    /// The facts it rests on, as `group.leaf`.
    pub facts: Vec<String>,
}

/// A rule that cannot be decided yet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Undecided {
    /// The rule's code.
    pub code: String,
    /// From which stage it is asked about aloud.
    pub due: String,
    /// The facts it waits for, as `group.leaf`.
    pub needs: Vec<String>,
}

/// Everything the rule book said about one revision.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Judgement {
    /// What is wrong, in the rule book's order.
    pub findings: Vec<Found>,
    /// What cannot be decided yet.
    pub undecided: Vec<Undecided>,
}

impl Judgement {
    /// The findings of one severity.
    pub fn of(&self, severity: Severity) -> impl Iterator<Item = &Found> {
        self.findings.iter().filter(move |found| found.severity == severity)
    }

    /// The findings the customer must accept, each with a tick of its own.
    pub fn to_accept(&self) -> impl Iterator<Item = &Found> {
        self.findings.iter().filter(|found| found.customer_accepts)
    }
}
