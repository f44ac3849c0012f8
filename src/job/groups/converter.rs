//! The torque converter.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf, Positive};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{ConverterOrigin, Hub};
use crate::quantity::{Inch, Kilogram, One, PoundFoot, Quantity, Quart, Rpm};

group! {
    /// The torque converter: its size, its stall figure, its fit and what was measured at bolt-up.
    Converter "converter" {
        bolt_circle_in: Quantity<Inch> {
            sheet: Outside, bound: OneOf(&[10.75, 11.5]), plain: Number(11.5),
            label: "Converter bolt circle", note: "",
            how: "Measure from the center of one pad's hole to the center of the one across. A filled converter is \
                heavy and drips: lift it with two hands or two people.",
            why: "It must match the flexplate.",
        }
        extension_in: Quantity<Inch> {
            sheet: Spec, bound: NotNegative, plain: Number(0.0),
            label: "Pads and pilot moved forward by", note: "0 when they are standard",
            how: "Ask the converter's builder and write what the order sheet says.",
            why: "It has to make up for the thickness of a mid plate.",
        }
        hub: Hub {
            sheet: Outside, bound: Any, plain: Word("smooth"),
            label: "Converter hub surface", note: "",
            how: "Wipe the hub clean and draw a fingernail along it where the seal runs.",
            why: "A groove under the seal leaks at the front from the first day.",
        }
        origin: ConverterOrigin {
            sheet: Spec, bound: Any, plain: Word("rebuilt"),
            label: "Where the converter comes from", note: "",
            how: "Ask, look at the weld and the paint, and read the tag.",
            why: "A converter reused after a failure brings the old debris into the new unit.",
        }
        stall_rpm: Quantity<Rpm> {
            sheet: Spec, bound: Positive, plain: Number(1900.0),
            label: "Stall speed on the label", note: "as its maker states it",
            how: "Read it off the builder's sheet or the tag.",
            why: "It is the start of every sum about launch, cruise and heat.",
        }
        rated_torque_lbft: Quantity<PoundFoot> {
            sheet: Spec, bound: Positive, plain: Number(380.0),
            label: "Torque that stall speed was rated at", note: "",
            how: "Ask the builder what engine torque the stall figure was given for, and write the answer next to it.",
            why: "A stall speed means nothing without it: the same converter stalls higher behind more torque.",
        }
        stall_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(2.0),
            label: "Torque ratio at stall", note: "torque out for torque in, standing still",
            how: "Read the builder's sheet. When it says nothing, 2.0 is the usual figure; mark it as a shop setting.",
            why: "It multiplies what the clutches must hold on the trans brake.",
        }
        lockup: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Converter has a lockup clutch", note: "",
            how: "Look at the tag and into the hub: a lockup converter has a clutch behind its front cover and is made \
                for another input shaft.",
            why: "This unit has no oil circuit to work a lockup clutch.",
        }
        spline_ok: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "Converter fits both splines", note: "",
            how: "Slide it by hand over the input shaft and the stator support, out of the car, and feel both sets of \
                splines take.",
            why: "A converter for another unit may look alike and will not drive.",
        }
        anti_balloon: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Converter stiffened against swelling", note: "",
            how: "Ask the builder whether it has a thick cover or a welded plate at the hub, and look.",
            why: "Pressure on a trans brake swells a plain converter until it jams the pump and the crank.",
        }
        end_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.01),
            label: "Converter end play", note: "of the parts inside it",
            how: "Use the end-play tool and a dial indicator through the hub, with the converter standing safely on \
                the bench.",
            why: "Too much means its thrust washers or bearings are worn.",
        }
        gap_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.156),
            label: "Pull-forward gap", note: "pad to flexplate, converter pushed fully back",
            how: "With the unit bolted up and the key out, push the converter back and gauge the gap at three pads \
                with drill shanks.",
            why: "Too small crushes the pump; too large leaves the pump tangs half engaged.",
        }
        spacer_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.0),
            label: "Spacers under the pads", note: "the same at every pad, 0 when there are none",
            how: "Measure one washer of each set with a micrometer, and see that all pads get the same.",
            why: "They take up a gap that is too large, and use up pilot length as they do.",
        }
        pilot_length_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.55),
            label: "Pilot length", note: "ahead of the pad faces",
            how: "Lay a straightedge across the pads and measure forward to the end of the pilot with a depth gauge.",
            why: "The pilot must still reach into the crank once spacers are fitted.",
        }
        seated: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "Converter fully seated", note: "",
            how: "Turn it while pushing until three drops have been felt, then measure from the bell face and note the \
                depth. Two people lift it.",
            why: "A converter that is not home breaks the pump when the bell is drawn up.",
        }
        prefill_qt: Quantity<Quart> {
            sheet: Measured, bound: NotNegative, plain: Number(1.0),
            label: "Fluid poured into the converter", note: "before fitting",
            how: "Pour it in through the hub from a marked jug, and tip the converter as little as possible afterward.",
            why: "A dry converter starves the pump in the first seconds.",
        }
        bolt_reach_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.4),
            label: "Converter bolt reach", note: "bolt past the flexplate, washer on",
            how: "Push the bolt with its washer through the plate and measure what stands out behind.",
            why: "A bolt that is too long bottoms out or dents the cover, and never clamps.",
        }
        pad_depth_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.5),
            label: "Depth of thread in the pads", note: "",
            how: "Measure down the clean hole with a depth gauge, at every pad, and write the shallowest.",
            why: "The bolt must not bottom before it clamps.",
        }
        fluid_kg: Quantity<Kilogram> {
            sheet: Spec, bound: NotNegative, plain: Number(5.0),
            label: "Fluid inside the converter", note: "mass when full",
            how: "Ask the builder, or weigh the converter dry and full on the same scale.",
            why: "More fluid soaks up more heat while the brake is held.",
        }
        metal_kg: Quantity<Kilogram> {
            sheet: Spec, bound: Positive, plain: Number(12.0),
            label: "Converter weight, empty", note: "mass of the dry converter",
            how: "Drain it and put it on a scale.",
            why: "Its steel takes a share of the heat on the trans brake.",
        }
    }
}
