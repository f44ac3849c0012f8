//! The intermediate clutch.

use super::group;
use crate::job::Bound::NotNegative;
use crate::job::Plain::Number;
use crate::quantity::{Inch, Quantity};

group! {
    /// The intermediate clutch: it makes second gear.
    Intermediate "intermediate" {
        frictions: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(3.0),
            label: "Friction plates in the intermediate pack", note: "",
            how: "Count the lined plates in the case as they come out.",
            why: "More plates hold more torque in second.",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.04),
            label: "Intermediate pack clearance", note: "whole pack",
            how: "Measure between snap ring and backing plate with a feeler or an indicator, and check again with \
                regulated air. Glasses on.",
            why: "Too tight drags in first, too loose makes a slow, hot shift.",
        }
    }
}
