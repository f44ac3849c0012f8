//! The form a rule of the shop's own is written in, and what its condition is understood as.

use crate::job::{Declaration, Job};
use crate::rules::{Derived, Due, Limits};
use crate::service::{Version, WriteHouseRule, read_condition};
use crate::ticket::Severity;
use crate::web::form::{Entry, Fields, Reader};

/// A rule as the form gives it.
pub struct Draft {
    from: Option<i32>,
    severity: String,
    due: String,
    accepts: bool,
    title: String,
    told_shop: String,
    told_customer: String,
    fix: String,
    condition: String,
}

impl Entry for Draft {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "Choose how bad it is: stop, caution or note.";
        let severity = reader.one_of("severity", ask, Severity::from_code);
        let due = reader.one_of("due", "Choose the stage from which it is asked about.", Due::from_code);
        let text = |name: &str| reader.fields().get(name).unwrap_or_default().to_owned();
        Self {
            from: reader.number("from").and_then(|from| i32::try_from(from).ok()),
            severity: severity.map_or_else(String::new, |severity| severity.code().to_owned()),
            due: due.map_or_else(String::new, |due| due.code().to_owned()),
            accepts: reader.fields().get("customer_accepts").is_some(),
            title: text("title"),
            told_shop: text("told_shop"),
            told_customer: text("told_customer"),
            fix: text("fix"),
            condition: text("condition"),
        }
    }
}

impl Draft {
    /// The command, for a new rule or a new version of this one.
    pub fn of(self, nth: Option<i32>) -> WriteHouseRule {
        WriteHouseRule {
            rule: nth.map(|nth| (nth, self.from.unwrap_or_default())),
            severity: self.severity,
            due: self.due,
            customer_accepts: self.accepts,
            title: self.title,
            told_shop: self.told_shop,
            told_customer: self.told_customer,
            fix: self.fix,
            condition: self.condition,
        }
    }
}

/// Which version is tried or switched, and which way.
pub struct TurnSent {
    /// The version.
    pub version: i32,
    /// On, or off.
    pub on: bool,
}

impl Entry for TurnSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let version = reader.number("version").and_then(|version| i32::try_from(version).ok());
        Self { version: version.unwrap_or_default(), on: reader.fields().get("on") == Some("yes") }
    }
}

/// A kept version as the form holds it.
pub(super) fn held(version: &Version) -> Fields {
    let fields = Fields::default()
        .with("from", version.version.to_string())
        .with("severity", &version.severity)
        .with("due", &version.due)
        .with("title", &version.title)
        .with("told_shop", &version.told_shop)
        .with("told_customer", &version.told_customer)
        .with("fix", &version.fix)
        .with("condition", &version.condition);
    if version.customer_accepts { fields.with("customer_accepts", "yes") } else { fields }
}

/// What a condition is understood as: what is amiss, or the facts it asks for.
#[derive(Default)]
pub(super) struct Heard {
    /// Has anything been written yet?
    pub written: bool,
    /// What is wrong, in sentences.
    pub amiss: Vec<String>,
    /// The facts it waits for while nothing is known, by the names the pages give them.
    pub facts: Vec<String>,
}

pub(super) fn hear(text: &str) -> Heard {
    let written = !text.trim().is_empty();
    if !written {
        return Heard::default();
    }
    match read_condition(text.trim()) {
        Err(amiss) => Heard { written, amiss, facts: Vec::new() },
        Ok(condition) => {
            let nothing = Job::unknown();
            let verdict = condition.verdict(&nothing, &Derived::of(&nothing, &Limits::default()));
            let facts = verdict.facts();
            let named = |said: &Declaration| format!("{} ({})", said.label, said.path);
            let facts = facts.iter().map(|fact| named(fact.declaration())).collect();
            Heard { written, amiss: Vec::new(), facts }
        }
    }
}
