//! Where air and foam leave.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::{VentFitting, VentOutlet, VentPort};

group! {
    /// The vent, where it ends, and the catch can if there is one.
    Vent "vent" {
        port: VentPort {
            sheet: Outside, bound: Any, plain: Word("factory_tube"),
            label: "Vent in the case", note: "",
            how: "Search the top of the case, near its front end, for a pressed tube or a tapped hole.",
            why: "When the fluid foams, this is where it comes out.",
        }
        outlet: VentOutlet {
            sheet: Spec, bound: Any, plain: Word("hose"),
            label: "Where the vent ends", note: "",
            how: "Follow the vent to its end with the exhaust cold.",
            why: "It decides where hot fluid spits, and whether water gets in.",
        }
        blocked: bool {
            sheet: Measured, bound: Any, plain: YesNo(false),
            label: "Vent blocked", note: "",
            how: "Blow through it by mouth through a clean hose. Do not put shop air to it.",
            why: "A closed vent lets pressure build until the seals blow out.",
        }
        line_dips: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Vent hose sags somewhere", note: "",
            how: "Follow the hose from the case to its end and look for a place where fluid would collect.",
            why: "Fluid sitting in a loop closes the vent as surely as a plug.",
        }
        fitting_angle: VentFitting {
            sheet: Spec, bound: Any, plain: Word("none"),
            label: "Vent fitting", note: "",
            how: "Look whether the tapped hole was drilled at an angle and whether a wrench swings on the fitting.",
            why: "One tapped straight in cannot be tightened in the car.",
        }
        can_drain_guarded: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "Catch can's drain is protected", note: "",
            how: "Set the unit down the way it will be handled and see whether anything can knock the drain.",
            why: "A drain that is knocked off loses the fluid on the floor or under a tire.",
        }
        can_open_top: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Catch can is open on top", note: "",
            how: "Look at the lid: a breather under a hood, or a plain opening.",
            why: "Rain and wash water run into an open can and back into the unit.",
        }
    }
}
