use super::lever_table;
use crate::job::{AirChecks, CenterSeal, Job, RearPin, SealDemand, ValveBodyKind};
use crate::quantity::Quantity;

/// Clearance aimed at for each friction of a pack, in inches; common practice, from memory.
const CLEAR_EACH: f64 = 0.010;

/// Idle line pressure aimed at in drive, in psi: the middle of what its kind of valve body gives.
pub(super) fn idle_line(kind: ValveBodyKind) -> f64 {
    match kind {
        ValveBodyKind::Auto => 75.0,
        ValveBodyKind::Manual => 185.0,
    }
}

/// A clutch fed by one area again: the piston area in use in third.
fn split_area(j: &Job, s: &mut super::Settings) {
    if is(&j.direct.center_seal, CenterSeal::Out) && j.direct.piston_area_in2.value().is_some() {
        s.put(&j.direct.piston_area_in2, Quantity::new(13.5));
    }
}

lever_table! {
    "clutch-feed-split" "Build the direct clutch with a split feed" {
        work: "Put the centre seal in and fit all four support rings, so that each area has its own feed.",
        minutes: 90, parts: 3_000, undo: Freely,
        when: |j| is_not(&j.valve_body.center_seal, SealDemand::Out) || is(&j.direct.center_seal, CenterSeal::In),
        sets: |j, s| {
            s.put(&j.direct.center_seal, CenterSeal::In);
            s.put(&j.direct.support_rings, 4);
            split_area(j, s);
        },
    }
    "clutch-feed-joined" "Build the direct clutch with a joined feed" {
        work: "Leave the centre seal out and plug the reverse feed in the case, so that both areas work together; measure \
               the area.",
        minutes: 120, parts: 2_500, undo: WithTrouble,
        sets: |j, s| {
            s.put(&j.direct.center_seal, CenterSeal::Out);
            s.put(&j.case.feed_plugged, true);
            s.put(&j.paper.permanent_mods, true);
            if is(&j.direct.center_seal, CenterSeal::In) && j.direct.piston_area_in2.value().is_some() {
                s.put(&j.direct.piston_area_in2, Quantity::new(24.0));
            }
        },
    }
    "clutch-seal-out" "Leave the centre seal of the direct clutch out" {
        work: "Take the centre seal out for a valve body that blocks the feed itself; measure the area.",
        minutes: 75, parts: 1_500, undo: Freely,
        sets: |j, s| {
            s.put(&j.direct.center_seal, CenterSeal::Out);
            if is(&j.direct.center_seal, CenterSeal::In) && j.direct.piston_area_in2.value().is_some() {
                s.put(&j.direct.piston_area_in2, Quantity::new(24.0));
            }
        },
    }
    "clutch-support-rings" "Fit all four support rings" {
        work: "Fit four new rings to the centre support and try each in its bore.",
        minutes: 45, parts: 1_200, undo: Freely,
        sets: |j, s| s.put(&j.direct.support_rings, 4),
    }
    "clutch-forward-clearance" "Set the forward clutch clearance" {
        work: "Choose another steel or pressure plate and measure again.",
        minutes: 45, parts: 1_500, undo: Freely,
        sets: |j, s| {
            if let Some(frictions) = j.forward.frictions.value() {
                s.measure(&j.forward.clear_in, CLEAR_EACH * f64::from(*frictions));
            }
        },
    }
    "clutch-direct-clearance" "Set the direct clutch clearance" {
        work: "Choose another steel or pressure plate and measure again.",
        minutes: 45, parts: 1_500, undo: Freely,
        sets: |j, s| {
            if let Some(frictions) = j.direct.frictions.value() {
                s.measure(&j.direct.clear_in, CLEAR_EACH * f64::from(*frictions));
            }
        },
    }
    "clutch-intermediate-clearance" "Set the intermediate clutch clearance" {
        work: "Choose another steel or pressure plate and measure again.",
        minutes: 45, parts: 1_500, undo: Freely,
        sets: |j, s| {
            if let Some(frictions) = j.intermediate.frictions.value() {
                s.measure(&j.intermediate.clear_in, CLEAR_EACH * f64::from(*frictions));
            }
        },
    }
    "clutch-direct-plates" "Fit one more friction in the direct clutch" {
        work: "Fit thinner steels with one more friction, and set the clearance anew.",
        minutes: 75, parts: 9_000, undo: Freely,
        sets: |j, s| {
            if let Some(frictions) = j.direct.frictions.value() {
                let more = frictions.saturating_add(1);
                s.put(&j.direct.frictions, more);
                s.measure(&j.direct.clear_in, CLEAR_EACH * f64::from(more));
            }
        },
    }
    "clutch-direct-flat" "Fit a flat steel in place of the wavy plate" {
        work: "Take the wavy plate out of the direct clutch, fit a flat steel and measure the clearance again.",
        minutes: 30, parts: 1_500, undo: Freely,
        sets: |j, s| s.put(&j.direct.wave, false),
    }
    "clutch-direct-springs" "Fit all 14 direct release springs" {
        work: "Fit the full set of release springs in the direct drum.",
        minutes: 30, parts: 1_800, undo: Freely,
        when: |j| j.direct.springs.value().is_some_and(|springs| *springs < 14),
        sets: |j, s| s.put(&j.direct.springs, 14),
    }
    "clutch-soak" "Soak the frictions" {
        work: "Lay the frictions in the fluid the unit will run on for half an hour.",
        minutes: 5, parts: 0, undo: Freely,
        sets: |j, s| s.measure(&j.bench.friction_soak_min, 30.0),
    }
    "bench-air-checks" "Do the air checks" {
        work: "Try every clutch and servo with regulated dry air and wear glasses; each must thump once and not hiss.",
        minutes: 30, parts: 0, undo: Freely,
        when: |j| is(&j.bench.air_checks, AirChecks::NotDone),
        sets: |j, s| s.aim(&j.bench.air_checks, AirChecks::Pass),
    }
    "bench-reseal" "Reseal the circuit that fails the air check" {
        work: "Open the circuit that hissed, renew its seals and rings, close it and check again.",
        minutes: 180, parts: 4_000, undo: Freely,
        when: |j| is(&j.bench.air_checks, AirChecks::Fail),
        sets: |j, s| s.aim(&j.bench.air_checks, AirChecks::Pass),
    }
    "bench-front-washer" "Set the front end play" {
        work: "Fit the selective washer that brings the play to the middle, torque the pump and read again.",
        minutes: 60, parts: 1_200, undo: Freely,
        sets: |j, s| s.measure(&j.bench.front_end_play_in, 0.012),
    }
    "bench-rear-washer" "Set the rear end play" {
        work: "Choose the rear washer that brings the play to the middle, and read again.",
        minutes: 90, parts: 1_200, undo: Freely,
        sets: |j, s| s.measure(&j.bench.rear_end_play_in, 0.012),
    }
    "bench-restack" "Restack the unit until the input turns free" {
        work: "Pull the pump, see every drum home, close it and turn the input by hand.",
        minutes: 120, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.bench.input_turns_free, true),
    }
    "bench-line-pressure" "Bring the line pressure in order" {
        work: "Find the cause, fit the regulator spring that the valve body wants, and read the pressure hot again.",
        minutes: 60, parts: 1_500, undo: Freely,
        sets: |j, s| {
            if let Some(kind) = j.valve_body.kind.value() {
                s.measure(&j.bench.line_drive_idle_psi, idle_line(*kind));
            }
        },
    }
    "bench-line-stall" "Raise the full-throttle line pressure" {
        work: "Fit a stronger regulator spring and read the pressure again, no longer than the sheet allows.",
        minutes: 45, parts: 1_500, undo: Freely,
        when: |j| j.bench.line_stall_psi.value().is_some_and(|held| *held < Quantity::new(190.0)),
        sets: |j, s| s.measure(&j.bench.line_stall_psi, 190.0),
    }
    "bench-line-reverse" "Find the leak that keeps reverse pressure down" {
        work: "Trace the reverse circuit, renew what leaks and read the pressure in reverse again.",
        minutes: 150, parts: 2_500, undo: Freely,
        sets: |j, s| s.measure(&j.bench.line_reverse_idle_psi, 120.0),
    }
    "bench-gauge" "Calibrate the gauge" {
        work: "Check the gauge against a known one and read the pressures again.",
        minutes: 30, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.bench.gauge_cal_ok, true),
    }
    "band-rear-pin" "Gauge and choose the rear band pin" {
        work: "Gauge the servo bore and fit the pin whose mark falls in the window.",
        minutes: 30, parts: 1_500, undo: Freely,
        sets: |j, s| s.aim(&j.bands.rear_pin, RearPin::Gauged),
    }
    "band-front" "Refit the front band" {
        work: "Fit the front band with its pin and servo.",
        minutes: 60, parts: 4_000, undo: Freely,
        sets: |j, s| s.put(&j.bands.front, crate::job::Fitted::Fitted),
    }
}
