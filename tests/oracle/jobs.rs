//! Jobs at random: every choice as likely as the other, numbers near where rules change their mind.

use crate::language::{Book, Expression, Value};
use endplay::job::{Bound, Declaration, Kind, facts};
use std::collections::{BTreeMap, HashMap};

/// What is known of one job.
pub type Known = BTreeMap<String, serde_json::Value>;

/// A source of chance that is the same on every run.
pub struct Dice(pub u64);

impl Dice {
    pub fn roll(&mut self, sides: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as usize) % sides
    }

    fn one_of<'a, T>(&mut self, list: &'a [T]) -> &'a T {
        &list[self.roll(list.len())]
    }
}

/// Numbers that stand in the same condition or formula as a fact, by the fact's name.
pub fn thresholds(book: &Book) -> HashMap<String, Vec<f64>> {
    let mut near: HashMap<String, Vec<f64>> = HashMap::new();
    let steps = book.steps.iter().filter_map(|(_, condition)| condition.as_ref());
    let rules = book.rules.iter().chain(&book.derived).map(|(_, expression)| expression);
    for expression in rules.chain(steps) {
        let (mut names, mut numbers) = (Vec::new(), Vec::new());
        gather(expression, &mut names, &mut numbers);
        for name in names {
            near.entry(name).or_default().extend(&numbers);
        }
    }
    near
}

fn gather(expression: &Expression, names: &mut Vec<String>, numbers: &mut Vec<f64>) {
    let mut inside = |parts: &[&Expression]| parts.iter().for_each(|part| gather(part, names, numbers));
    match expression {
        Expression::Literal(Value::Number(number)) => numbers.push(*number),
        Expression::Literal(_) => {}
        Expression::Name(name) => names.push(name.clone()),
        Expression::Call(_, given) => given.iter().for_each(|part| inside(&[part])),
        Expression::Not(part) | Expression::Among(part, _) => inside(&[part]),
        Expression::And(a, b) | Expression::Or(a, b) => inside(&[a, b]),
        Expression::Sum(_, a, b) | Expression::Compare(_, a, b) => inside(&[a, b]),
        Expression::Choice(a, b, c) => inside(&[a, b, c]),
    }
}

/// One job: half of them a plain job with some facts thrown about, half thrown about altogether; then facts forgotten.
pub fn job(dice: &mut Dice, near: &HashMap<String, Vec<f64>>) -> Known {
    let forgotten_of_100 = *dice.one_of(&[0, 0, 2, 10, 30, 50, 70]);
    let thrown_of_100 = *dice.one_of(&[5, 15, 40, 100, 100, 100]);
    let mut known = Known::new();
    for fact in facts() {
        let plain = fact.plain.json();
        let value =
            if dice.roll(100) < thrown_of_100 || plain.is_null() { value(dice, fact, near) } else { plain.clone() };
        let left_unknown = plain.is_null() && dice.roll(3) == 0;
        if !left_unknown && dice.roll(100) >= forgotten_of_100 {
            known.insert(fact.path.to_owned(), value);
        }
    }
    known
}

/// A value of this fact, near where a condition with these numbers changes its mind.
pub fn value(dice: &mut Dice, fact: &Declaration, near: &HashMap<String, Vec<f64>>) -> serde_json::Value {
    match fact.kind {
        Kind::YesNo => (dice.roll(2) == 0).into(),
        Kind::Choice(words) => dice.one_of(words).code.into(),
        Kind::Text => (*dice.one_of(&["type_1", "type_2"])).into(),
        Kind::Date => format!("{}-{:02}-{:02}", 2023 + dice.roll(5), dice.roll(12) + 1, dice.roll(28) + 1).into(),
        Kind::Year => (2023 + dice.roll(5)).into(),
        Kind::Count | Kind::Number(_) => number(dice, fact, near),
    }
}

fn number(dice: &mut Dice, fact: &Declaration, near: &HashMap<String, Vec<f64>>) -> serde_json::Value {
    let whole = fact.kind == Kind::Count;
    if let Bound::OneOf(list) | Bound::OneOfOrWhole(list) = fact.bound {
        let other = matches!(fact.bound, Bound::OneOfOrWhole(_)) && dice.roll(6) == 0;
        let picked = if other { dice.roll(50) as f64 } else { *dice.one_of(list) };
        return if whole { (picked as u64).into() } else { picked.into() };
    }
    let plain = fact.plain.json().as_f64().unwrap_or(10.0);
    let close = near.get(fact.path).map(Vec::as_slice).unwrap_or_default();
    let middle = if close.is_empty() || dice.roll(2) == 0 { plain } else { *dice.one_of(close) };
    let spread = *dice.one_of(&[0.0, 1e-4, -1e-4, 0.05, -0.05, 0.3, -0.3, 0.8, 1.5]);
    let sign = if fact.bound == Bound::Any && dice.roll(5) == 0 { -1.0 } else { 1.0 };
    let step = if middle == 0.0 { 0.02 * spread } else { 0.0 };
    let picked = sign * (middle * (1.0 + spread) + step);
    let picked = match fact.bound {
        Bound::NotNegative => picked.max(0.0),
        Bound::Positive if picked <= 0.0 => plain,
        _ => picked,
    };
    if whole {
        let least = u64::from(fact.bound == Bound::Positive);
        return (picked.abs().round() as u64 + dice.roll(3) as u64).max(least).into();
    }
    picked.into()
}

/// The job as a job file, on one line.
pub fn line(known: &Known) -> String {
    let mut groups: BTreeMap<&str, BTreeMap<&str, &serde_json::Value>> = BTreeMap::new();
    for (path, value) in known {
        let (group, leaf) = path.split_once('.').expect("a fact has a group and a leaf");
        groups.entry(group).or_default().insert(leaf, value);
    }
    serde_json::to_string(&groups).expect("plain values can be written")
}

/// The same for the second reading.
pub fn values(known: &Known) -> HashMap<String, Value> {
    let read = |value: &serde_json::Value| match value {
        serde_json::Value::Bool(truth) => Value::Yes(*truth),
        serde_json::Value::String(word) => Value::Word(word.clone()),
        other => Value::Number(other.as_f64().expect("a number")),
    };
    known.iter().map(|(path, value)| (path.clone(), read(value))).collect()
}
