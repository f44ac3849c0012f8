//! What carries the back of the unit.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::MountKind;

group! {
    /// The mount under the tail.
    Mount "mount" {
        kind: MountKind {
            sheet: Spec, bound: Any, plain: Word("rubber"),
            label: "Transmission mount", note: "",
            how: "Look between the tail and the crossmember, and ask.",
            why: "A mount stiffer than the engine's makes the case carry the twist.",
        }
        pulled: bool {
            sheet: Measured, bound: Any, plain: YesNo(false),
            label: "Mount pulled into place", note: "",
            how: "With the unit on a jack, see whether the crossmember bolts start by hand or need a pry bar.",
            why: "A mount under strain cracks the tail or the ear of the case.",
        }
    }
}
