use super::lever_table;
use crate::job::Length;
use crate::quantity::Quantity;

lever_table! {
    "linkage-nut" "Fit the nut that belongs on the shift shaft" {
        work: "Gauge the shift shaft and fit a nut of the same thread, started by hand.",
        minutes: 6, parts: 300, undo: Freely,
        sets: |j, s| s.same(&j.threads.linkage_nut, &j.threads.linkage_shaft),
    }
    "mount-bolts" "Fit mount bolts of the right thread and length" {
        work: "Gauge the holes of the rear housing and fit bolts of that thread, long enough to hold in aluminum.",
        minutes: 15, parts: 1_200, undo: Freely,
        sets: |j, s| {
            s.same(&j.threads.mount_bolt, &j.threads.mount_hole);
            if j.threads.mount_engage_d.value().is_some_and(|held| *held < Quantity::new(2.0)) {
                s.measure(&j.threads.mount_engage_d, 2.0);
            }
        },
    }
    "speedometer-bolt" "Fit the clip bolt that belongs in the speedometer hole" {
        work: "Gauge the hole and fit a clip bolt of the same thread.",
        minutes: 6, parts: 200, undo: Freely,
        sets: |j, s| s.same(&j.threads.speedometer_bolt, &j.threads.speedometer_hole),
    }
    "thread-inserts" "Put coil inserts in the bad case threads" {
        work: "Test every hole, drill and tap the bad ones, wind in inserts, break the tangs and gauge them.",
        minutes: 90, parts: 4_000, undo: WithTrouble,
        when: |j| match (j.case.threads_bad.value(), j.case.threads_repaired.value()) {
            (Some(bad), Some(repaired)) => repaired < bad,
            _ => false,
        },
        sets: |j, s| {
            if let Some(bad) = j.case.threads_bad.value() {
                s.aim(&j.case.threads_repaired, *bad);
            }
        },
    }
    "shift-arm" "Fit the shift arm that suits the case" {
        work: "Fit the long arm to a case with a side switch, the short one to any other.",
        minutes: 30, parts: 4_500, undo: Freely,
        sets: |j, s| {
            if let Some(switch) = j.shifter.side_switch.value() {
                s.put(&j.shifter.lever_length, if *switch { Length::Long } else { Length::Short });
            }
        },
    }
    "shifter-gate-forward" "Fit a forward shifter gate" {
        work: "Fit the gate with third next to neutral and adjust the linkage through every range.",
        minutes: 60, parts: 6_500, undo: Freely,
        sets: |j, s| s.put(&j.shifter.pattern, crate::job::ShiftOrder::Forward),
    }
    "shifter-gate-reverse" "Fit a reverse shifter gate" {
        work: "Fit the gate with first next to neutral and adjust the linkage through every range.",
        minutes: 60, parts: 6_500, undo: Freely,
        sets: |j, s| s.put(&j.shifter.pattern, crate::job::ShiftOrder::Reverse),
    }
    "reverse-lockout" "Fit a reverse lockout to the shifter" {
        work: "Fit the lockout and try that reverse cannot be reached without lifting it.",
        minutes: 60, parts: 4_000, undo: Freely,
        sets: |j, s| s.put(&j.shifter.reverse_lockout, true),
    }
    "neutral-switch" "Fit a neutral start switch" {
        work: "Fit and set the switch, then try with the wheels chocked that the engine cranks in park and neutral only.",
        minutes: 45, parts: 3_500, undo: Freely,
        sets: |j, s| s.put(&j.shifter.neutral_switch, true),
    }
}
