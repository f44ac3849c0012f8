use super::Phase::{AfterCare, Installation};
use super::{Step, hazard};
use crate::job::{BrakeKind, Cooler, YokeKind};
use crate::quantity::Quantity;
use crate::rules::{Ask as _, YesNo as _};

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "IS-01",
        Installation,
        "Fit both dowels",
        "See that both dowels are in the block. With a bolt-on bell or a cut case, sweep the bell bore with a dial from \
         the crank.",
        "A bell out of line wears the pump bushing and breaks the flexplate.",
    )
    .hurts(hazard::UNDER_VEHICLE)
    .reads(&["bell.runout_in"]),
    Step::new(
        "IS-02",
        Installation,
        "Flush or replace the cooler",
        "Flush the cooler and its lines, or replace them. Then time how long the return takes to fill one quart at hot \
         idle.",
        "What the old unit left in the cooler ruins the new one within miles.",
    )
    .hold()
    .hurts(hazard::HOT_FLUID)
    .reads(&["cooling.flow_s_per_qt", "cooling.action"])
    .order("order.cooler_flush")
    .when(
        |j| j.cooling.cooler.is_not(Cooler::None),
        |j| j.cooling.cooler.set(Cooler::Both),
        |j| j.cooling.cooler.set(Cooler::None),
    ),
    Step::new(
        "IS-03",
        Installation,
        "Fill and seat the converter",
        "Pour fluid into the converter and turn it back onto the pump until it has dropped three times. Measure how deep \
         it sits.",
        "A converter that is not home breaks the pump when the bell is drawn up.",
    )
    .hold()
    .hurts(hazard::LIFTING)
    .reads(&["converter.seated", "converter.prefill_qt"]),
    Step::new(
        "IS-04",
        Installation,
        "Measure the converter gap",
        "With the converter fully back and the bell bolted up, measure the gap to the flexplate at three pads. See that \
         the pilot reaches into the crank.",
        "Too small a gap loads the pump and too large a one leaves the converter hanging on its bolts.",
    )
    .hold()
    .hurts(hazard::UNDER_VEHICLE)
    .reads(&["converter.gap_in"]),
    Step::new(
        "IS-05",
        Installation,
        "Make up the gap with spacers, all alike",
        "Put a spacer of the same thickness under every pad and measure the reach of the pilot again.",
        "Unequal spacers tilt the converter, and each spacer takes reach from the pilot.",
    )
    .hurts(hazard::UNDER_VEHICLE)
    .reads(&["converter.spacer_in"])
    .when(
        |j| j.converter.spacer_in.any(),
        |j| j.converter.spacer_in.set(Quantity::new(0.06)),
        |j| j.converter.spacer_in.set(Quantity::new(0.0)),
    ),
    Step::new(
        "IS-06",
        Installation,
        "Mount and driveshaft",
        "See that the mount falls into place without being pulled. Measure how much spline is engaged with the axle \
         hanging, how far the yoke is from the end with it fully up, and the angles of the joints.",
        "A mount under strain cracks the case, and a shaft that bottoms drives the yoke through the unit.",
    )
    .hurts(hazard::UNDER_VEHICLE)
    .reads(&["mount.pulled", "yoke.engaged_droop_in", "yoke.gap_bump_in"])
    .when(
        |j| j.yoke.kind.is_not(YokeKind::None),
        |j| j.yoke.kind.set(YokeKind::BoltOn),
        |j| j.yoke.kind.set(YokeKind::None),
    ),
    Step::new(
        "IS-07",
        Installation,
        "Prove the interlock of the brake button",
        "Prove that the brake button is dead: first while the vehicle stands in any gear but first, then while it rolls \
         in a closed place.",
        "A button pressed by accident at speed locks the wheels that drive the car.",
    )
    .hold()
    .hurts(hazard::ROLLING)
    .when(
        |j| j.valve_body.brake.is_not(BrakeKind::None) & j.usage.road_driven.yes(),
        |j| j.valve_body.brake.set(BrakeKind::Internal),
        |j| {
            j.valve_body.brake.set(BrakeKind::Internal);
            j.usage.road_driven.set(false);
        },
    ),
    Step::new(
        "IS-08",
        Installation,
        "Fill it and start for the first time",
        "Pour in five to six quarts before cranking (common practice), start, fill to the mark, go through all ranges and \
         fill again hot. Write down how much went in.",
        "The first seconds without fluid cost the pump. From this moment on, whatever was left in the cooler is in the \
         unit.",
    )
    .hurts(hazard::RUNNING)
    .reads(&["fluid.added_qt"])
    .order("order.first_start"),
    Step::new(
        "IS-09",
        Installation,
        "Prove the linkage and park",
        "See in every range that the detent in the unit and the gate of the shifter agree. Let park hold the vehicle on a \
         slope.",
        "A lever half way between two ranges burns clutches, and a vehicle that rolls out of park kills.",
    )
    .hold()
    .hurts(hazard::ROLLING)
,
    Step::new(
        "AC-01",
        AfterCare,
        "Look it over after the first miles",
        "After about 100 miles or the first event (common practice), look for leaks, check the level, smell the fluid and \
         try the pan bolts cold.",
        "Gaskets settle, and a small leak found early stays small.",
    )
    .hurts(hazard::HOT_FLUID),
    Step::new(
        "AC-02",
        AfterCare,
        "Change fluid and filter for the first time",
        "Change fluid and filter after 500 to 1,000 miles or after the first weekend of racing (common practice), and look \
         into the pan.",
        "The first wear of new parts ends in the pan, and it shows whether more is to come.",
    )
    .hurts(hazard::HOT_FLUID),
    Step::new(
        "AC-03",
        AfterCare,
        "Remind the customer of the first label",
        "Write to the customer before the first safety label runs out.",
        "Nobody looks at a label until the official does.",
    )
    .when(|j| j.usage.raced.yes(), |j| j.usage.raced.set(true), |j| j.usage.raced.set(false)),
    Step::new(
        "AC-04",
        AfterCare,
        "Open the filter that caught the debris",
        "At the first service cut the inline filter open, spread it out and photograph it.",
        "It shows what the cooler still held after the failure.",
    )
    .hurts(hazard::HOT_FLUID)
    .when(
        |j| j.cooling.inline_filter.yes(),
        |j| j.cooling.inline_filter.set(true),
        |j| j.cooling.inline_filter.set(false),
    ),
];
