use super::{Phase::Assembly, Step, hazard};
use crate::job::{BrakeKind, Fitted, UseKind, ValveBodyKind};
use crate::rules::{Ask as _, YesNo as _};

/// Uses that lean on the low band for long.
const LOW_BAND_WORK: &[UseKind] = &[UseKind::Tow, UseKind::Offroad];

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "AS-01",
        Assembly,
        "Rear unit in, rear end play read",
        "Lower the rear unit with its shaft into the case and torque the center-support bolt by the unit's manual. Read \
         the rear end play and choose the washer.",
        "After this the shaft is in, and whatever needed it out is too late.",
    )
    .hold()
    .hurts(hazard::LIFTING)
    .reads(&["bench.rear_end_play_in"])
    .order("order.output_fit"),
    Step::new(
        "AS-02",
        Assembly,
        "Intermediate pack in",
        "Stack the intermediate plates in the case and measure the clearance of the pack.",
        "A pack that is too tight drags in first and third.",
    )
    .reads(&["intermediate.clear_in"]),
    Step::new(
        "AS-03",
        Assembly,
        "Drums home",
        "Turn the drums down into place and count each drop. Measure from the drum to the pump face to be sure that they \
         are home.",
        "A drum that hangs one plate high is crushed by the pump bolts. Once it is in, the one-way clutch can no longer \
         be tried.",
    )
    .order("order.drum_fit"),
    Step::new(
        "AS-04",
        Assembly,
        "Pump on, torqued while the input turns",
        "Draw the pump down in small steps crosswise, by the unit's manual, and turn the input shaft by hand the whole \
         time. Stop at once when it gets stiff.",
        "Drawing on against a drum that is not home breaks the pump.",
    )
    .hold()
    .reads(&["bench.input_turns_free"])
    .order("order.pump_torque"),
    Step::new(
        "AS-05",
        Assembly,
        "Read the front end play",
        "With the pump torqued, pry the rear play out, set a dial on the input shaft, read the front end play and choose \
         the washer.",
        "With too little play the washers burn, and with too much the drums saw through their rings. Read before the \
         pump is tight it means nothing.",
    )
    .hold()
    .reads(&["bench.front_end_play_in"])
    .order("order.front_end_play"),
    Step::new(
        "AS-06",
        Assembly,
        "Check every feed with air",
        "Blow regulated air, at most 50 psi (TM 9-2320-280-34), into each feed in turn. Each has to answer with one firm \
         thump, without a hiss, and let go again.",
        "This is the last chance to find a cut seal from outside.",
    )
    .hold()
    .hurts(hazard::AIR)
    .reads(&["bench.air_checks"])
    .order("order.air_check"),
    Step::new(
        "AS-07",
        Assembly,
        "Gauge the rear servo pin",
        "Set the gauge on the rear servo and choose the apply pin by it.",
        "A pin of the wrong length lets the low band slip or drag, and this job leans on that band.",
    )
    .hold()
    .reads(&["bands.rear_pin"])
    .when(
        |j| {
            j.valve_body.brake.is_not(BrakeKind::None)
                | j.valve_body.low_band_first.yes()
                | j.usage.kind.one_of(LOW_BAND_WORK)
        },
        |j| j.valve_body.low_band_first.set(true),
        |j| j.usage.kind.set(UseKind::StreetStrip),
    ),
    Step::new(
        "AS-08",
        Assembly,
        "Front band and servo in",
        "Fit the front band and its servo and see that the band is seated on its anchor.",
        "A band off its anchor jams the drum.",
    )
    .when(
        |j| j.bands.front.is(Fitted::Fitted),
        |j| j.bands.front.set(Fitted::Fitted),
        |j| j.bands.front.set(Fitted::Removed),
    ),
    Step::new(
        "AS-09",
        Assembly,
        "Valve body on",
        "Lay the gaskets the sheet asks for, count the check balls as they go in and photograph them. Then bolt the valve \
         body on by the unit's manual.",
        "A ball left over or a gasket where none belongs is found on the road.",
    )
    .hold()
    .reads(&["valve_body.check_balls_fitted"])
    .order("order.valve_body_fit"),
    Step::new(
        "AS-10",
        Assembly,
        "Try the inside solenoid",
        "Try the solenoid wet with fluid on the bench. Let it click ten times and write down its resistance in ohms.",
        "Once the pan is on, the solenoid can be neither seen nor tried.",
    )
    .hold()
    .hurts(hazard::ELECTRIC)
    .when(
        |j| j.valve_body.brake.is(BrakeKind::Internal),
        |j| j.valve_body.brake.set(BrakeKind::Internal),
        |j| j.valve_body.brake.set(BrakeKind::External),
    ),
    Step::new(
        "AS-11",
        Assembly,
        "Fit the outside solenoid",
        "Bolt the solenoid to the case and move its valve by hand from stop to stop.",
        "A valve that sticks keeps the brake on when the light is green.",
    )
    .when(
        |j| j.valve_body.brake.is(BrakeKind::External),
        |j| j.valve_body.brake.set(BrakeKind::External),
        |j| j.valve_body.brake.set(BrakeKind::Internal),
    ),
    Step::new(
        "AS-12",
        Assembly,
        "Close what the manual valve body leaves open",
        "Close the governor bore with its blank cover, plug the modulator bore and cap the kickdown wire.",
        "An open bore pours the fluid out, and a bare wire shorts on the case.",
    )
    .when(
        |j| j.valve_body.kind.is(ValveBodyKind::Manual),
        |j| j.valve_body.kind.set(ValveBodyKind::Manual),
        |j| j.valve_body.kind.set(ValveBodyKind::Auto),
    ),
    Step::new(
        "AS-13",
        Assembly,
        "Try the governor and the modulator",
        "Turn the governor by hand and see that its gear is the right one. Pull vacuum on the modulator and watch that it \
         holds for half a minute (common practice).",
        "A stuck governor never shifts, and a leaking modulator drinks fluid into the engine.",
    )
    .when(
        |j| j.valve_body.kind.is(ValveBodyKind::Auto),
        |j| j.valve_body.kind.set(ValveBodyKind::Auto),
        |j| j.valve_body.kind.set(ValveBodyKind::Manual),
    ),
];
