//! The front pump.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{Bushing, DriveGear};
use crate::quantity::{Inch, Quantity};

group! {
    /// The front pump: its bolts, gears, bushing and seals.
    Pump "pump" {
        holes: u32 {
            sheet: Outside, bound: OneOf(&[6.0, 7.0, 8.0]), plain: Number(6.0),
            label: "Holes through the pump flange", note: "",
            how: "Count the bolt holes through the flange, from a chalk mark all the way round.",
            why: "It is one of the three counts that limit how many bolts hold a bolt-on bell.",
        }
        face_clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.0018),
            label: "Pump gear to face clearance", note: "",
            how: "Lay the clean gears in the body, put a straightedge across and try feelers over each gear.",
            why: "Too much loses pressure and volume; too little scores the faces.",
        }
        bushing: Bushing {
            sheet: Inside, bound: Any, plain: Word("good"),
            label: "Pump bushing", note: "",
            how: "Look at it under a light, feel for a step, and try the converter's hub in it.",
            why: "A worn or wandered bushing leaks at the front and lets the pump gears scuff.",
        }
        drive_gear: DriveGear {
            sheet: Inside, bound: Any, plain: Word("correct"),
            label: "Side of the pump drive gear", note: "",
            how: "Compare the relief at the gear's tangs with the pump maker's picture: it faces the converter.",
            why: "Upside down it jams on the hub and breaks at bolt-up.",
        }
        aligned: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "Pump halves aligned before tightening", note: "",
            how: "Put the alignment band or sleeve around both halves, tighten their bolts, and only then take it off.",
            why: "Halves out of line bind in the case bore.",
        }
        bolt_seals: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "New seals on the pump bolts", note: "",
            how: "Look under each bolt head for a new sealing washer or ring before the pump goes on.",
            why: "A leak here is blamed on the front seal, and the unit comes out again.",
        }
    }
}
