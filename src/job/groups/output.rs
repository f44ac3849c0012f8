//! The back of the unit.

use super::group;
use crate::job::Bound::{Any, OneOf};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{DriveLayout, Length, OutputEnd, ParkDrum, Tail};

group! {
    /// The output shaft and rear housing, as they are and as they will be.
    Output "output" {
        spline: u32 {
            sheet: Outside, bound: OneOf(&[27.0, 32.0]), plain: Number(32.0),
            label: "Splines on the output shaft", note: "",
            how: "Paint one spline and count round to it, twice.",
            why: "The yoke must have the same count, and the 27-spline shaft is the weaker one.",
        }
        end: OutputEnd {
            sheet: Outside, bound: Any, plain: Word("plain"),
            label: "End of the output shaft", note: "",
            how: "Look at the end of the shaft for a tapped hole.",
            why: "A bolt-on yoke needs the tapped hole; a slip yoke does not mind it.",
        }
        o_ring: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "O-ring on the output shaft", note: "",
            how: "Shine a light up the tail and look for a rubber ring in a groove of the shaft.",
            why: "It belongs under a bolt-on yoke only; a slip yoke tears it or jams on it.",
        }
        shaft_layout: DriveLayout {
            sheet: Inside, bound: Any, plain: Word("two_wheel"),
            label: "Output shaft made for", note: "",
            how: "Look at the shaft once the unit is apart: a short stub without a place for a yoke is for four driven \
                wheels.",
            why: "A two-wheel vehicle needs the other shaft and another rear housing.",
        }
        length: Length {
            sheet: Inside, bound: Any, plain: Word("short"),
            label: "Output shaft length", note: "",
            how: "Measure what stands bare: about 9.5 in is the short shaft.",
            why: "It must go with the rear housing of the same length.",
        }
        tail_length: Length {
            sheet: Outside, bound: Any, plain: Word("short"),
            label: "Rear housing length", note: "",
            how: "Measure the housing from its bolting face to where the seal sits; near 4.5 in it is the short one.",
            why: "A shaft of the other length does not reach the bushing, or sticks out of it.",
        }
        tail: Tail {
            sheet: Outside, bound: Any, plain: Word("slip"),
            label: "Rear housing", note: "",
            how: "Look for a bushing with a lip seal, a bolted yoke, an adapter face, or a ball bearing at the very \
                end.",
            why: "Only the one with a bushing can carry a slip yoke.",
        }
        park_drum: ParkDrum {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "Brake drum at the back of the unit", note: "",
            how: "Look for a drum behind the rear housing, or for the holes where one used to be.",
            why: "Taking it off takes the parking brake with it.",
        }
        swap_planned: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Output shaft to be swapped", note: "",
            how: "Read the draft spec and ask whether another shaft goes on the rear gear set.",
            why: "It adds a step while the gear set is out.",
        }
        tail_changed: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Output or tail differs from what came out", note: "",
            how: "Compare the new shaft and housing with the old ones, or with the photographs from intake.",
            why: "The yoke moves, so the driveshaft must be measured again.",
        }
    }
}
