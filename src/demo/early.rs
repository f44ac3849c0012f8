//! Jobs that are done, or were given up.

use super::bench::{BORE_GAUGE, DIAL};
use super::story::{Person, Step, Story};
use crate::job::Sheet;
use crate::quantity::Cents;
use crate::ticket::{Gate, Purpose, Source, Stage, WaitsFor};

/// The oldest tickets.
pub fn stories() -> Vec<Story> {
    vec![street_sedan(), tow_truck(), bracket_coupe(), cracked_case(), trail_wagon()]
}

fn street_sedan() -> Story {
    Story {
        days_ago: 96,
        person: Person { name: "Corwin Attebrae", phone: "555-0111" },
        vehicle: "green four-door sedan, small eight-cylinder",
        plate: "KFT 204",
        wants: "Quiet and smooth, as it was when it was new. Sunday drives.",
        symptom: "Slips from second to third when warm.",
        brought: "Unit with converter, yoke, dipstick and tube.",
        promised_in: Some(-78),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, STREET),
            Step::Sheet(Sheet::Outside, Source::Looked, "{}"),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, "{}"),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, "{}"),
            Step::Note("Direct clutch burnt; the middle seal was as hard as wood. That is the cause."),
            Step::To(Stage::Quote),
            Step::Price(&[("Rebuild, labor", Cents(86_000)), ("Seals, plates, bushings", Cents(41_250))]),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::To(Stage::Assembly),
            Step::Sheet(Sheet::Measured, Source::Measured, "{}"),
            Step::Measure("rear-end-play", &["0.010", "0.010", "0.011"], "0.084", DIAL),
            Step::Measure("yoke-clearance", &["0.003", "0.003"], "", BORE_GAUGE),
            Step::To(Stage::Test),
            Step::To(Stage::Delivery),
            Step::Know(Source::Looked, r#"{"cooling.action": "flushed", "driveshaft.remeasured": true}"#),
            Step::To(Stage::AfterCare),
            Step::Note("Called after 100 miles: dry and quiet."),
            Step::To(Stage::Closed),
        ],
    }
}

fn tow_truck() -> Story {
    Story {
        days_ago: 80,
        person: Person { name: "Ilse Marrowby", phone: "555-0127" },
        vehicle: "white flatbed truck with a stock trailer",
        plate: "T 8831",
        wants: "Pull the trailer over the ridge without stopping to cool.",
        symptom: "Fluid dark and smells burnt.",
        brought: "Whole truck.",
        promised_in: Some(-66),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, TOW),
            Step::Sheet(Sheet::Outside, Source::Looked, r#"{"cooling.line_id_in": 0.34, "pan.ground_in": 9.5}"#),
            Step::Sign(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, TOW),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, "{}"),
            Step::To(Stage::Quote),
            Step::Price(&[
                ("Rebuild, labor", Cents(94_000)),
                ("Parts", Cents(52_900)),
                ("Outside cooler", Cents(18_800)),
            ]),
            Step::Sheet(Sheet::Measured, Source::Measured, r#"{"pan.ground_in": 9.5}"#),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::To(Stage::Assembly),
            Step::To(Stage::Test),
            Step::To(Stage::Delivery),
            Step::Know(Source::Looked, r#"{"cooling.action": "flushed"}"#),
            Step::To(Stage::AfterCare),
        ],
    }
}

fn bracket_coupe() -> Story {
    Story {
        days_ago: 61,
        person: Person { name: "Tobin Graylark", phone: "555-0133" },
        vehicle: "orange two-door coupe on slicks, trailer to the track",
        plate: "",
        wants: "The same time slip every pass. Keep the yellow-tagged case.",
        symptom: "None; freshened every winter.",
        brought: "Unit only; converter stays with its builder.",
        promised_in: Some(-35),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, DRAG),
            Step::Class("B"),
            Step::Sheet(Sheet::Outside, Source::Looked, LOOP_AND_LOCK),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, DRAG),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, "{}"),
            Step::To(Stage::Quote),
            Step::Price(&[("Freshen, labor", Cents(72_000)), ("Plates and 34-element clutch", Cents(38_400))]),
            Step::Sheet(Sheet::Measured, Source::Measured, "{}"),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::To(Stage::Assembly),
            Step::Note("Rear one-way clutch looks new; customer wants the old race back in a bag."),
            Step::To(Stage::Test),
            Step::To(Stage::Delivery),
            Step::To(Stage::AfterCare),
        ],
    }
}

fn cracked_case() -> Story {
    Story {
        days_ago: 47,
        person: Person { name: "Nadia Fennimore", phone: "555-0118" },
        vehicle: "blue van",
        plate: "VAN 662",
        wants: "Just make it go again.",
        symptom: "Red puddle under the bell.",
        brought: "Unit on a pallet, no converter.",
        promised_in: None,
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, STREET),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::To(Stage::Teardown),
            Step::Know(Source::Looked, r#"{"case.crack": "found", "case.threads_bad": 2, "case.threads_repaired": 0}"#),
            Step::Note("Dye shows the crack running from the lower bell corner into the bore."),
            Step::To(Stage::Quote),
            Step::Price(&[("Another case, rebuild", Cents(168_000))]),
            Step::Decline(Purpose::Build, "More than the van is worth to me."),
            Step::Back(Stage::Declined, "Customer takes the unit back as it is; no charge but the teardown."),
        ],
    }
}

fn trail_wagon() -> Story {
    Story {
        days_ago: 40,
        person: Person { name: "Osric Pellworth", phone: "555-0164" },
        vehicle: "tan trail wagon, four-wheel drive, tall tires",
        plate: "MUD 77",
        wants: "Slow climbing all day; hold low by hand.",
        symptom: "Leaks at the back, shifts late.",
        brought: "Unit with transfer adapter.",
        promised_in: Some(2),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, TRAIL),
            Step::Sheet(Sheet::Outside, Source::Looked, TRAIL_OUTSIDE),
            Step::Sign(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, TRAIL),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, r#"{"output.shaft_layout": "four_wheel"}"#),
            Step::To(Stage::Quote),
            Step::Price(&[("Rebuild, labor", Cents(91_500)), ("Parts", Cents(47_300))]),
            Step::Sheet(
                Sheet::Measured,
                Source::Measured,
                r#"{"pan.ground_in": 12.0, "bench.rear_end_play_in": 0.021}"#,
            ),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::To(Stage::Assembly),
            Step::Past(Stage::Test, Gate::NoOpenStop, "Standing order of the owner for stand tests of this adapter."),
            Step::To(Stage::Delivery),
            Step::Know(Source::Looked, r#"{"cooling.action": "flushed"}"#),
            Step::Waits(WaitsFor::Customer),
        ],
    }
}

/// What a Sunday driver says.
pub const STREET: &str = r#"{"use.kind": "street", "use.raced": false, "use.road_driven": true,
    "vehicle.drive_layout": "two_wheel", "vehicle.weight_lb": 3600, "vehicle.tow_weight_lb": 0,
    "engine.torque_lbft": 340, "engine.max_rpm": 5000, "engine.induction": "natural", "speedometer.kind": "cable"}"#;

/// What somebody says who pulls a trailer.
pub const TOW: &str = r#"{"use.kind": "tow", "use.raced": false, "use.road_driven": true,
    "vehicle.drive_layout": "two_wheel", "vehicle.weight_lb": 6200, "vehicle.tow_weight_lb": 7000,
    "engine.torque_lbft": 390, "converter.rated_torque_lbft": 390, "engine.max_rpm": 4400,
    "engine.induction": "natural", "speedometer.kind": "cable", "cooling.cooler": "both"}"#;

/// What a bracket racer says: no brake.
pub const DRAG: &str = r#"{"use.kind": "drag", "use.raced": true, "use.road_driven": false,
    "vehicle.drive_layout": "two_wheel", "vehicle.weight_lb": 2900, "vehicle.tow_weight_lb": 0,
    "vehicle.tire_kind": "slick", "engine.torque_lbft": 520, "converter.rated_torque_lbft": 520,
    "engine.max_rpm": 5600, "engine.induction": "natural", "speedometer.kind": "none",
    "event.quarter_mile_s": 11.4, "event.trap_mph": 118, "event.date": "2026-04-18",
    "one_way.elements": 34, "cooling.cooler": "external"}"#;

/// What a bracket car brings to be looked over by the official: a loop close behind the joint, a stick that locks.
pub const LOOP_AND_LOCK: &str = r#"{"driveshaft.loop_fitted": true, "driveshaft.loop_distance_in": 4,
    "stick.locks": true}"#;

/// What somebody says who climbs rocks.
const TRAIL: &str = r#"{"use.kind": "offroad", "use.raced": false, "use.road_driven": true,
    "vehicle.drive_layout": "four_wheel", "vehicle.weight_lb": 4700, "vehicle.tow_weight_lb": 0,
    "engine.torque_lbft": 360, "converter.rated_torque_lbft": 360, "engine.max_rpm": 4600,
    "engine.induction": "natural", "speedometer.kind": "gps", "speedometer.hole": "plugged",
    "speedometer.other_fitted": true, "cooling.cooler": "both", "vent.outlet": "hose"}"#;

/// Its outside: transfer adapter, no yoke.
const TRAIL_OUTSIDE: &str = r#"{"output.tail": "four_wheel_adapter", "yoke.kind": "none",
    "cooling.line_id_in": 0.34}"#;
