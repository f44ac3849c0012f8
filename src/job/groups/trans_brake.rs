//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Unknown};
use crate::quantity::{Inch, Quantity, Second, Volt};

group! {
    /// TEXT.
    TransBrake "trans_brake" {
        relay: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "relay", note: "",
            how: "",
            why: "",
        }
        volts: Quantity<Volt> {
            sheet: Measured, bound: NotNegative, plain: Unknown,
            label: "volts", note: "",
            how: "",
            why: "",
        }
        speed_lock: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "speed lock", note: "",
            how: "",
            why: "",
        }
        solenoid_clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Unknown,
            label: "solenoid clear in", note: "",
            how: "",
            why: "",
        }
        hold_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Number(0.0),
            label: "hold s", note: "",
            how: "",
            why: "",
        }
    }
}
