//! The paper a customer reads and signs, word for word. What this returns is what the page shows
//! and what the signature record keeps.

use super::coded::coded;
use super::contents::{Contents, Topic};
use super::judgement::{Found, Judgement, Severity, Silenced};
use super::origin::Source;
use super::price::Price;
use crate::job::FactId;
pub use crate::plan::summary::Block;
use crate::plan::summary::{self, HowKnown, Matter, Point, SetAside};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

coded! {
    /// What a paper is for.
    Purpose {
        /// Lets the shop take the unit apart.
        Intake = "intake", "Teardown authorisation";
        /// Says what will be built.
        Build = "build", "Build summary";
    }
}

/// Something the customer accepts with a tick of its own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Tick {
    /// The rule's code, or the shop's own.
    pub code: String,
    /// How bad the finding behind it is; none for what the shop asks of everybody.
    pub severity: Option<Severity>,
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
    /// The shop's own words for this purpose: its terms for the teardown, or what is not covered. Empty without any.
    pub terms: &'a str,
}

/// The paper of this purpose.
pub fn paper(purpose: Purpose, setting: &Setting<'_>) -> Paper {
    let priced = setting.contents.price().cloned().unwrap_or_default();
    let facts = &setting.contents.facts;
    let awaited: BTreeSet<FactId> = facts.to_be_seen().collect();
    let planned = |fact: FactId| awaited.contains(&fact).then_some(HowKnown::WePlan);
    let how_known = |fact: FactId| facts.origin(fact).map(|origin| how_known(origin.source)).or_else(|| planned(fact));
    let matter = matter(purpose, setting, &how_known);
    let blocks = match purpose {
        Purpose::Intake => summary::teardown(&matter),
        Purpose::Build => summary::build(&matter),
    };
    let (promise, refusal) = match purpose {
        Purpose::Intake => (
            "By typing my name I let the shop take the unit apart and look inside.",
            "If you say no, we leave the unit as it is and call you.",
        ),
        Purpose::Build => (
            "By typing my name I agree to this version and to each point I ticked.",
            "If you say no, the work stops here and we call you. We do nothing more until you decide.",
        ),
    };
    Paper {
        purpose,
        title: purpose.label().to_owned(),
        opening: vec![
            format!("From {} to {}.", setting.shop, setting.customer),
            format!("Job {}: {}.", setting.ticket, setting.vehicle.trim_end_matches('.')),
            format!("This is version {}. It takes the place of all earlier ones.", setting.revision),
        ],
        blocks,
        ticks: ticks(purpose, setting, &matter),
        price: price_line(purpose, &priced),
        priced,
        promise: promise.to_owned(),
        refusal: refusal.to_owned(),
    }
}

/// The ticks a build summary of these contents asks for.
pub fn build_ticks(contents: &Contents, judgement: &Judgement) -> Vec<Tick> {
    let setting =
        Setting { shop: "", customer: "", vehicle: "", ticket: 0, revision: 0, contents, judgement, terms: "" };
    paper(Purpose::Build, &setting).ticks
}

fn matter<'a>(
    purpose: Purpose,
    setting: &Setting<'a>,
    how_known: &'a dyn Fn(FactId) -> Option<HowKnown>,
) -> Matter<'a> {
    let words = &setting.contents.words;
    let findings = &setting.judgement.findings;
    // Before the teardown nothing is accepted yet, so a finding that will want a tick is told like the others.
    let told = |found: &&Found| purpose == Purpose::Intake || !found.customer_accepts;
    let points = |stop: bool| {
        findings
            .iter()
            .filter(told)
            .filter(move |found| (found.severity == Severity::Stop) == stop)
            .map(|found| Point { code: &found.code, text: &found.customer })
            .collect()
    };
    Matter {
        job: setting.contents.facts.job(),
        how_known,
        vehicle: setting.vehicle,
        brought: words.text(Topic::Brought),
        wants: words.text(Topic::Wants),
        symptom: words.text(Topic::Symptom),
        to_put_right: points(true),
        to_know: points(false),
        set_aside: setting.judgement.silenced_told().map(set_aside).collect(),
        terms: setting.terms,
        added: &setting.contents.added,
        done_here: &setting.contents.done_here,
    }
}

fn set_aside(silenced: &Silenced) -> SetAside<'_> {
    let point = Point { code: &silenced.found.code, text: &silenced.found.customer };
    SetAside { point, reason: &silenced.reason }
}

fn ticks(purpose: Purpose, setting: &Setting<'_>, matter: &Matter<'_>) -> Vec<Tick> {
    if purpose == Purpose::Intake {
        let text =
            "I know that a unit that was taken apart may not go back together as it was, if I say no to the work.";
        return vec![Tick { code: "TEARDOWN".into(), severity: None, text: text.into() }];
    }
    let mut found: Vec<&Found> = setting.judgement.to_accept().collect();
    found.sort_by_key(|found| found.severity);
    let text = |found: &Found| summary::tick(Point { code: &found.code, text: &found.customer }, matter);
    found
        .into_iter()
        .map(|found| Tick { code: found.code.clone(), severity: Some(found.severity), text: text(found) })
        .collect()
}

const fn how_known(source: Source) -> HowKnown {
    match source {
        Source::CustomerSaid => HowKnown::YouTold,
        Source::Looked | Source::Log | Source::Papers => HowKnown::WeLooked,
        Source::Measured => HowKnown::WeMeasured,
        Source::MeasuredPastDue => HowKnown::WeMeasuredPastDue,
        Source::BuilderSheet => HowKnown::PartSheet,
        Source::ShopSetting => HowKnown::OurHabit,
        Source::Computed => HowKnown::WeReckoned,
        Source::Planned => HowKnown::WePlan,
    }
}

fn price_line(purpose: Purpose, price: &Price) -> String {
    match (price.total(), purpose) {
        (Some(total), _) => format!("Price: {total}"),
        (None, Purpose::Intake) => {
            "Price: not known before we have looked inside. We ask you before we do more.".into()
        }
        (None, Purpose::Build) => "Price: not named yet. We ask you again before we do work that costs money.".into(),
    }
}
