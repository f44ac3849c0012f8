//! Jobs at random, for properties that must hold for every job.

use super::value::number_json;
use super::{Bound, Declaration, Job, Kind, fact_ids};
use serde_json::{Value, json};

/// A job of which each fact is unknown or at any value it may have; `next` is the source of chance.
///
/// Jobs come from empty to full. The same draws make the same job.
pub fn random_job(mut next: impl FnMut() -> u64) -> Job {
    let mut job = Job::unknown();
    let known_of_ten = next() % 11;
    for fact in fact_ids() {
        if next() % 10 < known_of_ten {
            let declaration = fact.declaration();
            let value = random_value(declaration, &mut next);
            let read = job.slot_mut(fact).read(&value, declaration);
            debug_assert!(read.is_ok(), "{} was made {value}, which it may not be", declaration.path);
        }
    }
    job
}

/// Any value this fact may have: near its plain one as often as far from it.
pub fn random_value(declaration: &Declaration, mut next: impl FnMut() -> u64) -> Value {
    let draw = next();
    match declaration.kind {
        Kind::YesNo => json!(draw.is_multiple_of(2)),
        Kind::Choice(words) => json!(pick(words, draw).code),
        Kind::Count => match declaration.bound {
            Bound::OneOf(list) => json!(*pick(list, draw) as u32),
            Bound::OneOfOrWhole(list) if !draw.is_multiple_of(4) => json!(*pick(list, draw / 4) as u32),
            _ if !draw.is_multiple_of(8) => json!(next() % 20 + 1),
            _ => json!((next() as u32).max(1)),
        },
        Kind::Number(_) => number_json(number(declaration, draw, next())),
        Kind::Date => json!(format!("{:04}-{:02}-{:02}", draw % 9999 + 1, next() % 12 + 1, next() % 28 + 1)),
        Kind::Year => json!(draw % 150 + 1950),
        Kind::Text => json!(*pick(&["type_1", "type_2", "Type 1", " type_1", "žlutá \"3\""], draw)),
    }
}

fn number(declaration: &Declaration, draw: u64, next: u64) -> f64 {
    let plain = declaration.plain.json().as_f64().unwrap_or(1.0);
    let size = match draw % 6 {
        0 => plain,
        1 => 0.0,
        2 => plain * (next % 300) as f64 / 100.0,
        3 => (next % 1000) as f64 / 1000.0,
        4 => (next % 10_000) as f64,
        _ => f64::from_bits(next),
    };
    let size = if size.is_finite() { size } else { plain };
    match declaration.bound {
        Bound::Any => size,
        Bound::OneOf(list) | Bound::OneOfOrWhole(list) => *pick(list, next),
        Bound::NotNegative => size.abs(),
        Bound::Positive => Some(size.abs()).filter(|size| *size > 0.0).unwrap_or(plain),
    }
}

fn pick<T>(list: &[T], draw: u64) -> &T {
    &list[(draw % list.len() as u64) as usize]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_value_drawn_is_one_the_fact_may_have() {
        let mut seed = 7_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            seed >> 11
        };
        for _ in 0..200 {
            for declaration in super::super::facts() {
                let value = random_value(declaration, &mut next);
                assert_eq!((declaration.check)(&value, declaration), Ok(()), "{} at {value}", declaration.path);
            }
        }
    }

    #[test]
    fn jobs_come_empty_and_full_and_the_same_draws_make_the_same_job() {
        let empty = random_job(|| 0);
        assert_eq!(empty, Job::unknown());
        let full = random_job(|| 10);
        assert!(fact_ids().all(|fact| full.slot(fact).json().is_some()));
        assert_eq!(random_job(|| 10), full);
    }
}
