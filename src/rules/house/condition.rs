//! A condition that has been read and checked, and what it makes of a job.

use crate::job::{FactId, FactSet, Job};
use crate::rules::derived::{Derived, DerivedId};
use crate::rules::known::{Known, Truth};
use serde_json::Value;

/// A condition over the facts of a job, ready to be held against any.
///
/// It can only be made by [`read`](super::read()), so every name in it exists and every comparison makes sense.
#[derive(Clone, Debug, PartialEq)]
pub struct Condition {
    pub(super) text: String,
    pub(super) root: Test,
}

impl Condition {
    /// As the owner wrote it.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Every fact and every computed quantity it names.
    pub fn names(&self) -> Names {
        let mut names = Names::default();
        self.root.name(&mut names);
        names
    }

    /// What it makes of a job: true, false, or the facts it waits for.
    pub fn verdict(&self, job: &Job, derived: &Derived) -> Truth {
        self.root.of(&Ground { job, derived })
    }
}

/// What a condition names.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Names {
    /// Facts.
    pub facts: FactSet,
    /// Computed quantities.
    pub computed: Vec<DerivedId>,
}

impl Names {
    fn fact(&mut self, fact: FactId) {
        self.facts = self.facts.with(FactSet::of(fact));
    }
}

/// What a condition is worked out on.
struct Ground<'a> {
    job: &'a Job,
    derived: &'a Derived,
}

impl Ground<'_> {
    fn fact<T>(&self, fact: FactId, as_held: impl FnOnce(&Value) -> Option<T>) -> Known<T> {
        let facts = FactSet::of(fact);
        match self.job.slot(fact).json().as_ref().and_then(as_held) {
            Some(value) => Known::Yes(value, facts),
            None => Known::Waits(facts),
        }
    }

    fn computed<T>(&self, which: DerivedId, as_held: impl FnOnce(&Value) -> Option<T>) -> Known<T> {
        let (value, facts) = self.derived.get(which);
        match value.as_ref().and_then(as_held) {
            Some(value) => Known::Yes(value, facts),
            None => Known::Waits(facts),
        }
    }
}

/// A part that is true or false.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Test {
    Given(bool),
    Fact(FactId),
    Computed(DerivedId),
    Not(Box<Test>),
    And(Box<Test>, Box<Test>),
    Or(Box<Test>, Box<Test>),
    Same(Box<Test>, Box<Test>),
    Numbers(Order, Number, Number),
    Words(Order, Word, Word),
    Choose(Box<Test>, Box<Test>, Box<Test>),
}

/// A part that is a number, in the unit its name ends with.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Number {
    Given(f64),
    Fact(FactId),
    Computed(DerivedId),
    Sum(Sum, Box<Number>, Box<Number>),
    Function(Function, Vec<Number>),
    Choose(Box<Test>, Box<Number>, Box<Number>),
}

/// A part that is a text, a word of a choice, or a day.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Word {
    Given(String),
    Fact(FactId),
}

/// How two things are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Order {
    Is,
    IsNot,
    Below,
    AtMost,
    Above,
    AtLeast,
}

/// Sums of two numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sum {
    Add,
    Subtract,
    Multiply,
    Divide,
}

/// What can be done with numbers beyond sums.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Function {
    Size,
    Root,
    Least,
    Greatest,
}

impl Test {
    fn of(&self, ground: &Ground<'_>) -> Truth {
        match self {
            Self::Given(truth) => Known::given(*truth),
            Self::Fact(fact) => ground.fact(*fact, Value::as_bool),
            Self::Computed(which) => ground.computed(*which, Value::as_bool),
            Self::Not(part) => !part.of(ground),
            Self::And(a, b) => a.of(ground) & b.of(ground),
            Self::Or(a, b) => a.of(ground) | b.of(ground),
            Self::Same(a, b) => a.of(ground).and(b.of(ground)).map(|(a, b)| a == b),
            Self::Numbers(order, a, b) => a.of(ground).and(b.of(ground)).map(|(a, b)| order.holds(&a, &b)),
            Self::Words(order, a, b) => a.of(ground).and(b.of(ground)).map(|(a, b)| order.holds(&a, &b)),
            Self::Choose(test, yes, no) => test.of(ground).choose(|| yes.of(ground), || no.of(ground)),
        }
    }
}

impl Test {
    fn name(&self, names: &mut Names) {
        match self {
            Self::Given(_) => {}
            Self::Fact(fact) => names.fact(*fact),
            Self::Computed(which) => names.computed.push(*which),
            Self::Not(part) => part.name(names),
            Self::And(a, b) | Self::Or(a, b) | Self::Same(a, b) => [a, b].iter().for_each(|part| part.name(names)),
            Self::Numbers(_, a, b) => [a, b].iter().for_each(|part| part.name(names)),
            Self::Words(_, a, b) => {
                for word in [a, b] {
                    if let Word::Fact(fact) = word {
                        names.fact(*fact);
                    }
                }
            }
            Self::Choose(test, yes, no) => [test, yes, no].iter().for_each(|part| part.name(names)),
        }
    }
}

impl Number {
    fn name(&self, names: &mut Names) {
        match self {
            Self::Given(_) => {}
            Self::Fact(fact) => names.fact(*fact),
            Self::Computed(which) => names.computed.push(*which),
            Self::Sum(_, a, b) => [a, b].iter().for_each(|part| part.name(names)),
            Self::Function(_, parts) => parts.iter().for_each(|part| part.name(names)),
            Self::Choose(test, yes, no) => {
                test.name(names);
                [yes, no].iter().for_each(|part| part.name(names));
            }
        }
    }

    fn of(&self, ground: &Ground<'_>) -> Known<f64> {
        let worked_out = match self {
            Self::Given(number) => Known::given(*number),
            Self::Fact(fact) => ground.fact(*fact, Value::as_f64),
            Self::Computed(which) => ground.computed(*which, Value::as_f64),
            Self::Sum(sum, a, b) => a.of(ground).and(b.of(ground)).map(|(a, b)| sum.of(a, b)),
            Self::Function(function, parts) => {
                let first = parts[0].of(ground).map(|number| function.start(number));
                parts[1..].iter().fold(first, |so_far, part| {
                    so_far.and(part.of(ground)).map(|(so_far, number)| function.next(so_far, number))
                })
            }
            Self::Choose(test, yes, no) => test.of(ground).choose(|| yes.of(ground), || no.of(ground)),
        };
        // Divided by nought, or the root of less than nothing: no answer, so the facts behind it are asked again.
        match worked_out {
            Known::Yes(number, facts) if !number.is_finite() => Known::Waits(facts),
            settled => settled,
        }
    }
}

impl Word {
    fn of(&self, ground: &Ground<'_>) -> Known<String> {
        match self {
            Self::Given(text) => Known::given(text.clone()),
            Self::Fact(fact) => ground.fact(*fact, |value| value.as_str().map(str::to_owned)),
        }
    }
}

impl Order {
    fn holds<T: PartialOrd>(self, a: &T, b: &T) -> bool {
        match self {
            Self::Is => a == b,
            Self::IsNot => a != b,
            Self::Below => a < b,
            Self::AtMost => a <= b,
            Self::Above => a > b,
            Self::AtLeast => a >= b,
        }
    }
}

impl Sum {
    fn of(self, a: f64, b: f64) -> f64 {
        match self {
            Self::Add => a + b,
            Self::Subtract => a - b,
            Self::Multiply => a * b,
            Self::Divide => a / b,
        }
    }
}

impl Function {
    fn start(self, number: f64) -> f64 {
        match self {
            Self::Size => number.abs(),
            Self::Root => number.sqrt(),
            Self::Least | Self::Greatest => number,
        }
    }

    fn next(self, so_far: f64, number: f64) -> f64 {
        if self == Self::Least { so_far.min(number) } else { so_far.max(number) }
    }
}
