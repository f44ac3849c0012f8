//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf};
use crate::job::Plain::{Number, Word};
use crate::job::choices::YokeKind;
use crate::quantity::{Inch, Quantity};

group! {
    /// TEXT.
    Yoke "yoke" {
        kind: YokeKind {
            sheet: Outside, bound: Any, plain: Word("slip"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        spline: u32 {
            sheet: Outside, bound: OneOf(&[27.0, 32.0]), plain: Number(32.0),
            label: "spline", note: "",
            how: "",
            why: "",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: Any, plain: Number(0.003),
            label: "clear in", note: "",
            how: "",
            why: "",
        }
        engaged_droop_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(2.5),
            label: "engaged droop in", note: "",
            how: "",
            why: "",
        }
        gap_bump_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.75),
            label: "gap bump in", note: "",
            how: "",
            why: "",
        }
    }
}
