//! A chain of sizes that leaves a gap, with what each may be off.

use super::{inches, whole};
use crate::quantity::{Inch, Quantity};

/// One size of the chain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dimension {
    /// What it is meant to be.
    pub size: Quantity<Inch>,
    /// How far it may be off, either way.
    pub give: Quantity<Inch>,
    /// Does it open the gap? What fills the gap closes it.
    pub opens: bool,
}

/// The gap a chain leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chain {
    /// As meant: what opens it less what closes it.
    pub gap: Quantity<Inch>,
    /// How far it may be off, either way, when every size is off the same way: the sum of what each may be off.
    pub worst: Quantity<Inch>,
    /// How far it may be off when the errors fall by chance: the root of the sum of their squares.
    pub likely: Quantity<Inch>,
}

/// The gap of a chain of sizes, its worst case and its statistical one.
///
/// Source: machine-design textbook, 9th ed., section 1-13. Exact for the worst case; the other
/// holds for errors that are independent and centered.
pub fn chain(dimensions: &[Dimension]) -> Chain {
    let signed = |one: &Dimension| if one.opens { whole(one.size) } else { -whole(one.size) };
    let squares = dimensions.iter().map(|one| one.give.value() * one.give.value());
    Chain {
        gap: inches(dimensions.iter().map(signed).sum()),
        worst: inches(dimensions.iter().map(|one| whole(one.give).abs()).sum()),
        likely: Quantity::new(squares.sum::<f64>().sqrt()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all};
    use proptest::prelude::*;

    fn dimension(size: f64, give: f64, opens: bool) -> Dimension {
        Dimension { size: Quantity::new(size), give: Quantity::new(give), opens }
    }

    #[test]
    fn agrees_with_the_printed_example() {
        let of = |d: f64| {
            chain(&[
                dimension(1.750, 0.003, true),
                dimension(0.750, 0.001, false),
                dimension(0.120, 0.005, false),
                dimension(d, 0.001, false),
            ])
        };
        let book = "machine-design textbook, 9th ed., p. 20, example 1-3";
        let (gap, tight) = (of(0.875), of(0.867));
        let check = |what, computed: Quantity<Inch>, published| Check {
            source: book,
            what,
            computed: computed.value(),
            published,
            within: 1e-9,
        };
        all(&[
            check("mean gap", gap.gap, 0.005),
            check("worst case", gap.worst, 0.010),
            check("least gap", gap.gap - gap.worst, -0.005),
            check("greatest gap", gap.gap + gap.worst, 0.015),
            check("least gap with d = 0.867", tight.gap - tight.worst, 0.003),
            check("statistical, computed apart", gap.likely, 0.006),
        ]);
    }

    proptest! {
        #[test]
        fn chance_never_does_worse_than_the_worst(gives in prop::collection::vec(0..100i32, 1..8)) {
            let sizes: Vec<_> = gives.iter().map(|give| dimension(0.5, f64::from(*give) / 10_000.0, true)).collect();
            let of = chain(&sizes);
            prop_assert!(of.likely.value() <= of.worst.value() + 1e-12);
            let greatest = gives.iter().max().copied().map_or(0.0, |give| f64::from(give) / 10_000.0);
            prop_assert!(of.likely.value() >= greatest - 1e-12);
        }
    }
}
