//! `endplay rules`: the rule book, or one rule whole.

use super::wrap::paragraph;
use crate::job::Job;
use crate::rules::{Chapter, LimitId, Rule, chapters, nearest_codes, retired, rule_named};
use std::io::Write;
use std::process::ExitCode;

/// Prints the book, one family or one rule; a code that does not exist is answered with the nearest ones.
pub fn run(code: Option<&str>) -> ExitCode {
    let (text, found) = match code {
        None => (book(chapters().iter()), true),
        Some(code) => match asked(code) {
            Some(text) => (text, true),
            None => (unknown(code), false),
        },
    };
    if found {
        // Whoever closed the other end of the pipe has read enough.
        std::io::stdout().write_all(text.as_bytes()).ok();
        ExitCode::SUCCESS
    } else {
        std::io::stderr().write_all(text.as_bytes()).ok();
        ExitCode::from(2)
    }
}

fn asked(code: &str) -> Option<String> {
    if let Some(rule) = rule_named(code) {
        return Some(whole(rule));
    }
    if let Some(gone) = retired().iter().find(|gone| gone.code.eq_ignore_ascii_case(code.trim())) {
        let mut out = String::new();
        paragraph(&mut out, &format!("{} is retired: ", gone.code), gone.reason);
        return Some(out);
    }
    let family: Vec<_> = chapters().iter().filter(|chapter| chapter.family.eq_ignore_ascii_case(code.trim())).collect();
    (!family.is_empty()).then(|| book(family.into_iter()))
}

fn unknown(code: &str) -> String {
    let near = nearest_codes(code);
    let mut out = String::new();
    let hint = if near.is_empty() {
        "\"endplay rules\" lists them all.".to_owned()
    } else {
        format!("The nearest are {}.", near.join(", "))
    };
    paragraph(&mut out, "", &format!("There is no rule \"{}\". {hint}", code.trim()));
    out
}

fn book<'a>(chapters: impl Iterator<Item = &'a Chapter>) -> String {
    let mut out = String::new();
    for chapter in chapters {
        if !out.is_empty() {
            out.push('\n');
        }
        paragraph(&mut out, "", &format!("{}  {}", chapter.family, chapter.title));
        for rule in chapter.rules {
            paragraph(&mut out, &format!("  {}  {:<8} ", rule.code, rule.severity.code()), rule.title);
        }
    }
    out
}

fn whole(rule: &Rule) -> String {
    let mut out = String::new();
    paragraph(&mut out, &format!("{}  ", rule.code), rule.title);
    let accepts = if rule.customer_accepts { "; the customer has to accept it" } else { "" };
    let asked = format!("{}, asked about from {} on{accepts}", rule.severity.code(), rule.due.code());
    paragraph(&mut out, "        ", &asked);
    for text in rule.paragraphs() {
        out.push('\n');
        paragraph(&mut out, "  ", &text);
    }
    out.push('\n');
    paragraph(&mut out, "  The shop is told:      ", rule.shop);
    paragraph(&mut out, "  The customer is told:  ", rule.customer.unwrap_or("Nothing; this is the bench's business."));
    paragraph(&mut out, "  What puts it right:    ", rule.fix);
    paragraph(&mut out, "  Basis:                 ", rule.basis);
    let limits = rule.all_limits();
    if !limits.is_empty() {
        out.push_str("\n  Limits:\n");
        for limit in limits {
            paragraph(&mut out, "    ", &limit_told(limit));
        }
    }
    out.push('\n');
    paragraph(&mut out, "  Fires on the plain job with:          ", &changes(&rule.example()));
    paragraph(&mut out, "  Does not fire on the plain job with:  ", &changes(&rule.counter_example()));
    out
}

fn limit_told(limit: LimitId) -> String {
    let said = limit.declaration();
    let unit = if said.unit.is_empty() { String::new() } else { format!(" {}", said.unit) };
    let (low, high) = said.range;
    let range =
        if low == high { "cannot be moved".to_owned() } else { format!("an owner may set {low} to {high}{unit}") };
    format!("{} {}{unit} ({}; {range}). {}", said.label, said.default, said.mark, said.doc.trim())
}

/// What sets a job apart from the plain one.
fn changes(job: &Job) -> String {
    let plain = Job::plain();
    let changed: Vec<_> = crate::job::fact_ids()
        .filter(|fact| job.slot(*fact).json() != plain.slot(*fact).json())
        .map(|fact| format!("{} {}", fact.declaration().path, job.say(fact).unwrap_or_else(|| "unknown".to_owned())))
        .collect();
    if changed.is_empty() { "nothing changed".to_owned() } else { changed.join(", ") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::rules;

    #[test]
    fn the_book_lists_every_rule_once() {
        let book = book(chapters().iter());
        for rule in rules() {
            assert_eq!(book.matches(rule.code).count(), 1, "{}", rule.code);
        }
    }

    #[test]
    fn one_rule_is_told_whole() {
        for rule in rules() {
            let text = whole(rule);
            for heading in ["The shop is told:", "What puts it right:", "Basis:", "Fires on the plain job with:"] {
                assert!(text.contains(heading), "{}: {heading}", rule.code);
            }
            assert!(!text.lines().any(|line| line.starts_with("  Fires") && line.ends_with("nothing changed")));
            assert!(text.lines().all(|line| line.chars().count() <= 96), "{}: a line is too wide", rule.code);
        }
        let bell = asked("cse-10").unwrap_or_default();
        assert!(bell.contains("bell bore runout 0.01 in (memory, medium; an owner may set 0.004 to 0.015 in)"));
        assert!(bell.contains("bell.runout_in 0.014 in"));
    }

    #[test]
    fn a_family_is_listed_by_its_letters_and_nothing_else_is() {
        let family = asked("spd").unwrap_or_default();
        assert_eq!(family.matches("SPD-").count(), 7);
        assert!(!family.contains("COL-"));
    }

    #[test]
    fn a_code_that_does_not_exist_is_answered_with_the_nearest() {
        assert!(asked("CSE-13").is_none());
        assert!(unknown("CSE-13").contains("CSE-1"));
        assert!(unknown("whatever").contains("lists them all"));
    }
}
