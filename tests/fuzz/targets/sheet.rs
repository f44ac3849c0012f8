//! What is read off an instrument, and the parts on the shelf.

use crate::{choice, is_said};
use endplay::plan::sheet::{Habit, LengthHabit, Measurement, PressureHabit, SetKind, TorqueHabit, measurements, read};

/// A reading: a letter for the measurement, one for the shop's habit, then what was typed.
pub fn reading(text: &str) {
    let all: Vec<&Measurement> = measurements().collect();
    let Some((measurement, rest)) = choice(text, &all) else { return };
    let Some((habit, typed)) = habit(rest) else { return };
    for sure in [false, true] {
        match read(measurement, typed, habit, sure) {
            Ok(reading) => {
                assert!(measurement.possible.holds(reading.value), "{typed}: {reading:?}");
                assert_eq!(read(measurement, &reading.typed, habit, sure), Ok(reading), "{typed}");
            }
            Err(bad) => {
                is_said(&bad.message);
                assert!(!(sure && bad.possible), "{typed}: {bad:?}");
                for meant in &bad.meant {
                    let taken = read(measurement, &meant.typed, habit, true);
                    assert!(
                        taken.is_ok(),
                        "{}: {typed}: {meant:?} is offered and refused: {taken:?}",
                        measurement.name
                    );
                }
            }
        }
    }
}

/// A part of a set: a letter for the set, one for the habit, then size, tolerance and mark on three lines.
pub fn part(text: &str) {
    let Some((set, rest)) = choice(text, SetKind::ALL) else { return };
    let Some((habit, rest)) = habit(rest) else { return };
    let mut lines = rest.splitn(3, '\n');
    let mut line = || lines.next().unwrap_or_default();
    let (size, other, mark) = (line(), line(), line());
    match set.read_part(1, (size, other, mark), habit) {
        Ok(part) => {
            assert!(!part.say(set).is_empty());
            let again = set.read_part(1, (&part.typed, &part.other_typed, &part.mark), habit);
            assert_eq!(again, Ok(part), "{text}");
        }
        Err(wrong) => {
            assert!(!wrong.is_empty(), "{text}");
            wrong.iter().for_each(|(_, message)| is_said(message));
        }
    }
}

fn habit(text: &str) -> Option<(Habit, &str)> {
    let lengths = [LengthHabit::Inch, LengthHabit::Thou, LengthHabit::Millimetre];
    let (length, rest) = choice(text, &lengths)?;
    let metric = length == LengthHabit::Millimetre;
    let torque = if metric { TorqueHabit::NewtonMetre } else { TorqueHabit::PoundFoot };
    let pressure = if metric { PressureHabit::Bar } else { PressureHabit::Psi };
    Some((Habit { length, torque, pressure }, rest))
}
