use super::Phase::{Assembly, MockUp};
use super::{Step, hazard};
use crate::job::{OutputEnd, ShieldKind, SpeedometerHole, SpeedometerKind, VentOutlet, YokeKind};
use crate::rules::{Ask as _, YesNo as _};

/// Yokes that slide on the output shaft.
const SLIP_YOKES: &[YokeKind] = &[YokeKind::Slip, YokeKind::SlipRecessed];

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "AS-14",
        Assembly,
        "A pan with its own tube and bolt",
        "Fit pan, filter tube and filter bolt that belong together, and feel with a finger that the O-ring of the tube is \
         in its place.",
        "A tube of the wrong length or a missing O-ring draws air, and the pump starves.",
    ),
    Step::new(
        "AS-15",
        Assembly,
        "Take out the output O-ring",
        "Take the O-ring off the tapped end of the output shaft before the slip yoke goes on.",
        "With the O-ring in, the slip yoke is held like a cork in a bottle and pushes on the shaft.",
    )
    .when(
        |j| j.yoke.kind.one_of(SLIP_YOKES) & j.output.end.is(OutputEnd::TappedBoltOn),
        |j| j.output.end.set(OutputEnd::TappedBoltOn),
        |j| {
            j.output.end.set(OutputEnd::TappedBoltOn);
            j.yoke.kind.set(YokeKind::BoltOn);
        },
    ),
    Step::new(
        "AS-16",
        Assembly,
        "Seal the bolt-on yoke",
        "Put the O-ring on the output shaft and sealer under the washer of the yoke bolt.",
        "Fluid creeps along the splines and out past the bolt.",
    )
    .when(
        |j| j.yoke.kind.is(YokeKind::BoltOn),
        |j| j.yoke.kind.set(YokeKind::BoltOn),
        |j| j.yoke.kind.set(YokeKind::SlipRecessed),
    ),
    Step::new(
        "AS-17",
        Assembly,
        "Fit the speedometer gears",
        "Fit the pair of gears that was worked out, in a holder made for that many teeth.",
        "A gear outside the range of its holder does not mesh, or wears away in a week.",
    )
    .when(
        |j| j.speedometer.kind.is(SpeedometerKind::Cable),
        |j| j.speedometer.kind.set(SpeedometerKind::Cable),
        |j| j.speedometer.kind.set(SpeedometerKind::Gps),
    ),
    Step::new(
        "AS-18",
        Assembly,
        "Plug the speedometer hole",
        "Plug the speedometer hole and stake the plug so that it cannot work loose.",
        "A plug that falls out on the road empties the unit.",
    )
    .when(
        |j| j.speedometer.hole.is(SpeedometerHole::Plugged),
        |j| j.speedometer.hole.set(SpeedometerHole::Plugged),
        |j| j.speedometer.hole.set(SpeedometerHole::Gear),
    ),
    Step::new(
        "AS-19",
        Assembly,
        "Fit the cooler fittings",
        "Turn straight fittings in by hand until the washer touches. A tapered one has to stop about half way by hand. \
         Stop and look when it does anything else.",
        "The wrong fitting goes in with a wrench and splits the port.",
    ),
    Step::new(
        "MU-01",
        MockUp,
        "Try shield, stick and exhaust together",
        "Hang the shield, the dipstick tube and the exhaust on the unit together, before paint and before delivery. \
         Measure the smallest gap, and cut nothing.",
        "A shield that does not fit is found on the day of delivery, and one that was cut has lost its label.",
    )
    .hold()
    .hurts(hazard::SHIELDS)
    .reads(&["shield.clear_in"])
    .when(
        |j| j.shield.kind.is_not(ShieldKind::None),
        |j| j.shield.kind.set(ShieldKind::Rigid),
        |j| j.shield.kind.set(ShieldKind::None),
    ),
    Step::new(
        "MU-02",
        MockUp,
        "Bolt the bracket to the upper hole",
        "Bolt the bracket to the upper bell hole from behind, so that its end does not reach past the engine's side of \
         the bell.",
        "A bolt that comes through keeps bell and engine apart.",
    )
    .reads(&["bell.insert_bolt_proud_in"])
    .when(|j| j.bell.insert_fitted.yes(), |j| j.bell.insert_fitted.set(true), |j| j.bell.insert_fitted.set(false)),
    Step::new(
        "MU-03",
        MockUp,
        "Check the full mark of the dipstick",
        "Put the stick in its tube and compare its full mark with the pan rail as the unit's manual says.",
        "A stick that shows full too early starves the pump, and one that shows it too late foams the fluid.",
    ),
    Step::new(
        "MU-04",
        MockUp,
        "Place the catch can",
        "Lead the hose up to the catch can without a dip, and guard the drain of the can so that nothing can open it.",
        "Fluid on a hot exhaust burns, and fluid under the tires takes somebody off the track.",
    )
    .when(
        |j| j.vent.outlet.is(VentOutlet::CatchCan),
        |j| j.vent.outlet.set(VentOutlet::CatchCan),
        |j| j.vent.outlet.set(VentOutlet::Hose),
    ),
];
