//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::Unknown;
use crate::job::Year;
use crate::quantity::{MilePerHour, Quantity, Second};

group! {
    /// TEXT.
    ClassTable "class_table" {
        year: Year {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "year", note: "",
            how: "",
            why: "",
        }
        shield_always: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "shield always", note: "",
            how: "",
            why: "",
        }
        shield_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "shield s", note: "",
            how: "",
            why: "",
        }
        shield_mph: Quantity<MilePerHour> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "shield mph", note: "",
            how: "",
            why: "",
        }
        shield_with_brake: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "shield with brake", note: "",
            how: "",
            why: "",
        }
        stick_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "stick s", note: "",
            how: "",
            why: "",
        }
        flexplate_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "flexplate s", note: "",
            how: "",
            why: "",
        }
        flexplate_mph: Quantity<MilePerHour> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "flexplate mph", note: "",
            how: "",
            why: "",
        }
        loop_slick_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "loop slick s", note: "",
            how: "",
            why: "",
        }
        loop_street_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "loop street s", note: "",
            how: "",
            why: "",
        }
        brake_allowed: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "brake allowed", note: "",
            how: "",
            why: "",
        }
    }
}
