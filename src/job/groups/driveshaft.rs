//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, Positive};
use crate::job::Plain::{Number, Unknown, Word, YesNo};
use crate::job::choices::{ShaftKind, TubeMaterial};
use crate::quantity::{Degree, Inch, Quantity};

group! {
    /// TEXT.
    Driveshaft "driveshaft" {
        kind: ShaftKind {
            sheet: Outside, bound: Any, plain: Word("fixed"),
            label: "kind", note: "",
            how: "",
            why: "",
        }
        loop_fitted: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "loop fitted", note: "",
            how: "",
            why: "",
        }
        loop_distance_in: Quantity<Inch> {
            sheet: Outside, bound: NotNegative, plain: Unknown,
            label: "loop distance in", note: "",
            how: "",
            why: "",
        }
        length_in: Quantity<Inch> {
            sheet: Measured, bound: Positive, plain: Number(48.0),
            label: "length in", note: "",
            how: "",
            why: "",
        }
        od_in: Quantity<Inch> {
            sheet: Measured, bound: Positive, plain: Number(3.0),
            label: "od in", note: "",
            how: "",
            why: "",
        }
        wall_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.083),
            label: "wall in", note: "",
            how: "",
            why: "",
        }
        material: TubeMaterial {
            sheet: Outside, bound: Any, plain: Word("steel"),
            label: "material", note: "",
            how: "",
            why: "",
        }
        front_angle_deg: Quantity<Degree> {
            sheet: Measured, bound: Any, plain: Number(2.0),
            label: "front angle deg", note: "",
            how: "",
            why: "",
        }
        rear_angle_deg: Quantity<Degree> {
            sheet: Measured, bound: Any, plain: Number(2.0),
            label: "rear angle deg", note: "",
            how: "",
            why: "",
        }
        remeasured: bool {
            sheet: Paper, bound: Any, plain: YesNo(true),
            label: "remeasured", note: "",
            how: "",
            why: "",
        }
    }
}
