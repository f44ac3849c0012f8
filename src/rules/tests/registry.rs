use super::*;
use crate::rules::limits::LimitId;
use crate::rules::{Derived, DerivedId, Known, chapters, judge, retired};
use std::collections::HashSet;

#[test]
fn codes_are_their_familys_and_stand_once() {
    let mut seen = HashSet::new();
    for chapter in chapters() {
        for rule in chapter.rules {
            let (family, number) = rule.code.split_once('-').unwrap();
            assert_eq!(family, chapter.family, "{} stands in {}", rule.code, chapter.file);
            assert!(family.len() == 3 && family.bytes().all(|b| b.is_ascii_uppercase()), "{}", rule.code);
            assert!(number.len() == 2 && number.bytes().all(|b| b.is_ascii_digit()), "{}", rule.code);
            assert!(seen.insert(rule.code), "{} stands twice", rule.code);
        }
    }
}

#[test]
fn a_retired_code_says_why_and_is_not_used_again() {
    let mut gone = HashSet::new();
    for row in retired() {
        assert!(row.reason.ends_with('.') && row.reason.len() > 20, "{}", row.code);
        assert!(gone.insert(row.code), "{} was retired twice", row.code);
        assert!(rules().all(|rule| rule.code != row.code), "{} is used again", row.code);
    }
}

#[test]
fn the_families_of_this_book_are_complete() {
    let count = |family: &str| rules().filter(|rule| rule.family() == family).count();
    for (family, rules) in [
        ("THR", 9),
        ("CSE", 12),
        ("OWC", 12),
        ("CLT", 13),
        ("VLV", 33),
        ("OUT", 20),
        ("SPD", 7),
        ("COL", 11),
        ("PMP", 6),
        ("VNT", 9),
        ("PAN", 10),
        ("MNT", 6),
        ("GER", 9),
        ("CNV", 25),
        ("SFT", 18),
        ("MEA", 9),
        ("FLD", 6),
        ("SEQ", 11),
        ("COM", 3),
    ] {
        assert_eq!(count(family), rules, "{family}");
    }
}

#[test]
fn every_rule_fires_on_its_example_and_not_on_its_counter_example() {
    for rule in rules() {
        assert_eq!(verdict(rule, &rule.example()).value(), Some(&true), "{}", rule.code);
        assert_eq!(verdict(rule, &rule.counter_example()).value(), Some(&false), "{}", rule.code);
    }
}

#[test]
fn every_rule_waits_when_the_facts_it_rests_on_are_taken_away() {
    for rule in rules() {
        for job in [rule.example(), rule.counter_example()] {
            let facts = verdict(rule, &job).facts();
            assert!(!facts.is_empty(), "{} rests on nothing", rule.code);
            let open = verdict(rule, &without(&job, facts));
            assert!(matches!(open, Known::Waits(_)), "{} is settled without {facts:?}", rule.code);
            assert!(facts.iter().any(|fact| open.facts().contains(fact)), "{} does not ask for them", rule.code);
        }
    }
}

#[test]
fn nothing_is_decided_of_a_job_of_which_nothing_is_known() {
    let verdicts = judge(&Job::unknown(), &Limits::default());
    assert!(verdicts.findings.is_empty());
    assert_eq!(verdicts.clear, 0);
    assert_eq!(verdicts.undecided.len(), rules().count());
    assert!(verdicts.undecided.iter().all(|open| !open.needs.is_empty()));
    assert!(DerivedId::ALL.iter().all(|number| verdicts.derived.get(*number).0.is_none()));
}

#[test]
fn the_plain_job_is_harmless_and_settled() {
    let verdicts = judge(&Job::plain(), &Limits::default());
    assert!(verdicts.findings.is_empty(), "{:?}", verdicts.findings);
    assert!(verdicts.undecided.is_empty(), "{:?}", verdicts.undecided);
    assert_eq!(verdicts.clear, rules().count());
}

/// The limits and computed quantities a rule declares are exactly those that can move its verdict.
#[test]
fn every_rule_declares_exactly_the_numbers_it_uses() {
    let mut dice = Dice(7);
    for rule in rules() {
        let facts = touched(rule);
        let mut limits_felt = HashSet::new();
        let mut numbers_felt = HashSet::new();
        let own = |limit: &&LimitId| rule.all_limits().contains(limit) || rule.limits.is_empty();
        for draw in 0..if rule.limits.is_empty() { 100 } else { 300 } {
            let mut job = match draw % 3 {
                0 => rule.example(),
                1 => rule.counter_example(),
                _ => Job::plain(),
            };
            if draw > 1 {
                throw_some(&mut job, facts, &mut dice);
            }
            let derived = Derived::of(&job, &Limits::default());
            let stands = (rule.when)(&job, &derived, &Limits::default());
            for number in DerivedId::ALL {
                let mut without = derived.clone();
                without.forget(*number);
                if (rule.when)(&job, &without, &Limits::default()) != stands {
                    numbers_felt.insert(*number);
                }
            }
            // Limits that are not declared are tried on a few draws only: none may be felt at all.
            for limit in LimitId::ALL.iter().filter(|limit| draw < 12 || own(limit)) {
                let default = limit.declaration().default;
                for moved in [-1e12, default * 0.7, default * 1.4, 1e12] {
                    let mut limits = Limits::default();
                    limits.put(*limit, moved);
                    let felt = if rule.numbers.is_empty() {
                        (rule.when)(&job, &derived, &limits) != stands
                    } else {
                        rule.verdict(&job, &limits) != stands
                    };
                    if felt {
                        limits_felt.insert(*limit);
                    }
                }
            }
        }
        let declared: HashSet<_> = rule.all_limits().into_iter().collect();
        assert_eq!(limits_felt, declared, "{}: limits felt and declared", rule.code);
        assert_eq!(numbers_felt, rule.numbers.iter().copied().collect(), "{}: numbers", rule.code);
    }
}

#[test]
fn every_limit_and_no_other_goes_into_a_computed_quantity() {
    let mut dice = Dice(11);
    for number in DerivedId::ALL {
        let declared: HashSet<_> = number.declaration().limits.iter().copied().collect();
        let facts = Derived::of(&Job::unknown(), &Limits::default()).get(*number).1;
        let mut felt = HashSet::new();
        for draw in 0..200 {
            let mut job = Job::plain();
            if draw > 0 {
                throw_some(&mut job, facts, &mut dice);
            }
            let stands = Derived::of(&job, &Limits::default()).get(*number).0;
            for limit in LimitId::ALL {
                if draw > 20 && !declared.contains(limit) {
                    continue;
                }
                let mut limits = Limits::default();
                limits.put(*limit, limit.declaration().default * 1.5);
                if Derived::of(&job, &limits).get(*number).0 != stands {
                    felt.insert(*limit);
                }
            }
        }
        assert_eq!(felt, declared, "{}", number.declaration().path);
    }
}

#[test]
fn a_finding_names_only_the_limits_its_own_job_used() {
    let overloaded = rules().find(|rule| rule.code == "OWC-06").unwrap();
    let verdicts = judge(&overloaded.example(), &Limits::default());
    let finding = verdicts.findings.iter().find(|finding| finding.rule.code == "OWC-06").unwrap();
    let used: Vec<_> = finding.limits.iter().map(|used| used.limit).collect();
    let expected = [LimitId::one_way_far_over, LimitId::coupling, LimitId::shock_drag, LimitId::one_way_sprag];
    assert_eq!(used, expected);
    assert!(finding.basis().ends_with("Limit used: one-way clutch limit, 16 elements 450 lb-ft (memory, low)."));
}
