//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, Positive};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{DriveLayout, EngineMount, TireKind};
use crate::quantity::{Inch, One, PoundMass, Quantity};

group! {
    /// TEXT.
    Vehicle "vehicle" {
        drive_layout: DriveLayout {
            sheet: Spec, bound: Any, plain: Word("two_wheel"),
            label: "drive layout", note: "",
            how: "",
            why: "",
        }
        weight_lb: Quantity<PoundMass> {
            sheet: Spec, bound: NotNegative, plain: Number(3600.0),
            label: "weight lb", note: "",
            how: "",
            why: "",
        }
        tow_weight_lb: Quantity<PoundMass> {
            sheet: Spec, bound: NotNegative, plain: Number(0.0),
            label: "tow weight lb", note: "",
            how: "",
            why: "",
        }
        vent_over_exhaust: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "vent over exhaust", note: "",
            how: "",
            why: "",
        }
        axle_park_brake: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "axle park brake", note: "",
            how: "",
            why: "",
        }
        tire_diameter_in: Quantity<Inch> {
            sheet: Spec, bound: Positive, plain: Number(27.0),
            label: "tire diameter in", note: "",
            how: "",
            why: "",
        }
        axle_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(3.42),
            label: "axle ratio", note: "",
            how: "",
            why: "",
        }
        tire_kind: TireKind {
            sheet: Spec, bound: Any, plain: Word("street"),
            label: "tire kind", note: "",
            how: "",
            why: "",
        }
        engine_mount: EngineMount {
            sheet: Spec, bound: Any, plain: Word("rubber"),
            label: "engine mount", note: "",
            how: "",
            why: "",
        }
        ground_strap: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "ground strap", note: "",
            how: "",
            why: "",
        }
    }
}
