//! The bell on its dowels: how far offset dowels have to bring it over.

use crate::quantity::{Inch, Quantity};

/// Offset of the dowels that brings a bell bore true: half of the total indicator reading.
///
/// The needle swings by twice what the bore is off center. Exact (geometry) when the
/// bore is round; offset dowels are made in a few sizes, so read the bore again after.
pub fn offset(total_runout: Quantity<Inch>) -> Quantity<Inch> {
    total_runout * 0.5
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all, same};
    use proptest::prelude::*;

    #[test]
    fn agrees_with_the_handbook() {
        all(&[Check {
            source: "shop handbook, bell offset dowel",
            what: "0.014 in total",
            computed: offset(Quantity::new(0.014)).value(),
            published: 0.007,
            within: 1e-12,
        }]);
    }

    proptest! {
        #[test]
        fn a_bore_off_by_so_much_swings_the_needle_by_twice_that(off in 0.0..0.05f64, turn in 0.0..6.2f64) {
            // The needle's reading at an angle, around a center that is off: its two ends lie opposite each other.
            let read = |angle: f64| off * (angle - turn).cos();
            let total = read(turn) - read(turn + std::f64::consts::PI);
            prop_assert!(same(offset(Quantity::new(total)).value() + 1.0, off + 1.0));
        }
    }
}
