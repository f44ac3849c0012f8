//! What counts as read while working, and what a number is held against.

use crate::job::{FactId, FactSet, Job, Kind};
use crate::rules::{LimitId, Limits, Rule, rules};
use serde_json::Value;
use std::sync::LazyLock;

/// Words of a choice that say nobody has looked.
pub(super) const NOT_YET: [&str; 3] = ["unchecked", "not_done", "not_gauged"];

/// Does this value say what was seen? That nobody has looked yet is no reading, wherever one is needed.
pub fn is_reading(value: &Value) -> bool {
    !value.as_str().is_some_and(|word| NOT_YET.contains(&word))
}

/// The limits that the rules about this fact hold it against: those of the fact's own unit.
pub fn limits_on(fact: FactId) -> Vec<LimitId> {
    static TOUCHED: LazyLock<Vec<(&'static Rule, FactSet)>> = LazyLock::new(|| {
        let touched = |rule: &Rule| {
            let asked = |job: &Job| rule.verdict(job, &Limits::default()).facts();
            asked(&Job::unknown()).with(asked(&rule.example()))
        };
        rules().map(|rule| (rule, touched(rule))).collect()
    });
    let unit = match fact.declaration().kind {
        Kind::Number(unit) => unit,
        Kind::Count => "",
        _ => return Vec::new(),
    };
    let mut limits = Vec::new();
    for (rule, _) in TOUCHED.iter().filter(|(_, facts)| facts.contains(fact)) {
        for limit in rule.limits {
            if limit.declaration().unit == unit && !limits.contains(limit) {
                limits.push(*limit);
            }
        }
    }
    limits
}
