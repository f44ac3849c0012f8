//! The two bands.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::Word;
use crate::job::choices::{Fitted, RearPin};

group! {
    /// The front band and the rear one.
    Bands "bands" {
        front: Fitted {
            sheet: Inside, bound: Any, plain: Word("fitted"),
            label: "Front band", note: "",
            how: "Look for the band around the direct drum and its servo.",
            why: "Without it second gear does not hold the vehicle back on a hill.",
        }
        rear_pin: RearPin {
            sheet: Measured, bound: Any, plain: Word("gauged"),
            label: "Rear band apply pin", note: "",
            how: "Use the pin gauge and torque on the shop's sheet, and write which pin fell in the window.",
            why: "The band that holds low, reverse and the trans brake is only as good as this pin.",
        }
    }
}
