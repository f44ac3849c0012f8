use super::{Settings, lever_table};
use crate::job::{Job, MountKind, PanDepth, StickKind};

/// How much lower a deep pan hangs, in inches; from memory.
const DEEPER: f64 = 1.0;

/// Pan, filter tube and bolt of one depth, with the pickup seal.
fn pan_set(j: &Job, s: &mut Settings, depth: PanDepth) {
    s.put(&j.pan.depth, depth);
    s.put(&j.pan.filter_tube, depth);
    s.put(&j.pan.filter_bolt, depth);
    s.put(&j.pan.intake_o_ring, true);
    if let Some(ground) = j.pan.ground_in.value().filter(|_| j.pan.depth.value().is_some_and(|held| *held != depth)) {
        let lower = if depth == PanDepth::Deep { DEEPER } else { -DEEPER };
        s.measure(&j.pan.ground_in, (ground.value() - lower).max(0.0));
    }
}

lever_table! {
    "pan-set-deep" "Fit the deep pan with its tube and bolt" {
        work: "Fit the deep pan, the filter tube and the filter bolt that belong to it, and a new pickup O-ring.",
        minutes: 60, parts: 14_000, undo: Freely,
        sets: |j, s| pan_set(j, s, PanDepth::Deep),
    }
    "pan-set-shallow" "Fit the shallow pan with its tube and bolt" {
        work: "Fit the shallow pan, the filter tube and the filter bolt that belong to it, and a new pickup O-ring.",
        minutes: 60, parts: 9_000, undo: Freely,
        sets: |j, s| pan_set(j, s, PanDepth::Shallow),
    }
    "pan-filter-set" "Fit the filter tube and bolt of this pan" {
        work: "Fit the tube and the bolt or spacer made for the pan that is on the unit, with a new pickup O-ring.",
        minutes: 40, parts: 2_800, undo: Freely,
        sets: |j, s| {
            s.same(&j.pan.filter_tube, &j.pan.depth);
            s.same(&j.pan.filter_bolt, &j.pan.depth);
            s.same(&j.pan.depth, &j.pan.depth);
            s.put(&j.pan.intake_o_ring, true);
        },
    }
    "pan-o-ring" "Fit the pickup O-ring" {
        work: "Fit a new O-ring on the pickup and push the filter home.",
        minutes: 25, parts: 300, undo: Freely,
        sets: |j, s| s.put(&j.pan.intake_o_ring, true),
    }
    "stick-clear" "Fit a dipstick tube that clears the shield" {
        work: "Fit another tube that passes the shield uncut, hold it with a bracket and mark the stick anew.",
        minutes: 40, parts: 6_500, undo: Freely,
        sets: |j, s| {
            s.put(&j.stick.clears_shield, true);
            s.put(&j.stick.retained, true);
            s.put(&j.stick.uses_upper_hole, false);
        },
    }
    "stick-locking" "Fit a locking dipstick" {
        work: "Fit a steel tube with a stick that locks, clear of any shield, and mark it anew.",
        minutes: 45, parts: 9_500, undo: Freely,
        sets: |j, s| {
            s.put(&j.stick.kind, StickKind::Rigid);
            s.put(&j.stick.locks, true);
            s.put(&j.stick.clears_shield, true);
            s.put(&j.stick.retained, true);
        },
    }
    "stick-bracket" "Hold the dipstick tube with a bracket" {
        work: "Fit a bracket so that the tube cannot pull out.",
        minutes: 15, parts: 600, undo: Freely,
        sets: |j, s| s.put(&j.stick.retained, true),
    }
    "stick-mark" "Mark the dipstick for this pan" {
        work: "Fill a measured amount, read the stick and mark it anew.",
        minutes: 20, parts: 0, undo: Freely,
        sets: |j, s| s.put(&j.stick.matches, true),
    }
    "mount-rubber" "Fit a rubber transmission mount" {
        work: "Fit a rubber mount and let it settle before the bolts are pulled up.",
        minutes: 30, parts: 3_500, undo: Freely,
        sets: |j, s| s.put(&j.mount.kind, MountKind::Rubber),
    }
    "mount-poly" "Fit a firm plastic transmission mount" {
        work: "Fit a firm plastic mount and let it settle before the bolts are pulled up.",
        minutes: 30, parts: 5_000, undo: Freely,
        sets: |j, s| s.put(&j.mount.kind, MountKind::Poly),
    }
    "mount-settle" "Let the crossmember lie without strain" {
        work: "Slot or shim the crossmember until the mount bolts go in by hand.",
        minutes: 45, parts: 800, undo: Freely,
        sets: |j, s| s.aim(&j.mount.pulled, false),
    }
    "ground-strap" "Fit an engine ground strap" {
        work: "Fit a heavy strap from engine to body on clean metal.",
        minutes: 20, parts: 1_500, undo: Freely,
        sets: |j, s| s.put(&j.vehicle.ground_strap, true),
    }
}
