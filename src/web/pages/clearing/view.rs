//! One plan as the page shows it.

use crate::plan::clearing::{Change, Impossible, Offer, Plan, RuleNamed};
use crate::plan::levers::Undo;
use crate::ticket::{NOT_KNOWN, TicketFacts, in_words};
use crate::web::findings::counted;

/// A plan beside the others.
pub struct PlanCard {
    pub title: &'static str,
    pub cost: String,
    pub labour: String,
    /// What of it cannot be undone, in a sentence.
    pub lasting: String,
    pub proven: bool,
    pub changes: Vec<ChangeCard>,
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

/// A stop that nothing here clears.
pub struct Stuck {
    pub rule: RuleNamed,
    /// Do facts that nothing changes make it so? If not, each way out brings another stop.
    pub fixed: bool,
    /// The facts: label and value.
    pub facts: Vec<(&'static str, String)>,
}

impl PlanCard {
    pub fn new(plan: &Plan, facts: &TicketFacts) -> Self {
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
        let written = |value: &Option<serde_json::Value>, fact: crate::job::FactId| match value {
            Some(value) => in_words(fact.declaration(), value),
            None => "blank, to be measured, tried or signed".to_owned(),
        };
        Self {
            title: title(plan),
            cost: plan.cost.to_string(),
            labour: hours(plan.minutes),
            lasting,
            proven: plan.proven,
            changes: plan.changes.iter().map(ChangeCard::new).collect(),
            left: plan.left.clone(),
            brought: plan.brought.clone(),
            to_do: plan.to_do.iter().map(|fact| fact.declaration().label).collect(),
            until: plan.until.clone(),
            waits: match plan.opened.len() {
                0 => String::new(),
                1 => "1 check is then not decided until it is.".to_owned(),
                checks => format!("{checks} checks are then not decided until it is."),
            },
            writes: plan
                .edits
                .iter()
                .map(|(fact, value)| (fact.declaration().label, facts.words(*fact), written(value, *fact)))
                .collect(),
            levers: plan.codes().join(" "),
            priced: plan.changes.iter().filter(|change| change.cost.0 > 0).count(),
        }
    }
}

/// What a plan promises, as a heading.
fn title(plan: &Plan) -> &'static str {
    match (plan.offer, plan.leaves_a_stop(), plan.left.is_empty()) {
        (Offer::NoStop, _, true) => "No stop and no caution, for the least",
        (Offer::NoStop, false, _) => "No stop, for the least",
        (Offer::NoStop, true, _) => "Every stop that can be cleared, for the least",
        (Offer::NoCaution, false, true) => "No stop and no caution",
        (Offer::NoCaution, ..) => "As few stops and cautions as can be",
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
        let fixed = !stop.because.is_empty();
        let shown = if fixed { stop.because } else { stop.rests_on };
        let fact = |fact: crate::job::FactId| (fact.declaration().label, facts.words(fact));
        let facts = shown.iter().map(fact).filter(|(_, value)| value != NOT_KNOWN).collect();
        Self { rule: stop.rule.clone(), fixed, facts }
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
    use crate::plan::levers::Prices;
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
        let card = PlanCard::new(&clearing.plans[0], &TicketFacts::default());
        assert_eq!(card.title, "No stop and no caution");
        assert_eq!(card.lasting, "Everything in it can be undone.");
        assert_eq!(card.to_do, ["Bell bore runout"]);
        assert_eq!(card.waits, "1 check is then not decided until it is.");
        assert_eq!(card.levers, "bell-offset-dowels");
    }
}
