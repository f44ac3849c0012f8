//! The gear train.

use super::group;
use crate::job::Bound::{Any, NotNegative, Positive};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{GearCut, InputShaft, RearThrust};
use crate::quantity::{Inch, One, Quantity};

group! {
    /// The two planetary sets, the input shaft and the thrust stack behind them.
    Gears "gears" {
        first_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(2.48),
            label: "First gear ratio", note: "2.48 in a stock set",
            how: "Turn the input and count turns for one of the output in first, or read the gear set's sheet.",
            why: "It sets launch, road speed and the shock on the clutches.",
        }
        second_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(1.48),
            label: "Second gear ratio", note: "1.48 in a stock set",
            how: "Turn the input and count in second, or read the gear set's sheet.",
            why: "What second gear adds over one to one lands on the one-way clutch.",
        }
        reverse_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(2.08),
            label: "Reverse gear ratio", note: "about 2.08 in a stock set",
            how: "Turn the input and count in reverse, or read the gear set's sheet.",
            why: "It sets how the load is shared on the trans brake.",
        }
        cut: GearCut {
            sheet: Spec, bound: Any, plain: Word("helical"),
            label: "Cut of the gears", note: "",
            how: "Look at the teeth: slanted is helical. Units that came with the heavy bearing housing often have \
                straight ones.",
            why: "Straight gears are strong and whine in all gears but third.",
        }
        parts_matched: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "All gears of one set", note: "",
            how: "Compare marks, cut and tooth counts of every gear on the bench.",
            why: "Gears from two sources do not mesh, or wear out in a weekend.",
        }
        pinion_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.015),
            label: "Planet pinion end play", note: "the worst of all pinions",
            how: "Slide a feeler under each pinion of both carriers and write the largest.",
            why: "Too much means a worn carrier; too little binds when hot.",
        }
        input_shaft: InputShaft {
            sheet: Spec, bound: Any, plain: Word("stock"),
            label: "Input shaft", note: "",
            how: "Look for its maker's mark or a drilled end, and ask.",
            why: "A stock shaft twists off behind a strong engine with a trans brake.",
        }
        rear_thrust: RearThrust {
            sheet: Spec, bound: Any, plain: Word("washers"),
            label: "Rear thrust parts", note: "",
            how: "Look whether the stack is selective steel washers or a needle-bearing kit.",
            why: "A bearing kit changes the stack's height and with it the end play.",
        }
        rear_stack_measured: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "New stack measured against the old", note: "",
            how: "Measure both stacks with a micrometer, in the same places, and write both down.",
            why: "A stack of another height moves the gear set and spoils the end play.",
        }
    }
}
