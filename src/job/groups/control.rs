//! TEXT.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::{Fitted, GovernorBore, Kickdown, Modulator};

group! {
    /// TEXT.
    Control "control" {
        modulator_boost_protected: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "modulator boost protected", note: "",
            how: "",
            why: "",
        }
        governor: Fitted {
            sheet: Inside, bound: Any, plain: Word("fitted"),
            label: "governor", note: "",
            how: "",
            why: "",
        }
        governor_bore: GovernorBore {
            sheet: Inside, bound: Any, plain: Word("closed"),
            label: "governor bore", note: "",
            how: "",
            why: "",
        }
        modulator: Modulator {
            sheet: Inside, bound: Any, plain: Word("connected"),
            label: "modulator", note: "",
            how: "",
            why: "",
        }
        kickdown: Kickdown {
            sheet: Spec, bound: Any, plain: Word("electric"),
            label: "kickdown", note: "",
            how: "",
            why: "",
        }
        kickdown_switch: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "kickdown switch", note: "",
            how: "",
            why: "",
        }
    }
}
