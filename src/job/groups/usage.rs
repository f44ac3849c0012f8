//! What the unit is for.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::UseKind;
use crate::quantity::{MilePerHour, Quantity};

group! {
    /// What the vehicle is used for, as the customer says it.
    Usage "use" {
        kind: UseKind {
            sheet: Spec, bound: Any, plain: Word("street"),
            label: "Main use", note: "",
            how: "Ask what the vehicle does on most weekends, and go by that rather than by what the owner calls it.",
            why: "It sets how much shock, heat and noise the build has to live with.",
        }
        raced: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Timed or inspected at events", note: "",
            how: "Ask about the coming twelve months: any timed pass, any inspection by an official.",
            why: "A yes brings in the class table and the date on every safety label.",
        }
        road_driven: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "Driven on the road", note: "",
            how: "Ask whether it is plated and insured, and whether it drives to the event or rides there on a \
                trailer.",
            why: "Road use brings in noise, heat, the speedometer and what the law asks for.",
        }
        cruise_mph: Quantity<MilePerHour> {
            sheet: Spec, bound: NotNegative, plain: Number(65.0),
            label: "Usual cruising speed", note: "held for miles in top gear",
            how: "Ask what the needle shows on a long drive, and mark the figure as told by the customer.",
            why: "A converter that has not taken hold at this pace makes heat for as long as the drive lasts.",
        }
    }
}
