//! The paper a customer reads and signs, word for word. What this returns is what the page shows
//! and what the signature record keeps.

use super::coded::coded;
use super::contents::{Contents, Topic};
use super::judgement::{Found, Judgement, Severity};
use super::price::Price;
use crate::job::Sheet;
use serde::{Deserialize, Serialize};

coded! {
    /// What a paper is for.
    Purpose {
        /// Lets the shop take the unit apart.
        Intake = "intake", "Teardown authorisation";
        /// Says what will be built.
        Build = "build", "Build summary";
    }
}

/// A heading with its lines.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Block {
    /// The heading.
    pub heading: String,
    /// One sentence or one `label: value` a line.
    pub lines: Vec<String>,
}

/// Something the customer accepts with a tick of its own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Tick {
    /// The rule's code, or the shop's own.
    pub code: String,
    /// What is accepted.
    pub text: String,
}

/// The whole text of a paper.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Paper {
    /// What it is for.
    pub purpose: Purpose,
    /// Its title.
    pub title: String,
    /// Who it is from, to whom, about what, which version.
    pub opening: Vec<String>,
    /// What is said, block by block.
    pub blocks: Vec<Block>,
    /// What is accepted, one tick each.
    pub ticks: Vec<Tick>,
    /// The price line.
    pub price: String,
    /// The price itself.
    pub priced: Price,
    /// What the name under it means.
    pub promise: String,
    /// What happens when the customer says no.
    pub refusal: String,
}

/// What a paper is made from, besides its purpose.
#[derive(Clone, Copy, Debug)]
pub struct Setting<'a> {
    /// The shop's name.
    pub shop: &'a str,
    /// The customer's name.
    pub customer: &'a str,
    /// The vehicle in plain words.
    pub vehicle: &'a str,
    /// The ticket's number.
    pub ticket: i64,
    /// The revision's number.
    pub revision: i32,
    /// The revision's contents.
    pub contents: &'a Contents,
    /// What the rules said about them.
    pub judgement: &'a Judgement,
}

/// The paper of this purpose.
pub fn paper(purpose: Purpose, setting: &Setting<'_>) -> Paper {
    let priced = setting.contents.price().cloned().unwrap_or_default();
    let (blocks, ticks, promise, refusal) = match purpose {
        Purpose::Intake => intake(setting),
        Purpose::Build => build(setting),
    };
    Paper {
        purpose,
        title: purpose.label().to_owned(),
        opening: vec![
            format!("From {} to {}.", setting.shop, setting.customer),
            format!("Job {}: {}.", setting.ticket, setting.vehicle.trim_end_matches('.')),
            format!("This is version {}. It takes the place of all earlier ones.", setting.revision),
        ],
        blocks: blocks.into_iter().filter(|block| !block.lines.is_empty()).collect(),
        ticks,
        price: price_line(&priced),
        priced,
        promise,
        refusal,
    }
}

type Parts = (Vec<Block>, Vec<Tick>, String, String);

fn intake(setting: &Setting<'_>) -> Parts {
    let blocks = vec![
        block("What you brought", brought(setting)),
        block("What you told us", told(setting)),
        block(
            "What happens next",
            vec![
                "We take the unit apart, clean it and look at every part.".into(),
                "Then we tell you what we found, what it would cost and what you can choose.".into(),
                "We do not build or change anything before you have signed for it.".into(),
            ],
        ),
    ];
    let ticks = vec![Tick {
        code: "TEARDOWN".into(),
        text: "I know that a unit that has been taken apart may not go back together as it was, if I decide against \
               the work."
            .into(),
    }];
    let promise = "By typing my name I allow the shop to take the unit apart and look inside.".into();
    let refusal = "If you say no, we leave the unit as it is and call you.".into();
    (blocks, ticks, promise, refusal)
}

fn build(setting: &Setting<'_>) -> Parts {
    let told_to_customer = |found: &Found| found.customer.clone();
    let judgement = setting.judgement;
    let to_know = judgement
        .findings
        .iter()
        .filter(|found| found.severity != Severity::Stop && !found.customer_accepts)
        .map(told_to_customer)
        .collect();
    let blocks = vec![
        block("What you brought", brought(setting)),
        block("What you asked for", told(setting)),
        block("How it will be built", facts_on(setting, Sheet::Spec)),
        block(
            "What we found on the unit",
            [Sheet::Outside, Sheet::Inside].map(|sheet| facts_on(setting, sheet)).concat(),
        ),
        block("What we measured", facts_on(setting, Sheet::Measured)),
        block("What has to be put right first", judgement.of(Severity::Stop).map(told_to_customer).collect()),
        block("Good to know", to_know),
        block(
            "Please keep in mind",
            vec![
                "Power, weight and use are as you gave them to us.".into(),
                "For racing, the rule book of your class and the official at the event decide.".into(),
            ],
        ),
    ];
    let ticks =
        judgement.to_accept().map(|found| Tick { code: found.code.clone(), text: found.customer.clone() }).collect();
    let promise = "By typing my name I agree to this version and to each point I ticked.".into();
    let refusal = "If you say no, the work stops here and we call you. Nothing more is done until you decide.".into();
    (blocks, ticks, promise, refusal)
}

fn block(heading: &str, lines: Vec<String>) -> Block {
    Block { heading: heading.to_owned(), lines }
}

fn brought(setting: &Setting<'_>) -> Vec<String> {
    let mut lines = vec![setting.vehicle.to_owned()];
    lines.extend(setting.contents.words.text(Topic::Brought).into_iter().flat_map(lines_of));
    lines
}

fn told(setting: &Setting<'_>) -> Vec<String> {
    let words = &setting.contents.words;
    [Topic::Wants, Topic::Symptom].iter().filter_map(|topic| words.text(*topic)).flat_map(lines_of).collect()
}

fn lines_of(text: &str) -> impl Iterator<Item = String> + '_ {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned)
}

fn facts_on(setting: &Setting<'_>, sheet: Sheet) -> Vec<String> {
    let facts = &setting.contents.facts;
    facts
        .known()
        .filter(|(fact, ..)| fact.declaration().sheet == sheet)
        .map(|(fact, ..)| format!("{}: {}", fact.declaration().label, facts.words(fact)))
        .collect()
}

fn price_line(price: &Price) -> String {
    match price.total() {
        Some(total) => format!("Price: {total}"),
        None => "Price: not named yet. We ask you again before we do work that costs money.".to_owned(),
    }
}
