//! The trans brake.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Unknown};
use crate::quantity::{Inch, Quantity, Second, Volt};

group! {
    /// The trans brake: its wiring, its lock and how long it will be held.
    TransBrake "trans_brake" {
        relay: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "Relay for the brake solenoid", note: "",
            how: "Follow the wire from the button and look for a relay and a fuse.",
            why: "The contacts of the button burn when they carry the solenoid's current.",
        }
        volts: Quantity<Volt> {
            sheet: Measured, bound: NotNegative, plain: Unknown,
            label: "Voltage at the brake solenoid", note: "applied, engine running",
            how: "Chock the wheels, keep everyone clear of the car, press the button and read the meter at the \
                solenoid.",
            why: "A weak solenoid lets the car creep and releases late.",
        }
        speed_lock: bool {
            sheet: Spec, bound: Any, plain: Unknown,
            label: "Brake cannot apply while rolling", note: "",
            how: "On rated stands or a spin stand, guards on and people clear, turn the output and press the button: \
                nothing may happen.",
            why: "Applied at speed it locks the driven wheels.",
        }
        solenoid_clear_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Unknown,
            label: "Gap around the outside solenoid", note: "to floor, shield or exhaust",
            how: "At mock-up, with the exhaust cold, measure the tightest place around it.",
            why: "It gets cooked or knocked off when something is near.",
        }
        hold_s: Quantity<Second> {
            sheet: Spec, bound: NotNegative, plain: Number(0.0),
            label: "Longest brake hold planned", note: "0 when there is no brake",
            how: "Ask how the driver stages and what the start system does.",
            why: "The converter heats by the second while the brake is held.",
        }
    }
}
