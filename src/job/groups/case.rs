//! The aluminum case.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{CaseHistory, CaseVariant, Connector, Crack, ParkPawl};
use crate::quantity::{Inch, Quantity};

group! {
    /// The case: bosses, threads, cracks, and what an earlier builder did to it.
    Case "case" {
        pump_bosses: u32 {
            sheet: Outside, bound: OneOf(&[6.0, 7.0, 8.0]), plain: Number(6.0),
            label: "Bosses for pump bolts in the case", note: "tapped or solid",
            how: "Look in from the front and count the lumps of metal that carry the pump flange, with thread or \
                  without; a casting can lack one or two.",
            why: "Where there is no boss there is nothing to drill, so that bolt can never be had.",
        }
        pump_tapped: u32 {
            sheet: Inside, bound: OneOf(&[6.0, 7.0, 8.0]), plain: Number(6.0),
            label: "Tapped pump-bolt holes", note: "after all machining",
            how: "Count the holes that take the right bolt by hand to full depth.",
            why: "A hole that is only drilled holds nothing.",
        }
        crack: Crack {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "Cracks in the case", note: "",
            how: "Clean it, spray dye on the bell corners, the mount boss and the servo bores, and look under a good \
                light. Keep solvents away from flame.",
            why: "The casting is thin; a crack grows under load until the case is scrap.",
        }
        threads_bad: u32 {
            sheet: Outside, bound: NotNegative, plain: Number(0.0),
            label: "Bad threads in the case", note: "",
            how: "Run the right bolt into every hole by hand and count those that bind, wobble or pull out.",
            why: "They have to be mended before the last wash, not found on the bench.",
        }
        threads_repaired: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "Threads repaired", note: "",
            how: "Count the inserts that have gone in, and see that every broken tang has been found.",
            why: "Every bad thread must have been mended before the unit goes together.",
        }
        history: CaseHistory {
            sheet: Outside, bound: Any, plain: Word("original"),
            label: "What was done to the case before", note: "",
            how: "Ask who had the unit apart before, and search the case for plugs, driven balls and ground metal.",
            why: "Lasting changes suit one valve body and can rule out another.",
        }
        passages_mapped: bool {
            sheet: Inside, bound: Any, plain: YesNo(true),
            label: "Plugs, balls and grinding mapped", note: "",
            how: "Draw each plug, ball and ground bridge on the printed case picture, then photograph the passages \
                beside it.",
            why: "Nobody can choose another valve body safely without the map.",
        }
        connector: Connector {
            sheet: Outside, bound: Any, plain: Word("one_wire"),
            label: "Electrical connector in the case", note: "",
            how: "Find the connector on the left of the case, above the pan rail, and count its terminals.",
            why: "It is the only way in for a kickdown wire or for a brake solenoid inside.",
        }
        park_pawl: ParkPawl {
            sheet: Outside, bound: Any, plain: Word("works"),
            label: "Park pawl", note: "",
            how: "On a slight slope, with a helper at the brake and nobody in front or behind, select park and let the \
                brake off slowly. Chock it at once if it creeps.",
            why: "A vehicle that does not hold in park rolls away.",
        }
        variant: CaseVariant {
            sheet: Inside, bound: Any, plain: Word("heavy"),
            label: "Case family", note: "",
            how: "Look for the light-duty relative's signs: the long 27-spline output and fewer plates in the packs.",
            why: "The light one has less clutch and shaft to work with.",
        }
        feed_plugged: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "Direct-clutch reverse feed plugged", note: "",
            how: "With the valve body off, follow the reverse feed to the direct clutch: a cup plug in it can be seen \
                  and felt.",
            why: "It has to go with the center seal and the valve body as one set.",
        }
        passage_ball: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "Steel ball driven in the case passage", note: "",
            how: "Look with a light, deep in the passage that the valve body's sheet names.",
            why: "It hardly ever comes out again, and some valve bodies cannot work with it.",
        }
        bridge_lowered: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "Small bridge lowered", note: "",
            how: "Hold the case against an untouched one and compare the height of the cast bridge beside the \
                  modulator bore.",
            why: "A brake solenoid outside needs the extra flow to release quickly.",
        }
        failure_debris: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "Debris from a failure", note: "",
            how: "Look through the pan, the screen and the cooler line for metal and clutch lining, and draw a magnet \
                through the fluid. Drain it warm, not hot.",
            why: "It hides in the cooler and the converter and ruins the new build.",
        }
        coolant_found: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "Coolant in the unit", note: "",
            how: "Look for pink, milky fluid in the pan.",
            why: "Coolant takes the lining off the clutches, so they and the converter are scrap.",
        }
        face_flat_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.001),
            label: "Gap under a straightedge on the valve-body face", note: "the largest found",
            how: "Clean off old gasket, lay a straightedge both ways and across corners, and find the thickest feeler \
                that slips under.",
            why: "A valve body without gaskets leaks from one passage to the next on a face that is not flat.",
        }
    }
}
