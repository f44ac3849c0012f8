//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf, Positive};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{ConverterOrigin, Hub};
use crate::quantity::{Inch, Kilogram, One, PoundFoot, Quantity, Quart, Rpm};

group! {
    /// TEXT.
    Converter "converter" {
        bolt_circle_in: Quantity<Inch> {
            sheet: Outside, bound: OneOf(&[10.75, 11.5]), plain: Number(11.5),
            label: "bolt circle in", note: "",
            how: "",
            why: "",
        }
        extension_in: Quantity<Inch> {
            sheet: Spec, bound: NotNegative, plain: Number(0.0),
            label: "extension in", note: "",
            how: "",
            why: "",
        }
        hub: Hub {
            sheet: Outside, bound: Any, plain: Word("smooth"),
            label: "hub", note: "",
            how: "",
            why: "",
        }
        origin: ConverterOrigin {
            sheet: Spec, bound: Any, plain: Word("rebuilt"),
            label: "origin", note: "",
            how: "",
            why: "",
        }
        stall_rpm: Quantity<Rpm> {
            sheet: Spec, bound: Positive, plain: Number(1900.0),
            label: "stall rpm", note: "",
            how: "",
            why: "",
        }
        rated_torque_lbft: Quantity<PoundFoot> {
            sheet: Spec, bound: Positive, plain: Number(380.0),
            label: "rated torque lbft", note: "",
            how: "",
            why: "",
        }
        stall_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(2.0),
            label: "stall ratio", note: "",
            how: "",
            why: "",
        }
        lockup: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "lockup", note: "",
            how: "",
            why: "",
        }
        spline_ok: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "spline ok", note: "",
            how: "",
            why: "",
        }
        anti_balloon: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "anti balloon", note: "",
            how: "",
            why: "",
        }
        end_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.01),
            label: "end play in", note: "",
            how: "",
            why: "",
        }
        gap_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.156),
            label: "gap in", note: "",
            how: "",
            why: "",
        }
        spacer_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.0),
            label: "spacer in", note: "",
            how: "",
            why: "",
        }
        pilot_length_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.55),
            label: "pilot length in", note: "",
            how: "",
            why: "",
        }
        seated: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "seated", note: "",
            how: "",
            why: "",
        }
        prefill_qt: Quantity<Quart> {
            sheet: Measured, bound: NotNegative, plain: Number(1.0),
            label: "prefill qt", note: "",
            how: "",
            why: "",
        }
        bolt_reach_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.4),
            label: "bolt reach in", note: "",
            how: "",
            why: "",
        }
        pad_depth_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.5),
            label: "pad depth in", note: "",
            how: "",
            why: "",
        }
        fluid_kg: Quantity<Kilogram> {
            sheet: Spec, bound: NotNegative, plain: Number(5.0),
            label: "fluid kg", note: "",
            how: "",
            why: "",
        }
        metal_kg: Quantity<Kilogram> {
            sheet: Spec, bound: Positive, plain: Number(12.0),
            label: "metal kg", note: "",
            how: "",
            why: "",
        }
    }
}
