//! Every built-in condition, written as an owner would write it, says the same of every job.

use crate::jobs::{Dice, job, line, thresholds};
use crate::language::{Book, Expression, Value};
use endplay::job::Job;
use endplay::rules::{Derived, Limits, house, rule_named};

const JOBS: usize = 400;

/// The condition in CEL.
fn in_cel(expression: &Expression) -> String {
    let word = |word: &str| format!("\"{word}\"");
    match expression {
        Expression::Literal(Value::Yes(truth)) => truth.to_string(),
        Expression::Literal(Value::Number(number)) => format!("{number:?}"),
        Expression::Literal(Value::Word(text)) => word(text),
        Expression::Name(name) => name.clone(),
        Expression::Call(name, given) => {
            let name = match name.as_str() {
                "min" => "math.least",
                "max" => "math.greatest",
                "abs" => "math.abs",
                other => panic!("no condition calls {other}"),
            };
            format!("{name}({})", given.iter().map(in_cel).collect::<Vec<_>>().join(", "))
        }
        Expression::Not(part) => format!("!({})", in_cel(part)),
        Expression::And(a, b) => format!("({} && {})", in_cel(a), in_cel(b)),
        Expression::Or(a, b) => format!("({} || {})", in_cel(a), in_cel(b)),
        Expression::Sum(sign, a, b) | Expression::Compare(sign, a, b) => {
            format!("({} {sign} {})", in_cel(a), in_cel(b))
        }
        Expression::Among(part, words) => {
            let words: Vec<String> = words.iter().map(|text| word(text)).collect();
            format!("({} in [{}])", in_cel(part), words.join(", "))
        }
        Expression::Choice(value, test, other) => {
            format!("({} ? {} : {})", in_cel(test), in_cel(value), in_cel(other))
        }
    }
}

#[test]
fn a_rule_of_the_shops_own_decides_and_waits_as_the_built_in_one() {
    let book = Book::read(include_str!("conditions.txt"));
    let near = thresholds(&book);
    let mut dice = Dice(20_260_531);
    let limits = Limits::default();
    let jobs: Vec<Job> =
        (0..JOBS).map(|_| Job::from_json(&line(&job(&mut dice, &near))).expect("a job that can be read")).collect();
    let worked_out: Vec<Derived> = jobs.iter().map(|job| Derived::of(job, &limits)).collect();
    for (code, expression) in &book.rules {
        let text = in_cel(expression);
        let own = house::read(&text).unwrap_or_else(|amiss| panic!("{code}: {text}: {amiss:?}"));
        let built_in = rule_named(code).expect("a built-in rule");
        for (job, derived) in jobs.iter().zip(&worked_out) {
            let (own, built_in) = (own.verdict(job, derived), (built_in.when)(job, derived, &limits));
            assert_eq!(own.value(), built_in.value(), "{code} as {text} on {}", job.to_json());
            if own.value().is_none() {
                assert_eq!(own.facts(), built_in.facts(), "{code} as {text} waits on {}", job.to_json());
            }
        }
    }
}
