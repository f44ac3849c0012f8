//! Between the engine and the case.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{BellKind, BellPattern};
use crate::quantity::{Inch, Quantity};

group! {
    /// The bell: cast with the case or bolted on, its bolts and how true it runs.
    Bell "bell" {
        kind: BellKind {
            sheet: Outside, bound: Any, plain: Word("integral"),
            label: "Bell", note: "",
            how: "Look behind the pump flange: either case and bell are one casting, or the bell hangs on a ring under \
                  the pump bolts.",
            why: "A separate bell hangs on the pump bolts and nothing else.",
        }
        pattern: BellPattern {
            sheet: Outside, bound: Any, plain: Word("pattern_a"),
            label: "Bolt pattern of the bell", note: "",
            how: "Hold the shop template against the bell's engine face.",
            why: "It must match the engine's pattern.",
        }
        ring_holes: u32 {
            sheet: Outside, bound: OneOf(&[6.0, 7.0, 8.0]), plain: Number(8.0),
            label: "Holes in the bell's pump ring", note: "not used when the bell is integral",
            how: "Count the holes in the ring of a bolt-on bell, all the way round from a chalk mark.",
            why: "It is the most bolts that bell could ever be held by.",
        }
        runout_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.004),
            label: "Bell bore runout", note: "total, swept from the crank",
            how: "Fix a dial indicator to the crank flange, sweep the bore that centers the pump, and turn the crank \
                by hand with the key out.",
            why: "An off-center bell wears out the pump bushing and the front seal.",
        }
        insert_fitted: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Thread insert in the unused upper hole", note: "",
            how: "Look into the upper bell hole that the engine does not use, and ask whether one is planned.",
            why: "It gives a shield or a dipstick bracket a bolt that the block cannot.",
        }
        insert_proud_in: Quantity<Inch> {
            sheet: Measured, bound: Any, plain: Number(0.0),
            label: "Insert reaches past the bell face by", note: "0 or less is flush or below",
            how: "Lay a straightedge across the bell face over the insert and feel for light; measure a proud one with \
                a feeler.",
            why: "A proud insert keeps bell and block from meeting, and the whole unit sits askew.",
        }
        insert_bolt_proud_in: Quantity<Inch> {
            sheet: Measured, bound: Any, plain: Number(0.0),
            label: "Accessory bolt stands above the bell face by", note: "0 or less is flush or below",
            how: "Fit the bolt with its bracket and look at it from the engine side with a straightedge.",
            why: "A bolt that comes through does the same harm as a proud insert.",
        }
        cut_planned: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Cast bell to be sawn off", note: "",
            how: "Read the draft spec, and ask before anyone lifts a saw.",
            why: "It can never be undone, so the customer signs for it first.",
        }
    }
}
