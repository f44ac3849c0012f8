//! What will be built, as the driver will notice it.

use super::figures;
use super::say::{Say, chosen};
use crate::job::{
    BrakeKind, ConverterOrigin, Cooler, GearCut, InputShaft, MountKind, OneWayKind, PanDepth, ShiftOrder, StickKind,
    ValveBodyKind, VentOutlet,
};
use crate::quantity::short;

pub(super) fn lines(say: &Say<'_>) -> Vec<String> {
    [shifting(say), strength(say), converter(say), around(say), figures::speedometer(say).into_iter().collect()]
        .concat()
}

fn shifting(say: &Say<'_>) -> Vec<String> {
    let valve_body = &say.job.valve_body;
    let by_hand = valve_body.kind.value() == Some(&ValveBodyKind::Manual);
    [
        chosen(&valve_body.kind, |kind| {
            Some(match kind {
                ValveBodyKind::Auto => "It shifts by itself.",
                ValveBodyKind::Manual => "You shift by hand each time. It never shifts by itself.",
            })
        }),
        chosen(&valve_body.pattern, |order| {
            by_hand.then_some(match order {
                ShiftOrder::Forward => "The lever goes: park, reverse, neutral, third, second, first.",
                ShiftOrder::Reverse => "The lever goes: park, reverse, neutral, first, second, third.",
            })
        }),
        chosen(&valve_body.brake, |brake| match brake {
            BrakeKind::None => say.is_planned(valve_body.brake.id()).then_some("We plan it without a trans brake."),
            BrakeKind::Internal => {
                Some("It has a trans brake. The trans brake holds the car on the line. You cannot see it from outside.")
            }
            BrakeKind::External => {
                Some("It has a trans brake. The trans brake holds the car on the line. You can reach it from outside.")
            }
        }),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn strength(say: &Say<'_>) -> Vec<String> {
    let (gears, one_way) = (&say.job.gears, &say.job.one_way);
    let elements = one_way.elements.value();
    [
        say.sourced(&gears.first_ratio, |ratio| {
            format!("In first gear the engine turns {} times for each turn of the driveshaft", short(ratio.value(), 2))
        }),
        figures::drop_to_second(say),
        chosen(&gears.cut, |cut| {
            Some(match cut {
                GearCut::Helical => "The gears have slanted teeth. They run quietly.",
                GearCut::Straight => "The gears have straight teeth. They are stronger, and they whine except in top gear.",
            })
        }),
        chosen(&gears.input_shaft, |shaft| {
            Some(match shaft {
                InputShaft::Stock => "The shaft into the unit is the standard one.",
                InputShaft::Alloy => "The shaft into the unit is a stronger one.",
            })
        }),
        one_way.kind.value().map(|kind| match (kind, elements) {
            (OneWayKind::Roller, _) => {
                "Second gear leans on a one-way clutch, a part that turns one way and locks the other. Yours has rollers."
                    .to_owned()
            }
            (OneWayKind::Sprag, Some(16)) => {
                "Second gear leans on a one-way clutch, a part that turns one way and locks the other. Yours is the \
                 standard one with 16 small locking pieces."
                    .to_owned()
            }
            (OneWayKind::Sprag, Some(count)) => format!(
                "Second gear leans on a one-way clutch, a part that turns one way and locks the other. Yours has \
                 {count} small locking pieces; the standard one has 16."
            ),
            (OneWayKind::Sprag, None) => {
                "Second gear leans on a one-way clutch, a part that turns one way and locks the other.".to_owned()
            }
        }),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn converter(say: &Say<'_>) -> Vec<String> {
    let converter = &say.job.converter;
    [
        chosen(&converter.origin, |origin| {
            Some(match origin {
                ConverterOrigin::New => "You get a new converter, the part that joins engine and gears through fluid.",
                ConverterOrigin::Rebuilt => {
                    "You get a rebuilt converter, the part that joins engine and gears through fluid."
                }
                ConverterOrigin::Reused => {
                    "Your old converter goes back in, the part that joins engine and gears through fluid."
                }
            })
        }),
        figures::stall(say),
        figures::cruise(say),
        chosen(&converter.anti_balloon, |stiff| stiff.then_some("The converter has a stronger shell.")),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn around(say: &Say<'_>) -> Vec<String> {
    let job = say.job;
    [
        chosen(&job.pan.depth, |depth| {
            Some(match depth {
                PanDepth::Shallow => "The fluid pan is the shallow one.",
                PanDepth::Deep => "The fluid pan is the deep one. It holds more and hangs lower.",
            })
        }),
        chosen(&job.stick.kind, |stick| {
            Some(match stick {
                StickKind::Rigid => "The dipstick runs in a steel tube.",
                StickKind::Flexible => "The dipstick runs in a braided hose.",
            })
        }),
        chosen(&job.cooling.cooler, |cooler| {
            Some(match cooler {
                Cooler::None => "No cooler is planned.",
                Cooler::Radiator => "The radiator cools the fluid.",
                Cooler::External => "A cooler of its own cools the fluid.",
                Cooler::Both => "The radiator and a second cooler cool the fluid.",
            })
        }),
        chosen(&job.vent.outlet, |vent| {
            Some(match vent {
                VentOutlet::Open => "The air vent ends at the case.",
                VentOutlet::Hose => "The air vent gets a hose that ends higher up.",
                VentOutlet::CatchCan => "The air vent leads to a catch can. Empty it now and then.",
            })
        }),
        chosen(&job.mount.kind, |mount| {
            Some(match mount {
                MountKind::Rubber => "It sits on a rubber mount.",
                MountKind::Poly => "It sits on a firm plastic mount.",
                MountKind::Solid => "It sits on a solid mount. You will feel and hear more of it.",
                MountKind::None => "No mount is planned for it.",
            })
        }),
    ]
    .into_iter()
    .flatten()
    .collect()
}
