//! What is told of a rule to people: on the pages of the rule book and by `endplay rules`, from here alone.

mod search;

pub use search::{Wanted, find, nearest_words, words_of};

use super::book::{Chapter, Retired, chapters, nearest_codes, retired};
use super::house::house_number;
use super::limits::{LimitId, Limits};
use super::rule::Rule;
use crate::job::{FactId, Job, fact_ids, group_label};
use std::sync::LazyLock;

/// One rule with its place in the book and what can be worked out about it once and for all.
#[derive(Debug)]
pub struct Told {
    /// The rule.
    pub rule: &'static Rule,
    /// The chapter it stands in.
    pub chapter: &'static Chapter,
    /// The facts it touches, by part.
    pub parts: Vec<Part>,
    /// What makes the plain job fire it.
    pub fires: Vec<Difference>,
    /// What puts the same corner right.
    pub clears: Vec<Difference>,
    /// Everything that is said of it, in small letters.
    words: String,
}

/// A part of the unit or the job that a rule looks at: a group of facts.
#[derive(Debug)]
pub struct Part {
    /// The group's name in the job file.
    pub group: &'static str,
    /// What people call it.
    pub label: &'static str,
    /// The facts of it that the rule touches.
    pub facts: Vec<FactId>,
}

/// A fact that an example has otherwise than the plain job.
#[derive(Debug)]
pub struct Difference {
    /// What the fact is called.
    pub label: &'static str,
    /// What the job file calls it.
    pub path: &'static str,
    /// What it is in the example.
    pub value: String,
}

/// One thing said about a rule, under its heading.
#[derive(Debug)]
pub struct Section {
    /// The heading.
    pub heading: &'static str,
    /// What stands under it.
    pub says: Says,
}

/// What stands under a heading.
#[derive(Debug)]
pub enum Says {
    /// Paragraphs.
    Words(Vec<String>),
    /// Limits as a shop has them.
    Limits(Vec<LimitTold>),
    /// Facts by part.
    Facts(&'static [Part]),
    /// An example.
    Example(&'static [Difference]),
}

/// A limit as a shop has it, in words.
#[derive(Debug)]
pub struct LimitTold {
    /// Which.
    pub limit: LimitId,
    /// What it is called.
    pub label: &'static str,
    /// The number with its mark: `0.01 in (memory, medium)`.
    pub stands: String,
    /// How far an owner may move it, a sentence.
    pub range: String,
    /// What it means.
    pub means: &'static str,
}

/// What a code stands for.
#[derive(Debug)]
pub enum Named {
    /// A rule of the book.
    Rule(&'static Told),
    /// A rule that was taken out.
    Retired(&'static Retired),
    /// The shop's own rule of this number.
    House(i32),
    /// Nothing; these codes are the nearest.
    Nothing(Vec<&'static str>),
}

/// What this code stands for, however it is spelled.
pub fn named(code: &str) -> Named {
    let code = code.trim();
    if let Some(told) = told().iter().find(|told| told.rule.code.eq_ignore_ascii_case(code)) {
        return Named::Rule(told);
    }
    if let Some(gone) = retired().iter().find(|gone| gone.code.eq_ignore_ascii_case(code)) {
        return Named::Retired(gone);
    }
    house_number(code).map_or_else(|| Named::Nothing(nearest_codes(code)), Named::House)
}

/// Every rule in the book's order.
pub fn told() -> &'static [Told] {
    static ALL: LazyLock<Vec<Told>> = LazyLock::new(|| {
        let all = chapters().iter().flat_map(|chapter| chapter.rules.iter().map(move |rule| (chapter, rule)));
        all.map(|(chapter, rule)| Told::of(chapter, rule)).collect()
    });
    &ALL
}

/// This limit as a shop has it.
pub fn limit_told(limit: LimitId, limits: &Limits) -> LimitTold {
    let said = limit.declaration();
    let range = match limit.range_in_words() {
        Some(range) => format!("An owner may set {range}."),
        None => "It cannot be moved.".to_owned(),
    };
    LimitTold { limit, label: said.label, stands: limits.used(limit).in_words(), range, means: said.doc.trim() }
}

impl Told {
    fn of(chapter: &'static Chapter, rule: &'static Rule) -> Self {
        let (example, counter_example) = (rule.example(), rule.counter_example());
        let parts = parts(rule, [&Job::unknown(), &example, &counter_example]);
        let words = search::everything_said(chapter, rule, &parts);
        Self { rule, chapter, parts, fires: differences(&example), clears: differences(&counter_example), words }
    }

    /// When an open verdict begins to be asked about, and whether the customer has a say.
    pub fn asked_about(&self) -> String {
        let accepts = if self.rule.customer_accepts { "; the customer has to accept it" } else { "" };
        format!("asked about from {} on{accepts}", self.rule.due.label())
    }

    /// All that is said about it, in order, with the limits of this shop.
    pub fn sections(&'static self, limits: &Limits) -> Vec<Section> {
        let rule = self.rule;
        let mut checks = rule.paragraphs();
        let why = checks.split_off(checks.len().min(1));
        let mut customer = vec![rule.customer.unwrap_or("Nothing; this is the bench's business.").to_owned()];
        if rule.customer_accepts {
            customer.push("They have to accept it with a tick of its own.".to_owned());
        }
        let plain = "A harmless unit in a harmless car, made up for examples. \
                     What an example does not name is as it is there.";
        let clears = match &self.clears[..] {
            [] => Says::Words(vec!["Nothing changed: the plain job itself is clear of it.".to_owned()]),
            changed => Says::Example(changed),
        };
        let numbers = rule.numbers.iter().map(|number| number.declaration());
        let numbers = numbers.map(|said| format!("{} ({})", said.doc.trim(), said.path)).collect();
        let limits = rule.all_limits().into_iter().map(|limit| limit_told(limit, limits)).collect();
        let sections = [
            ("What it checks", Says::Words(checks)),
            ("Why it matters", Says::Words(why)),
            ("The shop is told", Says::Words(vec![rule.shop.to_owned()])),
            ("What puts it right", Says::Words(vec![rule.fix.to_owned()])),
            ("The customer is told", Says::Words(customer)),
            ("Basis", Says::Words(vec![rule.basis.to_owned()])),
            ("Limits", Says::Limits(limits)),
            ("Numbers it works out", Says::Words(numbers)),
            ("Facts it asks about", Says::Facts(&self.parts)),
            ("Fires on the plain job with", Says::Example(&self.fires)),
            ("Does not fire on the plain job with", clears),
            ("The plain job", Says::Words(vec![plain.to_owned()])),
        ];
        let told = sections.into_iter().filter(|(_, says)| says.says_anything());
        told.map(|(heading, says)| Section { heading, says }).collect()
    }
}

impl Says {
    /// Is there anything to say?
    fn says_anything(&self) -> bool {
        match self {
            Self::Words(paragraphs) => !paragraphs.is_empty(),
            Self::Limits(limits) => !limits.is_empty(),
            Self::Facts(parts) => !parts.is_empty(),
            Self::Example(changed) => !changed.is_empty(),
        }
    }
}

/// What sets a job apart from the plain one.
fn differences(job: &Job) -> Vec<Difference> {
    let plain = Job::plain();
    let changed = fact_ids().filter(|fact| job.slot(*fact).json() != plain.slot(*fact).json());
    let difference = |fact: FactId| Difference {
        label: fact.declaration().label,
        path: fact.declaration().path,
        value: job.say(fact).unwrap_or_else(|| "not known".to_owned()),
    };
    changed.map(difference).collect()
}

/// Every fact that these jobs show the rule to touch, by part.
fn parts(rule: &Rule, jobs: [&Job; 3]) -> Vec<Part> {
    let limits = Limits::default();
    let touched = jobs.map(|job| rule.verdict(job, &limits).facts());
    let touched: Vec<FactId> = touched[0].with(touched[1]).with(touched[2]).iter().collect();
    let same = |a: &FactId, b: &FactId| a.declaration().group() == b.declaration().group();
    let part = |facts: &[FactId]| {
        let group = facts[0].declaration().group();
        Part { group, label: group_label(group), facts: facts.to_vec() }
    };
    touched.chunk_by(same).map(part).collect()
}

#[cfg(test)]
mod tests;
