//! Quarter-mile estimates from power and weight, with how far to believe them.
//!
//! Both go with the cube root of power over weight. The constants differ from
//! author to author and car to car, so they are a shop setting and shown with
//! their source. No estimate here is better than 5 % either way, and that is
//! the spread of well-driven cars: a bad start is worth more.

use crate::quantity::{Horsepower, MilePerHour, One, PoundMass, Quantity, Second, Unit};

/// How far an estimate may be off either way, 0.05.
pub const BAND: Quantity<One> = Quantity::new(0.05);

/// Constants of one author: mph = speed × ∛(hp / lb), seconds = time × ∛(lb / hp).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Constants {
    /// Of the trap speed.
    pub speed: f64,
    /// Of the elapsed time.
    pub time: f64,
    /// Where they come from.
    pub source: &'static str,
}

/// What no car can beat: all power at the road from standstill on, nothing lost. v = ∛(3 P s / m), t = 1.5 s / v.
pub const IDEAL: Constants =
    Constants { speed: 281.10, time: 4.8026, source: "physics: constant power, no loss; no car is faster" };

/// Trap speed as a teaching book of physics measured it, 225, the time set so that speed × time stays that of [`IDEAL`].
///
/// The book gives no constant for time; 6.0 follows from 1,350 / 225 (derived).
pub const MEASURED: Constants = Constants {
    speed: 225.0,
    time: 6.0,
    source: "speed: In Praise of Simple Physics, p. 33; time: derived from 1,350 mph × s",
};

/// An estimate with its band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate<U: Unit> {
    /// The middle.
    pub about: Quantity<U>,
    /// 5 % less.
    pub least: Quantity<U>,
    /// 5 % more.
    pub most: Quantity<U>,
}

impl<U: Unit> Estimate<U> {
    fn around(about: Quantity<U>) -> Self {
        Self { about, least: about * (1.0 - BAND.value()), most: about * (1.0 + BAND.value()) }
    }
}

/// Speed at the end of the quarter mile. Power at the crank, weight with driver; both above nought.
pub fn trap_speed(
    constants: Constants,
    power: Quantity<Horsepower>,
    weight: Quantity<PoundMass>,
) -> Estimate<MilePerHour> {
    Estimate::around(Quantity::new(constants.speed * (power.value() / weight.value()).cbrt()))
}

/// Time over the quarter mile from standstill. Power and weight as for [`trap_speed`].
pub fn elapsed_time(
    constants: Constants,
    power: Quantity<Horsepower>,
    weight: Quantity<PoundMass>,
) -> Estimate<Second> {
    Estimate::around(Quantity::new(constants.time * (weight.value() / power.value()).cbrt()))
}

/// Power that a trap speed speaks of: weight × (mph / constant)³.
///
/// An error in the speed counts three times: 5 % of speed is 16 % of power.
pub fn power_from_speed(
    constants: Constants,
    trap: Quantity<MilePerHour>,
    weight: Quantity<PoundMass>,
) -> Quantity<Horsepower> {
    Quantity::new(weight.value() * (trap.value() / constants.speed).powi(3))
}

/// What a customer's slip says about itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// Speed and time belong together.
    Plausible,
    /// Time too long for the speed: a bad start, or a typing error.
    SlowStart,
    /// Time too short for the speed: lifted before the line, or a typing error.
    SlowFinish,
}

/// Speed × time of an ordinary run, 1,340 to 1,450 mph × s; it does not depend on power or weight (memory, medium).
pub const USUAL_PRODUCT: [f64; 2] = [1340.0, 1450.0];

/// Holds a slip's trap speed against its time.
pub fn slip(trap: Quantity<MilePerHour>, time: Quantity<Second>) -> Slip {
    let product = trap.value() * time.value();
    if product > USUAL_PRODUCT[1] {
        Slip::SlowStart
    } else if product < USUAL_PRODUCT[0] {
        Slip::SlowFinish
    } else {
        Slip::Plausible
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    /// Speed and time of a body pushed by constant power, stepped through time.
    ///
    /// Power is force × speed, so v dv/dt = P/m; started at a crawl, where time hardly counts.
    fn run(horsepower: f64, pounds: f64) -> (f64, f64) {
        let share = horsepower * 550.0 * 32.174_048_56 / pounds;
        let acceleration = |speed: f64| share / speed;
        let (mut speed, mut way, mut time) = (1.0_f64, 1.0 / (3.0 * share), 1.0 / (2.0 * share));
        let step = 5e-4;
        while way < 1320.0 {
            let middle = speed + acceleration(speed) * step / 2.0;
            let next = speed + acceleration(middle) * step;
            way += (speed + 4.0 * middle + next) / 6.0 * step;
            (speed, time) = (next, time + step);
        }
        (speed * 3600.0 / 5280.0, time)
    }

    #[test]
    fn a_slip_is_held_against_itself() {
        let told = |mph: f64, seconds: f64| slip(Quantity::new(mph), Quantity::new(seconds));
        assert_eq!(told(115.0, 12.0), Slip::Plausible);
        assert_eq!(told(134.0, 10.0), Slip::Plausible);
        assert_eq!(told(133.9, 10.0), Slip::SlowFinish);
        assert_eq!(told(145.0, 10.0), Slip::Plausible);
        assert_eq!(told(145.1, 10.0), Slip::SlowStart);
        assert_eq!(told(115.0, 21.0), Slip::SlowStart, "12 typed the wrong way round");
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(32))]

        #[test]
        fn stepping_through_the_run_gives_the_ideal_figures(hp in 150.0..1500.0f64, lb in 1800.0..5000.0f64) {
            let (mph, seconds) = run(hp, lb);
            let [hp, lb] = [hp, lb];
            let speed = trap_speed(IDEAL, Quantity::new(hp), Quantity::new(lb)).about.value();
            let time = elapsed_time(IDEAL, Quantity::new(hp), Quantity::new(lb)).about.value();
            prop_assert!((speed / mph - 1.0).abs() < 1e-3 && (time / seconds - 1.0).abs() < 1e-3, "{mph} {seconds}");
        }

        #[test]
        fn more_power_is_faster_and_the_product_stays(hp in 150.0..1500.0f64, lb in 1800.0..5000.0f64, more in 1.01..1.5f64) {
            for constants in [IDEAL, MEASURED] {
                let at = |hp: f64| (trap_speed(constants, Quantity::new(hp), Quantity::new(lb)), elapsed_time(constants, Quantity::new(hp), Quantity::new(lb)));
                let ((slow, long), (fast, short)) = (at(hp), at(hp * more));
                prop_assert!(fast.about > slow.about && short.about < long.about);
                prop_assert!(same(slow.about.value() * long.about.value(), constants.speed * constants.time));
                prop_assert!(same(slow.most.value(), slow.about.value() * 1.05) && same(long.least.value(), long.about.value() * 0.95));
                prop_assert!(same(power_from_speed(constants, slow.about, Quantity::new(lb)).value(), hp));
            }
        }
    }
}
