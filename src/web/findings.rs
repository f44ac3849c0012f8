//! What the rule book says about a job, as a page shows it: what is wrong by severity, each with what it means, what
//! to do and what it rests on; then what cannot be decided yet and what it waits for.

use crate::job::{FactId, Sheet, fact_named};
use crate::plan::steps::{filled_by, filler};
use crate::rules::{Due, LIMIT_USED};
use crate::ticket::{Action, Found, Judgement, Role, Severity, Stage, TicketFacts, Undecided, may};
use askama::Template;
use std::collections::BTreeSet;

/// The findings of a job.
#[derive(Template)]
#[template(path = "parts/findings.html")]
pub struct Findings {
    /// What is wrong, the worst first; severities with nothing in them are left out.
    pub groups: Vec<Group>,
    /// What cannot be decided although the work has come to where it matters.
    pub now: Vec<Waiting>,
    /// What cannot be decided yet and is not asked for before a later stage.
    pub later: Vec<Waiting>,
    /// The facts most checks wait for now, the most wanted first.
    pub wanted: Vec<Wanted>,
    /// Does a rule open beside the page, so that nothing typed is lost?
    pub beside: bool,
}

/// The findings of one severity.
pub struct Group {
    /// Which.
    pub severity: Severity,
    /// Its heading: `2 stops: must be put right first`.
    pub heading: String,
    /// What was found.
    pub items: Vec<Item>,
}

/// One finding.
pub struct Item {
    /// The rule's code.
    pub code: String,
    /// A few words.
    pub title: String,
    /// What it means.
    pub means: String,
    /// What to do.
    pub fix: String,
    /// The limits it was held against, each with its number and mark.
    pub limits: Vec<String>,
    /// Where the knowledge comes from.
    pub basis: String,
    /// Must the customer accept it?
    pub accepts: bool,
    /// What it rests on.
    pub facts: Vec<FactLink>,
    /// Where it can be set aside; empty where it cannot.
    pub aside: String,
    /// What somebody who sets it aside has to be allowed to do.
    set_aside_by: Action,
}

/// One rule that waits.
pub struct Waiting {
    /// The rule's code.
    pub code: String,
    /// What it looks for.
    pub title: String,
    /// The stage that asks for it, in words.
    pub due: String,
    /// What it waits for.
    pub needs: Vec<FactLink>,
}

/// A fact that rules wait for.
pub struct Wanted {
    /// The fact.
    pub fact: FactLink,
    /// How to find it out.
    pub how: &'static str,
    /// How many checks wait for it.
    pub checks: usize,
}

/// A fact with the way to where it is written down.
pub struct FactLink {
    /// What it is called.
    pub label: String,
    /// What is known of it.
    pub value: String,
    /// Where it is written down: another page, a place on this one, or nothing.
    pub href: String,
}

/// From where the findings are looked at, which decides where a fact's name leads.
#[derive(Clone, Copy)]
pub enum From {
    /// The ticket's page.
    Ticket(i64),
    /// The form of one sheet: facts of other sheets lead nowhere, so that nothing typed is lost.
    Form(Sheet),
}

/// How many facts are named as most wanted.
const MOST_WANTED: usize = 6;

impl Findings {
    /// What was said about these facts at this stage.
    pub fn new(judgement: &Judgement, facts: &TicketFacts, stage: Stage, from: From) -> Self {
        let groups = Severity::ALL.iter().filter_map(|severity| group(*severity, judgement, facts, from)).collect();
        let (now, later): (Vec<_>, Vec<_>) =
            judgement.undecided.iter().partition(|undecided| stage.asks_for(&undecided.due));
        let waiting = |all: &[&Undecided]| all.iter().map(|one| waiting(one, facts, from)).collect();
        let beside = matches!(from, From::Form(_));
        Self { groups, now: waiting(&now), later: waiting(&later), wanted: wanted(&now, facts, from), beside }
    }

    /// The same with a way to set aside what a person of this role may.
    #[must_use]
    pub fn offering_aside(mut self, ticket: i64, role: Role) -> Self {
        for item in self.groups.iter_mut().flat_map(|group| &mut group.items) {
            if may(role, item.set_aside_by) {
                item.aside = format!("/tickets/{ticket}/aside/{}", item.code);
            }
        }
        self
    }

    /// Is there nothing to say at all?
    pub fn is_clear(&self) -> bool {
        self.groups.is_empty() && self.now.is_empty() && self.later.is_empty()
    }

    /// Is there a stop or a caution, about which something might be done?
    pub fn could_be_cleared(&self) -> bool {
        self.groups.iter().any(|group| group.severity != Severity::Note)
    }

    /// All of it in one line, for whoever cannot see it change.
    pub fn summary(&self) -> String {
        let count =
            |severity| self.groups.iter().find(|group| group.severity == severity).map_or(0, |group| group.items.len());
        format!(
            "{}, {}, {}; {} cannot be decided yet and should be now.",
            counted(count(Severity::Stop), "stop"),
            counted(count(Severity::Caution), "caution"),
            counted(count(Severity::Note), "note"),
            counted(self.now.len(), "check")
        )
    }
}

/// How many checks at this stage wait for each fact.
pub fn waited_for(judgement: &Judgement, stage: Stage, fact: FactId) -> usize {
    let path = fact.declaration().path;
    judgement
        .undecided
        .iter()
        .filter(|undecided| stage.asks_for(&undecided.due) && undecided.needs.iter().any(|need| need == path))
        .count()
}

/// How many facts the checks at this stage wait for that somebody has to be asked for.
pub fn wanted_facts(judgement: &Judgement, stage: Stage) -> usize {
    let due = judgement.undecided.iter().filter(|undecided| stage.asks_for(&undecided.due));
    let facts: BTreeSet<_> = due.flat_map(|undecided| &undecided.needs).filter_map(|path| fact_named(path)).collect();
    facts.into_iter().filter(|fact| filler(*fact).is_none()).count()
}

fn group(severity: Severity, judgement: &Judgement, facts: &TicketFacts, from: From) -> Option<Group> {
    let items: Vec<_> = judgement.of(severity).map(|found| item(found, facts, from)).collect();
    if items.is_empty() {
        return None;
    }
    let (word, meaning) = match severity {
        Severity::Stop => ("stop", "put right before the work goes on"),
        Severity::Caution => ("caution", "works, if somebody accepts what comes with it"),
        Severity::Note => ("note", "good to know"),
    };
    Some(Group { severity, heading: format!("{}: {meaning}", counted(items.len(), word)), items })
}

fn item(found: &Found, facts: &TicketFacts, from: From) -> Item {
    // What is kept is one paragraph: the words of its day.
    let mut parts = found.basis.split(LIMIT_USED).map(|part| part.trim().to_owned());
    let basis = parts.next().unwrap_or_default();
    Item {
        limits: parts.collect(),
        code: found.code.clone(),
        title: found.title.clone(),
        means: found.shop.clone(),
        fix: found.fix.clone(),
        basis,
        accepts: found.customer_accepts,
        aside: String::new(),
        set_aside_by: found.set_aside_by(),
        facts: found.facts.iter().map(|path| fact_link(path, facts, from)).collect(),
    }
}

fn waiting(undecided: &Undecided, facts: &TicketFacts, from: From) -> Waiting {
    Waiting {
        code: undecided.code.clone(),
        title: undecided.title().to_owned(),
        due: Due::label_of(&undecided.due).to_owned(),
        needs: undecided.needs.iter().map(|path| fact_link(path, facts, from)).collect(),
    }
}

fn wanted(now: &[&Undecided], facts: &TicketFacts, from: From) -> Vec<Wanted> {
    let mut counts: Vec<(&str, usize)> = Vec::new();
    for need in now.iter().flat_map(|undecided| &undecided.needs) {
        match counts.iter_mut().find(|(path, _)| path == need) {
            Some((_, count)) => *count += 1,
            None => counts.push((need, 1)),
        }
    }
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    counts
        .into_iter()
        .filter_map(|(path, checks)| {
            let how = fact_named(path)?.declaration().how;
            Some(Wanted { fact: fact_link(path, facts, from), how, checks })
        })
        .take(MOST_WANTED)
        .collect()
}

/// A fact by its path, with the way to where it is written down.
pub fn fact_link(path: &str, facts: &TicketFacts, from: From) -> FactLink {
    let Some(fact) = fact_named(path) else {
        return FactLink { label: path.to_owned(), value: String::new(), href: String::new() };
    };
    let declaration = fact.declaration();
    let href = match from {
        From::Ticket(number) if filled_by(fact).is_some() => format!("/tickets/{number}/steps"),
        From::Ticket(number) if filler(fact).is_some() => format!("/tickets/{number}#customer"),
        From::Form(_) if filler(fact).is_some() => String::new(),
        From::Ticket(number) => format!("/tickets/{number}/facts/{}#f.{path}", declaration.sheet.code()),
        From::Form(sheet) if sheet == declaration.sheet => format!("#f.{path}"),
        From::Form(_) => String::new(),
    };
    FactLink { label: declaration.label.to_owned(), value: facts.words(fact), href }
}

/// `1 stop`, `2 stops`.
pub fn counted(count: usize, word: &str) -> String {
    if count == 1 { format!("1 {word}") } else { format!("{count} {word}s") }
}
