//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{Bushing, DriveGear};
use crate::quantity::{Inch, Quantity};

group! {
    /// TEXT.
    Pump "pump" {
        holes: u32 {
            sheet: Outside, bound: OneOf(&[6.0, 7.0, 8.0]), plain: Number(6.0),
            label: "holes", note: "",
            how: "",
            why: "",
        }
        face_clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.0018),
            label: "face clear in", note: "",
            how: "",
            why: "",
        }
        bushing: Bushing {
            sheet: Inside, bound: Any, plain: Word("good"),
            label: "bushing", note: "",
            how: "",
            why: "",
        }
        drive_gear: DriveGear {
            sheet: Inside, bound: Any, plain: Word("correct"),
            label: "drive gear", note: "",
            how: "",
            why: "",
        }
        aligned: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "aligned", note: "",
            how: "",
            why: "",
        }
        bolt_seals: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "bolt seals", note: "",
            how: "",
            why: "",
        }
    }
}
