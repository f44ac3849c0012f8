//! The direct clutch.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::CenterSeal;
use crate::quantity::{Inch, One, PoundForce, Quantity, SquareInch};

group! {
    /// The direct clutch: third gear, reverse, and half the load on the trans brake.
    Direct "direct" {
        center_seal: CenterSeal {
            sheet: Inside, bound: Any, plain: Word("in"),
            label: "Center seal in the direct drum", note: "",
            how: "Look inside the drum for the middle lip seal.",
            why: "With it there are two apply areas, without it one large one.",
        }
        support_rings: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(4.0),
            label: "Rings on the support hub", note: "",
            how: "Look along the hub of the center support and count its sealing rings.",
            why: "A split feed leaks across when a ring is missing.",
        }
        frictions: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(6.0),
            label: "Friction plates in the direct pack", note: "",
            how: "Count the lined plates as they come out.",
            why: "More plates hold more torque.",
        }
        clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.06),
            label: "Direct pack clearance", note: "whole pack",
            how: "Stack the pack dry, set a feeler or an indicator at the plate, and check it again with regulated \
                air. Glasses on.",
            why: "Too tight burns, too loose shifts late and hard.",
        }
        springs: u32 {
            sheet: Inside, bound: NotNegative, plain: Number(14.0),
            label: "Release springs in the direct drum", note: "",
            how: "Press the cage down with a proper compressor and count them. Stand aside: they are strong.",
            why: "Fast-spinning oil pushes the piston by itself when too few springs hold it back.",
        }
        wave: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "Wavy plate in the direct pack", note: "",
            how: "Lay the bottom steel on a flat surface and see whether it rocks.",
            why: "It cushions the shift and slows the release of a trans brake.",
        }
        piston_area_in2: Quantity<SquareInch> {
            sheet: Spec, bound: NotNegative, plain: Number(13.5),
            label: "Direct piston area in use in third", note: "one area or both together",
            how: "Measure the piston's diameters and work out the ring it pushes with; add the second when the feed is \
                joined.",
            why: "It goes into the capacity of the clutch.",
        }
        mean_radius_in: Quantity<Inch> {
            sheet: Spec, bound: NotNegative, plain: Number(2.5),
            label: "Mean radius of the direct frictions", note: "middle of the lining, from the center",
            how: "Measure the lining's inside and outside diameters, add them and divide by four.",
            why: "It goes into the capacity of the clutch.",
        }
        spring_lb: Quantity<PoundForce> {
            sheet: Spec, bound: NotNegative, plain: Number(250.0),
            label: "Force of the direct release springs", note: "all together, applied",
            how: "Test one spring at its working length and multiply by the count, or take the maker's sheet.",
            why: "The piston has to overcome it before the clutch holds anything.",
        }
        friction_mu: Quantity<One> {
            sheet: Spec, bound: NotNegative, plain: Number(0.13),
            label: "Friction of the direct lining", note: "friction coefficient, no unit",
            how: "Take the lining maker's figure for the fluid in use; without one use the shop's setting and mark it \
                so.",
            why: "It goes into the capacity of the clutch.",
        }
    }
}
