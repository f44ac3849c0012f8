//! TEXT.

use super::group;
use crate::job::Bound::NotNegative;
use crate::job::Plain::Number;
use crate::quantity::{Inch, Quantity};

group! {
    /// TEXT.
    Forward "forward" {
        frictions: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(5.0),
            label: "frictions", note: "",
            how: "",
            why: "",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.05),
            label: "clear in", note: "",
            how: "",
            why: "",
        }
    }
}
