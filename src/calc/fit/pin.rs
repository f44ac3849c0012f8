//! The apply pin of a band: each pin belongs to a window of the gauge.

use super::{inches, whole};
use crate::quantity::{Inch, Quantity};

/// A pin and the gauge readings it belongs to, both ends among them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pin {
    /// The lowest reading.
    pub from: Quantity<Inch>,
    /// The highest reading.
    pub to: Quantity<Inch>,
}

/// The pin to fit, by its place in the set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PinPick {
    /// The reading falls in this pin's window.
    Fits(usize),
    /// It falls in no window; this one is nearest, and the reading is so far past it: above nought too high.
    NoneFits {
        /// The nearest.
        nearest: usize,
        /// How far it is outside.
        off: Quantity<Inch>,
    },
    /// There is no pin to choose from.
    NoPins,
}

/// The pin whose window the gauge reading falls in; where two windows meet, the one whose middle is nearer.
pub fn pick_pin(reading: Quantity<Inch>, pins: &[Pin]) -> PinPick {
    let reading = whole(reading);
    let off = |pin: &Pin| {
        let (from, to) = (whole(pin.from), whole(pin.to));
        if reading > to { reading - to } else { (reading - from).min(0) }
    };
    let rank = |(_, pin): &(usize, &Pin)| (off(pin).abs(), (2 * reading - whole(pin.from) - whole(pin.to)).abs());
    match pins.iter().enumerate().min_by_key(rank) {
        None => PinPick::NoPins,
        Some((place, pin)) if off(pin) == 0 => PinPick::Fits(place),
        Some((nearest, pin)) => PinPick::NoneFits { nearest, off: inches(off(pin)) },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tenths(size: i32) -> Quantity<Inch> {
        Quantity::new(f64::from(size) / 10_000.0)
    }

    fn pins(windows: &[(i32, i32)]) -> Vec<Pin> {
        windows.iter().map(|(from, to)| Pin { from: tenths(*from), to: tenths(*to) }).collect()
    }

    #[test]
    fn the_pin_whose_window_holds_the_reading_is_taken() {
        // Three lengths, as the trade knows them (memory, medium); the windows are the shop's own.
        let three = pins(&[(0, 600), (600, 1200), (1200, 1800)]);
        for (reading, pin) in [(300, 0), (600, 0), (601, 1), (1199, 1), (1800, 2)] {
            assert_eq!(pick_pin(tenths(reading), &three), PinPick::Fits(pin), "{reading}");
        }
        assert_eq!(pick_pin(tenths(1801), &three), PinPick::NoneFits { nearest: 2, off: tenths(1) });
        assert_eq!(pick_pin(tenths(-20), &three), PinPick::NoneFits { nearest: 0, off: tenths(-20) });
        assert_eq!(pick_pin(tenths(20), &[]), PinPick::NoPins);
    }

    #[test]
    fn where_two_windows_share_a_reading_the_nearer_middle_wins() {
        // The middles are 0.030 and 0.085; 0.0575 lies between them.
        let overlapping = pins(&[(0, 600), (500, 1200)]);
        for (reading, pin) in [(500, 0), (574, 0), (576, 1), (600, 1)] {
            assert_eq!(pick_pin(tenths(reading), &overlapping), PinPick::Fits(pin), "{reading}");
        }
    }

    proptest! {
        #[test]
        fn a_pin_is_refused_only_when_no_window_holds_the_reading(
            reading in -200..3000i32, windows in prop::collection::vec((0..2500i32, 1..500i32), 1..6),
        ) {
            let windows: Vec<_> = windows.into_iter().map(|(from, wide)| (from, from + wide)).collect();
            let holds = |(from, to): &(i32, i32)| (*from..=*to).contains(&reading);
            match pick_pin(tenths(reading), &pins(&windows)) {
                PinPick::Fits(pin) => prop_assert!(holds(&windows[pin])),
                PinPick::NoneFits { nearest, off } => {
                    prop_assert!(!windows.iter().any(holds));
                    let miss = |(from, to): &(i32, i32)| (from - reading).max(reading - to);
                    let least = windows.iter().map(miss).min().expect("a window");
                    prop_assert_eq!(miss(&windows[nearest]), least);
                    prop_assert_eq!(whole(off).abs(), whole(tenths(least)));
                }
                PinPick::NoPins => prop_assert!(false),
            }
        }
    }
}
