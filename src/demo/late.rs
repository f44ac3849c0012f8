//! Jobs of the last days.

use super::early::{STREET, TOW};
use super::story::{Person, Step, Story};
use crate::job::Sheet;
use crate::quantity::Cents;
use crate::ticket::{Gate, Purpose, Source, Stage, WaitsFor};

/// The newest tickets.
pub fn stories() -> Vec<Story> {
    vec![rock_buggy(), county_puller(), waiting_to_sign(), owners_word(), plugged(), questions(), two_donors()]
}

fn rock_buggy() -> Story {
    Story {
        days_ago: 10,
        person: Person { name: "Fitch Larkmoor", phone: "555-0102" },
        vehicle: "rock buggy, no plate",
        plate: "",
        wants: "Stop cooking the fluid.",
        symptom: "Fluid boils out on climbs.",
        brought: "Unit with converter.",
        promised_in: Some(14),
        comeback_of: None,
        steps: vec![
            Step::Know(
                Source::CustomerSaid,
                r#"{"use.kind": "offroad", "use.raced": false, "use.road_driven": false,
                "vehicle.drive_layout": "two_wheel", "vehicle.weight_lb": 3900, "vehicle.tow_weight_lb": 0,
                "engine.torque_lbft": 400, "cooling.cooler": "radiator", "speedometer.kind": "none"}"#,
            ),
            Step::Know(
                Source::Looked,
                r#"{"output.shaft_layout": "four_wheel", "cooling.hose": "unrated",
                "output.spline": 27, "yoke.spline": 27, "cooling.line_id_in": 0.25}"#,
            ),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::To(Stage::Teardown),
            Step::Know(
                Source::Looked,
                r#"{"case.failure_debris": true, "output.length": "long",
                "output.tail_length": "long", "one_way.race_state": "smooth"}"#,
            ),
            Step::Note("Metal in the pan. Told the customer the same day."),
        ],
    }
}

fn county_puller() -> Story {
    Story {
        days_ago: 8,
        person: Person { name: "Hester Quillane", phone: "555-0138" },
        vehicle: "blue pulling truck",
        plate: "",
        wants: "Ready for the fair.",
        symptom: "Output shaft twisted.",
        brought: "Unit, heavy rear housing.",
        promised_in: Some(20),
        comeback_of: None,
        steps: vec![
            Step::Know(
                Source::CustomerSaid,
                r#"{"use.kind": "pull", "use.raced": true, "use.road_driven": false,
                "engine.torque_lbft": 560, "converter.rated_torque_lbft": 560, "vehicle.weight_lb": 5800}"#,
            ),
            Step::Class("C"),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::To(Stage::Teardown),
            Step::Know(
                Source::Looked,
                r#"{"output.park_drum": "removed", "output.tail": "heavy_bearing",
                "yoke.kind": "bolt_on", "driveshaft.kind": "slip_joint", "output.o_ring": true,
                "output.end": "tapped_bolt_on"}"#,
            ),
            Step::To(Stage::Quote),
            Step::Price(&[("Rebuild, labor", Cents(98_000)), ("Shaft, housing work outside", Cents(74_500))]),
            Step::Sign(Purpose::Build),
            Step::To(Stage::Parts),
            Step::Waits(WaitsFor::Machinist),
        ],
    }
}

fn waiting_to_sign() -> Story {
    Story {
        days_ago: 6,
        person: Person { name: "Perrin Oakhollow", phone: "555-0144" },
        vehicle: "brown station wagon",
        plate: "WGN 118",
        wants: "Find out what it needs.",
        symptom: "No reverse.",
        brought: "Unit with converter.",
        promised_in: None,
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, STREET),
            Step::Sheet(Sheet::Outside, Source::Looked, r#"{"engine.upper_hole": "absent"}"#),
            Step::To(Stage::Spec),
            Step::Send(Purpose::Intake),
        ],
    }
}

fn owners_word() -> Story {
    Story {
        days_ago: 5,
        person: Person { name: "Bettany Crossfield", phone: "555-0199" },
        vehicle: "recovery truck, on the road every day",
        plate: "RCV 5",
        wants: "Back on the road this week.",
        symptom: "Front pump whines.",
        brought: "Whole truck.",
        promised_in: Some(0),
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, TOW),
            Step::Sheet(Sheet::Outside, Source::Looked, r#"{"cooling.line_id_in": 0.34}"#),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
            Step::Sheet(Sheet::Spec, Source::BuilderSheet, TOW),
            Step::To(Stage::Teardown),
            Step::Sheet(Sheet::Inside, Source::Looked, "{}"),
            Step::To(Stage::Quote),
            Step::Price(&[("Pump and seals, labor", Cents(61_000)), ("Parts", Cents(28_700))]),
            Step::To(Stage::Parts),
            Step::Past(
                Stage::Assembly,
                Gate::RevisionSigned,
                "Customer agreed on the telephone and signs tonight; nothing permanent is done before.",
            ),
            // The drum went in before its one-way clutch was tried.
            Step::Tick("WA-01"),
            Step::Tick("SA-01"),
            Step::Tick("AS-01"),
            Step::Tick("AS-03"),
            Step::Tick("SA-02"),
            Step::Send(Purpose::Build),
        ],
    }
}

fn plugged() -> Story {
    Story {
        days_ago: 4,
        person: Person { name: "Jory Tamblyn-Reed", phone: "555-0161" },
        vehicle: "purple street machine",
        plate: "PRPL 1",
        wants: "A gauge from the satellite instead of the cable.",
        symptom: "None, wants it stronger.",
        brought: "Unit with converter and shifter.",
        promised_in: Some(25),
        comeback_of: None,
        steps: vec![
            Step::Know(
                Source::CustomerSaid,
                r#"{"use.kind": "street_strip", "use.raced": false, "use.road_driven": true,
                "engine.torque_lbft": 460, "converter.rated_torque_lbft": 460, "speedometer.kind": "gps",
                "speedometer.hole": "plugged", "speedometer.other_fitted": false, "speedometer.signal_needed": true,
                "one_way.kind": "sprag", "one_way.elements": 16, "gears.second_ratio": 1.48}"#,
            ),
            Step::SignHere(Purpose::Intake),
            Step::To(Stage::Spec),
        ],
    }
}

fn questions() -> Story {
    Story {
        days_ago: 2,
        person: Person { name: "Roake Silverthorn", phone: "555-0108" },
        vehicle: "drag car, still on its trailer",
        plate: "",
        wants: "Quote for the whole thing by Friday.",
        symptom: "Bought it without a history.",
        brought: "Whole car.",
        promised_in: Some(30),
        comeback_of: None,
        steps: vec![Step::Know(
            Source::CustomerSaid,
            r#"{"use.kind": "drag", "use.raced": true, "use.road_driven": false,
            "engine.induction": "nitrous", "case.history": "unknown"}"#,
        )],
    }
}

fn two_donors() -> Story {
    Story {
        days_ago: 1,
        person: Person { name: "Maren Holloway-Finch", phone: "555-0121" },
        vehicle: "red pickup",
        plate: "PKP 870",
        wants: "Street use, no surprises.",
        symptom: "Leaks everywhere.",
        brought: "Unit on a pallet with converter and yoke.",
        promised_in: None,
        comeback_of: None,
        steps: vec![
            Step::Know(Source::CustomerSaid, STREET),
            Step::Sheet(
                Sheet::Outside,
                Source::Looked,
                r#"{"threads.speedometer_hole": "metric", "threads.speedometer_bolt": "metric",
                    "output.end": "tapped_bolt_on", "cooling.fitting_washer": false}"#,
            ),
        ],
    }
}
