//! What a customer's signature covers, and when it stops holding.
//!
//! A signature belongs to one revision. A later revision that changes nothing the signature covers
//! (the bench wrote down a measurement, say) leaves it standing; any other change voids it. Covered
//! are the spec and what was seen of the unit, the texts, the price, added work, every change that stays for good,
//! every finding the customer must accept in the words it was told in, and what the shop set aside of that, with its reason.

use super::canonical::Digest;
use super::contents::{Contents, Topic};
use super::judgement::{Found, Judgement, Severity};
use super::merge::Problem;
use super::paper::Tick;
use super::record::Answer;
use crate::job::Sheet;
use crate::plan::steps::{FROM_PAPERS, is_work_done};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value, json};

/// The customer's answer, seen from what stands now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Approval {
    /// Nothing that holds has been said.
    Missing,
    /// Signed, and nothing it covers has changed.
    Signed,
    /// Signed, but what it covers has changed.
    Void,
    /// Declined.
    Declined,
}

impl Approval {
    /// The answer to a build summary, given what the latest answer covered and what stands now.
    pub fn of_build(latest: Option<(Answer, &str)>, covers_now: &str) -> Self {
        match latest {
            None => Self::Missing,
            Some((Answer::Signed, covered)) if covered == covers_now => Self::Signed,
            Some((Answer::Signed, _)) => Self::Void,
            Some((Answer::Declined, covered)) if covered == covers_now => Self::Declined,
            Some((Answer::Declined, _)) => Self::Missing,
        }
    }

    /// The answer to a teardown authorisation, which no later change of the spec touches.
    pub const fn of_intake(latest: Option<Answer>) -> Self {
        match latest {
            None => Self::Missing,
            Some(Answer::Signed) => Self::Signed,
            Some(Answer::Declined) => Self::Declined,
        }
    }
}

/// The digest of everything a signature on these contents covers: what the unit is and what is to be
/// done to it, the words, the price, the work added by hand, each change that stays for good, every finding the
/// customer is told of, and what the shop set aside of those, stops too, with the reason the customer reads.
///
/// Three things leave a signature standing. A reading that leads to no such finding, and what a step did to
/// the unit, are bench work; a change for good is covered alike before and after it is done. A stop that wants no tick was told as something that will be put right, and
/// is. And what the papers say about the signature itself is no part of what it is on.
pub fn covers(contents: &Contents, judgement: &Judgement) -> Digest {
    let facts: Map<String, Value> = contents
        .facts
        .known()
        .filter(|(fact, ..)| matches!(fact.declaration().sheet, Sheet::Spec | Sheet::Outside | Sheet::Inside))
        .filter(|(fact, ..)| !is_work_done(*fact))
        .map(|(fact, value, _)| (fact.declaration().path.to_owned(), value))
        .collect();
    let texts: Map<String, Value> =
        Topic::ALL.iter().map(|topic| (topic.code().to_owned(), json!(contents.words.text(*topic)))).collect();
    let of_the_build = |found: &&Found| found.facts.iter().all(|fact| !FROM_PAPERS.contains(&fact.as_str()));
    let told: Vec<_> = judgement
        .findings
        .iter()
        .filter(|found| found.customer_accepts || found.is_told() && found.severity != Severity::Stop)
        .filter(of_the_build)
        .map(|found| (&found.code, found.severity, &found.customer))
        .collect();
    let set_aside: Vec<_> = judgement
        .silenced_told()
        .filter(|silenced| of_the_build(&&silenced.found))
        .map(|silenced| (&silenced.found.code, silenced.found.severity, &silenced.found.customer, &silenced.reason))
        .collect();
    let mut covered = json!({ "facts": facts, "texts": texts, "price": contents.price(), "told": told });
    // Only where there is some: the digests of papers from before there could be any stay what they are.
    if !set_aside.is_empty() {
        covered["set_aside"] = json!(set_aside);
    }
    let for_good = contents.for_good();
    if !for_good.is_empty() {
        covered["for_good"] = for_good.iter().map(|line| line.code).collect();
    }
    if !contents.added.is_empty() {
        covered["added"] = json!(contents.added);
    }
    Digest::of_value(&covered)
}

/// Were exactly the ticks set that the paper asks for?
///
/// # Errors
/// One [`Problem`] for each tick that is missing, or that is on the form but not on the paper.
pub fn check_ticks(asked: &[Tick], given: &[String]) -> Result<(), Vec<Problem>> {
    let missing = asked.iter().filter(|tick| !given.contains(&tick.code)).map(|tick| {
        Problem::new(format!("tick.{}", tick.code), format!("Please read and tick this point: {}", opening(&tick.text)))
    });
    let strange = given.iter().filter(|code| asked.iter().all(|tick| &tick.code != *code)).map(|code| {
        Problem::new(format!("tick.{code}"), "This point is no longer part of the page. Please read the page again.")
    });
    let problems: Vec<_> = missing.chain(strange).collect();
    if problems.is_empty() { Ok(()) } else { Err(problems) }
}

/// The first words of a point, enough to know it by: the whole of it stands beside its box.
fn opening(text: &str) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    if words.len() <= 8 { words.join(" ") } else { format!("{}…", words[..8].join(" ")) }
}

/// How one tick of an earlier signature stands now.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "standing")]
pub enum TickStanding {
    /// It says the same as when it was ticked.
    Same(Tick),
    /// It says something else now; the earlier tick is void.
    Changed {
        /// What was ticked.
        was: Tick,
        /// What it says now.
        now: Tick,
    },
    /// It was not there before.
    New(Tick),
    /// It is not there any more; the earlier tick is void.
    Gone(Tick),
}

/// Every tick of the earlier paper and of the present one, present order first.
pub fn tick_standing(earlier: &[Tick], present: &[Tick]) -> Vec<TickStanding> {
    let of = |ticks: &[Tick], code: &str| ticks.iter().find(|tick| tick.code == code).cloned();
    let mut standing: Vec<_> = present
        .iter()
        .map(|now| match of(earlier, &now.code) {
            None => TickStanding::New(now.clone()),
            Some(was) if was.text == now.text => TickStanding::Same(was),
            Some(was) => TickStanding::Changed { was, now: now.clone() },
        })
        .collect();
    standing.extend(
        earlier.iter().filter(|was| of(present, &was.code).is_none()).map(|was| TickStanding::Gone(was.clone())),
    );
    standing
}

#[cfg(test)]
mod tests;
