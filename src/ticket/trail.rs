//! What a job's own papers say: which version stands, which was signed, for how much.
//!
//! These facts are never typed and never stored: a signature makes no new version, so they are laid over
//! what is stored whenever something is judged or shown.

use super::approval::Approval;
use super::contents::Contents;
use super::facts::TicketFacts;
use super::judgement::Judgement;
use super::origin::{Origin, Source};
use super::price::Price;
use super::record::Answer;
use crate::job::fact_named;
use crate::plan::steps::{FROM_PAPERS, permanent_work};
use crate::quantity::Cents;
use jiff::Timestamp;
use serde_json::{Value, json};

/// A ticket's trail of paper.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Trail {
    /// Each version's number and what a signature on it covers, in order.
    pub versions: Vec<(i32, String)>,
    /// The version the customer last signed as a build summary, with its price.
    pub signed: Option<(i32, Option<Cents>)>,
    /// The customer's latest answer to a build summary and what it covered.
    pub answer: Option<(Answer, String)>,
}

impl Trail {
    /// The version in which what a signature covers became what it is in version `number`.
    fn since(&self, number: i32, covers: &str) -> i32 {
        let other = self.versions.iter().filter(|(version, covered)| *version < number && covered != covers);
        other.map(|(version, _)| version + 1).max().unwrap_or(1)
    }

    fn covers(&self, number: i32) -> Option<&str> {
        self.versions.iter().find(|(version, _)| *version == number).map(|(_, covers)| covers.as_str())
    }

    /// These contents as version `number`, with what the papers say laid over them.
    pub fn over(&self, contents: &Contents, number: i32, covers: &str, at: Timestamp) -> TicketFacts {
        let latest = self.answer.as_ref().map(|(answer, covered)| (*answer, covered.as_str()));
        let stands = Approval::of_build(latest, covers) == Approval::Signed;
        let spec = self.since(number, covers);
        let signed = self.signed.map(|(version, _)| match self.covers(version) {
            _ if stands => spec,
            Some(covered) => self.since(version, covered),
            None => version,
        });
        let total = contents.price().and_then(Price::total);
        let quoted = self.signed.and_then(|(_, total)| total);
        let permanent = permanent_work(contents.facts.job(), &contents.added, contents.facts.planned());
        let money = |cents: Cents| json!(cents.0 as f64 / 100.0);
        let values: [Option<Value>; FROM_PAPERS.len()] = [
            permanent.value().map(|permanent| json!(permanent)),
            Some(json!(stands)),
            quoted.map(money),
            total.map(money),
            Some(json!(stands || (quoted.is_some() && quoted == total))),
            Some(json!(spec)),
            signed.map(|version| json!(version)),
        ];
        let mut facts = contents.facts.clone();
        let origin = Origin { source: Source::Papers, by: "Endplay".to_owned(), at };
        for (path, value) in FROM_PAPERS.iter().zip(values) {
            if let Some(fact) = fact_named(path) {
                // A total below nought can be named and is no total a fact can have: then it is not known.
                if facts.write(fact, value.as_ref(), origin.clone()).is_err() {
                    facts.write(fact, None, origin.clone()).ok();
                }
            }
        }
        facts
    }
}

impl Judgement {
    /// This judgement as it is by now: what rests on or waits for the papers is taken from `live`, everything else stays as it
    /// was judged on its day.
    #[must_use]
    pub fn by_now(mut self, live: Self) -> Self {
        let on_paper = |paths: &[String]| paths.iter().any(|path| FROM_PAPERS.contains(&path.as_str()));
        self.findings.retain(|found| !on_paper(&found.facts));
        self.undecided.retain(|open| !on_paper(&open.needs));
        self.silenced.retain(|set_aside| !on_paper(&set_aside.found.facts));
        self.findings.extend(live.findings.into_iter().filter(|found| on_paper(&found.facts)));
        self.undecided.extend(live.undecided.into_iter().filter(|open| on_paper(&open.needs)));
        self.silenced.extend(live.silenced.into_iter().filter(|set_aside| on_paper(&set_aside.found.facts)));
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ticket::{Found, Quoted, Severity, Undecided};

    fn trail(versions: &[&str], signed: Option<(i32, i64)>) -> Trail {
        let covered = signed.and_then(|(version, _)| versions.get(version as usize - 1));
        Trail {
            versions: versions.iter().enumerate().map(|(at, covers)| (at as i32 + 1, (*covers).to_owned())).collect(),
            signed: signed.map(|(version, cents)| (version, Some(Cents(cents)))),
            answer: covered.map(|covers| (Answer::Signed, (*covers).to_owned())),
        }
    }

    fn priced(cents: i64) -> Contents {
        let price = Price::single("rebuild", Cents(cents));
        let quoted = Quoted { price, by: "Ada".into(), at: Timestamp::UNIX_EPOCH };
        Contents { price: Some(quoted), ..Contents::default() }
    }

    fn said(trail: &Trail, contents: &Contents) -> impl Fn(&str) -> Option<Value> + use<> {
        let (number, covers) = trail.versions.last().cloned().unwrap();
        let facts = trail.over(contents, number, &covers, Timestamp::UNIX_EPOCH);
        move |leaf| facts.value(fact_named(&format!("paper.{leaf}")).unwrap())
    }

    #[test]
    fn a_version_counts_from_where_what_is_signed_last_changed() {
        let said = said(&trail(&["a", "b", "b", "b"], Some((3, 100))), &priced(100));
        assert_eq!((said("spec_version"), said("signed_version")), (Some(json!(2)), Some(json!(2))));
        assert_eq!((said("permanent_ack"), said("change_signed")), (Some(json!(true)), Some(json!(true))));
    }

    #[test]
    fn a_change_of_what_was_signed_parts_the_two_versions() {
        let said = said(&trail(&["a", "b", "b", "c"], Some((3, 10_000))), &priced(12_050));
        assert_eq!((said("spec_version"), said("signed_version")), (Some(json!(4)), Some(json!(2))));
        assert_eq!((said("quoted_total"), said("current_total")), (Some(json!(100)), Some(json!(120.5))));
        assert_eq!((said("permanent_ack"), said("change_signed")), (Some(json!(false)), Some(json!(false))));
    }

    #[test]
    fn what_goes_back_to_what_was_signed_is_signed() {
        let said = said(&trail(&["a", "b", "a"], Some((1, 100))), &priced(100));
        assert_eq!((said("spec_version"), said("signed_version")), (Some(json!(3)), Some(json!(3))));
    }

    #[test]
    fn what_was_never_signed_or_priced_is_not_known_and_not_agreed() {
        let said = said(&trail(&["a"], None), &Contents::default());
        for leaf in ["signed_version", "quoted_total", "current_total", "permanent_mods"] {
            assert_eq!(said(leaf), None, "{leaf}");
        }
        assert_eq!((said("permanent_ack"), said("change_signed")), (Some(json!(false)), Some(json!(false))));
    }

    #[test]
    fn what_somebody_typed_long_ago_does_not_stand_against_the_papers() {
        let mut contents = Contents::default();
        let origin = Origin { source: Source::Looked, by: "Ada".into(), at: Timestamp::UNIX_EPOCH };
        for (leaf, value) in [("permanent_ack", json!(true)), ("signed_version", json!(1))] {
            let fact = fact_named(&format!("paper.{leaf}")).unwrap();
            contents.facts.write(fact, Some(&value), origin.clone()).unwrap();
        }
        let said = said(&trail(&["a"], None), &contents);
        assert_eq!((said("permanent_ack"), said("signed_version")), (Some(json!(false)), None));
    }

    #[test]
    fn only_what_rests_on_the_papers_is_taken_from_today() {
        let found = |code: &str, fact: &str| Found {
            code: code.into(),
            severity: Severity::Stop,
            title: String::new(),
            shop: String::new(),
            customer: String::new(),
            fix: String::new(),
            basis: String::new(),
            customer_accepts: false,
            facts: vec![fact.into()],
        };
        let open = |code: &str, need: &str| Undecided {
            code: code.into(),
            due: "spec".into(),
            needs: vec![need.into()],
            own_title: String::new(),
        };
        let then = Judgement {
            findings: vec![found("A-01", "bell.kind"), found("COM-03", "paper.signed_version")],
            undecided: vec![open("COM-02", "paper.quoted_total")],
            ..Judgement::default()
        };
        let live = Judgement {
            findings: vec![found("A-02", "bell.kind"), found("COM-02", "paper.current_total")],
            ..Judgement::default()
        };
        let now = then.by_now(live);
        let codes: Vec<_> = now.findings.iter().map(|found| found.code.as_str()).collect();
        assert_eq!((codes, now.undecided.len()), (vec!["A-01", "COM-02"], 0));
    }
}
