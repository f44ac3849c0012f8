use super::{Settings, lever_table};
use crate::calc::converter::{GAP_AIMED, spacer};
use crate::calc::tire;
use crate::job::{ConverterOrigin, FlexplateSpec, Hub, Job, UseKind};
use crate::quantity::{Quantity, Rpm};

/// How far below cruise a road converter should stall, in rpm; a shop setting.
const BELOW_CRUISE: f64 = 300.0;
/// Stall wanted at most on a tow vehicle, in rpm; a shop setting.
const TOW_STALL: f64 = 2_200.0;
/// The lowest stall converters are made with, in rpm; from memory.
const LOWEST_STALL: f64 = 1_200.0;

/// A converter that is not the old one: sound hub and splines, no lockup, free play measured.
fn converter(j: &Job, s: &mut Settings, origin: ConverterOrigin) {
    s.put(&j.converter.origin, origin);
    s.put(&j.converter.hub, Hub::Smooth);
    s.put(&j.converter.lockup, false);
    s.measure(&j.converter.end_play_in, 0.010);
    if j.converter.spline_ok.value().is_some() {
        s.aim(&j.converter.spline_ok, true);
    }
}

/// The stall this vehicle wants, rounded down to 50 rpm; none when it is not driven on the road or not known enough.
fn road_stall(j: &Job) -> Option<Quantity<Rpm>> {
    let tow = is(&j.usage.kind, UseKind::Tow);
    let cruise = match (j.usage.cruise_mph.value(), j.vehicle.axle_ratio.value(), j.vehicle.tire_diameter_in.value()) {
        (Some(speed), Some(axle), Some(wheel)) if is(&j.usage.road_driven, true) => {
            Some(tire::cruise_speed(*speed, *axle, *wheel).value() - BELOW_CRUISE)
        }
        _ => None,
    };
    let wanted = match (cruise, tow) {
        (Some(cruise), true) => cruise.min(TOW_STALL),
        (Some(cruise), false) => cruise,
        (None, true) => TOW_STALL,
        (None, false) => return None,
    };
    let rounded = (wanted / 50.0).floor() * 50.0;
    (rounded.is_finite() && rounded >= LOWEST_STALL).then(|| Quantity::new(rounded))
}

/// Gives a converter the stall this vehicle wants, rated at this engine's torque.
fn low_stall(j: &Job, s: &mut Settings) {
    if let Some(stall) = road_stall(j) {
        s.put(&j.converter.stall_rpm, stall);
        s.same(&j.converter.rated_torque_lbft, &j.engine.torque_lbft);
    }
}

/// A flexplate made for this engine and this converter.
fn flexplate(j: &Job, s: &mut Settings) {
    s.same(&j.flexplate.bolt_circle_in, &j.converter.bolt_circle_in);
    s.same(&j.flexplate.balance, &j.engine.balance);
    s.same(&j.flexplate.teeth, &j.engine.starter_teeth);
    if j.flexplate.runout_in.value().is_some() {
        s.measure(&j.flexplate.runout_in, 0.004);
    }
}

lever_table! {
    "converter-rebuilt" "Have the converter rebuilt" {
        work: "Have the converter cut open, cleaned, rebuilt with a sound hub and balanced; measure its free play.",
        minutes: 30, parts: 26_000, undo: Freely,
        sets: |j, s| {
            converter(j, s, ConverterOrigin::Rebuilt);
            s.same(&j.converter.anti_balloon, &j.converter.anti_balloon);
            s.same(&j.converter.stall_rpm, &j.converter.stall_rpm);
        },
    }
    "converter-low-stall" "Fit a converter with a stall that suits the road" {
        work: "Fit a new converter with its stall below cruise, rated at this engine's torque.",
        minutes: 30, parts: 42_000, undo: Freely,
        when: |j| road_stall(j).is_some(),
        sets: |j, s| {
            converter(j, s, ConverterOrigin::New);
            low_stall(j, s);
            s.same(&j.converter.anti_balloon, &j.converter.anti_balloon);
        },
    }
    "converter-heavy" "Fit a converter with a heavy cover" {
        work: "Fit a new converter of the same stall with the heavy cover a trans brake wants.",
        minutes: 30, parts: 68_000, undo: Freely,
        sets: |j, s| {
            converter(j, s, ConverterOrigin::New);
            s.put(&j.converter.anti_balloon, true);
            s.same(&j.converter.stall_rpm, &j.converter.stall_rpm);
        },
    }
    "converter-heavy-low-stall" "Fit a heavy-cover converter that suits the road" {
        work: "Fit a new converter with the heavy cover a trans brake wants and its stall below cruise, rated at this \
               engine's torque.",
        minutes: 30, parts: 82_000, undo: Freely,
        when: |j| road_stall(j).is_some(),
        sets: |j, s| {
            converter(j, s, ConverterOrigin::New);
            s.put(&j.converter.anti_balloon, true);
            low_stall(j, s);
        },
    }
    "converter-seat" "Seat the converter" {
        work: "Turn and push the converter until it has dropped all the way, then measure the gap at three pads.",
        minutes: 30, parts: 0, undo: Freely,
        sets: |j, s| {
            s.aim(&j.converter.seated, true);
            if j.converter.gap_in.value().is_some_and(|gap| *gap < Quantity::new(0.125)) {
                s.aim(&j.converter.gap_in, GAP_AIMED);
            }
        },
    }
    "converter-spacers" "Fit spacers at the converter pads" {
        work: "Fit equal spacers at all pads, measure the gap and how far the pilot still goes into the crank.",
        minutes: 45, parts: 1_500, undo: Freely,
        when: |j| j.converter.gap_in.value().is_some_and(|gap| *gap > Quantity::new(0.1875)),
        sets: |j, s| {
            if let Some(gap) = j.converter.gap_in.value() {
                let before = j.converter.spacer_in.value().map_or(0.0, |held| held.value());
                s.measure(&j.converter.spacer_in, before + spacer(*gap, GAP_AIMED).value());
                s.aim(&j.converter.gap_in, GAP_AIMED);
            }
        },
    }
    "converter-pilot" "Fit a longer converter pilot" {
        work: "Have the pilot lengthened or fit an extension, and measure how far it goes into the crank.",
        minutes: 60, parts: 9_000, undo: WithTrouble,
        sets: |j, s| {
            if let Some(held) = j.converter.pilot_length_in.value() {
                s.measure(&j.converter.pilot_length_in, held.value() + 0.4);
            }
        },
    }
    "converter-extension" "Fit pilot and pads for the mid plate" {
        work: "Fit a pilot extension and pads as thick as the mid plate.",
        minutes: 60, parts: 18_000, undo: Freely,
        sets: |j, s| s.same(&j.converter.extension_in, &j.engine.mid_plate_in),
    }
    "converter-bolts" "Fit shorter converter bolts" {
        work: "Fit bolts that end short of the bottom of the pads, and check each by hand.",
        minutes: 15, parts: 1_200, undo: Freely,
        sets: |j, s| {
            if let Some(depth) = j.converter.pad_depth_in.value() {
                s.measure(&j.converter.bolt_reach_in, (depth.value() - 0.06).max(0.0));
            }
        },
    }
    "converter-prefill" "Fill the converter before it goes on" {
        work: "Pour a quart or more of the right fluid into the converter.",
        minutes: 10, parts: 1_000, undo: Freely,
        sets: |j, s| s.measure(&j.converter.prefill_qt, 1.5),
    }
    "crank-adapter" "Fit the crank adapter" {
        work: "Fit the adapter that makes up for the short crank flange, with its longer bolts.",
        minutes: 45, parts: 14_000, undo: Freely,
        sets: |j, s| s.put(&j.engine.crank_adapter, true),
    }
    "flexplate-right" "Fit the flexplate this engine and converter want" {
        work: "Fit a flexplate with the right bolt circle, balance and teeth, and measure its runout.",
        minutes: 45, parts: 13_000, undo: Freely,
        sets: |j, s| {
            flexplate(j, s);
            s.put(&j.flexplate.spec, FlexplateSpec::None);
        },
    }
    "flexplate-certified" "Fit a certified flexplate" {
        work: "Fit a certified flexplate with the right bolt circle, balance and teeth; read its label and write the date \
               down.",
        minutes: 45, parts: 34_000, undo: Freely,
        sets: |j, s| {
            flexplate(j, s);
            s.put(&j.flexplate.spec, FlexplateSpec::Sfi291);
            if let Some(event) = j.event.date.value() {
                s.aim(&j.flexplate.expires, *event);
            }
        },
    }
}
