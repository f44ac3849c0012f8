//! A needle-bearing kit in place of a pair of washers: shims until it stands as high as the pair did.

use super::combine::{Pile, sums};
use super::pack::laid_out;
use super::{inches, whole};
use crate::quantity::{Inch, Quantity};

/// The two stacks that are compared.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stack {
    /// The pair that came out.
    pub old: Quantity<Inch>,
    /// The bearing with its races.
    pub new: Quantity<Inch>,
    /// How far apart they may stay, either way.
    pub within: Quantity<Inch>,
}

/// What has to go under the bearing.
#[derive(Clone, Debug, PartialEq)]
pub enum Shimmed {
    /// These shims, none when it stands right as it is, thinnest first; with them it is higher than the old pair by so
    /// much, or lower when below nought.
    Fits {
        /// The shims.
        shims: Vec<Quantity<Inch>>,
        /// New stack − old stack.
        higher: Quantity<Inch>,
    },
    /// The bearing alone is higher than the old pair by so much: no shim makes it lower.
    TooHigh(Quantity<Inch>),
    /// No shims in the set fit; these come nearest.
    NoneFits {
        /// The nearest.
        shims: Vec<Quantity<Inch>>,
        /// New stack − old stack.
        higher: Quantity<Inch>,
    },
}

/// The fewest shims, at most `most`, that bring the new stack within reach of the old one, nearest first.
///
/// Shim = old stack − new stack. Exact (geometry).
pub fn shim(stack: &Stack, shelf: &[Quantity<Inch>], most: usize) -> Shimmed {
    let short = whole(stack.old) - whole(stack.new);
    let within = whole(stack.within).abs();
    if short < -within {
        return Shimmed::TooHigh(inches(-short));
    }
    let mut sizes: Vec<i64> = shelf.iter().map(|size| whole(*size)).filter(|size| *size > 0).collect();
    sizes.sort_unstable();
    sizes.dedup();
    let piles: Vec<_> = sizes.into_iter().map(|size| Pile { size, count: most, fitted: 0 }).collect();
    // Few shims of few sizes come to few stacks.
    let reached = sums(&piles, most).unwrap_or_default();
    let rank = |((parts, thick), _): &(&(usize, i64), _)| {
        let off = (thick - short).abs();
        // Inside the reach fewer shims are better than a nearer sum: each joint is one more place to go wrong.
        if off <= within { (0, i64::try_from(*parts).unwrap_or(i64::MAX), off) } else { (1, off, 0) }
    };
    let nearest = reached.iter().min_by_key(rank).map(|((_, thick), way)| (*thick, laid_out(&piles, way)));
    let (thick, shims) = nearest.unwrap_or_default();
    let higher = inches(thick - short);
    if (thick - short).abs() <= within { Shimmed::Fits { shims, higher } } else { Shimmed::NoneFits { shims, higher } }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tenths(size: i32) -> Quantity<Inch> {
        Quantity::new(f64::from(size) / 10_000.0)
    }

    fn stack(old: i32, new: i32) -> Stack {
        Stack { old: tenths(old), new: tenths(new), within: tenths(20) }
    }

    #[test]
    fn the_kit_is_brought_to_the_height_of_the_pair() {
        // Looked up: equal to the old pair within 0.002, a pair being about 0.150.
        let shelf = [tenths(50), tenths(100)];
        assert_eq!(shim(&stack(1500, 1490), &shelf, 3), Shimmed::Fits { shims: vec![], higher: tenths(-10) });
        let one = Shimmed::Fits { shims: vec![tenths(100)], higher: tenths(10) };
        assert_eq!(shim(&stack(1500, 1410), &shelf, 3), one);
        let two = Shimmed::Fits { shims: vec![tenths(50), tenths(100)], higher: tenths(0) };
        assert_eq!(shim(&stack(1500, 1350), &shelf, 3), two);
        assert_eq!(shim(&stack(1500, 1521), &shelf, 3), Shimmed::TooHigh(tenths(21)));
        let none = Shimmed::NoneFits { shims: vec![tenths(100)], higher: tenths(30) };
        assert_eq!(shim(&stack(1500, 1430), &[tenths(100)], 3), none);
        assert_eq!(shim(&stack(1500, 1430), &[], 3), Shimmed::NoneFits { shims: vec![], higher: tenths(-70) });
    }

    #[test]
    fn just_within_reach_is_within_it() {
        let high = shim(&stack(1500, 1520), &[tenths(50)], 3);
        assert_eq!(high, Shimmed::Fits { shims: vec![], higher: tenths(20) }, "0.002 higher, just as far as it may be");
        // One shim just within reach is better than two that meet the height: each joint is one more place to go wrong.
        let low = shim(&stack(1500, 1380), &[tenths(60), tenths(100)], 3);
        assert_eq!(low, Shimmed::Fits { shims: vec![tenths(100)], higher: tenths(-20) });
    }

    proptest! {
        #[test]
        fn no_other_shims_do_better(old in 1400..1600i32, new in 1200..1600i32, shelf in prop::collection::vec(10..200i32, 0..4)) {
            let sizes: Vec<_> = shelf.iter().map(|size| tenths(*size)).collect();
            let with_none = [shelf.as_slice(), &[0]].concat();
            let mut reach = Vec::new();
            for one in &with_none {
                for two in &with_none {
                    reach.push(one + two);
                }
            }
            let nearest = reach.iter().map(|thick| (new + thick - old).abs()).min().expect("nothing at all is one");
            match shim(&stack(old, new), &sizes, 2) {
                Shimmed::Fits { shims, higher } => {
                    prop_assert!(nearest <= 20 && whole(higher).abs() <= whole(tenths(20)));
                    let fewer = reach.iter().any(|thick| *thick == 0 && (new + thick - old).abs() <= 20);
                    prop_assert!(!fewer || shims.is_empty());
                }
                Shimmed::NoneFits { higher, .. } => {
                    prop_assert!(nearest > 20);
                    prop_assert_eq!(whole(higher).abs(), whole(tenths(nearest)));
                }
                Shimmed::TooHigh(by) => prop_assert!(new - old > 20 && whole(by) == whole(tenths(new - old))),
            }
        }
    }
}
