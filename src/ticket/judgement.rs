//! What the rule book said about a revision, in the shape a ticket keeps it.

use super::coded::coded;
use super::role::Action;
use crate::rules::house::house_number;
use crate::rules::rule_named;
use jiff::Timestamp;
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

impl Found {
    /// Does the customer hear of it?
    pub fn is_told(&self) -> bool {
        self.customer_accepts || !self.customer.is_empty()
    }

    /// What somebody who sets it aside has to be allowed to do.
    pub fn set_aside_by(&self) -> Action {
        if self.severity == Severity::Stop || self.customer_accepts { Action::SetAsideGrave } else { Action::SetAside }
    }

    /// Is it what somebody read when they set this aside? The basis names the limits it was held against, and of a
    /// rule of the shop's own the version.
    fn is_as(&self, earlier: &Self) -> bool {
        fn read(found: &Found) -> (&str, Severity, bool, &str, &str) {
            (&found.code, found.severity, found.customer_accepts, &found.customer, &found.basis)
        }
        read(self) == read(earlier)
    }
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
    /// What a rule of the shop's own is called; empty for the rules that come with the program.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub own_title: String,
}

impl Undecided {
    /// What it is about, in a few words.
    pub fn title(&self) -> &str {
        if !self.own_title.is_empty() {
            return &self.own_title;
        }
        match rule_named(&self.code) {
            Some(rule) => rule.title,
            // Kept before the titles of the shop's own rules were kept with it.
            None if house_number(&self.code).is_some() => "A rule of this shop's own",
            None => &self.code,
        }
    }
}

/// A finding that the shop set aside for one ticket, in writing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Silenced {
    /// What was found.
    pub found: Found,
    /// Why it is set aside.
    pub reason: String,
    /// The name of who did it.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

/// A limit that did not stand as supplied when a revision was judged.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MovedLimit {
    /// The limit's name.
    pub limit: String,
    /// Its number, in the limit's unit.
    pub number: f64,
}

/// A rule of the shop's own that was in force when a revision was judged.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct HouseVersion {
    /// The rule's code.
    pub code: String,
    /// Which version of it.
    pub version: i32,
}

/// Everything the rule book said about one revision.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Judgement {
    /// What is wrong, in the rule book's order.
    pub findings: Vec<Found>,
    /// What cannot be decided yet.
    pub undecided: Vec<Undecided>,
    /// What is wrong and set aside for this ticket: it closes no gate and is counted nowhere.
    #[serde(default)]
    pub silenced: Vec<Silenced>,
    /// The limits the shop had moved by then; all others were as supplied.
    #[serde(default)]
    pub limits: Vec<MovedLimit>,
    /// The rules of the shop's own it was held against, by code.
    #[serde(default)]
    pub house: Vec<HouseVersion>,
}

impl Judgement {
    /// The findings of one severity.
    pub fn of(&self, severity: Severity) -> impl Iterator<Item = &Found> {
        self.findings.iter().filter(move |found| found.severity == severity)
    }

    /// The same with what was set aside before still set aside. A finding that has gone, or is as grave, asks of the
    /// customer, tells them or rests on something else than it did, is not: somebody has to look at it anew.
    #[must_use]
    pub fn silencing(mut self, before: &[Silenced]) -> Self {
        for earlier in before {
            if let Some(place) = self.findings.iter().position(|found| found.is_as(&earlier.found)) {
                let found = self.findings.remove(place);
                self.silenced.push(Silenced { found, ..earlier.clone() });
            }
        }
        self
    }

    /// The codes of all rules that are true of it, those that are set aside among them.
    pub fn fired(&self) -> Vec<&str> {
        let silenced = self.silenced.iter().map(|silenced| &silenced.found);
        self.findings.iter().chain(silenced).map(|found| found.code.as_str()).collect()
    }

    /// What the customer is told is set aside.
    pub fn silenced_told(&self) -> impl Iterator<Item = &Silenced> {
        self.silenced.iter().filter(|silenced| silenced.found.is_told())
    }

    /// The findings the customer must accept, each with a tick of its own.
    pub fn to_accept(&self) -> impl Iterator<Item = &Found> {
        self.findings.iter().filter(|found| found.customer_accepts)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(code: &str, severity: Severity, customer: &str) -> Found {
        Found {
            code: code.into(),
            severity,
            title: "Title".into(),
            shop: "Shop".into(),
            customer: customer.into(),
            fix: "Fix".into(),
            basis: "Basis".into(),
            customer_accepts: false,
            facts: Vec::new(),
        }
    }

    fn judged(findings: Vec<Found>) -> Judgement {
        Judgement { findings, ..Judgement::default() }
    }

    fn silenced(found: Found) -> Silenced {
        Silenced { found, reason: "bench dyno says so".into(), by: "Olive".into(), at: Timestamp::UNIX_EPOCH }
    }

    #[test]
    fn what_is_set_aside_leaves_the_findings_and_stays_in_sight_in_todays_words() {
        let before = [silenced(found("A-01", Severity::Stop, "words"))];
        let today = Found { shop: "Said better".into(), ..found("A-01", Severity::Stop, "words") };
        let judgement = judged(vec![today.clone(), found("A-02", Severity::Note, "")]).silencing(&before);
        assert_eq!(judgement.findings, [found("A-02", Severity::Note, "")]);
        assert_eq!(judgement.silenced, [silenced(today)]);
        assert_eq!(judgement.of(Severity::Stop).count(), 0);
    }

    #[test]
    fn what_asks_or_tells_the_customer_or_rests_on_something_else_is_not_set_aside_any_more() {
        let read = found("A-01", Severity::Caution, "words");
        for other in [
            Found { customer_accepts: true, ..read.clone() },
            Found { customer: "other words".into(), ..read.clone() },
            Found { basis: "Basis. Limit used: another".into(), ..read.clone() },
        ] {
            let now = judged(vec![other]);
            assert_eq!(now.clone().silencing(&[silenced(read.clone())]), now);
        }
    }

    #[test]
    fn what_has_gone_or_grown_graver_is_not_set_aside_any_more() {
        let before = [silenced(found("A-01", Severity::Caution, ""))];
        assert_eq!(judged(Vec::new()).silencing(&before), Judgement::default());
        let graver = judged(vec![found("A-01", Severity::Stop, "")]);
        assert_eq!(graver.clone().silencing(&before), graver);
    }

    #[test]
    fn a_judgement_kept_before_anything_could_be_set_aside_still_reads() {
        let kept: Judgement = serde_json::from_str(r#"{"findings": [], "undecided": []}"#).expect("it reads");
        assert_eq!(kept, Judgement::default());
    }
}
