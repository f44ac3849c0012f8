//! The driver's lever.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::{Length, ShiftOrder, ShifterKind};

group! {
    /// The shifter and the switches that go with it.
    Shifter "shifter" {
        kind: ShifterKind {
            sheet: Outside, bound: Any, plain: Word("floor_factory"),
            label: "Shifter", note: "",
            how: "Look where the lever is, and whether it came with the vehicle.",
            why: "An aftermarket floor shifter has to keep the driver out of reverse by itself.",
        }
        pattern: ShiftOrder {
            sheet: Outside, bound: Any, plain: Word("forward"),
            label: "Order of the shift gate", note: "",
            how: "With the engine off, go one notch past neutral and read the gate: third there is forward, first is \
                reverse.",
            why: "A gate of the other order sends the driver into low when high was meant.",
        }
        reverse_lockout: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "Lockout before reverse", note: "",
            how: "With the engine off, pull lightly toward reverse without lifting anything, and see whether it goes \
                in.",
            why: "It keeps a hurried hand out of reverse at speed, and rulebooks ask for it.",
        }
        neutral_switch: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "Cranks only in park or neutral", note: "",
            how: "Wheels chocked, brake held, nobody around the vehicle: try to crank for a moment in every position.",
            why: "A vehicle that starts in gear can run someone over.",
        }
        lever_length: Length {
            sheet: Outside, bound: Any, plain: Word("short"),
            label: "Shift arm at the case", note: "",
            how: "Lay the arm beside the shop's two samples.",
            why: "The long arm belongs with the switch on the side of the case, the short one without it.",
        }
        side_switch: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "Switch around the shift shaft", note: "",
            how: "Look on the left of the case for a switch that the shift shaft passes through.",
            why: "A short arm runs into such a switch before it reaches every range.",
        }
    }
}
