//! What the customer has to do, and what can hurt.

use super::say::{Say, chosen};
use crate::job::{BrakeKind, CoolerAction};
use crate::quantity::short;

pub(super) fn to_do(say: &Say<'_>) -> Vec<String> {
    let job = say.job;
    let has_brake = job.valve_body.brake.value().is_some_and(|brake| *brake != BrakeKind::None);
    let mut lines: Vec<String> = [
        chosen(&job.fluid.shipped_dry, |dry| {
            dry.then_some("It leaves us without fluid. Fill it before anybody turns the engine.")
        }),
        job.fluid.required.value().map(|fluid| format!("Use only this fluid: {fluid}. Mix in no other.")),
        say.sourced(&job.fluid.capacity_qt, |quarts| {
            format!("From dry it takes about {} quarts", short(quarts.value(), 1))
        }),
        Some(
            match job.cooling.action.value() {
                Some(CoolerAction::Flushed) => "We flushed the cooler, so old dirt does not get back in.",
                Some(CoolerAction::Replaced) => "The cooler was replaced, so old dirt does not get back in.",
                Some(CoolerAction::None) | None => {
                    "The cooler must be flushed or replaced before the first start. Old dirt in it ruins the new work."
                }
            }
            .to_owned(),
        ),
        Some("Go easy for the first 20 minutes. Then look for leaks and check the fluid level.".to_owned()),
        Some("Check the level again, hot, after 100 miles or after your first event.".to_owned()),
        Some("Stop and call us if it slips, smells burnt, drips at the front or no longer holds in park.".to_owned()),
    ]
    .into_iter()
    .flatten()
    .collect();
    if has_brake {
        lines.push("Leave the trans brake alone until the unit has been hot once.".into());
        lines.extend(say.sourced(&job.trans_brake.hold_s, |time| {
            format!("Never hold the trans brake longer than {} seconds", short(time.value(), 1))
        }));
    }
    lines
}

pub(super) fn cautions(say: &Say<'_>) -> Vec<String> {
    let job = say.job;
    let has_brake = job.valve_body.brake.value().is_some_and(|brake| *brake != BrakeKind::None);
    let mut lines = vec![
        "Hot fluid burns skin. Let it cool before you open anything.".to_owned(),
        "The unit weighs about 135 pounds and is slippery. Lift it with two people or a hoist.".to_owned(),
        "Never go under a car that stands on a jack alone. Use rated stands on hard, level ground.".to_owned(),
        "Keep sleeves, hair and people away from turning shafts and wheels.".to_owned(),
        "Work on brakes, fuel or the frame belongs to a licensed mechanic.".to_owned(),
    ];
    if has_brake {
        lines.push("Nobody stands in front of or behind the car while the trans brake is on.".into());
    }
    lines.push(
        "This page does not stand in for the maker's manual or for the law where you live. Where they ask for more, do \
         more."
            .into(),
    );
    lines
}
