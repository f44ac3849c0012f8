//! TEXT.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::MountKind;

group! {
    /// TEXT.
    Mount "mount" {
        kind: MountKind {
            sheet: Spec, bound: Any, plain: Word("rubber"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        pulled: bool {
            sheet: Measured, bound: Any, plain: YesNo(false),
            label: "pulled", note: "",
            how: "",
            why: "",
        }
    }
}
