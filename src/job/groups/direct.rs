//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::CenterSeal;
use crate::quantity::{Inch, One, PoundForce, Quantity, SquareInch};

group! {
    /// TEXT.
    Direct "direct" {
        center_seal: CenterSeal {
            sheet: Inside, bound: Any, plain: Word("in"),
            label: "center seal", note: "",
            how: "",
            why: "",
        }
        support_rings: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(4.0),
            label: "support rings", note: "",
            how: "",
            why: "",
        }
        frictions: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(6.0),
            label: "frictions", note: "",
            how: "",
            why: "",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.06),
            label: "clear in", note: "",
            how: "",
            why: "",
        }
        springs: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(14.0),
            label: "springs", note: "",
            how: "",
            why: "",
        }
        wave: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "wave", note: "",
            how: "",
            why: "",
        }
        piston_area_in2: Quantity<SquareInch> {
            sheet: Spec, bound: NotNegative, plain: Number(13.5),
            label: "piston area in2", note: "",
            how: "",
            why: "",
        }
        mean_radius_in: Quantity<Inch> {
            sheet: Spec, bound: NotNegative, plain: Number(2.5),
            label: "mean radius in", note: "",
            how: "",
            why: "",
        }
        spring_lb: Quantity<PoundForce> {
            sheet: Spec, bound: NotNegative, plain: Number(250.0),
            label: "spring lb", note: "",
            how: "",
            why: "",
        }
        friction_mu: Quantity<One> {
            sheet: Spec, bound: NotNegative, plain: Number(0.13),
            label: "friction mu", note: "",
            how: "",
            why: "",
        }
    }
}
