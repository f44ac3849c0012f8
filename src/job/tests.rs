//! The registry as a whole: what must hold for every fact.

use super::*;
use std::collections::HashSet;

#[test]
fn every_fact_fits_a_set_and_has_a_name_of_its_own() {
    assert_eq!(facts().len(), 283);
    assert!(facts().len() <= FactSet::CAPACITY);
    let names: HashSet<_> = facts().iter().map(|fact| fact.path).collect();
    assert_eq!(names.len(), facts().len());
}

#[test]
fn slots_and_declarations_stand_in_the_same_order() {
    let mut job = Job::plain();
    for fact in fact_ids() {
        assert_eq!(job.slot(fact).id(), fact);
        assert_eq!(job.slot_mut(fact).id(), fact);
        assert_eq!(job.slot(fact).json().unwrap_or_default(), fact.declaration().plain.json());
    }
}

#[test]
fn every_fact_has_a_label_and_says_how_to_tell_and_why() {
    for fact in facts() {
        assert!((3..=60).contains(&fact.label.chars().count()), "{}: {}", fact.path, fact.label);
        assert!(!fact.label.ends_with(['.', ':', '?']), "{}: {}", fact.path, fact.label);
        assert!(!fact.note.ends_with('.'), "{}: {}", fact.path, fact.note);
        for sentence in [fact.how, fact.why] {
            assert!((20..=250).contains(&sentence.chars().count()), "{}: {sentence}", fact.path);
            assert!(sentence.ends_with('.'), "{}: {sentence}", fact.path);
        }
        for text in [fact.label, fact.how, fact.why] {
            assert!(
                text.starts_with(|first: char| first.is_uppercase() || first.is_numeric()),
                "{}: {text}",
                fact.path
            );
        }
        for text in [fact.label, fact.note, fact.how, fact.why] {
            assert_eq!(text.trim(), text, "{}", fact.path);
            assert!(!text.contains("  ") && !text.contains(char::is_control), "{}: {text:?}", fact.path);
        }
    }
}

#[test]
fn no_two_facts_of_a_sheet_share_a_label() {
    let mut seen = HashSet::new();
    for fact in facts() {
        assert!(seen.insert((fact.sheet, fact.label.to_lowercase())), "{}: {}", fact.path, fact.label);
    }
}

#[test]
fn choices_have_words_of_their_own() {
    for fact in facts() {
        let Kind::Choice(words) = fact.kind else { continue };
        assert!(words.len() >= 2, "{}", fact.path);
        let codes: HashSet<_> = words.iter().map(|word| word.code).collect();
        let labels: HashSet<_> = words.iter().map(|word| word.label.to_lowercase()).collect();
        assert_eq!((codes.len(), labels.len()), (words.len(), words.len()), "{}", fact.path);
        for word in words {
            let code = |sign: char| sign.is_ascii_lowercase() || sign.is_ascii_digit() || sign == '_';
            assert!(word.code.chars().all(code), "{}: {}", fact.path, word.code);
            assert!(word.label.starts_with(|first: char| first.is_uppercase() || first.is_numeric()), "{}", word.label);
            assert!(!word.label.contains('_') && !word.label.ends_with('.'), "{}", word.label);
        }
    }
}

/// The name of a leaf carries its unit, so that a job file reads without a table beside it.
#[test]
fn the_unit_in_the_name_is_the_unit_of_the_fact() {
    let endings = [
        ("_s_per_qt", "s/qt"),
        ("_in2", "in²"),
        ("_inhg", "inHg"),
        ("_lbft", "lb-ft"),
        ("_in", "in"),
        ("_lb", "lb"),
        ("_kg", "kg"),
        ("_rpm", "rpm"),
        ("_psi", "psi"),
        ("_mph", "mph"),
        ("_deg", "°"),
        ("_qt", "qt"),
        ("_min", "min"),
        ("_s", "s"),
        ("_d", "diameters"),
        (".volts", "V"),
    ];
    for fact in facts() {
        let Kind::Number(symbol) = fact.kind else { continue };
        let named = endings.iter().find(|(ending, _)| fact.path.ends_with(ending)).map_or("", |(_, symbol)| symbol);
        let named = if fact.path == "direct.spring_lb" { "lbf" } else { named };
        assert_eq!(symbol, named, "{}", fact.path);
        assert_eq!(crate::quantity::unit_in_words(symbol).is_some(), !symbol.is_empty(), "{symbol}");
    }
}

#[test]
fn zero_and_below_are_refused_only_where_they_cannot_exist() {
    let bounded = |bound| -> Vec<&str> {
        facts()
            .iter()
            .filter(|fact| matches!(fact.kind, Kind::Number(_) | Kind::Count) && fact.bound == bound)
            .map(|fact| fact.path)
            .collect()
    };
    // A sum divides by each of these.
    let never_zero = [
        "vehicle.tire_diameter_in",
        "vehicle.axle_ratio",
        "converter.stall_rpm",
        "converter.rated_torque_lbft",
        "converter.stall_ratio",
        "converter.metal_kg",
        "driveshaft.length_in",
        "driveshaft.od_in",
        "speedometer.driven_teeth",
        "gears.first_ratio",
        "gears.second_ratio",
        "gears.reverse_ratio",
    ];
    // These are read on both sides of zero.
    let signed = [
        "bell.insert_proud_in",
        "bell.insert_bolt_proud_in",
        "yoke.clear_in",
        "driveshaft.front_angle_deg",
        "driveshaft.rear_angle_deg",
    ];
    assert_eq!(bounded(Bound::Positive).into_iter().collect::<HashSet<_>>(), HashSet::from(never_zero));
    assert_eq!(bounded(Bound::Any).into_iter().collect::<HashSet<_>>(), HashSet::from(signed));
    for fact in facts().iter().filter(|fact| fact.bound == Bound::NotNegative) {
        assert!((fact.check)(&serde_json::json!(0), fact).is_ok(), "{}", fact.path);
        assert!((fact.check)(&serde_json::json!(-1), fact).is_err(), "{}", fact.path);
    }
}

#[test]
fn finding_out_never_hurts_without_a_warning() {
    for (path, warning) in [
        ("bench.air_checks", "Glasses on"),
        ("bench.air_checks", "50 psi or less"),
        ("forward.clear_in", "Glasses on"),
        ("direct.clear_in", "Glasses on"),
        ("intermediate.clear_in", "Glasses on"),
        ("direct.springs", "compressor"),
        ("bench.line_stall_psi", "Wheels chocked"),
        ("bench.line_stall_psi", "five seconds"),
        ("bench.line_drive_idle_psi", "Hot fluid burns"),
        ("bench.line_reverse_idle_psi", "wheels chocked"),
        ("trans_brake.volts", "Chock the wheels"),
        ("trans_brake.speed_lock", "people clear"),
        ("engine.idle_vacuum_inhg", "fan"),
        ("engine.crank_end_play_in", "key out"),
        ("flexplate.runout_in", "key out"),
        ("bell.runout_in", "key out"),
        ("converter.gap_in", "key out"),
        ("converter.seated", "Two people"),
        ("vehicle.axle_ratio", "rated stands"),
        ("vehicle.axle_park_brake", "chocks"),
        ("shifter.neutral_switch", "nobody around"),
        ("case.park_pawl", "nobody in front or behind"),
        ("case.crack", "flame"),
        ("case.failure_debris", "warm, not hot"),
        ("cooling.flow_s_per_qt", "face shield"),
        ("cooling.action", "glasses"),
        ("vent.blocked", "Do not put shop air"),
        ("yoke.engaged_droop_in", "rated stands"),
        ("yoke.gap_bump_in", "rated stands"),
        ("threads.mount_hole", "jack"),
        ("pan.ground_in", "Do not reach under"),
        ("vehicle.vent_over_exhaust", "cold"),
    ] {
        let how = fact_named(path).expect(path).declaration().how;
        assert!(how.to_lowercase().contains(&warning.to_lowercase()), "{path} does not say \"{warning}\": {how}");
    }
}
