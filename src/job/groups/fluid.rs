//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::quantity::{Quantity, Quart};

group! {
    /// TEXT.
    Fluid "fluid" {
        required: String {
            sheet: Spec, bound: Any, plain: Word("type_1"),
            label: "required", note: "",
            how: "",
            why: "",
        }
        used: String {
            sheet: Paper, bound: Any, plain: Word("type_1"),
            label: "used", note: "",
            how: "",
            why: "",
        }
        mixed: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "mixed", note: "",
            how: "",
            why: "",
        }
        capacity_qt: Quantity<Quart> {
            sheet: Spec, bound: NotNegative, plain: Number(11.0),
            label: "capacity qt", note: "",
            how: "",
            why: "",
        }
        added_qt: Quantity<Quart> {
            sheet: Paper, bound: NotNegative, plain: Number(10.5),
            label: "added qt", note: "",
            how: "",
            why: "",
        }
        shipped_dry: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "shipped dry", note: "",
            how: "",
            why: "",
        }
        dry_tag: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "dry tag", note: "",
            how: "",
            why: "",
        }
    }
}
