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
    use crate::calc::check::{Check, all, same};
    use proptest::prelude::*;

    fn exact(drive: u32, axle: f64, tire: f64) -> Quantity<One> {
        exact_driven_teeth(drive, Quantity::new(axle), Quantity::new(tire))
    }

    #[test]
    fn agrees_with_published_sums() {
        let shop = "shop handbook, speedometer sums";
        let arithmetic = "speedometer arithmetic at 1,000 turns a mile (SAE J678 practice), computed apart";
        let makers = "vehicle makers' manuals: 4,000 pulses a mile";
        // Tires that turn a round number of times a mile.
        let turning = |turns: f64| SHOP_TURNS / turns;
        let at_28_5 = exact(8, 3.73, 28.5);
        all(&[
            Check {
                source: shop,
                what: "8 teeth, 3.73, 28.5 in",
                computed: at_28_5.value(),
                published: 21.1,
                within: 0.05,
            },
            Check {
                source: shop,
                what: "19 fitted, error",
                computed: error(at_28_5, 19).value(),
                published: 0.11,
                within: 0.005,
            },
            Check {
                source: shop,
                what: "19 fitted, shown at a true 60",
                computed: shown(Quantity::new(60.0), error(at_28_5, 19)).value(),
                published: 66.7,
                within: 0.05,
            },
            Check {
                source: arithmetic,
                what: "7, 3.73, 700 turns",
                computed: exact(7, 3.73, turning(700.0)).value(),
                published: 18.277,
                within: 1e-9,
            },
            Check {
                source: arithmetic,
                what: "8, 3.55, 760 turns",
                computed: exact(8, 3.55, turning(760.0)).value(),
                published: 21.584,
                within: 1e-9,
            },
            Check {
                source: arithmetic,
                what: "8, 4.10, 690 turns",
                computed: exact(8, 4.10, turning(690.0)).value(),
                published: 22.632,
                within: 1e-9,
            },
            Check {
                source: arithmetic,
                what: "18 for 18.277 reads fast",
                computed: error(Quantity::new(18.277), 18).value(),
                published: 0.015,
                within: 0.0005,
            },
            Check {
                source: arithmetic,
                what: "22 for 21.58 reads slow",
                computed: error(Quantity::new(21.584), 22).value(),
                published: -0.019,
                within: 0.0005,
            },
            Check {
                source: arithmetic,
                what: "23 for 22.63 reads slow",
                computed: error(Quantity::new(22.632), 23).value(),
                published: -0.016,
                within: 0.0005,
            },
            Check {
                source: makers,
                what: "pulses at 60 mph",
                computed: pulse_rate(4000.0, Quantity::new(60.0)).value(),
                published: 66.67,
                within: 0.005,
            },
            Check {
                source: "computed from 8,000 a mile",
                what: "pulses at 60 mph",
                computed: pulse_rate(8000.0, Quantity::new(60.0)).value(),
                published: 133.3,
                within: 0.05,
            },
            Check {
                source: "computed from 128,000 a mile",
                what: "pulses at 60 mph",
                computed: pulse_rate(128_000.0, Quantity::new(60.0)).value(),
                published: 2133.3,
                within: 0.05,
            },
        ]);
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

    proptest! {
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
