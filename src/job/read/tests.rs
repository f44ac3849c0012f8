use super::super::{Job, JobError, fact_ids, fact_named, facts, random_job};
use serde_json::{Value, json};

fn errors(text: &str) -> Vec<JobError> {
    Job::from_json(text).expect_err(text)
}

/// The one thing wrong with a job.
fn error(text: &str) -> JobError {
    let mut errors = errors(text);
    assert_eq!(errors.len(), 1, "{text}: {errors:?}");
    errors.remove(0)
}

fn known(job: &Job) -> usize {
    fact_ids().filter(|fact| job.slot(*fact).json().is_some()).count()
}

#[test]
fn what_may_stand_is_taken() {
    for text in [
        "{}",
        "\u{feff}{}",
        r#"{"bell": {}}"#,
        r#"{"bell": null}"#,
        r#"{"bell": {"kind": null}}"#,
        r#"{"bell": {"ring_holes": null}, "use": {"raced": null}}"#,
    ] {
        assert_eq!(Job::from_json(text), Ok(Job::unknown()), "{text}");
    }
    let job = Job::from_json(r#"{"bell": {"kind": "bolt_on", "ring_holes": 8}, "use": {"raced": false}}"#).unwrap();
    assert_eq!(known(&job), 3);
    assert_eq!(job.bell.ring_holes.value(), Some(&8));
    assert_eq!(job.usage.raced.value(), Some(&false));
}

/// Each pair stands on the two sides of one line.
#[test]
fn the_line_between_what_may_be_and_what_cannot() {
    for (path, may, cannot) in [
        ("vehicle.tire_diameter_in", "0.1", "0"),
        ("vehicle.tire_diameter_in", "1000", "-0.0"),
        ("vehicle.axle_ratio", "0.5", "0"),
        ("gears.first_ratio", "0.01", "0.0"),
        ("gears.second_ratio", "9", "-1.48"),
        ("gears.reverse_ratio", "2.08", "0"),
        ("driveshaft.length_in", "0.5", "0"),
        ("driveshaft.od_in", "12", "0"),
        ("converter.rated_torque_lbft", "1", "0"),
        ("converter.stall_rpm", "1", "0"),
        ("converter.stall_ratio", "0.9", "0"),
        ("converter.metal_kg", "0.1", "0"),
        ("speedometer.driven_teeth", "1", "0"),
        ("speedometer.drive_teeth", "0", "-1"),
        ("engine.torque_lbft", "0", "-1"),
        ("vehicle.weight_lb", "0", "-0.5"),
        ("bell.runout_in", "0", "-0.001"),
        ("bell.insert_proud_in", "-0.010", "true"),
        ("yoke.clear_in", "-0.001", "\"-0.001\""),
        ("driveshaft.front_angle_deg", "-3.5", "[2]"),
        ("bell.ring_holes", "6", "5"),
        ("bell.ring_holes", "8.0", "8.5"),
        ("engine.dowels", "0", "3"),
        ("flexplate.teeth", "141", "141.5"),
        ("one_way.elements", "40", "-16"),
        ("converter.bolt_circle_in", "10.75", "0"),
        ("flexplate.bolt_circle_in", "0", "11"),
        ("output.spline", "27", "31"),
        ("direct.frictions", "0", "5.5"),
        ("case.threads_bad", "4294967295", "4294967296"),
        ("fluid.added_qt", "1e308", "1e309"),
        ("paper.quoted_total", "0", "-1"),
        ("use.raced", "false", "\"no\""),
        ("use.raced", "true", "1"),
        ("bell.kind", "\"bolt_on\"", "\"bolt-on\""),
        ("bell.kind", "\"integral\"", "\"Integral\""),
        ("vent.port", "\"tapped_pipe_1_8\"", "true"),
        ("shield.kind", "\"none\"", "\"\""),
        ("event.date", "\"2024-02-29\"", "\"2023-02-29\""),
        ("event.date", "\"2024-11-30\"", "\"2024-11-31\""),
        ("event.date", "\"0001-01-01\"", "\"20241130\""),
        ("event.date", "\"9999-12-31\"", "\"11/30/2024\""),
        ("shield.expires", "\"2029-11-30\"", "\"2029-11-30T00:00\""),
        ("class_table.year", "2026", "2026.5"),
        ("class_table.year", "1", "0"),
        ("class_table.year", "9999", "\"2026\""),
        ("fluid.required", "\"type 1\"", "\"\""),
        ("fluid.used", "\"1\"", "1"),
        ("fluid.used", "\"a b\"", "\"a\\u0000b\""),
        ("fluid.used", "\"\\ud83d\\ude00\"", "\"\\ud83d\""),
        ("pan.depth", "\"deep\"", "{\"deep\": true}"),
        ("pan.depth", "\"shallow\"", "[\"deep\"]"),
    ] {
        let (group, leaf) = path.split_once('.').unwrap();
        let taken = Job::from_json(&format!(r#"{{"{group}": {{"{leaf}": {may}}}}}"#));
        assert_eq!(taken.as_ref().map(known), Ok(1), "{path} at {may}");
        let refused = error(&format!("{{\n\"{group}\": {{\n\"{leaf}\": {cannot}}}}}"));
        assert_eq!(refused.path, path, "at {cannot}");
        assert_eq!(refused.line, Some(3), "{path} at {cannot}");
        assert!(!refused.allowed.is_empty() && refused.message.contains(&refused.allowed), "{refused:?}");
        assert!(refused.message.starts_with(path) && refused.message.ends_with('.'), "{refused:?}");
    }
}

#[test]
fn a_refusal_says_where_what_and_what_else() {
    let wrong = error(r#"{"bell": {"kind": "bolton"}}"#);
    assert_eq!(wrong.given, json!("bolton"));
    assert_eq!(wrong.allowed, r#"one of "integral", "bolt_on""#);
    assert_eq!(
        wrong.message,
        r#"bell.kind cannot be "bolton"; it must be one of "integral", "bolt_on"; the nearest known name is "bolt_on"."#
    );
    let wrong = error(r#"{"bell": {"ring_holes": 9}}"#);
    assert_eq!((wrong.given, wrong.allowed.as_str()), (json!(9), "one of 6, 7, 8"));
    let wrong = error(r#"{"vehicle": {"tire_diameter_in": 0}}"#);
    assert_eq!(wrong.message, "vehicle.tire_diameter_in cannot be 0; it must be a number of inches, above zero.");
    let wrong = error(r#"{"engine": {"torque_lbft": 1e400}}"#);
    assert_eq!(wrong.given, json!("1e400"));
    assert_eq!(wrong.path, "engine.torque_lbft");
}

#[test]
fn an_unknown_name_gets_the_nearest_known_one() {
    for (text, path, given, near) in [
        (r#"{"bel": {}}"#, "bel", "bel", "bell"),
        (r#"{"uses": {"raced": true}}"#, "uses", "uses", "use"),
        (r#"{"ring_holes": 8}"#, "ring_holes", "ring_holes", "bell.ring_holes"),
        (r#"{"bell": {"knd": "integral"}}"#, "bell.knd", "knd", "bell.kind"),
        (r#"{"bell": {"runout": 0.004}}"#, "bell.runout", "runout", "bell.runout_in"),
        (r#"{"bell": {"bell.kind": "integral"}}"#, "bell.bell.kind", "bell.kind", "bell.kind"),
        (r#"{"bel.kind": "integral"}"#, "bel.kind", "bel.kind", "bell.kind"),
        (r#"{"bell.knd": "integral"}"#, "bell.knd", "bell.knd", "bell.kind"),
        (r#"{"pump": {"ring_holes": 6}}"#, "pump.ring_holes", "ring_holes", "bell.ring_holes"),
    ] {
        let wrong = error(text);
        assert_eq!((wrong.path.as_str(), &wrong.given), (path, &json!(given)), "{text}");
        assert!(wrong.message.ends_with(&format!("the nearest known name is \"{near}\".")), "{}", wrong.message);
    }
    let far = error(r#"{"xyzzy": 1}"#);
    assert_eq!(far.message, r#"There is no group "xyzzy"."#);
    assert!(far.allowed.contains("use, vehicle, engine"), "{}", far.allowed);
    let far = error(r#"{"bell": {"xyzzy": null}}"#);
    assert_eq!(far.message, r#"There is no fact "bell.xyzzy"."#);
    assert!(far.allowed.contains("kind, pattern, ring_holes"), "{}", far.allowed);
}

#[test]
fn a_dotted_name_is_told_to_nest() {
    let dotted = error(r#"{"bell.kind": "integral"}"#);
    assert_eq!(dotted.message, r#""bell.kind" is written with a dot; nest it instead: {"bell": {"kind": ...}}."#);
}

#[test]
fn a_name_given_twice_is_refused_even_with_the_same_value() {
    let leaf = error(r#"{"bell": {"kind": "integral", "kind": "integral"}}"#);
    assert_eq!(leaf.path, "bell.kind");
    assert!(leaf.message.contains("given twice"), "{}", leaf.message);
    let group = error("{\"bell\": {\"kind\": \"integral\"},\n \"bell\": {\"ring_holes\": 8}}");
    assert_eq!((group.path.as_str(), group.line), ("bell", Some(2)));
    assert_eq!(error(r#"{"bell": {"kind": null, "\u006bind": "integral"}}"#).path, "bell.kind");
}

#[test]
fn a_group_must_be_an_object_and_so_must_the_job() {
    for text in [r#"{"bell": 3}"#, r#"{"bell": "bolt_on"}"#, r#"{"bell": []}"#, r#"{"bell": true}"#] {
        let wrong = error(text);
        assert_eq!(wrong.path, "bell", "{text}");
        assert!(wrong.allowed.starts_with("an object of its facts: kind, pattern"), "{}", wrong.allowed);
    }
    for text in ["3", "[]", "null", "\"bell\"", "true", "[{\"bell\": {}}]"] {
        let wrong = error(text);
        assert_eq!(wrong.path, "", "{text}");
        assert!(wrong.message.starts_with("A job cannot be "), "{}", wrong.message);
    }
    assert_eq!(error("{\"\\ud800\": 1}").path, "");
    assert_eq!(error("{\"bell\": {\"\\ud800\": 1}}").path, "bell");
}

#[test]
fn broken_text_is_refused_with_its_place() {
    for (text, line) in [
        ("", 1),
        (" \n ", 2),
        ("{", 1),
        ("{\"bell\": {\"kind\": }}", 1),
        ("{\"bell\": {\"kind\": \"integral\"}}\n}", 2),
        ("{\n\"bell\": {\n\"kind\": integral}}", 3),
        ("{\"bell\": {\"ring_holes\": 08}}", 1),
        ("{\"bell\": {\"runout_in\": .004}}", 1),
        ("{\"bell\": {\"runout_in\": NaN}}", 1),
        ("{'bell': {}}", 1),
        ("{\"bell\": {},}", 1),
        ("{\"bell\": {}} {\"bell\": {}}", 1),
    ] {
        let wrong = error(text);
        assert_eq!((wrong.path.as_str(), wrong.line), ("", Some(line)), "{text:?}: {}", wrong.message);
        assert!(!wrong.allowed.is_empty() && wrong.message.ends_with('.'), "{wrong:?}");
    }
    assert!(error("{\n  \"bell\" 3}").message.contains("line 2 column 10"));
}

#[test]
fn everything_wrong_is_said_at_once_and_in_order() {
    let text = r#"{
        "bel": {},
        "bell": {"kind": 3, "ring_holes": 5, "knd": 1, "runout_in": 0.004},
        "use": 7,
        "engine": {"torque_lbft": -1, "torque_lbft": 1}
    }"#;
    let found: Vec<_> = errors(text).into_iter().map(|error| (error.path, error.line)).collect();
    let expected = [
        ("bel", 2),
        ("bell.kind", 3),
        ("bell.ring_holes", 3),
        ("bell.knd", 3),
        ("use", 4),
        ("engine.torque_lbft", 5),
        ("engine.torque_lbft", 5),
    ];
    assert_eq!(found, expected.map(|(path, line)| (path.to_owned(), Some(line))));
}

#[test]
fn depth_and_size_break_nothing() {
    let deep = format!("{}{}", "[".repeat(200_000), "]".repeat(200_000));
    assert_eq!(error(&deep).path, "");
    assert_eq!(error(&format!("{{\"bell\": {deep}}}")).path, "bell");
    let wrong = error(&format!("{{\"bell\": {{\"kind\": {deep}}}}}"));
    assert_eq!(wrong.path, "bell.kind");
    assert!(wrong.message.len() < 300 && wrong.given.to_string().len() < 300);
    assert_eq!(errors(&"{\"bell\":".repeat(100_000))[0].path, "");
    let long = "x".repeat(1_000_000);
    let wrong = error(&format!("{{\"{long}\": 1}}"));
    assert!(wrong.path.len() < 300 && wrong.message.len() < 300);
    let wrong = error(&format!("{{\"bell\": {{\"kind\": \"{long}\"}}}}"));
    assert!(wrong.message.len() < 300 && wrong.given.to_string().len() < 300);
    let many: Vec<_> = (0..2_000).map(|at| format!("\n\"{at}\": {at}")).collect();
    let found = errors(&format!("{{{}}}", many.join(",")));
    assert_eq!((found.len(), found[1_999].line), (2_000, Some(2_001)));
}

#[test]
fn an_error_is_written_with_the_four_members_of_the_contract() {
    let wrong = serde_json::to_value(error(r#"{"bell": {"ring_holes": 9}}"#)).unwrap();
    let members: Vec<_> = wrong.as_object().unwrap().keys().collect();
    assert_eq!(members, ["path", "given", "allowed", "message"]);
}

#[test]
fn changes_are_taken_together_or_not_at_all() {
    let mut job = Job::from_json(r#"{"bell": {"kind": "integral", "ring_holes": 8}}"#).unwrap();
    job.apply([("bell.kind", &json!("bolt_on")), ("bell.ring_holes", &Value::Null), ("use.raced", &json!(true))])
        .unwrap();
    assert_eq!(job.to_json(), json!({"use": {"raced": true}, "bell": {"kind": "bolt_on"}}));

    let before = job.clone();
    let wrong = job
        .apply([
            ("use.raced", &json!(false)),
            ("bell.ring_holes", &json!(5)),
            ("bel.kind", &json!("integral")),
            ("use.raced", &json!(true)),
        ])
        .unwrap_err();
    let paths: Vec<_> = wrong.iter().map(|error| error.path.as_str()).collect();
    assert_eq!(paths, ["bell.ring_holes", "bel.kind", "use.raced"]);
    assert!(wrong[1].message.contains("\"bell.kind\""), "{}", wrong[1].message);
    assert_eq!(job, before);
}

#[test]
fn a_parsed_value_reads_like_its_text() {
    let value = json!({"bell": {"kind": "bolt_on", "ring_holes": 9}});
    let wrong = Job::from_value(&value).unwrap_err();
    assert_eq!((wrong[0].path.as_str(), wrong[0].line), ("bell.ring_holes", None));
    let value = Job::plain().to_json();
    assert_eq!(Job::from_value(&value), Ok(Job::plain()));
}

#[test]
fn every_fact_stands_under_its_group_in_the_file() {
    let written = Job::plain().to_json();
    for fact in facts() {
        let pointer = format!("/{}", fact.path.replace('.', "/"));
        let expected = Some(fact.plain.json()).filter(|value| !value.is_null());
        assert_eq!(written.pointer(&pointer).cloned(), expected, "{}", fact.path);
        assert!(fact_named(fact.path).is_some());
    }
}

/// The stream of chance a property's seed stands for.
fn draws(mut seed: u64) -> impl FnMut() -> u64 {
    move || {
        seed = seed.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = (seed ^ (seed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }
}

proptest::proptest! {
    #[test]
    fn any_job_written_and_read_is_the_same_job(seed: u64) {
        let job = random_job(draws(seed));
        let written = job.to_json();
        proptest::prop_assert_eq!(Job::from_json(&written.to_string()), Ok(job.clone()));
        proptest::prop_assert_eq!(Job::from_json(&serde_json::to_string_pretty(&written).unwrap()), Ok(job.clone()));
        proptest::prop_assert_eq!(Job::from_value(&written), Ok(job));
    }

    #[test]
    fn no_text_breaks_the_reader(text in ".{0,60}") {
        let _ = Job::from_json(&text);
    }

    #[test]
    fn no_small_damage_breaks_the_reader(seed: u64, at: usize, with in ".{0,2}") {
        let text = random_job(draws(seed)).to_json().to_string();
        let mut at = at % (text.len() + 1);
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        let (front, back) = text.split_at(at);
        let mut rest = back.chars();
        rest.next();
        if let Err(errors) = Job::from_json(&format!("{front}{with}{}", rest.as_str())) {
            proptest::prop_assert!(!errors.is_empty() && errors.iter().all(|error| error.line.is_some()));
        }
    }
}
