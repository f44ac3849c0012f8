//! TEXT.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::StickKind;

group! {
    /// TEXT.
    Stick "stick" {
        kind: StickKind {
            sheet: Outside, bound: Any, plain: Word("rigid"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        locks: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "locks", note: "",
            how: "",
            why: "",
        }
        clears_shield: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "clears shield", note: "",
            how: "",
            why: "",
        }
        uses_upper_hole: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "uses upper hole", note: "",
            how: "",
            why: "",
        }
        retained: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "retained", note: "",
            how: "",
            why: "",
        }
        matches: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "matches", note: "",
            how: "",
            why: "",
        }
    }
}
