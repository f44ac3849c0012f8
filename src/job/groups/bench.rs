//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::AirChecks;
use crate::quantity::{Inch, Minute, Psi, Quantity};

group! {
    /// TEXT.
    Bench "bench" {
        line_stall_psi: Quantity<Psi> {
            sheet: Measured, bound: NotNegative, plain: Number(150.0),
            label: "line stall psi", note: "",
            how: "",
            why: "",
        }
        friction_soak_min: Quantity<Minute> {
            sheet: Paper, bound: NotNegative, plain: Number(30.0),
            label: "friction soak min", note: "",
            how: "",
            why: "",
        }
        air_checks: AirChecks {
            sheet: Measured, bound: Any, plain: Word("pass"),
            label: "air checks", note: "",
            how: "",
            why: "",
        }
        front_end_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.012),
            label: "front end play in", note: "",
            how: "",
            why: "",
        }
        rear_end_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.01),
            label: "rear end play in", note: "",
            how: "",
            why: "",
        }
        input_turns_free: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "input turns free", note: "",
            how: "",
            why: "",
        }
        line_drive_idle_psi: Quantity<Psi> {
            sheet: Measured, bound: NotNegative, plain: Number(70.0),
            label: "line drive idle psi", note: "",
            how: "",
            why: "",
        }
        line_reverse_idle_psi: Quantity<Psi> {
            sheet: Measured, bound: NotNegative, plain: Number(110.0),
            label: "line reverse idle psi", note: "",
            how: "",
            why: "",
        }
        gauge_cal_ok: bool {
            sheet: Paper, bound: Any, plain: YesNo(true),
            label: "gauge cal ok", note: "",
            how: "",
            why: "",
        }
    }
}
