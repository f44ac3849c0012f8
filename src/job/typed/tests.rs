use super::super::{BellKind, Choice, Job, fact_named, facts, random_value, read_text, say};
use serde_json::{Value, json};

fn read(path: &str, text: &str) -> Result<Option<Value>, String> {
    let declaration = fact_named(path).expect(path).declaration();
    read_text(text, declaration).map_err(|refused| {
        assert_eq!(refused.path, path);
        assert!(
            refused.message.starts_with(declaration.label) && refused.message.ends_with('.'),
            "{}",
            refused.message
        );
        refused.message
    })
}

#[test]
fn blank_is_unknown_whatever_the_kind() {
    for fact in facts() {
        for blank in ["", " ", "\t\n"] {
            assert_eq!(read_text(blank, fact), Ok(None), "{}", fact.path);
        }
    }
}

#[test]
fn a_field_takes_what_people_type() {
    for (path, text, value) in [
        ("use.raced", "yes", json!(true)),
        ("use.raced", " No ", json!(false)),
        ("use.raced", "Y", json!(true)),
        ("use.raced", "false", json!(false)),
        ("bell.kind", "bolt_on", json!("bolt_on")),
        ("bell.kind", "BOLT_ON", json!("bolt_on")),
        ("vehicle.weight_lb", "3,600", json!(3600)),
        ("vehicle.weight_lb", "3600 lbs", json!(3600)),
        ("vehicle.tire_diameter_in", "27", json!(27)),
        ("vehicle.tire_diameter_in", "27 in", json!(27)),
        ("vehicle.tire_diameter_in", "27 in.", json!(27)),
        ("vehicle.tire_diameter_in", "27\"", json!(27)),
        ("vehicle.tire_diameter_in", "27.", json!(27)),
        ("vehicle.tire_diameter_in", "28 1/2", json!(28.5)),
        ("vehicle.tire_diameter_in", "28½ inches", json!(28.5)),
        ("bench.front_end_play_in", ".012", json!(0.012)),
        ("bench.front_end_play_in", "12 thou", json!(0.012)),
        ("converter.gap_in", "5/32", json!(0.15625)),
        ("converter.gap_in", "5/32\"", json!(0.15625)),
        ("bell.insert_proud_in", "-.004", json!(-0.004)),
        ("engine.torque_lbft", "380 ft-lb", json!(380)),
        ("engine.max_rpm", "6,500 RPM", json!(6500)),
        ("vehicle.axle_ratio", "3.42:1", json!(3.42)),
        ("vehicle.axle_ratio", "3.42 to 1", json!(3.42)),
        ("driveshaft.front_angle_deg", "-2°", json!(-2)),
        ("driveshaft.front_angle_deg", "2 degrees", json!(2)),
        ("bell.ring_holes", "8", json!(8)),
        ("flexplate.teeth", "166", json!(166)),
        ("class_table.year", "2026", json!(2026)),
        ("event.date", "2026-03-31", json!("2026-03-31")),
        ("fluid.used", " type 1 ", json!("type 1")),
    ] {
        assert_eq!(read(path, text), Ok(Some(value)), "{path} typed {text}");
    }
}

#[test]
fn a_note_repeated_behind_the_number_is_no_matter() {
    for fact in facts().iter().filter(|fact| !fact.note.is_empty()) {
        let Some(number) = fact.plain.json().as_f64() else { continue };
        for text in
            [format!("{number} {}", fact.note), format!("{number} ({})", fact.note), format!("{number}, {}", fact.note)]
        {
            assert_eq!(read_text(&text, fact), Ok(Some(fact.plain.json())), "{} typed {text}", fact.path);
        }
    }
}

#[test]
fn a_field_refuses_with_a_sentence() {
    for (path, text, say) in [
        ("use.raced", "maybe", "it must be yes or no"),
        ("bell.kind", "welded", "it must be one of: "),
        ("bell.kind", "integral bolt_on", "it must be one of: "),
        (
            "vehicle.tire_diameter_in",
            "27 mm",
            "that is millimeters, and this is wanted in inches; nothing is converted unasked",
        ),
        ("vehicle.tire_diameter_in", "2 ft", "that is feet"),
        ("vehicle.tire_diameter_in", "0", "it must be a number of inches, above zero"),
        ("vehicle.tire_diameter_in", "about 27", "it must be a number of inches"),
        ("vehicle.tire_diameter_in", "27 or so", "what does \"or so\" mean here"),
        ("vehicle.tire_diameter_in", "27 28", "it must be a number of inches"),
        ("vehicle.tire_diameter_in", "27,5", "the comma can be read two ways"),
        ("vehicle.tire_diameter_in", "27/0", "lower number of a fraction"),
        ("vehicle.tire_diameter_in", "27 4/2", "less than one"),
        ("engine.torque_lbft", "500 Nm", "that is newton-meters, and this is wanted in pound-feet"),
        ("engine.torque_lbft", "-5", "zero or more"),
        ("vehicle.weight_lb", "1600 kg", "that is kilograms"),
        ("bell.ring_holes", "9", "it must be one of 6, 7, 8"),
        ("bell.ring_holes", "8 in", "that is inches, and this has no unit"),
        ("bell.ring_holes", "7 1/2", "one of 6, 7, 8"),
        ("vehicle.axle_ratio", "3.42:2", "what does \":2\" mean here"),
        ("event.date", "31.03.2026", "such as 2026-03-31"),
        ("event.date", "2026-02-30", "a real date"),
        ("class_table.year", "26.5", "a year in four figures"),
        ("class_table.year", "27", "it must be a year in four figures, from 1950 to 2099, such as 2027."),
        ("fluid.used", "type\u{0}1", "words on one line"),
    ] {
        let message = read(path, text).expect_err(path);
        assert!(message.contains(say), "{path} typed {text}: {message}");
        assert!(message.contains(text), "{path} typed {text}: {message}");
    }
}

#[test]
fn a_value_is_said_as_people_read_it() {
    for (path, value, said) in [
        ("use.raced", json!(true), "yes"),
        ("use.raced", json!(false), "no"),
        ("use.raced", Value::Null, "not known"),
        ("bell.runout_in", json!(0.004), "0.004 in"),
        ("vehicle.weight_lb", json!(3600), "3600 lb"),
        ("driveshaft.front_angle_deg", json!(-2), "-2°"),
        ("vehicle.axle_ratio", json!(3.42), "3.42"),
        ("bell.ring_holes", json!(8), "8"),
        ("event.date", json!("2026-03-31"), "2026-03-31"),
        ("fluid.used", json!("type 1"), "type 1"),
    ] {
        assert_eq!(say(&value, fact_named(path).expect(path).declaration()), said);
    }
    let job = Job::from_json(r#"{"bell": {"kind": "bolt_on"}}"#).unwrap();
    assert_eq!(job.say(job.bell.kind.id()).as_deref(), Some(BellKind::BoltOn.label()));
    assert_eq!(job.say(job.bell.pattern.id()), None);
}

proptest::proptest! {
    /// Somebody who types what a page says means what the page said, save for the digits that only a machine sees.
    #[test]
    fn what_is_said_reads_back_the_same(draws in proptest::collection::vec(proptest::num::u64::ANY, 4)) {
        for fact in facts() {
            let mut draws = draws.iter().copied().cycle();
            let value = random_value(fact, || draws.next().unwrap_or_default());
            // Nothing in a shop is as small as that, and it is said to be 0.
            if value.as_f64().is_some_and(|number| number != 0.0 && number.abs() < 1e-6) {
                continue;
            }
            let said = say(&value, fact);
            let read = read_text(&said, fact);
            let again = read.as_ref().map(|read| read.as_ref().map(|read| say(read, fact)));
            proptest::prop_assert_eq!(again, Ok(Some(said.trim().to_owned())), "{}: {}", fact.path, value);
            if fact.kind != crate::job::Kind::Text && !value.is_f64() {
                proptest::prop_assert_eq!(read, Ok(Some(value)), "{} said {}", fact.path, said);
            }
        }
    }
}
