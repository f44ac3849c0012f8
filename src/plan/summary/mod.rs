//! What a customer is told about a job: what came in, what was asked for, what was found, what will
//! be built, what cannot be undone, what nobody knows yet.
//!
//! One function makes the text, and it is both what the page shows and what the signature record
//! keeps. The sentences are for somebody who has never opened a transmission: short, with percent and
//! mph instead of teeth, and with where each number comes from. What concerns the bench alone has no
//! customer sentence and never gets here.

mod built;
mod care;
mod figures;
mod found;
mod labels;
mod lasting;
mod open;
mod planned;
mod say;
mod told;

pub use lasting::{Lasting, for_good};
pub use say::HowKnown;

use crate::job::{FactId, Job};
use say::Say;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A heading with its lines.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Block {
    /// The heading.
    pub heading: String,
    /// One sentence a line.
    pub lines: Vec<String>,
}

/// A finding in the words for the customer.
#[derive(Clone, Copy, Debug)]
pub struct Point<'a> {
    /// The rule's code.
    pub code: &'a str,
    /// What the customer is told; empty when it is the bench's business alone.
    pub text: &'a str,
}

/// A finding that the shop set aside, and why.
#[derive(Clone, Copy, Debug)]
pub struct SetAside<'a> {
    /// What was found.
    pub point: Point<'a>,
    /// Why it is set aside, in the shop's own words.
    pub reason: &'a str,
}

/// Everything a summary is made from.
pub struct Matter<'a> {
    /// The facts and choices.
    pub job: &'a Job,
    /// How the shop came to know a fact; nothing for a fact it does not know.
    pub how_known: &'a dyn Fn(FactId) -> Option<HowKnown>,
    /// The vehicle in plain words.
    pub vehicle: &'a str,
    /// The parts that came with the unit.
    pub brought: Option<&'a str>,
    /// What the customer wants.
    pub wants: Option<&'a str>,
    /// What is wrong, in the customer's words.
    pub symptom: Option<&'a str>,
    /// Findings that have to be put right before the work goes on and need no tick.
    pub to_put_right: Vec<Point<'a>>,
    /// Findings worth knowing that need no tick.
    pub to_know: Vec<Point<'a>>,
    /// Findings the customer would have been told, which the shop has set aside.
    pub set_aside: Vec<SetAside<'a>>,
    /// The shop's own words about what is not covered, or about the teardown; empty when it has none.
    pub terms: &'a str,
    /// The codes of the steps added to the job by hand.
    pub added: &'a [String],
    /// The permanent steps this shop did, by code: does the step stand, or was it taken back?
    pub done_here: &'a BTreeMap<String, bool>,
}

/// The heading over findings that have to be put right; the page marks it.
pub const TO_PUT_RIGHT: &str = "What has to be put right first";
/// The heading over findings that are good to know; the page marks it.
pub const TO_KNOW: &str = "Good to know";
/// The heading over findings that the shop has set aside.
pub const SET_ASIDE: &str = "What we have set aside";
/// The heading over what is planned and not done yet.
pub const PLANNED: &str = "What we plan to do";
/// The heading over what cannot be undone; the page marks it.
pub const FOR_GOOD: &str = "What cannot be undone";

/// The blocks of a build summary, in reading order, none of them empty.
pub fn build(matter: &Matter<'_>) -> Vec<Block> {
    let say = Say::of(matter);
    filled(vec![
        block("What you brought", brought(matter)),
        block("What you asked for", asked_for(matter)),
        block("What you told us", told::lines(&say)),
        block("What we found", found::lines(&say)),
        block(TO_PUT_RIGHT, points(matter, &matter.to_put_right)),
        block(PLANNED, planned::lines(&say)),
        block("What we will build", built::lines(&say)),
        block(FOR_GOOD, lasting::lines(&say)),
        block(TO_KNOW, points(matter, &matter.to_know)),
        block(SET_ASIDE, set_aside(matter)),
        block("What we measured", found::measured(&say)),
        block("What we do not know yet", open::lines(&say)),
        block("Safety labels and dates", labels::lines(&say)),
        block("What you need to do", care::to_do(&say)),
        block("Please stay safe", care::cautions(&say)),
        block("What is not covered", lines_of(matter.terms)),
    ])
}

/// The blocks of a teardown authorisation, in reading order, none of them empty.
pub fn teardown(matter: &Matter<'_>) -> Vec<Block> {
    let say = Say::of(matter);
    let noticed = [points(matter, &matter.to_put_right), points(matter, &matter.to_know)].concat();
    filled(vec![
        block("What you brought", brought(matter)),
        block("What you asked for", asked_for(matter)),
        block("What you told us", told::lines(&say)),
        block("What we have seen so far", found::lines(&say)),
        block("What we noticed already", noticed),
        block(SET_ASIDE, set_aside(matter)),
        block("What we do not know yet", open::lines(&say)),
        block(
            "What happens next",
            vec![
                "We take the unit apart, clean it and look at each part.".into(),
                "Then we tell you what we found, what you can choose and what it costs.".into(),
                "We build and change nothing before you have signed for it.".into(),
            ],
        ),
        block(
            FOR_GOOD,
            vec![
                "Taking it apart is a step of its own. Seals and gaskets do not survive it. If you then say no to the \
                 work, nobody can promise to put the unit back as it was."
                    .into(),
            ],
        ),
        block("Our terms for the teardown", lines_of(matter.terms)),
    ])
}

/// What a tick says: the finding's sentence, with the figure it speaks of when there is one.
pub fn tick(point: Point<'_>, matter: &Matter<'_>) -> String {
    match figures::behind(point.code, &Say::of(matter)) {
        Some(figure) => format!("{} {figure}", point.text.trim_end()),
        None => point.text.to_owned(),
    }
}

fn points(matter: &Matter<'_>, points: &[Point<'_>]) -> Vec<String> {
    points.iter().filter(|point| !point.text.trim().is_empty()).map(|point| tick(*point, matter)).collect()
}

fn set_aside(matter: &Matter<'_>) -> Vec<String> {
    let line = |aside: &SetAside<'_>| {
        let reason = lines_of(aside.reason).join(" ");
        format!("{} We know this and have set it aside for this job. Our reason: {reason}", tick(aside.point, matter))
    };
    matter.set_aside.iter().map(line).collect()
}

fn brought(matter: &Matter<'_>) -> Vec<String> {
    let mut lines = lines_of(matter.vehicle);
    lines.extend(matter.brought.map(lines_of).unwrap_or_default());
    lines
}

fn asked_for(matter: &Matter<'_>) -> Vec<String> {
    let symptom = matter.symptom.map(lines_of).unwrap_or_default();
    let mut lines = matter.wants.map(lines_of).unwrap_or_default();
    lines.extend(symptom.into_iter().map(|line| format!("What is wrong, in your words: {line}")));
    lines
}

fn block(heading: &str, lines: Vec<String>) -> Block {
    Block { heading: heading.to_owned(), lines }
}

fn filled(blocks: Vec<Block>) -> Vec<Block> {
    blocks.into_iter().filter(|block| !block.lines.is_empty()).collect()
}

fn lines_of(text: &str) -> Vec<String> {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect()
}

#[cfg(test)]
mod reading;
#[cfg(test)]
mod tests;
