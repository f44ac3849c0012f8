//! The engine in front of the unit.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf, OneOfOrWhole};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{Balance, CrankFlange, EnginePattern, Induction, UpperHole, VacuumSource};
use crate::quantity::{Inch, InchMercury, PoundFoot, Quantity, Rpm};

group! {
    /// The engine: what it makes, how it breathes, and the face the bell bolts to.
    Engine "engine" {
        torque_lbft: Quantity<PoundFoot> {
            sheet: Spec, bound: NotNegative, plain: Number(380.0),
            label: "Engine torque", note: "peak, at the crank",
            how: "Ask for the test sheet and read the peak. Without a sheet, write the owner's figure and mark it as a \
                claim.",
            why: "Every load in the unit is worked out from it: the one-way clutch, the clutch packs and the shafts.",
        }
        torque_peak_rpm: Quantity<Rpm> {
            sheet: Spec, bound: NotNegative, plain: Number(3200.0),
            label: "Engine speed at peak torque", note: "",
            how: "Read it off the same test sheet, at the highest point of the torque line.",
            why: "On a trans-brake car the converter should stall close to this speed.",
        }
        max_rpm: Quantity<Rpm> {
            sheet: Spec, bound: NotNegative, plain: Number(5200.0),
            label: "Highest engine speed used", note: "in any gear, also over the finish line",
            how: "Ask where the rev limiter is set, and whether the driver lifts before it.",
            why: "It sets how fast the driveshaft and the drums turn, and both can burst or bend.",
        }
        induction: Induction {
            sheet: Spec, bound: Any, plain: Word("natural"),
            label: "How the engine breathes", note: "",
            how: "Look under the hood for a blower, a turbocharger or nitrous bottles, and ask what fuel it burns.",
            why: "Boost and diesels leave no steady vacuum for a modulator to work with.",
        }
        idle_vacuum_inhg: Quantity<InchMercury> {
            sheet: Spec, bound: NotNegative, plain: Number(17.0),
            label: "Idle vacuum", note: "hot, idling in gear",
            how: "Put a gauge on the manifold, chock the wheels, have a helper hold the brake, and read it in drive. \
                Keep sleeves away from the fan.",
            why: "A modulator gets weak and late when the engine pulls little vacuum.",
        }
        vacuum_source: VacuumSource {
            sheet: Spec, bound: Any, plain: Word("manifold"),
            label: "Where the modulator's vacuum comes from", note: "",
            how: "Follow the hose from the modulator to its other end with the engine off and cold.",
            why: "An automatic valve body shifts late and hard without a source of vacuum.",
        }
        pattern: EnginePattern {
            sheet: Outside, bound: Any, plain: Word("pattern_a"),
            label: "Bell bolt pattern of the engine", note: "",
            how: "Compare the back of the block with the shop template hole by hole; the two patterns differ in a few \
                places only.",
            why: "A bell of the other pattern cannot be bolted up.",
        }
        upper_hole: UpperHole {
            sheet: Outside, bound: Any, plain: Word("present"),
            label: "Upper bell hole in the block", note: "",
            how: "Look high on the block's rear face for the boss of the upper bell bolt; on some late blocks the \
                water jacket takes its place.",
            why: "Without it the bell loses a bolt, and a shield or dipstick that hangs on that bolt has no place.",
        }
        dowels: u32 {
            sheet: Outside, bound: OneOf(&[0.0, 1.0, 2.0]), plain: Number(2.0),
            label: "Dowels in the block", note: "",
            how: "Feel for both with a finger: each must stand proud of the face and sit tight.",
            why: "They alone center the unit on the crank; without them the pump bushing wears out.",
        }
        crank_flange: CrankFlange {
            sheet: Outside, bound: Any, plain: Word("standard"),
            label: "Depth of the crank flange", note: "",
            how: "Lay a straightedge across the block face and measure in to the flange. The short one lies about \
                0.400 in further forward.",
            why: "The short flange leaves the converter pilot and the flexplate without support unless an adapter \
                fills the gap.",
        }
        crank_adapter: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Crank adapter on the list", note: "",
            how: "Look for the pilot adapter or hub spacer on the parts list and in the parts tray.",
            why: "A short flange needs it; without it the converter hangs on its bolts.",
        }
        crank_end_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.006),
            label: "Crank end play", note: "",
            how: "Set a dial indicator on the flange, pry the crank to the rear, zero it, then pry forward and read. \
                Take the key out first.",
            why: "A tight or swollen converter pushes the crank and wears away its thrust face.",
        }
        balance: Balance {
            sheet: Outside, bound: Any, plain: Word("internal"),
            label: "How the engine is balanced", note: "",
            how: "Look at the damper and the flexplate: an offset weight on them means external.",
            why: "A flexplate for the other kind shakes the whole driveline and hammers the pump bushing.",
        }
        starter_teeth: u32 {
            sheet: Outside, bound: OneOfOrWhole(&[153.0, 168.0]), plain: Number(168.0),
            label: "Ring-gear teeth the starter suits", note: "",
            how: "Look at its two mounting bolts: set in line or straddled tells which ring it was made for; the shop \
                chart gives the count.",
            why: "A starter for the other ring grinds and breaks teeth.",
        }
        mid_plate_in: Quantity<Inch> {
            sheet: Spec, bound: NotNegative, plain: Number(0.0),
            label: "Mid plate thickness", note: "0 when there is none",
            how: "Ask owners of tube-framed cars, then measure the plate between engine and bell with a caliper.",
            why: "The plate moves the unit back, so the converter's pilot and pads must come forward by as much.",
        }
    }
}
