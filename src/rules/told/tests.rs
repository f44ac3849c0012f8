use super::*;
use crate::rules::{Severity, families, rules};

fn codes(wanted: &Wanted) -> Vec<&'static str> {
    find(wanted).into_iter().map(|told| told.rule.code).collect()
}

fn by_words(typed: &str) -> Vec<&'static str> {
    codes(&Wanted { words: words_of(typed), ..Wanted::default() })
}

#[test]
fn every_rule_is_found_by_its_code_its_title_its_family_its_severity_and_each_of_its_parts() {
    assert_eq!(codes(&Wanted::default()), rules().map(|rule| rule.code).collect::<Vec<_>>());
    for told in told() {
        let Rule { code, title, severity, .. } = *told.rule;
        assert!(by_words(code).contains(&code) && by_words(&code.to_lowercase()).contains(&code), "{code}");
        assert!(by_words(&title.to_uppercase()).contains(&code), "{code} by the words of its title");
        assert!(!told.parts.is_empty(), "{code} looks at nothing");
        for part in &told.parts {
            let whole = Wanted {
                words: words_of(title),
                family: Some(told.rule.family()),
                severity: Some(severity),
                part: Some(part.group),
            };
            assert!(codes(&whole).contains(&code), "{code} by {}", part.group);
            for fact in &part.facts {
                assert!(by_words(fact.declaration().label).contains(&code), "{code} by {fact:?}");
            }
        }
    }
}

#[test]
fn what_is_wanted_leaves_out_whatever_does_not_fit() {
    let only = |wanted: Wanted, fits: fn(&Rule) -> bool| {
        let found = find(&wanted);
        assert!(!found.is_empty() && found.len() < told().len(), "{wanted:?}");
        assert_eq!(found.iter().filter(|told| fits(told.rule)).count(), found.len(), "{wanted:?}");
        assert_eq!(rules().filter(|rule| fits(rule)).count(), found.len(), "{wanted:?}");
    };
    only(Wanted { family: Some("SPD"), ..Wanted::default() }, |rule| rule.family() == "SPD");
    only(Wanted { severity: Some(Severity::Stop), ..Wanted::default() }, |rule| rule.severity == Severity::Stop);
    let yoke = find(&Wanted { part: Some("yoke"), ..Wanted::default() });
    assert!(!yoke.is_empty() && yoke.len() < told().len());
    assert!(yoke.iter().all(|told| told.parts.iter().any(|part| part.group == "yoke")));
    assert!(by_words("cse-10 spd-01").is_empty(), "all words have to stand in one rule");
    assert!(by_words("xyzzy").is_empty());
}

#[test]
fn a_word_that_stands_nowhere_leads_to_the_near_ones() {
    assert_eq!(nearest_words("runuot").first(), Some(&"runout"));
    assert_eq!(nearest_words("convertor").first(), Some(&"converter"));
    assert_eq!(nearest_words("thr01").first(), Some(&"thr-01"));
    assert!(nearest_words("xyzzyxyzzy").is_empty());
    assert_eq!(words_of(" “Bell”, (RUNOUT)  -- 0.010 "), ["bell", "runout", "0.010"]);
}

#[test]
fn a_code_leads_to_its_rule_to_the_shops_own_or_to_the_near_ones() {
    assert!(matches!(named(" cse-10 "), Named::Rule(told) if told.rule.code == "CSE-10"));
    assert!(matches!(named("hr-07"), Named::House(7)));
    assert!(matches!(named("thr01"), Named::Nothing(near) if near.first() == Some(&"THR-01")));
    assert!(matches!(named("something else"), Named::Nothing(near) if near.is_empty()));
    for other in ["HR-00", "HR-", "HR--1", "HR-x", "HR-99999999999"] {
        assert!(matches!(named(other), Named::Nothing(_)), "{other}");
    }
    for gone in retired() {
        assert!(matches!(named(gone.code), Named::Retired(told) if told.code == gone.code));
    }
}

#[test]
fn every_rule_is_told_whole_with_an_example_of_either_kind() {
    for told in told() {
        let sections = told.sections(&Limits::default());
        let headings: Vec<_> = sections.iter().map(|section| section.heading).collect();
        for heading in ["What it checks", "The shop is told", "What puts it right", "The customer is told", "Basis"] {
            assert!(headings.contains(&heading), "{}: {heading}", told.rule.code);
        }
        assert!(!told.fires.is_empty(), "{} fires on the plain job itself", told.rule.code);
        assert_eq!(headings.contains(&"Limits"), !told.rule.all_limits().is_empty(), "{}", told.rule.code);
    }
    let Named::Rule(bell) = named("CSE-10") else { panic!("the bell bore has a rule") };
    let runout = bell.fires.iter().find(|changed| changed.path == "bell.runout_in").expect("what fires it");
    assert_eq!((runout.label, runout.value.as_str()), ("Bell bore runout", "0.014 in"));
    assert_eq!(bell.parts.iter().map(|part| part.label).collect::<Vec<_>>(), ["Bell"]);
}

#[test]
fn a_limit_is_told_as_the_shop_has_it_with_its_range() {
    let mut limits = Limits::default();
    let told = limit_told(LimitId::bell_runout, &limits);
    assert_eq!(told.stands, "0.01 in (memory, medium)");
    assert_eq!(told.range, "An owner may set 0.004 to 0.015 in.");
    limits.set(LimitId::bell_runout, 0.008).expect("within its range");
    let moved = limit_told(LimitId::bell_runout, &limits);
    assert_eq!(moved.stands, "0.008 in (set by this shop; 0.01 in as supplied: memory, medium)");
    let fixed = LimitId::ALL.iter().find(|limit| limit.range_in_words().is_none());
    assert!(fixed.is_none_or(|limit| limit_told(*limit, &limits).range == "It cannot be moved."));
}

#[test]
fn every_family_has_a_name_and_rules() {
    for (letters, label) in families() {
        assert!(rules().any(|rule| rule.family() == *letters), "{letters}");
        assert!(label.starts_with(char::is_uppercase), "{label}");
    }
    assert!(rules().all(|rule| families().iter().any(|(letters, _)| *letters == rule.family())));
}
