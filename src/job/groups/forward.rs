//! The forward clutch.

use super::group;
use crate::job::Bound::NotNegative;
use crate::job::Plain::Number;
use crate::quantity::{Inch, Quantity};

group! {
    /// The forward clutch: every forward gear goes through it.
    Forward "forward" {
        frictions: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(5.0),
            label: "Friction plates in the forward pack", note: "",
            how: "Count the lined plates as they come out of the forward drum.",
            why: "More plates hold more torque in every forward gear.",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.05),
            label: "Forward pack clearance", note: "whole pack",
            how: "Stack the pack dry and measure from the pressure plate to its snap ring; then see with regulated air \
                  that it is the same. Glasses on.",
            why: "Too tight drags and burns, too loose bangs into gear.",
        }
    }
}
