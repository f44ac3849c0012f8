//! Inch and metric in one unit.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word};
use crate::job::choices::ThreadSystem;
use crate::quantity::{Diameter, Quantity};

group! {
    /// The thread system of each place that mixes them.
    Threads "threads" {
        linkage_shaft: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "Thread on the shift shaft", note: "",
            how: "Hold a thread gauge of each system against the shaft and see which one sits without light.",
            why: "One unit can carry inch and metric threads side by side.",
        }
        linkage_nut: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "Thread in the shift-lever nut", note: "",
            how: "Try the nut on the shop's two marked studs, by hand only.",
            why: "A nut of the other system starts, feels right and then strips.",
        }
        speedometer_hole: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "Thread of the speedometer clip hole", note: "",
            how: "Turn the two gauge bolts in by hand and keep the one that goes to the bottom.",
            why: "The small bolt that holds the holder in must match it.",
        }
        speedometer_bolt: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "Thread of the speedometer clip bolt", note: "",
            how: "Hold a thread gauge against the bolt itself.",
            why: "The wrong one pulls its thread out, and the holder drops out with the fluid behind it.",
        }
        mount_hole: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "Thread of the mount hole", note: "",
            how: "Gauge it: 3/8-16 and M10 x 1.5 feel alike for two turns. Support the unit on a jack before the mount \
                is loosened.",
            why: "Rear housings get swapped, so this hole may differ from the rest of the unit.",
        }
        mount_bolt: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "Thread of the mount bolt", note: "",
            how: "Hold a thread gauge of each system against the bolt.",
            why: "The wrong bolt strips the housing that carries the back of the unit.",
        }
        mount_engage_d: Quantity<Diameter> {
            sheet: Measured, bound: NotNegative, plain: Number(1.5),
            label: "Thread engaged in the mount hole", note: "as a multiple of the bolt's diameter",
            how: "Measure the bolt's length, take off everything it passes through, and divide by its diameter.",
            why: "Aluminum needs a bolt and a half's width of thread, or it pulls out.",
        }
    }
}
