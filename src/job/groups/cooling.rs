//! Keeping the fluid cool.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{Cooler, CoolerAction, Hose, PortThread};
use crate::quantity::{Inch, Quantity, SecondPerQuart};

group! {
    /// The cooler, its lines and fittings, and what was done about them.
    Cooling "cooling" {
        port: PortThread {
            sheet: Outside, bound: Any, plain: Word("straight"),
            label: "Thread of the cooler ports", note: "",
            how: "Turn both gauge fittings in by hand. A straight port takes its fitting fully and seals on a washer; \
                a taper one binds about half way.",
            why: "A fitting of the other kind, pulled tight, cracks the case at the port.",
        }
        cooler: Cooler {
            sheet: Spec, bound: Any, plain: Word("radiator"),
            label: "Cooler", note: "",
            how: "Follow both lines from the case to where they end, with the exhaust cold.",
            why: "Heat kills more units than anything else.",
        }
        fitting: PortThread {
            sheet: Spec, bound: Any, plain: Word("straight"),
            label: "Thread of the cooler fittings", note: "",
            how: "Look at the fitting: a flat shoulder for a washer is straight, a cone of thread is taper pipe.",
            why: "It must match the port, whatever happens to be in the drawer.",
        }
        fitting_washer: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "New washer under a straight fitting", note: "",
            how: "See that a new washer lies under the head before the fitting is tightened.",
            why: "Only the washer seals a straight fitting; the thread itself lets fluid by.",
        }
        hose: Hose {
            sheet: Outside, bound: Any, plain: Word("rated"),
            label: "Cooler hose", note: "",
            how: "What a hose is made for is printed along it: transmission fluid, and how much pressure; steel line \
                  counts as hard line.",
            why: "Fuel or heater hose softens and bursts, and hot fluid burns.",
        }
        line_id_in: Quantity<Inch> {
            sheet: Outside, bound: NotNegative, plain: Number(0.31),
            label: "Smallest bore in the cooler lines", note: "",
            how: "Find the narrowest place in the run, fittings too, and try drill shanks in it with the lines off.",
            why: "A narrow place starves the rear of the unit of oil and cooling.",
        }
        action: CoolerAction {
            sheet: Paper, bound: Any, plain: Word("flushed"),
            label: "What was done to the cooler", note: "",
            how: "Write down who flushed or replaced it, and when. Wear glasses; flushing fluid comes back under \
                pressure.",
            why: "The debris of the last failure waits there for the new build.",
        }
        flow_s_per_qt: Quantity<SecondPerQuart> {
            sheet: Measured, bound: NotNegative, plain: Number(15.0),
            label: "Time for the cooler to return one quart", note: "hot, idling",
            how: "Run the return line into a marked bucket, with an extra quart in the unit, and time one quart. The \
                fluid is hot: gloves and face shield.",
            why: "A slow return means a blocked cooler or line.",
        }
        inline_filter: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Filter in the return line", note: "",
            how: "Look along the return line for a filter, and read the spec for one to be fitted.",
            why: "After a failure it catches what the flush has missed.",
        }
    }
}
