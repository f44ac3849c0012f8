//! One plan as the page shows it.

use crate::job::{FactId, Sheet};
use crate::plan::clearing::{Change, Impossible, Offer, Plan, RuleNamed, Stays};
use crate::plan::levers::{Prices, Undo};
use crate::quantity::Cents;
use crate::service::price_with;
use crate::ticket::{NOT_KNOWN, Price, Source, TicketFacts, in_words};
use crate::web::findings::counted;
use serde_json::Value;

/// A plan beside the others.
pub struct PlanCard {
    pub title: &'static str,
    pub cost: String,
    pub labour: String,
    /// What of it cannot be undone, in a sentence.
    pub lasting: String,
    pub proven: bool,
    /// What it does otherwise than the first plan, in sentences; nothing for the first.
    pub differs: Vec<String>,
    /// What it changes of what was asked for: choice, from, to.
    pub asked: Vec<(&'static str, String, String)>,
    /// Its changes; of a later plan only those that the first does not make.
    pub changes: Vec<ChangeCard>,
    /// Those that the first plan makes, too.
    pub shared: Vec<ChangeCard>,
    /// Stops and cautions that stay.
    pub left: Vec<RuleNamed>,
    /// Cautions and notes it brings.
    pub brought: Vec<RuleNamed>,
    /// What has to be measured, tried or signed before the rules can tell.
    pub to_do: Vec<&'static str>,
    /// Findings that stay until then.
    pub until: Vec<RuleNamed>,
    /// How many checks then wait that are decided now.
    pub waits: String,
    /// What is written on the ticket: fact, from, to.
    pub writes: Vec<(&'static str, String, String)>,
    /// The codes of its levers, for the form.
    pub levers: String,
    /// How many of its changes cost something.
    pub priced: usize,
    /// The price with a line for each of those, in words.
    pub total: String,
}

/// One change of a plan.
pub struct ChangeCard {
    pub name: &'static str,
    pub work: &'static str,
    /// `45 min, 90.00`.
    pub costs: String,
    pub undo: &'static str,
    pub for_good: bool,
    pub clears: Vec<RuleNamed>,
    pub keeps_away: Vec<RuleNamed>,
    pub brings: Vec<RuleNamed>,
}

/// A stop that stays with every plan shown.
pub struct Stuck {
    pub rule: RuleNamed,
    /// Why, in a sentence.
    pub why: &'static str,
    /// The facts it rests on: label and value.
    pub facts: Vec<(&'static str, String)>,
}

/// What a plan is shown beside.
pub struct Beside<'a> {
    /// The facts as they stand.
    pub facts: &'a TicketFacts,
    /// The price as it stands.
    pub price: Option<&'a Price>,
    /// What levers cost here.
    pub prices: &'a Prices,
    /// The first plan; none for itself.
    pub first: Option<&'a Plan>,
}

impl PlanCard {
    pub fn new(plan: &Plan, beside: &Beside<'_>) -> Self {
        let (facts, codes) = (beside.facts, plan.codes());
        let common = |change: &&Change| beside.first.is_some_and(|first| first.codes().contains(&change.lever.code));
        let (shared, own): (Vec<_>, Vec<_>) = plan.changes.iter().partition(common);
        let never = plan.for_good();
        let hard = plan.changes.iter().filter(|change| change.lever.undo == Undo::WithTrouble).count();
        let lasting = match (never, hard) {
            (0, 0) => "Everything in it can be undone.".to_owned(),
            (0, hard) => format!("{} can be undone only with trouble.", counted(hard, "change")),
            (never, 0) => format!("{} can never be undone.", counted(never, "change")),
            (never, hard) => {
                format!("{} can never be undone, {hard} only with trouble.", counted(never, "change"))
            }
        };
        let written = |value: &Option<Value>, fact: FactId| match value {
            Some(value) => in_words(fact.declaration(), value),
            None => "blank, to be measured, tried or signed".to_owned(),
        };
        let write = |(fact, value): &(FactId, Option<Value>)| {
            (fact.declaration().label, facts.words(*fact), written(value, *fact))
        };
        Self {
            title: title(plan),
            cost: plan.cost.to_string(),
            labour: hours(plan.minutes),
            lasting,
            proven: plan.proven,
            differs: beside.first.map(|first| differs(plan, first)).unwrap_or_default(),
            changes: own.into_iter().map(ChangeCard::new).collect(),
            shared: shared.into_iter().map(ChangeCard::new).collect(),
            left: plan.left.clone(),
            brought: plan.brought.clone(),
            to_do: plan.to_do.iter().map(|fact| fact.declaration().label).collect(),
            until: plan.until.clone(),
            waits: match plan.opened.len() {
                0 => String::new(),
                1 => "1 check is then not decided until it is.".to_owned(),
                checks => format!("{checks} checks are then not decided until it is."),
            },
            asked: plan.edits.iter().filter(|(fact, _)| was_asked_for(*fact, facts)).map(write).collect(),
            writes: plan.edits.iter().map(write).collect(),
            total: price_with(beside.price, &codes, beside.prices).total_in_words(),
            levers: codes.join(" "),
            priced: plan.changes.iter().filter(|change| change.cost.0 > 0).count(),
        }
    }
}

/// Is it a choice that somebody has made already, and no plan of ours?
fn was_asked_for(fact: FactId, facts: &TicketFacts) -> bool {
    fact.declaration().sheet == Sheet::Spec && facts.origin(fact).is_some_and(|origin| origin.source != Source::Planned)
}

/// What a later plan does otherwise than the first, the money and the time before all.
fn differs(plan: &Plan, first: &Plan) -> Vec<String> {
    let named = |of: &Plan, other: &Plan| {
        let others = other.codes();
        let only = of.changes.iter().filter(|change| !others.contains(&change.lever.code));
        only.map(|change| change.lever.name).collect::<Vec<_>>().join("; ")
    };
    let money = match plan.cost.0.saturating_sub(first.cost.0) {
        0 => "the same money".to_owned(),
        more @ 1.. => format!("{} more", Cents(more)),
        less => format!("{} less", Cents(less.saturating_neg())),
    };
    let time = match (plan.minutes, first.minutes) {
        (own, its) if own == its => "the same time".to_owned(),
        (own, its) if own > its => format!("{} longer", hours(own - its)),
        (own, its) => format!("{} shorter", hours(its - own)),
    };
    let (besides, without) = (named(plan, first), named(first, plan));
    let mut lines = vec![format!("Against plan 1: {money}, {time}.")];
    if !besides.is_empty() {
        lines.push(format!("It does besides: {besides}."));
    }
    if !without.is_empty() {
        lines.push(format!("It does without: {without}."));
    }
    lines
}

/// What a plan promises, as a heading. That there is nothing cheaper or better is said only when it was shown.
fn title(plan: &Plan) -> &'static str {
    match (plan.offer, plan.leaves_a_stop(), plan.left.is_empty(), plan.proven) {
        (Offer::NoStop, _, true, true) => "No stop and no caution, for the least",
        (Offer::NoStop, false, _, true) => "No stop, for the least",
        (Offer::NoStop, true, _, true) => "Every stop that can be cleared together, for the least",
        (Offer::NoStop | Offer::NoCaution, _, true, _) => "No stop and no caution",
        (Offer::NoStop, false, _, false) => "No stop",
        (Offer::NoStop, true, _, false) => "Fewer stops",
        (Offer::NoCaution, .., true) => "As few stops and cautions as can be",
        (Offer::NoCaution, .., false) => "Fewer stops and cautions",
        (Offer::NothingForGood, ..) => "Nothing changed for good",
        (Offer::OtherMeans, ..) => "Another way",
    }
}

impl ChangeCard {
    fn new(change: &Change) -> Self {
        Self {
            name: change.lever.name,
            work: change.lever.work,
            costs: format!("{}, {}", hours(change.minutes), change.cost),
            undo: change.lever.undo.label(),
            for_good: change.lever.undo == Undo::Never,
            clears: change.clears.clone(),
            keeps_away: change.keeps_away.clone(),
            brings: change.brings.clone(),
        }
    }
}

impl Stuck {
    pub fn new(stop: &Impossible, facts: &TicketFacts) -> Self {
        let why = match stop.why {
            Stays::Fixed => "Nothing known here clears it: it rests on what no change here reaches.",
            Stays::BringsAnother => "Every set of changes known here was tried: each that clears it brings a new stop.",
            Stays::OrOthersStay => "It can be cleared, but then other stops stay: not all of them can go together.",
            Stays::NotAllTried => {
                "No way was found, but there were too many to try them all. There may be one: look for it yourself."
            }
        };
        let fact = |fact: FactId| (fact.declaration().label, facts.words(fact));
        let facts = stop.rests_on.iter().map(fact).filter(|(_, value)| value != NOT_KNOWN).collect();
        Self { rule: stop.rule.clone(), why, facts }
    }
}

/// `45 min`, `1 h`, `2 h 30 min`.
pub fn hours(minutes: u32) -> String {
    match (minutes / 60, minutes % 60) {
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::Job;
    use crate::plan::clearing::{Terms, clearing};
    use crate::rules::Limits;

    #[test]
    fn labour_is_told_in_hours_and_minutes() {
        for (minutes, words) in [(0, "0 min"), (59, "59 min"), (60, "1 h"), (61, "1 h 1 min"), (150, "2 h 30 min")] {
            assert_eq!(hours(minutes), words);
        }
    }

    #[test]
    fn a_plan_says_what_lasts_and_what_is_left_blank() {
        let mut job = Job::plain();
        job.bell.runout_in.set(crate::quantity::Quantity::new(0.012));
        let (limits, prices) = (Limits::default(), Prices::default());
        let terms = Terms { limits: &limits, house: &[], prices: &prices, aside: &[], effort: Terms::EFFORT };
        let clearing = clearing(&job, &terms);
        let facts = TicketFacts::default();
        let beside = Beside { facts: &facts, price: None, prices: &prices, first: None };
        let card = PlanCard::new(&clearing.plans[0], &beside);
        assert_eq!(card.title, "No stop and no caution");
        assert_eq!(card.lasting, "Everything in it can be undone.");
        assert_eq!(card.to_do, ["Bell bore runout"]);
        assert_eq!(card.waits, "1 check is then not decided until it is.");
        assert_eq!(card.levers, "bell-offset-dowels");
    }

    #[test]
    fn a_later_plan_says_first_what_it_does_otherwise() {
        let mut job = Job::plain();
        job.yoke.spline.set(27);
        job.output.o_ring.set(true);
        let (limits, prices) = (Limits::default(), Prices::default());
        let terms = Terms { limits: &limits, house: &[], prices: &prices, aside: &[], effort: Terms::EFFORT };
        let plans = clearing(&job, &terms).plans;
        let facts = TicketFacts::default();
        let beside = Beside { facts: &facts, price: None, prices: &prices, first: Some(&plans[0]) };
        let card = PlanCard::new(&plans[1], &beside);
        assert!(
            card.differs[0].starts_with("Against plan 1: ") && card.differs[0].contains(" more, "),
            "{:?}",
            card.differs
        );
        assert_eq!(card.differs[1..], ["It does besides: Take the O-ring off the output shaft."]);
        let names = |changes: &[ChangeCard]| changes.iter().map(|change| change.name).collect::<Vec<_>>();
        assert_eq!(names(&card.changes), ["Take the O-ring off the output shaft"]);
        assert_eq!(names(&card.shared), ["Fit a slip yoke for this output shaft"]);
    }

    #[test]
    fn the_least_and_the_best_are_said_only_when_they_were_shown() {
        let mut job = Job::plain();
        job.yoke.spline.set(27);
        let (limits, prices) = (Limits::default(), Prices::default());
        let terms = Terms { limits: &limits, house: &[], prices: &prices, aside: &[], effort: Terms::EFFORT };
        let mut plan = clearing(&job, &terms).plans.remove(0);
        assert_eq!(title(&plan), "No stop and no caution, for the least");
        plan.proven = false;
        assert_eq!(title(&plan), "No stop and no caution");
        let left = RuleNamed { code: "OUT-01".into(), title: String::new(), severity: crate::rules::Severity::Stop };
        plan.left.push(left);
        assert_eq!(title(&plan), "Fewer stops");
        plan.proven = true;
        assert_eq!(title(&plan), "Every stop that can be cleared together, for the least");
    }
}
