//! One measurement out of several readings of the same thing.

use crate::quantity::{Quantity, Unit, written_down};

/// Readings that agree.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settled<U: Unit> {
    /// Their middle, rounded to what the instrument shows.
    pub value: Quantity<U>,
    /// Highest − lowest.
    pub spread: Quantity<U>,
}

/// Readings that do not agree: they are no measurement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moves<U: Unit> {
    /// The lowest.
    pub low: Quantity<U>,
    /// The highest.
    pub high: Quantity<U>,
}

/// Takes the mean of readings that lie no further apart than `may_move`; none without any reading.
///
/// `step` is what the instrument can show, above nought: the mean is rounded to it, so that it claims no digit that
/// was not read. A needle that moves further than the tolerance from one reading to the next is not measuring the
/// part, but how it was held (common practice).
///
/// # Errors
/// [`Moves`] with the two ends.
pub fn settle<U: Unit>(
    readings: &[Quantity<U>],
    may_move: Quantity<U>,
    step: Quantity<U>,
) -> Option<Result<Settled<U>, Moves<U>>> {
    let mut sorted: Vec<f64> = readings.iter().map(|reading| reading.value()).collect();
    // The sum of the same numbers in another order can differ in its last digit.
    sorted.sort_by(f64::total_cmp);
    let (low, high) = (*sorted.first()?, *sorted.last()?);
    if written_down(high - low) > may_move.value() {
        return Some(Err(Moves { low: Quantity::new(low), high: Quantity::new(high) }));
    }
    if low == high {
        return Some(Ok(Settled { value: Quantity::new(low), spread: Quantity::new(0.0) }));
    }
    let mean = sorted.iter().sum::<f64>() / sorted.len() as f64;
    // Divided by a whole number of steps in one, so that 0.0123 comes out as it is written.
    let in_one = (1.0 / step.value()).round();
    let value = if in_one >= 1.0 { (mean * in_one).round() / in_one } else { mean };
    let value = value.clamp(low, high);
    Some(Ok(Settled { value: Quantity::new(value), spread: Quantity::new(high - low) }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Inch, Psi};
    use proptest::prelude::*;

    fn of(readings: &[f64], may_move: f64) -> Option<Result<Settled<Inch>, Moves<Inch>>> {
        let readings: Vec<_> = readings.iter().map(|reading| Quantity::new(*reading)).collect();
        settle(&readings, Quantity::new(may_move), Quantity::new(0.0001))
    }

    #[test]
    fn readings_within_the_tolerance_are_one_number_and_others_none() {
        let settled = of(&[0.012, 0.013, 0.012], 0.002).expect("readings").expect("they agree");
        assert_eq!(settled.value.value(), 0.0123);
        assert!((settled.spread.value() - 0.001).abs() < 1e-12);
        for just in [[0.012, 0.014], [0.011, 0.013], [0.005, 0.007], [0.3 / 25.4, 0.3508 / 25.4]] {
            assert!(of(&just, 0.002).expect("readings").is_ok(), "{just:?} lie just as far apart as allowed");
        }
        let moves = of(&[0.012, 0.0141, 0.013], 0.002).expect("readings").expect_err("they do not agree");
        assert_eq!((moves.low.value(), moves.high.value()), (0.012, 0.0141));
        assert_eq!(of(&[], 0.002), None);
    }

    #[test]
    fn what_was_read_once_stays_as_it_was_read_and_a_mean_stays_among_its_readings() {
        for readings in [&[0.01234][..], &[0.01234, 0.01234]] {
            let settled = of(readings, 0.002).expect("readings").expect("they agree");
            assert_eq!((settled.value.value(), settled.spread.value()), (0.01234, 0.0), "{readings:?}");
        }
        let narrow = of(&[0.01231, 0.01233], 0.002).expect("readings").expect("they agree");
        assert_eq!(narrow.value.value(), 0.01231, "0.0123 lies below both");
        let coarse = settle(&[70.0, 80.0].map(Quantity::<Psi>::new), Quantity::new(20.0), Quantity::new(5.0));
        assert_eq!(coarse.expect("readings").expect("they agree").value.value(), 75.0);
    }

    #[test]
    fn a_gauge_that_counts_in_whole_numbers_gives_one() {
        let readings = [72.0, 73.0, 73.0].map(Quantity::<Psi>::new);
        let settled = settle(&readings, Quantity::new(5.0), Quantity::new(1.0)).expect("readings").expect("they agree");
        assert_eq!(settled.value.value(), 73.0, "and not 72.667, which no needle showed");
    }

    proptest! {
        #[test]
        fn the_number_lies_among_its_readings_in_whatever_order(
            mut readings in prop::collection::vec(0..2000i32, 1..6), turn in 0..6usize,
        ) {
            let read = |among: &[i32]| {
                let among: Vec<_> = among.iter().map(|reading| f64::from(*reading) / 10_000.0).collect();
                of(&among, 1.0).expect("readings").expect("all may move")
            };
            let settled = read(&readings);
            let (low, high) = (readings.iter().min().copied(), readings.iter().max().copied());
            let (low, high) = (f64::from(low.expect("one")) / 10_000.0, f64::from(high.expect("one")) / 10_000.0);
            prop_assert!(settled.value.value() >= low && settled.value.value() <= high);
            let turn = turn % readings.len();
            readings.rotate_left(turn);
            prop_assert_eq!(read(&readings), settled);
        }
    }
}
