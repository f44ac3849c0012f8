use super::clutches::idle_line;
use super::{Settings, lever_table};
use crate::job::{
    BrakeKind, BridgeDemand, Demand, Fitted, Gasket, GovernorBore, Job, Kickdown, Modulator, SealDemand, ShiftOrder,
    VacuumSource, ValveBodyKind,
};

/// A valve body bought for this job: one that takes the case and the clutch as they are.
fn valve_body(j: &Job, s: &mut Settings, kind: ValveBodyKind, pattern: ShiftOrder, brake: BrakeKind) {
    let manual = kind == ValveBodyKind::Manual;
    s.put(&j.valve_body.kind, kind);
    s.put(&j.valve_body.pattern, pattern);
    s.put(&j.valve_body.brake, brake);
    s.put(&j.valve_body.gasket, Gasket::Stock);
    s.put(&j.valve_body.gasket_plan, Gasket::Stock);
    s.put(&j.valve_body.feed_plug, Demand::Either);
    s.put(&j.valve_body.passage_ball, if manual { Demand::Either } else { Demand::Forbidden });
    s.put(&j.valve_body.center_seal, if manual { SealDemand::Either } else { SealDemand::In });
    s.put(&j.valve_body.blocks_feed, manual);
    s.put(&j.valve_body.bridge, BridgeDemand::Either);
    s.put(&j.valve_body.low_band_first, manual);
    s.put(&j.valve_body.sheet, true);
    s.same(&j.valve_body.check_balls_fitted, &j.valve_body.check_balls_required);
    if let Some(last) = s.0.last_mut().filter(|set| set.fact == j.valve_body.check_balls_fitted.id()) {
        last.aimed = true;
    }
    if j.valve_body.kind.value().is_some_and(|held| *held != kind) && j.bench.line_drive_idle_psi.value().is_some() {
        s.measure(&j.bench.line_drive_idle_psi, idle_line(kind));
    }
}

/// The shift order that goes with the shifter of this job, or the one already chosen.
fn order(j: &Job) -> ShiftOrder {
    *j.shifter.pattern.value().or(j.valve_body.pattern.value()).unwrap_or(&ShiftOrder::Forward)
}

lever_table! {
    "valve-body-auto" "Fit an automatic valve body" {
        work: "Fit an automatic valve body with its stock gaskets; it shifts by itself and has no trans brake.",
        minutes: 90, parts: 20_000, undo: Freely,
        sets: |j, s| valve_body(j, s, ValveBodyKind::Auto, ShiftOrder::Forward, BrakeKind::None),
    }
    "valve-body-manual-forward" "Fit a forward manual valve body without a brake" {
        work: "Fit a manual valve body, forward order, one that holds the rear band in first and takes this case as it is.",
        minutes: 90, parts: 36_000, undo: Freely,
        sets: |j, s| valve_body(j, s, ValveBodyKind::Manual, ShiftOrder::Forward, BrakeKind::None),
    }
    "valve-body-manual-reverse" "Fit a reverse manual valve body without a brake" {
        work: "Fit a manual valve body, reverse order, one that holds the rear band in first and takes this case as it is.",
        minutes: 90, parts: 36_000, undo: Freely,
        sets: |j, s| valve_body(j, s, ValveBodyKind::Manual, ShiftOrder::Reverse, BrakeKind::None),
    }
    "valve-body-brake-inside" "Fit a valve body with the brake solenoid inside" {
        work: "Fit a manual valve body with an inside solenoid that takes this case as it is, in the order of the shifter.",
        minutes: 120, parts: 58_000, undo: Freely,
        when: |j| is_not(&j.valve_body.brake, BrakeKind::None),
        sets: |j, s| valve_body(j, s, ValveBodyKind::Manual, order(j), BrakeKind::Internal),
    }
    "valve-body-brake-outside" "Fit a valve body with the brake solenoid outside" {
        work: "Fit a manual valve body with an outside solenoid that takes this case as it is, in the order of the shifter.",
        minutes: 120, parts: 62_000, undo: Freely,
        when: |j| is_not(&j.valve_body.brake, BrakeKind::None),
        sets: |j, s| valve_body(j, s, ValveBodyKind::Manual, order(j), BrakeKind::External),
    }
    "valve-body-gaskets" "Fit the gaskets the valve body wants" {
        work: "Fit the gasket set named on the valve-body sheet, or none where it says none.",
        minutes: 15, parts: 1_500, undo: Freely,
        sets: |j, s| {
            s.same(&j.valve_body.gasket_plan, &j.valve_body.gasket);
            s.same(&j.valve_body.gasket, &j.valve_body.gasket);
        },
    }
    "valve-body-sheet" "Get the sheet of the valve body" {
        work: "Ask its maker for the instruction sheet and read it before anything is drilled or plugged.",
        minutes: 20, parts: 0, undo: Freely,
        sets: |j, s| s.put(&j.valve_body.sheet, true),
    }
    "valve-body-check-balls" "Put the check balls right" {
        work: "Take the valve body down, count against the sheet, place every ball and refit.",
        minutes: 45, parts: 500, undo: Freely,
        sets: |j, s| {
            if let Some(required) = j.valve_body.check_balls_required.value() {
                s.aim(&j.valve_body.check_balls_fitted, *required);
            }
        },
    }
    "control-kickdown-off" "Leave the electric kickdown out" {
        work: "Take the kickdown off the connector and insulate its wire, so that the connector is free.",
        minutes: 30, parts: 500, undo: Freely,
        sets: |j, s| s.put(&j.control.kickdown, Kickdown::None),
    }
    "control-kickdown-switch" "Fit a kickdown switch" {
        work: "Fit and set a switch at the throttle and try it with a test lamp.",
        minutes: 45, parts: 2_500, undo: Freely,
        sets: |j, s| s.put(&j.control.kickdown_switch, true),
    }
    "control-governor-cover" "Close the governor bore" {
        work: "Fit the cover with a new seal.",
        minutes: 15, parts: 1_500, undo: Freely,
        sets: |j, s| s.put(&j.control.governor_bore, GovernorBore::Closed),
    }
    "control-governor-out" "Take the governor out and close its bore" {
        work: "Take the governor out, which has nothing to do behind a manual valve body, and fit the cover.",
        minutes: 20, parts: 1_500, undo: Freely,
        sets: |j, s| {
            s.put(&j.control.governor, Fitted::Removed);
            s.put(&j.control.governor_bore, GovernorBore::Closed);
        },
    }
    "control-governor-in" "Fit a governor" {
        work: "Fit a sound governor with its gear and close its bore.",
        minutes: 30, parts: 9_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.control.governor, Fitted::Fitted);
            s.put(&j.control.governor_bore, GovernorBore::Closed);
        },
    }
    "control-modulator-capped" "Take the vacuum hose off and cap it" {
        work: "Take the hose off the modulator and cap hose and engine.",
        minutes: 10, parts: 300, undo: Freely,
        when: |j| is(&j.control.modulator, Modulator::Connected),
        sets: |j, s| s.put(&j.control.modulator, Modulator::FittedNoHose),
    }
    "control-modulator-plugged" "Plug the modulator bore" {
        work: "Fit a plug with its seal and clamp in the modulator bore.",
        minutes: 15, parts: 1_200, undo: Freely,
        sets: |j, s| s.put(&j.control.modulator, Modulator::RemovedPlugged),
    }
    "control-modulator-on" "Fit the modulator with its hose" {
        work: "Fit a modulator that holds vacuum, with a sound hose to the engine, and try it with a hand pump.",
        minutes: 40, parts: 4_500, undo: Freely,
        sets: |j, s| s.put(&j.control.modulator, Modulator::Connected),
    }
    "control-vacuum-pump" "Fit a vacuum pump" {
        work: "Fit a vacuum pump for the modulator with its line and wiring.",
        minutes: 120, parts: 26_000, undo: Freely,
        sets: |j, s| s.put(&j.engine.vacuum_source, VacuumSource::Pump),
    }
    "control-boost-valve" "Fit a check valve against boost" {
        work: "Fit a check valve in the hose so that boost cannot reach the modulator.",
        minutes: 20, parts: 1_500, undo: Freely,
        sets: |j, s| s.put(&j.control.modulator_boost_protected, true),
    }
    "brake-relay" "Wire the trans brake through a relay and a fuse" {
        work: "Fit a relay and a fuse, so that the button only works the relay.",
        minutes: 60, parts: 3_500, undo: Freely,
        sets: |j, s| s.put(&j.trans_brake.relay, true),
    }
    "brake-volts" "Renew the wiring to the brake solenoid" {
        work: "Fit heavier wire and clean grounds, then read the volts at the solenoid with the wheels chocked.",
        minutes: 60, parts: 2_500, undo: Freely,
        sets: |j, s| s.measure(&j.trans_brake.volts, 12.5),
    }
    "brake-speed-lock" "Fit a speed lock to the trans brake" {
        work: "Fit an interlock that keeps the brake off while the vehicle rolls, and try it.",
        minutes: 90, parts: 12_000, undo: Freely,
        sets: |j, s| s.put(&j.trans_brake.speed_lock, true),
    }
    "brake-solenoid-room" "Make room around the outside solenoid" {
        work: "Move what is too near or fit a heat shield, and measure the room again.",
        minutes: 60, parts: 4_000, undo: Freely,
        sets: |j, s| s.measure(&j.trans_brake.solenoid_clear_in, 0.75),
    }
}
