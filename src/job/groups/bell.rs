//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{BellKind, BellPattern};
use crate::quantity::{Inch, Quantity};

group! {
    /// TEXT.
    Bell "bell" {
        kind: BellKind {
            sheet: Outside, bound: Any, plain: Word("integral"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        pattern: BellPattern {
            sheet: Outside, bound: Any, plain: Word("pattern_a"),
            label: "pattern", note: "",
            how: "",
            why: "",
        }
        ring_holes: u32 {
            sheet: Outside, bound: OneOf(&[6.0, 7.0, 8.0]), plain: Number(8.0),
            label: "ring holes", note: "",
            how: "",
            why: "",
        }
        runout_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.004),
            label: "runout in", note: "",
            how: "",
            why: "",
        }
        insert_fitted: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "insert fitted", note: "",
            how: "",
            why: "",
        }
        insert_proud_in: Quantity<Inch> {
            sheet: Measured, bound: Any, plain: Number(0.0),
            label: "insert proud in", note: "",
            how: "",
            why: "",
        }
        insert_bolt_proud_in: Quantity<Inch> {
            sheet: Measured, bound: Any, plain: Number(0.0),
            label: "insert bolt proud in", note: "",
            how: "",
            why: "",
        }
        cut_planned: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "cut planned", note: "",
            how: "",
            why: "",
        }
    }
}
