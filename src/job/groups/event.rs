//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::Unknown;
use crate::quantity::{MilePerHour, Quantity, Second};
use jiff::civil::Date;

group! {
    /// TEXT.
    Event "event" {
        quarter_mile_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "quarter mile s", note: "",
            how: "",
            why: "",
        }
        trap_mph: Quantity<MilePerHour> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "trap mph", note: "",
            how: "",
            why: "",
        }
        date: Date {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "date", note: "",
            how: "",
            why: "",
        }
    }
}
