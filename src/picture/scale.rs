//! From numbers to places along an axis, with round numbers at its ticks.

use crate::quantity::{One, Quantity};

/// How many ticks are aimed at.
const TICKS: f64 = 5.0;

/// Beyond this nothing is drawn: no picture of this trade comes near.
const FARTHEST: f64 = 1e12;

/// An axis from one round number to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    from: f64,
    step: f64,
    steps: u32,
}

impl Scale {
    /// The round numbers that hold all of these, with about five steps between them.
    ///
    /// What is no number is passed over; of nothing, or of one number, it makes an axis all the same.
    pub fn holding(values: impl IntoIterator<Item = f64>) -> Self {
        let sound = values.into_iter().filter(|value| value.is_finite()).map(|value| value.clamp(-FARTHEST, FARTHEST));
        let (least, most) = sound.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), value| {
            (f64::min(least, value), f64::max(most, value))
        });
        let (least, most) = if least > most { (0.0, 1.0) } else { (least, most) };
        let span = if most - least > 1e-9 { most - least } else { least.abs().max(1e-3) };
        let step = round_step(span / TICKS);
        let from = (least / step + 1e-9).floor();
        let steps = (most / step - from - 1e-9).ceil().clamp(1.0, 20.0);
        Self { from: from * step, step, steps: steps as u32 }
    }

    /// Where a value lies along the axis, 0 to 1; what lies outside is at its end.
    pub fn share(&self, value: f64) -> f64 {
        let share = (value - self.from) / (self.step * f64::from(self.steps));
        if share.is_nan() { 0.0 } else { share.clamp(0.0, 1.0) }
    }

    /// The lowest number on it.
    pub const fn least(&self) -> f64 {
        self.from
    }

    /// The highest number on it.
    pub fn most(&self) -> f64 {
        self.from + self.step * f64::from(self.steps)
    }

    /// Every tick, with its number as printed.
    pub fn ticks(&self) -> impl Iterator<Item = (f64, String)> + use<> {
        let Self { from, step, steps } = *self;
        let places = places(step);
        (0..=steps).map(move |nth| {
            let value = from + step * f64::from(nth);
            let printed = Quantity::<One>::new(value);
            (value, if places == 0 { printed.to_whole() } else { printed.to_places(places) })
        })
    }
}

/// The next of 1, 2, 2.5 and 5 times a power of ten.
fn round_step(least: f64) -> f64 {
    let power = 10f64.powf(least.log10().floor());
    let factors = [1.0, 2.0, 2.5, 5.0];
    factors.into_iter().map(|factor| factor * power).find(|step| *step >= least * (1.0 - 1e-9)).unwrap_or(10.0 * power)
}

/// Decimals that tell neighbouring ticks apart.
fn places(step: f64) -> usize {
    let whole = |places: usize| {
        let many = step * 10f64.powi(places as i32);
        (many - many.round()).abs() < 1e-6 * many.max(1.0) && many >= 1.0 - 1e-6
    };
    (0..7).find(|places| whole(*places)).unwrap_or(7)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn printed(values: &[f64]) -> Vec<String> {
        Scale::holding(values.iter().copied()).ticks().map(|(_, printed)| printed).collect()
    }

    #[test]
    fn ticks_are_round_numbers_that_hold_everything() {
        assert_eq!(printed(&[0.0, 5200.0]), ["0", "2,000", "4,000", "6,000"]);
        assert_eq!(printed(&[0.0, 8000.0]), ["0", "2,000", "4,000", "6,000", "8,000"]);
        assert_eq!(printed(&[0.004, 0.021]), ["0.000", "0.005", "0.010", "0.015", "0.020", "0.025"]);
        assert_eq!(printed(&[0.0, 2.2]), ["0.0", "0.5", "1.0", "1.5", "2.0", "2.5"]);
        assert_eq!(printed(&[]), printed(&[0.0, 1.0]), "of nothing");
        assert!(printed(&[7.0]).len() >= 2, "of one number");
    }

    proptest! {
        #[test]
        fn every_number_lies_between_the_ends(values in proptest::collection::vec(-1e9..1e9f64, 1..8)) {
            let scale = Scale::holding(values.iter().copied());
            let slack = (scale.most() - scale.least()) * 1e-6;
            for value in values {
                prop_assert!(scale.least() <= value + slack && value <= scale.most() + slack, "{value} in {scale:?}");
            }
            let ticks: Vec<_> = scale.ticks().collect();
            prop_assert!((2..=9).contains(&ticks.len()), "{ticks:?}");
            prop_assert!(ticks.windows(2).all(|pair| pair[0].1 != pair[1].1), "{ticks:?}");
        }

        #[test]
        fn no_number_brings_it_down(values in proptest::collection::vec(proptest::num::f64::ANY, 0..5)) {
            let scale = Scale::holding(values.iter().copied());
            prop_assert!(scale.least() < scale.most());
            prop_assert!(values.iter().all(|value| (0.0..=1.0).contains(&scale.share(*value))));
        }
    }
}
