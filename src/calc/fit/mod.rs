//! Selective fits: from readings and the parts on the shelf to the part to fit and what it will come to.
//!
//! Sizes are compared as whole nanometres, in which a ten-thousandth of an inch and a thousandth of a
//! millimetre are both whole numbers, so that a part at the very edge of a window is not lost to rounding.
//! Valid for sizes up to a kilometre; a size that is no number counts as nought.

mod choice;
mod combine;
mod pack;
mod pin;
mod readings;
mod shims;
mod tolerance;

pub use choice::{Landing, Part, Pick, Window, choose, landings, wanted};
pub use pack::{Filled, Packing, each_steel, fill};
pub use pin::{Pin, PinPick, pick_pin};
pub use readings::{Moves, Settled, settle};
pub use shims::{Shimmed, Stack, shim};
pub use tolerance::{Chain, Dimension, chain};

use crate::quantity::{Inch, Quantity};

const NANOMETRES_IN_ONE_INCH: f64 = 25_400_000.0;
/// Far beyond any shelf, and small enough that sums of many stay whole.
const LONGEST: i64 = 1_000_000_000_000;

/// A size in whole nanometres.
fn whole(size: Quantity<Inch>) -> i64 {
    let size = (size.value() * NANOMETRES_IN_ONE_INCH).round() as i64;
    size.clamp(-LONGEST, LONGEST)
}

/// The size of so many nanometres.
fn inches(whole: i64) -> Quantity<Inch> {
    Quantity::new(whole as f64 / NANOMETRES_IN_ONE_INCH)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_benches_count_in_whole_numbers() {
        assert_eq!(whole(Quantity::new(0.0001)), 2540);
        assert_eq!(whole(Quantity::new(0.001 / 25.4)), 1000, "a thousandth of a millimetre");
        assert_eq!(whole(Quantity::new(f64::NAN)), 0);
        assert_eq!(whole(Quantity::new(f64::INFINITY)), LONGEST);
        assert_eq!(inches(whole(Quantity::new(0.095))).value(), 0.095);
    }
}
