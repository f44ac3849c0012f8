//! TEXT.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::{VentFitting, VentOutlet, VentPort};

group! {
    /// TEXT.
    Vent "vent" {
        port: VentPort {
            sheet: Outside, bound: Any, plain: Word("factory_tube"),
            label: "port", note: "",
            how: "",
            why: "",
        }
        outlet: VentOutlet {
            sheet: Spec, bound: Any, plain: Word("hose"),
            label: "outlet", note: "",
            how: "",
            why: "",
        }
        blocked: bool {
            sheet: Measured, bound: Any, plain: YesNo(false),
            label: "blocked", note: "",
            how: "",
            why: "",
        }
        line_dips: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "line dips", note: "",
            how: "",
            why: "",
        }
        fitting_angle: VentFitting {
            sheet: Spec, bound: Any, plain: Word("none"),
            label: "fitting angle", note: "",
            how: "",
            why: "",
        }
        can_drain_guarded: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "can drain guarded", note: "",
            how: "",
            why: "",
        }
        can_open_top: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "can open top", note: "",
            how: "",
            why: "",
        }
    }
}
