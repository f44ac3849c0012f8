//! The list as the page shows it: the first question big, the others with what they would decide.

use super::form::{Aside, no_counts};
use crate::job::{Declaration, FactId, FactSet};
use crate::plan::counter_question;
use crate::plan::next::{self, Decides, Next, NextQuestion, Turn};
use crate::plan::steps::Filler;
use crate::rules::{Due, Severity};
use crate::service::TicketPage;
use crate::ticket::Stage;
use crate::web::extract::escaped;
use crate::web::findings::counted;
use crate::web::form::FormState;
use crate::web::pages::questions;

/// How many further questions are in sight at once.
const IN_SIGHT: usize = 6;

/// The question that is asked.
pub struct First {
    /// As a form asks it.
    pub asked: questions::Asked,
    /// What it would decide.
    pub item: Item,
    /// Where "cannot be known yet" leads.
    pub skip: String,
}

/// What else there is.
pub struct Lists {
    /// To be asked after it, in order.
    pub then: Vec<Item>,
    /// What comes after those.
    pub more: Vec<Item>,
    /// Put aside for now.
    pub aside: Vec<Item>,
    /// What waits for its turn.
    pub later: Vec<Item>,
    /// What the shop's records fill in.
    pub filled: Vec<Item>,
    /// How many due checks are open, in words.
    pub open: String,
}

/// One question of the list.
pub struct Item {
    /// The question.
    pub words: &'static str,
    /// How to find out.
    pub how: &'static str,
    /// What it helps to decide, in one line.
    pub helps: String,
    /// Why it is not asked now; empty when it is.
    pub why_later: String,
    /// The checks that wait for it.
    pub checks: Vec<Check>,
    /// Where it is asked at once; empty when it cannot be.
    pub href: String,
}

/// One check that waits for a question.
pub struct Check {
    /// `stop`, `caution` or `note`.
    pub severity: &'static str,
    /// A few words.
    pub title: String,
    /// The rule's code.
    pub code: String,
    /// What else it takes.
    pub takes: String,
}

/// The list for a ticket; `first` is asked first whatever its place.
pub fn lists(ticket: &TicketPage, form: &FormState, aside: &Aside, first: Option<FactId>) -> (Option<First>, Lists) {
    let (number, stage) = (ticket.ticket.number, ticket.ticket.stage);
    let contents = &ticket.revision.contents;
    let next = next_of(ticket);
    let item = |question: &NextQuestion<'_>| Item {
        why_later: match question.turn {
            Turn::Now => "",
            Turn::AfterAnother => "Another answer may make this needless.",
            Turn::OnceApart => "It can be seen once the unit is apart.",
        }
        .to_owned(),
        href: address(number, aside, Some(question.fact)),
        ..item(question.fact, &question.decides)
    };
    let open = counted(next.open, "check");
    let Next { questions, filled, .. } = next;
    let asks = |question: &&NextQuestion<'_>| question.turn == Turn::Now;
    let mut ordered: Vec<&NextQuestion<'_>> = questions.iter().filter(asks).collect();
    // Those put aside stand last, in the order they were put aside.
    ordered.sort_by_key(|question| aside.place(question.fact).map_or(0, |place| place + 1));
    let is_listed = |fact: FactId| questions.iter().any(|question| question.fact == fact);
    let wanted = first.filter(|fact| form.is_wrong() || contents.facts.value(*fact).is_none() || is_listed(*fact));
    let fact = wanted.or_else(|| ordered.first().map(|question| question.fact));
    let first = fact.map(|fact| {
        let question = questions.iter().find(|question| question.fact == fact);
        let words = words_of(fact);
        let asked = questions::Asked::new(words, fact, form, contents, no_counts(fact, stage));
        let asked = asked.without_a_usual_source(form);
        let item = question.map_or_else(|| self::item(fact, &[]), item);
        First { asked, item, skip: address(number, &aside.and(fact), None) }
    });
    let others = |kept: &dyn Fn(&NextQuestion<'_>) -> bool| {
        let fitting = ordered.iter().filter(|question| Some(question.fact) != fact && kept(question));
        fitting.map(|question| item(question)).collect::<Vec<_>>()
    };
    let mut then = others(&|question| aside.place(question.fact).is_none());
    let more = then.split_off(then.len().min(IN_SIGHT));
    let lists = Lists {
        then,
        more,
        aside: others(&|question| aside.place(question.fact).is_some()),
        later: questions.iter().filter(|one| !asks(one) && Some(one.fact) != fact).map(item).collect(),
        filled: filled
            .iter()
            .map(|filled| Item {
                why_later: match filled.from {
                    Filler::Log(step) => {
                        format!("It comes from the step log, by the step {}: {}.", step.code, step.title)
                    }
                    Filler::Papers => "It follows from the job's own versions, prices and signatures.".to_owned(),
                },
                ..self::item(filled.fact, &filled.decides)
            })
            .collect(),
        open,
    };
    (first, lists)
}

/// What to ask about a ticket at its stage, by the shop's own book.
fn next_of(ticket: &TicketPage) -> Next<'_> {
    let stage = ticket.ticket.stage;
    let asks_for = |due: Due| stage.asks_for(due.code());
    let at = next::At { asks_for: &asks_for, apart: stage >= Stage::Teardown };
    next::next(ticket.revision.contents.facts.job(), &ticket.book.limits, &ticket.book.house, at)
}

/// Where a fact's sheet is.
pub fn sheet_address(number: i64, declaration: &Declaration) -> String {
    format!("/tickets/{number}/facts/{}#f.{}", declaration.sheet.code(), declaration.path)
}

fn address(number: i64, aside: &Aside, first: Option<FactId>) -> String {
    let first = first.map_or_else(String::new, |fact| format!("&first={}", fact.declaration().path));
    format!("/tickets/{number}/next?skip={}{first}", escaped(&aside.text()))
}

fn words_of(fact: FactId) -> &'static str {
    counter_question(fact).map_or(fact.declaration().label, |question| question.words)
}

fn item(fact: FactId, decides: &[Decides<'_>]) -> Item {
    Item {
        words: words_of(fact),
        how: fact.declaration().how,
        helps: helps(decides),
        why_later: String::new(),
        checks: decides.iter().map(check).collect(),
        href: String::new(),
    }
}

fn check(decides: &Decides<'_>) -> Check {
    let takes = match (decides.with.is_empty(), decides.may_settle_alone) {
        (true, _) => "This answer decides it.".to_owned(),
        (false, true) => format!("The answer may decide it alone; if not, it also takes: {}.", labels(decides.with)),
        (false, false) => format!("It also takes: {}.", labels(decides.with)),
    };
    let check = decides.check;
    Check { severity: check.severity().code(), title: check.title().to_owned(), code: check.code().to_owned(), takes }
}

fn labels(facts: FactSet) -> String {
    facts.iter().map(|fact| fact.declaration().label).collect::<Vec<_>>().join("; ")
}

/// `Helps to decide 2 stops, 1 caution.`
fn helps(decides: &[Decides<'_>]) -> String {
    let count = |severity: Severity| decides.iter().filter(|one| one.check.severity() == severity).count();
    let counts = [Severity::Stop, Severity::Caution, Severity::Note].map(|severity| (count(severity), severity.code()));
    let told: Vec<String> =
        counts.iter().filter(|(count, _)| *count > 0).map(|(count, word)| counted(*count, word)).collect();
    if told.is_empty() {
        "No check that is due waits for it.".to_owned()
    } else {
        format!("Helps to decide: {}.", told.join(", "))
    }
}
