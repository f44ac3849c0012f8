//! How the unit knows when to shift.

use super::group;
use crate::job::Bound::Any;
use crate::job::Plain::{Word, YesNo};
use crate::job::choices::{Fitted, GovernorBore, Kickdown, Modulator};

group! {
    /// The controls at the case: governor, modulator and kickdown.
    Control "control" {
        modulator_boost_protected: bool {
            sheet: Spec, bound: Any, plain: YesNo(false),
            label: "Modulator kept safe from boost", note: "",
            how: "Look for a check valve in the vacuum hose, or for a capsule rated for boost, and read its marking.",
            why: "Under boost a bare modulator works backward, and its diaphragm can tear.",
        }
        governor: Fitted {
            sheet: Inside, bound: Any, plain: Word("fitted"),
            label: "Governor", note: "",
            how: "Take the governor cover off with the unit cold and look into the bore.",
            why: "An automatic valve body cannot shift up without one; behind a manual one it only leaks oil.",
        }
        governor_bore: GovernorBore {
            sheet: Inside, bound: Any, plain: Word("closed"),
            label: "Governor bore", note: "",
            how: "See that a cover with a sound gasket or ring closes it. A blank cover often means a manual valve \
                body inside.",
            why: "An open bore empties the unit onto the ground.",
        }
        modulator: Modulator {
            sheet: Inside, bound: Any, plain: Word("connected"),
            label: "Vacuum modulator", note: "",
            how: "Look at the right rear of the case for the capsule, its clamp and its hose, and pull gently at the \
                hose.",
            why: "It sets pressure and shift timing on an automatic unit, and an open bore dumps the oil.",
        }
        kickdown: Kickdown {
            sheet: Spec, bound: Any, plain: Word("electric"),
            label: "Kickdown", note: "",
            how: "See whether a wire runs to the connector in the case and ask whether the car drops a gear at full \
                throttle.",
            why: "It gives the downshift at full throttle, and its connector is the only way in for a brake solenoid \
                inside.",
        }
        kickdown_switch: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "Kickdown switch works", note: "",
            how: "With the key on and the engine off, press the pedal to the floor and check with a test lamp that the \
                switch makes.",
            why: "A wired kickdown without a working switch never drops a gear.",
        }
    }
}
