//! What tells the speed.

use super::group;
use crate::job::Bound::{Any, NotNegative, Positive};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{SpeedometerDrive, SpeedometerHole, SpeedometerKind};

group! {
    /// The speedometer and the gears that drive it.
    Speedometer "speedometer" {
        kind: SpeedometerKind {
            sheet: Spec, bound: Any, plain: Word("cable"),
            label: "Speedometer", note: "",
            how: "Look at the dash and behind it for a cable, a sensor's wire or a satellite unit, and ask when \
                unsure.",
            why: "It decides which drive parts the unit needs.",
        }
        drive: SpeedometerDrive {
            sheet: Inside, bound: Any, plain: Word("plastic"),
            label: "Speedometer drive on the output shaft", note: "",
            how: "Shine a light into the speedometer hole: a colored worm is plastic and clipped on, a bare metal worm \
                is pressed on, a ring with teeth serves a sensor.",
            why: "Steel worms come in two or three counts only and are destroyed when pressed off.",
        }
        drive_teeth: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(8.0),
            label: "Starts on the drive worm", note: "",
            how: "Count how many threads start at the end of the worm. Of a plastic one the color says it too; the \
                  shop has a chart.",
            why: "It goes into the speedometer sum.",
        }
        driven_teeth: u32 {
            sheet: Outside, bound: Positive, plain: Number(20.0),
            label: "Teeth on the driven gear", note: "",
            how: "Pull the holder out with the unit drained or tail high, and count the teeth of the small gear.",
            why: "It goes into the speedometer sum.",
        }
        driven_fits_housing: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "Holder suits the driven gear", note: "",
            how: "Compare the range marked on the holder with the number of teeth in your hand.",
            why: "The wrong holder sets the gear too deep or too shallow and strips the worm.",
        }
        pickup_tail: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "Sensor boss in the rear housing", note: "",
            how: "Look at the rear housing for a machined boss with a hole for a sensor.",
            why: "An electronic speedometer gets its signal there.",
        }
        hole: SpeedometerHole {
            sheet: Spec, bound: Any, plain: Word("gear"),
            label: "Speedometer hole", note: "",
            how: "Look at what closes the hole: the gear in its holder, a plug, or nothing.",
            why: "An open hole pours the fluid out.",
        }
        other_fitted: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Another speedometer is fitted", note: "",
            how: "Ask, and look for a satellite or wheel-sensor speedometer that shows a speed.",
            why: "A road vehicle with the drive plugged needs another one.",
        }
        signal_needed: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Something else needs the speed signal", note: "",
            how: "Ask about the engine computer, cruise control and dash, and ask the tuner when unsure.",
            why: "They lose their signal when the drive is plugged.",
        }
    }
}
