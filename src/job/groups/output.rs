//! TEXT.

use super::group;
use crate::job::Bound::{Any, OneOf};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{DriveLayout, Length, OutputEnd, ParkDrum, Tail};

group! {
    /// TEXT.
    Output "output" {
        spline: u32 {
            sheet: Outside, bound: OneOf(&[27.0, 32.0]), plain: Number(32.0),
            label: "spline", note: "",
            how: "",
            why: "",
        }
        end: OutputEnd {
            sheet: Outside, bound: Any, plain: Word("plain"),
            label: "end", note: "",
            how: "",
            why: "",
        }
        o_ring: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "o ring", note: "",
            how: "",
            why: "",
        }
        shaft_layout: DriveLayout {
            sheet: Inside, bound: Any, plain: Word("two_wheel"),
            label: "shaft layout", note: "",
            how: "",
            why: "",
        }
        length: Length {
            sheet: Inside, bound: Any, plain: Word("short"),
            label: "length", note: "",
            how: "",
            why: "",
        }
        tail_length: Length {
            sheet: Outside, bound: Any, plain: Word("short"),
            label: "tail length", note: "",
            how: "",
            why: "",
        }
        tail: Tail {
            sheet: Outside, bound: Any, plain: Word("slip"),
            label: "tail", note: "",
            how: "",
            why: "",
        }
        park_drum: ParkDrum {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "park drum", note: "",
            how: "",
            why: "",
        }
        swap_planned: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "swap planned", note: "",
            how: "",
            why: "",
        }
        tail_changed: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "tail changed", note: "",
            how: "",
            why: "",
        }
    }
}
