//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::UseKind;
use crate::quantity::{MilePerHour, Quantity};

group! {
    /// TEXT.
    Usage "use" {
        kind: UseKind {
            sheet: Spec, bound: Any, plain: Word("street"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        raced: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "raced", note: "",
            how: "",
            why: "",
        }
        road_driven: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "road driven", note: "",
            how: "",
            why: "",
        }
        cruise_mph: Quantity<MilePerHour> {
            sheet: Spec, bound: NotNegative, plain: Number(65.0),
            label: "cruise mph", note: "",
            how: "",
            why: "",
        }
    }
}
