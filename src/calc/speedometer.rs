//! Speedometer drive: driven teeth, reading error, what would put it right.
//!
//! Signs: a positive error reads high, so the driver goes slower than shown.

use super::tire::{SHOP_TURNS, turns_per_mile_shop};
use crate::quantity::{Hertz, Inch, MilePerHour, One, Quantity, TurnPerMile};

/// Turns a mile for which a cable speedometer is made: 60 mph at 1,000 rpm (looked up; memory, high).
pub const CABLE_TURNS: Quantity<TurnPerMile> = Quantity::new(1000.0);

/// Driven teeth that would read exactly: drive × axle × 20,168 / tire / 1,000.
///
/// Any positive sizes; the tire measured loaded. For a cable made for
/// [`CABLE_TURNS`]. Source: gear arithmetic, constants common practice.
pub fn exact_driven_teeth(drive_teeth: u32, axle_ratio: Quantity<One>, tire: Quantity<Inch>) -> Quantity<One> {
    Quantity::new(f64::from(drive_teeth) * axle_ratio.value() * SHOP_TURNS / tire.value() / CABLE_TURNS.value())
}

/// Reading error of a fitted gear: exact / fitted − 1, so `0.10` shows 66 at a true 60.
///
/// Source: exact; fewer driven teeth turn the cable faster.
pub fn error(exact: Quantity<One>, fitted_teeth: u32) -> Quantity<One> {
    Quantity::new(exact.value() / f64::from(fitted_teeth) - 1.0)
}

/// What the dial shows at a true speed.
pub fn shown(true_speed: Quantity<MilePerHour>, error: Quantity<One>) -> Quantity<MilePerHour> {
    true_speed * (1.0 + error.value())
}

/// How many mph the dial is off at a true 60; the figure a customer understands.
pub fn error_at_60(error: Quantity<One>) -> Quantity<MilePerHour> {
    Quantity::new(60.0 * error.value())
}

/// Cable turns out per turn in that a ratio box needs to put the reading right: fitted / exact.
///
/// Source: exact, the reciprocal of 1 + error.
pub fn correction_ratio(exact: Quantity<One>, fitted_teeth: u32) -> Quantity<One> {
    Quantity::new(f64::from(fitted_teeth) / exact.value())
}

/// Turns the cable makes in a mile with the gears as fitted.
pub fn cable_turns(
    drive_teeth: u32,
    driven_teeth: u32,
    axle_ratio: Quantity<One>,
    tire: Quantity<Inch>,
) -> Quantity<TurnPerMile> {
    turns_per_mile_shop(tire) * axle_ratio.value() * (f64::from(drive_teeth) / f64::from(driven_teeth))
}

/// Pulses a second of a sender: pulses a mile × mph / 3,600.
///
/// Four pulses a cable turn make 4,000 a mile (looked up: several vehicle makers' manuals).
pub fn pulse_rate(pulses_per_mile: f64, speed: Quantity<MilePerHour>) -> Quantity<Hertz> {
    Quantity::new(pulses_per_mile * speed.value() / 3600.0)
}

/// Driven teeth that would read exactly, from turns a mile and a cable of any standard: drive × axle × turns / cable turns.
///
/// For a tire whose turns a mile are published or counted, which is better than a diameter. Source: gear arithmetic.
pub fn exact_driven_teeth_at(
    drive_teeth: u32,
    axle_ratio: Quantity<One>,
    tire: Quantity<TurnPerMile>,
    cable: Quantity<TurnPerMile>,
) -> Quantity<One> {
    Quantity::new(f64::from(drive_teeth) * axle_ratio.value() * (tire / cable))
}

/// A drive gear with a driven gear, and the reading error of the two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// Teeth of the drive gear, on the output shaft.
    pub drive_teeth: u32,
    /// Teeth of the driven gear, at the cable.
    pub driven_teeth: u32,
    /// Their reading error.
    pub error: Quantity<One>,
}

/// Every pair from the gears the shop has, the nearest reading first.
///
/// `turns_out` is how often the output shaft turns in a mile: axle × tire turns.
/// Gears of no teeth are passed over, doubles counted once. Of two equally far
/// off the one that reads high comes first, as in [`best_driven`], then the one with fewer drive teeth.
pub fn best_pairs(turns_out: Quantity<TurnPerMile>, drive: &[u32], driven: &[u32]) -> Vec<Pair> {
    let mut pairs: Vec<Pair> = Vec::new();
    for &drive_teeth in drive.iter().filter(|teeth| **teeth > 0) {
        let exact = exact_driven_teeth_at(drive_teeth, Quantity::new(1.0), turns_out, CABLE_TURNS);
        for &driven_teeth in driven.iter().filter(|teeth| **teeth > 0) {
            let pair = Pair { drive_teeth, driven_teeth, error: error(exact, driven_teeth) };
            if !pairs.contains(&pair) {
                pairs.push(pair);
            }
        }
    }
    let off = |pair: &Pair| pair.error.value().abs();
    pairs.sort_by(|left, right| {
        let high_first = right.error.value().total_cmp(&left.error.value());
        off(left).total_cmp(&off(right)).then(high_first).then(left.drive_teeth.cmp(&right.drive_teeth))
    });
    pairs
}

/// Pulses a kilometre from pulses a mile: / 1.609344.
pub fn pulses_per_kilometre(pulses_per_mile: f64) -> f64 {
    pulses_per_mile / KILOMETRES_IN_MILE
}

/// Kilometres in a statute mile; definition.
pub(super) const KILOMETRES_IN_MILE: f64 = 1.609_344;

/// The gear on the shelf that reads nearest to true, and its error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// Teeth of the driven gear.
    pub driven_teeth: u32,
    /// Its reading error.
    pub error: Quantity<One>,
}

/// Chooses among the driven gears that fit the housing the one with the least error either way.
///
/// `None` when no usable gear is offered (gears of no teeth are passed over).
/// Of two equally far off, the one that reads high: a driver who is misled
/// should be misled to the slow side.
pub fn best_driven(exact: Quantity<One>, on_hand: &[u32]) -> Option<Choice> {
    on_hand
        .iter()
        .filter(|teeth| **teeth > 0)
        .map(|&driven_teeth| Choice { driven_teeth, error: error(exact, driven_teeth) })
        .min_by(|left, right| {
            let off = |choice: &Choice| choice.error.value().abs();
            off(left).total_cmp(&off(right)).then(right.error.value().total_cmp(&left.error.value()))
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn exact(drive: u32, axle: f64, tire: f64) -> Quantity<One> {
        exact_driven_teeth(drive, Quantity::new(axle), Quantity::new(tire))
    }

    #[test]
    fn one_tooth_either_side_changes_the_sign_of_the_error() {
        let needed = exact(8, 3.73, 28.5);
        assert!(error(needed, 21).value() > 0.0, "21 is just short of 21.1, so it reads high");
        assert!(error(needed, 22).value() < 0.0, "22 is just over, so it reads low");
    }

    #[test]
    fn the_best_gear_is_the_nearest_reading_not_the_rounded_number() {
        let chosen =
            |exact: f64, on_hand: &[u32]| best_driven(Quantity::new(exact), on_hand).map(|gear| gear.driven_teeth);
        assert_eq!(chosen(18.277, &[17, 18, 19, 20]), Some(18));
        assert_eq!(chosen(21.584, &[20, 21, 22]), Some(22));
        // Half way between two gears the larger one is the nearer reading.
        assert_eq!(chosen(18.5, &[18, 19]), Some(19));
        assert_eq!(chosen(18.45, &[18, 19]), Some(18));
        assert_eq!(chosen(30.0, &[17, 18]), Some(18), "nothing near: still the least bad, with its error");
        assert_eq!(chosen(20.0, &[]), None);
        assert_eq!(chosen(20.0, &[0]), None, "a gear without teeth is no gear");
    }

    #[test]
    fn the_best_pair_may_want_another_drive_gear() {
        // 3.73 and 700 turns: 2,611 a mile. 7 teeth want 18.277, 8 want 20.888.
        let pairs = best_pairs(Quantity::new(3.73 * 700.0), &[7, 8, 8, 0], &[17, 18, 21, 0]);
        let order: Vec<_> = pairs.iter().map(|pair| (pair.drive_teeth, pair.driven_teeth)).collect();
        assert_eq!(order[..2], [(8, 21), (7, 18)]);
        assert_eq!(order.len(), 6, "doubles and gears without teeth are left out: {order:?}");
        assert!(pairs.is_sorted_by(|left, right| left.error.abs() <= right.error.abs()));
        assert!(best_pairs(Quantity::new(2611.0), &[], &[17]).is_empty());
        // The same reading from two pairs: the one with fewer drive teeth first.
        let same_step = best_pairs(Quantity::new(2500.0), &[8, 4], &[20, 10]);
        assert_eq!((same_step[0].drive_teeth, same_step[0].driven_teeth), (4, 10));
        // Half as far over as under: the one that reads high first.
        let either_side = best_pairs(Quantity::new(1000.0), &[15], &[20, 12]);
        assert_eq!(either_side.iter().map(|pair| pair.driven_teeth).collect::<Vec<_>>(), [12, 20]);
    }

    proptest! {
        #[test]
        fn every_pair_is_listed_and_none_reads_nearer_than_the_first(turns in 1200.0..6000.0f64, drive in prop::collection::vec(4u32..20, 1..4), driven in prop::collection::vec(10u32..50, 1..6)) {
            let pairs = best_pairs(Quantity::new(turns), &drive, &driven);
            for &drive_teeth in &drive {
                let alone = best_driven(exact_driven_teeth_at(drive_teeth, Quantity::new(1.0), Quantity::new(turns), CABLE_TURNS), &driven).expect("offered");
                prop_assert!(pairs[0].error.abs() <= alone.error.abs());
                let same_pair = Pair { drive_teeth, driven_teeth: alone.driven_teeth, error: alone.error };
                prop_assert!(pairs.contains(&same_pair));
            }
            for pair in &pairs {
                // The cable's turns a mile, counted from the output shaft, against a thousand.
                let cable = turns * f64::from(pair.drive_teeth) / f64::from(pair.driven_teeth);
                prop_assert!((cable / 1000.0 - 1.0 - pair.error.value()).abs() < 1e-9);
            }
        }

        #[test]
        fn integer_arithmetic_gives_the_same_teeth(drive in 4u32..20, axle in 200u32..700, tire in 1800u32..4500) {
            // Axle in hundredths, tire in hundredths of an inch: whole numbers until the last division.
            let top = u64::from(drive) * u64::from(axle) * 20168;
            let bottom = u64::from(tire) * 1000;
            let whole = (top / bottom) as f64 + (top % bottom) as f64 / bottom as f64;
            prop_assert!(same(exact(drive, f64::from(axle) / 100.0, f64::from(tire) / 100.0).value(), whole));
        }

        #[test]
        fn a_bigger_tire_needs_fewer_teeth_and_a_taller_axle_more(tire in 18.0..45.0f64, axle in 2.0..7.0f64, more in 0.01..5.0f64) {
            prop_assert!(exact(8, axle, tire + more).value() < exact(8, axle, tire).value());
            prop_assert!(exact(8, axle + more, tire).value() > exact(8, axle, tire).value());
        }

        #[test]
        fn a_ratio_box_undoes_the_error(needed in 10.0..60.0f64, fitted in 10u32..60) {
            let needed = Quantity::new(needed);
            prop_assert!(same(correction_ratio(needed, fitted).value() * (1.0 + error(needed, fitted).value()), 1.0));
        }

        #[test]
        fn the_cable_turns_1000_a_mile_when_the_error_is_nought(drive in 4u32..20, driven in 10u32..60, axle in 2.0..7.0f64, tire in 18.0..45.0f64) {
            let turns = cable_turns(drive, driven, Quantity::new(axle), Quantity::new(tire));
            let off = error(exact(drive, axle, tire), driven);
            prop_assert!((turns.value() / 1000.0 - 1.0 - off.value()).abs() < 1e-9);
        }

        #[test]
        fn no_gear_on_hand_reads_nearer_than_the_chosen_one(needed in 10.0..60.0f64, on_hand in prop::collection::vec(10u32..60, 1..8)) {
            let needed = Quantity::new(needed);
            let best = best_driven(needed, &on_hand).expect("gears were offered");
            prop_assert!(on_hand.contains(&best.driven_teeth));
            prop_assert!(on_hand.iter().all(|&teeth| error(needed, teeth).abs().value() >= best.error.abs().value()));
        }

        #[test]
        fn shown_at_60_is_60_and_the_error(error in -0.5..0.5f64) {
            let error = Quantity::new(error);
            prop_assert!(same(shown(Quantity::new(60.0), error).value(), 60.0 + error_at_60(error).value()));
        }
    }
}
