//! The shop's own rule book: what its jobs are judged by.

use super::Failure;
use crate::rules::house::{HouseRule, house_code};
use crate::rules::{LimitId, LimitUsed, Limits, Severity, rule_named};
use crate::store::{house_rule, limit};
use crate::ticket::{HouseVersion, Judgement, MovedLimit};
use sqlx::PgConnection;
use std::collections::BTreeSet;
use uuid::Uuid;

/// What a shop judges its jobs by, besides the rules that are the same everywhere. Read anew, in the
/// same transaction, wherever something is judged: another instance may have changed it a moment ago.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Book {
    /// The numbers the rules compare with, as this shop has them.
    pub limits: Limits,
    /// The rules of its own that are in force.
    pub house: Vec<HouseRule>,
    /// Codes of rules in force that this version of the program cannot read: they decide nothing, and say so.
    pub unreadable: Vec<String>,
}

impl Book {
    /// The shop's book as it stands.
    pub(super) async fn load(conn: &mut PgConnection, shop: Uuid) -> Result<Self, Failure> {
        let mut book = Self::default();
        for moved in limit::moved(conn, shop).await? {
            set(&mut book.limits, &moved.name, moved.number);
        }
        for kept in house_rule::in_force(conn, shop).await? {
            match super::house_rule::readable(&kept) {
                Some(rule) => book.house.push(rule),
                None => book.unreadable.push(house_code(kept.nth)),
            }
        }
        Ok(book)
    }

    /// The title of a rule, if it is a stop.
    pub(super) fn stop_named(&self, code: &str) -> Option<&str> {
        let own = self.house.iter().find(|rule| rule.code == code).map(|rule| (rule.severity, rule.title.as_str()));
        let (severity, title) = own.or_else(|| rule_named(code).map(|rule| (rule.severity, rule.title)))?;
        (severity == Severity::Stop).then_some(title)
    }

    /// What the shop has moved, as a judgement keeps it.
    pub(super) fn moved(&self) -> Vec<MovedLimit> {
        let kept = |used: LimitUsed| MovedLimit { limit: used.limit.declaration().name.to_owned(), number: used.value };
        self.limits.moved().map(kept).collect()
    }

    /// The rules of the shop's own it holds jobs against, as a judgement keeps them.
    pub(super) fn in_force(&self) -> Vec<HouseVersion> {
        let kept = |rule: &HouseRule| HouseVersion { code: rule.code.clone(), version: rule.version };
        self.house.iter().map(kept).collect()
    }

    /// The rules of the shop's own that were switched on, off or to another version since this was judged.
    pub fn house_since(&self, judgement: &Judgement) -> Vec<HouseSince> {
        let (then, now) = (&judgement.house, self.in_force());
        let codes: BTreeSet<&String> = then.iter().chain(&now).map(|rule| &rule.code).collect();
        let among = |rules: &[HouseVersion], code: &String| {
            rules.iter().find(|rule| rule.code == *code).map(|rule| rule.version)
        };
        let since = |code: &String| HouseSince { code: code.clone(), was: among(then, code), now: among(&now, code) };
        codes.into_iter().map(since).filter(|since| since.was != since.now).collect()
    }

    /// The limits that stand otherwise now than when this was judged.
    pub fn limits_since(&self, judgement: &Judgement) -> Vec<LimitSince> {
        let mut then = Limits::default();
        for moved in &judgement.limits {
            set(&mut then, &moved.limit, moved.number);
        }
        let since = |limit: &LimitId| LimitSince { limit: *limit, was: then.get(*limit), now: self.limits.get(*limit) };
        LimitId::ALL.iter().map(since).filter(|since| since.was != since.now).collect()
    }
}

/// A limit that has changed since something was judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LimitSince {
    /// Which.
    pub limit: LimitId,
    /// What it was judged by, in the limit's unit.
    pub was: f64,
    /// What stands now.
    pub now: f64,
}

/// A rule of the shop's own that has changed since something was judged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HouseSince {
    /// Its code.
    pub code: String,
    /// The version it was judged by; none when the rule decided nothing then.
    pub was: Option<i32>,
    /// The version that decides now; none when the rule decides nothing.
    pub now: Option<i32>,
}

/// Moves a limit to a number that was allowed when it was kept. One that a later version of the program no longer
/// knows or allows is as supplied again.
fn set(limits: &mut Limits, name: &str, number: f64) {
    if let Some(limit) = LimitId::named(name) {
        limits.set(limit, number).ok();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_changed_since_is_told_once_for_each_limit_and_not_when_it_is_back() {
        let mut book = Book::default();
        let judged = |book: &Book| Judgement { limits: book.moved(), ..Judgement::default() };
        let supplied = judged(&book);
        assert!(book.limits_since(&supplied).is_empty());
        book.limits.set(LimitId::bell_runout, 0.008).expect("within its range");
        let since = LimitSince { limit: LimitId::bell_runout, was: 0.01, now: 0.008 };
        assert_eq!(book.limits_since(&supplied), [since]);
        let tighter = judged(&book);
        assert!(book.limits_since(&tighter).is_empty());
        assert_eq!(Book::default().limits_since(&tighter), [LimitSince { was: 0.008, now: 0.01, ..since }]);
        assert!(Book::default().limits_since(&supplied).is_empty());
    }

    #[test]
    fn a_number_of_another_version_of_the_program_is_as_supplied() {
        let mut limits = Limits::default();
        set(&mut limits, "a_limit_that_went", 1.0);
        set(&mut limits, "bell_runout", 5.0);
        assert_eq!(limits, Limits::default());
    }
}
