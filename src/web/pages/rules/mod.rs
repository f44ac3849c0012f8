//! The rule book: looked through by word, family, severity and part.

mod one;
mod own;

pub use one::show_one;

use crate::rules::house::house_number;
use crate::rules::told::{Told, Wanted, find, nearest_words, told, words_of};
use crate::rules::{Severity, families};
use crate::web::access::Staff;
use crate::web::extract::{Asked, escaped};
use crate::web::findings::counted;
use crate::web::frame::{Answer, Frame, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use own::{FAMILY, OwnRule, own_rules};
use std::collections::HashMap;
use std::fmt::Display;

/// The page of the whole book.
#[derive(Template)]
#[template(path = "pages/rules.html")]
struct RulesPage {
    frame: Frame,
    search: Search,
    choices: [Choice; 3],
    /// What came of the search, sentences.
    outcome: Vec<String>,
    /// Words that stand nowhere in the book.
    missing: Vec<Missing>,
    /// The shop's own rules that fit.
    own: Vec<OwnRule>,
    chapters: Vec<Lines>,
}

/// What is looked for, as it was asked.
#[derive(Default, serde::Deserialize)]
pub struct Search {
    #[serde(default)]
    q: String,
    #[serde(default)]
    family: String,
    #[serde(default)]
    severity: String,
    #[serde(default)]
    part: String,
}

/// A menu of the search.
struct Choice {
    name: &'static str,
    label: &'static str,
    all: &'static str,
    chosen: String,
    options: Vec<(&'static str, String)>,
}

/// A word that stands nowhere in the book, with those like it and where each leads.
struct Missing {
    word: String,
    near: Vec<(&'static str, String)>,
}

/// The rules of one chapter.
struct Lines {
    title: &'static str,
    rules: Vec<Line>,
}

/// One rule in the list.
struct Line {
    told: &'static Told,
    fired: String,
}

/// More than anybody looks for.
const LONGEST: usize = 100;

/// `GET /rules`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, Asked(mut search): Asked<Search>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let fired = state.service.fired(&caller).await?;
    search.q = search.q.trim().chars().take(LONGEST).collect();
    let choices = choices(&search);
    let wanted = Wanted {
        words: words_of(&search.q),
        family: choices[0].taken(),
        severity: choices[1].taken().and_then(severity_of),
        part: choices[2].taken(),
    };
    let found = find(&wanted);
    let mut own = own_rules(&state.service.house_rules(&caller).await?, &fired);
    let missing = missing(&wanted, &search, &own);
    let all_own = own.len();
    own.retain(|rule| rule.fits(&wanted));
    page(&RulesPage {
        frame,
        outcome: outcome(&wanted, &choices, [found.len(), own.len(), all_own], missing.is_empty()),
        missing,
        own,
        chapters: lines(&found, &fired),
        choices,
        search,
    })
}

/// Where a rule's code leads: to the book, or to the shop's own rules.
pub fn rule_href(code: impl Display) -> String {
    let code = code.to_string();
    match house_number(&code) {
        Some(nth) => format!("/house-rules/{nth}"),
        None => format!("/rules/{}", escaped(&code)),
    }
}

/// On how many jobs a rule has fired, in words.
fn fired_on(count: Option<&i64>) -> String {
    match count.and_then(|count| usize::try_from(*count).ok()) {
        None | Some(0) => "not fired yet".to_owned(),
        Some(count) => format!("fired on {}", counted(count, "job")),
    }
}

const SEVERITIES: [(Severity, &str); 3] =
    [(Severity::Stop, "Stop"), (Severity::Caution, "Caution"), (Severity::Note, "Note")];

fn severity_of(code: &str) -> Option<Severity> {
    SEVERITIES.into_iter().map(|(severity, _)| severity).find(|severity| severity.code() == code)
}

impl Choice {
    /// The option that was chosen, if there is such an option.
    fn taken(&self) -> Option<&'static str> {
        self.options.iter().map(|(code, _)| *code).find(|code| *code == self.chosen)
    }

    /// What is said of a choice that there is not; empty when all is well.
    fn amiss(&self) -> Option<String> {
        let unknown = !self.chosen.is_empty() && self.taken().is_none();
        unknown.then(|| {
            let given: String = self.chosen.chars().take(LONGEST).collect();
            format!("There is no {} “{given}” in the list, so it was left out.", self.label.to_lowercase())
        })
    }
}

fn choices(search: &Search) -> [Choice; 3] {
    let families = families().iter().map(|(letters, label)| (*letters, format!("{label} ({letters})")));
    let families = families.chain([(FAMILY, format!("Rules of this shop's own ({FAMILY})"))]);
    let severities = SEVERITIES.into_iter().map(|(severity, label)| (severity.code(), label.to_owned()));
    let mut parts: Vec<(&str, String)> =
        told().iter().flat_map(|told| &told.parts).map(|part| (part.group, part.label.to_owned())).collect();
    parts.sort_by(|a, b| a.1.cmp(&b.1));
    parts.dedup();
    let choice = |name, label, all, chosen: &str, options| Choice { name, label, all, chosen: chosen.into(), options };
    [
        choice("family", "Family", "All families", &search.family.to_uppercase(), families.collect()),
        choice("severity", "Severity", "All severities", &search.severity, severities.collect()),
        choice("part", "Part", "All parts", &search.part, parts),
    ]
}

/// What came of the search: how many of the book's rules, of the shop's own, and how many of those there are.
fn outcome(wanted: &Wanted, choices: &[Choice], [found, own, all_own]: [usize; 3], all_known: bool) -> Vec<String> {
    let all = told().len();
    let narrowed = choices.iter().any(|choice| choice.taken().is_some());
    let mut said: Vec<String> = choices.iter().filter_map(Choice::amiss).collect();
    if !narrowed && wanted.words.is_empty() {
        let own = if all_own > 0 { format!(", and {all_own} of this shop's own") } else { String::new() };
        said.push(format!("{all} rules{own}."));
    } else if found + own > 0 {
        let own = if own > 0 { format!(", and {own} of this shop's own") } else { String::new() };
        said.push(format!("Found: {found} of {all} rules{own}."));
    } else if !all_known {
        said.push("No rule fits.".to_owned());
    } else if wanted.words.len() > 1 {
        said.push("Each word stands in the book, but no rule that fits has them all. Take one away.".to_owned());
    } else {
        said.push("No rule fits all of this. Take one choice away.".to_owned());
    }
    said
}

fn missing(wanted: &Wanted, search: &Search, own: &[OwnRule]) -> Vec<Missing> {
    let alone = |word: &String| Wanted { words: vec![word.clone()], ..Wanted::default() };
    let in_own = |word: &String| own.iter().any(|rule| rule.says(word));
    let nowhere = wanted.words.iter().filter(|word| !in_own(word) && find(&alone(word)).is_empty());
    let missing = |word: &String| {
        let instead = |near: &'static str| {
            let words = wanted.words.iter().map(|other| if other == word { near } else { other });
            let words = words.collect::<Vec<_>>().join(" ");
            let rest = [("family", &search.family), ("severity", &search.severity), ("part", &search.part)];
            let rest = rest.into_iter().filter(|(_, value)| !value.is_empty());
            let rest: String = rest.map(|(name, value)| format!("&{name}={}", escaped(value))).collect();
            (near, format!("/rules?q={}{rest}", escaped(&words)))
        };
        Missing { word: word.clone(), near: nearest_words(word).into_iter().map(instead).collect() }
    };
    nowhere.map(missing).collect()
}

fn lines(found: &[&'static Told], fired: &HashMap<String, i64>) -> Vec<Lines> {
    let line = |told: &&'static Told| Line { told, fired: fired_on(fired.get(told.rule.code)) };
    let chapters = found.chunk_by(|a, b| std::ptr::eq(a.chapter, b.chapter));
    chapters.map(|rules| Lines { title: rules[0].chapter.title, rules: rules.iter().map(line).collect() }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::house::house_code;

    #[test]
    fn a_code_leads_to_its_rule_and_a_house_rule_to_its_own_page() {
        assert_eq!(rule_href("CSE-10"), "/rules/CSE-10");
        assert_eq!(rule_href(house_code(3)), "/house-rules/3");
        assert_eq!(rule_href("a/b"), "/rules/a%2Fb");
    }

    #[test]
    fn every_part_of_the_job_can_be_chosen_once() {
        let [families, severities, parts] = choices(&Search::default());
        assert_eq!(families.options.len(), crate::rules::families().len() + 1, "and the shop's own");
        assert_eq!(severities.options.len(), 3);
        let mut names: Vec<_> = parts.options.iter().map(|(group, _)| *group).collect();
        names.sort_unstable();
        let mut all: Vec<_> = crate::job::GROUPS.iter().map(|(group, _)| *group).collect();
        all.sort_unstable();
        assert_eq!(names, all);
    }

    #[test]
    fn a_word_that_stands_nowhere_offers_others_and_keeps_the_rest_of_the_search() {
        let search = Search { q: "bell runuot".into(), severity: "stop".into(), ..Search::default() };
        let wanted = Wanted { words: words_of(&search.q), ..Wanted::default() };
        let missing = missing(&wanted, &search, &[]);
        assert_eq!(missing.len(), 1);
        assert_eq!(missing[0].near[0], ("runout", "/rules?q=bell+runout&severity=stop".to_owned()));
    }
}
