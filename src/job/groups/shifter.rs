//! TEXT.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::{Length, ShiftOrder, ShifterKind};

group! {
    /// TEXT.
    Shifter "shifter" {
        kind: ShifterKind {
            sheet: Outside, bound: Any, plain: Word("floor_factory"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        pattern: ShiftOrder {
            sheet: Outside, bound: Any, plain: Word("forward"),
            label: "pattern", note: "",
            how: "",
            why: "",
        }
        reverse_lockout: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "reverse lockout", note: "",
            how: "",
            why: "",
        }
        neutral_switch: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "neutral switch", note: "",
            how: "",
            why: "",
        }
        lever_length: Length {
            sheet: Outside, bound: Any, plain: Word("short"),
            label: "lever length", note: "",
            how: "",
            why: "",
        }
        side_switch: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "side switch", note: "",
            how: "",
            why: "",
        }
    }
}
