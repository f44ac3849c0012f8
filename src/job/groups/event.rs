//! The day it has to be ready.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::Unknown;
use crate::quantity::{MilePerHour, Quantity, Second};
use jiff::civil::Date;

group! {
    /// The next event and what the car is expected to run there.
    Event "event" {
        quarter_mile_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Quickest quarter mile expected", note: "",
            how: "Ask for a time slip, and for what the new build is hoped to do; write the quicker one.",
            why: "The class table asks for safety gear by this time.",
        }
        trap_mph: Quantity<MilePerHour> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Fastest speed at the finish expected", note: "",
            how: "Ask for a time slip and what the new build is hoped to do; write the faster one.",
            why: "Some gear is asked for by speed, whatever the time is.",
        }
        date: Date {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "Date of the next event", note: "",
            how: "Ask, and look it up in the calendar of the track.",
            why: "Every label is held against this day and not against today.",
        }
    }
}
