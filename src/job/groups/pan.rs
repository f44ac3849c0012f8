//! Pan and filter.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::PanDepth;
use crate::quantity::{Inch, Quantity};

group! {
    /// The pan and the parts that must match its depth.
    Pan "pan" {
        depth: PanDepth {
            sheet: Outside, bound: Any, plain: Word("deep"),
            label: "Pan", note: "",
            how: "Look at it from the side beside the shop's two samples: the deep one is about twice as deep.",
            why: "Filter tube and bolt have to be of the same kind.",
        }
        filter_tube: PanDepth {
            sheet: Outside, bound: Any, plain: Word("deep"),
            label: "Filter tube", note: "",
            how: "Lay it beside the shop's two samples and compare lengths.",
            why: "One that is too short sucks air; one that is too long is crushed by the pan.",
        }
        filter_bolt: PanDepth {
            sheet: Outside, bound: Any, plain: Word("deep"),
            label: "Filter bolt and spacer", note: "",
            how: "Lay them beside the samples: the deep pan takes the longer bolt with its spacer.",
            why: "The wrong one leaves the filter loose or crushed.",
        }
        intake_o_ring: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "O-ring on the filter tube", note: "",
            how: "Feel the ring drag as the tube goes into the case.",
            why: "Air gets in where it is missing, and the unit makes no pressure.",
        }
        ground_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(7.0),
            label: "Pan above the ground", note: "ready to drive",
            how: "Measure from level ground to the lowest point of the pan. Do not reach under a vehicle held by a \
                jack.",
            why: "Rocks and bumps find a low pan first.",
        }
    }
}
