use super::{Phase::Test, Step, hazard};
use crate::job::BrakeKind;
use crate::rules::Ask as _;

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "TE-01",
        Test,
        "Try forward and reverse with air",
        "Turn the input by hand. Then hold the output, apply forward and reverse with air, and feel that each takes hold.",
        "A unit that binds or does not take hold on the bench will not do better in the car.",
    )
    .hurts(hazard::AIR),
    Step::new(
        "TE-02",
        Test,
        "Read the line pressures",
        "On the stand or in the car, take the line pressure twice in each range, once at idle and once at stall. Hold \
         stall for five seconds at most (common practice), with the wheels chocked.",
        "The pressures show a leak inside before the clutches pay for it.",
    )
    .hurts(hazard::RUNNING)
    .reads(&["bench.line_drive_idle_psi", "bench.line_reverse_idle_psi", "bench.line_stall_psi"]),
    Step::new(
        "TE-03",
        Test,
        "Prove the trans brake",
        "Apply and release the brake ten times. Measure the volts at the solenoid while it is applied.",
        "A brake that lets go late or by itself throws the car forward.",
    )
    .hold()
    .hurts(hazard::RUNNING)
    .reads(&["trans_brake.volts"])
    .when(
        |j| j.valve_body.brake.is_not(BrakeKind::None),
        |j| j.valve_body.brake.set(BrakeKind::Internal),
        |j| j.valve_body.brake.set(BrakeKind::None),
    ),
    Step::new(
        "TE-04",
        Test,
        "Look for leaks when it is hot",
        "Let it get hot through and stand for a while, then look at every joint with a lamp.",
        "Seals that hold cold can weep hot, and the customer's floor should not be where it shows.",
    )
    .hurts(hazard::HOT_FLUID),
];
