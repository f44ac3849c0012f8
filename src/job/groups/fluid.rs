//! The fluid.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::quantity::{Quantity, Quart};

group! {
    /// The fluid: which, how much, and whether the unit leaves with any.
    Fluid "fluid" {
        required: String {
            sheet: Spec, bound: Any, plain: Word("type_1"),
            label: "Fluid the build asks for", note: "",
            how: "Read the friction maker's and the valve body's sheets, and write the fluid type in the shop's own \
                words.",
            why: "The lining's grip is made for one kind of fluid.",
        }
        used: String {
            sheet: Paper, bound: Any, plain: Word("type_1"),
            label: "Fluid that went in", note: "",
            how: "Read the bottle, and write the type in the same words as the one asked for.",
            why: "It must be the fluid the build asks for.",
        }
        mixed: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "Old fluid still in converter or cooler", note: "",
            how: "Ask whether both were drained and flushed, and look at what comes out of the return.",
            why: "A mixture changes the grip of the lining.",
        }
        capacity_qt: Quantity<Quart> {
            sheet: Spec, bound: NotNegative, plain: Number(11.0),
            label: "Fluid the dry unit takes", note: "with this pan and converter",
            how: "Take the shop's figure for this pan and converter; about 11 is usual for a stock deep pan.",
            why: "It is what the fill is held against.",
        }
        added_qt: Quantity<Quart> {
            sheet: Paper, bound: NotNegative, plain: Number(10.5),
            label: "Fluid put in", note: "converter included",
            how: "Count the empty bottles, and read the last one by its marks.",
            why: "Too little burns the unit, too much foams and comes out of the vent.",
        }
        shipped_dry: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "Leaves without fluid", note: "",
            how: "Ask how the unit goes to the customer, and look at the stick.",
            why: "A unit that is started dry loses its pump within a minute.",
        }
        dry_tag: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "Tags that warn of no fluid", note: "",
            how: "Look for the tag in both places before the unit is loaded.",
            why: "It is what stops the next person from starting the unit dry.",
        }
    }
}
