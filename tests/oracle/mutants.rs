//! Would it be noticed if a rule's condition were slightly wrong? Every condition is changed in every small way,
//! and some job has to tell each change from what the program really does.
//!
//! The conditions stand in declarations that tools which change source text do not look into, and a build a change
//! would take days; so it is the second reading that is changed, and the program held against it.

use crate::jobs::{Dice, Known, thresholds, value, values};
use crate::language::{Book, Expression, Value};
use endplay::job::{Job, Kind, fact_named};
use endplay::rules::{Limits, rule_named};
use std::collections::{BTreeSet, HashMap};

/// Jobs that are made for each rule, of its own facts, before a change is given up.
const MOST_JOBS: usize = 20_000;

/// What was changed, and the whole condition with it.
struct Mutant {
    change: String,
    condition: Expression,
    /// Only the very edge of a number that no job can be made to hit on purpose: it is worked out.
    at_a_computed_edge: bool,
}

/// Every condition that differs from this one in one place.
fn mutants(expression: &Expression) -> Vec<Mutant> {
    let mut all = own_changes(expression);
    let mut inside = |part: &Expression, whole: &dyn Fn(Expression) -> Expression| {
        all.extend(mutants(part).into_iter().map(|mutant| Mutant { condition: whole(mutant.condition), ..mutant }));
    };
    let copy = |part: &Expression| Box::new(part.clone());
    match expression {
        Expression::Literal(_) | Expression::Name(_) => {}
        Expression::Not(a) => inside(a, &|a| Expression::Not(Box::new(a))),
        Expression::And(a, b) => {
            inside(a, &|a| Expression::And(Box::new(a), copy(b)));
            inside(b, &|b| Expression::And(copy(a), Box::new(b)));
        }
        Expression::Or(a, b) => {
            inside(a, &|a| Expression::Or(Box::new(a), copy(b)));
            inside(b, &|b| Expression::Or(copy(a), Box::new(b)));
        }
        Expression::Sum(sign, a, b) => {
            inside(a, &|a| Expression::Sum(sign.clone(), Box::new(a), copy(b)));
            inside(b, &|b| Expression::Sum(sign.clone(), copy(a), Box::new(b)));
        }
        Expression::Compare(sign, a, b) => {
            inside(a, &|a| Expression::Compare(sign.clone(), Box::new(a), copy(b)));
            inside(b, &|b| Expression::Compare(sign.clone(), copy(a), Box::new(b)));
        }
        Expression::Among(a, words) => inside(a, &|a| Expression::Among(Box::new(a), words.clone())),
        Expression::Choice(value, test, other) => {
            inside(value, &|value| Expression::Choice(Box::new(value), copy(test), copy(other)));
            inside(test, &|test| Expression::Choice(copy(value), Box::new(test), copy(other)));
            inside(other, &|other| Expression::Choice(copy(value), copy(test), Box::new(other)));
        }
        Expression::Call(name, given) => {
            for place in 0..given.len() {
                inside(&given[place], &|part| {
                    let mut given = given.clone();
                    given[place] = part;
                    Expression::Call(name.clone(), given)
                });
            }
        }
    }
    all
}

/// What can be changed at the top of an expression.
fn own_changes(expression: &Expression) -> Vec<Mutant> {
    let mutant = |change: String, condition| Mutant { change, condition, at_a_computed_edge: false };
    match expression {
        Expression::And(a, b) => vec![
            mutant("and became or".into(), Expression::Or(a.clone(), b.clone())),
            mutant("the left of an and fell out".into(), (**b).clone()),
            mutant("the right of an and fell out".into(), (**a).clone()),
        ],
        Expression::Or(a, b) => vec![
            mutant("or became and".into(), Expression::And(a.clone(), b.clone())),
            mutant("the left of an or fell out".into(), (**b).clone()),
            mutant("the right of an or fell out".into(), (**a).clone()),
        ],
        Expression::Not(a) => vec![mutant("a not fell out".into(), (**a).clone())],
        Expression::Compare(sign, a, b) => {
            let computed = |part: &Expression| match part {
                Expression::Name(name) => fact_named(name).is_none(),
                Expression::Literal(_) => false,
                _ => true,
            };
            let edge = computed(a) || computed(b);
            let others: &[&str] = match sign.as_str() {
                "<" => &["<=", ">"],
                "<=" => &["<", ">"],
                ">" => &[">=", "<"],
                ">=" => &[">", "<"],
                "==" => &["!="],
                _ => &["=="],
            };
            let changed = |other: &&str| Mutant {
                change: format!("{sign} became {other}"),
                condition: Expression::Compare((*other).to_owned(), a.clone(), b.clone()),
                at_a_computed_edge: edge && other.trim_end_matches('=') == sign.trim_end_matches('='),
            };
            others.iter().map(changed).collect()
        }
        Expression::Literal(Value::Number(number)) => {
            // A count moves by one, anything else by a tenth.
            let whole = number.fract() == 0.0 && number.abs() < 60.0;
            let others = if whole { [number + 1.0, number - 1.0] } else { [number * 1.1, number * 0.9] };
            let changed = |other| mutant(format!("{number} became {other}"), Expression::Literal(Value::Number(other)));
            others.into_iter().map(changed).collect()
        }
        Expression::Among(a, words) => (0..words.len())
            .map(|place| {
                let mut fewer = words.clone();
                let gone = fewer.remove(place);
                mutant(format!("\"{gone}\" fell out"), Expression::Among(a.clone(), fewer))
            })
            .collect(),
        Expression::Sum(sign, a, b) => {
            let other = if sign == "+" || sign == "-" { ["-", "+"] } else { ["/", "*"] };
            let other = if other[0] == sign { other[1] } else { other[0] };
            vec![mutant(format!("{sign} became {other}"), Expression::Sum(other.into(), a.clone(), b.clone()))]
        }
        Expression::Choice(value, test, other) => {
            vec![mutant(
                "the sides were swapped".into(),
                Expression::Choice(other.clone(), test.clone(), value.clone()),
            )]
        }
        Expression::Call(name, given) if name == "abs" => vec![mutant("abs fell out".into(), given[0].clone())],
        Expression::Call(..) | Expression::Name(_) | Expression::Literal(_) => Vec::new(),
    }
}

/// The facts behind an expression.
fn facts_of(book: &Book, expression: &Expression, found: &mut BTreeSet<String>) {
    match expression {
        Expression::Literal(_) => {}
        Expression::Name(name) => match book.derived.iter().find(|(known, _)| known == name) {
            Some((_, formula)) => facts_of(book, formula, found),
            None => drop(found.insert(name.clone())),
        },
        Expression::Not(a) | Expression::Among(a, _) => facts_of(book, a, found),
        Expression::And(a, b) | Expression::Or(a, b) | Expression::Sum(_, a, b) | Expression::Compare(_, a, b) => {
            [a, b].into_iter().for_each(|part| facts_of(book, part, found));
        }
        Expression::Choice(a, b, c) => [a, b, c].into_iter().for_each(|part| facts_of(book, part, found)),
        Expression::Call(_, given) => given.iter().for_each(|part| facts_of(book, part, found)),
    }
}

/// These facts at values near where the rule changes its mind, or a little off their plain ones; sometimes two of a
/// kind the same; a few forgotten.
fn near_the_edge(dice: &mut Dice, own: &BTreeSet<String>, near: &HashMap<String, Vec<f64>>) -> Known {
    let own: Vec<_> = own.iter().map(|path| fact_named(path).expect("a fact").declaration()).collect();
    let gently = dice.roll(2) == 0;
    let mut known = Known::new();
    for fact in &own {
        let plain = fact.plain.json().as_f64().filter(|_| gently);
        let little_off = plain.and_then(|plain| match fact.kind {
            Kind::Number(_) => Some((plain * (92 + dice.roll(17)) as f64 / 100.0).into()),
            Kind::Count => (plain as u64 + dice.roll(3) as u64).checked_sub(1).map(Into::into),
            _ => None,
        });
        let little_off = little_off.filter(|value| (fact.check)(value, fact).is_ok());
        let value = little_off.unwrap_or_else(|| value(dice, fact, near));
        known.insert(fact.path.to_owned(), value);
    }
    let (one, other) = (own[dice.roll(own.len())], own[dice.roll(own.len())]);
    if dice.roll(3) == 0 && (one.check)(&known[other.path], one).is_ok() {
        known.insert(one.path.to_owned(), known[other.path].clone());
    }
    known.retain(|_, _| dice.roll(40) > 0);
    known
}

/// The plain job with these facts as they are known, and unknown where they are not.
fn made(plain: &Job, own: &BTreeSet<String>, known: &Known) -> Job {
    let mut job = plain.clone();
    for path in own {
        let fact = fact_named(path).expect("a fact");
        let value = known.get(path).unwrap_or(&serde_json::Value::Null);
        job.slot_mut(fact).read(value, fact.declaration()).expect("a value the fact may have");
    }
    job
}

#[test]
fn every_small_change_of_a_condition_is_noticed_by_some_job() {
    let book = Book::read(include_str!("conditions.txt"));
    let (limits, plain) = (Limits::default(), Job::plain());
    let mut dice = Dice(77);
    let (mut tried, mut survivors) = (0, Vec::new());
    for (code, condition) in &book.rules {
        let alone = Book::of(vec![(code.clone(), condition.clone())], book.derived.clone());
        let near = thresholds(&alone);
        let mut own = BTreeSet::new();
        facts_of(&book, condition, &mut own);
        let rule = rule_named(code).expect("a built-in rule");
        let mut answered = Vec::new();
        let answer = |condition: &Expression, known: &HashMap<String, Value>| match book.work_out(condition, known) {
            Ok(Value::Yes(truth)) => Some(truth),
            Ok(other) => panic!("{code} came to {other:?}"),
            Err(_) => None,
        };
        for mutant in mutants(condition) {
            tried += 1;
            let mut noticed = false;
            for place in 0..MOST_JOBS {
                if place == answered.len() {
                    let known = near_the_edge(&mut dice, &own, &near);
                    let says = rule.verdict(&made(&plain, &own, &known), &limits).value().copied();
                    let known = values(&known);
                    assert_eq!(answer(condition, &known), says, "{code}");
                    answered.push((known, says));
                }
                let (known, says) = &answered[place];
                noticed = answer(&mutant.condition, known) != *says;
                if noticed || (mutant.at_a_computed_edge && place > 200) {
                    break;
                }
            }
            if !noticed && !mutant.at_a_computed_edge {
                survivors.push(format!("{code}: {}", mutant.change));
            }
        }
    }
    println!("{tried} changes tried");
    assert!(tried > 1000, "there are many ways to be wrong: {tried}");
    assert_eq!(survivors, EQUIVALENT, "changes that no job tells from the rule");
}

/// Changes that change no verdict, with the reason.
const EQUIVALENT: [&str; 1] = [
    // An engine pattern that is neither of the two has already settled the other side of the or.
    "CSE-01: the right of an and fell out",
];
