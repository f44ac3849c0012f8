//! Between unit and driveshaft.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf};
use crate::job::Plain::{Number, Word};
use crate::job::choices::YokeKind;
use crate::quantity::{Inch, Quantity};

group! {
    /// The driveshaft yoke at the unit and how it fits.
    Yoke "yoke" {
        kind: YokeKind {
            sheet: Outside, bound: Any, plain: Word("slip"),
            label: "Yoke", note: "",
            how: "Look at the yoke. A recessed one has a wider bore at the front of its splines; a bolt-on one is held \
                by a bolt in the shaft.",
            why: "A recessed yoke jams on an O-ring, and a bolt-on one leaves no slip.",
        }
        spline: u32 {
            sheet: Outside, bound: OneOf(&[27.0, 32.0]), plain: Number(32.0),
            label: "Splines in the yoke", note: "",
            how: "Mark one and count round, twice.",
            why: "It must equal the count on the output shaft.",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: Any, plain: Number(0.003),
            label: "Yoke clearance in the tail bushing", note: "bore less yoke, below 0 is an interference",
            how: "Measure the bushing with a bore gauge and the yoke with a micrometer, both at room temperature.",
            why: "Too tight it seizes on the road; too loose it leaks and shakes.",
        }
        engaged_droop_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(2.5),
            label: "Spline engaged at full droop", note: "",
            how: "With the vehicle on rated stands and the axle hanging, mark the yoke at the seal, pull it out and \
                measure.",
            why: "A yoke that comes out drops the shaft at speed.",
        }
        gap_bump_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.75),
            label: "Yoke's room to move at full bump", note: "before it bottoms",
            how: "Raise the axle to its stop with the vehicle on rated stands, then push the yoke forward and measure \
                how far it still goes.",
            why: "A yoke that bottoms hammers the output shaft forward.",
        }
    }
}
