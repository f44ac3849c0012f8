//! What nobody knows yet, in plain words. A blank never reads as fine.

use super::say::Say;
use crate::job::{Fact, Sheet, SpeedometerKind, UseKind, fact_ids};

pub(super) fn lines(say: &Say<'_>) -> Vec<String> {
    let job = say.job;
    let raced = job.usage.raced.value() == Some(&true);
    let tows = job.usage.kind.value() == Some(&UseKind::Tow);
    let cable = job.speedometer.kind.value() == Some(&SpeedometerKind::Cable);
    let opened = fact_ids().any(|fact| fact.declaration().sheet == Sheet::Inside && job.slot(fact).json().is_some());
    let dial = super::figures::speedometer(say).is_none();
    let mut lines: Vec<String> = [
        (blank(&job.usage.kind), "What you use it for most."),
        (blank(&job.usage.raced), "If you race it, or if anybody checks it at events."),
        (blank(&job.vehicle.weight_lb), "What your vehicle weighs."),
        (tows && blank(&job.vehicle.tow_weight_lb), "What your trailer weighs when it is loaded."),
        (blank(&job.engine.torque_lbft), "How much torque, or twisting force, your engine makes."),
        (blank(&job.engine.max_rpm), "How fast you turn your engine."),
        (blank(&job.vehicle.tire_diameter_in), "How high your driven tires are."),
        (blank(&job.vehicle.axle_ratio), "The axle ratio: how often the driveshaft turns for each turn of the wheels."),
        (raced && blank(&job.event.date), "The day of your next event."),
        (raced && blank(&job.event.quarter_mile_s), "How quick your best quarter mile will be."),
        (raced && blank(&job.class_table.year), "Which year's rule book counts for your class."),
        (blank(&job.valve_body.kind), "If it is to shift by itself or by hand."),
        (blank(&job.converter.origin), "Which converter you get. It joins engine and gears through fluid."),
        (blank(&job.cooling.cooler), "How the fluid is cooled."),
        (blank(&job.case.history), "What was done to the case before it came to us."),
        (blank(&job.case.crack), "If the case has cracks."),
        (blank(&job.case.park_pawl), "If park holds."),
        (cable && dial, "How true your speedometer will read."),
        (!opened, "What it looks like inside. We have not opened it yet."),
    ]
    .into_iter()
    .filter(|(open, _)| *open)
    .map(|(_, text)| text.to_owned())
    .collect();
    if !lines.is_empty() {
        lines.push(
            "As long as we do not know, we do not call it fine. If you know one of these, please tell us.".into(),
        );
    }
    lines
}

fn blank<T>(fact: &Fact<T>) -> bool {
    fact.value().is_none()
}
