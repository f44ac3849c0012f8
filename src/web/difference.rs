//! What a change of the facts makes of the findings: what comes, what goes, what can be decided no longer.

use crate::ticket::{Found, Judgement, Severity};
use std::collections::HashSet;

/// Two judgements side by side.
pub struct Difference {
    /// What would be found that is not found now.
    pub new: Vec<Found>,
    /// What is found now and would not be.
    pub gone: Vec<Gone>,
    /// What waits now and could be decided then.
    pub decided: usize,
    /// What could be decided no longer, with what the check is about.
    pub opened: Vec<(String, String)>,
}

/// A finding that goes.
pub struct Gone {
    /// How bad it is.
    pub severity: Severity,
    /// A few words.
    pub title: String,
    /// The rule's code.
    pub code: String,
    /// Only because a fact it rested on became unknown: that clears nothing.
    pub open: bool,
}

impl Difference {
    /// From the one to the other.
    pub fn new(before: &Judgement, after: &Judgement) -> Self {
        let found = |of: &Judgement| of.findings.iter().map(|found| found.code.clone()).collect::<HashSet<_>>();
        let open = |of: &Judgement| of.undecided.iter().map(|open| open.code.clone()).collect::<HashSet<_>>();
        let (found_before, found_after) = (found(before), found(after));
        let (open_before, open_after) = (open(before), open(after));
        Self {
            new: after.findings.iter().filter(|found| !found_before.contains(&found.code)).cloned().collect(),
            gone: before
                .findings
                .iter()
                .filter(|found| !found_after.contains(&found.code))
                .map(|found| Gone {
                    severity: found.severity,
                    title: found.title.clone(),
                    code: found.code.clone(),
                    open: open_after.contains(&found.code),
                })
                .collect(),
            decided: open_before.difference(&open_after).count(),
            opened: after
                .undecided
                .iter()
                .filter(|open| !open_before.contains(&open.code))
                .map(|open| (open.code.clone(), open.title().to_owned()))
                .collect(),
        }
    }
}
