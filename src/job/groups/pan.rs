//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::PanDepth;
use crate::quantity::{Inch, Quantity};

group! {
    /// TEXT.
    Pan "pan" {
        depth: PanDepth {
            sheet: Outside, bound: Any, plain: Word("deep"),
            label: "depth", note: "",
            how: "",
            why: "",
        }
        filter_tube: PanDepth {
            sheet: Outside, bound: Any, plain: Word("deep"),
            label: "filter tube", note: "",
            how: "",
            why: "",
        }
        filter_bolt: PanDepth {
            sheet: Outside, bound: Any, plain: Word("deep"),
            label: "filter bolt", note: "",
            how: "",
            why: "",
        }
        intake_o_ring: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "intake o ring", note: "",
            how: "",
            why: "",
        }
        ground_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(7.0),
            label: "ground in", note: "",
            how: "",
            why: "",
        }
    }
}
