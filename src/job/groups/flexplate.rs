//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf, OneOfOrWhole};
use crate::job::Plain::{Number, Unknown, Word};
use crate::job::choices::{Balance, FlexplateShield, FlexplateSpec};
use crate::quantity::{Inch, Quantity};
use jiff::civil::Date;

group! {
    /// TEXT.
    Flexplate "flexplate" {
        balance: Balance {
            sheet: Outside, bound: Any, plain: Word("internal"),
            label: "balance", note: "",
            how: "",
            why: "",
        }
        teeth: u32 {
            sheet: Outside, bound: OneOfOrWhole(&[153.0, 168.0]), plain: Number(168.0),
            label: "teeth", note: "",
            how: "",
            why: "",
        }
        bolt_circle_in: Quantity<Inch> {
            sheet: Outside, bound: OneOf(&[0.0, 10.75, 11.5]), plain: Number(11.5),
            label: "bolt circle in", note: "",
            how: "",
            why: "",
        }
        runout_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.004),
            label: "runout in", note: "",
            how: "",
            why: "",
        }
        spec: FlexplateSpec {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "spec", note: "",
            how: "",
            why: "",
        }
        expires: Date {
            sheet: Outside, bound: Any, plain: Unknown,
            label: "expires", note: "",
            how: "",
            why: "",
        }
        shield: FlexplateShield {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "shield", note: "",
            how: "",
            why: "",
        }
        shield_expires: Date {
            sheet: Outside, bound: Any, plain: Unknown,
            label: "shield expires", note: "",
            how: "",
            why: "",
        }
        pilot_recess_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.2),
            label: "pilot recess in", note: "",
            how: "",
            why: "",
        }
    }
}
