//! TEXT.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::Word;
use crate::job::choices::{Fitted, RearPin};

group! {
    /// TEXT.
    Bands "bands" {
        front: Fitted {
            sheet: Inside, bound: Any, plain: Word("fitted"),
            label: "front", note: "",
            how: "",
            why: "",
        }
        rear_pin: RearPin {
            sheet: Measured, bound: Any, plain: Word("gauged"),
            label: "rear pin", note: "",
            how: "",
            why: "",
        }
    }
}
