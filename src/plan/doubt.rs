//! Numbers that can be but hardly ever are: asked about before they are believed, and never refused.
//!
//! Nothing is set right silently. Whoever typed 65000 reads what was perhaps meant, and says which it is.

use super::sheet::{Span, measurements};
use crate::job::{FactId, Kind};
use crate::quantity::said;
use serde_json::Value;

/// Between which numbers a fact lies on nearly every vehicle, in its own unit: wide enough that whoever is outside can
/// well be asked (memory, medium). What is measured on the bench has its span with its measurement.
static LIKELY: &[(&str, f64, f64)] = &[
    ("engine.torque_lbft", 60.0, 3000.0),
    ("engine.torque_peak_rpm", 800.0, 10_000.0),
    ("engine.max_rpm", 2000.0, 13_000.0),
    ("engine.idle_vacuum_inhg", 0.0, 24.0),
    ("engine.mid_plate_in", 0.0, 1.0),
    ("vehicle.weight_lb", 800.0, 30_000.0),
    ("vehicle.tow_weight_lb", 0.0, 40_000.0),
    ("vehicle.tire_diameter_in", 18.0, 60.0),
    ("vehicle.axle_ratio", 1.8, 9.0),
    ("converter.stall_rpm", 900.0, 9000.0),
    ("converter.rated_torque_lbft", 50.0, 2000.0),
    ("converter.stall_ratio", 1.2, 3.5),
    ("converter.extension_in", 0.0, 4.0),
    ("converter.fluid_kg", 1.0, 15.0),
    ("converter.metal_kg", 4.0, 40.0),
    ("gears.first_ratio", 1.5, 4.5),
    ("gears.second_ratio", 1.05, 2.6),
    ("gears.reverse_ratio", 1.3, 4.0),
    ("direct.piston_area_in2", 4.0, 60.0),
    ("direct.mean_radius_in", 1.0, 6.0),
    ("direct.spring_lb", 20.0, 2500.0),
    ("direct.friction_mu", 0.05, 0.4),
    ("event.quarter_mile_s", 3.5, 30.0),
    ("event.trap_mph", 40.0, 350.0),
    ("use.cruise_mph", 20.0, 130.0),
    ("trans_brake.hold_s", 0.0, 120.0),
    ("fluid.capacity_qt", 4.0, 30.0),
    ("fluid.added_qt", 1.0, 30.0),
    ("cooling.line_id_in", 0.1, 1.5),
    ("driveshaft.loop_distance_in", 0.0, 24.0),
    ("driveshaft.length_in", 5.0, 120.0),
    ("driveshaft.od_in", 1.5, 6.0),
    ("driveshaft.wall_in", 0.03, 0.5),
    ("converter.prefill_qt", 0.0, 4.0),
    ("converter.bolt_reach_in", 0.05, 2.0),
    ("converter.pad_depth_in", 0.1, 2.0),
    ("pan.ground_in", 1.0, 36.0),
    ("shield.clear_in", 0.0, 12.0),
    ("threads.mount_engage_d", 0.0, 6.0),
    ("bell.insert_proud_in", -0.5, 0.5),
    ("bell.insert_bolt_proud_in", -1.0, 1.0),
];

/// Where the span of a fact's usual numbers is known.
fn likely(fact: FactId) -> Option<Span> {
    let path = fact.declaration().path;
    let own = LIKELY.iter().find(|(likely, ..)| *likely == path).map(|(_, from, to)| Span { from: *from, to: *to });
    own.or_else(|| measurements().find(|measurement| measurement.fact() == Some(fact)).map(|found| found.likely))
}

/// Why this number of a fact is to be asked about, in whole sentences, with what was perhaps meant; none when it is
/// usual, or nobody here knows what is.
pub fn doubt(fact: FactId, value: &Value) -> Option<String> {
    let declaration = fact.declaration();
    let Kind::Number(symbol) = declaration.kind else { return None };
    let (number, span) = (value.as_f64()?, likely(fact)?);
    if span.holds(number) {
        return None;
    }
    let far = if number > span.to { "more" } else { "less" };
    let meant = meant(number, symbol, span).map_or_else(String::new, |meant| format!(" Was {meant} meant?"));
    Some(format!(
        "{}: {} is far {far} than is usual ({} to {}).{meant}",
        declaration.label,
        said(number, symbol),
        said(span.from, symbol),
        said(span.to, symbol)
    ))
}

/// The likeliest slip: the point one to three places off, the sign, or millimeters for inches.
fn meant(number: f64, symbol: &str, span: Span) -> Option<String> {
    let factors = [10.0, 100.0, 1000.0];
    let slipped = factors.iter().flat_map(|factor| [number / factor, number * factor]);
    let metric = (symbol == "in").then(|| (number / 25.4, format!("{} mm", said(number, ""))));
    let own = |number: f64| (number, said(number, symbol));
    let mut perhaps = slipped.map(own).chain(metric).chain([own(-number)]);
    perhaps.find(|(number, _)| *number != 0.0 && span.holds(*number)).map(|(_, words)| words)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Job, Sheet, fact_ids, fact_named};
    use serde_json::json;

    fn asked(path: &str, value: f64) -> Option<String> {
        doubt(fact_named(path).expect("a fact"), &json!(value))
    }

    #[test]
    fn a_slip_of_the_finger_is_asked_about_with_what_was_meant() {
        let rpm = asked("engine.max_rpm", 65_000.0).expect("ten times what is usual");
        assert_eq!(
            rpm,
            "Highest engine speed used: 65000 rpm is far more than is usual (2000 rpm to 13000 rpm). Was 6500 rpm meant?"
        );
        for (path, value, meant) in [
            ("vehicle.axle_ratio", 373.0, "Was 3.73 meant?"),
            ("vehicle.axle_ratio", 0.342, "Was 3.42 meant?"),
            ("vehicle.tire_diameter_in", 686.0, "Was 686 mm meant?"),
            ("gears.first_ratio", 248.0, "Was 2.48 meant?"),
            ("bench.front_end_play_in", 0.12, "Was 0.012 in meant?"),
            ("bench.line_stall_psi", 1500.0, "Was 150 psi meant?"),
            ("event.quarter_mile_s", 1150.0, "Was 11.5 s meant?"),
        ] {
            let said = asked(path, value).unwrap_or_else(|| panic!("{path} at {value}"));
            assert!(said.ends_with(meant), "{path}: {said}");
        }
        assert!(asked("vehicle.weight_lb", 1.0).is_some_and(|said| said.contains("far less")));
    }

    #[test]
    fn what_is_usual_and_what_nobody_knows_is_not_asked_about() {
        for (path, value) in [("engine.max_rpm", 6500.0), ("engine.max_rpm", 13_000.0), ("vehicle.axle_ratio", 3.73)] {
            assert_eq!(asked(path, value), None, "{path} at {value}");
        }
        assert!(asked("engine.max_rpm", 13_000.5).is_some() && asked("engine.max_rpm", 1999.5).is_some());
        assert_eq!(asked("paper.quoted_total", 1e9), None);
        assert_eq!(doubt(fact_named("bell.kind").expect("a fact"), &json!("bolt_on")), None);
        assert_eq!(doubt(fact_named("engine.max_rpm").expect("a fact"), &json!(null)), None);
    }

    #[test]
    fn every_span_is_of_a_fact_that_no_measurement_fills_and_holds_the_plain_number() {
        for (path, from, to) in LIKELY {
            let fact = fact_named(path).unwrap_or_else(|| panic!("no fact {path}"));
            assert!(matches!(fact.declaration().kind, Kind::Number(_)) && from < to, "{path}");
            assert!(measurements().all(|measurement| measurement.fact() != Some(fact)), "{path} has a measurement");
        }
        let plain = Job::plain();
        for fact in fact_ids() {
            let value = plain.slot(fact).json().unwrap_or_default();
            assert_eq!(doubt(fact, &value), None, "{}", fact.declaration().path);
        }
    }

    #[test]
    fn every_number_that_is_typed_has_a_span() {
        let without = |fact: &FactId| {
            let declaration = fact.declaration();
            let typed = matches!(declaration.kind, Kind::Number(_)) && declaration.sheet != Sheet::Paper;
            typed && likely(*fact).is_none() && !declaration.path.starts_with("class_table.")
        };
        let bare: Vec<_> = fact_ids().filter(without).map(|fact| fact.declaration().path).collect();
        // These two take nothing but the few sizes there are.
        assert_eq!(bare, ["flexplate.bolt_circle_in", "converter.bolt_circle_in"]);
    }
}
