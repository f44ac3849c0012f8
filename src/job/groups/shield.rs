//! If the case bursts.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Unknown, Word, YesNo};
use crate::job::choices::ShieldKind;
use crate::quantity::{Inch, Quantity};
use jiff::civil::Date;

group! {
    /// The shield around the case, its label and its fit.
    Shield "shield" {
        kind: ShieldKind {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "Transmission shield", note: "",
            how: "Look for a steel shell or a blanket around the case, and find its SFI 4.1 label.",
            why: "The case is thin and sits beside the driver's legs.",
        }
        expires: Date {
            sheet: Outside, bound: Any, plain: Unknown,
            label: "Shield certified until", note: "last day it is valid",
            how: "Take the month on the label and add the years from the shop's table, then check the current program \
                list.",
            why: "An inspector goes by the date and not by the condition.",
        }
        modified: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "Shield altered", note: "",
            how: "Look all over it for cuts, welds, bends and holes that its maker did not put there.",
            why: "Its certificate covers the shield as it left the maker and nothing else.",
        }
        bolts_needed: u32 {
            sheet: Outside, bound: NotNegative, plain: Number(0.0),
            label: "Bolts the shield needs", note: "0 when there is no shield",
            how: "Read its maker's sheet.",
            why: "A shield on fewer bolts than its maker asks for does not hold.",
        }
        bolts_available: u32 {
            sheet: Outside, bound: NotNegative, plain: Number(0.0),
            label: "Bolts the shield can get", note: "0 when there is no shield",
            how: "Hold it up with two people and count the bell bolts that can really go through it.",
            why: "A missing upper hole often leaves it one short.",
        }
        uses_upper_hole: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "Shield uses the upper bell hole", note: "",
            how: "Hold it in place and see whether it asks for the upper bell hole.",
            why: "On an engine without that hole the shield is a bolt short.",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.5),
            label: "Least gap around the shield", note: "to exhaust, floor or solenoid",
            how: "At mock-up, press putty between or use a feeler at the tightest place, exhaust cold.",
            why: "A shield that touches rubs through, rattles and carries heat.",
        }
    }
}
