use super::*;
use crate::job::{FactId, fact_ids};
use crate::rules::{Known, judge};
use proptest::prelude::*;

/// A condition over a few facts, to be read in any order.
#[derive(Clone, Debug)]
enum Shape {
    Part(usize),
    Not(Box<Shape>),
    All(Vec<Shape>),
    Any(Vec<Shape>),
}

fn shapes() -> impl Strategy<Value = Shape> {
    let part = (0..4_usize).prop_map(Shape::Part);
    part.prop_recursive(4, 24, 4, |inner| {
        prop_oneof![
            inner.clone().prop_map(|shape| Shape::Not(Box::new(shape))),
            prop::collection::vec(inner.clone(), 1..4).prop_map(Shape::All),
            prop::collection::vec(inner, 1..4).prop_map(Shape::Any),
        ]
    })
}

fn read(shape: &Shape, parts: &[Truth; 4], backwards: bool) -> Truth {
    let in_order = |shapes: &[Shape], join: fn(Truth, Truth) -> Truth| {
        let truths = shapes.iter().map(|shape| read(shape, parts, backwards));
        let joined = if backwards { truths.rev().reduce(join) } else { truths.reduce(join) };
        joined.unwrap()
    };
    match shape {
        Shape::Part(at) => parts[*at],
        Shape::Not(inner) => !read(inner, parts, backwards),
        Shape::All(shapes) => in_order(shapes, |a, b| a & b),
        Shape::Any(shapes) => in_order(shapes, |a, b| a | b),
    }
}

fn ids() -> [FactId; 4] {
    let mut ids = fact_ids();
    std::array::from_fn(|_| ids.next().unwrap())
}

fn parts(values: [Option<bool>; 4]) -> [Truth; 4] {
    let ids = ids();
    std::array::from_fn(|at| match values[at] {
        Some(value) => Known::Yes(value, FactSet::of(ids[at])),
        None => Known::Waits(FactSet::of(ids[at])),
    })
}

/// What plain two-valued logic says of every way of filling the blanks in.
fn fillings(shape: &Shape, values: [Option<bool>; 4]) -> Vec<bool> {
    (0..16_usize)
        .map(|bits| std::array::from_fn(|at| values[at].or(Some(bits >> at & 1 == 1))))
        .map(|full| *read(shape, &parts(full), false).value().unwrap())
        .collect()
}

proptest! {
    #[test]
    fn the_order_of_the_parts_changes_nothing(shape in shapes(), values in any::<[Option<bool>; 4]>()) {
        prop_assert_eq!(read(&shape, &parts(values), false), read(&shape, &parts(values), true));
    }

    #[test]
    fn a_settled_condition_is_settled_however_the_blanks_are_filled(
        shape in shapes(),
        values in any::<[Option<bool>; 4]>(),
    ) {
        if let Some(settled) = read(&shape, &parts(values), false).value() {
            prop_assert!(fillings(&shape, values).iter().all(|full| full == settled));
        }
    }

    #[test]
    fn an_open_condition_waits_only_for_what_is_not_known(
        shape in shapes(),
        values in any::<[Option<bool>; 4]>(),
    ) {
        let truth = read(&shape, &parts(values), false);
        for (at, id) in ids().into_iter().enumerate() {
            let named = truth.facts().contains(id);
            let right = values[at].is_some() == truth.value().is_some();
            prop_assert!(!named || right, "{shape:?} {values:?} {at}");
        }
    }
}

/// Takes facts away at random; what stays settled must have been settled the same way before.
#[test]
fn learning_a_fact_never_turns_a_settled_verdict() {
    let mut dice = Dice(3);
    for _ in 0..300 {
        let fuller = random_job(|| dice.roll());
        let mut known_less = fuller.clone();
        for fact in fact_ids() {
            if dice.roll().is_multiple_of(3) {
                known_less = without(&known_less, FactSet::of(fact));
            }
        }
        for rule in rules() {
            if let Some(settled) = verdict(rule, &known_less).value() {
                assert_eq!(verdict(rule, &fuller).value(), Some(settled), "{}", rule.code);
            }
        }
    }
}

/// Learning something else than what a rule waits for leaves it as open as it was.
#[test]
fn a_rule_settles_only_through_the_facts_it_waits_for() {
    let mut dice = Dice(5);
    for _ in 0..120 {
        let job = random_job(|| dice.roll());
        for open in judge(&job, &Limits::default()).undecided {
            let mut learnt = job.clone();
            for fact in touched(open.rule).iter().filter(|fact| !open.needs.contains(*fact)) {
                let declaration = fact.declaration();
                if job.slot(fact).json().is_none() {
                    let value = random_value(declaration, || dice.roll());
                    learnt.slot_mut(fact).read(&value, declaration).unwrap();
                }
            }
            assert!(verdict(open.rule, &learnt).value().is_none(), "{} settled by another fact", open.rule.code);
        }
    }
}

/// A verdict rests on facts that are known and waits for facts that are not.
#[test]
fn findings_rest_on_known_facts_and_open_rules_wait_for_unknown_ones() {
    let mut dice = Dice(9);
    for _ in 0..200 {
        let job = random_job(|| dice.roll());
        let verdicts = judge(&job, &Limits::default());
        for finding in &verdicts.findings {
            assert!(finding.facts.iter().all(|fact| job.slot(fact).json().is_some()), "{:?}", finding.rule);
        }
        for open in &verdicts.undecided {
            // A number too big to hold is asked for again although it is there.
            let blank = open.needs.iter().any(|fact| job.slot(fact).json().is_none());
            let too_big = !open.rule.numbers.is_empty();
            assert!(!open.needs.is_empty() && (blank || too_big), "{:?}", open.rule);
        }
        assert_eq!(verdicts.findings.len() + verdicts.undecided.len() + verdicts.clear, rules().count());
    }
}
