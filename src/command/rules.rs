//! `endplay rules`: the rule book, or one rule whole. What is said stands in [`crate::rules::told`].

use super::wrap::paragraph;
use crate::rules::told::{Difference, LimitTold, Named, Part, Says, Section, Told, limit_told, named};
use crate::rules::{Chapter, LimitId, Limits, chapters};
use std::io::Write;
use std::process::ExitCode;

/// Prints the book, one family or one rule; a code that does not exist is answered with the nearest ones.
pub fn run(code: Option<&str>) -> ExitCode {
    let told = code.map_or_else(|| Ok(book(chapters().iter())), asked);
    // Whoever closed the other end of the pipe has read enough.
    match told {
        Ok(text) => {
            std::io::stdout().write_all(text.as_bytes()).ok();
            ExitCode::SUCCESS
        }
        Err(text) => {
            std::io::stderr().write_all(text.as_bytes()).ok();
            ExitCode::from(2)
        }
    }
}

/// What is said of this code; an error says what to ask for instead.
fn asked(code: &str) -> Result<String, String> {
    let code = code.trim();
    let family: Vec<_> = chapters().iter().filter(|chapter| chapter.family.eq_ignore_ascii_case(code)).collect();
    if !family.is_empty() {
        return Ok(book(family.into_iter()));
    }
    match named(code) {
        Named::Rule(told) => Ok(whole(told)),
        Named::Retired(gone) => {
            let mut out = String::new();
            paragraph(&mut out, &format!("{} is retired: ", gone.code), gone.reason);
            Ok(out)
        }
        Named::House(_) => {
            let text = format!("{code} is a rule of a shop's own. It stands on that shop's pages, under Own rules.");
            Err(text + "\n")
        }
        Named::Nothing(near) => Err(unknown(code, &near)),
    }
}

fn unknown(code: &str, near: &[&str]) -> String {
    let mut out = String::new();
    let hint = if near.is_empty() {
        "\"endplay rules\" lists them all.".to_owned()
    } else {
        format!("The nearest are {}.", near.join(", "))
    };
    paragraph(&mut out, "", &format!("There is no rule \"{code}\". {hint}"));
    out
}

/// These chapters, and the limits their rules use.
fn book<'a>(chapters: impl Iterator<Item = &'a Chapter>) -> String {
    let mut out = String::new();
    let mut limits: Vec<LimitId> = Vec::new();
    for chapter in chapters {
        if !out.is_empty() {
            out.push('\n');
        }
        paragraph(&mut out, "", &format!("{}  {}", chapter.family, chapter.title));
        for rule in chapter.rules {
            paragraph(&mut out, &format!("  {}  {:<8} ", rule.code, rule.severity.code()), rule.title);
            limits.extend(rule.all_limits());
        }
    }
    let used = LimitId::ALL.iter().filter(|limit| limits.contains(limit));
    let used: Vec<_> = used.map(|limit| limit_told(*limit, &Limits::default())).collect();
    if !used.is_empty() {
        out.push_str("\nLimits\n");
    }
    for limit in used {
        paragraph(&mut out, "  ", &format!("{} {}. {}", limit.label, limit.stands, limit.range));
    }
    out
}

fn whole(told: &'static Told) -> String {
    let mut out = String::new();
    paragraph(&mut out, &format!("{}  ", told.rule.code), told.rule.title);
    paragraph(&mut out, "        ", &format!("{}, {}", told.rule.severity.code(), told.asked_about()));
    for Section { heading, says } in told.sections(&Limits::default()) {
        out.push('\n');
        paragraph(&mut out, "  ", &format!("{heading}:"));
        for line in lines(&says) {
            paragraph(&mut out, "    ", &line);
        }
    }
    out
}

fn lines(says: &Says) -> Vec<String> {
    let difference = |Difference { label, path, value }: &Difference| format!("{label}: {value} ({path})");
    match says {
        Says::Words(paragraphs) => paragraphs.clone(),
        Says::Limits(limits) => {
            let line = |limit: &LimitTold| format!("{} {}. {} {}", limit.label, limit.stands, limit.range, limit.means);
            limits.iter().map(line).collect()
        }
        Says::Facts(parts) => {
            let line = |part: &Part| {
                let facts = part.facts.iter().map(|fact| fact.declaration());
                let facts: Vec<_> = facts.map(|said| format!("{} ({})", said.label, said.path)).collect();
                format!("{}: {}", part.label, facts.join(", "))
            };
            parts.iter().map(line).collect()
        }
        Says::Example(changed) => changed.iter().map(difference).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::rules;
    use crate::rules::told::told;

    #[test]
    fn the_book_lists_every_rule_once() {
        let book = book(chapters().iter());
        for rule in rules() {
            assert_eq!(book.matches(rule.code).count(), 1, "{}", rule.code);
        }
    }

    #[test]
    fn one_rule_is_told_whole() {
        for told in told() {
            let (rule, text) = (told.rule, whole(told));
            for heading in ["The shop is told:", "What puts it right:", "Basis:", "Fires on the plain job with:"] {
                assert!(text.contains(heading), "{}: {heading}", rule.code);
            }
            assert!(text.contains(rule.basis.split_whitespace().next().unwrap()), "{}", rule.code);
            for fact in told.parts.iter().flat_map(|part| &part.facts) {
                assert!(text.contains(fact.declaration().path), "{}: {fact:?}", rule.code);
            }
            assert!(text.lines().all(|line| line.chars().count() <= 96), "{}: a line is too wide", rule.code);
        }
        let bell = asked("cse-10").unwrap_or_default();
        assert!(bell.contains("bell bore runout 0.01 in (memory, medium). An owner may set 0.004 to 0.015 in."));
        assert!(bell.contains("Bell bore runout: 0.014 in (bell.runout_in)"));
    }

    #[test]
    fn the_book_ends_with_its_limits_and_their_ranges() {
        let whole = book(chapters().iter());
        assert!(whole.contains("\nLimits\n"));
        for limit in rules().flat_map(|rule| rule.all_limits()) {
            assert!(whole.contains(&format!("  {} ", limit.declaration().label)), "{limit:?}");
        }
        assert!(whole.contains("bell bore runout 0.01 in (memory, medium). An owner may set 0.004 to 0.015 in."));
    }

    #[test]
    fn a_family_is_listed_by_its_letters_and_nothing_else_is() {
        let family = asked("spd").unwrap_or_default();
        assert_eq!(family.matches("SPD-").count(), 7);
        assert!(!family.contains("COL-"));
    }

    #[test]
    fn a_code_that_does_not_exist_is_answered_with_the_nearest() {
        let refused = |code| asked(code).expect_err(code);
        assert!(refused("CSE-13").contains("CSE-1"));
        assert!(refused("whatever").contains("lists them all"));
        assert!(refused("hr-01").contains("Own rules"), "the command line knows no shop");
    }
}
