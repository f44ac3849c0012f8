//! Three-valued knowledge: a value with the facts it rests on, or a blank with the facts it waits for.

use crate::job::FactSet;
use crate::quantity::Quantity;
use std::ops::{BitAnd, BitOr, Not};

/// Something worked out from facts: known, or waiting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Known<T> {
    /// The value, and the facts it rests on.
    Yes(T, FactSet),
    /// Not known; these facts would have to be learnt.
    Waits(FactSet),
}

/// True, false or cannot decide, with the reason.
///
/// `&`, `|` and `!` are Kleene's: a part that settles the matter settles it whatever the other part
/// says and whichever comes first. A settled verdict rests on the parts that settled it; an open one
/// waits for the parts that left it open.
pub type Truth = Known<bool>;

impl<T> Known<T> {
    /// Works on the value if there is one.
    pub fn map<R>(self, work: impl FnOnce(T) -> R) -> Known<R> {
        match self {
            Self::Yes(value, facts) => Known::Yes(work(value), facts),
            Self::Waits(facts) => Known::Waits(facts),
        }
    }

    /// Both values, or all that either waits for.
    pub fn and<R>(self, other: Known<R>) -> Known<(T, R)> {
        match (self, other) {
            (Self::Yes(a, fa), Known::Yes(b, fb)) => Known::Yes((a, b), fa.with(fb)),
            (Self::Waits(fa), Known::Waits(fb)) => Known::Waits(fa.with(fb)),
            (Self::Waits(facts), _) | (_, Known::Waits(facts)) => Known::Waits(facts),
        }
    }

    /// The value, when known.
    pub fn value(&self) -> Option<&T> {
        match self {
            Self::Yes(value, _) => Some(value),
            Self::Waits(_) => None,
        }
    }

    /// What it rests on, or what it waits for.
    pub const fn facts(&self) -> FactSet {
        match self {
            Self::Yes(_, facts) | Self::Waits(facts) => *facts,
        }
    }

    /// The facts that would have to be learnt; none when it is known.
    pub const fn waits_for(&self) -> FactSet {
        match self {
            Self::Yes(..) => FactSet::EMPTY,
            Self::Waits(facts) => *facts,
        }
    }

    /// A value that rests on nothing: a constant.
    pub const fn given(value: T) -> Self {
        Self::Yes(value, FactSet::EMPTY)
    }
}

impl<U> Known<Quantity<U>> {
    /// A number too big to hold is no answer: the facts behind it have to be learnt again.
    pub fn finite(self) -> Self {
        match self {
            Self::Yes(number, facts) if !number.value().is_finite() => Self::Waits(facts),
            settled => settled,
        }
    }
}

/// Several things that must all be known before there is anything to work on.
pub trait Together {
    /// Their values side by side.
    type Values;
    /// All the values, or all that any of them waits for.
    fn together(self) -> Known<Self::Values>;
}

/// Tuples of knowns, taken apart two at a time.
macro_rules! together {
    ($($first:ident $(, $rest:ident)+;)+) => {$(
        impl<$first, $($rest),+> Together for (Known<$first>, $(Known<$rest>),+) {
            type Values = ($first, $($rest),+);
            #[allow(non_snake_case)]
            fn together(self) -> Known<Self::Values> {
                let ($first, $($rest),+) = self;
                let waits_for = $first.waits_for()$(.with($rest.waits_for()))+;
                let rests_on = $first.facts()$(.with($rest.facts()))+;
                match ($first, $($rest),+) {
                    (Known::Yes($first, _), $(Known::Yes($rest, _)),+) => Known::Yes(($first, $($rest),+), rests_on),
                    _ => Known::Waits(waits_for),
                }
            }
        }
    )+};
}
together! {
    A, B;
    A, B, C;
    A, B, C, D;
    A, B, C, D, E;
    A, B, C, D, E, F;
}

impl Truth {
    /// One of two, by this test; while the test is open the whole is open.
    pub fn choose<T>(self, when_true: impl FnOnce() -> Known<T>, when_false: impl FnOnce() -> Known<T>) -> Known<T> {
        match self {
            Self::Waits(facts) => Known::Waits(facts),
            Self::Yes(test, tested) => match if test { when_true() } else { when_false() } {
                Known::Yes(value, facts) => Known::Yes(value, facts.with(tested)),
                waits => waits,
            },
        }
    }
}

/// Joins two truths where `settles` decides alone (false for *and*, true for *or*).
fn join(a: Truth, b: Truth, settles: bool) -> Truth {
    use Known::{Waits, Yes};
    match (a, b) {
        (Yes(x, fx), Yes(y, fy)) if x == y => Yes(x, fx.with(fy)),
        (Yes(x, facts), _) | (_, Yes(x, facts)) if x == settles => Yes(settles, facts),
        (Yes(..), Waits(facts)) | (Waits(facts), Yes(..)) => Waits(facts),
        (Waits(fx), Waits(fy)) => Waits(fx.with(fy)),
        (Yes(..), Yes(_, facts)) => Yes(settles, facts),
    }
}

impl BitAnd for Truth {
    type Output = Self;
    fn bitand(self, other: Self) -> Self {
        join(self, other, false)
    }
}

impl BitOr for Truth {
    type Output = Self;
    fn bitor(self, other: Self) -> Self {
        join(self, other, true)
    }
}

impl Not for Truth {
    type Output = Self;
    fn not(self) -> Self {
        self.map(|truth| !truth)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{FactId, fact_ids};

    fn facts() -> Vec<FactId> {
        fact_ids().take(2).collect()
    }

    /// Kleene's strong tables, written out; `None` is unknown.
    #[test]
    fn and_or_not_are_kleenes() {
        let values = [Some(true), Some(false), None];
        let made = |value: Option<bool>, fact| match value {
            Some(truth) => Known::Yes(truth, FactSet::of(fact)),
            None => Known::Waits(FactSet::of(fact)),
        };
        let and = [[Some(true), Some(false), None], [Some(false); 3], [None, Some(false), None]];
        let or = [[Some(true); 3], [Some(true), Some(false), None], [Some(true), None, None]];
        let ids = facts();
        for (i, a) in values.into_iter().enumerate() {
            assert_eq!((!made(a, ids[0])).value().copied(), a.map(|truth| !truth));
            for (k, b) in values.into_iter().enumerate() {
                let (x, y) = (made(a, ids[0]), made(b, ids[1]));
                assert_eq!((x & y).value().copied(), and[i][k], "{a:?} and {b:?}");
                assert_eq!((x | y).value().copied(), or[i][k], "{a:?} or {b:?}");
            }
        }
    }

    #[test]
    fn a_false_part_settles_and_rests_on_itself_alone() {
        let ids = facts();
        let no = Known::Yes(false, FactSet::of(ids[0]));
        let open = Known::Waits(FactSet::of(ids[1]));
        assert_eq!(no & open, no);
        assert_eq!(open & no, no);
    }

    #[test]
    fn an_open_verdict_waits_only_for_the_parts_that_left_it_open() {
        let ids = facts();
        let yes = Known::Yes(true, FactSet::of(ids[0]));
        let open: Truth = Known::Waits(FactSet::of(ids[1]));
        assert_eq!(yes & open, open);
        assert_eq!(!yes | open, open);
    }
}
