//! TEXT.

use super::group;
use crate::job::Bound::{Any, OneOfOrWhole};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{FreeTurn, LowOneWay, OneWayKind, RaceShape, RaceState};

group! {
    /// TEXT.
    OneWay "one_way" {
        race_shape: RaceShape {
            sheet: Inside, bound: Any, plain: Word("round"),
            label: "race shape", note: "",
            how: "",
            why: "",
        }
        race_state: RaceState {
            sheet: Inside, bound: Any, plain: Word("smooth"),
            label: "race state", note: "",
            how: "",
            why: "",
        }
        kind: OneWayKind {
            sheet: Spec, bound: Any, plain: Word("sprag"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        elements: u32 {
            sheet: Spec, bound: OneOfOrWhole(&[16.0, 34.0, 36.0]), plain: Number(16.0),
            label: "elements", note: "",
            how: "",
            why: "",
        }
        free: FreeTurn {
            sheet: Measured, bound: Any, plain: Word("clockwise"),
            label: "free", note: "",
            how: "",
            why: "",
        }
        ring_seated: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "ring seated", note: "",
            how: "",
            why: "",
        }
        low: LowOneWay {
            sheet: Measured, bound: Any, plain: Word("correct"),
            label: "low", note: "",
            how: "",
            why: "",
        }
    }
}
