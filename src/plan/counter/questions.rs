//! The questions themselves: the shop's counter sheet in its own order, put in words for the customer.

use super::{Question, Section};
use crate::job::{BellKind, FlexplateShield, FlexplateSpec, Job, ParkDrum, ShieldKind, Tail, TireKind, YokeKind};

pub(super) const SECTIONS: &[Section] = &[
    Section {
        number: 1,
        title: "Use",
        questions: &[Question::always(|job| job.usage.kind.id(), "What does it do on most weekends?")],
    },
    Section { number: 2, title: "Racing and class", questions: RACING },
    Section {
        number: 3,
        title: "Road",
        questions: &[Question::always(
            |job| job.usage.road_driven.id(),
            "Is it plated, insured and driven on the road?",
        )],
    },
    Section {
        number: 4,
        title: "Driven wheels",
        questions: &[Question::always(|job| job.vehicle.drive_layout.id(), "Does it drive two wheels or four?")],
    },
    Section {
        number: 5,
        title: "Engine torque",
        questions: &[Question::always(
            |job| job.engine.torque_lbft.id(),
            "How much torque does the engine make, and who says so?",
        )],
    },
    Section {
        number: 6,
        title: "Engine speed",
        questions: &[Question::always(
            |job| job.engine.max_rpm.id(),
            "How fast is the engine ever turned, in any gear?",
        )],
    },
    Section {
        number: 7,
        title: "Air and fuel",
        questions: &[Question::always(
            |job| job.engine.induction.id(),
            "Does the engine breathe by itself, or has it a blower, a turbocharger or nitrous? Is it a diesel?",
        )],
    },
    Section {
        number: 8,
        title: "Back of the engine",
        questions: &[
            Question::always(|job| job.engine.upper_hole.id(), "Does the block have its upper bell hole?"),
            Question::always(
                |job| job.engine.crank_flange.id(),
                "Does the crank end at the standard depth, or is it the short one?",
            ),
        ],
    },
    Section {
        number: 9,
        title: "Weight",
        questions: &[
            Question::always(
                |job| job.vehicle.weight_lb.id(),
                "What does the vehicle weigh, ready to run, with driver and fuel?",
            ),
            Question::always(
                |job| job.vehicle.tow_weight_lb.id(),
                "What does the heaviest trailer behind it weigh, loaded? 0 if it pulls none.",
            ),
        ],
    },
    Section {
        number: 10,
        title: "Tires and axle",
        questions: &[
            Question::always(
                |job| job.vehicle.tire_diameter_in.id(),
                "How tall are the driven tires, with the vehicle standing on them?",
            ),
            Question::always(|job| job.vehicle.axle_ratio.id(), "What is the axle ratio?"),
        ],
    },
    Section {
        number: 11,
        title: "Speedometer",
        questions: &[Question::always(|job| job.speedometer.kind.id(), "What works the speedometer?")],
    },
    Section {
        number: 12,
        title: "Who built it last",
        questions: &[Question::always(
            |job| job.case.history.id(),
            "Who had it apart before, and was the case changed for another valve body?",
        )],
    },
    Section {
        number: 13,
        title: "Bell",
        questions: &[
            Question::always(
                |job| job.bell.kind.id(),
                "Is the bell, the housing toward the engine, one piece with the case or bolted on?",
            ),
            Question::always(|job| job.bell.cut_planned.id(), "Is that bell to be sawn off for a bolt-on one?")
                .when(|job| job.bell.kind.value() == Some(&BellKind::Integral)),
            Question::always(|job| job.bell.pattern.id(), "Which bolt pattern does the bell have?"),
            Question::always(|job| job.engine.pattern.id(), "Which bolt pattern does the engine have?"),
        ],
    },
    Section {
        number: 14,
        title: "Pump bolts",
        questions: &[
            Question::always(|job| job.pump.holes.id(), "How many bolt holes go through the pump flange?")
                .when(hangs_on_pump_bolts),
            Question::always(
                |job| job.case.pump_bosses.id(),
                "How many bosses can you count behind the pump flange, with or without a thread?",
            )
            .when(hangs_on_pump_bolts),
            Question::always(|job| job.bell.ring_holes.id(), "How many holes are in the ring of the bolt-on bell?")
                .when(hangs_on_pump_bolts),
        ],
    },
    Section {
        number: 15,
        title: "Cooler ports",
        questions: &[Question::always(
            |job| job.cooling.port.id(),
            "Are the cooler ports straight, with a washer, or taper pipe?",
        )],
    },
    Section { number: 16, title: "Threads, by gauge", questions: THREADS },
    Section { number: 17, title: "Rear end of the unit", questions: REAR },
    Section {
        number: 18,
        title: "Pan and dipstick",
        questions: &[
            Question::always(|job| job.pan.depth.id(), "Is the pan shallow or deep?"),
            Question::always(|job| job.stick.kind.id(), "Is the dipstick tube steel or braided hose?"),
            Question::always(|job| job.stick.locks.id(), "Does the dipstick lock in its tube?").when(raced),
        ],
    },
    Section { number: 19, title: "Shields and their dates", questions: SHIELDS },
    Section {
        number: 20,
        title: "Mounts",
        questions: &[
            Question::always(|job| job.vehicle.engine_mount.id(), "What are the engine mounts made of?"),
            Question::always(|job| job.mount.kind.id(), "What is the transmission mount made of?"),
        ],
    },
    Section {
        number: 21,
        title: "Converter",
        questions: &[
            Question::always(|job| job.converter.stall_rpm.id(), "What stall speed stands on the converter's label?"),
            Question::always(
                |job| job.converter.rated_torque_lbft.id(),
                "For how much engine torque was that stall speed given?",
            ),
            Question::always(|job| job.converter.origin.id(), "Is the converter new, rebuilt or the old one again?"),
        ],
    },
    Section {
        number: 22,
        title: "Fluid",
        questions: &[
            Question::always(
                |job| job.case.coolant_found.id(),
                "Is the fluid pink and milky, as when coolant gets into it?",
            )
            .only_yes(),
            Question::always(
                |job| job.case.failure_debris.id(),
                "Is there metal or clutch lining in the fluid, or did something break?",
            )
            .only_yes(),
        ],
    },
];

const RACING: &[Question] = &[
    Question::always(
        |job| job.usage.raced.id(),
        "Will it make timed passes, or be looked over by an official, in the next twelve months?",
    ),
    Question::always(|job| job.event.quarter_mile_s.id(), "What is the quickest quarter mile you expect from it?")
        .when(raced),
    Question::always(|job| job.event.trap_mph.id(), "How fast do you expect it to be at the finish?").when(raced),
    Question::always(|job| job.vehicle.tire_kind.id(), "Does it race on slicks or on street tires?").when(raced),
    Question::always(|job| job.event.date.id(), "When is the next event?").when(raced),
    Question::always(|job| job.class_table.year.id(), "Of which year is the rulebook of your class?").when(raced),
    Question::always(|job| job.class_table.brake_allowed.id(), "Does your class allow a trans brake?").when(raced),
    Question::always(
        |job| job.class_table.shield_with_brake.id(),
        "Does your class ask for a shield with any trans brake?",
    )
    .when(|job| raced(job) && job.class_table.brake_allowed.value() != Some(&false)),
    Question::always(|job| job.class_table.shield_always.id(), "Does your class always ask for a shield?").when(raced),
    Question::always(
        |job| job.class_table.shield_s.id(),
        "From which quarter-mile time on does your class ask for a shield?",
    )
    .when(shield_hangs_on_speed),
    Question::always(|job| job.class_table.shield_mph.id(), "From which speed on does your class ask for a shield?")
        .when(shield_hangs_on_speed),
    Question::always(
        |job| job.class_table.stick_s.id(),
        "From which quarter-mile time on does your class ask for a locking dipstick?",
    )
    .when(raced),
    Question::always(
        |job| job.class_table.flexplate_s.id(),
        "From which quarter-mile time on does your class ask for a certified flexplate?",
    )
    .when(raced),
    Question::always(
        |job| job.class_table.flexplate_mph.id(),
        "From which speed on does your class ask for a certified flexplate?",
    )
    .when(raced),
    Question::always(
        |job| job.class_table.loop_slick_s.id(),
        "From which quarter-mile time on does your class ask for a driveshaft loop on slicks?",
    )
    .when(|job| raced(job) && job.vehicle.tire_kind.value() != Some(&TireKind::Street)),
    Question::always(
        |job| job.class_table.loop_street_s.id(),
        "From which quarter-mile time on does your class ask for a driveshaft loop on street tires?",
    )
    .when(|job| raced(job) && job.vehicle.tire_kind.value() != Some(&TireKind::Slick)),
];

const THREADS: &[Question] = &[
    Question::always(|job| job.threads.linkage_shaft.id(), "Shift shaft: inch or metric?"),
    Question::always(|job| job.threads.linkage_nut.id(), "Nut of the shift lever: inch or metric?"),
    Question::always(|job| job.threads.speedometer_hole.id(), "Hole for the speedometer clip: inch or metric?"),
    Question::always(|job| job.threads.speedometer_bolt.id(), "Bolt of the speedometer clip: inch or metric?"),
    Question::always(|job| job.threads.mount_hole.id(), "Hole for the mount: inch or metric?"),
    Question::always(|job| job.threads.mount_bolt.id(), "Bolt of the mount: inch or metric?"),
];

const REAR: &[Question] = &[
    Question::always(|job| job.output.spline.id(), "How many splines does the output shaft have?"),
    Question::always(|job| job.output.end.id(), "Is the end of the output shaft plain or tapped?"),
    Question::always(|job| job.output.o_ring.id(), "Is there a rubber ring on the output shaft?"),
    Question::always(|job| job.output.tail.id(), "What kind of rear housing is it?"),
    Question::always(|job| job.output.park_drum.id(), "Is there a brake drum behind the unit, or was there one?")
        .when(|job| job.output.tail.value() == Some(&Tail::HeavyBearing)),
    Question::always(|job| job.vehicle.axle_park_brake.id(), "Does a parking brake at the axle hold the vehicle?")
        .when(|job| {
            job.output.park_drum.value() == Some(&ParkDrum::Removed) && job.usage.road_driven.value() != Some(&false)
        }),
    Question::always(|job| job.yoke.kind.id(), "What kind of yoke goes on it?"),
    Question::always(|job| job.yoke.spline.id(), "How many splines does the yoke have?").when(has_yoke),
    Question::always(|job| job.driveshaft.kind.id(), "Is the driveshaft one piece, or can it slide?").when(has_yoke),
];

const SHIELDS: &[Question] = &[
    Question::always(|job| job.shield.kind.id(), "Is there a shield around the transmission?"),
    Question::always(|job| job.shield.expires.id(), "Until when is the shield certified, by its label?").when(shielded),
    Question::always(|job| job.shield.modified.id(), "Was anything on the shield cut, welded, drilled or bent?")
        .when(shielded),
    Question::always(|job| job.flexplate.spec.id(), "Does the flexplate carry a certification label?").when(raced),
    Question::always(|job| job.flexplate.expires.id(), "Until when is the flexplate certified, by its label?")
        .when(|job| job.flexplate.spec.value().is_some_and(|spec| *spec != FlexplateSpec::None)),
    Question::always(|job| job.flexplate.shield.id(), "Is there a certified shield around the flexplate?").when(raced),
    Question::always(
        |job| job.flexplate.shield_expires.id(),
        "Until when is the flexplate shield certified, by its label?",
    )
    .when(|job| job.flexplate.shield.value().is_some_and(|shield| *shield != FlexplateShield::None)),
];

fn raced(job: &Job) -> bool {
    job.usage.raced.value() == Some(&true)
}

fn shield_hangs_on_speed(job: &Job) -> bool {
    raced(job) && job.class_table.shield_always.value() != Some(&true)
}

/// A bolt-on bell hangs on the pump bolts, and so will one that takes the place of a sawn-off one.
fn hangs_on_pump_bolts(job: &Job) -> bool {
    match job.bell.kind.value() {
        Some(BellKind::BoltOn) => true,
        Some(BellKind::Integral) => job.bell.cut_planned.value() == Some(&true),
        None => false,
    }
}

fn has_yoke(job: &Job) -> bool {
    job.yoke.kind.value().is_some_and(|kind| *kind != YokeKind::None)
}

fn shielded(job: &Job) -> bool {
    job.shield.kind.value().is_some_and(|kind| *kind != ShieldKind::None)
}
