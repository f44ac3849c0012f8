//! How a condition speaks of facts: `bell.kind.is(BoltOn)`, `runout.above(limit)`.

use super::known::{Known, Truth};
use crate::job::{Fact, FactSet};
use crate::quantity::Quantity;

/// Questions that can be put to a fact or to something computed from facts.
///
/// Every answer is *cannot decide* while what it touches is unknown.
pub trait Ask {
    /// What is asked about.
    type Value;

    /// The value where it stands, with the facts it comes from.
    fn held(&self) -> Known<&Self::Value>;

    /// The value itself, for working on.
    fn known(&self) -> Known<Self::Value>
    where
        Self::Value: Copy,
    {
        self.held().map(|held| *held)
    }

    /// Is it this?
    fn is(&self, value: Self::Value) -> Truth
    where
        Self::Value: PartialEq,
    {
        self.held().map(|held| *held == value)
    }

    /// Is it something else than this? (Unknown is not an answer.)
    fn is_not(&self, value: Self::Value) -> Truth
    where
        Self::Value: PartialEq,
    {
        self.held().map(|held| *held != value)
    }

    /// Is it one of these?
    fn one_of(&self, values: &[Self::Value]) -> Truth
    where
        Self::Value: PartialEq,
    {
        self.held().map(|held| values.contains(held))
    }

    /// Do the two differ?
    fn differs_from(&self, other: &impl Ask<Value = Self::Value>) -> Truth
    where
        Self::Value: PartialEq,
    {
        self.held().and(other.held()).map(|(a, b)| a != b)
    }

    /// Is it more than the limit?
    fn above(&self, limit: Self::Value) -> Truth
    where
        Self::Value: PartialOrd,
    {
        self.held().map(|held| *held > limit)
    }

    /// Is it the limit or more?
    fn at_least(&self, limit: Self::Value) -> Truth
    where
        Self::Value: PartialOrd,
    {
        self.held().map(|held| *held >= limit)
    }

    /// Is it less than the limit?
    fn below(&self, limit: Self::Value) -> Truth
    where
        Self::Value: PartialOrd,
    {
        self.held().map(|held| *held < limit)
    }

    /// Is it the limit or less?
    fn at_most(&self, limit: Self::Value) -> Truth
    where
        Self::Value: PartialOrd,
    {
        self.held().map(|held| *held <= limit)
    }

    /// Is it more than the other?
    fn more_than(&self, other: &impl Ask<Value = Self::Value>) -> Truth
    where
        Self::Value: PartialOrd,
    {
        self.held().and(other.held()).map(|(a, b)| a > b)
    }

    /// Is it less than the other?
    fn less_than(&self, other: &impl Ask<Value = Self::Value>) -> Truth
    where
        Self::Value: PartialOrd,
    {
        self.held().and(other.held()).map(|(a, b)| a < b)
    }

    /// Is it the other or less?
    fn not_more_than(&self, other: &impl Ask<Value = Self::Value>) -> Truth
    where
        Self::Value: PartialOrd,
    {
        self.held().and(other.held()).map(|(a, b)| a <= b)
    }

    /// Is it the other or more?
    fn not_less_than(&self, other: &impl Ask<Value = Self::Value>) -> Truth
    where
        Self::Value: PartialOrd,
    {
        self.held().and(other.held()).map(|(a, b)| a >= b)
    }

    /// The smaller of the two.
    fn lesser_of(&self, other: &impl Ask<Value = Self::Value>) -> Known<Self::Value>
    where
        Self::Value: Ord + Copy,
    {
        self.known().and(other.known()).map(|(a, b)| a.min(b))
    }

    /// Is there any of it: more than nothing?
    fn any(&self) -> Truth
    where
        Self::Value: PartialOrd + Nothing,
    {
        self.above(Self::Value::NOTHING)
    }
}

/// A kind of number that has a nought.
pub trait Nothing {
    /// None of it.
    const NOTHING: Self;
}
impl Nothing for u32 {
    const NOTHING: Self = 0;
}
impl<U> Nothing for Quantity<U> {
    const NOTHING: Self = Self::new(0.0);
}

impl<T> Ask for Fact<T> {
    type Value = T;
    fn held(&self) -> Known<&T> {
        let facts = FactSet::of(self.id());
        match self.value() {
            Some(value) => Known::Yes(value, facts),
            None => Known::Waits(facts),
        }
    }
}

impl<T> Ask for Known<T> {
    type Value = T;
    fn held(&self) -> Known<&T> {
        match self {
            Self::Yes(value, facts) => Known::Yes(value, *facts),
            Self::Waits(facts) => Known::Waits(*facts),
        }
    }
}

/// Questions to a yes/no fact.
pub trait YesNo {
    /// Is it yes?
    fn yes(&self) -> Truth;
    /// Is it no? Unknown is not a no.
    fn no(&self) -> Truth;
}

impl<A: Ask<Value = bool>> YesNo for A {
    fn yes(&self) -> Truth {
        self.known()
    }
    fn no(&self) -> Truth {
        !self.known()
    }
}

/// Sums with measured numbers; a sum of an unknown is unknown.
pub trait Measured<U>: Ask<Value = Quantity<U>> {
    /// How far the two lie apart, without a sign.
    fn apart_from(&self, other: &impl Ask<Value = Quantity<U>>) -> Known<Quantity<U>> {
        self.known().and(other.known()).map(|(a, b)| (a - b).abs())
    }

    /// How big it is, whichever way it points.
    fn size(&self) -> Known<Quantity<U>> {
        self.known().map(Quantity::abs)
    }
}
impl<U, A: Ask<Value = Quantity<U>>> Measured<U> for A {}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{BellKind, Job};

    #[test]
    fn a_blank_is_never_an_answer() {
        let job = Job::unknown();
        let waits = Known::Waits(FactSet::of(job.bell.kind.id()));
        assert_eq!(job.bell.kind.is(BellKind::BoltOn), waits);
        assert_eq!(job.bell.kind.is_not(BellKind::BoltOn), waits);
        assert_eq!(job.bell.kind.one_of(&[BellKind::BoltOn, BellKind::Integral]), waits);
        assert!(job.bell.insert_fitted.no().value().is_none());
        assert!(job.bell.insert_fitted.yes().value().is_none());
    }

    #[test]
    fn limits_lie_on_the_side_the_words_say() {
        let mut job = Job::unknown();
        let runout = |job: &mut Job, inches| job.bell.runout_in.set(Quantity::new(inches));
        runout(&mut job, 0.010);
        let limit = Quantity::new(0.010);
        let answers = |job: &Job| {
            let fact = &job.bell.runout_in;
            [fact.above(limit), fact.at_least(limit), fact.at_most(limit), fact.below(limit)]
                .map(|truth| truth.value().copied())
        };
        assert_eq!(answers(&job), [Some(false), Some(true), Some(true), Some(false)]);
        runout(&mut job, 0.0101);
        assert_eq!(answers(&job), [Some(true), Some(true), Some(false), Some(false)]);
        runout(&mut job, 0.0099);
        assert_eq!(answers(&job), [Some(false), Some(false), Some(true), Some(true)]);
    }

    #[test]
    fn comparing_two_facts_waits_for_whichever_is_missing() {
        let mut job = Job::unknown();
        let (yoke, output) = (job.yoke.spline.id(), job.output.spline.id());
        let both = FactSet::of(yoke).with(FactSet::of(output));
        assert_eq!(job.yoke.spline.differs_from(&job.output.spline), Known::Waits(both));
        job.yoke.spline.set(32);
        assert_eq!(job.yoke.spline.differs_from(&job.output.spline), Known::Waits(FactSet::of(output)));
        job.output.spline.set(27);
        assert_eq!(job.yoke.spline.differs_from(&job.output.spline), Known::Yes(true, both));
    }
}
