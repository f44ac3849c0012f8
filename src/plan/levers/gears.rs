use super::lever_table;
use crate::job::{GearCut, InputShaft};

lever_table! {
    "gears-helical" "Fit a helical gear set" {
        work: "Fit a matched helical set of the same ratios and measure the pinion play.",
        minutes: 300, parts: 70_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.gears.cut, GearCut::Helical);
            s.put(&j.gears.parts_matched, true);
            if j.gears.pinion_play_in.value().is_some() {
                s.measure(&j.gears.pinion_play_in, 0.015);
            }
        },
    }
    "gears-matched" "Fit a gear set whose parts belong together" {
        work: "Fit sun, carriers and rings of one set.",
        minutes: 240, parts: 48_000, undo: Freely,
        sets: |j, s| s.put(&j.gears.parts_matched, true),
    }
    "gears-carrier" "Renew the planet carrier" {
        work: "Fit a sound carrier and feel under every pinion again.",
        minutes: 120, parts: 25_000, undo: Freely,
        sets: |j, s| s.measure(&j.gears.pinion_play_in, 0.015),
    }
    "gears-input-alloy" "Fit an alloy input shaft" {
        work: "Fit an input shaft of alloy steel.",
        minutes: 120, parts: 48_000, undo: Freely,
        sets: |j, s| s.put(&j.gears.input_shaft, InputShaft::Alloy),
    }
    "gears-rear-stack" "Measure the bearing stack and shim it" {
        work: "Mike the bearing kit and the old washers, and shim the difference before the end play is read.",
        minutes: 30, parts: 800, undo: Freely,
        sets: |j, s| s.aim(&j.gears.rear_stack_measured, true),
    }
}
