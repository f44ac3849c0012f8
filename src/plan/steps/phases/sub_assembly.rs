use super::{Phase::SubAssembly, Step, hazard};
use crate::job::{BrakeKind, RearThrust};
use crate::rules::{Ask as _, YesNo as _};

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "SA-01",
        SubAssembly,
        "Make up the pump",
        "Measure how far the gears stand below the face. See that the bushing is good and that the drive gear has its \
         right side up. Line up the halves with the band, and put new seals on the bolts.",
        "A drive gear put in upside down breaks the pump at the first start, and halves out of line lock the input.",
    )
    .hold()
    .reads(&["pump.face_clear_in", "pump.drive_gear", "pump.aligned"]),
    Step::new(
        "SA-02",
        SubAssembly,
        "Prove the intermediate one-way clutch",
        "Stand the drum with its rear face up and turn the outer race by hand. It has to run free clockwise and lock the \
         other way. Put your initials to it.",
        "Built in backwards there is no second gear, and the whole unit comes apart again for it.",
    )
    .hold()
    .reads(&["one_way.free"])
    .order("order.one_way_check"),
    Step::new(
        "SA-03",
        SubAssembly,
        "Prove the rear one-way clutch",
        "With the center support in your hand, turn the rear one-way clutch on it, see that it locks the way the \
         unit's manual says, and put your initials to it.",
        "Built in backwards the vehicle does not pull away in first.",
    )
    .hold()
    .reads(&["one_way.low"]),
    Step::new(
        "SA-04",
        SubAssembly,
        "Make up the direct drum",
        "Put the center seal in or leave it out as the valve body's sheet says. Count the springs, stack the plates and \
         measure the clearance of the pack.",
        "Seal and valve body belong together, and a pack that is too tight drags until it burns.",
    )
    .hurts(hazard::SPRINGS)
    .reads(&["direct.clear_in"]),
    Step::new(
        "SA-05",
        SubAssembly,
        "Take the wavy plate out of the direct pack",
        "Put a flat steel plate where the wavy one was and set the clearance of the pack again.",
        "The wavy plate softens the shift. With a trans brake it breaks and takes the pack with it.",
    )
    .hurts(hazard::SPRINGS)
    .reads(&["direct.wave"])
    .when(
        |j| j.valve_body.brake.is_not(BrakeKind::None),
        |j| j.valve_body.brake.set(BrakeKind::External),
        |j| j.valve_body.brake.set(BrakeKind::None),
    ),
    Step::new(
        "SA-06",
        SubAssembly,
        "Make up the forward drum",
        "Stack the plates, measure the clearance of the pack and see that the hub is through all of them.",
        "A hub that stops one plate short crushes it when the pump is drawn down.",
    )
    .hurts(hazard::SPRINGS)
    .reads(&["forward.clear_in"]),
    Step::new(
        "SA-07",
        SubAssembly,
        "Soak the friction plates",
        "Lay the friction plates into the fluid this unit will be filled with, half an hour or more (common practice), \
         and write down how long.",
        "Dry plates burn at the first shift.",
    )
    .reads(&["bench.friction_soak_min"]),
    Step::new(
        "SA-08",
        SubAssembly,
        "Check the gear set",
        "Feel under each planet pinion with a gauge, see that the parts belong together and look through every oil \
         hole.",
        "A worn pinion or a blocked oil hole is heard only when it is too late.",
    )
    .reads(&["gears.pinion_play_in"]),
    Step::new(
        "SA-09",
        SubAssembly,
        "Change the output shaft",
        "Press the output shaft out of the rear gear set and the short one with 32 splines in.",
        "Shaft, rear housing and yoke have to match, or the driveshaft cannot be fitted.",
    )
    .hurts(hazard::SPRINGS)
    .when(|j| j.output.swap_planned.yes(), |j| j.output.swap_planned.set(true), |j| j.output.swap_planned.set(false)),
    Step::new(
        "SA-10",
        SubAssembly,
        "Compare the needle bearing with the washers",
        "Measure the height of the new needle-bearing stack and of the old pair of washers, and shim the difference.",
        "A stack of another height shifts the whole gear set, and the end play cannot be set.",
    )
    .hold()
    .reads(&["gears.rear_stack_measured"])
    .when(
        |j| j.gears.rear_thrust.is(RearThrust::Bearing),
        |j| j.gears.rear_thrust.set(RearThrust::Bearing),
        |j| j.gears.rear_thrust.set(RearThrust::Washers),
    ),
];
