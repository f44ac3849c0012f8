use super::*;
use crate::plan::sheet::{LengthHabit, PressureHabit, TorqueHabit, measurement_named, measurements};
use proptest::prelude::*;

fn of(name: &str) -> &'static Measurement {
    measurement_named(name).expect("a measurement")
}

fn front(typed: &str) -> Result<f64, Bad> {
    read(of("front-end-play"), typed, Habit::default(), false).map(|read| read.value)
}

#[test]
fn a_builder_types_a_clearance_as_it_is_said() {
    for typed in ["0.012", ".012", "12 thou", "0.012 in", "0.3048 mm", " 0.012\" "] {
        let value = front(typed).unwrap_or_else(|bad| panic!("{typed}: {}", bad.message));
        assert!((value - 0.012).abs() < 1e-12, "{typed}: {value}");
    }
    let gap = read(of("converter-gap"), "5/32", Habit::default(), false).expect("a fraction");
    assert_eq!((gap.value, gap.typed.as_str(), gap.unit.as_str()), (0.15625, "5/32", "in"));
}

#[test]
fn a_bare_number_is_in_the_shops_own_unit_and_stays_as_typed() {
    let habit =
        Habit { length: LengthHabit::Millimetre, torque: TorqueHabit::NewtonMetre, pressure: PressureHabit::Bar };
    let play = read(of("front-end-play"), "0.30", habit, false).expect("millimeters");
    assert_eq!((play.typed.as_str(), play.unit.as_str()), ("0.30", "mm"));
    assert!((play.value - 0.30 / 25.4).abs() < 1e-12);
    let torque = read(of("torque-pump"), "24", habit, false).expect("newton-meters");
    assert!((torque.value - 17.7015).abs() < 1e-4, "24 N-m is 17.70 lb-ft (exact definitions): {}", torque.value);
    let line = read(of("pressure-drive-idle"), "5", habit, false).expect("bar");
    assert!((line.value - 72.5189).abs() < 1e-4, "5 bar is 72.52 psi (exact definitions): {}", line.value);
    let thou = Habit { length: LengthHabit::Thou, ..Habit::default() };
    assert_eq!(read(of("front-end-play"), "12", thou, false).expect("thousandths").value, 0.012);
    let written = read(of("torque-pump"), "18 lb-ft", habit, false).expect("its unit is written");
    assert_eq!((written.value, written.unit.as_str()), (18.0, "lb-ft"));
}

#[test]
fn a_wrong_unit_is_caught_and_the_right_one_offered() {
    let bad = front("0.305").expect_err("that is millimeters");
    assert!(bad.possible && bad.message.contains("Perhaps millimeters were read: 0.305 mm?"), "{}", bad.message);
    let bad = front("12").expect_err("that is thousandths");
    assert!(!bad.possible && bad.message.contains("cannot be"), "{}", bad.message);
    assert_eq!(bad.meant[0].typed, "12 thou");
    let metric = Habit { length: LengthHabit::Millimetre, ..Habit::default() };
    let bad = read(of("front-end-play"), "0.012", metric, false).expect_err("that is inches");
    assert!(bad.message.contains("inches were read: 0.012 in"), "{}", bad.message);
    let bad = read(of("pressure-drive-idle"), "5.2", Habit::default(), false).expect_err("that is bar");
    assert_eq!(bad.meant[0].typed, "5.2 bar");
    let bad = read(of("torque-pump"), "24.4", Habit::default(), false).expect_err("that is newton-meters");
    assert_eq!(bad.meant[0].typed, "24.4 N-m");
}

#[test]
fn a_slipped_point_is_caught_and_the_likely_number_offered() {
    for (typed, meant) in [("0.12", "0.012 in"), ("0.0012", "0.012 in"), ("0.00012", "0.012 in")] {
        let bad = front(typed).expect_err("the point slipped");
        assert!(bad.message.contains("Read it again."), "{}", bad.message);
        assert!(bad.meant.iter().any(|one| one.typed == meant), "{typed}: {:?}", bad.meant);
    }
}

#[test]
fn what_cannot_be_is_refused_whoever_is_sure() {
    let bad = read(of("front-end-play"), "-0.012", Habit::default(), true).expect_err("below nought");
    assert!(bad.message.contains("cannot be below nought") && !bad.possible, "{}", bad.message);
    let bad = read(of("front-end-play"), "3", Habit::default(), true).expect_err("three inches of play");
    assert!(bad.message.contains("cannot be. It can be 0.000 in to 1.000 in."), "{}", bad.message);
    for typed in ["", "twelve", "0,012", "12 psi", "1/0", "0.0.12", &"9".repeat(300)] {
        let bad = read(of("front-end-play"), typed, Habit::default(), true).expect_err("no number");
        assert!(bad.message.starts_with("Front end play: ") && bad.message.ends_with('.'), "{}", bad.message);
    }
}

#[test]
fn what_is_unlikely_is_taken_once_somebody_says_that_it_is_so() {
    assert!(front("0.2").is_err());
    let sure = read(of("front-end-play"), "0.2", Habit::default(), true).expect("possible");
    assert_eq!(sure.value, 0.2);
}

#[test]
fn a_part_of_a_set_has_a_thickness() {
    assert_eq!(read_size("Line 1", "84 thou", Habit::default()), Ok(0.084));
    for typed in ["-0.084", "84", "", "thick"] {
        let message = read_size("Line 1, size", typed, Habit::default()).expect_err("no thickness");
        assert!(message.starts_with("Line 1, size: ") && message.ends_with('.'), "{message}");
    }
}

/// A good number of each measurement: its aim, or the middle of what it is held against.
fn good(measurement: &Measurement) -> Option<f64> {
    let job = crate::job::Job::plain();
    let band = (measurement.band)(&job, &crate::rules::Limits::default());
    let band = band.value()?;
    let value = |edge: &Option<crate::plan::sheet::Edge>| edge.as_ref().map(|edge| edge.value);
    value(&band.aim).or_else(|| Some((value(&band.least)? + value(&band.most)?) / 2.0))
}

#[test]
fn no_slip_of_a_good_number_is_taken_in_silence() {
    let mut tried = 0;
    for measurement in measurements() {
        let Some(good) = good(measurement).filter(|good| *good > 0.0) else { continue };
        let mut slips = vec![10.0, 100.0, 1000.0];
        if measurement.likely.from > 0.0 {
            slips.extend([0.1, 0.01, 0.001]);
        }
        let mut typed: Vec<(String, Habit)> =
            slips.iter().map(|slip| (format!("{:.9}", good * slip), Habit::default())).collect();
        if measurement.scale == Scale::Length {
            // Millimeters typed where inches are meant, and the other way about.
            typed.push((format!("{:.9}", good * 25.4), Habit::default()));
            if measurement.likely.from > 0.0 {
                let metric = Habit { length: LengthHabit::Millimetre, ..Habit::default() };
                typed.push((format!("{good:.9}"), metric));
            }
        }
        for (typed, habit) in typed {
            let bad = read(measurement, &typed, habit, false);
            let bad = bad.err().unwrap_or_else(|| panic!("{}: {good} read as {typed}", measurement.name));
            let meant = |one: &Meant| read(measurement, &one.typed, habit, false).expect("likely").value;
            let near = |value: f64| (value - good).abs() <= measurement.scale.step() / 2.0 + good * 1e-6;
            assert!(bad.meant.iter().any(|one| near(meant(one))), "{}: {typed}: {:?}", measurement.name, bad.meant);
            tried += 1;
        }
        let typed = format!("{good:.9}");
        assert!(read(measurement, &typed, Habit::default(), false).is_ok(), "{}: {typed}", measurement.name);
    }
    assert!(tried > 150, "{tried} slips tried");
}

proptest! {
    #[test]
    fn no_text_brings_it_down(place in 0..100usize, typed in "\\PC{0,16}", sure: bool) {
        let all: Vec<_> = measurements().collect();
        let measurement = all[place % all.len()];
        match read(measurement, &typed, Habit::default(), sure) {
            Ok(read) => prop_assert!(measurement.possible.holds(read.value)),
            Err(bad) => prop_assert!(bad.message.starts_with(measurement.label)),
        }
    }

    #[test]
    fn near_numbers_are_read_or_refused(place in 0..100usize, typed in "[-+0-9./, ½\"inmthoulbfpsar]{0,14}", sure: bool) {
        let all: Vec<_> = measurements().collect();
        let measurement = all[place % all.len()];
        let habit = Habit { length: LengthHabit::Thou, torque: TorqueHabit::NewtonMetre, pressure: PressureHabit::Bar };
        match read(measurement, &typed, habit, sure) {
            Ok(read) => prop_assert!(measurement.possible.holds(read.value) && read.typed == typed.trim()),
            Err(bad) => {
                prop_assert!(bad.message.ends_with(['.', '?']), "{}", bad.message);
                for meant in bad.meant {
                    let again = super::read(measurement, &meant.typed, habit, false);
                    prop_assert!(again.is_ok(), "{typed}: {meant:?}: {again:?}");
                }
            }
        }
    }

    #[test]
    fn no_size_brings_it_down(typed in "[-+0-9./, ½\"inmthou]{0,14}") {
        if let Ok(size) = read_size("size", &typed, Habit::default()) {
            prop_assert!((0.0..1.0).contains(&size));
        }
    }
}
