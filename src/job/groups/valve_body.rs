//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{BrakeKind, BridgeDemand, Demand, Gasket, SealDemand, ShiftOrder, ValveBodyKind};

group! {
    /// TEXT.
    ValveBody "valve_body" {
        kind: ValveBodyKind {
            sheet: Spec, bound: Any, plain: Word("auto"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        pattern: ShiftOrder {
            sheet: Spec, bound: Any, plain: Word("forward"),
            label: "pattern", note: "",
            how: "",
            why: "",
        }
        brake: BrakeKind {
            sheet: Spec, bound: Any, plain: Word("none"),
            label: "brake", note: "",
            how: "",
            why: "",
        }
        gasket: Gasket {
            sheet: Spec, bound: Any, plain: Word("stock"),
            label: "gasket", note: "",
            how: "",
            why: "",
        }
        gasket_plan: Gasket {
            sheet: Spec, bound: Any, plain: Word("stock"),
            label: "gasket plan", note: "",
            how: "",
            why: "",
        }
        feed_plug: Demand {
            sheet: Spec, bound: Any, plain: Word("either"),
            label: "feed plug", note: "",
            how: "",
            why: "",
        }
        passage_ball: Demand {
            sheet: Spec, bound: Any, plain: Word("forbidden"),
            label: "passage ball", note: "",
            how: "",
            why: "",
        }
        center_seal: SealDemand {
            sheet: Spec, bound: Any, plain: Word("in"),
            label: "center seal", note: "",
            how: "",
            why: "",
        }
        blocks_feed: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "blocks feed", note: "",
            how: "",
            why: "",
        }
        bridge: BridgeDemand {
            sheet: Spec, bound: Any, plain: Word("either"),
            label: "bridge", note: "",
            how: "",
            why: "",
        }
        low_band_first: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "low band first", note: "",
            how: "",
            why: "",
        }
        sheet: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "sheet", note: "",
            how: "",
            why: "",
        }
        check_balls_required: u32 {
            sheet: Spec, bound: NotNegative, plain: Number(7.0),
            label: "check balls required", note: "",
            how: "",
            why: "",
        }
        check_balls_fitted: u32 {
            sheet: Measured, bound: NotNegative, plain: Number(7.0),
            label: "check balls fitted", note: "",
            how: "",
            why: "",
        }
    }
}
