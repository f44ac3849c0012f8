//! The words of the sheet: verdicts, hints, doubts, and what is said of a set that cannot be.

use super::*;
use crate::job::FactSet;

#[test]
fn every_verdict_has_its_word_and_its_sentence() {
    let waits = Verdict::CannotSay(FactSet::default());
    for (verdict, word, sentence, code) in [
        (Verdict::NotTaken, "not taken", "Nobody has taken it yet.", "open"),
        (Verdict::Fine, "fine", "Fine: inside its limits.", "fine"),
        (
            Verdict::Allowed(Side::Below),
            "allowed, on the low side",
            "Allowed, but lower than this shop builds it.",
            "allowed",
        ),
        (
            Verdict::Allowed(Side::Above),
            "allowed, on the high side",
            "Allowed, but higher than this shop builds it.",
            "allowed",
        ),
        (Verdict::Out(Side::Below, 0.002), "out", "Out: 0.002 in below the least that is allowed.", "out"),
        (Verdict::Out(Side::Above, 0.0005), "out", "Out: 0.0005 in above the most that is allowed.", "out"),
        (waits, "cannot be judged yet", "It cannot be judged before more is known of the unit.", "open"),
        (Verdict::NoLimit, "written down", "Written down. There is no limit here to hold it against.", "open"),
    ] {
        assert_eq!((verdict.word(), verdict.code()), (word, code));
        assert_eq!(verdict.sentence(Scale::Length), sentence);
    }
}

#[test]
fn a_hint_shows_how_numbers_of_the_unit_are_written_and_what_it_shows_can_be_read() {
    let hints = |habit: Habit, scale: Scale| how_to_write(scale, habit.of(scale));
    let habits = |length, torque, pressure| Habit { length, torque, pressure };
    let own = Habit::default();
    let metric = habits(LengthHabit::Millimetre, TorqueHabit::NewtonMetre, PressureHabit::Bar);
    let thou = habits(LengthHabit::Thou, TorqueHabit::PoundFoot, PressureHabit::Psi);
    for (said, hint) in [
        (hints(own, Scale::Length), "a number in inches such as 0.012, or 12 thou, or 5/32, or 0.30 mm"),
        (hints(thou, Scale::Length), "a number in thousandths of an inch such as 12, or 0.012 in, or 0.30 mm"),
        (hints(metric, Scale::Length), "a number in millimeters such as 0.30, or 0.012 in, or 12 thou"),
        (hints(own, Scale::Torque), "a number in pound-feet such as 18, or 24 N-m"),
        (hints(metric, Scale::Torque), "a number in newton-meters such as 24, or 18 lb-ft"),
        (hints(own, Scale::Pressure), "a number in pounds a square inch such as 75, or 5.2 bar"),
        (hints(metric, Scale::Pressure), "a number in bar such as 5.2, or 75 psi"),
        (hints(own, Scale::Angle), "a number in degrees such as 2 or 2.5"),
        (hints(own, Scale::Voltage), "a number in volts such as 12.4"),
        (hints(own, Scale::Flow), "a number in seconds a quart such as 15"),
        (hints(own, Scale::Speed), "a number in revolutions a minute such as 2800"),
    ] {
        assert_eq!(said, hint);
    }
}

#[test]
fn numbers_are_said_with_what_an_instrument_shows() {
    for (scale, value, said) in [
        (Scale::Length, 0.0123, "0.0123 in"),
        (Scale::Length, -0.00001, "0.000 in"),
        (Scale::Length, -0.002, "-0.002 in"),
        (Scale::Angle, 2.0, "2°"),
        (Scale::Angle, 2.5, "2.5°"),
        (Scale::Voltage, 12.0, "12 V"),
        (Scale::Flow, 15.04, "15 s/qt"),
        (Scale::Pressure, 75.42, "75 psi"),
        (Scale::Speed, -0.2, "0 rpm"),
    ] {
        assert_eq!(scale.say(value), said);
    }
}

fn refusal(name: &str, typed: &str) -> String {
    let one = measurement_named(name).expect("a measurement");
    read(one, typed, Habit::default(), false).expect_err(typed).message
}

#[test]
fn a_doubtful_reading_is_told_what_it_is_what_is_usual_and_what_was_perhaps_meant() {
    for (name, typed, message) in [
        (
            "front-end-play",
            "0.12",
            "Front end play: \u{201c}0.12\u{201d} is 0.120 in, far more than there ever is (0.002 in to 0.090 in). Read \
             it again. Perhaps millimeters were read: 0.12 mm?",
        ),
        (
            "front-end-play",
            "0.0012",
            "Front end play: \u{201c}0.0012\u{201d} is 0.0012 in, far less than there ever is (0.002 in to 0.090 in). \
             Read it again. Perhaps the point slipped by one place: 0.012 in?",
        ),
        (
            "front-end-play",
            "0.00012",
            "Front end play: \u{201c}0.00012\u{201d} is 0.00012 in, far less than there ever is (0.002 in to 0.090 in). \
             Read it again. Perhaps the point slipped by 2 places: 0.012 in?",
        ),
        (
            "front-end-play",
            "0.00001",
            "Front end play: \u{201c}0.00001\u{201d} is 0.00001 in, far less than there ever is (0.002 in to 0.090 in). \
             Read it again. Perhaps the point slipped by 3 places: 0.010 in?",
        ),
        (
            "front-end-play",
            "0",
            "Front end play: \u{201c}0\u{201d} is 0.000 in, far less than there ever is (0.002 in to 0.090 in). Read it \
             again.",
        ),
        (
            "front-end-play",
            "2.5",
            "Front end play: \u{201c}2.5\u{201d} is 2.500 in, which cannot be. It can be 0.000 in to 1.000 in. Perhaps \
             thousandths of an inch were read: 2.5 thou?",
        ),
        (
            "pressure-drive-idle",
            "5.2",
            "Line pressure, drive, hot idle: \u{201c}5.2\u{201d} is 5.2 psi, far less than there ever is (25 psi to 300 \
             psi). Read it again. Perhaps bar were read: 5.2 bar?",
        ),
        (
            "pressure-drive-idle",
            "7",
            "Line pressure, drive, hot idle: \u{201c}7\u{201d} is 7 psi, far less than there ever is (25 psi to 300 psi). \
             Read it again. Perhaps bar were read: 7 bar?",
        ),
        (
            "pressure-drive-idle",
            "450",
            "Line pressure, drive, hot idle: \u{201c}450\u{201d} is 450 psi, which cannot be. It can be 0 psi to 400 psi. \
             Perhaps kilopascals were read: 450 kPa?",
        ),
    ] {
        assert_eq!(refusal(name, typed), message);
    }
}

#[test]
fn only_what_an_instrument_could_show_is_offered_and_with_all_its_digits() {
    let offered = |name: &str, typed: &str| {
        let one = measurement_named(name).expect("a measurement");
        let bad = read(one, typed, Habit::default(), false).expect_err(typed);
        bad.meant.into_iter().map(|meant| meant.typed).collect::<Vec<_>>()
    };
    assert_eq!(offered("front-joint-angle", "25"), ["2.5\u{b0}", "0.25\u{b0}"], "and not 0.2, nor nought");
    assert_eq!(offered("bell-runout", "0.25"), ["0.25 mm", "0.025 in", "0.0025 in"], "and not 0.25 thou");
    assert_eq!(offered("front-end-play", "0.305"), ["0.305 mm", "0.0305 in", "0.00305 in"]);
    assert_eq!(offered("pressure-drive-full", "1034"), ["1034 kPa", "103.4 psi"]);
    assert_eq!(offered("cooler-flow", "0.2"), ["20 s/qt"]);
}

#[test]
fn the_longest_number_that_is_looked_at_has_forty_characters() {
    let most = format!("0.012{}", "0".repeat(35));
    let one = measurement_named("front-end-play").expect("a measurement");
    assert_eq!(read(one, &most, Habit::default(), false).map(|read| read.value), Ok(0.012));
    assert_eq!(
        refusal("front-end-play", &format!("{most}0")),
        "Front end play: that is too long for a reading. Type the number alone."
    );
    assert_eq!(read_size("Size", &most, Habit::default()), Ok(0.012));
    let long = read_size("Size", &format!("{most}0"), Habit::default());
    assert_eq!(long, Err("Size: that is too long for a size.".to_owned()));
    let nothing = refusal("front-end-play", " ");
    assert!(nothing.starts_with("Front end play: nothing was typed; write a number in inches"), "{nothing}");
}

#[test]
fn a_part_that_cannot_be_is_told_why() {
    let (long, longest) = ("m".repeat(41), "m".repeat(40));
    let rear = |size, other, mark| SetKind::RearWasher.read_part(3, (size, other, mark), Habit::default());
    let pin = |size, other, mark| SetKind::RearPins.read_part(1, (size, other, mark), Habit::default());
    let told = |read: Result<SetPart, Vec<(&'static str, String)>>| read.expect_err("refused");
    for (read, field, message) in [
        (rear("0", "", ""), "size", "Line 3, size: a part has some thickness."),
        (
            rear("0.084", "0.0211", ""),
            "other",
            "Line 3, how far it may be off: that is more than a quarter of the part itself. Write how far it may be off, \
             such as 0.002.",
        ),
        (pin("0.06", "0.06", "short"), "other", "Line 1, to: it has to be more than where the window begins."),
        (rear("0.084", "", &long), "mark", "Line 3, mark: 40 plain characters at most."),
        (rear("0.084", "", "a\u{7}b"), "mark", "Line 3, mark: 40 plain characters at most."),
    ] {
        assert_eq!(told(read), [(field, message.to_owned())]);
    }
    let words = |read| told(read).into_iter().map(|(field, _)| field).collect::<Vec<_>>();
    assert_eq!(words(pin("x", "y", &long)), ["size", "other", "mark"]);
    assert!(told(pin("", "0.1", ""))[0].1.starts_with("Line 1, from: nothing was typed"));
    assert!(told(rear("84", "", ""))[0].1.starts_with("Line 3, size: \u{201c}84\u{201d} is 84.000 in, and no part"));
    let edge = rear("0.084", "0.021", &longest).expect("just as far as it may be");
    assert_eq!((edge.other, edge.mark.len()), (0.021, 40));
    assert_eq!(rear("0.084", "", " two   notches ").expect("a part").say(SetKind::RearWasher), "0.084 in, two notches");
}

#[test]
fn a_taking_says_what_is_wrong_with_it_by_name() {
    let taking = |name: &str, readings: &[&str], fitted: &str| {
        let readings: Vec<String> = readings.iter().map(|typed| (*typed).to_owned()).collect();
        take(measurement_named(name).expect("a measurement"), &readings, fitted, Habit::default(), false)
    };
    let told = |wrong: Vec<Wrong>| wrong.into_iter().map(|one| one.message).collect::<Vec<_>>().join(" | ");
    let nothing = told(taking("front-end-play", &["", ""], "").expect_err("nothing typed"));
    assert_eq!(nothing, "Front end play: type what the instrument shows.");
    let moved = told(taking("torque-pump", &["18", "18.1"], "").expect_err("read once, so it may not move"));
    assert_eq!(
        moved,
        "Pump to case: the readings go from 18 lb-ft to 18.1 lb-ft, and they may lie 0 lb-ft apart at the most. That is no \
         measurement yet. See that the instrument stands fast and the part is pushed the same way each time, then read \
         again."
    );
    for (name, typed, message) in [
        ("front-end-play", "x", "The washer that is in now: "),
        ("needle-kit-stack", "x", "The old pair: "),
        ("front-end-play", "0.073 0.084", "The washer that is in now: "),
        ("needle-kit-stack", "0.073, 0.077", "The old pair: "),
        ("front-end-play", "2 x 0.073", "The washer that is in now: "),
        ("direct-clearance", "9 x 0.077 0.1", "The steels in the pack: "),
        ("direct-clearance", "11 x 0.077", "The steels in the pack: \u{201c}11 x 0.077\u{201d} is not understood."),
        ("direct-clearance", "6 x 0.077, 5 x 0.08", "The steels in the pack: 10 are the most."),
        ("front-end-play", "0", "The washer that is in now: a part has some thickness. Measure it with a micrometer."),
    ] {
        let one = measurement_named(name).expect("a measurement");
        let reading = Scale::Length.say((one.likely.from + one.likely.to) / 2.0);
        let said = told(taking(name, &[&reading], typed).expect_err(typed));
        assert!(said.starts_with(message), "{typed}: {said}");
    }
    let most = taking("direct-clearance", &["0.06"], "5 x 0.077, 5 x 0.08").expect("ten are the most");
    assert_eq!(most.fitted.len(), 10);
    let long = told(taking("front-end-play", &["0.012"], &"0".repeat(201)).expect_err("long"));
    assert_eq!(long, "The washer that is in now: that is too long.");
    let ignored = taking("bell-runout", &["0.004"], "whatever").expect("nothing is fitted there");
    assert!(ignored.fitted.is_empty());
}
