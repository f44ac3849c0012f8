use super::{Settings, lever_table};
use crate::calc::speedometer::exact_driven_teeth;
use crate::job::{Job, SpeedometerDrive, SpeedometerHole, SpeedometerKind};

/// Teeth driven gears are made with.
const DRIVEN: std::ops::RangeInclusive<u32> = 17..=45;

/// Fits the driven gear nearest to exact for this many driving teeth.
fn driven(j: &Job, s: &mut Settings, drive_teeth: u32) {
    let (Some(axle), Some(tire)) = (j.vehicle.axle_ratio.value(), j.vehicle.tire_diameter_in.value()) else { return };
    let teeth = exact_driven_teeth(drive_teeth, *axle, *tire).value().round();
    if teeth >= f64::from(*DRIVEN.start()) && teeth <= f64::from(*DRIVEN.end()) {
        s.put(&j.speedometer.driven_teeth, teeth as u32);
        s.put(&j.speedometer.driven_fits_housing, true);
    }
}

lever_table! {
    "speedometer-driven-gear" "Fit the driven gear that reads right" {
        work: "Fit the driven gear nearest to the exact number of teeth, in the holder made for it.",
        minutes: 20, parts: 3_500, undo: Freely,
        when: |j| is(&j.speedometer.kind, SpeedometerKind::Cable) && is(&j.speedometer.drive, SpeedometerDrive::Plastic),
        sets: |j, s| {
            if let Some(teeth) = j.speedometer.drive_teeth.value() {
                driven(j, s, *teeth);
                s.put(&j.speedometer.drive_teeth, *teeth);
            }
        },
    }
    "speedometer-plastic-drive" "Press off the steel gear and fit a plastic drive" {
        work: "Press the steel gear off, which destroys it, fit a plastic drive of 8 teeth and the driven gear that reads \
               right. The rear of the unit must be apart.",
        minutes: 90, parts: 5_500, undo: Never,
        when: |j| is(&j.speedometer.kind, SpeedometerKind::Cable) && is(&j.speedometer.drive, SpeedometerDrive::Steel),
        sets: |j, s| {
            s.put(&j.speedometer.drive, SpeedometerDrive::Plastic);
            s.put(&j.speedometer.drive_teeth, 8);
            driven(j, s, 8);
        },
    }
    "speedometer-ring" "Fit the ring shaft and the sensor tail" {
        work: "Fit the output shaft with the toothed ring and the rear housing that takes its sensor.",
        minutes: 240, parts: 42_000, undo: Freely,
        when: |j| is(&j.speedometer.kind, SpeedometerKind::Electronic),
        sets: |j, s| {
            s.put(&j.speedometer.drive, SpeedometerDrive::ToneRing);
            s.put(&j.speedometer.pickup_tail, true);
            s.put(&j.speedometer.kind, SpeedometerKind::Electronic);
        },
    }
    "speedometer-sender" "Fit an electronic speed sender" {
        work: "Fit the ring shaft, the sensor tail and an electronic speedometer, so that the vehicle has its signal.",
        minutes: 300, parts: 62_000, undo: Freely,
        when: |j| is(&j.speedometer.signal_needed, true),
        sets: |j, s| {
            s.put(&j.speedometer.kind, SpeedometerKind::Electronic);
            s.put(&j.speedometer.drive, SpeedometerDrive::ToneRing);
            s.put(&j.speedometer.pickup_tail, true);
        },
    }
    "speedometer-plug" "Plug the speedometer hole" {
        work: "Fit a plug with its seal in the speedometer hole.",
        minutes: 10, parts: 800, undo: Freely,
        when: |j| is(&j.speedometer.hole, SpeedometerHole::Open),
        sets: |j, s| s.put(&j.speedometer.hole, SpeedometerHole::Plugged),
    }
    "speedometer-gear-in" "Fit the gear and its holder in the hole" {
        work: "Fit the driven gear in its holder with a new seal.",
        minutes: 15, parts: 3_000, undo: Freely,
        sets: |j, s| s.put(&j.speedometer.hole, SpeedometerHole::Gear),
    }
    "speedometer-satellite" "Fit a satellite speedometer" {
        work: "Fit a speedometer that takes the speed from satellites and needs no gear.",
        minutes: 60, parts: 26_000, undo: Freely,
        sets: |j, s| s.put(&j.speedometer.other_fitted, true),
    }
    "speedometer-holder" "Fit the holder that suits the driven gear" {
        work: "Fit the holder made for this number of teeth, with a new seal.",
        minutes: 15, parts: 2_500, undo: Freely,
        sets: |j, s| {
            s.put(&j.speedometer.driven_fits_housing, true);
            s.same(&j.speedometer.driven_teeth, &j.speedometer.driven_teeth);
        },
    }
}
