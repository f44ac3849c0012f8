//! What the customer said about vehicle and use: these numbers are theirs, and they should see them.

use super::say::{Say, chosen, day};
use crate::job::{DriveLayout, Induction, UseKind};
use crate::quantity::short;

pub(super) fn lines(say: &Say<'_>) -> Vec<String> {
    let (usage, vehicle, engine, event) = (&say.job.usage, &say.job.vehicle, &say.job.engine, &say.job.event);
    let mut lines: Vec<String> = [
        say.as_told(&usage.kind, |kind| format!("You use it mostly for {}", used_for(*kind))),
        say.as_told(&usage.road_driven, |road| {
            if *road { "It is driven on the road" } else { "It is not driven on the road" }.into()
        }),
        say.as_told(&usage.raced, |raced| {
            if *raced { "It is timed or checked at events" } else { "It is not raced" }.into()
        }),
        say.as_told(&vehicle.drive_layout, |driven| match driven {
            DriveLayout::TwoWheel => "Two wheels are driven".into(),
            DriveLayout::FourWheel => "All four wheels are driven".into(),
        }),
        say.as_told(&vehicle.weight_lb, |weight| {
            format!("With driver and fuel it weighs {}", pounds(weight.to_whole()))
        }),
        say.as_told(&vehicle.tow_weight_lb, |weight| {
            if weight.value() == 0.0 {
                "It pulls no trailer".into()
            } else {
                format!("The loaded trailer weighs {}", pounds(weight.to_whole()))
            }
        }),
        say.as_told(&engine.torque_lbft, |torque| {
            format!("The engine makes {} of torque, its twisting force", torque.to_whole())
        }),
        say.as_told(&engine.max_rpm, |speed| format!("The engine turns up to {}", speed.to_whole())),
        chosen(&engine.induction, |air| match air {
            Induction::Natural => None,
            Induction::Boosted => Some("A blower or turbo feeds the engine."),
            Induction::Nitrous => Some("The engine runs with nitrous."),
            Induction::Diesel => Some("It is a diesel engine."),
        }),
        say.as_told(&vehicle.tire_diameter_in, |tire| {
            format!("The driven tires are {} inches high", short(tire.value(), 2))
        }),
        say.as_told(&vehicle.axle_ratio, |axle| {
            let turns = short(axle.value(), 2);
            format!("The axle ratio is {turns}: the driveshaft turns {turns} times for each turn of the wheels")
        }),
        say.as_told(&usage.cruise_mph, |speed| format!("On a long drive you go {}", speed.to_whole())),
    ]
    .into_iter()
    .flatten()
    .collect();
    if usage.raced.value() == Some(&true) {
        lines.extend(say.as_told(&event.date, |date| format!("Your next event is on {}", day(*date))));
        lines.extend(say.as_told(&event.quarter_mile_s, |time| {
            format!("Your best quarter mile there will take {} seconds", short(time.value(), 2))
        }));
        lines.extend(
            say.as_told(&event.trap_mph, |speed| format!("You will cross the line at up to {}", speed.to_whole())),
        );
    }
    if !lines.is_empty() {
        lines.push(
            "All this is as you told us, unless it says otherwise. If something is wrong, say so before you sign."
                .into(),
        );
    }
    lines
}

fn pounds(printed: String) -> String {
    printed.replace(" lb", " pounds")
}

const fn used_for(kind: UseKind) -> &'static str {
    match kind {
        UseKind::Street => "street driving",
        UseKind::StreetStrip => "the street and the drag strip",
        UseKind::Drag => "drag racing",
        UseKind::Tow => "towing and work",
        UseKind::Offroad => "driving off the road",
        UseKind::Pull => "pulling contests",
    }
}
