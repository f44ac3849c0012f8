//! What one answer alone settles: each answer a fact can have is tried on the rules that wait for it.

use super::Check;
use super::order::WHOLE;
use crate::job::{Bound, Declaration, FactId, FactSet, Job, Kind};
use crate::rules::{Derived, Limits};
use serde_json::{Value, json};

/// For each rule the facts of which some answer decides it alone, with the share of such answers in parts of [`WHOLE`].
pub fn shares(
    job: &Job,
    limits: &Limits,
    waiting: &[(Check<'_>, FactSet)],
    asked: &[FactId],
) -> Vec<Vec<(FactId, u64)>> {
    let mut shares = vec![Vec::new(); waiting.len()];
    let mut tried = job.clone();
    for fact in asked.iter().copied() {
        let declaration = fact.declaration();
        let mut settled = vec![0_u64; waiting.len()];
        let mut answers = 0;
        for answer in answers_to(declaration) {
            if tried.slot_mut(fact).read(&answer, declaration).is_err() {
                continue;
            }
            answers += 1;
            let derived = Derived::of(&tried, limits);
            for ((check, needs), settled) in waiting.iter().zip(&mut settled) {
                if needs.contains(fact) && check.verdict(&tried, &derived, limits).value().is_some() {
                    *settled += 1;
                }
            }
        }
        // It was unknown, and is again; making a fact unknown is never refused.
        let _ = tried.slot_mut(fact).read(&Value::Null, declaration);
        for (share, settled) in shares.iter_mut().zip(settled).filter(|(_, settled)| *settled > 0) {
            share.push((fact, WHOLE * settled / answers));
        }
    }
    shares
}

/// The answers a question is tried with, all taken as equally likely: both, or every word or number of the list. A
/// number without a list is tried at nought, at half its plain value, at that and at twice that, as far as it may have
/// them; a day or a text at its plain value alone.
pub fn answers_to(declaration: &Declaration) -> Vec<Value> {
    let plain = declaration.plain.json();
    match (declaration.kind, declaration.bound) {
        (Kind::YesNo, _) => vec![json!(true), json!(false)],
        (Kind::Choice(words), _) => words.iter().map(|word| json!(word.code)).collect(),
        (_, Bound::OneOf(list) | Bound::OneOfOrWhole(list)) => list.iter().map(|number| json!(number)).collect(),
        (Kind::Count | Kind::Number(_), _) => {
            let size = plain.as_f64().filter(|size| *size > 0.0).unwrap_or(1.0);
            let whole = matches!(declaration.kind, Kind::Count);
            let fit = |number: f64| if whole { number.round() } else { number };
            let mut numbers: Vec<f64> = [0.0, size / 2.0, size, size * 2.0].map(fit).into();
            numbers.dedup();
            numbers.into_iter().map(|number| json!(number)).collect()
        }
        (Kind::Date | Kind::Year | Kind::Text, _) if plain.is_null() => Vec::new(),
        (Kind::Date | Kind::Year | Kind::Text, _) => vec![plain],
    }
}
