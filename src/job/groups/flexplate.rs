//! Between the crank and the converter.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf, OneOfOrWhole};
use crate::job::Plain::{Number, Unknown, Word};
use crate::job::choices::{Balance, FlexplateShield, FlexplateSpec};
use crate::quantity::{Inch, Quantity};
use jiff::civil::Date;

group! {
    /// The flexplate: its teeth, bolt circle, balance, label and shield.
    Flexplate "flexplate" {
        balance: Balance {
            sheet: Outside, bound: Any, plain: Word("internal"),
            label: "How the flexplate is balanced", note: "",
            how: "Look for a heavy pad or plate welded off center: that is one for an external-balance engine.",
            why: "The wrong one shakes hard enough to ruin the pump bushing.",
        }
        teeth: u32 {
            sheet: Outside, bound: OneOfOrWhole(&[153.0, 168.0]), plain: Number(168.0),
            label: "Teeth on the flexplate", note: "",
            how: "Count them past a chalk mark, or measure the outside diameter and look it up in the shop chart.",
            why: "The starter must be made for the same ring, or it clashes.",
        }
        bolt_circle_in: Quantity<Inch> {
            sheet: Outside, bound: OneOf(&[0.0, 10.75, 11.5]), plain: Number(11.5),
            label: "Converter bolt circle of the flexplate", note: "0 when it is drilled for both",
            how: "Measure from the center of one converter hole to the center of the one across.",
            why: "It must match the pads on the converter, and slotting the holes to fit is never safe.",
        }
        runout_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.004),
            label: "Flexplate runout", note: "total, at the converter bolt circle",
            how: "Key out. Let a dial indicator ride where the converter bolts sit, and turn the crank by hand with a \
                  bar; with the spark plugs out it turns more easily.",
            why: "A plate that wobbles cracks, and the converter hub wipes out the pump bushing.",
        }
        spec: FlexplateSpec {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "Certification of the flexplate", note: "",
            how: "Read the label or the stamping, and photograph it so that the date can be read.",
            why: "Fast classes ask for a certified plate, because one that bursts sits beside the driver's feet.",
        }
        expires: Date {
            sheet: Outside, bound: Any, plain: Unknown,
            label: "Flexplate certified until", note: "last day it is valid",
            how: "Take the month on the label and add the years from the shop's table, then check them against the \
                current program list.",
            why: "An inspector goes by the date and not by the condition.",
        }
        shield: FlexplateShield {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "Flexplate shield", note: "",
            how: "Look around the plate for a separate steel ring and read the label on it.",
            why: "It catches the pieces when a plate or ring gear bursts, and fast classes ask for it.",
        }
        shield_expires: Date {
            sheet: Outside, bound: Any, plain: Unknown,
            label: "Flexplate shield certified until", note: "last day it is valid",
            how: "Take the month on its label and add the years from the shop's table.",
            why: "Out of date counts as missing at the track, however good it looks.",
        }
        pilot_recess_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.2),
            label: "Depth to the crank pilot bore",
            note: "from the flexplate's converter face to the mouth of the bore",
            how: "With the plate bolted to the crank, use a depth gauge from the converter side of the plate to the \
                mouth of the pilot bore.",
            why: "The pilot must bridge this depth before any of it is held by the crank.",
        }
    }
}
