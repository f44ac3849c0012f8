//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word};
use crate::job::choices::ThreadSystem;
use crate::quantity::{Diameter, Quantity};

group! {
    /// TEXT.
    Threads "threads" {
        linkage_shaft: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "linkage shaft", note: "",
            how: "",
            why: "",
        }
        linkage_nut: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "linkage nut", note: "",
            how: "",
            why: "",
        }
        speedometer_hole: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "speedometer hole", note: "",
            how: "",
            why: "",
        }
        speedometer_bolt: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "speedometer bolt", note: "",
            how: "",
            why: "",
        }
        mount_hole: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "mount hole", note: "",
            how: "",
            why: "",
        }
        mount_bolt: ThreadSystem {
            sheet: Outside, bound: Any, plain: Word("inch"),
            label: "mount bolt", note: "",
            how: "",
            why: "",
        }
        mount_engage_d: Quantity<Diameter> {
            sheet: Measured, bound: NotNegative, plain: Number(1.5),
            label: "mount engage d", note: "",
            how: "",
            why: "",
        }
    }
}
