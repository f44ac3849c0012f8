//! Jobs that are well under way.

use super::bench::{BORE_GAUGE, DIAL, FEELER, OLD_DIAL, PRESSURE, SHANKS, WRENCH};
use super::early::{DRAG, LOOP_AND_LOCK, STREET, TOW};
use super::story::{Person, Step, Story};
use crate::job::Sheet;
use crate::quantity::Cents;
use crate::ticket::{Purpose, Source, Stage, WaitsFor};

/// Tickets on the bench.
pub fn stories() -> Vec<Story> {
    vec![sled_tractor(), weekend_racer(), brake_car(), cut_bell(), late_change(), comeback(), too_dear()]
}

fn sled_tractor() -> Story {
    Story {
        days_ago: 33,
        person: Person { name: "Garrick Stonewell", phone: "555-0179" },
        vehicle: "red pulling truck, long driveshaft",
        plate: "",
        wants: "Leave the line hard, every weekend of the county season.",
        symptom: "Broke the intermediate one-way clutch at the last pull.",
        brought: "Unit, driveshaft, shifter.",
        promised_in: Some(-1),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, PULL),
            Step::Class("B"),
            Step::Sheet(Sheet::Outside, Source::Looked, r#"{"cooling.line_id_in": 0.34}"#),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, PULL),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, "{}"),
            Step::Note("Old elements rolled over; race of the spare drum is smooth and round."),
            Step::To(Stage::Quote),
            Step::Price(&[("Rebuild, labor", Cents(98_000)), ("34-element clutch, plates", Cents(61_200))]),
            Step::Sheet(Sheet::Measured, Source::Measured, r#"{"bench.rear_end_play_in": 0.012}"#),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::To(Stage::Assembly),
            Step::Measure("pump-face-clearance", &["0.0018", "0.0020", "0.0018"], "", FEELER),
            Step::Measure("rear-end-play", &["0.020", "0.020", "0.020"], "0.092", DIAL),
            Step::Fit("rear-end-play"),
            Step::Measure("torque-support", &["23"], "", WRENCH),
            Step::Measure("rear-end-play", &["0.012", "0.012", "0.012"], "0.100", DIAL),
            Step::Measure("intermediate-clearance", &["0.031", "0.033", "0.032"], "3 x 0.097", FEELER),
            Step::Measure("direct-clearance", &["0.110", "0.112", "0.111"], "6 x 0.077", FEELER),
            Step::Fit("direct-clearance"),
            Step::Measure("direct-clearance", &["0.060", "0.062", "0.061"], "0.077, 5 x 0.087", FEELER),
            Step::Measure("forward-clearance", &["0.052", "0.054", "0.052"], "5 x 0.077", FEELER),
            Step::Measure("torque-pump", &["18"], "", WRENCH),
            Step::Measure("front-end-play", &["0.031", "0.031", "0.031"], "0.073", DIAL),
            Step::Fit("front-end-play"),
            Step::Measure("front-end-play", &["0.009", "0.010", "0.009"], "0.095", DIAL),
            Step::Measure("converter-gap", &["5/32", "5/32", "11/64"], "", SHANKS),
            Step::To(Stage::Test),
            Step::Measure("pressure-drive-idle", &["72", "74"], "", PRESSURE),
            Step::Measure("pressure-reverse-idle", &["112", "114"], "", PRESSURE),
            Step::Measure("pressure-drive-full", &["152", "154"], "", PRESSURE),
        ],
    }
}

fn weekend_racer() -> Story {
    Story {
        days_ago: 28,
        person: Person { name: "Sable Whitcombe", phone: "555-0186" },
        vehicle: "black two-door, drives to the strip and home again",
        plate: "NIGHT 9",
        wants: "Street manners on the way there, quick on Saturday night.",
        symptom: "Flares on the 1-2.",
        brought: "Unit with converter and yoke.",
        promised_in: Some(6),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, BOTH),
            Step::Sheet(Sheet::Outside, Source::Looked, "{}"),
            Step::Sign(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, BOTH),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, "{}"),
            Step::To(Stage::Quote),
            Step::Price(&[("Rebuild, labor", Cents(88_000)), ("Parts", Cents(57_400))]),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::To(Stage::Assembly),
            Step::Know(
                Source::Measured,
                r#"{"bench.rear_end_play_in": 0.011, "one_way.free": "clockwise",
                "one_way.low": "correct", "one_way.ring_seated": true}"#,
            ),
            Step::Through("AS-03"),
            Step::Measure("rear-end-play", &["0.011", "0.011", "0.012"], "0.092", OLD_DIAL),
        ],
    }
}

/// The nastiest job of the shop: hardly anything the customer wants goes together.
fn brake_car() -> Story {
    Story {
        days_ago: 26,
        person: Person { name: "Dorian Keswick-Vale", phone: "555-0150" },
        vehicle: "silver race car, tube chassis, boosted",
        plate: "",
        wants: "A trans brake, a bolt-on bell and all the power it can hold, for the spring meet.",
        symptom: "New build from a bare core.",
        brought: "Bare core, bolt-on bell, shield, driveshaft.",
        promised_in: Some(9),
        comeback_of: None,
        steps: vec![
            Step::Know(
                Source::CustomerSaid,
                r#"{"use.kind": "drag", "use.raced": true, "use.road_driven": false,
                "vehicle.weight_lb": 3100, "vehicle.tire_kind": "slick", "vehicle.tire_diameter_in": 28.5,
                "vehicle.axle_ratio": 4.1, "engine.torque_lbft": 820, "engine.torque_peak_rpm": 4800,
                "engine.max_rpm": 8000, "engine.induction": "boosted", "speedometer.kind": "none",
                "event.quarter_mile_s": 9.4, "event.trap_mph": 146, "event.date": "2027-03-20",
                "converter.stall_rpm": 3200, "converter.rated_torque_lbft": 500, "converter.stall_ratio": 2.0,
                "cooling.cooler": "none"}"#,
            ),
            Step::Class("A"),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Know(
                Source::BuilderSheet,
                r#"{"valve_body.kind": "manual", "valve_body.brake": "internal",
                "valve_body.low_band_first": false, "one_way.kind": "sprag", "one_way.elements": 16,
                "gears.first_ratio": 2.48, "gears.second_ratio": 1.48, "gears.reverse_ratio": 2.08}"#,
            ),
            Step::Know(
                Source::Looked,
                r#"{"engine.pattern": "pattern_a", "bell.pattern": "both",
                "bell.kind": "bolt_on", "bell.ring_holes": 8, "case.pump_bosses": 7, "pump.holes": 6,
                "engine.upper_hole": "absent", "engine.dowels": 1, "stick.uses_upper_hole": true,
                "bell.insert_fitted": false, "case.crack": "none", "threads.mount_hole": "metric",
                "threads.mount_bolt": "inch", "cooling.port": "straight", "cooling.fitting": "taper",
                "output.spline": 32, "yoke.spline": 27, "yoke.kind": "slip", "output.tail": "slip",
                "driveshaft.kind": "slip_joint", "output.end": "tapped_bolt_on", "output.o_ring": true}"#,
            ),
            Step::To(Stage::Teardown),
            Step::Know(
                Source::Looked,
                r#"{"one_way.race_shape": "ramped", "one_way.race_state": "scored",
                "case.threads_bad": 4, "case.threads_repaired": 1, "case.pump_tapped": 6}"#,
            ),
            Step::Know(
                Source::Measured,
                r#"{"driveshaft.length_in": 52, "driveshaft.od_in": 3.0,
                "driveshaft.wall_in": 0.083, "bell.runout_in": 0.014}"#,
            ),
            Step::To(Stage::Quote),
            Step::Price(&[("Build, labor", Cents(148_000)), ("Parts as asked for", Cents(212_500))]),
            Step::Send(Purpose::Build),
        ],
    }
}

fn cut_bell() -> Story {
    Story {
        days_ago: 22,
        person: Person { name: "Ottoline Bramhall", phone: "555-0155" },
        vehicle: "grey farm truck with another engine",
        plate: "FRM 310",
        wants: "Make this case fit the engine that is in the truck now.",
        symptom: "Runs fine, wrong bolt pattern.",
        brought: "Unit, bolt-on bell.",
        promised_in: Some(4),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, TOW),
            Step::Sheet(Sheet::Outside, Source::Looked, CUT),
            Step::Sign(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, CUT_SPEC),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, r#"{"case.pump_tapped": 7}"#),
            Step::To(Stage::Quote),
            Step::Price(&[
                ("Rebuild, labor", Cents(94_000)),
                ("Saw and dress the bell", Cents(22_000)),
                ("Parts", Cents(44_900)),
            ]),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::To(Stage::Machining),
            Step::Through("MC-02"),
            Step::Note("Seven places are tapped; torque goes on in a star, twice round."),
        ],
    }
}

fn late_change() -> Story {
    Story {
        days_ago: 19,
        person: Person { name: "Amias Rookwood", phone: "555-0190" },
        vehicle: "cream convertible",
        plate: "SUN 42",
        wants: "Quiet. A taller axle went in since we spoke.",
        symptom: "Whine in third.",
        brought: "Whole car.",
        promised_in: Some(11),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, STREET),
            Step::Sheet(Sheet::Outside, Source::Looked, "{}"),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, "{}"),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, r#"{"speedometer.drive": "steel"}"#),
            Step::To(Stage::Quote),
            Step::Price(&[("Rebuild, labor", Cents(86_000)), ("Parts", Cents(39_900))]),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::Waits(WaitsFor::Parts),
            Step::Know(Source::CustomerSaid, r#"{"vehicle.axle_ratio": 2.92, "vehicle.tire_diameter_in": 28.0}"#),
            Step::Price(&[("Rebuild, labor", Cents(86_000)), ("Parts", Cents(39_900)), ("Ratio box", Cents(9_400))]),
        ],
    }
}

fn comeback() -> Story {
    Story {
        days_ago: 16,
        person: Person { name: "Corwin Attebrae", phone: "555-0111" },
        vehicle: "",
        plate: "",
        wants: "It was right when it left. Find out what is dripping.",
        symptom: "A drop at the back of the unit after a long drive.",
        brought: "Whole car.",
        promised_in: Some(1),
        comeback_of: Some(0),
        steps: vec![
            Step::Know(Source::CustomerSaid, STREET),
            Step::Sheet(Sheet::Outside, Source::Looked, r#"{"output.o_ring": false}"#),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::To(Stage::Teardown),
            Step::Measure("yoke-clearance", &["0.009", "0.009"], "", BORE_GAUGE),
            Step::Measure("rear-end-play", &["0.013", "0.014", "0.013"], "", DIAL),
            Step::Through("TD-03"),
            Step::Note("Our bushing, our cost. The yoke is worn on one side: ask where it came from."),
        ],
    }
}

fn too_dear() -> Story {
    Story {
        days_ago: 13,
        person: Person { name: "Linnet Ashgrove", phone: "555-0173" },
        vehicle: "yellow bracket car",
        plate: "",
        wants: "The big one-way clutch and its drum.",
        symptom: "Second gear is gone.",
        brought: "Unit only.",
        promised_in: None,
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, DRAG),
            Step::Class("B"),
            Step::Sheet(Sheet::Outside, Source::Looked, LOOP_AND_LOCK),
            Step::Sign(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::To(Stage::Teardown),
            Step::Know(Source::Looked, r#"{"one_way.race_shape": "round", "one_way.race_state": "brinelled"}"#),
            Step::Know(Source::BuilderSheet, r#"{"one_way.kind": "sprag", "one_way.elements": 36}"#),
            Step::To(Stage::Quote),
            Step::Price(&[("Build, labor", Cents(99_000)), ("36-element clutch with drum, parts", Cents(127_000))]),
            Step::Decline(Purpose::Build, "Too dear. What would 34 elements cost?"),
        ],
    }
}

/// What a puller says.
const PULL: &str = r#"{"use.kind": "pull", "use.raced": true, "use.road_driven": false,
    "vehicle.drive_layout": "two_wheel", "vehicle.weight_lb": 6200, "vehicle.tow_weight_lb": 0,
    "engine.torque_lbft": 480, "converter.rated_torque_lbft": 480, "engine.max_rpm": 5200,
    "engine.induction": "natural", "speedometer.kind": "none", "event.date": "2026-06-06",
    "event.quarter_mile_s": 15.0, "event.trap_mph": 85, "one_way.elements": 34, "cooling.cooler": "external"}"#;

/// What somebody says who wants both.
const BOTH: &str = r#"{"use.kind": "street_strip", "use.raced": false, "use.road_driven": true,
    "vehicle.drive_layout": "two_wheel", "vehicle.weight_lb": 3400, "vehicle.tow_weight_lb": 0,
    "engine.torque_lbft": 420, "converter.rated_torque_lbft": 420, "engine.max_rpm": 5600,
    "engine.induction": "natural", "speedometer.kind": "cable", "one_way.elements": 34}"#;

/// The outside of a case that is to lose its bell: seven places of eight.
const CUT: &str = r#"{"bell.kind": "bolt_on", "bell.pattern": "both", "bell.ring_holes": 8, "case.pump_bosses": 7,
    "pump.holes": 7, "cooling.line_id_in": 0.34}"#;

/// What is to be done to it.
const CUT_SPEC: &str = r#"{"use.kind": "tow", "vehicle.weight_lb": 6200, "vehicle.tow_weight_lb": 4500,
    "engine.torque_lbft": 390, "converter.rated_torque_lbft": 390, "engine.max_rpm": 4400,
    "bell.cut_planned": true, "cooling.cooler": "both"}"#;
