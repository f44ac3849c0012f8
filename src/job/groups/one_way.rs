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
            how: "Feel all the way round the hub at the back of the direct drum: even, or rising in slopes again and \
                again. Compare an even one with the samples, for the large hub.",
            why: "Rollers climb ramps, tilting elements need an even race, and the 36 need the large hub.",
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
            how: "Look into the clutch: springs pushing on rollers, or a cage full of small tilting pieces.",
            why: "Each kind works only on the race that was made for it.",
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
            how: "Lay the drum with its rear face up, hold it still and turn the outer race: clockwise it must run, \
                counterclockwise it must lock.",
            why: "Fitted backward, second gear is missing and third binds the whole unit.",
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
