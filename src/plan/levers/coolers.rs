use super::lever_table;
use crate::job::{Cooler, CoolerAction, Hose, PortThread, VentFitting, VentOutlet, VentPort};
use crate::quantity::Quantity;

lever_table! {
    "cooler-fittings" "Fit cooler fittings made for the port" {
        work: "Gauge the port by hand and fit fittings of that thread, straight ones with a new washer.",
        minutes: 20, parts: 1_800, undo: Freely,
        sets: |j, s| {
            s.same(&j.cooling.fitting, &j.cooling.port);
            if is(&j.cooling.port, PortThread::Straight) {
                s.put(&j.cooling.fitting_washer, true);
            }
        },
    }
    "cooler-washers" "Fit washers under the straight fittings" {
        work: "Fit a new soft washer under each straight fitting.",
        minutes: 10, parts: 200, undo: Freely,
        sets: |j, s| s.put(&j.cooling.fitting_washer, true),
    }
    "cooler-flush" "Flush the cooler and its lines" {
        work: "Flush cooler and lines both ways until they run clean, and time a quart at hot idle.",
        minutes: 60, parts: 2_000, undo: Freely,
        when: |j| is_not(&j.cooling.action, CoolerAction::Replaced),
        sets: |j, s| {
            s.aim(&j.cooling.action, CoolerAction::Flushed);
            if j.cooling.flow_s_per_qt.value().is_some() {
                s.measure(&j.cooling.flow_s_per_qt, 14.0);
            }
        },
    }
    "cooler-new" "Fit a new cooler and flush the lines" {
        work: "Fit a new cooler of the same kind, flush the lines and time a quart at hot idle.",
        minutes: 120, parts: 22_000, undo: Freely,
        when: |j| is_not(&j.cooling.cooler, Cooler::None),
        sets: |j, s| {
            s.same(&j.cooling.cooler, &j.cooling.cooler);
            s.aim(&j.cooling.action, CoolerAction::Replaced);
            if j.cooling.flow_s_per_qt.value().is_some() {
                s.measure(&j.cooling.flow_s_per_qt, 14.0);
            }
        },
    }
    "cooler-first" "Fit an outside cooler" {
        work: "Fit an outside cooler with its lines where the air reaches it.",
        minutes: 150, parts: 19_000, undo: Freely,
        when: |j| is(&j.cooling.cooler, Cooler::None),
        sets: |j, s| {
            s.put(&j.cooling.cooler, Cooler::External);
            s.aim(&j.cooling.action, CoolerAction::Replaced);
        },
    }
    "cooler-second" "Add a second cooler" {
        work: "Fit an outside cooler behind the radiator's, with a temperature gauge.",
        minutes: 120, parts: 18_000, undo: Freely,
        when: |j| is(&j.cooling.cooler, Cooler::Radiator) || is(&j.cooling.cooler, Cooler::External),
        sets: |j, s| s.put(&j.cooling.cooler, Cooler::Both),
    }
    "cooler-hose" "Fit hose made for hot oil and its pressure" {
        work: "Renew the hoses with hose made for hot transmission fluid, with proper clamps or crimped ends.",
        minutes: 40, parts: 5_500, undo: Freely,
        when: |j| is(&j.cooling.hose, Hose::Unrated),
        sets: |j, s| s.put(&j.cooling.hose, Hose::Rated),
    }
    "cooler-lines" "Fit wider cooler lines" {
        work: "Fit rated lines 0.34 in wide inside, with fittings to suit.",
        minutes: 75, parts: 9_500, undo: Freely,
        when: |j| j.cooling.line_id_in.value().is_some_and(|width| *width < Quantity::new(0.34)),
        sets: |j, s| {
            s.put(&j.cooling.line_id_in, Quantity::new(0.34));
            s.put(&j.cooling.hose, Hose::Rated);
        },
    }
    "cooler-filter" "Fit a filter in the cooler line" {
        work: "Fit a filter in the return line where it can be changed.",
        minutes: 20, parts: 3_500, undo: Freely,
        sets: |j, s| s.put(&j.cooling.inline_filter, true),
    }
    "fluid-right" "Fill the fluid the unit wants" {
        work: "Drain everything, the converter too, and fill the fluid named on the sheet.",
        minutes: 45, parts: 9_000, undo: Freely,
        sets: |j, s| {
            if let Some(wanted) = j.fluid.required.value() {
                s.aim(&j.fluid.used, wanted.clone());
                s.aim(&j.fluid.mixed, false);
            }
        },
    }
    "fluid-drain" "Drain the old fluid out of converter and cooler" {
        work: "Drain or flush converter and cooler and fill fresh fluid.",
        minutes: 40, parts: 5_000, undo: Freely,
        sets: |j, s| s.aim(&j.fluid.mixed, false),
    }
    "fluid-level" "Set the fluid level" {
        work: "Fill or draw off in every range, hot, until the level stands at the mark.",
        minutes: 20, parts: 2_000, undo: Freely,
        sets: |j, s| {
            if let Some(capacity) = j.fluid.capacity_qt.value() {
                s.aim(&j.fluid.added_qt, *capacity);
            }
        },
    }
    "fluid-dry-tag" "Hang the dry tag on the unit" {
        work: "Hang a tag on the input shaft that says there is no fluid in it.",
        minutes: 5, parts: 100, undo: Freely,
        sets: |j, s| s.aim(&j.fluid.dry_tag, true),
    }
    "vent-hose" "Lead a hose from the vent" {
        work: "Push a hose on the vent tube and lead it high, away from the exhaust, without a low loop.",
        minutes: 20, parts: 900, undo: Freely,
        sets: |j, s| {
            s.put(&j.vent.outlet, VentOutlet::Hose);
            s.put(&j.vent.line_dips, false);
        },
    }
    "vent-can" "Fit a catch can to the vent" {
        work: "Lead the vent into a catch can with a covered breather and a guarded drain.",
        minutes: 60, parts: 7_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.vent.outlet, VentOutlet::CatchCan);
            s.put(&j.vent.can_drain_guarded, true);
            s.put(&j.vent.can_open_top, false);
            s.put(&j.vent.line_dips, false);
        },
    }
    "vent-elbow" "Fit the vent fitting at an angle" {
        work: "Fit an angled fitting in the tapped vent, so that the hose lies free.",
        minutes: 15, parts: 700, undo: Freely,
        when: |j| is(&j.vent.port, VentPort::TappedPipe18),
        sets: |j, s| s.put(&j.vent.fitting_angle, VentFitting::Angled),
    }
    "vent-clear" "Clear the vent" {
        work: "Clear the vent and see air go through it both ways.",
        minutes: 15, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.vent.blocked, false),
    }
    "vent-route" "Lead the vent hose without a low loop" {
        work: "Lead the hose so that it rises all the way.",
        minutes: 15, parts: 0, undo: Freely,
        sets: |j, s| s.put(&j.vent.line_dips, false),
    }
}
