//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf, OneOfOrWhole};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{Balance, CrankFlange, EnginePattern, Induction, UpperHole, VacuumSource};
use crate::quantity::{Inch, InchMercury, PoundFoot, Quantity, Rpm};

group! {
    /// TEXT.
    Engine "engine" {
        torque_lbft: Quantity<PoundFoot> {
            sheet: Spec, bound: NotNegative, plain: Number(380.0),
            label: "torque lbft", note: "",
            how: "",
            why: "",
        }
        torque_peak_rpm: Quantity<Rpm> {
            sheet: Spec, bound: NotNegative, plain: Number(3200.0),
            label: "torque peak rpm", note: "",
            how: "",
            why: "",
        }
        max_rpm: Quantity<Rpm> {
            sheet: Spec, bound: NotNegative, plain: Number(5200.0),
            label: "max rpm", note: "",
            how: "",
            why: "",
        }
        induction: Induction {
            sheet: Spec, bound: Any, plain: Word("natural"),
            label: "induction", note: "",
            how: "",
            why: "",
        }
        idle_vacuum_inhg: Quantity<InchMercury> {
            sheet: Spec, bound: NotNegative, plain: Number(17.0),
            label: "idle vacuum inhg", note: "",
            how: "",
            why: "",
        }
        vacuum_source: VacuumSource {
            sheet: Spec, bound: Any, plain: Word("manifold"),
            label: "vacuum source", note: "",
            how: "",
            why: "",
        }
        pattern: EnginePattern {
            sheet: Outside, bound: Any, plain: Word("pattern_a"),
            label: "pattern", note: "",
            how: "",
            why: "",
        }
        upper_hole: UpperHole {
            sheet: Outside, bound: Any, plain: Word("present"),
            label: "upper hole", note: "",
            how: "",
            why: "",
        }
        dowels: u32 {
            sheet: Outside, bound: OneOf(&[0.0, 1.0, 2.0]), plain: Number(2.0),
            label: "dowels", note: "",
            how: "",
            why: "",
        }
        crank_flange: CrankFlange {
            sheet: Outside, bound: Any, plain: Word("standard"),
            label: "crank flange", note: "",
            how: "",
            why: "",
        }
        crank_adapter: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "crank adapter", note: "",
            how: "",
            why: "",
        }
        crank_end_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.006),
            label: "crank end play in", note: "",
            how: "",
            why: "",
        }
        balance: Balance {
            sheet: Outside, bound: Any, plain: Word("internal"),
            label: "balance", note: "",
            how: "",
            why: "",
        }
        starter_teeth: u32 {
            sheet: Outside, bound: OneOfOrWhole(&[153.0, 168.0]), plain: Number(168.0),
            label: "starter teeth", note: "",
            how: "",
            why: "",
        }
        mid_plate_in: Quantity<Inch> {
            sheet: Spec, bound: NotNegative, plain: Number(0.0),
            label: "mid plate in", note: "",
            how: "",
            why: "",
        }
    }
}
