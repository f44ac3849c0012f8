//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{Cooler, CoolerAction, Hose, PortThread};
use crate::quantity::{Inch, Quantity, SecondPerQuart};

group! {
    /// TEXT.
    Cooling "cooling" {
        port: PortThread {
            sheet: Outside, bound: Any, plain: Word("straight"),
            label: "port", note: "",
            how: "",
            why: "",
        }
        cooler: Cooler {
            sheet: Spec, bound: Any, plain: Word("radiator"),
            label: "cooler", note: "",
            how: "",
            why: "",
        }
        fitting: PortThread {
            sheet: Spec, bound: Any, plain: Word("straight"),
            label: "fitting", note: "",
            how: "",
            why: "",
        }
        fitting_washer: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "fitting washer", note: "",
            how: "",
            why: "",
        }
        hose: Hose {
            sheet: Outside, bound: Any, plain: Word("rated"),
            label: "hose", note: "",
            how: "",
            why: "",
        }
        line_id_in: Quantity<Inch> {
            sheet: Outside, bound: NotNegative, plain: Number(0.31),
            label: "line id in", note: "",
            how: "",
            why: "",
        }
        action: CoolerAction {
            sheet: Paper, bound: Any, plain: Word("flushed"),
            label: "action", note: "",
            how: "",
            why: "",
        }
        flow_s_per_qt: Quantity<SecondPerQuart> {
            sheet: Measured, bound: NotNegative, plain: Number(15.0),
            label: "flow s per qt", note: "",
            how: "",
            why: "",
        }
        inline_filter: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "inline filter", note: "",
            how: "",
            why: "",
        }
    }
}
