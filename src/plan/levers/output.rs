use super::{Settings, lever_table};
use crate::job::{DriveLayout, Job, Length, OutputEnd, ShaftKind, Tail, YokeKind};
use crate::quantity::Quantity;

/// Clearance aimed at between yoke and tail bushing, in inches; from memory, low.
const YOKE_CLEAR: f64 = 0.003;

/// A driveshaft made to the vehicle as it stands, measured after it is in.
fn measured_shaft(j: &Job, s: &mut Settings) {
    s.aim(&j.driveshaft.remeasured, true);
    if j.yoke.engaged_droop_in.value().is_some() {
        s.measure(&j.yoke.engaged_droop_in, 3.0);
    }
    if j.yoke.gap_bump_in.value().is_some() {
        s.measure(&j.yoke.gap_bump_in, 0.75);
    }
}

/// A rear end that is not the one that came: the driveshaft has to be measured again.
fn tail_changed(j: &Job, s: &mut Settings) {
    s.put(&j.output.tail_changed, true);
    s.aim(&j.driveshaft.remeasured, true);
}

/// The play between a yoke and its bushing, fitted to each other.
fn yoke_fitted(j: &Job, s: &mut Settings) {
    if j.yoke.clear_in.value().is_some() {
        s.measure(&j.yoke.clear_in, YOKE_CLEAR);
    }
}

lever_table! {
    "yoke-slip" "Fit a slip yoke for this output shaft" {
        work: "Fit a plain slip yoke with the splines of the output shaft and mike it against the bushing.",
        minutes: 30, parts: 12_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.yoke.kind, YokeKind::Slip);
            s.same(&j.yoke.spline, &j.output.spline);
            s.same(&j.output.spline, &j.output.spline);
            yoke_fitted(j, s);
        },
    }
    "yoke-bolt-on" "Fit a bolt-on yoke with its O-ring" {
        work: "Fit a bolt-on yoke with the splines of the output shaft, its bolt and its O-ring.",
        minutes: 30, parts: 15_000, undo: Freely,
        when: |j| is(&j.output.end, OutputEnd::TappedBoltOn),
        sets: |j, s| {
            s.put(&j.yoke.kind, YokeKind::BoltOn);
            s.same(&j.yoke.spline, &j.output.spline);
            s.same(&j.output.spline, &j.output.spline);
            s.put(&j.output.o_ring, true);
        },
    }
    "output-o-ring-off" "Take the O-ring off the output shaft" {
        work: "Take the O-ring off before the slip yoke goes on.",
        minutes: 5, parts: 0, undo: Freely,
        sets: |j, s| s.put(&j.output.o_ring, false),
    }
    "output-o-ring-on" "Fit the O-ring of the bolt-on yoke" {
        work: "Fit a new O-ring on the output shaft behind the yoke.",
        minutes: 10, parts: 300, undo: Freely,
        when: |j| is(&j.yoke.kind, YokeKind::BoltOn),
        sets: |j, s| s.put(&j.output.o_ring, true),
    }
    "output-tail-slip" "Fit the rear housing for a slip yoke" {
        work: "Fit a rear housing of the right length with its bushing and lip seal, then measure the driveshaft again.",
        minutes: 120, parts: 24_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.output.tail, Tail::Slip);
            s.same(&j.output.tail_length, &j.output.length);
            s.same(&j.output.length, &j.output.length);
            tail_changed(j, s);
            yoke_fitted(j, s);
        },
    }
    "output-tail-length" "Fit a rear housing of the right length" {
        work: "Fit a rear housing of the same kind that is as long as the output shaft wants, and measure the driveshaft \
               again.",
        minutes: 120, parts: 20_000, undo: Freely,
        sets: |j, s| {
            s.same(&j.output.tail_length, &j.output.length);
            s.same(&j.output.length, &j.output.length);
            s.same(&j.output.tail, &j.output.tail);
            tail_changed(j, s);
        },
    }
    "output-two-wheel" "Exchange the four-wheel output for a two-wheel one" {
        work: "Put another output shaft into the rear planetary group, fit a rear housing with bushing and seal, and \
               measure the driveshaft again.",
        minutes: 300, parts: 48_000, undo: Freely,
        when: |j| is(&j.vehicle.drive_layout, DriveLayout::TwoWheel),
        sets: |j, s| {
            s.put(&j.output.shaft_layout, DriveLayout::TwoWheel);
            s.put(&j.output.tail, Tail::Slip);
            s.same(&j.output.tail_length, &j.output.length);
            s.same(&j.output.length, &j.output.length);
            tail_changed(j, s);
            yoke_fitted(j, s);
        },
    }
    "output-32-short" "Fit the short 32-spline output with its housing and yoke" {
        work: "Fit the 32-spline short output shaft, its rear housing with bushing and seal and a slip yoke, as one set; \
               measure the driveshaft again.",
        minutes: 300, parts: 78_000, undo: Freely,
        when: |j| is(&j.vehicle.drive_layout, DriveLayout::TwoWheel),
        sets: |j, s| {
            s.put(&j.output.spline, 32);
            s.put(&j.output.length, Length::Short);
            s.put(&j.output.tail_length, Length::Short);
            s.put(&j.output.tail, Tail::Slip);
            s.put(&j.output.shaft_layout, DriveLayout::TwoWheel);
            s.put(&j.output.o_ring, false);
            s.put(&j.yoke.kind, YokeKind::Slip);
            s.put(&j.yoke.spline, 32);
            tail_changed(j, s);
            yoke_fitted(j, s);
        },
    }
    "output-bushing" "Fit the tail bushing to the yoke" {
        work: "With the customer's yoke in hand, renew or hone the bushing until the clearance is right, and wash.",
        minutes: 60, parts: 2_500, undo: WithTrouble,
        sets: |j, s| s.measure(&j.yoke.clear_in, YOKE_CLEAR),
    }
    "driveshaft-fixed" "Fit a driveshaft without a slip joint" {
        work: "Have a one-piece driveshaft made to the length measured in the vehicle.",
        minutes: 60, parts: 36_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.driveshaft.kind, ShaftKind::Fixed);
            measured_shaft(j, s);
        },
    }
    "driveshaft-slip-joint" "Fit a driveshaft with a slip joint" {
        work: "Have a driveshaft with a slip joint made to the length measured in the vehicle.",
        minutes: 60, parts: 46_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.driveshaft.kind, ShaftKind::SlipJoint);
            measured_shaft(j, s);
        },
    }
    "driveshaft-length" "Have the driveshaft made to length" {
        work: "Tape the yoke at droop, ride height and bump, and have the shaft cut or lengthened to suit.",
        minutes: 60, parts: 18_000, undo: Freely,
        sets: |j, s| {
            s.same(&j.driveshaft.kind, &j.driveshaft.kind);
            measured_shaft(j, s);
        },
    }
    "driveshaft-3-5" "Fit a driveshaft tube of 3.5 in" {
        work: "Have the driveshaft made of a tube 3.5 in wide with a wall of 0.083 in, balanced.",
        minutes: 60, parts: 48_000, undo: Freely,
        when: |j| j.driveshaft.od_in.value().is_some_and(|held| *held < Quantity::new(3.5)),
        sets: |j, s| {
            s.measure(&j.driveshaft.od_in, 3.5);
            s.measure(&j.driveshaft.wall_in, 0.083);
            measured_shaft(j, s);
        },
    }
    "driveshaft-4" "Fit a driveshaft tube of 4 in" {
        work: "Have the driveshaft made of a tube 4 in wide with a wall of 0.083 in, balanced, and check the room around it.",
        minutes: 75, parts: 58_000, undo: Freely,
        when: |j| j.driveshaft.od_in.value().is_some_and(|held| *held < Quantity::new(4.0)),
        sets: |j, s| {
            s.measure(&j.driveshaft.od_in, 4.0);
            s.measure(&j.driveshaft.wall_in, 0.083);
            measured_shaft(j, s);
        },
    }
    "driveshaft-angles" "Set the joint angles" {
        work: "Shim the mount or the axle until both angles are small and equal, and measure them again.",
        minutes: 75, parts: 1_500, undo: Freely,
        sets: |j, s| {
            s.measure(&j.driveshaft.front_angle_deg, 2.0);
            s.measure(&j.driveshaft.rear_angle_deg, 2.0);
        },
    }
    "driveshaft-measure" "Measure the driveshaft again" {
        work: "Measure the shaft at droop, ride height and bump with the new rear end.",
        minutes: 30, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.driveshaft.remeasured, true),
    }
    "axle-park-brake" "Fit a parking brake at the axle" {
        work: "Fit a parking brake that holds the wheels, and try it on a slope.",
        minutes: 240, parts: 45_000, undo: Freely,
        sets: |j, s| s.put(&j.vehicle.axle_park_brake, true),
    }
}
