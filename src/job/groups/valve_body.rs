//! The valve body and what its sheet asks for.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{BrakeKind, BridgeDemand, Demand, Gasket, SealDemand, ShiftOrder, ValveBodyKind};

group! {
    /// The valve body: what it is, and what its builder's sheet asks of the case.
    ValveBody "valve_body" {
        kind: ValveBodyKind {
            sheet: Spec, bound: Any, plain: Word("auto"),
            label: "Valve body", note: "",
            how: "Read the builder's sheet, and compare the part with its picture.",
            why: "Half of what must fit together depends on it.",
        }
        pattern: ShiftOrder {
            sheet: Spec, bound: Any, plain: Word("forward"),
            label: "Order the valve body shifts in", note: "",
            how: "Read the builder's sheet and see whether the first place past neutral is third or first.",
            why: "The shifter's gate must be of the same order.",
        }
        brake: BrakeKind {
            sheet: Spec, bound: Any, plain: Word("none"),
            label: "Trans brake", note: "",
            how: "Read the builder's sheet, and look where the solenoid sits.",
            why: "It holds the car at the line and loads everything in the unit while it does.",
        }
        gasket: Gasket {
            sheet: Spec, bound: Any, plain: Word("stock"),
            label: "Gaskets the sheet asks for", note: "",
            how: "Read the builder's sheet: none at all, the stock pair, or special ones that came with the valve \
                body.",
            why: "The wrong gaskets let one passage leak into another.",
        }
        gasket_plan: Gasket {
            sheet: Spec, bound: Any, plain: Word("stock"),
            label: "Gaskets on the bench", note: "",
            how: "Look at what is really laid out for this unit.",
            why: "It must be what the sheet asks for.",
        }
        feed_plug: Demand {
            sheet: Spec, bound: Any, plain: Word("either"),
            label: "Plug in the direct-clutch feed, by the sheet", note: "",
            how: "Read what the builder's sheet says about the reverse feed of the direct clutch.",
            why: "The case must be as this valve body needs it.",
        }
        passage_ball: Demand {
            sheet: Spec, bound: Any, plain: Word("forbidden"),
            label: "Ball in the case passage, by the sheet", note: "",
            how: "Read what the builder's sheet says about the ball in the case.",
            why: "The ball is for good, and the wrong case cannot be put right.",
        }
        center_seal: SealDemand {
            sheet: Spec, bound: Any, plain: Word("in"),
            label: "Center seal, by the sheet", note: "",
            how: "Read what the builder's sheet says about the middle seal in the direct drum.",
            why: "Seal, feed and valve body only work as one set.",
        }
        blocks_feed: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Plate shuts off the reverse feed", note: "",
            how: "Read the builder's sheet and look at the plate over the feed.",
            why: "Then the case needs no plug.",
        }
        bridge: BridgeDemand {
            sheet: Spec, bound: Any, plain: Word("either"),
            label: "Small bridge, by the sheet", note: "",
            how: "Read what the builder's sheet says about lowering the bridge by the modulator bore.",
            why: "Without the flow the brake is slow to let go.",
        }
        low_band_first: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Holds the low band in first", note: "",
            how: "Look on the builder's sheet for a line that says the low band is applied in first.",
            why: "The band then shares the launch with the rear one-way clutch.",
        }
        sheet: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "Instruction sheet in the job", note: "",
            how: "Look for the builder's sheet, or the shop's own notes with photographs, in the job folder.",
            why: "Nobody should drive a plug or a ball into a case on a guess.",
        }
        check_balls_required: u32 {
            sheet: Spec, bound: NotNegative, plain: Number(7.0),
            label: "Check balls the sheet asks for", note: "",
            how: "Count the places marked on the builder's sheet.",
            why: "One too few or too many makes a shift fault that nobody finds from outside.",
        }
        check_balls_fitted: u32 {
            sheet: Measured, bound: NotNegative, plain: Number(7.0),
            label: "Check balls fitted", note: "",
            how: "Count them in their places, photograph them, and look for any left in the tray.",
            why: "The count must agree with the sheet before the plate goes on.",
        }
    }
}
