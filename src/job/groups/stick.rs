//! Checking the level.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::StickKind;

group! {
    /// The dipstick and its tube.
    Stick "stick" {
        kind: StickKind {
            sheet: Outside, bound: Any, plain: Word("rigid"),
            label: "Dipstick tube", note: "",
            how: "Bend it gently by hand: a steel tube stays, a braided hose gives.",
            why: "It decides how it is held and how fast it can be filled.",
        }
        locks: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "Dipstick locks", note: "",
            how: "Look for a cam or lever on the handle and try to pull the stick out without turning it.",
            why: "Fast classes ask for one, because a stick that blows out puts fluid under the tires.",
        }
        clears_shield: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "Dipstick tube clears the shield", note: "",
            how: "Fit the tube and the shield together on the bench, before the unit leaves it.",
            why: "Neither may be cut to make room for the other.",
        }
        uses_upper_hole: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Dipstick bracket uses the upper bell hole", note: "",
            how: "Hold the tube in place and see which bolt its bracket asks for.",
            why: "On an engine without that hole the bracket has nothing to hold on to.",
        }
        retained: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "Dipstick tube held in place", note: "",
            how: "Look for a bolted bracket or a positive stop, and pull on the tube.",
            why: "A tube that is only pushed in blows out and sprays hot fluid.",
        }
        matches: bool {
            sheet: Spec, bound: Any, plain: YesNo(true),
            label: "Full mark checked on the bench", note: "",
            how: "Hold the stick in its tube beside the case and compare the full mark with the pan rail.",
            why: "The wrong stick gives the wrong level for as long as the unit runs.",
        }
    }
}
