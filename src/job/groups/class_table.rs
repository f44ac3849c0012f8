//! The rulebook, as the shop keeps it.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::Unknown;
use crate::job::Year;
use crate::quantity::{MilePerHour, Quantity, Second};

group! {
    /// The class table: what the rulebook asks for in this class. The shop owns it and keeps it current.
    ClassTable "class_table" {
        year: Year {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "Year of the class table", note: "",
            how: "Read the cover of the rulebook the table was typed from.",
            why: "Rules change every year, and an old table proves nothing.",
        }
        shield_always: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "Shield always asked for", note: "",
            how: "Read the class in the current rulebook, and ask the track when it is unclear.",
            why: "The class may ask for a shield at any speed.",
        }
        shield_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Shield asked for at this time or quicker", note: "",
            how: "Read it from the class in the current rulebook.",
            why: "It tells whether this car needs a transmission shield.",
        }
        shield_mph: Quantity<MilePerHour> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Shield asked for at this speed or faster", note: "",
            how: "Read it from the class in the current rulebook.",
            why: "A slow time with a high speed still needs the shield.",
        }
        shield_with_brake: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "Shield asked for with any trans brake", note: "",
            how: "Read the class in the current rulebook, in its part on transmissions.",
            why: "Some classes ask for the shield as soon as there is a brake.",
        }
        stick_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Locking dipstick asked for at this time or quicker", note: "",
            how: "Read it from the class in the current rulebook.",
            why: "It tells whether a plain dipstick will pass.",
        }
        flexplate_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Certified flexplate asked for at this time or quicker", note: "",
            how: "Read it from the class in the current rulebook.",
            why: "It tells whether this car needs a certified flexplate and its shield.",
        }
        flexplate_mph: Quantity<MilePerHour> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Certified flexplate asked for at this speed or faster", note: "",
            how: "Read it from the class in the current rulebook.",
            why: "Speed alone can ask for the certified flexplate.",
        }
        loop_slick_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Driveshaft loop on slicks at this time or quicker", note: "",
            how: "Read it from the class in the current rulebook.",
            why: "Slicks shock the driveline, so the loop is asked for sooner.",
        }
        loop_street_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Unknown,
            label: "Driveshaft loop on street tires at this time or quicker", note: "",
            how: "Read it from the class in the current rulebook.",
            why: "It tells whether this car needs a loop on street tires.",
        }
        brake_allowed: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "Trans brake allowed", note: "",
            how: "Read the class in the current rulebook, and ask the track when it is unclear.",
            why: "Building a brake for a class that forbids it wastes the customer's money.",
        }
    }
}
