//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, Positive};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{GearCut, InputShaft, RearThrust};
use crate::quantity::{Inch, One, Quantity};

group! {
    /// TEXT.
    Gears "gears" {
        first_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(2.48),
            label: "first ratio", note: "",
            how: "",
            why: "",
        }
        second_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(1.48),
            label: "second ratio", note: "",
            how: "",
            why: "",
        }
        reverse_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(2.08),
            label: "reverse ratio", note: "",
            how: "",
            why: "",
        }
        cut: GearCut {
            sheet: Spec, bound: Any, plain: Word("helical"),
            label: "cut", note: "",
            how: "",
            why: "",
        }
        parts_matched: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "parts matched", note: "",
            how: "",
            why: "",
        }
        pinion_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.015),
            label: "pinion play in", note: "",
            how: "",
            why: "",
        }
        input_shaft: InputShaft {
            sheet: Spec, bound: Any, plain: Word("stock"),
            label: "input shaft", note: "",
            how: "",
            why: "",
        }
        rear_thrust: RearThrust {
            sheet: Spec, bound: Any, plain: Word("washers"),
            label: "rear thrust", note: "",
            how: "",
            why: "",
        }
        rear_stack_measured: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "rear stack measured", note: "",
            how: "",
            why: "",
        }
    }
}
