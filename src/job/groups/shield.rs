//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Unknown, Word, YesNo};
use crate::job::choices::ShieldKind;
use crate::quantity::{Inch, Quantity};
use jiff::civil::Date;

group! {
    /// TEXT.
    Shield "shield" {
        kind: ShieldKind {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        expires: Date {
            sheet: Outside, bound: Any, plain: Unknown,
            label: "expires", note: "",
            how: "",
            why: "",
        }
        modified: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "modified", note: "",
            how: "",
            why: "",
        }
        bolts_needed: u32 {
            sheet: Outside, bound: NotNegative, plain: Number(0.0),
            label: "bolts needed", note: "",
            how: "",
            why: "",
        }
        bolts_available: u32 {
            sheet: Outside, bound: NotNegative, plain: Number(0.0),
            label: "bolts available", note: "",
            how: "",
            why: "",
        }
        uses_upper_hole: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "uses upper hole", note: "",
            how: "",
            why: "",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.5),
            label: "clear in", note: "",
            how: "",
            why: "",
        }
    }
}
