//! TEXT.

use super::group;
use crate::job::Bound::NotNegative;
use crate::job::Plain::Number;
use crate::quantity::{Inch, Quantity};

group! {
    /// TEXT.
    Intermediate "intermediate" {
        frictions: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(3.0),
            label: "frictions", note: "",
            how: "",
            why: "",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.04),
            label: "clear in", note: "",
            how: "",
            why: "",
        }
    }
}
