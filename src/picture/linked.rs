//! The way from a picture to the sums that give its numbers, or that give what it lacks.

use crate::sums::{address, named};

/// A sum with what a job cannot fill in by itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Linked {
    /// What it is for, in words that make sense by themselves.
    pub label: String,
    /// `/sums/power-flow?range=second`: behind a job's own address the job fills in the rest.
    pub address: String,
}

impl Linked {
    /// The sum of this name; none when there is none.
    pub(super) fn to(name: &str, typed: &[(&str, String)]) -> Option<Self> {
        let sum = named(name)?;
        Some(Self { label: sum.title.to_owned(), address: address(sum, |input| text(typed, input)) })
    }

    /// With what it is looked at for.
    #[must_use]
    pub(super) fn about(mut self, what: &str) -> Self {
        self.label = format!("{}: {what}", self.label);
        self
    }
}

fn text(typed: &[(&str, String)], input: &str) -> String {
    typed.iter().find(|(name, _)| *name == input).map_or_else(String::new, |(_, text)| text.clone())
}

/// A yes or no as a sum reads it.
pub(super) fn yes_no(yes: bool) -> String {
    if yes { "yes" } else { "no" }.to_owned()
}
