//! Road speed in every gear, and where the engine falls to at a shift.

use super::tire::{engine_speed, road_speed};
use crate::quantity::{Inch, MilePerHour, One, Quantity, Rpm};

/// What turns between engine and road besides the gear.
#[derive(Clone, Copy, Debug)]
pub struct Final {
    /// Axle ratio.
    pub axle: Quantity<One>,
    /// Tire diameter, measured loaded.
    pub tire: Quantity<Inch>,
}

/// One shift at one engine speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// Ratio before.
    pub from: Quantity<One>,
    /// Ratio after.
    pub to: Quantity<One>,
    /// Road speed, the same before and after.
    pub road: Quantity<MilePerHour>,
    /// Engine speed just before.
    pub before: Quantity<Rpm>,
    /// Engine speed once the shift is over, the converter holding as before.
    pub after: Quantity<Rpm>,
}

impl Shift {
    /// By how much the engine falls; below nought for a shift down.
    pub fn drop(&self) -> Quantity<Rpm> {
        self.before - self.after
    }

    /// Share of the engine speed that is left, the step of the gears: to / from.
    pub fn step(&self) -> Quantity<One> {
        Quantity::new(self.to / self.from)
    }
}

/// Engine speed after a shift: before × to / from.
///
/// Road speed and slip stay through the shift. A converter that flashes leaves
/// the engine higher. Source: gear arithmetic.
pub fn recovers_to(before: Quantity<Rpm>, from: Quantity<One>, to: Quantity<One>) -> Quantity<Rpm> {
    before * (to / from)
}

/// The shifts through a list of ratios, each at the same engine speed; no slip.
pub fn shifts(ratios: &[Quantity<One>], at: Quantity<Rpm>, last: Final) -> Vec<Shift> {
    let pairs = ratios.iter().zip(ratios.iter().skip(1));
    pairs
        .map(|(&from, &to)| Shift {
            from,
            to,
            road: road_speed(at, last.axle, from, last.tire),
            before: at,
            after: recovers_to(at, from, to),
        })
        .collect()
}

/// Road speed in each gear at one engine speed; no slip.
pub fn speeds(ratios: &[Quantity<One>], at: Quantity<Rpm>, last: Final) -> Vec<Quantity<MilePerHour>> {
    ratios.iter().map(|&gear| road_speed(at, last.axle, gear, last.tire)).collect()
}

/// Engine speed at a road speed with a converter that slips: without slip / (1 − slip).
///
/// Slip is the share of engine turns that do not come out, 0 to below 1;
/// 0.03 to 0.08 without lockup (common practice).
pub fn engine_speed_slipping(
    road: Quantity<MilePerHour>,
    gear: Quantity<One>,
    slip: Quantity<One>,
    last: Final,
) -> Quantity<Rpm> {
    engine_speed(road, last.axle, gear, last.tire) * (1.0 / (1.0 - slip.value()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn ratios(values: &[f64]) -> Vec<Quantity<One>> {
        values.iter().copied().map(Quantity::new).collect()
    }

    fn last() -> Final {
        Final { axle: Quantity::new(3.90), tire: Quantity::new(26.0) }
    }

    #[test]
    fn every_gear_but_the_last_has_a_shift() {
        let found = shifts(&ratios(&[2.48, 1.48, 1.0]), Quantity::new(6500.0), last());
        let after: Vec<f64> = found.iter().map(|shift| shift.after.value().round()).collect();
        assert_eq!(after, [3879.0, 4392.0]);
        assert!(same(found[1].drop().value(), 6500.0 - 6500.0 / 1.48));
        assert!(same(found[1].step().value(), 1.0 / 1.48));
        assert!(shifts(&ratios(&[1.0]), Quantity::new(6500.0), last()).is_empty());
        assert!(shifts(&[], Quantity::new(6500.0), last()).is_empty());
        let down = shifts(&ratios(&[1.0, 1.48]), Quantity::new(3000.0), last());
        assert!(down[0].drop().value() < 0.0, "a shift down raises the engine");
    }

    proptest! {
        #[test]
        fn the_road_does_not_feel_the_shift(rpm in 1500.0..8000.0f64, from in 1.2..4.0f64, to in 0.6..1.2f64) {
            let shift = shifts(&ratios(&[from, to]), Quantity::new(rpm), last())[0];
            let road_after = road_speed(shift.after, last().axle, shift.to, last().tire);
            prop_assert!(same(road_after.value(), shift.road.value()));
            prop_assert!(shift.after < shift.before, "a taller gear turns the engine slower");
        }

        #[test]
        fn a_taller_gear_goes_faster_at_the_same_engine_speed(rpm in 1500.0..8000.0f64, gear in 1.0..4.0f64) {
            let both = speeds(&ratios(&[gear, gear * 0.7]), Quantity::new(rpm), last());
            prop_assert!(both[1] > both[0]);
            let undone = engine_speed_slipping(both[0], Quantity::new(gear), Quantity::new(0.0), last());
            prop_assert!(same(undone.value(), rpm));
        }

        #[test]
        fn of_the_turns_put_in_the_slip_is_lost(mph in 20.0..120.0f64, slip in 0.0..0.5f64) {
            let engine = |slip| engine_speed_slipping(Quantity::new(mph), Quantity::new(1.0), Quantity::new(slip), last()).value();
            prop_assert!(same(engine(slip) - slip * engine(slip), engine(0.0)));
        }
    }
}
