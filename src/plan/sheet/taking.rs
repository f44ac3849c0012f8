//! One taking of a measurement: the readings as typed, and what they come to.

use super::entry::{Counts, Fit, Measurement};
use super::reading::{Bad, Meant, Read, read, read_size};
use super::scale::Habit;
use crate::calc::fit::settle;
use crate::quantity::{One, Quantity, written_down};

/// A measurement that was taken.
#[derive(Clone, Debug, PartialEq)]
pub struct Taking {
    /// Each reading.
    pub taken: Vec<Read>,
    /// What is in the unit, where a part is chosen by it.
    pub fitted: Vec<Read>,
    /// What the readings come to, in the scale's own unit, as it is written down.
    pub value: f64,
    /// How far apart they lie.
    pub spread: f64,
}

impl Taking {
    /// How far apart the numbers may lie that it could have come to: the spread of its readings, and all that readings may
    /// move while fewer were taken than are asked for. One reading knows nothing of its spread.
    pub fn unsure(&self, measurement: &Measurement) -> f64 {
        let few = self.taken.len() < measurement.readings;
        if few { self.spread.max(measurement.may_move) } else { self.spread }
    }
}

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrong {
    /// `r.1`, `r.2`, `fitted`.
    pub field: String,
    /// Why, in whole sentences.
    pub message: String,
    /// What was perhaps meant.
    pub meant: Vec<Meant>,
    /// Would it be taken if somebody said that it is so?
    pub possible: bool,
}

/// The field of a reading, counted from 1.
pub fn reading_field(nth: usize) -> String {
    format!("r.{nth}")
}

/// The most parts that can be fitted at once.
const MOST_FITTED: usize = 10;

/// Reads what was typed. Fields left empty are readings that were not taken; one there has to be.
///
/// # Errors
/// Everything that is wrong, field by field.
pub fn take(
    measurement: &Measurement,
    readings: &[String],
    fitted: &str,
    habit: Habit,
    sure: bool,
) -> Result<Taking, Vec<Wrong>> {
    let mut wrong = Vec::new();
    let mut taken = Vec::new();
    for (place, typed) in readings.iter().enumerate().filter(|(_, typed)| !typed.trim().is_empty()) {
        match read(measurement, typed, habit, sure) {
            Ok(read) => taken.push(read),
            Err(Bad { message, meant, possible }) => {
                wrong.push(Wrong { field: reading_field(place + 1), message, meant, possible });
            }
        }
    }
    let fitted = read_fitted(measurement.fit, fitted, habit).unwrap_or_else(|message| {
        wrong.push(refused("fitted", message));
        Vec::new()
    });
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let values: Vec<Quantity<One>> = taken.iter().map(|read| Quantity::new(read.value)).collect();
    let scale = measurement.scale;
    let may_move = if measurement.readings > 1 { measurement.may_move } else { 0.0 };
    match settle(&values, Quantity::new(may_move), Quantity::new(scale.step())) {
        None => {
            let message = format!("{}: type what the instrument shows.", measurement.label);
            Err(vec![refused(&reading_field(1), message)])
        }
        Some(Ok(settled)) => {
            let ends = values.iter().map(|read| read.value());
            let value = match measurement.counts {
                Counts::Mean => settled.value.value(),
                Counts::Least => ends.fold(f64::INFINITY, f64::min),
                Counts::Most => ends.fold(f64::NEG_INFINITY, f64::max),
            };
            let (value, spread) = (written_down(value), written_down(settled.spread.value()));
            Ok(Taking { taken, fitted, value, spread })
        }
        Some(Err(moves)) => {
            let message = format!(
                "{}: the readings go from {} to {}, and they may lie {} apart at the most. That is no measurement yet. \
                 See that the instrument stands fast and the part is pushed the same way each time, then read again.",
                measurement.label,
                scale.say(moves.low.value()),
                scale.say(moves.high.value()),
                scale.say(may_move)
            );
            Err(vec![refused(&reading_field(1), message)])
        }
    }
}

fn refused(field: &str, message: String) -> Wrong {
    Wrong { field: field.to_owned(), message, meant: Vec::new(), possible: false }
}

/// What is fitted now: one size, or for a pack all of them, `4 x 0.077` or one by one.
fn read_fitted(fit: Option<Fit>, typed: &str, habit: Habit) -> Result<Vec<Read>, String> {
    let typed = typed.trim();
    let (label, many) = match fit {
        _ if typed.is_empty() => return Ok(Vec::new()),
        Some(Fit::Washer(_)) => ("The washer that is in now", false),
        Some(Fit::Shims(_)) => ("The old pair", false),
        Some(Fit::Pack(_)) => ("The steels in the pack", true),
        Some(Fit::Pin(_) | Fit::OffsetDowels | Fit::Spacers) | None => return Ok(Vec::new()),
    };
    if typed.len() > 200 {
        return Err(format!("{label}: that is too long."));
    }
    let pieces: Vec<&str> = match (many, typed.contains([',', ';'])) {
        (false, _) => vec![typed],
        (true, true) => typed.split([',', ';']).map(str::trim).filter(|piece| !piece.is_empty()).collect(),
        (true, false) if typed.contains('x') => vec![typed],
        (true, false) => typed.split_whitespace().collect(),
    };
    let mut fitted = Vec::new();
    for piece in pieces {
        let (count, size) = match piece.split_once('x') {
            Some((count, size)) if many => {
                let read = count.trim().parse().ok().filter(|count| (1..=MOST_FITTED).contains(count));
                let message =
                    || format!("{label}: \u{201c}{piece}\u{201d} is not understood. Write it like 4 x 0.077.");
                (read.ok_or_else(message)?, size)
            }
            _ => (1, piece),
        };
        let value = read_size(label, size, habit)?;
        if value == 0.0 {
            return Err(format!("{label}: a part has some thickness. Measure it with a micrometer."));
        }
        let unit = habit.length.unit().symbol.to_owned();
        fitted.extend(std::iter::repeat_n(Read { value, typed: size.trim().to_owned(), unit }, count));
    }
    if fitted.len() > MOST_FITTED {
        return Err(format!("{label}: {MOST_FITTED} are the most."));
    }
    Ok(fitted)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::sheet::measurement_named;
    use proptest::prelude::*;

    fn taking(name: &str, readings: &[&str], fitted: &str) -> Result<Taking, Vec<Wrong>> {
        let readings: Vec<String> = readings.iter().map(|typed| (*typed).to_owned()).collect();
        take(measurement_named(name).expect("a measurement"), &readings, fitted, Habit::default(), false)
    }

    #[test]
    fn readings_that_agree_come_to_one_number_with_their_spread() {
        let taken = taking("front-end-play", &["0.012", "", "13 thou"], "0.073").expect("they agree");
        assert_eq!((taken.value, taken.taken.len()), (0.0125, 2));
        assert!((taken.spread - 0.001).abs() < 1e-12);
        assert_eq!(taken.fitted[0].value, 0.073);
    }

    #[test]
    fn a_converted_number_is_written_down_without_what_only_the_machine_sees() {
        let taken = taking("front-end-play", &["0.18 mm"], "").expect("a reading");
        assert_eq!((taken.value, taken.taken[0].value), (0.007_087, 0.18 / 25.4), "the full working stays");
        assert_eq!((taken.taken[0].typed.as_str(), taken.taken[0].unit.as_str()), ("0.18 mm", "mm"));
        let settled = taking("intermediate-clearance", &["0.4572 mm", "0.4572 mm"], "").expect("readings");
        assert_eq!((settled.value, settled.spread), (0.018, 0.0));
    }

    #[test]
    fn readings_that_move_are_no_measurement() {
        let wrong = taking("front-end-play", &["0.010", "0.012", "0.016"], "").expect_err("they move");
        assert_eq!(wrong[0].field, "r.1");
        assert!(wrong[0].message.contains("from 0.010 in to 0.016 in"), "{}", wrong[0].message);
        assert!(taking("front-end-play", &["0.010", "0.012"], "").is_ok(), "just as far as allowed");
    }

    #[test]
    fn where_it_is_read_at_several_places_the_worst_counts_and_no_mean_hides_it() {
        let gap = taking("converter-gap", &["0.045", "0.070", "0.076"], "").expect("readings");
        assert_eq!(gap.value, 0.045, "the mean, 0.0637, would pass");
        let face = taking("pump-face-clearance", &["0.0033", "0.0033", "0.0039"], "").expect("readings");
        assert_eq!(face.value, 0.0039, "the mean, 0.0035, would pass");
        assert_eq!(taking("pinion-play", &["0.010", "0.012"], "").expect("readings").value, 0.012);
        assert_eq!(taking("front-end-play", &["0.010", "0.012"], "").expect("readings").value, 0.011, "one play");
    }

    #[test]
    fn with_fewer_readings_than_are_asked_for_it_is_as_unsure_as_readings_may_be() {
        let play = measurement_named("front-end-play").expect("a measurement");
        let unsure = |readings: &[&str]| taking("front-end-play", readings, "").expect("readings").unsure(play);
        assert_eq!((unsure(&["0.012"]), unsure(&["0.012", "0.013"])), (play.may_move, play.may_move));
        assert_eq!(unsure(&["0.012", "0.013", "0.012"]), 0.001);
    }

    #[test]
    fn every_field_that_is_wrong_is_named() {
        let wrong = taking("front-end-play", &["0.012", "0.3", "x"], "thick").expect_err("three are wrong");
        let fields: Vec<_> = wrong.iter().map(|wrong| (wrong.field.as_str(), wrong.possible)).collect();
        assert_eq!(fields, [("r.2", true), ("r.3", false), ("fitted", false)]);
        assert_eq!(taking("front-end-play", &["", " "], "").expect_err("nothing typed")[0].field, "r.1");
    }

    #[test]
    fn the_steels_of_a_pack_are_typed_one_by_one_or_by_the_count() {
        for typed in ["4 x 0.077", "0.077 0.077 0.077 0.077", "0.077, 77 thou; 2x0.077"] {
            let taken = taking("forward-clearance", &["0.05"], typed).expect(typed);
            assert_eq!(taken.fitted.iter().map(|read| read.value).collect::<Vec<_>>(), [0.077; 4], "{typed}");
        }
        for typed in ["40 x 0.077", "x 0.077", "0.077 0", "9 x 0.077, 9 x 0.08"] {
            assert_eq!(taking("forward-clearance", &["0.05"], typed).expect_err(typed)[0].field, "fitted", "{typed}");
        }
    }

    proptest! {
        #[test]
        fn no_text_brings_it_down(readings in prop::collection::vec("\\PC{0,10}", 0..4), fitted in "[x0-9., ;mthou½-]{0,20}") {
            let pack = measurement_named("direct-clearance").expect("a measurement");
            if let Ok(taken) = take(pack, &readings, &fitted, Habit::default(), true) {
                prop_assert!(pack.possible.holds(taken.value) && taken.fitted.len() <= MOST_FITTED);
            }
        }
    }
}
