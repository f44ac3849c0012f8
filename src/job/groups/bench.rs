//! Read at assembly and test.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::AirChecks;
use crate::quantity::{Inch, Minute, Psi, Quantity};

group! {
    /// End plays, air checks and pressures: what closes a unit and what passes it.
    Bench "bench" {
        line_stall_psi: Quantity<Psi> {
            sheet: Measured, bound: NotNegative, plain: Number(150.0),
            label: "Line pressure at full throttle in first", note: "",
            how: "Read the 0 to 300 psi gauge at operating heat. Wheels chocked, brakes held, nobody in front or \
                behind, five seconds at most.",
            why: "The clutch has only this pressure to hold with.",
        }
        friction_soak_min: Quantity<Minute> {
            sheet: Paper, bound: NotNegative, plain: Number(30.0),
            label: "Time the frictions soaked", note: "in the fluid that will be used",
            how: "Note the clock when the last plate goes under and when the first comes out.",
            why: "A dry plate burns in the first shifts.",
        }
        air_checks: AirChecks {
            sheet: Measured, bound: Any, plain: Word("pass"),
            label: "Air checks", note: "",
            how: "Blow regulated dry air, 50 psi or less, into each feed through a rubber tip. A sound piston thuds \
                  once and the air then stays quiet. Glasses on, hands clear.",
            why: "It is the last chance to find a cut seal before the unit is closed.",
        }
        front_end_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.012),
            label: "Front end play", note: "",
            how: "With the pump at its torque, pry the rear play out, lift the input shaft with about 20 lb and read \
                the dial.",
            why: "Too little binds when hot; too much lets the drums walk.",
        }
        rear_end_play_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.01),
            label: "Rear end play", note: "",
            how: "With the center-support bolt at its torque, push the output shaft in, zero the dial, pull, and \
                repeat twice.",
            why: "The rear gear set runs on it, and it shows whether everything is home.",
        }
        input_turns_free: bool {
            sheet: Measured, bound: Any, plain: YesNo(true),
            label: "Input turns by hand", note: "",
            how: "Turn the input shaft by hand as the pump bolts come up, and again after the last one.",
            why: "If it stops, something inside is cocked and breaks with the next turn of the wrench.",
        }
        line_drive_idle_psi: Quantity<Psi> {
            sheet: Measured, bound: NotNegative, plain: Number(70.0),
            label: "Line pressure in drive", note: "hot, idling",
            how: "Read the 0 to 300 psi gauge with the wheels chocked and the brake held. Hot fluid burns: check the \
                hose first.",
            why: "It shows whether pump and regulator do their work.",
        }
        line_reverse_idle_psi: Quantity<Psi> {
            sheet: Measured, bound: NotNegative, plain: Number(110.0),
            label: "Line pressure in reverse", note: "hot, idling",
            how: "Read the same gauge in reverse with the wheels chocked, the brake held and nobody behind.",
            why: "Reverse needs more pressure than drive, or its clutch and band slip.",
        }
        gauge_cal_ok: bool {
            sheet: Paper, bound: Any, plain: YesNo(true),
            label: "Gauge calibration in date", note: "",
            how: "Read the date on the gauge's calibration sticker; a gauge without a sticker counts as no.",
            why: "A gauge that reads wrong passes a bad unit.",
        }
    }
}
