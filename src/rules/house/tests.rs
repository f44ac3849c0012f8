//! Conditions as an owner would write them, and as nobody should.

use super::{Condition, LONGEST, read};
use crate::job::{FactSet, Job, OneWayKind, UseKind, fact_named, facts};
use crate::quantity::Quantity;
use crate::rules::{Derived, DerivedId, Known, Limits, Truth};

fn condition(text: &str) -> Condition {
    read(text).unwrap_or_else(|amiss| panic!("{text}: {amiss:?}"))
}

fn verdict(text: &str, job: &Job) -> Truth {
    condition(text).verdict(job, &Derived::of(job, &Limits::default()))
}

fn says(text: &str, job: &Job) -> Option<bool> {
    verdict(text, job).value().copied()
}

fn complaint(text: &str) -> String {
    let amiss = read(text).expect_err(text);
    amiss.into_iter().map(|amiss| amiss.message).collect::<Vec<_>>().join(" ")
}

fn named(paths: &[&str]) -> FactSet {
    paths.iter().fold(FactSet::EMPTY, |set, path| set.with(FactSet::of(fact_named(path).expect(path))))
}

fn job() -> Job {
    let mut job = Job::unknown();
    job.usage.kind.set(UseKind::Tow);
    job.usage.raced.set(false);
    job.engine.torque_lbft.set(Quantity::new(500.0));
    job.one_way.kind.set(OneWayKind::Roller);
    job.gears.second_ratio.set(Quantity::new(1.48));
    job.event.date.set(jiff::civil::date(2026, 5, 31));
    job
}

#[test]
fn what_an_owner_writes_is_worked_out() {
    let job = job();
    for (text, wanted) in [
        ("use.kind == 'tow' && engine.torque_lbft > 450", true),
        ("use.kind == \"tow\" && engine.torque_lbft > 500", false),
        ("engine.torque_lbft >= 500.0", true),
        ("use.kind in ['drag', 'pull']", false),
        ("use.kind in ['drag', 'tow']", true),
        ("engine.torque_lbft in [400, 500]", true),
        ("!use.raced", true),
        ("use.raced == true", false),
        ("use.raced != true", true),
        ("(gears.second_ratio - 1.0) * engine.torque_lbft < 240.5", true),
        ("(gears.second_ratio - 1.0) * engine.torque_lbft < 239.5", false),
        ("engine.torque_lbft / 2 == 250", true),
        ("-engine.torque_lbft + 1 == -499", true),
        ("use.raced ? engine.torque_lbft > 1 : engine.torque_lbft > 1000", false),
        ("(use.raced ? 100 : 600) > engine.torque_lbft", true),
        ("math.abs(engine.torque_lbft - 600) == 100", true),
        ("math.least(engine.torque_lbft, 300, 400) == 300", true),
        ("math.greatest(engine.torque_lbft, 300) == 500", true),
        ("math.sqrt(engine.torque_lbft * 5) == 50", true),
        ("one_way.load_lbft > 300", true),
        ("event.date <= '2026-05-31'", true),
        ("event.date < '2026-05-31'", false),
        ("event.year == 2026", true),
        ("need.shield", false),
    ] {
        assert_eq!(says(text, &job), Some(wanted), "{text}");
    }
}

#[test]
fn an_unknown_fact_leaves_a_rule_open_as_in_the_built_in_ones() {
    let job = job();
    let waits = |text: &str, paths: &[&str]| assert_eq!(verdict(text, &job), Known::Waits(named(paths)), "{text}");
    waits("bell.ring_holes < 7", &["bell.ring_holes"]);
    waits("bell.ring_holes < 7 && use.kind == 'tow'", &["bell.ring_holes"]);
    waits("use.kind == 'drag' || bell.ring_holes < 7", &["bell.ring_holes"]);
    waits("!(bell.ring_holes < pump.holes)", &["bell.ring_holes", "pump.holes"]);
    waits("bell.ring_holes < 7 ? use.raced : !use.raced", &["bell.ring_holes"]);
    waits("math.least(bell.ring_holes, 2) < 1", &["bell.ring_holes"]);
    waits("one_way.load_share > 1", &["one_way.elements"]);
    waits("bell.insert_fitted", &["bell.insert_fitted"]);
    waits("!bell.insert_fitted", &["bell.insert_fitted"]);
    assert_eq!(says("bell.ring_holes < 7 && use.kind == 'drag'", &job), Some(false), "settled by what is known");
    assert_eq!(says("use.kind == 'tow' || bell.ring_holes < 7", &job), Some(true));
}

#[test]
fn a_settled_rule_rests_on_what_settled_it() {
    let job = job();
    assert_eq!(verdict("use.kind == 'tow' && !use.raced", &job), Known::Yes(true, named(&["use.kind", "use.raced"])));
    assert_eq!(verdict("use.kind == 'drag' && bell.ring_holes > 1", &job), Known::Yes(false, named(&["use.kind"])));
}

#[test]
fn a_sum_without_an_answer_is_no_answer() {
    let job = job();
    let waits = Known::Waits(named(&["engine.torque_lbft"]));
    assert_eq!(verdict("1 / (engine.torque_lbft - 500) > 3", &job), waits);
    assert_eq!(verdict("math.sqrt(0 - engine.torque_lbft) > 3", &job), waits);
}

#[test]
fn a_wrong_name_or_word_is_answered_with_the_right_one() {
    for (text, part) in [
        ("engine.torque > 3", "There is no fact called engine.torque. Did you mean engine.torque_lbft?"),
        ("use.kind == 'drg'", "use.kind is never \"drg\""),
        ("use.kind == 'drg'", "Did you mean \"drag\"?"),
        ("event.date > 'May 31'", "event.date is a day; \"May 31\" is not."),
        ("use.kind > 'drag'", "Only numbers and days can be more or less"),
        ("use.kind == bell.kind", "have no word in common"),
        ("use.kind == 3", "\"==\" cannot hold a text against a number."),
        ("use.raced > 3", "\">\" cannot hold true or false against a number."),
        ("use.raced + 3 > 1", "\"+\" wants a number"),
        ("engine.torque_lbft && use.raced", "\"&&\" wants something true or false, not a number."),
        ("engine.torque_lbft", "The whole condition is a number"),
        ("use.raced ? 1 : use.raced", "Both sides of \"? :\""),
        ("has(bell.kind)", "has() is not needed"),
        ("bell.kind == null", "the rule waits for it by itself"),
        ("size('abc') == 3", "\"size\" cannot be used here"),
        ("engine.torque_lbft % 2 == 0", "\"%\" cannot be used here"),
        ("[1, 2].exists(x, x == engine.torque_lbft)", "loops have no place here"),
        ("bell.kind.matches('.*')", "\"matches\" cannot be used here"),
        ("1 < 2", "names no fact"),
        ("engine.torque_lbft / 0 > 1", "Nothing can be divided by 0."),
        ("use.raced &&", "cannot be read"),
        ("use.raced && && use.raced", "cannot be read from"),
        ("use.kind in []", "The list behind \"in\" is empty."),
        ("math.abs(engine.torque_lbft, 2) > 1", "math.abs takes 1 number"),
        ("", "The condition is empty."),
    ] {
        assert!(complaint(text).contains(part), "{text}: {}", complaint(text));
    }
}

#[test]
fn a_long_wrong_name_or_word_is_said_back_in_part() {
    let long = "wrong_".repeat(100);
    for text in [
        format!("engine.{long} > 3"),
        format!("{long}(engine.torque_lbft) > 3"),
        format!("bell.kind == \"{long}\""),
        format!("event.date < \"{long}\""),
        format!("\"{long}\" == \"{long}\" && use.raced"),
    ] {
        let said = complaint(&text);
        assert!(said.contains("wrong_") && said.contains('…') && said.chars().count() < 400, "{said}");
    }
}

#[test]
fn everything_that_is_amiss_is_said_at_once() {
    let all = complaint("engine.torque > 3 && use.kind == 'drg' && use.raced > 1");
    for part in ["engine.torque", "drg", "cannot hold true or false"] {
        assert!(all.contains(part), "{part} is missing from: {all}");
    }
}

#[test]
fn every_fact_and_every_computed_quantity_can_be_named() {
    for fact in facts() {
        let text = format!("{0} == {0}", fact.path);
        assert!(read(&text).is_ok(), "{text}: {:?}", read(&text));
    }
    for which in DerivedId::ALL {
        let text = format!("{0} == {0}", which.declaration().path);
        assert!(read(&text).is_ok(), "{text}: {:?}", read(&text));
    }
}

/// Whatever is sent, the answer is a condition or a sentence, from a thread with no more than the usual stack.
#[test]
fn nothing_that_can_be_sent_hangs_or_falls_over() {
    let deep = |open: &str, close: &str, many: usize| format!("{}use.raced{}", open.repeat(many), close.repeat(many));
    let nasty = [
        deep("(", ")", 900),
        deep("[", "]", 900),
        deep("!", "", 1500),
        deep("-", "", 1500),
        deep("math.abs(", ")", 180),
        "(".repeat(LONGEST),
        ")".repeat(LONGEST),
        "use.raced?".repeat(180),
        "use.raced&&".repeat(170) + "use.raced",
        "1+".repeat(900) + "1 > engine.torque_lbft",
        "1+".repeat(237) + "1 > engine.torque_lbft",
        "a.".repeat(239) + "b",
        "!".repeat(238) + "use.raced",
        "use.raced?".repeat(119) + "use.raced",
        "use.raced ? use.raced : ".repeat(60) + "use.raced",
        "use.raced||".repeat(79) + "use.raced",
        "1 > ".repeat(238) + "1",
        "a.".repeat(900) + "b",
        "\"".repeat(LONGEST),
        "\\".repeat(LONGEST),
        "use.raced".repeat(10_000),
        "\u{0}\u{202e}ж🛠".repeat(300),
        "use.kind in [".to_owned() + &"'tow',".repeat(300) + "'tow']",
        "{".repeat(500),
        "1e999999 > engine.torque_lbft".to_owned(),
        "9999999999999999999999999 > engine.torque_lbft".to_owned(),
        "r'\\q' == use.kind".to_owned(),
        "b'x' == use.kind".to_owned(),
        "use.kind.kind.kind == 1".to_owned(),
        "Job{a: 1} == 2".to_owned(),
    ];
    for text in nasty {
        let from = std::thread::spawn(move || read(&text).map(|condition| condition.text().len()));
        let read = from.join().expect("no text makes it fall over");
        if let Err(amiss) = read {
            assert!(amiss.iter().all(|amiss| amiss.message.ends_with(['.', '?'])), "{amiss:?}");
        }
    }
}

/// One sign fewer is read, one more is not: the bounds are where they are said to be.
#[test]
fn what_is_too_long_too_deep_or_too_many_signs_is_told_so_and_what_just_fits_is_read() {
    let padded = |long: usize| format!("use.raced{}", " ".repeat(long - "use.raced".len()));
    condition(&padded(LONGEST));
    assert!(complaint(&padded(LONGEST + 1)).contains("has 2001 characters; at most 2000 are read"));

    // Each of them within the usual stack, the parser's own calls included.
    let brackets = [("(", ")"), ("[", "]"), ("{1: ", "}"), ("math.abs(", ")"), ("use.raced ? (", ") : use.raced")];
    for (open, close) in brackets {
        let nested = |deep: usize| format!("{}use.raced{}", open.repeat(deep), close.repeat(deep));
        assert!(complaint(&nested(13)).contains("nested more than 12 deep"), "13 of {open}");
        let said = read(&nested(12)).err().into_iter().flatten().map(|amiss| amiss.message).collect::<String>();
        assert!(!said.contains("nested"), "12 of {open}: {said}");
    }
    condition(&format!("{}use.raced{}", "(".repeat(12), ")".repeat(12)));
    condition(&vec!["(use.raced)"; 13].join(" || "));

    // Each part brings one point and, but for the last, two strokes.
    let parts = |many: usize| vec!["use.raced"; many].join("||");
    condition(&format!("!!{}", parts(80)));
    assert!(complaint(&parts(81)).contains("has 241 signs; at most 240 are read"));
    assert!(complaint(&format!("!!!{}", parts(80))).contains("has 241 signs"));
}
