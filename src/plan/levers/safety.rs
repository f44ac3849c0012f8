use super::lever_table;
use crate::job::{FlexplateShield, ShieldKind};

lever_table! {
    "shield-certified" "Fit a certified shield with a dipstick that clears it" {
        work: "Fit a certified shield uncut, with every bolt it wants and a dipstick tube that passes it; read its label \
               and write the date down. The tech official decides whether it is accepted.",
        minutes: 180, parts: 48_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.shield.kind, ShieldKind::Rigid);
            s.put(&j.shield.modified, false);
            s.put(&j.shield.bolts_needed, 6);
            s.put(&j.shield.bolts_available, 6);
            s.put(&j.shield.uses_upper_hole, false);
            s.put(&j.stick.clears_shield, true);
            s.measure(&j.shield.clear_in, 0.5);
            if let Some(event) = j.event.date.value() {
                s.aim(&j.shield.expires, *event);
            }
        },
    }
    "shield-recertify" "Send the shield to be certified again" {
        work: "Send the shield to its maker or an agency, read the new label and write the date down.",
        minutes: 30, parts: 14_000, undo: Freely,
        when: |j| is(&j.shield.modified, false) && is_not(&j.shield.kind, ShieldKind::None),
        sets: |j, s| {
            if let Some(event) = j.event.date.value() {
                s.aim(&j.shield.expires, *event);
            }
            s.same(&j.shield.modified, &j.shield.modified);
        },
    }
    "shield-room" "Make room around the shield" {
        work: "Move exhaust or wiring until the shield touches nothing, and measure the room.",
        minutes: 75, parts: 2_500, undo: Freely,
        sets: |j, s| s.measure(&j.shield.clear_in, 0.5),
    }
    "flexplate-shield" "Fit a certified flexplate shield" {
        work: "Fit a certified flexplate shield, read its label and write the date down. The tech official decides whether \
               it is accepted.",
        minutes: 75, parts: 19_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.flexplate.shield, FlexplateShield::Sfi301);
            if let Some(event) = j.event.date.value() {
                s.aim(&j.flexplate.shield_expires, *event);
            }
        },
    }
    "driveshaft-loop" "Fit a driveshaft loop" {
        work: "Fit a loop close behind the front joint and measure how far behind it lies.",
        minutes: 75, parts: 9_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.driveshaft.loop_fitted, true);
            s.measure(&j.driveshaft.loop_distance_in, 4.0);
        },
    }
}
