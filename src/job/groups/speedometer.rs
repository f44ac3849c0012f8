//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, Positive};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{SpeedometerDrive, SpeedometerHole, SpeedometerKind};

group! {
    /// TEXT.
    Speedometer "speedometer" {
        kind: SpeedometerKind {
            sheet: Spec, bound: Any, plain: Word("cable"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        drive: SpeedometerDrive {
            sheet: Inside, bound: Any, plain: Word("plastic"),
            label: "drive", note: "",
            how: "",
            why: "",
        }
        drive_teeth: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(8.0),
            label: "drive teeth", note: "",
            how: "",
            why: "",
        }
        driven_teeth: u32 {
            sheet: Outside, bound: Positive, plain: Number(20.0),
            label: "driven teeth", note: "",
            how: "",
            why: "",
        }
        driven_fits_housing: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "driven fits housing", note: "",
            how: "",
            why: "",
        }
        pickup_tail: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "pickup tail", note: "",
            how: "",
            why: "",
        }
        hole: SpeedometerHole {
            sheet: Spec, bound: Any, plain: Word("gear"),
            label: "hole", note: "",
            how: "",
            why: "",
        }
        other_fitted: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "other fitted", note: "",
            how: "",
            why: "",
        }
        signal_needed: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "signal needed", note: "",
            how: "",
            why: "",
        }
    }
}
