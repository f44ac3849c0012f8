//! The clutches that turn one way only.

use super::group;
use crate::job::Bound::{Any, OneOfOrWhole};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{FreeTurn, LowOneWay, OneWayKind, RaceShape, RaceState};

group! {
    /// The one-way clutch on the direct drum, and the one on the center support.
    OneWay "one_way" {
        race_shape: RaceShape {
            sheet: Inside, bound: Any, plain: Word("round"),
            label: "Race on the direct drum", note: "",
            how: "Run a finger round the rear hub of the drum: smooth all the way, or a slope that repeats every \
                couple of inches. A larger smooth hub is an aftermarket drum.",
            why: "It decides which one-way clutch can go on at all.",
        }
        race_state: RaceState {
            sheet: Inside, bound: Any, plain: Word("smooth"),
            label: "Surface of that race", note: "",
            how: "Look along it with a light and draw a fingernail across: dents, pits or lines.",
            why: "A marked race lets the elements slip or tumble.",
        }
        kind: OneWayKind {
            sheet: Spec, bound: Any, plain: Word("sprag"),
            label: "One-way clutch on the direct drum", note: "",
            how: "Look at it: rollers with springs, or a full cage of tilting elements.",
            why: "Rollers need ramps, and tilting elements need a round race.",
        }
        elements: u32 {
            sheet: Spec, bound: OneOfOrWhole(&[16.0, 34.0, 36.0]), plain: Number(16.0),
            label: "Elements in the one-way clutch", note: "",
            how: "Count them round from a paint mark.",
            why: "More elements carry more torque, and 36 need the large hub.",
        }
        free: FreeTurn {
            sheet: Measured, bound: Any, plain: Word("clockwise"),
            label: "One-way clutch turns freely", note: "seen with the drum's rear face up",
            how: "Set the drum rear face up, hold it still and turn the outer race by hand: it must turn clockwise and \
                lock the other way.",
            why: "Backward gives no second gear and ties the unit up in third.",
        }
        ring_seated: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "Retaining ring of the race seated", note: "",
            how: "Look all round for the ring to lie fully in its groove, then tap the race and look again.",
            why: "A race that walks off takes the drum with it.",
        }
        low: LowOneWay {
            sheet: Measured, bound: Any, plain: Word("correct"),
            label: "One-way clutch on the center support", note: "",
            how: "Try it by hand on the support before the support goes in, and compare its direction with the manual.",
            why: "Wrong way round there is no first gear in drive.",
        }
    }
}
