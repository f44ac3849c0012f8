use super::lever_table;
use crate::job::{Bushing, DriveGear};

lever_table! {
    "pump-gears" "Renew the pump gears or the pump" {
        work: "Fit gears or a pump that give the right face clearance, and measure it.",
        minutes: 60, parts: 12_000, undo: Freely,
        sets: |j, s| s.measure(&j.pump.face_clear_in, 0.0018),
    }
    "pump-bushing" "Renew the pump bushing" {
        work: "Find why it wore, press in a new bushing, stake it and mike it against the hub.",
        minutes: 45, parts: 2_500, undo: Freely,
        sets: |j, s| s.put(&j.pump.bushing, Bushing::Good),
    }
    "pump-align" "Align the pump halves" {
        work: "Loosen the halves, align them in the band and torque them again.",
        minutes: 20, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.pump.aligned, true),
    }
    "pump-drive-gear" "Check the pump drive gear and turn it if need be" {
        work: "Open the pump, see which side the drive gear shows, turn it over if it is wrong.",
        minutes: 30, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.pump.drive_gear, DriveGear::Correct),
    }
    "pump-bolt-seals" "Fit the pump bolt seals" {
        work: "Fit a new seal under every pump bolt.",
        minutes: 15, parts: 800, undo: Freely,
        sets: |j, s| s.put(&j.pump.bolt_seals, true),
    }
}
