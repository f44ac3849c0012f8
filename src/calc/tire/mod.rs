//! Tires: turns a mile, and engine or road speed through the gears.
//!
//! Use the diameter measured under load where it is known. One computed from
//! the size on the sidewall is nominal: a real tire turns 2 to 4 % more often
//! (looked up: tire dealers' technical pages).

mod read;
mod size;

pub use read::Unread;
pub use size::{Size, Trust};

use crate::quantity::{Inch, MilePerHour, One, Quantity, Rpm, TurnPerMile};
use std::f64::consts::PI;

/// Inches in a mile over π, as shops use it: turns a mile × tire inches.
pub const SHOP_TURNS: f64 = 20168.0;

/// Engine rpm = mph × axle × gear × 336.13 / tire inches (20,168 / 60, as shops use it).
pub const SHOP_RPM: f64 = 336.13;

/// Turns a mile as shops reckon them: 20,168 / diameter.
pub fn turns_per_mile_shop(tire: Quantity<Inch>) -> Quantity<TurnPerMile> {
    Quantity::new(SHOP_TURNS / tire.value())
}

/// Turns a mile of a circle that does not flatten: 63,360 / (π × diameter).
pub fn turns_per_mile_geometric(tire: Quantity<Inch>) -> Quantity<TurnPerMile> {
    Quantity::new(63_360.0 / (PI * tire.value()))
}

/// Turns a mile of a radial rolling at 60 km/h: one turn covers 3.05 diameters, 3 % less than a circle.
///
/// Source: the European tire convention for rolling circumference (memory, high).
pub fn turns_per_mile_rolling(tire: Quantity<Inch>) -> Quantity<TurnPerMile> {
    Quantity::new(63_360.0 / (3.05 * tire.value()))
}

/// Engine speed at a road speed: mph × axle × gear × 336.13 / tire, no slip.
pub fn engine_speed(
    road: Quantity<MilePerHour>,
    axle_ratio: Quantity<One>,
    gear_ratio: Quantity<One>,
    tire: Quantity<Inch>,
) -> Quantity<Rpm> {
    Quantity::new(road.value() * axle_ratio.value() * gear_ratio.value() * SHOP_RPM / tire.value())
}

/// Engine speed at cruise in direct drive, the converter not slipping.
///
/// A converter without lockup adds 3 to 8 % (common practice).
pub fn cruise_speed(road: Quantity<MilePerHour>, axle_ratio: Quantity<One>, tire: Quantity<Inch>) -> Quantity<Rpm> {
    engine_speed(road, axle_ratio, Quantity::new(1.0), tire)
}

/// Road speed in a gear: rpm × tire / (336.13 × gear × axle), no slip.
pub fn road_speed(
    engine: Quantity<Rpm>,
    axle_ratio: Quantity<One>,
    gear_ratio: Quantity<One>,
    tire: Quantity<Inch>,
) -> Quantity<MilePerHour> {
    Quantity::new(engine.value() * tire.value() / (SHOP_RPM * gear_ratio.value() * axle_ratio.value()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    fn ratio(value: f64) -> Quantity<One> {
        Quantity::new(value)
    }

    #[test]
    fn the_shop_constants_are_the_mile_rounded() {
        assert!((SHOP_TURNS / (63_360.0 / PI) - 1.0).abs() < 1e-5);
        assert!((SHOP_RPM * 60.0 / SHOP_TURNS - 1.0).abs() < 1e-5);
    }

    proptest! {
        #[test]
        fn road_speed_undoes_engine_speed(mph in 5.0..200.0f64, axle in 2.0..7.0f64, gear in 0.6..4.0f64, tire in 18.0..45.0f64) {
            let engine = engine_speed(Quantity::new(mph), ratio(axle), ratio(gear), inches(tire));
            prop_assert!(same(road_speed(engine, ratio(axle), ratio(gear), inches(tire)).value(), mph));
        }

        #[test]
        fn an_hour_of_turns_counted_out_gives_the_same_engine_speed(mph in 5.0..200.0f64, axle in 2.0..7.0f64, tire in 18.0..45.0f64) {
            // Inches of road in an hour, over inches of tread, times axle turns, over 60 minutes.
            let counted = mph * 5280.0 * 12.0 / (tire * PI) * axle / 60.0;
            let shop = cruise_speed(Quantity::new(mph), ratio(axle), inches(tire)).value();
            prop_assert!((shop / counted - 1.0).abs() < 2e-5, "336.13 is rounded");
        }

        #[test]
        fn a_flattened_tire_turns_up_to_5_percent_more_often(tire in 18.0..45.0f64) {
            let more = turns_per_mile_rolling(inches(tire)) / turns_per_mile_geometric(inches(tire));
            prop_assert!(more > 1.0 && more < 1.05);
        }
    }
}
