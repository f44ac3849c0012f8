use super::Phase::{Machining, Wash};
use super::{SeenPaper, Step, hazard};
use crate::job::{BellKind, BridgeDemand, Demand, Gasket, YokeKind};
use crate::rules::{Ask as _, YesNo as _};

/// Yokes that run in the tail bushing.
const SLIP_YOKES: &[YokeKind] = &[YokeKind::Slip, YokeKind::SlipRecessed];

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "MC-01",
        Machining,
        "See the signature for permanent changes",
        "Look at the signed paper and find every permanent change of this job on it, each on its own line.",
        "Metal that is cut does not grow back. Without the customer's signature the shop buys the case.",
    )
    .hold()
    .sees(SeenPaper::Build)
    .when(
        |j| {
            j.paper.permanent_mods.yes()
                | j.bell.cut_planned.yes()
                | j.valve_body.feed_plug.is(Demand::Required)
                | j.valve_body.passage_ball.is(Demand::Required)
                | j.order.vent_tap.any()
                | j.order.bridge.any()
                | j.order.plug.any()
                | j.order.boss_drill.any()
        },
        |j| j.order.boss_drill.set(5),
        |j| j.valve_body.feed_plug.set(Demand::Forbidden),
    ),
    Step::new(
        "MC-02",
        Machining,
        "Saw off the cast bell",
        "Saw off the bell along the marked line and dress the face. Then count the pump bosses once more.",
        "A bolt-on bell hangs from those bosses, and there is no way back to the cast one.",
    )
    .permanent()
    .hurts(hazard::CUTTING)
    .when(|j| j.bell.cut_planned.yes(), |j| j.bell.cut_planned.set(true), |j| j.bell.cut_planned.set(false)),
    Step::new(
        "MC-03",
        Machining,
        "Give each solid pump boss a thread",
        "Use the ring of the new bell as the template. Drill each boss that is still solid and cut its thread, put the \
         same holes through the pump flange, and take off the burrs.",
        "Every bolt more shares the load of the bell. The chips end in the pump unless they are washed out.",
    )
    .permanent()
    .hurts(hazard::CUTTING)
    .reads(&["case.pump_tapped"])
    .order("order.boss_drill")
    .added_as("A thread for each solid pump boss")
    .unless(|j| j.case.pump_tapped.not_less_than(&j.case.pump_bosses))
    .when(
        |j| j.bell.kind.is(BellKind::BoltOn),
        |j| j.bell.kind.set(BellKind::BoltOn),
        |j| j.bell.kind.set(BellKind::Integral),
    ),
    Step::new(
        "MC-04",
        Machining,
        "Drill and tap the vent",
        "Drill and tap the vent for 1/8-27 taper pipe (standard: ASME B1.20.1), leaning it a little so that a wrench gets \
         on. Try the fitting with its wrench.",
        "An upright fitting cannot be turned under the floor of the car, and the hole can only ever be plugged.",
    )
    .permanent()
    .hurts(hazard::CUTTING)
    .order("order.vent_tap")
    .added_as("Drill and tap the vent")
    .only_by_hand()
    .when(|j| j.order.vent_tap.any(), |j| j.order.vent_tap.set(5), |j| j.order.vent_tap.set(0)),
    Step::new(
        "MC-05",
        Machining,
        "Put thread inserts into bad holes",
        "Fit a coil insert into each bad hole of the case. Find every tang that was broken off and lay it beside the job.",
        "A tang left in the case travels into a valve bore.",
    )
    .hurts(hazard::CUTTING)
    .reads(&["case.threads_repaired"])
    .order("order.insert")
    .added_as("Put in thread inserts")
    .when(|j| j.case.threads_bad.any(), |j| j.case.threads_bad.set(2), |j| j.case.threads_bad.set(0)),
    Step::new(
        "MC-06",
        Machining,
        "Put an insert into the upper bell hole",
        "Fit a 3/8-16 coil insert (standard: ASME B18.29.1) into the upper bell hole that the engine does not use, flush \
         or below. Lay a straightedge across both faces.",
        "An insert that comes out too far keeps bell and engine apart and bends the crank's end.",
    )
    .hold()
    .hurts(hazard::CUTTING)
    .reads(&["bell.insert_proud_in"])
    .order("order.insert")
    .added_as("Put an insert into the upper bell hole")
    .when(|j| j.bell.insert_fitted.yes(), |j| j.bell.insert_fitted.set(true), |j| j.bell.insert_fitted.set(false)),
    Step::new(
        "MC-07",
        Machining,
        "Grind the cast bridge down",
        "By the modulator's passage, grind the cast bridge down to the height that the valve body's sheet gives, and \
         no further.",
        "The solenoid or its valve strikes a bridge that is too high, and one that is too low leaks for ever.",
    )
    .permanent()
    .hurts(hazard::CUTTING)
    .reads(&["case.bridge_lowered"])
    .order("order.bridge")
    .added_as("Grind the cast bridge down")
    .unless(|j| j.case.bridge_lowered.yes())
    .when(
        |j| j.case.bridge_lowered.yes() | j.valve_body.bridge.is(BridgeDemand::Required),
        |j| j.valve_body.bridge.set(BridgeDemand::Required),
        |j| j.valve_body.bridge.set(BridgeDemand::Either),
    ),
    Step::new(
        "MC-08",
        Machining,
        "Drive in the passage ball",
        "Drive the ball into its passage to the depth on the valve body's sheet. Photograph it before it is covered.",
        "The valve body does not work without it, most others do not work with it, and it hardly ever comes out again.",
    )
    .hold()
    .permanent()
    .hurts(hazard::CUTTING)
    .reads(&["case.passage_ball"])
    .order("order.plug")
    .added_as("Drive in the passage ball")
    .unless(|j| j.case.passage_ball.yes())
    .when(
        |j| j.valve_body.passage_ball.is(Demand::Required),
        |j| j.valve_body.passage_ball.set(Demand::Required),
        |j| j.valve_body.passage_ball.set(Demand::Either),
    ),
    Step::new(
        "MC-09",
        Machining,
        "Drive in the feed plug",
        "Drive the cup plug into the feed hole, square and to depth. Photograph it before it is covered.",
        "The plug, the center seal, the rings and the valve body are one set: with one of them missing third gear leaks.",
    )
    .hold()
    .permanent()
    .hurts(hazard::CUTTING)
    .reads(&["case.feed_plugged"])
    .order("order.plug")
    .added_as("Drive in the feed plug")
    .unless(|j| j.case.feed_plugged.yes())
    .when(
        |j| j.valve_body.feed_plug.is(Demand::Required),
        |j| j.valve_body.feed_plug.set(Demand::Required),
        |j| j.valve_body.feed_plug.set(Demand::Either),
    ),
    Step::new(
        "MC-10",
        Machining,
        "Try the yoke in the tail bushing",
        "Slide the customer's own yoke through the tail bushing and measure the clearance. If it is tight, add honing to \
         the job and hone until the yoke runs free, and only while no output shaft is in the case.",
        "A tight yoke seizes in its bushing when it gets hot. Grit from honing ruins the rear bearing.",
    )
    .permanent()
    .hurts(hazard::CUTTING)
    .reads(&["yoke.clear_in"])
    .order("order.bushing_hone")
    .added_as("Hone the tail bushing")
    .only_by_hand()
    .when(
        |j| j.yoke.kind.one_of(SLIP_YOKES),
        |j| j.yoke.kind.set(YokeKind::SlipRecessed),
        |j| j.yoke.kind.set(YokeKind::BoltOn),
    ),
    Step::new(
        "MC-11",
        Machining,
        "Stone the valve body's face on the case",
        "Rub the face flat with an oiled stone. Hold a straightedge across it and try with a feeler gauge how much goes \
         under.",
        "Without a gasket the two faces are the seal, and a hollow lets pressure from one passage into the next.",
    )
    .hold()
    .reads(&["case.face_flat_in"])
    .when(
        |j| j.valve_body.gasket.is(Gasket::None),
        |j| j.valve_body.gasket.set(Gasket::None),
        |j| j.valve_body.gasket.set(Gasket::Custom),
    ),
    Step::new(
        "WA-01",
        Wash,
        "Wash it for the last time",
        "Wash the case hot, brush out every passage, and blow through each one until you feel the air at its other end. \
         From here on nothing is drilled, tapped, cut or ground.",
        "One chip in a valve bore brings the whole unit back out of the vehicle.",
    )
    .hold()
    .hurts(hazard::WASHING)
    .order("order.final_wash"),
    Step::new(
        "WA-02",
        Wash,
        "Dry, oil and bag it",
        "Dry the case, oil its bores, and keep it in a closed bag until it is needed.",
        "Clean iron rusts overnight and shop dust settles in every open passage.",
    ),
];
